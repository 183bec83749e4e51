// What several entry points share stands in files of its own: each is named for the layer that it is mostly made of, in
// the place of a hash, so that a stack trace says where it is.
import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';

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
for (const [file, text] of texts) {
  const named = text
    .replace(/chunk-\w{8}\.c?js/g, (name) => names.get(name)!)
    .replace(/\bchunk(\w{8})_cjs\b/g, (_, hash: string) => `in_${names.get(`chunk-${hash}.cjs`)!.replace('.cjs', '')}`);
  rmSync(`dist/${file}`);
  writeFileSync(`dist/${names.get(file) ?? file}`, named);
}
