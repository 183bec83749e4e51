import { execFileSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';
import budgets from './budgets.json' with { type: 'json' };

describe('start', () => {
  /** Milliseconds of processor time that a fresh process takes to import a module: waiting for others is not in it. */
  const cold = (name: string): number =>
    Number(
      execFileSync(process.execPath, [
        '--input-type=module',
        '-e',
        `const start = process.cpuUsage(); await import('${name}');
        const { user, system } = process.cpuUsage(start); console.log((user + system) / 1000);`,
      ]),
    );

  it.each(Object.entries(budgets.coldImport))('a cold import of %s alone: at most %s', (what, most) => {
    const [ours, theirs] = what.split(', times ') as [string, string];
    const our: number[] = [];
    const their: number[] = [];
    // Turn by turn, so that a busy machine is as busy for both.
    for (let turn = 0; turn < 21; turn += 1) {
      our.push(cold(ours));
      their.push(cold(theirs));
    }
    // The fastest of each: what a busy machine adds is not the library’s.
    const [own, other] = [Math.min(...our), Math.min(...their)];
    const words = `${own.toFixed(1)} ms against ${other.toFixed(1)} ms`;
    console.log(`cold import of ${what}: ${words}, ${(own / other).toFixed(2)}`);
    expect(own / other, words).toBeLessThanOrEqual(most);
  });
});
