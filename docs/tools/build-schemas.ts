import { mkdirSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { declarations, jsonSchema } from './json-schemas.js';

mkdirSync('dist/schemas', { recursive: true });
for (const name of Object.keys(declarations) as (keyof typeof declarations)[]) {
  writeFileSync(`dist/schemas/${name}.json`, `${JSON.stringify(jsonSchema(name))}\n`);
}

// The check values, without the space that makes them readable in the repository.
mkdirSync('dist/checks', { recursive: true });
for (const file of readdirSync('src/checks')) {
  const values: unknown = JSON.parse(readFileSync(`src/checks/${file}`, 'utf8'));
  writeFileSync(`dist/checks/${file}`, `${JSON.stringify(values)}\n`);
}
