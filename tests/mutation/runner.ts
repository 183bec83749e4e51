import { appendFileSync, readFileSync } from 'node:fs';
import { getFn } from '@vitest/runner';
import type { File, Test } from '@vitest/runner';
import { TestRunner } from 'vitest';

interface Coverage {
  static: Record<string, number>;
  perTest: Record<string, Record<string, number>>;
}
// What the mutants' own header reads and writes.
interface Mutants {
  activeMutant?: string | undefined;
  readonly currentTestId?: string | undefined;
  mutantCoverage: Coverage;
}

const log = process.env['MUTATION_LOG']!;
/** How much processor time of tests a mutant is given in one file before it counts as alive: a lower score, never a higher one. */
const PATIENCE_MS = Number(process.env['MUTATION_PATIENCE_MS']);
const write = (...words: string[]) => appendFileSync(log, `${words.join('\t')}\n`);

/**
 * Runs each test twice as it is, to see which mutants it meets, and then once with each of those that still lives. A
 * mutant sleeps while files are loaded and in the first run: what a file computes as it is loaded, or makes once when
 * first asked for, is not mutated.
 *
 * A file has a process of its own. A mutant could leave something wrong behind in it, and the next would seem killed: so
 * a kill counts only where the test passes again without the mutant, or where no mutant ran before in this process. Once
 * something was left behind, the rest of the file waits for the next run, which goes on in a new process.
 */
export default class extends TestRunner {
  private readonly mutants: Mutants = ((globalThis as { __stryker__?: Mutants }).__stryker__ ??= {
    mutantCoverage: { static: {}, perTest: {} },
  });
  private spoilt = false;
  private readonly spent = new Map<string, number>();
  private readonly lines = new Set<string>();
  private bytesRead = 0;
  private testId: string | undefined;
  /** How often the test asked which test it is, which it does for each mutant that it meets. */
  private asked = 0;
  private most = Infinity;

  constructor(config: ConstructorParameters<typeof TestRunner>[0]) {
    super(config);
    const { mutants } = this;
    // A mutant that never ends does so in a loop that meets others: Stryker counts only how often it meets itself.
    Object.defineProperty(mutants, 'currentTestId', {
      get: () => {
        this.asked += 1;
        if (this.asked > this.most) throw new Error('endless');
        return this.testId;
      },
    });
    // What the numbers of an equation are wrapped in.
    Object.assign(globalThis, {
      slightlyOff: (index: number, value: number): number => {
        const id = `n${index}`;
        if (mutants.activeMutant === id) return value === 0 ? 0.01 : value * 1.01;
        const { perTest, static: atLoad } = mutants.mutantCoverage;
        const met = mutants.currentTestId === undefined ? atLoad : (perTest[mutants.currentTestId] ??= {});
        met[id] = (met[id] ?? 0) + 1;
        return value;
      },
    });
  }

  async runTask(test: Test): Promise<void> {
    const run = getFn(test);
    const { mutants } = this;
    const id = `${test.file.name} ${test.id}`;
    const lines = this.outcomes();
    if (this.spoilt || lines.has(`done\t${id}`)) return;
    const loading = await this.meets(test, run, id);
    const found = loading?.met.length ? await this.meets(test, run, id) : undefined;
    if (!loading || !found) return;
    const { met, took, asked } = found;
    write('loaded', ...loading.met.map(([mutant]) => mutant));
    write('met', ...met.map(([mutant]) => mutant));
    if (took > PATIENCE_MS) write('slow', id, String(Math.round(took)));
    else
      for (const [mutant] of met) {
        const spent = (this.spent.get(mutant) ?? 0) + took;
        const gone = ['killed', 'endless', `lives\t${id}`].some((how) => lines.has(`${how}\t${mutant}`));
        if (gone || spent > PATIENCE_MS) continue;
        const first = this.spent.size === 0;
        this.spent.set(mutant, spent);
        write('try', id, mutant, String(Date.now()));
        mutants.activeMutant = mutant;
        [this.asked, this.most] = [0, 3 * asked + 1_000_000];
        let failed = false;
        try {
          await run();
        } catch {
          failed = true;
        }
        mutants.activeMutant = undefined;
        this.most = Infinity;
        write('over', id);
        if (!failed) {
          write('lives', id, mutant);
          continue;
        }
        try {
          await run();
          write('killed', mutant);
        } catch {
          if (first) write('killed', mutant);
          this.spoilt = true;
          write('spoilt', id, mutant);
          return;
        }
      }
    write('done', id);
  }

  /** All lines of the log so far, which every process writes to. */
  private outcomes(): ReadonlySet<string> {
    const written = readFileSync(log);
    const end = written.lastIndexOf('\n') + 1;
    for (const line of written.toString('utf8', this.bytesRead, end).split('\n')) this.lines.add(line);
    this.bytesRead = end;
    return this.lines;
  }

  /** Runs a test without any mutant: how often it meets each, and the processor time it takes [ms]. */
  private async meets(test: Test, run: () => unknown, id: string) {
    const { mutants } = this;
    this.testId = test.id;
    this.asked = 0;
    const started = process.cpuUsage();
    try {
      await run();
    } catch (error) {
      // What a mutant left behind in this process, such as a note that is kept, is no fault of the test.
      this.spoilt = this.spent.size > 0;
      write(this.spoilt ? 'spoilt' : 'broken', id);
      if (this.spoilt) return undefined;
      throw error;
    } finally {
      this.testId = undefined;
    }
    const { user, system } = process.cpuUsage(started);
    const met = Object.entries(mutants.mutantCoverage.perTest[test.id] ?? {});
    delete mutants.mutantCoverage.perTest[test.id];
    return { met, asked: this.asked, took: (user + system) / 1000 };
  }

  override onAfterRunFiles(files?: File[]): void {
    (super.onAfterRunFiles as (files?: File[]) => void)(files);
    const loaded = Object.keys(this.mutants.mutantCoverage.static);
    write('loaded', ...loaded);
  }
}
