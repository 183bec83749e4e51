import { mkdirSync, writeFileSync } from 'node:fs';
import { made } from './made.js';

mkdirSync('docs/pictures', { recursive: true });
for (const [file, text] of await made()) writeFileSync(file, text);
