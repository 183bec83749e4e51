import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { fileURLToPath } from 'node:url';
import ts from 'typescript';
import { Instrumenter } from '@stryker-mutator/instrumenter';
import { defineConfig } from 'vitest/config';
import { BaseSequencer, type TestSpecification } from 'vitest/node';

// Started by mutate.mjs, which says what is mutated and where the outcome is written.
const { MUTATE: area = '', MUTATE_FILE: only = '', MUTATION_LOG: log = '' } = process.env;
const root = fileURLToPath(new URL('../..', import.meta.url));

/**
 * What is mutated together, and the tests that answer for it: tests left out can only lower a score. Not mutated are
 * the sentences of a `messages.ts`, which are prose; an `index.ts`, which only gathers; and `maths.ts`, a list of names,
 * in which the header of the mutants cannot stand. `numbers`: each number within a function is put one per cent off
 * too, which Stryker does not do. `patienceMs`: processor time for a mutant in one file, where tests take longer.
 */
interface Areas {
  readonly areas: Readonly<
    Record<string, { folder: string; tests: readonly string[]; numbers?: boolean; patienceMs?: number }>
  >;
  readonly notMutated: readonly string[];
}
const { areas, notMutated } = JSON.parse(readFileSync(join(root, 'tests/mutation/areas.json'), 'utf8')) as Areas;
const { folder, tests, numbers = false } = areas[area]!;

const quiet = new Proxy({}, { get: () => () => false }) as never;
const sources = readdirSync(join(root, folder))
  .filter((name) => name.endsWith('.ts') && !notMutated.includes(name) && (only === '' || name === `${only}.ts`))
  .map((name) => ({ name: resolve(root, folder, name), mutate: true }));

/** The numbers within functions, which Stryker leaves alone, each in a call that can give it one per cent off. */
const off: { id: string; fileName: string; mutatorName: string; replacement: string; location: object }[] = [];
function wrapped(fileName: string): string {
  const text = readFileSync(fileName, 'utf8');
  if (!numbers) return text;
  const source = ts.createSourceFile(fileName, text, ts.ScriptTarget.Latest, true);
  const cuts: [from: number, to: number, call: string][] = [];
  const visit = (node: ts.Node, within: boolean): void => {
    if (ts.isTypeNode(node)) return;
    if (within && ts.isNumericLiteral(node)) {
      const start = source.getLineAndCharacterOfPosition(node.getStart());
      const location = { start: { line: start.line, column: start.character } };
      cuts.push([node.getStart(), node.end, `slightlyOff(${off.length}, ${node.text})`]);
      off.push({ id: `n${off.length}`, fileName, mutatorName: 'Number', replacement: `${node.text} × 1.01`, location });
    }
    node.forEachChild((child) => visit(child, within || ts.isFunctionLike(node)));
  };
  visit(source, false);
  return cuts.reduceRight((out, [from, to, call]) => out.slice(0, from) + call + out.slice(to), text);
}

const { files, mutants } = await new Instrumenter(quiet).instrument(
  sources.map((source) => ({ ...source, content: wrapped(source.name) })),
  { plugins: null, ignorers: [], excludedMutations: [] },
);
const mutated = new Map(files.map(({ name, content }) => [name, content]));
writeFileSync(`${log}.mutants.json`, JSON.stringify([...mutants, ...off]));

/**
 * First what kills most, so that little is left for the slow ones: the area’s quick tests of single files, whole
 * answers, then the rest as they are listed.
 */
class KillersFirst extends BaseSequencer {
  override sort(specifications: TestSpecification[]): Promise<TestSpecification[]> {
    const place = ({ moduleId }: TestSpecification): number => {
      const listed = tests.findIndex((name) => moduleId.includes(`tests/${name.replace(/\*.*$/, '')}`));
      return listed === 0 && moduleId.includes('-parts') ? -2 : moduleId.includes('-invariants') ? -1 : listed;
    };
    return Promise.resolve([...specifications].sort((a, b) => place(a) - place(b)));
  }
}

export default defineConfig({
  root,
  plugins: [{ name: 'mutants', enforce: 'pre', load: (id: string) => mutated.get(id) }],
  test: {
    include: tests.map((name) => `tests/${name}.test.ts`),
    // It changes the host for everyone.
    exclude: ['tests/answer/host.test.ts'],
    runner: './tests/mutation/runner.ts',
    setupFiles: ['./tests/mutation/setup.ts'],
    sequence: { sequencer: KillersFirst },
    pool: 'forks',
    maxWorkers: Number(process.env['MUTATION_WORKERS'] ?? 2),
    testTimeout: 3_600_000,
    reporters: [['default', { summary: false }]],
    env: { FUZZ_RUNS: '25' },
  },
});
