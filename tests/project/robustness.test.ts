import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';

/** The rows of the ledger: what stands between the bars of every line whose first cell is an id. */
const rows = readFileSync('docs/maintainers/robustness.md', 'utf8')
  .split('\n')
  .filter((line) => /^\| [A-Z]-\d\d /.test(line))
  .map((line) => {
    const [id, edge, severity, status, tests] = line
      .split('|')
      .slice(1, -1)
      .map((cell) => cell.trim());
    return { id: id!, edge: edge!, severity, status, tests: tests! };
  });

describe('the robustness ledger', () => {
  it('has rows, each id once', () => {
    expect(rows.length).toBeGreaterThan(20);
    expect(new Set(rows.map(({ id }) => id)).size).toBe(rows.length);
  });

  it.each(rows)('$id names a test that there is', ({ edge, severity, status, tests }) => {
    expect(edge).not.toBe('');
    expect(['high', 'middle', 'low']).toContain(severity);
    expect(['held', 'open']).toContain(status);
    const named = [...tests.matchAll(/`(tests\/[^`]+)` “([^”]+)”/g)];
    if (status === 'held') expect(named.length).toBeGreaterThan(0);
    for (const [, file, name] of named) {
      const text = readFileSync(file!, 'utf8');
      // The name stands there as the name of a test, in quotes of whatever kind.
      expect(
        [`'${name}'`, `"${name}"`, `\`${name}\``].some((quoted) => text.includes(quoted)),
        `${file}: ${name}`,
      ).toBe(true);
    }
  });
});
