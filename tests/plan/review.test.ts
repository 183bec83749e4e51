import { describe, expect, it } from 'vitest';
import { cite, explain, type Path } from '../../src/index.js';
import { guidelines, reviewPlan, type Plan, type Review } from '../../src/plan/index.js';
import { expectPlainJson, frozen } from '../support/answers.js';
import { planOf, recordOf } from '../support/plans.js';

const at = (document: unknown, path: Path): unknown =>
  path.reduce((part, name) => (part as Record<string | number, unknown>)[name], document);

const outside = ({ findings }: Review) => findings.map(({ measure }) => measure);

describe('reviewPlan', () => {
  const plan = planOf({ restS: 90, percent: 15 }, { sessionsPerWeek: 5 }, { percent: 90 });
  const review = reviewPlan(plan);

  it('takes the 2019 review when no guideline is named', () => {
    expectPlainJson(review);
    expect(review).toMatchObject({ document: 'review', of: 'plan', guideline: { id: 'guideline-review-2019' } });
    expect(review).toEqual(reviewPlan(plan, { guideline: 'guideline-review-2019' }));
  });

  it('says what was found, what the range is, how well it is backed and where it stands', () => {
    expect(outside(review)).toEqual(['percent-of-occlusion', 'percent-of-maximum', 'rest', 'sessions-per-week']);
    expect(review.findings[0]).toMatchObject({
      code: 'review-above',
      severity: 'caution',
      found: 90,
      low: 40,
      high: 80,
      unit: '%',
      evidence: 'secondary',
      source: 'guideline-review-2019',
      text: 'leg extension, left leg: cuff pressure 90 % is above the 40 to 80 % of occlusion pressure of the 2019 guideline review.',
    });
  });

  it('points into the document, for what is outside and what is inside', () => {
    for (const document of [plan, recordOf(plan, [30, 15, 15, 15], {}, { heldMmHg: 180 })]) {
      const { findings, inside } = reviewPlan(document);
      expect(inside.length).toBeGreaterThan(3);
      for (const { path } of [...findings, ...inside]) expect(at(document, path), path.join('.')).toBeDefined();
    }
  });

  it('judges nothing that is not in the document, and says so', () => {
    expect(reviewPlan(planOf()).notJudged).toEqual(['sessions-per-week']);
    const without = reviewPlan(planOf({ restriction: 'none' }));
    expect([without.findings, without.inside, without.notJudged]).toEqual([[], [], []]);
    expect(without.standing.map(({ code }) => code)).toContain('review-no-cuff');
    expect(reviewPlan(recordOf(plan, [30, 15, 15, 15])).notJudged).toContain('percent-of-occlusion');
  });

  // Worked by hand: 180 of 200 mmHg is 90 %; 50 of 100 kg is 50 %; 60 repetitions.
  it('judges a record by what was really held, lifted and done', () => {
    const calm = planOf({ restS: 60 });
    const record = recordOf(calm, [30, 15, 15], {}, { heldMmHg: 180, load: 50 });
    const { of, findings } = reviewPlan(record);
    expect(of).toBe('record');
    expect(findings.map(({ measure, found }) => [measure, found])).toEqual([
      ['percent-of-occlusion', 90],
      ['percent-of-maximum', 50],
      ['repetitions', 60],
    ]);
    const failed = recordOf(calm, [30, 15, 15], {}, { lastSetToFailure: true });
    expect(outside(reviewPlan(failed))).toEqual([]);
  });

  it('compares percentages as they are printed: a gauge that reaches 39.9 % of 40 is inside', () => {
    const { findings, inside } = reviewPlan(
      planOf({}, {}, { percent: 40, gaugeStepMmHg: 5, measured: { valueMmHg: 188, method: 'doppler' } }),
    );
    expect(findings).toEqual([]);
    expect(inside.find(({ measure }) => measure === 'percent-of-occlusion')!.found.toFixed(1)).toBe('39.9');
  });

  it('holds an item at rest against the passive rows', () => {
    const [item, ...rest] = planOf({ restS: 200, sets: [75, 75, 75].map((repetitions) => ({ repetitions })) }).items;
    const passive = { ...planOf(), items: [{ ...item!, mode: 'passive' as const }, ...rest] };
    const { findings } = reviewPlan(passive);
    // 50 % of LOP against 70 to 100 %; 3 × 300 s + 2 × 200 s unbroken is 21:40 against 5 min; rest and sets are inside.
    expect(findings.map(({ measure, high }) => [measure, high])).toEqual([
      ['longest-restriction', 5],
      ['percent-of-occlusion', 100],
    ]);
  });

  it('keeps fields it does not know out of the way, and leaves the document as it was', () => {
    const more = { ...plan, extra: { deep: [1] }, items: plan.items.map((item) => ({ ...item, colour: 'blue' })) };
    expect(reviewPlan(frozen(structuredClone(more)))).toEqual(review);
  });

  it('refuses a guideline it does not know, another document, and a plan that was changed by hand', () => {
    expect(() => reviewPlan(plan, { guideline: 'mine' as never })).toThrow(/guideline must be one of/);
    expect(() => reviewPlan(review as never)).toThrow(/'plan' or 'record'/);
    const broken = structuredClone(plan) as unknown as { items: { target: { value: unknown } }[] };
    broken.items[0]!.target.value = 'high';
    expect(() => reviewPlan(broken as unknown as Plan)).toThrow(/items\[0\]\.target\.value/);
  });

  it('prints a page', () => {
    for (const { id } of guidelines) {
      const each = reviewPlan(plan, { guideline: id });
      const page = explain(each);
      for (const { text } of [...each.findings, ...each.standing, ...cite(each)]) expect(page).toContain(text);
      expect(page).not.toMatch(/undefined|NaN|\[object|\{\w+\}/);
    }
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
