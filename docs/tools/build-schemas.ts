import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { declarations, jsonSchema } from './json-schemas.js';

mkdirSync('dist/schemas', { recursive: true });
for (const name of Object.keys(declarations) as (keyof typeof declarations)[]) {
  writeFileSync(`dist/schemas/${name}.json`, `${JSON.stringify(jsonSchema(name))}\n`);
}

// Check values and catalogues as data, without the space that makes them readable in the repository.
for (const [from, to] of [
  ['src/checks', 'dist/checks'],
  ['src/text/locales', 'dist/text/locales'],
]) {
  mkdirSync(to!, { recursive: true });
  for (const file of readdirSync(from!).filter((name) => name.endsWith('.json'))) {
    const values: unknown = JSON.parse(readFileSync(`${from!}/${file}`, 'utf8'));
    writeFileSync(`${to!}/${file}`, `${JSON.stringify(values)}\n`);
  }
}

// The catalogue is in the package once: as data, which engines import through CommonJS alike.
writeFileSync('dist/text/locales/de.cjs', "'use strict';\nexports.de = require('./de.json');\n");
writeFileSync('dist/text/locales/de.js', "import texts from './de.cjs';\n\nexport const de = texts.de;\n");
