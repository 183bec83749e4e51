import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';

const files = readdirSync('tests', { recursive: true, encoding: 'utf8' })
  .filter((name) => name.endsWith('.ts'))
  .map((name) => ({ name, text: readFileSync(join('tests', name), 'utf8') }))
  .filter(({ text }) => /^(describe|it)(\.\w+)*\(/m.test(text));

describe('the tests themselves', () => {
  it('are none of them left out', () => {
    expect(files.length).toBeGreaterThan(40);
    const marked = files.filter(({ text }) => /\.(skip|skipIf|runIf|todo|fails|only)\b/.test(text));
    // R, its packages and Python are not on every machine; each test says which one it misses.
    expect(marked.map(({ name }) => name)).toEqual(['examples/other-tools.test.ts']);
  });

  it('have names that are looked for', () => {
    expect(files.map(({ name }) => name).filter((name) => !/\.(test|browser|bench)\.ts$/.test(name))).toEqual([]);
  });

  it.each(readdirSync('src/checks'))('read the check values of %s', (file) => {
    expect(files.filter(({ text }) => text.includes(`src/checks/${file}' with`)).length).toBeGreaterThan(0);
  });
});
