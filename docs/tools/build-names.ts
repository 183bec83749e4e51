// What several entry points share is in files of its own: each is named for the layer that it is mostly made of, in
// the place of a hash, so that a stack trace says where it is.
import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import ts from 'typescript';

const files = readdirSync('dist', { recursive: true, encoding: 'utf8' }).filter((file) => /\.c?js$/.test(file));
const texts = new Map(files.map((file) => [file, readFileSync(`dist/${file}`, 'utf8')]));
const names = new Map<string, string>();
for (const file of files.filter((name) => name.startsWith('chunk-')).sort()) {
  const layers = [...texts.get(file)!.matchAll(/^\/\/ src\/(\w+)\//gm)].map(([, layer]) => layer!);
  const count = (layer: string) => layers.filter((other) => other === layer).length;
  const [layer = 'shared'] = layers.sort((a, b) => count(b) - count(a));
  const [hash, ending] = file.split('.') as [string, string];
  const taken = [...names.values()].filter((name) => new RegExp(`^${layer}\\d*\\.${ending}$`).test(name)).length;
  names.set(`${hash}.${ending}`, `${layer}${taken > 0 ? taken + 1 : ''}.${ending}`);
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

for (const [file, text] of texts) {
  const named = text
    .replace(/chunk-\w{8}\.c?js/g, (name) => names.get(name)!)
    .replace(/\bchunk(\w{8})_cjs\b/g, (_, hash: string) => `in_${names.get(`chunk-${hash}.cjs`)!.replace('.cjs', '')}`);
  rmSync(`dist/${file}`);
  writeFileSync(`dist/${names.get(file) ?? file}`, file.endsWith('.cjs') ? squeezed(named) : named);
}
