// A table is declared with its ids, codes and units as they are, and its sentences as text: what stands in a formula, a
// note or a message is no type.
const TABLES = /^declare const \w+: (?:\{|readonly \[)[\s\S]*?^[}\]]+;$/gm;
const SENTENCE = /(?<=: )"(?:[^"\\ ]|\\.)* (?:[^"\\]|\\.)*"(?=;)/g;
for (const file of readdirSync('dist', { recursive: true, encoding: 'utf8' })) {
  if (!file.endsWith('.d.cts')) continue;
  const declared = readFileSync(`dist/${file}`, 'utf8');
  const tables = declared.replace(TABLES, (table) => table.replace(SENTENCE, 'string'));
  const narrow = tables.replace(/^(?: {4})+/gm, (indent) => ' '.repeat(indent.length / 2));
  writeFileSync(`dist/${file}`, narrow);
}

// The types of ESM: each entry point takes them from those of CommonJS, so that they are in the package once.
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { basename } from 'node:path';
import manifest from '../../package.json' with { type: 'json' };

for (const target of Object.values(manifest.exports)) {
  if (typeof target === 'string') continue;
  const from = basename(target.require.default);
  writeFileSync(target.import.types, `export * from './${from}';\n`);
}
