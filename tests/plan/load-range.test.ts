import { describe, expect, it } from 'vitest';
import { testedOneRepMax, trainingLoadRange } from '../../src/index.js';
import {
  expandDocument,
  nextRequest,
  nextSession,
  planSession,
  readDocument,
  recordSession,
  reviewPlan,
  type Plan,
  type PlanRequest,
} from '../../src/plan/index.js';
import { de } from '../../src/text/locales/de.js';
import { explain, show } from '../../src/text/index.js';
import { issuesOf } from '../support/refused.js';
import { codesOf } from '../support/invariants.js';
import { stored } from '../support/stored.js';
import { EXTENSION, PERSON } from '../support/inputs.js';

const oneRepMax = testedOneRepMax({ load: 60 });
const exercise = { ...EXTENSION, oneRepMax, percentOneRepMax: { from: 20, to: 30 } } as const;
const request = {
  date: '2026-03-01',
  ...PERSON,
  limbs: [{ limb: 'leg', side: 'left', cuffWidthCm: 10, circumferenceCm: 56, percentLop: 50 }],
  exercises: [exercise],
} as const satisfies PlanRequest;
const planOf = (more: object = {}): Plan =>
  planSession({ ...request, exercises: [{ ...exercise, ...more }] } as PlanRequest);
const plan = planOf();
const recordOf = (of: Plan, load: number | undefined, sets: readonly number[] = [30, 15, 15, 15], more: object = {}) =>
  recordSession({
    plan: of,
    date: '2026-03-02',
    items: [{ exercise: 'leg extension', limb: 'leg', side: 'left', sets, load, ...more }],
  });
const issues = (percentOneRepMax: unknown, more: object = {}) =>
  issuesOf(planSession, { ...request, exercises: [{ ...exercise, percentOneRepMax, ...more }] });

describe('a plan with a range of loads', () => {
  const [item] = plan.items;

  it('has the loads at both ends, as trainingLoadRange gives them', () => {
    const { from, to } = trainingLoadRange({ oneRepMax, percentOneRepMax: { from: 20, to: 30 }, step: 2.5 });
    // 20 and 30 % of 60 kg are 12 and 18 kg; the stack has steps of 2.5 kg.
    expect([item!.load!.value, item!.upperLoad!.value]).toEqual([12.5, 17.5]);
    const [whole] = expandDocument(plan).items;
    expect(whole!.load).toEqual(from);
    expect(whole!.upperLoad).toEqual(to);
  });

  it('counts the lower end, and says so', () => {
    expect(item!.totals).toEqual(planOf({ percentOneRepMax: 20 }).items[0]!.totals);
    expect(plan.assumptions).toContainEqual({
      code: 'load-range-lower',
      values: { exercise: 'leg extension', load: 12.5, upper: 17.5, unit: 'kg' },
    });
    expect(codesOf(planOf({ percentOneRepMax: 20 }).assumptions)).not.toContain('load-range-lower');
  });

  it('warns of either end', () => {
    expect(codesOf(planOf({ percentOneRepMax: { from: 30, to: 50 } }).cautions)).toContain('above-restricted-loads');
    expect(codesOf(planOf({ percentOneRepMax: { from: 10, to: 30 } }).cautions)).toContain('below-restricted-loads');
    const bare = planOf({ percentOneRepMax: { from: 30, to: 50 }, restriction: 'none' });
    expect(codesOf(bare.cautions)).not.toContain('above-restricted-loads');
  });

  it('is reviewed at both ends', () => {
    const review = reviewPlan(planOf({ percentOneRepMax: { from: 30, to: 50 } }));
    const isShare = ({ measure }: { readonly measure?: string | undefined }): boolean =>
      measure === 'percent-of-maximum';
    expect(review.findings.filter(isShare)).toMatchObject([{ path: ['items', 0, 'upperLoad'] }]);
    expect(review.inside.filter(isShare)).toMatchObject([{ path: ['items', 0, 'load'] }]);
    const heavy = reviewPlan(planOf({ percentOneRepMax: { from: 30, to: 80 } }));
    expect(codesOf(heavy.findings)).toContain('review-heavy');
  });

  it('is stored and read again', () => {
    expect(readDocument(stored(plan), 'plan').items[0]).toEqual(item);
    const changed = stored(plan) as unknown as { items: { upperLoad: { value: number } }[] };
    changed.items[0]!.upperLoad.value = 40;
    expect(() => readDocument(changed)).toThrow(/upperLoad/);
    const lighter = stored(plan) as unknown as { request: { exercises: { percentOneRepMax: object }[] } };
    lighter.request.exercises[0]!.percentOneRepMax = { from: 20, to: 80 };
    expect(() => readDocument(lighter)).toThrow();
  });

  it('is printed as a range', () => {
    const page = explain(plan);
    expect(page).toContain('12.5–17.5 kg: from 21 % of 1RM');
    expect(page).toContain('Its totals count the lower end, 12.5 kg; loads up to 17.5 kg are as planned.');
    expect(explain(plan, { detail: 'sentence' })).toContain('12.5–17.5 kg (21–29 % of 1RM)');
    expect(show(plan)).toContain('load 12.5–17.5 kg');
    expect(explain(plan, { locale: de })).toContain('12,5–17,5 kg');
    expect(explain(plan, { units: 'imperial' })).toContain('27.56 lb (12.5 kg)–38.58 lb (17.5 kg)');
  });

  it('names what is wrong with the range', () => {
    expect(issues({ from: 30, to: 20 })).toEqual(['exercises.0.percentOneRepMax.to wrong-relation']);
    expect(issues({ from: 0, to: 20 })).toEqual(['exercises.0.percentOneRepMax.from out-of-range']);
    expect(issues({ from: 20 })).toEqual(['exercises.0.percentOneRepMax.to missing']);
    expect(issues({ from: 20, to: 30, by: 5 })).toEqual(['exercises.0.percentOneRepMax.by unknown-field']);
    expect(issues({ from: 20, to: 30 }, { oneRepMax: undefined, load: 15 })).toEqual([
      'exercises.0.percentOneRepMax wrong-relation',
    ]);
  });
});

describe('a record', () => {
  it('takes any load of the range as planned', () => {
    for (const load of [undefined, 12.5, 15, 17.5]) {
      expect(codesOf(recordOf(plan, load).cautions)).not.toContain('lifted-above-plan');
    }
    expect(codesOf(recordOf(plan, 20).cautions)).toContain('lifted-above-plan');
    expect(recordOf(plan, undefined).items[0]!.done.load).toBe(12.5);
    expect(codesOf(recordOf(plan, undefined).assumptions)).toContain('lower-load-lifted');
    expect(codesOf(recordOf(plan, 15).assumptions)).not.toContain('lower-load-lifted');
    expect(explain(recordOf(plan, 15))).toContain('15 kg done, 12.5–17.5 kg planned');
    expect(readDocument(stored(recordOf(plan, 15))).document).toBe('record');
  });
});

describe('the next session', () => {
  const proposed = (load: number | undefined, sets?: readonly number[], more?: object) => {
    const proposal = nextSession({ plan, records: [recordOf(plan, load, sets, more)], rule: 'all-repetitions' });
    const [exercise] = nextRequest({ plan, proposal }).request.exercises;
    return { ...proposal.items[0]!, next: exercise!.percentOneRepMax };
  };

  it('goes up from the load that was lifted, and inside the range keeps its upper end', () => {
    const first = proposed(undefined);
    expect([first.action, first.load]).toEqual(['raise-load', { from: 12.5, to: 15, unit: 'kg' }]);
    expect(first.next).toEqual({ from: 25, to: 30 });
    expect(planOf({ percentOneRepMax: first.next }).items[0]).toMatchObject({
      load: { value: 15 },
      upperLoad: { value: 17.5 },
    });
    expect(proposed(15).load).toEqual({ from: 15, to: 17.5, unit: 'kg' });
  });

  it('leaves the range at its upper end', () => {
    expect(proposed(15).next).toBe(29.2);
    const last = proposed(17.5);
    expect([last.load, last.next]).toEqual([{ from: 17.5, to: 20, unit: 'kg' }, 33.3]);
  });

  it('repeats the load that was lifted', () => {
    const again = proposed(15, [30, 15, 15, 10]);
    expect([again.action, again.load]).toEqual(['repeat', { from: 15, to: 15, unit: 'kg' }]);
    expect(again.next).toEqual({ from: 25, to: 30 });
    expect(codesOf(again.reasons)).toEqual(['rule-not-met']);
  });

  it('starts from the plan where the load was outside the range', () => {
    const above = proposed(20);
    expect([above.action, above.load]).toEqual(['repeat', { from: 12.5, to: 12.5, unit: 'kg' }]);
    expect(codesOf(above.reasons)).toEqual(['other-load-recorded']);
    expect(above.next).toEqual({ from: 20, to: 30 });
  });
});
