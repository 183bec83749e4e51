import { expect, it } from 'vitest';
import { planSession, recordSession, type PlanExercise, type PlanRequest } from '../../src/plan/index.js';
import { planOf, recordOf } from '../support/plans.js';

const bytes = (document: object): number => new TextEncoder().encode(JSON.stringify(document)).length;
const one = planOf({ percentOneRepMax: 20, step: 2.5 });
const leg = one.request.limbs[0]!;
const [exercise] = one.request.exercises;
const sixOf = (maximum: (index: number) => number, limb: Partial<PlanRequest['limbs'][number]> = {}) =>
  planSession({
    ...one.request,
    limbs: [
      { ...leg, ...limb },
      { ...leg, ...limb, side: 'right' },
    ],
    exercises: Array.from(
      { length: 6 },
      (_, index) =>
        ({ ...exercise!, name: `exercise ${index + 1}`, oneRepMax: { load: maximum(index) } }) as PlanExercise,
    ),
  });
const six = sixOf(() => 100);
const estimated = planOf({ percentOneRepMax: 20, step: 2.5 }, {}, { measured: undefined, circumferenceCm: 56 });
// Six maxima and two estimated legs: hardly an answer is equal to another.
const unlike = sixOf((index) => 40 + 10 * index, { measured: undefined, circumferenceCm: 56 });
const asPlanned = (plan: typeof one) => recordSession({ plan, date: '2026-03-02', asPlanned: true });

// As measured, a little above. A record of one exercise holds the evidence of its pressure and load, without the plan:
// that is 2.3 of its 4.1 kB.
it.each([
  ['a plan of one exercise on one leg', one, 6_800],
  ['a plan of one exercise on one leg, estimated', estimated, 8_300],
  ['a plan of six exercises on two legs', six, 25_800],
  ['a plan of six unlike exercises on two legs', unlike, 34_600],
  ['a record of one exercise on one leg', recordOf(one, [5]), 4_150],
  ['a record of six exercises on two legs', asPlanned(six), 18_900],
  ['a record of six unlike exercises on two legs', asPlanned(unlike), 27_000],
])('%s keeps within its bytes of JSON', (_name, document, most) => {
  expect(bytes(document)).toBeLessThanOrEqual(most);
  expect(bytes(document)).toBeGreaterThan(0.95 * most);
});

it('repeats no answer, formula, symbols, sources or sentence of an assumption', () => {
  for (const document of [six, unlike, asPlanned(six)]) {
    const { answers, items } = document;
    expect(new Set(answers.map((answer) => JSON.stringify(answer))).size).toBe(answers.length);
    const used = JSON.stringify([items, answers]);
    answers.forEach((_, index) => expect(used).toContain(`{"ref":"/answers/${index}"}`.slice(1, -1)));
    expect(JSON.stringify(document)).not.toMatch(/"(formula|symbols|sources)":/);
    for (const { assumptions, cautions } of answers)
      for (const part of [...assumptions, ...cautions]) expect(part).not.toHaveProperty('text');
  }
});

it('says which library and which equations made it', () => {
  expect(estimated.libraryVersion).toMatch(/^\d+\.\d+\.\d+/);
  expect(estimated.equations).toEqual([
    'pooled-curve-thigh-2026',
    'percent-of-occlusion',
    'tested',
    'percent-of-maximum',
  ]);
  expect(asPlanned(one).equations).toEqual(one.equations);
});

it('has field names that any database takes', () => {
  const names = (part: unknown): string[] =>
    typeof part === 'object' && part !== null
      ? Object.entries(part).flatMap(([name, inner]) => [...(Array.isArray(part) ? [] : [name]), ...names(inner)])
      : [];
  const all = new Set([unlike, asPlanned(unlike)].flatMap(names));
  expect(all.size).toBeGreaterThan(50);
  for (const name of all) expect(name).toMatch(/^[A-Za-z][\w-]*$/);
});
