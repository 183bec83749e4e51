import type { PlanExercise } from '../../src/plan/index.js';
import { describe, expect, it } from 'vitest';
import { explain } from '../../src/text/index.js';
import { guidelines, planSession, recordSession, reviewPlan, type Review } from '../../src/plan/index.js';
import { expectPlainJson } from '../support/answers.js';
import { planOf, recordOf } from '../support/plans.js';

const outside = ({ findings }: Review) => findings.map(({ measure }) => measure);

describe('reviewPlan', () => {
  const plan = planOf({ restS: 90, percentOneRepMax: 15 }, { sessionsPerWeek: 5 }, { percentLop: 90 });
  const review = reviewPlan(plan);

  it('takes the 2019 review when no guideline is named', () => {
    expectPlainJson(review);
    expect(review).toMatchObject({ document: 'review', of: 'plan', guideline: { id: 'guideline-review-2019' } });
    expect(review).toEqual(reviewPlan(plan, { guideline: 'guideline-review-2019' }));
  });

  it('judges nothing that is not in the document, and says so', () => {
    expect(reviewPlan(planOf()).notAssessed).toEqual(['sessions-per-week']);
    const without = reviewPlan(planOf({ restriction: 'none' }));
    expect([without.findings, without.inside, without.notAssessed]).toEqual([[], [], []]);
    expect(without.disclaimers.map(({ code }) => code)).toContain('review-no-cuff');
    expect(reviewPlan(recordOf(plan, [30, 15, 15, 15], {}, { heldMmHg: undefined })).notAssessed).toContain(
      'percent-of-occlusion',
    );
  });

  // 70 % of 187 mmHg is 130.9, down to 130 on a gauge of 5 mmHg: 69.5 %; with a ceiling of 125 mmHg it is 66.8 %.
  // 20 % of 59.4 kg is 11.88 kg; of 5.5, 11 and 16.5 kg the nearest is 11: 18.52 %.
  it('finds nothing in rounding to the loads there are, and says what was asked for', () => {
    const rounded = planOf({ oneRepMax: { load: 59.4 }, percentOneRepMax: 20, available: [5.5, 11, 16.5] });
    const review = reviewPlan(rounded);
    expect(outside(review)).toEqual([]);
    const load = review.inside.find(({ measure }) => measure === 'percent-of-maximum')!;
    expect([load.found.toFixed(2), load.asked]).toEqual(['18.52', 20]);
    expect(explain(review)).toContain('load 19 % of 1RM, rounded from 20 % [20–40 %;');
    expect(outside(reviewPlan(recordOf(rounded, [30, 15, 15, 15])))).toEqual([]);
    // What was lifted otherwise was not rounded.
    const other = recordOf(rounded, [30, 15, 15, 15], {}, { load: 5.5 });
    expect(outside(reviewPlan(other))).toEqual(['percent-of-maximum']);
  });

  it('names the limb where a figure differs between limbs', () => {
    const limb = (side: 'left' | 'right', percentLop: number) =>
      ({ limb: 'leg', side, cuffWidthCm: 10, percentLop, measured: { valueMmHg: 200, method: 'doppler' } }) as const;
    const lines = (right: number) =>
      explain(reviewPlan(planOf({ side: 'both' }, { limbs: [limb('left', 50), limb('right', right)] })))
        .split('\n')
        .filter((line) => line.includes('cuff pressure'));
    expect(lines(60)).toEqual([
      expect.stringContaining('leg extension, left leg: cuff pressure 50 % of LOP'),
      expect.stringContaining('leg extension, right leg: cuff pressure 60 % of LOP'),
    ]);
    expect(lines(50)).toEqual([expect.stringMatching(/^- cuff pressure 50 % of LOP/)]);
  });

  it('finds nothing in rounding: what was asked for is in the range', () => {
    const atRest = (limb: object) =>
      planOf(
        {
          mode: 'passive',
          scheme: '3x5min',
          restS: 180,
          restriction: 'intermittent',
          oneRepMax: undefined,
          percentOneRepMax: undefined,
          tempo: undefined,
        },
        {},
        { percentLop: 70, gaugeStepMmHg: 5, measured: { valueMmHg: 187, method: 'doppler' }, ...limb },
      );
    const rounded = reviewPlan(atRest({}));
    expect(rounded.findings).toEqual([]);
    expect(rounded.inside.find(({ measure }) => measure === 'percent-of-occlusion')!.found.toFixed(1)).toBe('69.5');
    const coarse = reviewPlan(atRest({ gaugeStepMmHg: 20 }));
    expect(coarse.findings).toEqual([]);
    expect(outside(reviewPlan(atRest({ ceilingMmHg: 125 })))).toEqual(['percent-of-occlusion']);
    expect(outside(reviewPlan(atRest({ percentLop: 65 })))).toEqual(['percent-of-occlusion']);
    // Held as planned it is what was planned; held lower it is not.
    const held = (heldMmHg: number) =>
      outside(
        reviewPlan(
          recordSession({
            plan: atRest({}),
            date: '2026-03-02',
            items: [
              {
                exercise: 'leg extension',
                limb: 'leg',
                side: 'left',
                heldMmHg,
                sets: [1, 2, 3].map(() => ({ durationS: 300 })),
              },
            ],
          }),
        ),
      );
    expect(held(130)).toEqual([]);
    expect(held(125)).toEqual(['percent-of-occlusion']);
    // 40 % of 61 kg is 24.4, to the nearest 2.5 kg 25: 41 %. A step of 10 kg gives 20 kg, 33 %, another load.
    expect(outside(reviewPlan(planOf({ oneRepMax: { load: 61 }, percentOneRepMax: 40, step: 2.5 })))).toEqual([]);
    expect(outside(reviewPlan(planOf({ oneRepMax: { load: 61 }, percentOneRepMax: 43, step: 2.5 })))).toEqual([
      'percent-of-maximum',
    ]);
  });

  it('gives a heavy session one finding, that the guideline is not for it', () => {
    const heavy = (percentOneRepMax: number, restriction: 'continuous' | 'none' = 'continuous') =>
      reviewPlan(
        planSession({
          ...planOf().request,
          limbs: [planOf().request.limbs[0]!, { ...planOf().request.limbs[0]!, side: 'right', percentLop: 90 }],
          exercises: ['squat', 'press'].map(
            (name) =>
              ({
                ...planOf().request.exercises[0]!,
                name,
                percentOneRepMax,
                scheme: '3x8',
                restS: 120,
                restriction,
              }) as PlanExercise,
          ),
        }),
      ).findings.map(({ code, severity, exercise, side, found }) => [code, severity, exercise, side, found]);
    for (const percent of [65, 70, 75, 80]) {
      expect(heavy(percent)).toEqual([['review-heavy', 'caution', 'squat', 'left', percent]]);
    }
    expect(heavy(75, 'none')).toEqual([['review-heavy', 'note', 'squat', 'left', 75]]);
    // Below it every figure is compared, each once where both legs are alike.
    const light = heavy(64);
    expect(light.filter(([, , exercise, side]) => exercise === 'squat' && side === undefined)).toHaveLength(3);
    expect(light.map(([code]) => code)).not.toContain('review-heavy');
  });

  it('keeps codes and numbers in its values, and makes words of them on the page', () => {
    for (const { values, text } of review.findings) {
      expect(Object.keys(values!).sort()).toEqual(
        ['exercise', 'found', 'guideline', 'high', 'limb', 'low', 'measure', 'side', 'unit'].filter(
          (name) => text.startsWith('leg extension') || !['exercise', 'limb', 'side'].includes(name),
        ),
      );
      expect(explain(review)).toContain(text);
    }
  });

  it('carries the stops of its document, and prints nothing else of it', () => {
    const { stops, findings } = reviewPlan(planOf({ percentOneRepMax: 15 }, { systolicMmHg: 190 }));
    expect(stops.map(({ code }) => code)).toEqual(['blood-pressure-refer']);
    expect(findings.length).toBeGreaterThan(0);
  });

  it('compares an item at rest with the passive rows', () => {
    const passive = planOf({
      mode: 'passive',
      scheme: '3x5min',
      restS: 200,
      oneRepMax: undefined,
      percentOneRepMax: undefined,
      tempo: undefined,
    });
    // 50 % of LOP against 70 to 100 %; 3 × 300 s + 2 × 200 s unbroken is 21:40 against 5 min; rest and sets are inside.
    const compared = reviewPlan(passive).findings.filter(({ measure }) => measure !== undefined);
    expect(compared.map(({ measure, high }) => [measure, high])).toEqual([
      ['longest-restriction', 5],
      ['percent-of-occlusion', 100],
    ]);
  });
});

describe('guidelines', () => {
  it('have ranges with an end and a grade, and no two for the same thing', () => {
    for (const { rows } of guidelines) {
      const seen = rows.map((row) => `${row.mode} ${row.measure} ${'toWeeks' in row}`);
      expect(new Set(seen).size).toBe(seen.length);
      for (const row of rows) {
        const { low, high } = row as { low?: number; high?: number };
        expect(low ?? high).toBeDefined();
        if (low !== undefined && high !== undefined) expect(low).toBeLessThanOrEqual(high);
      }
    }
  });
});
