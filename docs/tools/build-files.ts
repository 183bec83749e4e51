// The files of the package, as ESM and as CommonJS, from what is built: what several entry points share is in few
// files, since an engine takes longer to open a file than to read it. decimal.js has one of its own, so that an app
// that needs no decimals leaves it out.
import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { rollup } from 'rollup';
import ts from 'typescript';
import manifest from '../../package.json' with { type: 'json' };

const entries = Object.values(manifest.exports)
  .filter((target) => typeof target !== 'string')
  .map(({ import: esm }) => esm.default.replace('./dist/', '').replace('.js', ''))
  .filter((entry) => !entry.includes('locales/'));

/** The file for a shared part: that of plans, of studies and of words about them, or of all below. */
function sharedBy(id: string): string | undefined {
  if (!/chunk-\w+\.js$/.test(id)) return undefined;
  const text = readFileSync(id, 'utf8');
  if (/ from ['"]decimal\.js['"]/.test(text)) return 'decimal';
  const layers = new Set([...text.matchAll(/^\/\/ src\/(\w+)\//gm)].map(([, layer]) => layer));
  if (layers.has('plan')) return 'plan';
  return layers.has('study') ? 'study' : 'core';
}

/** CommonJS once more holds what ESM holds: without comments and marks for bundlers, one blank for each level. */
function squeezed(text: string): string {
  const file = ts.createSourceFile('a.js', text, ts.ScriptTarget.ES2022, true);
  const templates: [from: number, to: number][] = [];
  const visit = (node: ts.Node): void => {
    if (ts.isTemplateLiteral(node)) templates.push([node.getStart(), node.end]);
    else node.forEachChild(visit);
  };
  visit(file);
  const isOutside = (at: number): boolean => !templates.some(([from, to]) => at > from && at < to);
  return text.replace(
    /^(?: {2})*(?:\/\/.*|\/\*\*[^]*?\*\/)?\n|^(?: {2})+|\/\* @__PURE__ \*\/ /gm,
    (found, at: number) => (isOutside(at) ? (/^ +$/.test(found) ? ' '.repeat(found.length / 2) : '') : found),
  );
}

/** Whether making a value runs code, as a bundler sees it: then it keeps the value where nothing uses it. */
function runs(node: ts.Node): boolean {
  if (ts.isFunctionLike(node)) return false;
  if (ts.isCallExpression(node) || ts.isNewExpression(node)) {
    const isMarked = node.getFullText().trimStart().startsWith('/* @__PURE__ */');
    return !isMarked || (node.arguments ?? []).some(runs);
  }
  const isAccess = ts.isPropertyAccessExpression(node) || ts.isElementAccessExpression(node);
  return isAccess || ts.isSpreadElement(node) || ts.isSpreadAssignment(node) || !!ts.forEachChild(node, runs);
}

/**
 * A namespace that is used as a value is filled by a call before its members are made. Here it is one plain object after
 * the last of them, which a bundler can leave out.
 */
function plainNamespaces(code: string): string {
  const found = [...code.matchAll(/^(?:var|const) ([\w$]+) = \{\};\n(?:\w+\.)?__export\(\1, \{\n([^}]*)\}\);\n/gm)];
  const without = found.reduce((text, [whole]) => text.replace(whole, ''), code);
  const { statements } = ts.createSourceFile('a.js', without, ts.ScriptTarget.ES2022, true);
  const made = statements.flatMap((statement) => {
    if (ts.isFunctionDeclaration(statement)) return [[statement.name!.text, statement.end] as const];
    const declared = ts.isVariableStatement(statement) ? statement.declarationList.declarations : [];
    return declared.map(({ name }) => [name.getText(), statement.end] as const);
  });
  const ends = new Map(made);
  const objects = found.map(([, name, members = '']) => {
    const fields = members.replace(/^( *\S+): \(\) => (\S+)(?=,?$)/gm, (_whole, field: string, value: string) =>
      field.trim() === value ? field : `${field}: ${value}`,
    );
    const values = [...members.matchAll(/=> ([\w$]+)/g)].map(([, value]) => ends.get(value!) ?? 0);
    return { at: Math.max(...values), text: `\nconst ${name!} = {\n${fields}};` };
  });
  return objects
    .sort((one, other) => other.at - one.at)
    .reduce((text, { at, text: object }) => text.slice(0, at) + object + text.slice(at), without);
}

/** Every value that is made as a file loads, marked for bundlers: nothing else comes of making it. */
function marked(text: string): string {
  if (/^__export\(/m.test(text)) throw new Error('A call fills a namespace, and no bundler leaves it out.');
  const file = ts.createSourceFile('a.js', text, ts.ScriptTarget.ES2022, true);
  const makers = file.statements
    .flatMap((statement) => {
      // A value that no entry point takes has lost its name.
      if (ts.isExpressionStatement(statement)) return [statement.expression];
      const declared = ts.isVariableStatement(statement) ? statement.declarationList.declarations : [];
      return declared.flatMap(({ name, initializer }) => (ts.isIdentifier(name) && initializer ? [initializer] : []));
    })
    .filter(runs);
  return makers.reduceRight(
    (whole, maker) =>
      `${whole.slice(0, maker.getStart())}/* @__PURE__ */ (() => (${maker.getText()}))()${whole.slice(maker.end)}`,
    text,
  );
}

// The bare equations share no file with the others: an app that wants one loads 9 kB.
const groups = [entries.filter((entry) => entry !== 'equations'), ['equations']];
const built = await Promise.all(
  groups.map(async (group) => {
    const bundle = await rollup({
      input: Object.fromEntries(group.map((entry) => [entry, `dist/${entry}.js`])),
      external: Object.keys(manifest.dependencies).map((name) => new RegExp(`^${name}(/|$)`)),
      treeshake: false,
    });
    const files = (format: 'es' | 'cjs', ending: string) =>
      bundle.generate({
        format,
        entryFileNames: `[name].${ending}`,
        chunkFileNames: `[name].${ending}`,
        manualChunks: sharedBy,
        generatedCode: 'es2015',
        hoistTransitiveImports: false,
        minifyInternalExports: false,
      });
    return [await files('es', 'js'), await files('cjs', 'cjs')];
  }),
);
for (const file of readdirSync('dist', { recursive: true, encoding: 'utf8' }))
  if (file.endsWith('.js')) rmSync(`dist/${file}`);
for (const { output } of built.flat())
  for (const part of output)
    if (part.type === 'chunk')
      writeFileSync(
        `dist/${part.fileName}`,
        (part.fileName.endsWith('.cjs') ? squeezed : marked)(plainNamespaces(part.code)),
      );
