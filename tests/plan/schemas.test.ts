import { Ajv2020 } from 'ajv/dist/2020.js';
import fc from 'fast-check';
import { format, resolveConfig } from 'prettier';
import { describe, expect, expectTypeOf, it } from 'vitest';
import * as z from 'zod';
import { attempt } from '../../src/index.js';
import * as documents from '../../src/plan/schema.js';
import { nextSession, planSession, readDocument, recordSession, type PlanRequest } from '../../src/plan/index.js';
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
  symptoms: ['stop-pain'],
  painAfter: 2,
  sessionRpe: 5,
  sessionS: 1800,
} as const;
const record = recordSession(done);
const proposal = nextSession({ plan, records: [record], rule: 'all-repetitions' });

/** Each schema with the file it is written to and a document that is right. */
const all = {
  'plan-request': [documents.planRequest, schemas.planRequestSchema, request],
  plan: [documents.planDocument, schemas.planSchema, plan],
  'screening-request': [documents.screeningRequest, schemas.screeningRequestSchema, publicFunctions['screen']!.right],
  'record-request': [documents.recordRequest, schemas.recordRequestSchema, done],
  record: [documents.recordDocument, schemas.recordSchema, record],
  proposal: [documents.proposalDocument, schemas.proposalSchema, proposal],
} as const;

// `unit` is an annotation of this library; a format is left to the pattern beside it.
const ajv = new Ajv2020({ validateFormats: false, strict: true, strictTypes: false, keywords: ['unit'] });

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

describe.each(Object.entries(all))('%s', (name, [schema, standard, right]) => {
  const json = z.toJSONSchema(schema, { target: 'draft-2020-12', io: 'input', metadata: documents.annotations });
  const accepts = ajv.compile(json);
  const agrees = (document: unknown): boolean => {
    const result = standard['~standard'].validate(document) as { issues?: readonly unknown[] };
    const ours = result.issues === undefined;
    const theirs = accepts(document);
    // Own keys named like the prototype are refused before any schema sees them.
    if (['plan', 'record', 'proposal'].includes(name) && !JSON.stringify(document).includes('__proto__')) {
      expect(attempt(readDocument, document as object).ok).toBe(ours);
    }
    if (theirs !== ours) expect.fail(`${ours} here, ${theirs} there: ${JSON.stringify(accepts.errors)}`);
    return ours;
  };

  it('is written to its file', async () => {
    const options = (await resolveConfig('package.json')) ?? {};
    const text = await format(JSON.stringify({ title: `cuffwork ${name}`, ...json }), { ...options, parser: 'json' });
    await expect(text).toMatchFileSnapshot(`../../src/schemas/${name}.json`);
  });

  it('is valid JSON Schema, draft 2020-12', () => {
    expect(ajv.validateSchema(json)).toBe(true);
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
      { numRuns: name.endsWith('request') ? 1000 : 400 },
    );
    expect(Math.min(seen.true, seen.false)).toBeGreaterThan(20);
  });

  it('agrees with it on whatever it is given', () => {
    fc.assert(fc.property(fc.jsonValue(), (value) => void agrees(value)));
  });

  it('keeps unknown fields in documents and refuses them in requests', () => {
    expect(agrees({ ...right, extra: 1 })).toBe(!name.endsWith('request'));
  });
});

describe('the types of the schemas', () => {
  it('are those of the documents', () => {
    expectTypeOf<z.input<typeof documents.planRequest>>().toExtend<PlanRequest>();
  });
});
