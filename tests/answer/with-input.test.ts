import type { StandardSchemaV1 } from '@standard-schema/spec';
import fc from 'fast-check';
import { describe, expect, expectTypeOf, it } from 'vitest';
import { attempt, estimateOcclusionPressure, estimateOneRepMax, type OcclusionInput } from '../../src/index.js';
import { planSession, reviewPlan, type PlanRequest } from '../../src/plan/index.js';
import { publicFunctions } from '../support/public-functions.js';

type Takes = ((given: never) => unknown) & { readonly input?: StandardSchemaV1 };

/** Those that take any object, whose input is no request of one kind, or holds columns that the library itself made. */
const WITHOUT = /^(explain|cite|readAnswer|readDocument|expandDocument|recalibrateOcclusionEquation)/;
const all = Object.entries(publicFunctions).filter(([name]) => !WITHOUT.test(name));

const isPlain = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null;

/** An input with one value changed or left out, one field misspelt, or one field too many. */
const changed = (right: object): fc.Arbitrary<object> =>
  fc
    .tuple(
      fc.nat(),
      fc.oneof(
        fc.constantFrom<unknown>(
          undefined,
          null,
          '',
          'x',
          -1,
          0,
          0.5,
          3,
          70,
          400,
          NaN,
          [],
          {},
          'leg',
          'seated',
          'Supine',
        ),
        fc.jsonValue(),
      ),
      fc.constantFrom('value', 'rename', 'extra'),
    )
    .map(([at, to, how]) => {
      const copy = structuredClone(right) as Record<string, unknown>;
      const places: [Record<string, unknown>, string][] = [];
      const walk = (part: unknown, depth: number): void => {
        if (!isPlain(part) || depth > 4) return;
        for (const name of Object.keys(part)) {
          places.push([part, name]);
          walk(part[name], depth + 1);
        }
      };
      walk(copy, 0);
      const [holder, name] = places[at % places.length]!;
      if (how === 'extra') holder[`${name}s`] = to;
      else if (how === 'rename' && !Array.isArray(holder)) {
        holder[name.toUpperCase()] = holder[name];
        delete holder[name];
      } else holder[name] = to;
      return copy;
    });

describe('the schema of an input', () => {
  it('is carried by every public function that takes a request', () => {
    expect(all.length).toBeGreaterThan(40);
    for (const [name, { call, right }] of all) {
      const { input } = call as Takes;
      expect(input?.['~standard'], name).toMatchObject({ version: 1, vendor: 'cuffwork' });
      expect(input!['~standard'].validate(right), name).toEqual({ value: right });
    }
  });

  it.each(all)('agrees with the function, and gives the same issues: %s', (_name, { call, right }) => {
    const seen = { right: 0, wrong: 0 };
    fc.assert(
      fc.property(changed(right), (given) => {
        const result = attempt(call, given);
        const checked = (call as Takes).input!['~standard'].validate(given) as StandardSchemaV1.Result<unknown>;
        seen[result.ok ? 'right' : 'wrong'] += 1;
        expect(checked).toEqual(result.ok ? { value: given } : { issues: result.issues });
        for (const { message, path } of checked.issues ?? []) {
          expect(message).not.toBe('');
          expect(path).toBeInstanceOf(Array);
        }
      }),
      { numRuns: 50 },
    );
    expect(seen.wrong).toBeGreaterThan(5);
  });

  it('tells relations too', () => {
    const { right } = publicFunctions['estimateOcclusionPressure']!;
    expect(
      estimateOcclusionPressure.input['~standard'].validate({ ...right, systolicMmHg: 70, diastolicMmHg: 120 }),
    ).toMatchObject({ issues: [{ code: 'swapped-pressures', path: ['systolicMmHg'] }] });
    const { right: request } = publicFunctions['planSession']! as { right: PlanRequest };
    const [exercise] = request.exercises;
    const issues = planSession.input['~standard'].validate({ ...request, exercises: [{ ...exercise, load: 20 }] });
    expect(issues).toMatchObject({ issues: [{ code: 'wrong-relation', path: ['exercises', 0, 'load'] }] });
  });

  it('has the type of the input', () => {
    expectTypeOf<StandardSchemaV1.InferInput<typeof estimateOcclusionPressure.input>>().toEqualTypeOf<OcclusionInput>();
    expectTypeOf<StandardSchemaV1.InferOutput<typeof planSession.input>>().toEqualTypeOf<PlanRequest>();
  });
});

describe('attempt', () => {
  it('takes anything as the input, and further arguments', () => {
    const input: unknown = JSON.parse('{"load": 100, "repetitions": 5}');
    const result = attempt(estimateOneRepMax, input);
    expect(result.ok).toBe(true);
    const plan: unknown = planSession(publicFunctions['planSession']!.right as PlanRequest);
    const review = attempt(reviewPlan, plan, { guideline: 'guideline-review-2019' });
    expect(review).toMatchObject({ ok: true });
  });
});

describe('an issue', () => {
  const issuesOf = (change: object) => {
    const result = attempt(estimateOcclusionPressure, {
      ...publicFunctions['estimateOcclusionPressure']!.right,
      ...change,
    });
    return result.ok ? [] : result.issues;
  };

  it('has the bounds and the unit of a number as data', () => {
    expect(issuesOf({ cuffWidthCm: 400 })).toMatchObject([{ min: 3, max: 40, unit: 'cm', path: ['cuffWidthCm'] }]);
    const { right } = publicFunctions['estimateOneRepMax']!;
    expect(attempt(estimateOneRepMax, { ...right, repetitions: 2.5 })).toMatchObject({
      issues: [{ min: 1, max: 500, unit: '{reps}', whole: true }],
    });
  });

  it('has all options as data, and at most five in its sentence', () => {
    const [issue] = issuesOf({ equation: 'none' });
    expect(issue!.options!.length).toBeGreaterThan(5);
    for (const option of issue!.options!.slice(5)) expect(issue!.message).not.toContain(option);
    expect(issuesOf({ posture: 'none' })).toMatchObject([{ options: ['supine', 'seated', 'standing'] }]);
  });
});

describe('did you mean', () => {
  const suggestions = (name: string, change: object): unknown[] => {
    const { call, right } = publicFunctions[name]!;
    const result = attempt(call, { ...right, ...change });
    return result.ok ? [] : result.issues.flatMap((issue) => issue.suggestions ?? []);
  };

  // Trade names and usual slips of typing (`practice`).
  it.each([
    ['estimateOcclusionPressure', { sbp: 120 }, 'systolicMmHg'],
    ['estimateOcclusionPressure', { DBP: 70 }, 'diastolicMmHg'],
    ['estimateOcclusionPressure', { circumfrenceCm: 55 }, 'circumferenceCm'],
    ['estimateOcclusionPressure', { ciruc: 1, cuffwidthcm: 10 }, 'cuffWidthCm'],
    ['estimateOcclusionPressure', { girth: 55 }, 'circumferenceCm'],
    ['estimateOcclusionPressure', { limb: 'thigh' }, 'leg'],
    ['estimateOcclusionPressure', { posture: 'sitting' }, 'seated'],
    ['estimateOcclusionPressure', { posture: 'Supine' }, 'supine'],
    ['estimateOcclusionPressure', { posture: 'saeted' }, 'seated'],
    ['estimateOneRepMax', { reps: 8 }, 'repetitions'],
    ['estimateOneRepMax', { weight: 80 }, 'load'],
    ['estimateOneRepMax', { RIR: 2 }, 'repetitionsInReserve'],
    ['estimateOneRepMax', { rpe: 8 }, 'reserveRpe'],
    ['estimateOneRepMax', { unit: 'lbs' }, 'lb'],
    ['estimateOneRepMax', { lift: 'bench' }, 'bench-press'],
    ['estimateOneRepMax', { equation: 'epley' }, 'epley-1985'],
    ['targetCuffPressure', { lop: 170 }, 'occlusion'],
    ['targetCuffPressure', { aop: 170 }, 'occlusion'],
    ['targetCuffPressure', { percent: 50 }, 'percentLop'],
    ['trainingLoad', { percent: 30 }, 'percentOneRepMax'],
    ['repetitionsAtPercent', { percentage: 75 }, 'percentOneRepMax'],
  ])('%s %j: %s', (name, change, meant) => {
    expect(suggestions(name, change)[0]).toBe(meant);
  });

  it('suggests nothing for what is near nothing', () => {
    expect(suggestions('estimateOcclusionPressure', { x: 1 })).toEqual([]);
    expect(suggestions('estimateOcclusionPressure', { posture: 'upside down' })).toEqual([]);
  });
});
