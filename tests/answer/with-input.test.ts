import type { StandardSchemaV1 } from '@standard-schema/spec';
import fc from 'fast-check';
import { describe, expect, expectTypeOf, it } from 'vitest';
import {
  attempt,
  estimateOcclusionPressure,
  estimateOneRepMax,
  type InputIssue,
  type OcclusionInput,
} from '../../src/index.js';
import { answerMessages } from '../../src/answer/messages.js';
import { planSession, reviewPlan, type PlanRequest } from '../../src/plan/index.js';
import { messages, show, words } from '../../src/text/index.js';
import { de } from '../../src/text/locales/de.js';
import { publicCalls, publicFunctions } from '../support/public-functions.js';

type Takes = ((given: never) => unknown) & { readonly input?: StandardSchemaV1 };

/** Every public function that carries the schema of its input, with an input that is right. */
const all = Object.entries(publicCalls)
  .filter(([, { call }]) => (call as Takes).input !== undefined)
  .map(([name, { call, right }]) => [name, call as Takes, right[0] as object] as const);

const isPlain = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null;

/** Fields of all inputs with a value each: what one function takes contradicts what another does. */
const pool = all.flatMap(([, , right]) => Object.entries(right)) as [name: string, value: unknown][];

/** Every place of an input that a change can be made at, not too deep in an answer that it holds. */
function placesIn(part: unknown, depth = 0): [holder: Record<string, unknown>, name: string][] {
  if (!isPlain(part) || depth > 4) return [];
  return Object.keys(part).flatMap((name) => [[part, name] as never, ...placesIn(part[name], depth + 1)]);
}

const odd = fc.oneof(
  fc.constantFrom<unknown>(undefined, null, '', 'x', '20', -1, 0, 0.5, 3, 70, 400, 1e9, NaN, Infinity, true),
  fc.constantFrom<unknown>([], {}, [1, 2], { from: 1, to: 2 }, { kind: 'x', value: 1 }, new Date(0), () => 1),
  fc.constantFrom<unknown>('leg', 'Supine', 'sitting', 'epley', 'none', 'partial', '30-15-15-15', '2026-02-30'),
  fc.jsonValue({ maxDepth: 2 }),
);
const change = fc.record({
  at: fc.nat(),
  other: fc.nat(),
  to: odd,
  how: fc.constantFrom(
    'value',
    'value',
    'drop',
    'swap',
    'scale',
    'misspell',
    'case',
    'extra',
    'borrow',
    'wrap',
    'text',
  ),
});

/** An input changed in one to three places: values, names, or fields that do not go together. */
const changed = (right: object): fc.Arbitrary<object> =>
  fc.array(change, { minLength: 1, maxLength: 3 }).map((changes) => {
    const copy = structuredClone(right);
    for (const { at, other, to, how } of changes) {
      const places = placesIn(copy);
      if (places.length === 0) break;
      const [holder, name] = places[at % places.length]!;
      const [second, secondName] = places[other % places.length]!;
      const value = holder[name];
      if (how === 'drop') delete holder[name];
      else if (how === 'swap') [holder[name], second[secondName]] = [second[secondName], value];
      else if (how === 'scale') holder[name] = typeof value === 'number' ? value * [0.01, 2.54, -1, 100][at % 4]! : to;
      else if (how === 'extra') holder[`${name}s`] = to;
      else if (how === 'borrow') {
        const [field, lent] = pool[other % pool.length]!;
        holder[field] = structuredClone(lent);
      } else if (how === 'wrap') holder[name] = at % 2 ? [value] : { [name]: value };
      else if (how === 'text') holder[name] = String(value);
      else if ((how === 'misspell' || how === 'case') && !Array.isArray(holder)) {
        delete holder[name];
        holder[how === 'case' ? name.toUpperCase() : name.slice(0, -1)] = value;
      } else holder[name] = to;
    }
    return copy;
  });

const slotsIn = (text: string): string[] => Array.from(text.matchAll(/\{(\w+)(:\w+)?\}/g), ([, name]) => name!);
const wordsIn = (text: string): string[] => text.match(/\p{L}{3,}/gu) ?? [];
/** What a catalogue says of inputs. */
const ofInputs = (texts: Readonly<Record<string, string>>): string[] =>
  Object.entries(texts).flatMap(([code, text]) => {
    const isOfInputs =
      /^(requirement|received|expected|slip|label|field|value|unit)\./.test(code) || code in answerMessages;
    return isOfInputs ? wordsIn(text.replaceAll(/\{[^{}]*\}/g, '')) : [];
  });
const german = new Set(ofInputs(de));
const english = new Set(ofInputs({ ...messages, ...words }).filter((word) => !german.has(word)));

/** The slots that sentences have. */
const slots = new RegExp(`\\{(${[...new Set(Object.values(de).flatMap(slotsIn))].join('|')})(:\\w+)?\\}`);

/** The English words that a sentence in German still has, besides names that you type and what you gave. */
function leftover({ path, options = [], requirement, received }: InputIssue, text: string): string[] {
  const typed = [...path, ...options, ...Object.values(requirement?.values ?? {}).flat(), received].map(String);
  const bare = typed.sort((a, b) => b.length - a.length).reduce((left, one) => left.replaceAll(one, ' '), text);
  return wordsIn(bare.replaceAll(/'[^']*'|"[^"]*"|`[^`]*`|\{[^}]*\}/g, ' ')).filter((word) => english.has(word));
}

/** What is wrong with the words of an issue, in English and in German. */
function badWords(issue: InputIssue, text: string): string[] {
  return [
    ...(/^\S[^]*[.?]$/.test(issue.message) ? [] : ['no sentence']),
    ...(text === issue.message ? ['not translated'] : []),
    ...(slots.test(text) || slots.test(issue.message) ? ['an open slot'] : []),
    ...leftover(issue, text),
  ];
}

describe('the schema of an input', () => {
  it('is carried by every public function that takes a request', () => {
    expect(all.length).toBeGreaterThan(40);
    for (const [name, call, right] of all) {
      const { input } = call;
      expect(input?.['~standard'], name).toMatchObject({ version: 1, vendor: 'cuffwork' });
      expect(input!['~standard'].validate(right), name).toEqual({ value: right });
    }
  });

  it.each(all)('agrees with the function, gives the same issues, and German has them: %s', (_name, call, right) => {
    const seen = { right: 0, wrong: 0 };
    fc.assert(
      fc.property(changed(right), (given) => {
        const result = attempt(call, given);
        const checked = call.input!['~standard'].validate(given) as StandardSchemaV1.Result<unknown>;
        seen[result.ok ? 'right' : 'wrong'] += 1;
        expect(checked).toEqual(result.ok ? { value: given } : { issues: result.issues });
        if (result.ok) return;
        const lines = show(result.issues, { locale: de }).split('\n');
        expect(result.issues.flatMap((issue, at) => badWords(issue, lines[at]!))).toEqual([]);
      }),
      { numRuns: 50, endOnFailure: true },
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
