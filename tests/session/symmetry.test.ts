import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { limbSymmetry, measuredOcclusionPressure, testedOneRepMax } from '../../src/index.js';
import { explain } from '../../src/text/index.js';
import { expectPlainJson } from '../support/answers.js';
import { expectHoldsTogether, factsPage } from '../support/invariants.js';
import { issuesOf } from '../support/refused.js';

const codesOf = ({ cautions }: ReturnType<typeof limbSymmetry>) => cautions.map(({ code }) => code);
const maxima = { left: testedOneRepMax({ load: 45 }), right: testedOneRepMax({ load: 50 }), involved: 'left' } as const;

describe('limbSymmetry', () => {
  // By hand: 45 / 50 is 90 %. Two errors of 4.2 % are √2 × 4.2 = 5.940 %, 1.96 times that 0.11642 in logarithms:
  // 90 × e^∓0.11642 is 80.11 to 101.11, and 100 × e^∓0.11642 is 89.01 to 112.35. The reference prints 11.6418 % as the
  // least detectable change of a 1RM with 4.2 % (strength reference, section G).
  it('has the error of both sides, and what cannot be detected', () => {
    const index = limbSymmetry({ left: 45, right: 50, involved: 'left', errorPercent: 4.2 });
    expect(index.value).toBe(90);
    expect([index.lower, index.upper].map((end) => Number(end!.toFixed(2)))).toEqual([80.11, 101.11]);
    expect(Math.log(index.undetected!.high / 100)).toBeCloseTo(0.116416, 5);
    expect(codesOf(index)).toContain('symmetry-not-detected');
    expect(codesOf(limbSymmetry({ left: 44, right: 50, involved: 'left', errorPercent: 4.2 }))).toEqual([]);
    expectPlainJson(index);
    expect(explain(index)).toMatch(/Limb symmetry index: 90 % \(95 % interval 80–101 %/);
  });

  it('takes answers, with their own errors', () => {
    // 4.2 % each: the tested maximum of the library has the median error of repeated tests.
    const index = limbSymmetry(maxima);
    const numbers = limbSymmetry({ left: 45, right: 50, involved: 'left', errorPercent: 4.2 });
    expect(index.lower).toBeCloseTo(numbers.lower!, 9);
    expect(index.evidence).toBe('published');
    const pressure = (valueMmHg: number) => measuredOcclusionPressure({ valueMmHg, method: 'doppler', limb: 'leg' });
    expect(issuesOf(limbSymmetry, { ...maxima, right: pressure(180) })).toEqual(['right wrong-relation']);
    const pounds = testedOneRepMax({ load: 110, unit: 'lb' });
    expect(issuesOf(limbSymmetry, { ...maxima, right: pounds })).toEqual(['right wrong-relation']);
    // On a log scale the deviation is a share already: 8.6 of 180 and of 200 mmHg.
    const ofPressures = limbSymmetry({ left: pressure(180), right: pressure(200), involved: 'right' });
    expect(ofPressures.value).toBeCloseTo(111.11, 2);
    expect(ofPressures.errors!.map((error) => error.standardDeviation)).toEqual([8.6 / 200, 8.6 / 180]);
  });

  it('says what it is made of, as the golden page says', async () => {
    const answers = {
      'with an error': limbSymmetry({ left: 45, right: 50, involved: 'left', errorPercent: 4.2 }),
      'beyond the error': limbSymmetry({ left: 40, right: 50, involved: 'left', errorPercent: 4.2 }),
      'without an error': limbSymmetry({ left: 45, right: 50, involved: 'left' }),
      'of answers': limbSymmetry(maxima),
    };
    Object.values(answers).forEach((answer) => expectHoldsTogether(answer));
    await expect(factsPage(answers)).toMatchFileSnapshot('pages/symmetry.txt');
  });

  it('turns round: 80 % one way is 125 % the other way', () => {
    const measure = fc.double({ min: 1, max: 500, noNaN: true });
    fc.assert(
      fc.property(measure, measure, fc.double({ min: 0.5, max: 30, noNaN: true }), (left, right, errorPercent) => {
        const one = limbSymmetry({ left, right, involved: 'left', errorPercent });
        const other = limbSymmetry({ left, right, involved: 'right', errorPercent });
        expect((one.value * other.value) / 1e4).toBeCloseTo(1, 9);
        expect((one.lower! * other.upper!) / 1e4).toBeCloseTo(1, 9);
        expect(codesOf(one)).toEqual(codesOf(other).length > 0 ? codesOf(one) : []);
      }),
    );
  });

  it('says that nothing is known of the difference where no error is', () => {
    const index = limbSymmetry({ left: 45, right: 50, involved: 'left' });
    expect(codesOf(index)).toEqual(['symmetry-without-error']);
    expect(index).not.toHaveProperty('undetected');
    expect(index).not.toHaveProperty('lower');
  });

  it('refuses what is no measure of two sides', () => {
    const issues = (input: object) => issuesOf(limbSymmetry, input);
    expect(issues({ left: 0, right: 50, involved: 'left' })).toEqual(['left out-of-range']);
    expect(issues({ left: '45', right: 50, involved: 'both' })).toEqual(['left wrong-type', 'involved not-one-of']);
    expect(issues({ ...maxima, right: 50 })).toEqual(['right wrong-relation']);
    expect(issues({ ...maxima, left: 45 })).toEqual(['right wrong-relation']);
    expect(issues({ ...maxima, errorPercent: 3 })).toEqual(['errorPercent wrong-relation']);
    expect(issues({ right: 50, involved: 'left' })).toEqual(['left missing']);
    for (const change of [
      { kind: 1 },
      { kind: undefined },
      { evidence: 'sure' },
      { evidence: 1 },
      { value: '45' },
      { value: 0 },
      { standardDeviation: -1 },
    ]) {
      expect(issues({ ...maxima, left: { ...maxima.left, ...change } }), JSON.stringify(change)).toEqual([
        'left wrong-type',
      ]);
    }
    expect(issues({ ...maxima, left: { ...maxima.left, standardDeviation: 0 } })).toEqual([]);
  });
});
