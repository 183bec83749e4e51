// The types of ESM: each entry point takes them from those of CommonJS, so that they are in the package once.
import { writeFileSync } from 'node:fs';
import { basename } from 'node:path';
import manifest from '../../package.json' with { type: 'json' };

for (const target of Object.values(manifest.exports)) {
  if (typeof target === 'string') continue;
  const from = basename(target.require.default);
  writeFileSync(target.import.types, `export * from './${from}';\n`);
}
