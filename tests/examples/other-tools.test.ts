import { execFileSync, spawnSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

/** What a command says of itself; undefined where it cannot run. */
const runs = (command: string, args: readonly string[]): boolean => spawnSync(command, args).status === 0;

const page = readFileSync('docs/for-research.md', 'utf8');
/** The output that the page shows below a command. */
const shown = (command: string): string | undefined =>
  page.split(`\`\`\`sh\n${command}\n\`\`\`\n\n\`\`\`text\n`)[1]?.split('```')[0];

const packages = ['jsonlite', 'lme4', 'survival'];
const tools = {
  'Rscript examples/from-r.R': {
    there: runs('Rscript', ['-e', packages.map((name) => `library(${name})`).join(';')]),
    needs: `R with ${packages.join(', ')}`,
  },
  'python3 examples/from_python.py': { there: runs('python3', ['--version']), needs: 'Python 3' },
};

// Judge: lme4 and survival in R, whose figures stand in the output next to those of the library.
describe('other tools', () => {
  for (const [command, { there, needs }] of Object.entries(tools)) {
    const name = there ? command : `${command} (skipped: ${needs} not installed)`;
    it.skipIf(!there)(`${name} prints what the page shows`, { timeout: 60_000 }, () => {
      const [program, file] = command.split(' ') as [string, string];
      expect(execFileSync(program, [file], { encoding: 'utf8' })).toBe(shown(command));
    });
  }
});

describe('a call by JSON', () => {
  const call = (input: string) => spawnSync('node', ['examples/from-json.mjs'], { input, encoding: 'utf8' });
  it('gives columns as lists, and null where a row has no answer', () => {
    const given = { answer: 'one-repetition-maximum', equation: 'epley-1985', load: [60, null], repetitions: 10 };
    const { stdout } = call(JSON.stringify({ entry: 'study', function: 'columns', arguments: [given] }));
    // Epley: 60 (1 + 10 / 30) = 80.
    expect(JSON.parse(stdout)).toMatchObject({ value: [80, null] });
  });
  it('calls the main entry where none is named', () => {
    const { stdout } = call(JSON.stringify({ function: 'inchesToCentimetres', arguments: [10] }));
    expect(JSON.parse(stdout)).toBe(25.4);
  });
  it.each([
    ['a wrong field', { function: 'testedOneRepMax', arguments: [{ load: -5 }] }, /load/],
    ['a function that is not there', { function: 'toString', arguments: [] }, /no function toString/],
    [
      'an entry that is not there',
      { entry: 'constructor', function: 'x', arguments: [] },
      /no function x in constructor/,
    ],
  ])('ends with status 1 and a message for %s', (_what, input, message) => {
    const { status, stderr, stdout } = call(JSON.stringify(input));
    expect([status, stdout]).toEqual([1, '']);
    expect(stderr).toMatch(message);
    expect(stderr).not.toMatch(/ at .*:\d+:\d+/);
  });
  it('ends with a message for text that is no JSON', () => {
    expect(call('{').status).toBe(1);
  });
});
