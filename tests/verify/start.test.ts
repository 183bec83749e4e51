import { execFileSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import budgets from './budgets.json' with { type: 'json' };

describe('start', () => {
  /** Milliseconds that a fresh process takes to import a module. */
  const cold = (name: string): number =>
    Number(
      execFileSync(process.execPath, [
        '--input-type=module',
        '-e',
        `const start = performance.now(); await import('${name}'); console.log(performance.now() - start);`,
      ]),
    );

  it(`a cold import of cuffwork takes at most ${budgets.coldImport.timesDecimal} times that of decimal.js alone`, () => {
    const ours: number[] = [];
    const theirs: number[] = [];
    // Turn by turn, so that a busy machine is as busy for both.
    for (let turn = 0; turn < 21; turn += 1) {
      ours.push(cold('cuffwork'));
      theirs.push(cold('decimal.js'));
    }
    // The fastest of each: what a busy machine adds is not the library’s.
    const [our, their] = [Math.min(...ours), Math.min(...theirs)];
    const words = `${our.toFixed(1)} ms against ${their.toFixed(1)} ms`;
    console.log(`cold import: ${words}, ${(our / their).toFixed(2)} times`);
    expect(our / their, words).toBeLessThanOrEqual(budgets.coldImport.timesDecimal);
  });
});
