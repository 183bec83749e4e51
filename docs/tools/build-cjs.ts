// CommonJS without the space of ESM, which is the one to read; in short lines, since Node prints that of an error.
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { transformSync } from 'esbuild';

for (const file of readdirSync('dist', { recursive: true, encoding: 'utf8' })) {
  if (!file.endsWith('.cjs')) continue;
  const { code } = transformSync(readFileSync(`dist/${file}`, 'utf8'), {
    minifyWhitespace: true,
    minifySyntax: true,
    lineLimit: 400,
    target: 'es2022',
  });
  writeFileSync(`dist/${file}`, code);
}
