import { mkdirSync, writeFileSync } from 'node:fs';
import { declarations, jsonSchema } from './json-schemas.js';

mkdirSync('dist/schemas', { recursive: true });
for (const name of Object.keys(declarations) as (keyof typeof declarations)[]) {
  writeFileSync(`dist/schemas/${name}.json`, `${JSON.stringify(jsonSchema(name))}\n`);
}
