import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { guards, type Guard } from '../../src/index.js';
import { painRules, progressionLimits, progressionRules } from '../../src/plan/index.js';

/** The rows of the table of a page whose head has these words, cell by cell. */
function table(page: string, head: RegExp): string[][] {
  const lines = readFileSync(page, 'utf8').split('\n');
  const start = lines.findIndex((line) => line.startsWith('|') && head.test(line));
  const rest = lines.slice(start + 2);
  return rest
    .slice(
      0,
      rest.findIndex((line) => !line.startsWith('|')),
    )
    .map((line) =>
      line
        .split('|')
        .slice(1, -1)
        .map((cell) => cell.trim()),
    );
}

/** The number a cell starts with, such as 300 in `> 300 mmHg`; nothing in `–`. */
const figure = (cell: string | undefined): number | undefined => {
  const found = /\d+(\.\d+)?/.exec(cell ?? '');
  return found ? Number(found[0]) : undefined;
};
const grade = (cell: string | undefined): string | undefined => /`([a-z]+)`/.exec(cell ?? '')?.[1];

describe('figures that a page repeats are those of the code', () => {
  it('the limits of pressure and exposure', () => {
    const rows = table('docs/safety.md', /limit .*note .*caution .*stop/);
    const severities = ['note', 'caution', 'stop'] as const;
    const all: readonly Guard[] = Object.values(guards);
    expect(rows.length).toBeGreaterThanOrEqual(all.length);
    all.forEach(({ name, steps }, index) => {
      const row = rows[index]!;
      for (const { severity, above, from } of steps) {
        const cell = row[1 + severities.indexOf(severity)]!;
        expect([name, severity, figure(cell), cell.startsWith('from')]).toEqual([
          name,
          severity,
          above ?? from,
          above === undefined,
        ]);
      }
      const told = [...row.at(-1)!.matchAll(/`([a-z]+)`/g)].map(([, word]) => word);
      expect(new Set(told), name).toEqual(
        // That of the usual range stands with the limit on percentages.
        new Set([...steps.map(({ evidence }) => evidence), ...(figure(row[2]) === 80 ? ['secondary'] : [])]),
      );
    });
  });

  it('the rules of pain', () => {
    const rows = table('docs/record.md', /rule .*hold above .*go back above/);
    const told = rows.map(([id, , hold, back, stop, how]) => [
      /`([a-z0-9-]+)`/.exec(id!)![1],
      figure(hold) ?? figure(back),
      figure(back),
      figure(stop),
      grade(how),
    ]);
    expect(told).toEqual(
      painRules.map(({ id, holdAbove, backOffAbove, stopFrom, evidence }) => [
        id,
        holdAbove,
        backOffAbove,
        stopFrom,
        evidence,
      ]),
    );
  });

  it('the limits and the rules of progression', () => {
    const limits = table('docs/progress.md', /figure .*value .*grade .*source/);
    expect(limits.map(([, value, how]) => [figure(value), grade(how)])).toEqual(
      Object.values(progressionLimits).map(({ value, evidence }) => [value, evidence]),
    );
    const rules = table('docs/progress.md', /rule .*it asks for .*then/);
    expect(rules.map(([id, , , how]) => [/`([a-z0-9-]+)`/.exec(id!)![1], grade(how)])).toEqual(
      progressionRules.map(({ id, evidence }) => [id, evidence]),
    );
  });
});
