import { describe, expect, it } from 'vitest';
import { attempt, type Prescription } from '../../src/index.js';
import { compareSessions, type Plan, type PlanExercise } from '../../src/plan/index.js';
import { planOf, recordOf } from '../support/plans.js';

const tempo = '2-0-2-0';
/** One set without a cuff, and one with. */
const bare = (more: object = {}) =>
  ({ sets: [{ repetitions: 10 }], tempo, restriction: 'none', ...more }) as Prescription;
const cuffed = (more: object = {}) =>
  bare({ restriction: 'continuous', pressureMmHg: 80, occlusionMmHg: 160, ...more });
const codes = (from: unknown, to: unknown) =>
  compareSessions({ from, to } as never).cautions.map(({ severity, code, source }) => [severity, code, source]);
const always = ['caution', 'no-equivalence', undefined];
const plan = (...more: Parameters<typeof planOf>) => planOf({ sets: [{ repetitions: 10 }], ...more[0] }, more[1]);
const twice = (): Plan => {
  const [one] = plan().request.exercises;
  return plan({}, { exercises: [one!, { ...one!, name: 'press' } as PlanExercise] });
};
const item = { exercise: 'leg extension', limb: 'leg', side: 'left' } as const;

describe('the cautions about two sessions', () => {
  it.each<[string, () => unknown, () => unknown, unknown[]]>([
    ['without a cuff', bare, bare, []],
    ['with a cuff', cuffed, cuffed, []],
    [
      'of which one has a cuff',
      bare,
      cuffed,
      [['note', 'restriction-gives-less-strength', 'heavy-or-restricted-2018']],
    ],
    [
      'of which the other has a cuff',
      cuffed,
      bare,
      [['note', 'restriction-gives-less-strength', 'heavy-or-restricted-2018']],
    ],
    ['at 39 % under the cuff', cuffed, () => cuffed({ load: 39, percentOneRepMax: 39 }), []],
    [
      'at 40 % under the cuff',
      cuffed,
      () => cuffed({ load: 40, percentOneRepMax: 40 }),
      [['note', 'pressure-adds-little-heavy', 'load-and-pressure-2015']],
    ],
    ['at 40 % without a cuff', bare, () => bare({ load: 40, percentOneRepMax: 40 }), []],
    [
      'of which the second has two exercises',
      () => plan({ percentOneRepMax: 20 }),
      twice,
      [['note', 'different-maximum', undefined]],
    ],
    ['of which the first has two exercises', twice, plan, [['note', 'different-maximum', undefined]]],
    [
      'of several exercises',
      cuffed,
      () => ({ exercises: [cuffed(), cuffed()], reperfusionS: 180 }),
      [['note', 'different-maximum', undefined]],
    ],
    ['of which one is a part of a plan', plan, () => ({ of: twice(), ...item }), []],
  ])('%s', (_, from, to, more) => {
    expect(codes(from(), to())).toEqual([always, ...more]);
  });
});

describe('a session of two exercises', () => {
  const two = (more: object) => ({ exercises: [bare(), cuffed(more)], reperfusionS: 180 });
  const rest = [always, ['note', 'different-maximum', undefined]];
  it('is restricted where one of them is, and heavy where one under the cuff is', () => {
    expect(codes(cuffed(), two({}))).toEqual(rest);
    expect(codes(cuffed(), two({ load: 40, percentOneRepMax: 40 })).map(([, code]) => code)).toEqual([
      'no-equivalence',
      'pressure-adds-little-heavy',
      'different-maximum',
    ]);
  });
});

describe('what is compared', () => {
  const row = (from: unknown, to: unknown, quantity: string) =>
    compareSessions({ from, to } as never).rows.find((one) => one.quantity === quantity);

  it('of a plan is planned, of a record is done, of a part is its own', () => {
    const record = recordOf(plan(), [8], { sessionRpe: 5, sessionS: 600 });
    expect(row(plan(), record, 'repetitions')).toMatchObject({ from: { value: 10 }, to: { value: 8 }, change: -2 });
    // 10 repetitions of 4 s.
    expect(row(plan(), record, 'sessionTime')).toMatchObject({
      from: { value: 40 },
      to: { kind: 'session-time', value: 600, unit: 's', inputs: { sessionS: '600' } },
    });
    expect(row(plan(), record, 'sessionLoad')).toMatchObject({ to: { value: 50 } });
    expect(row({ of: plan(), ...item }, plan(), 'sessionTime')).toMatchObject({ from: { value: 40 } });
    expect(row(plan(), { of: record, ...item }, 'repetitions')).toMatchObject({ to: { value: 8 } });
    expect(row(plan(), recordOf(plan(), [8]), 'sessionTime')).not.toHaveProperty('to');
  });

  it('keeps the stops of both, and is a document of its kind', () => {
    const stopped = plan({}, { systolicMmHg: 190, diastolicMmHg: 100 });
    const found = compareSessions({
      from: { of: stopped, ...item },
      to: recordOf(plan(), [10], { symptoms: ['symptom-fainting'] }),
    });
    expect(found.stops.map(({ code }) => code)).toEqual(['blood-pressure-refer', 'symptom-emergency']);
    expect([found.document, found.schemaVersion]).toEqual(['session-comparison', 1]);
    expect(compareSessions({ from: stopped, to: bare() }).stops).toHaveLength(1);
    expect(compareSessions({ from: cuffed(), to: bare() }).stops).toEqual([]);
  });
});

describe('compareSessions refuses', () => {
  const refused = (from: unknown, to: unknown = bare()) => {
    const result = attempt(compareSessions as (input: unknown) => unknown, { from, to });
    return result.ok ? [] : result.issues.map(({ path, code }) => `${path.join('.')} ${code}`);
  };
  it.each<[string, () => unknown, string[]]>([
    ['nothing', () => undefined, ['from missing']],
    ['null', () => null, ['from wrong-type']],
    ['another document', () => ({ document: 'review' }), ['from.document not-one-of']],
    ['a part of no document', () => ({ of: {}, ...item }), ['from.of.document missing']],
    ['a part that is not there', () => ({ of: plan(), ...item, exercise: 'row' }), ['from wrong-relation']],
    ['a part by another name', () => ({ of: plan(), name: 'x' }), ['from.name unknown-field']],
    ['an item', () => plan().items[0], ['from wrong-type']],
    ['a session that is wrong', () => bare({ restriction: 'x' }), ['from.restriction not-one-of']],
  ])('%s', (_, from, issues) => {
    expect(refused(from())).toEqual(issues);
  });
  it.each([null, 5, 'x', [1]])('%j, with the sentence that says what to give', (from) => {
    const result = attempt(compareSessions as (input: unknown) => unknown, { from, to: bare() });
    expect(result.ok ? [] : result.issues.map(({ message }) => message.replace(/received .*/, ''))).toEqual([
      'from must be a plan, a record, `of` one of them with an exercise, or a session; ',
    ]);
  });
  it('both sides at once', () => {
    expect(refused({ document: 'x' }, { of: 1 })).toEqual(['from.document not-one-of', 'to.of wrong-type']);
  });
  it('an item with the sentence that says how to give it', () => {
    const result = attempt(compareSessions as (input: unknown) => unknown, { from: plan().items[0], to: bare() });
    expect(result.ok ? [] : result.issues.map(({ message }) => message)).toEqual([
      'from must be { of: the plan or record, exercise, limb, side }; received an item without its stops.',
    ]);
  });
});
