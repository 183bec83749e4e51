import { Ajv2020 } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import fastify from 'fastify';
import { describe, expect, expectTypeOf, it } from 'vitest';
import * as z from 'zod/mini';
import { declarations, jsonSchema } from '../../docs/tools/json-schemas.js';
import { attempt, type Answer } from '../../src/index.js';
import { isCalendarDay } from '../../src/answer/day.js';
import { requestReader } from '../../src/plan/parse.js';
import { answerFields } from '../../src/plan/schema-answers.js';
import * as documents from '../../src/plan/schema-documents.js';
import * as requests from '../../src/plan/schema-requests.js';
import {
  nextSession,
  planSession,
  readDocument,
  recordSession,
  screen,
  type Plan,
  type PlanExercise,
  type PlanExerciseFields,
  type PlanRequest,
  type Proposal,
  type RecordRequest,
  type ScreeningRequest,
  type SessionComparison,
  type SessionRecord,
  type WeekComparison,
} from '../../src/plan/index.js';
import * as schemas from '../../src/schemas.js';
import { publicFunctions } from '../support/public-functions.js';

const request = JSON.parse(JSON.stringify(publicFunctions['planSessionOfEveryKind']!.right)) as PlanRequest;
// The documents of one exercise by repetitions and one by time hold every part, and are quick to check.
const { changeS: _, ...counted } = request.exercises[0]!;
const plan = planSession({ ...request, exercises: [{ ...counted, side: 'left' }, request.exercises[3]!] });
const done = {
  plan,
  date: '2026-03-02',
  items: [
    {
      exercise: 'leg extension',
      limb: 'leg',
      side: 'left',
      sets: [{ repetitions: 30 }],
      heldMmHg: 90,
      restHeldMmHg: 30,
    },
    { exercise: 'walk', limb: 'leg', side: 'right', sets: [{ durationS: 90 }], inflatedBeforeS: 5, deflatedAfterS: 9 },
  ],
  symptoms: ['symptom-soreness'],
  pain: [{ site: 'muscle', limb: 'leg', side: 'left', after: 2 }],
  sessionRpe: 5,
  sessionS: 1800,
} as const;
const record = recordSession(done);
const proposal = nextSession({ plan, records: [record], rule: 'all-repetitions' });

/** Each schema, by the name of its file, and a document that is right. */
const all = {
  'plan-request': [planSession.input, request],
  plan: [schemas.planSchema, plan],
  'screening-request': [screen.input, publicFunctions['screen']!.right],
  'record-request': [recordSession.input, done],
  record: [schemas.recordSchema, record],
  proposal: [schemas.proposalSchema, proposal],
} as const;

/** A validator as it comes, strict; what it warns of is an error here. */
const ajv = () =>
  new Ajv2020({
    logger: {
      log: () => undefined,
      warn: (text: string) => expect.fail(text),
      error: (text: string) => expect.fail(text),
    },
  });

type Json = null | boolean | number | string | Json[] | { [name: string]: Json };

/** Every place in a document. */
const placesIn = (value: unknown): (string | number)[][] =>
  typeof value !== 'object' || value === null
    ? [[]]
    : [[], ...Object.entries(value).flatMap(([name, part]) => placesIn(part).map((path) => [name, ...path]))];

/** The document with the value at a place changed, or taken out. */
function changed(document: unknown, path: (string | number)[], to: Json | undefined): unknown {
  if (path.length === 0) return to ?? null;
  const copy = structuredClone(document) as Record<string, unknown>;
  const parent = path.slice(0, -1).reduce<any>((part, name) => part[name], copy);
  const last = path.at(-1)!;
  if (to !== undefined) parent[last] = to;
  else if (Array.isArray(parent)) parent.splice(Number(last), 1);
  else delete parent[last];
  return copy;
}

const mutation = fc.oneof(
  fc.constant(undefined),
  fc.constantFrom<Json>(
    ...[null, true, '', 'x', -1, 0, 0.5, 1, 2, 11, 75, 1e9, [], {}, 'mm[Hg]', 'leg', 'left', 'published', 'yes'],
    ...['2026-02-29', '2024-02-29', '2026-13-01', '2026-03-02', 'x'.repeat(121), '😀'.repeat(100), 'x'.repeat(4001)],
  ),
  fc.double({ noNaN: true, noDefaultInfinity: true }),
  fc.jsonValue() as fc.Arbitrary<Json>,
);

describe.each(Object.entries(all) as [keyof typeof all, (typeof all)[keyof typeof all]][])(
  '%s',
  (name, [standard, right]) => {
    const json = jsonSchema(name);
    const accepts = ajv().compile(json);
    const reader = requestReader<unknown>(declarations[name], ['any', name]);
    const agrees = (document: unknown): boolean => {
      const result = standard['~standard'].validate(document) as { issues?: readonly unknown[] };
      const verified = result.issues === undefined;
      const ours = attempt(reader, document).ok;
      const theirs = accepts(document);
      // A shape that is right may still have relations that are wrong, or be of a document that was changed.
      if (!name.endsWith('request')) expect(attempt(readDocument, document).ok).toBe(verified);
      if (verified) expect(ours).toBe(true);
      if (theirs !== ours) expect.fail(`${ours} here, ${theirs} there: ${JSON.stringify(accepts.errors)}`);
      return ours;
    };

    // JSON Schema, draft 2020-12: its own meta-schema, in the reference library.
    it('is valid JSON Schema, and loads without a warning in a strict validator as it comes', () => {
      expect(new Ajv2020().validateSchema(json)).toBe(true);
      expect(accepts(right)).toBe(true);
    });

    it('loads in a server as it comes, which takes what is right and refuses what is not', async () => {
      const server = fastify();
      server.post('/', { schema: { body: json } }, () => 'taken');
      const answer = async (payload: object) => (await server.inject({ method: 'POST', url: '/', payload })).statusCode;
      expect(await answer(right)).toBe(200);
      expect(await answer({})).toBe(400);
      await server.close();
    });

    it('accepts what is right, and gives it back as it is', () => {
      expect(agrees(right)).toBe(true);
      expect(standard['~standard'].validate(right)).toEqual({ value: right });
    });

    it('accepts and refuses just what a general JSON Schema validator does', () => {
      const places = placesIn(right).filter((path) => path.length > 0);
      const seen = { true: 0, false: 0 };
      fc.assert(
        fc.property(fc.constantFrom(...places), mutation, (path, to) => {
          seen[`${agrees(changed(right, path, to))}`] += 1;
        }),
        { numRuns: name.endsWith('request') ? 400 : 200 },
      );
      expect(Math.min(seen.true, seen.false)).toBeGreaterThan(20);
    });

    it('agrees with it on whatever it is given', () => {
      fc.assert(fc.property(fc.jsonValue(), (value) => void agrees(value)));
    });

    it('keeps unknown fields in documents and refuses them in requests', () => {
      expect(agrees({ ...right, extra: 1 })).toBe(!name.endsWith('request'));
    });
  },
);

/** A type as JSON has it: nothing is read-only, no field holds `undefined`. An answer is compared on its own, below. */
type Json_<T> =
  T extends Answer<infer K>
    ? { answer: K }
    : T extends readonly (infer E)[]
      ? Json_<E>[]
      : T extends object
        ? { -readonly [N in keyof T]: Json_<Exclude<T[N], undefined>> }
        : T;
type Declared<S extends () => { _zod: { input: unknown } }> = Json_<ReturnType<S>['_zod']['input']>;

// Checked by the compiler, in both directions: a field, a word or a `?` that only one of the two has is an error here.
describe('a day', () => {
  it('is the same for the pattern of the schemas and for the readers', () => {
    const two = (part: number) => String(part).padStart(2, '0');
    const days = [1900, 2000, 2023, 2024, 2100].flatMap((year) =>
      Array.from({ length: 14 * 33 }, (_, at) => `${year}-${two(Math.floor(at / 33))}-${two(at % 33)}`),
    );
    expect(days.filter((text) => z.regexes.date.test(text))).toEqual(days.filter(isCalendarDay));
    expect(days.filter(isCalendarDay)).toHaveLength(5 * 365 + 2);
  });
});

describe('every declaration', () => {
  it('is the type of its document', () => {
    expectTypeOf<Declared<typeof requests.exerciseFields>>().toEqualTypeOf<Json_<PlanExerciseFields>>();
    expectTypeOf<PlanExercise>().toExtend<PlanExerciseFields>();
    expectTypeOf<Declared<typeof requests.planRequest>>().toEqualTypeOf<Json_<PlanRequest>>();
    expectTypeOf<Declared<typeof requests.screeningRequest>>().toEqualTypeOf<Json_<ScreeningRequest>>();
    expectTypeOf<Declared<typeof documents.recordRequest>>().toEqualTypeOf<Json_<RecordRequest>>();
    expectTypeOf<Declared<typeof documents.planDocument>>().toEqualTypeOf<Json_<Plan>>();
    expectTypeOf<Declared<typeof documents.recordDocument>>().toEqualTypeOf<Json_<SessionRecord>>();
    expectTypeOf<Declared<typeof documents.proposalDocument>>().toEqualTypeOf<Json_<Proposal>>();
    expectTypeOf<Declared<typeof documents.sessionComparisonDocument>>().toEqualTypeOf<Json_<SessionComparison>>();
    expectTypeOf<Declared<typeof documents.weekComparisonDocument>>().toEqualTypeOf<Json_<WeekComparison>>();
    expectTypeOf<Declared<typeof answerFields>>().toEqualTypeOf<Json_<Omit<Answer, 'kind' | 'unit' | 'inputs'>>>();
  });
});
