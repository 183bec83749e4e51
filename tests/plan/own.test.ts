import type { PlanExercise } from '../../src/plan/index.js';
import { expect, it } from 'vitest';
import { testedOneRepMax } from '../../src/index.js';
import { planSession, readDocument, recordSession } from '../../src/plan/index.js';
import { planOf, recordOf } from '../support/plans.js';

const plan = planOf({ percentOneRepMax: 20, step: 2.5 });

it('takes a document that it made as it is, and reads one that was stored', () => {
  expect(readDocument(plan)).toBe(plan);
  expect(readDocument(structuredClone(plan))).toStrictEqual(plan);
  expect(readDocument(structuredClone(plan))).not.toBe(plan);
  const record = recordOf(plan, [5]);
  expect(readDocument(record)).toBe(record);
});

it('made it so that nobody can change it', () => {
  expect(() => ((plan.items[0]!.target as { value: number }).value = 700)).toThrow(TypeError);
});

it('takes nothing for its own that a caller put together', () => {
  const changed = { ...plan, items: [{ ...plan.items[0]!, target: { ...plan.items[0]!.target!, value: 700 } }] };
  expect(() => readDocument(changed)).toThrow(/700/);
  expect(() => recordSession({ plan: changed, date: '2026-03-02', asPlanned: true })).toThrow(/700/);
});

it('verifies a plan whose request holds an answer of the caller’s', () => {
  const held = planSession({
    ...plan.request,
    exercises: [{ ...plan.request.exercises[0]!, oneRepMax: testedOneRepMax({ load: 60 }) } as PlanExercise],
  });
  expect(readDocument(held)).toStrictEqual(held);
  expect(readDocument(held)).not.toBe(held);
});
