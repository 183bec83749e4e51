// The declarations of the package: one file for each source file that its types come from, under the source file’s
// name, with what the entry points reach and nothing else.
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import { dirname, join, posix, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import manifest from '../../package.json' with { type: 'json' };

// A table is declared with its ids, codes and units as they are, and its sentences as text: what is in a formula, a
// note or a message is no type.
const TABLES = /^export declare const \w+: (?:\{|readonly \[)[\s\S]*?^[}\]]+;$/gm;
const SENTENCE = /(?<=: )"(?:[^"\\ ]|\\.)* (?:[^"\\]|\\.)*"(?=;)/g;
/** A catalogue: codes and their sentences, of which any may be one word. */
const CATALOGUE = /\{\n((?: {4}readonly (?:[\w$]+|'[^']+'): (?:string|"[^"\n]*");\n)+)\}/;
/** A table with its sentences as text; of a catalogue, only its codes are a type. */
function declared(table: string): string {
  const plain = table.replace(SENTENCE, 'string');
  return plain.replace(CATALOGUE, (whole, members: string) => {
    if (!/: string;$/m.test(members)) return whole;
    const codes = [...members.matchAll(/readonly '?([^':]+)'?:/g)].map(([, code]) => `'${code}'`);
    return `Readonly<Record<${codes.join(' | ')}, string>>`;
  });
}
/** A list of codes with their words: only the codes are a type. */
const PAIR = /readonly \["([\w-]+)", "(?:[^"\\]|\\.)*"\]/;
const PAIRS = new RegExp(`\\((${PAIR.source}(?: \\| )?){2,}\\)\\[\\]`, 'g');
const paired = (pairs: string): string =>
  `(readonly [${[...pairs.matchAll(new RegExp(PAIR, 'g'))].map(([, code]) => `'${code}'`).join(' | ')}, string])[]`;
/** The types of another package that ours name, copied so that nobody has to install it. */
const SPEC = '@standard-schema/spec';
const SPEC_COPY = 'answer/standard-schema';

const { config } = ts.readConfigFile('tsconfig.json', ts.sys.readFile);
const { options, fileNames } = ts.parseJsonConfigFileContent(config, ts.sys, resolve('.'));
const targets = Object.values(manifest.exports).filter((target) => typeof target !== 'string');
const entries = targets.map(({ require }) => require.types.replace('./dist/', '').replace('.d.cts', '.d.ts'));

// 1. What the compiler says of each file.
const emitted = new Map<string, string>();
const declaring = { ...options, noEmit: false, declaration: true, emitDeclarationOnly: true, rootDir: resolve('src') };
const sources = ts.createProgram(fileNames, { ...declaring, outDir: '/types' });
const wrong = ts.getPreEmitDiagnostics(sources);
if (wrong.length > 0) {
  console.error(ts.formatDiagnostics(wrong, ts.createCompilerHost(options)));
  process.exit(1);
}
sources.emit(undefined, (path, text) => emitted.set(path, text));
emitted.set(
  `/types/${SPEC_COPY}.d.ts`,
  readFileSync(fileURLToPath(import.meta.resolve(SPEC)).replace(/js$/, 'd.ts'), 'utf8'),
);
for (const [path, text] of emitted) {
  const copy = posix.relative(dirname(path), `/types/${SPEC_COPY}.js`);
  const at = copy.startsWith('.') ? copy : `./${copy}`;
  const tables = text.replace(TABLES, declared).replace(PAIRS, paired);
  emitted.set(path, tables.replaceAll(`'${SPEC}'`, `'${at}'`));
}

// 2. What of it the entry points reach.
const host = ts.createCompilerHost(options);
const { readFile, fileExists, getSourceFile } = host;
host.readFile = (path) => emitted.get(path) ?? readFile(path);
host.fileExists = (path) => emitted.has(path) || fileExists(path);
host.directoryExists = undefined!;
host.getSourceFile = (path, target) =>
  emitted.has(path) ? ts.createSourceFile(path, emitted.get(path)!, target, true) : getSourceFile(path, target);
const roots = entries.map((entry) => `/types/${entry}`);
const program = ts.createProgram(roots, options, host);
const checker = program.getTypeChecker();

const kept = new Set<ts.Node>();
/** Keeps what declares a symbol, with everything that it names. */
function keep(symbol: ts.Symbol): void {
  for (const declaration of symbol.declarations ?? []) {
    if (ts.isSourceFile(declaration) || !emitted.has(declaration.getSourceFile().fileName)) continue;
    const isAlias = ts.isImportSpecifier(declaration) || ts.isExportSpecifier(declaration);
    let part: ts.Node = declaration;
    while (!isAlias && !ts.isSourceFile(part.parent)) part = part.parent;
    if (kept.has(part)) continue;
    kept.add(part);
    if (isAlias) keep(checker.getImmediateAliasedSymbol(symbol)!);
    else keepNamed(part);
  }
}
function keepNamed(node: ts.Node): void {
  const symbol = ts.isIdentifier(node) ? checker.getSymbolAtLocation(node) : undefined;
  if (symbol) keep(symbol);
  node.forEachChild(keepNamed);
}
for (const root of roots)
  for (const symbol of checker.getExportsOfModule(checker.getSymbolAtLocation(program.getSourceFile(root)!)!))
    keep(symbol);

/** A statement as far as it is kept. */
function printed(statement: ts.Statement, isEntry: boolean): string {
  const names = ts.isImportDeclaration(statement)
    ? statement.importClause?.namedBindings
    : ts.isExportDeclaration(statement)
      ? statement.exportClause
      : undefined;
  if (!names || ts.isNamespaceImport(names) || ts.isNamespaceExport(names))
    return kept.has(statement) ? statement.getFullText() : '';
  const used = names.elements.filter((element) => isEntry || kept.has(element));
  if (used.length === 0) return '';
  if (used.length === names.elements.length) return statement.getFullText();
  const text = statement.getText();
  const start = names.getStart() - statement.getStart();
  return `\n${text.slice(0, start)}{ ${used.map((element) => element.getText()).join(', ')} }${text.slice(start + names.getWidth())}`;
}

for (const file of program.getSourceFiles()) {
  if (!emitted.has(file.fileName)) continue;
  const isEntry = roots.includes(file.fileName);
  const text = file.statements
    .map((statement) => printed(statement, isEntry))
    .join('')
    .trim();
  if (text === '') continue;
  // Node’s two kinds of module share them: as CommonJS, which both may import.
  const common = text
    .replace(/(?<=(?:from |import\()["']\.[^"']*)\.js(?=["'])/g, '.cjs')
    .replace(/^(?: {4})+/gm, (indent) => ' '.repeat(indent.length / 4));
  const path = join('dist', file.fileName.replace('/types/', '').replace(/\.ts$/, '.cts'));
  mkdirSync(dirname(path), { recursive: true });
  writeFileSync(path, `${common}\n`);
}

// The types of ESM: each entry point takes them from those of CommonJS, so that they are in the package once.
for (const { import: esm, require } of targets)
  writeFileSync(esm.types, `export * from './${posix.basename(require.default)}';\n`);
