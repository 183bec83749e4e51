import { evaluate } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { exercises, sheet } from '../../docs/tools/exercises.js';
import * as library from '../../src/index.js';
import { checkAnswer } from '../../src/text/index.js';

/** The two sides of a line such as `50 / 100 × 172 = 86 mmHg`, worked out by another library. */
function sides(line: string): readonly [number, number] {
  const [left, right] = line.replaceAll('×', '*').replaceAll('−', '-').split(' = ');
  return [evaluate(left!) as number, Number.parseFloat(right!)];
}

const seeds = Array.from({ length: 40 }, (_, index) => index + 1);

describe('the exercises', () => {
  it.each([2026, ...seeds])('of seed %d have a working that gives the answer of the library', (seed) => {
    for (const { id, answer, working, question } of exercises(seed)) {
      expect(working.length, id).toBeGreaterThan(0);
      for (const line of working) {
        const [left, right] = sides(line);
        expect(Math.abs(left - right), `${id}: ${line}`).toBeLessThanOrEqual(0.02);
      }
      const last = sides(working.at(-1)!)[1];
      const check = checkAnswer(answer, last);
      // Unrounded, the working is right; where the library rounds, the check asks for that last step.
      expect(['check-right', 'check-rounded', 'check-not-rounded'], `${id}: ${check.text}`).toContain(check.code);
      expect(checkAnswer(answer, answer.value).verdict).toBe('right');
      expect(question).not.toMatch(/NaN|undefined/);
    }
  });
  it.each([2026, ...seeds])('of seed %d have code that runs and gives their answer', (seed) => {
    for (const { id, code, answer } of exercises(seed)) {
      const run = new Function(...Object.keys(library), `return ${code};`) as (...all: unknown[]) => unknown;
      expect(run(...Object.values(library)), id).toEqual(answer);
    }
  });
  it('are the same for the same seed, and others for another', () => {
    expect(sheet(7)).toBe(sheet(7));
    expect(sheet(7)).not.toBe(sheet(8));
  });
  it('show an interval with every estimate, and no number that a caution advises against', () => {
    for (const seed of seeds) {
      for (const { answer } of exercises(seed)) {
        if (['occlusion-pressure', 'one-repetition-maximum'].includes(answer.kind)) expect(answer.lower).toBeDefined();
        expect(answer.cautions.filter(({ severity }) => severity === 'stop')).toEqual([]);
      }
    }
  });
});
