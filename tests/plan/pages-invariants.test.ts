import type { PlanExerciseFields } from '../../src/plan/index.js';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import {
  estimateOneRepMax,
  isInputError,
  measuredOcclusionPressure,
  targetCuffPressure,
  trainingLoad,
} from '../../src/index.js';
import { explain, type ExplainOptions } from '../../src/text/index.js';
import {
  compareSessions,
  checkDay,
  compareWeeks,
  guidelines,
  nextSession,
  planSession,
  progressionRules,
  readDocument,
  recordSession,
  reviewPlan,
  screen,
  screeningQuestions,
  stopsInForce,
  symptoms,
  type Plan,
  type PlanRequest,
} from '../../src/plan/index.js';
import { PAIN_SITES } from '../../src/plan/pain.js';

// Every page of every document that can be made: no value printed that is none, no slot left open, no sentence twice,
// and while a stop is in force the stop first and no setting.

type Explained = Parameters<typeof explain>[0];
const FORMATS: readonly ExplainOptions[] = (['text', 'markdown', 'html', 'latex', 'mathml'] as const).flatMap(
  (format) => (['full', 'brief', 'sentence'] as const).map((detail) => ({ format, detail })),
);

const whole = (min: number, max: number) => fc.integer({ min, max });
const setsOf = <T>(set: fc.Arbitrary<T>) => fc.array(set, { minLength: 1, maxLength: 4 });
const counted = setsOf(fc.record({ repetitions: whole(1, 30), restS: fc.constantFrom(20, 30, 60, 90) }));
const timed = setsOf(
  fc.record({ durationS: fc.constantFrom(30, 45, 60, 120, 300), restS: fc.constantFrom(30, 60, 180) }),
);
const tempo = { eccentricS: 2, bottomS: 1, concentricS: 1.5 };
const limb = fc.record({
  percentLop: fc.constantFrom(30, 40, 50, 70, 80, 95),
  cuffWidthCm: fc.constantFrom(5, 10, 18),
  gaugeStepMmHg: fc.constantFrom(1, 5, 10),
  measured: fc.record({ valueMmHg: whole(140, 260), method: fc.constant('doppler' as const) }),
});

/** One exercise of each kind there is. */
const exercise = fc
  .record({
    kind: fc.constantFrom('maximum', 'load', 'body', 'nothing', 'aerobic', 'passive'),
    name: fc.constantFrom('press', 'squat', 'row'),
    side: fc.constantFrom('left', 'right', 'both', 'left-then-right', undefined),
    restriction: fc.constantFrom('continuous', 'intermittent', 'partial', 'none'),
    percentOneRepMax: fc.constantFrom(15, 25, 30, 50, 75),
    counted,
    timed,
    warm: fc.boolean(),
    failure: fc.boolean(),
    pause: fc.constantFrom(undefined, 0, 60, 200),
  })
  .map(({ kind, name, side, restriction, percentOneRepMax, counted, timed, warm, failure, pause }) => {
    const lifted = {
      maximum: { oneRepMax: { load: 80, repetitions: 6 }, percentOneRepMax, step: 2.5 },
      load: { load: 12, step: 2 },
      body: { bodyMassPercent: 64 },
      nothing: { unloaded: true },
    } as const;
    const moved = kind === 'aerobic' || kind === 'passive';
    return {
      name,
      limb: 'leg',
      ...(side && { side }),
      ...(moved ? { mode: kind, sets: timed } : { sets: counted, tempo, ...lifted[kind as keyof typeof lifted] }),
      ...(kind === 'aerobic' && { intensityPercent: 40 }),
      ...(warm && { warmUp: [{ durationS: 60, restS: 20 }] }),
      ...(failure && !moved && { lastSetToFailure: true }),
      ...(pause !== undefined && { reperfusionS: pause }),
      restriction,
      ...(restriction === 'partial' && { restPercentLop: 15 }),
    } as PlanExerciseFields as PlanRequest['exercises'][number];
  });

const request = fc
  .record({
    exercises: fc.array(exercise, { minLength: 1, maxLength: 3 }),
    limbs: fc.tuple(limb, limb),
    condition: fc.constantFrom('pregnancy', 'diabetes', undefined, undefined),
    systolicMmHg: fc.constantFrom(118, 118, 118, 150, 185),
    ageYears: fc.constantFrom(16, 31, 66, undefined),
    often: fc.boolean(),
  })
  .map(({ limbs: [left, right], condition, ageYears, often, ...rest }): PlanRequest => {
    const asked = rest.exercises.some(({ side }) => side !== 'left' && side !== undefined);
    return {
      ...rest,
      diastolicMmHg: 74,
      bodyMassKg: 80,
      posture: 'seated',
      ...(condition && { screening: screen({ ageYears: 31, answers: { [condition]: 'yes' } }) }),
      ...(ageYears && { ageYears }),
      ...(often && { label: 'Athlete B', sessionsPerWeek: 5, weeks: 2 }),
      limbs: [
        { limb: 'leg', side: 'left', ...left },
        ...(asked || often ? [{ limb: 'leg', side: 'right', ...right } as const] : []),
      ],
    };
  });

/** What is told of a session: how it felt, how far it went. */
const felt = fc.record({
  symptoms: fc.subarray(
    symptoms.map(({ code }) => code),
    { maxLength: 2 },
  ),
  pain: fc.option(
    fc
      .subarray([...PAIN_SITES], { maxLength: 2 })
      .chain((sites) =>
        fc.tuple(
          ...sites.map((site) =>
            fc
              .record({ before: whole(0, 4), during: whole(0, 10), after: whole(0, 6) }, { requiredKeys: [] })
              .map((felt) => ({ site, ...felt })),
          ),
        ),
      ),
    { nil: undefined },
  ),
  sessionRpe: fc.option(whole(0, 10), { nil: undefined }),
  fewer: whole(0, 2),
  held: fc.constantFrom(undefined, -5, 0, 20),
  early: fc.boolean(),
  rule: fc.constantFrom(...progressionRules.map(({ id }) => id)),
  guideline: fc.constantFrom(...guidelines.map(({ id }) => id)),
  nextPercentLop: fc.constantFrom(undefined, 60),
  reply: fc.constantFrom('yes', 'no', 'unknown', undefined),
  painNow: fc.constantFrom(undefined, 0, 5, 9),
});

/** Every document that a request leads to. */
function documentsOf(asked: PlanRequest, told: typeof felt extends fc.Arbitrary<infer T> ? T : never): Explained[] {
  const { fewer, held, early, rule, guideline, nextPercentLop, reply: _reply, painNow: _now, ...feelings } = told;
  const plan = planSession(asked);
  const documents: Explained[] = [plan, reviewPlan(plan, { guideline })];
  if (asked.screening) documents.push(asked.screening);
  const { reply, painNow } = told;
  documents.push(
    screen({
      systolicMmHg: asked.systolicMmHg,
      answers: { 'surgery-released': reply, 'venous-thromboembolism': reply },
    }),
    checkDay({ date: '2026-03-02', systolicMmHg: asked.systolicMmHg, painNow, answers: { 'today-illness': reply } }),
  );
  documents.push(compareWeeks({ weeks: [{ sessions: [{ plan, times: 2 }] }, { sessions: [{ plan }] }] }));
  const record = recordSession({
    plan,
    date: '2026-03-02',
    sessionS: 900,
    ...feelings,
    items: plan.items.slice(0, Math.max(1, plan.items.length - fewer)).map((item) => ({
      exercise: item.exercise,
      limb: item.limb,
      side: item.side,
      sets: item.sets,
      ...(held !== undefined && item.target && { heldMmHg: item.target.value + held }),
      ...(early && { stoppedEarly: true }),
    })),
  } as Parameters<typeof recordSession>[0]);
  documents.push(record, reviewPlan(record, { guideline }));
  const percent = nextPercentLop === undefined ? {} : { nextPercentLop };
  documents.push(nextSession({ plan, records: [record], rule, date: '2026-03-09', ...percent }));
  return documents;
}

/** Every sentence that a document carries with a code, with its values in it. */
function sentencesOf(document: unknown, found = new Set<string>()): Set<string> {
  if (typeof document !== 'object' || document === null) return found;
  const { code, text } = document as { code?: unknown; text?: unknown };
  if (typeof code === 'string' && typeof text === 'string') found.add(text);
  for (const part of Object.values(document)) sentencesOf(part, found);
  return found;
}

const plain = (page: string): string => page.replaceAll(/<[^>]*>|\\/g, '').replaceAll(/\s+/g, ' ');

/** How often a sentence is on a page, not counting where it is the start of a longer one that the document carries. */
const timesOn = (page: string, sentence: string): number => page.split(sentence).length - 1;

function printsRight(document: Explained): void {
  const message = [...sentencesOf(document)].map(plain).filter((text) => / .*\.$/.test(text));
  for (const options of FORMATS) {
    let page: string;
    try {
      page = explain(document, options);
    } catch (error) {
      // A format or a detail that this document does not have.
      if (!isInputError(error)) throw error;
      expect(error.issues.map(({ path }) => String(path[0]))).toEqual([expect.stringMatching(/^(format|detail)$/)]);
      continue;
    }
    expect(page).not.toMatch(/undefined|\bNaN\b|\[object|\bnull\b|Infinity/);
    if (options.format !== 'latex') expect(page).not.toMatch(/\{\w*\}/);
    expect(page).not.toMatch(/ {2}[.,;]|[^.]\.\.(?!\.)|,,|; *;| ,/);
    const read = plain(page);
    expect(
      message.filter((text) => timesOn(read, text) > 1),
      page,
    ).toEqual([]);
    stopsFirst(document, page);
  }
}

/** What is read back is read as it was stored, also after a stay in a database. */
function readsBack(document: Explained): void {
  const stored: Explained = JSON.parse(JSON.stringify(document));
  expect(stored).toEqual(document);
  if (!('document' in stored) || ['review', 'week-comparison', 'session-comparison'].includes(stored.document)) return;
  expect(readDocument(stored)).toEqual(document);
}

/** While a stop is in force it comes before anything else, and nothing that could be set is on the page. */
function stopsFirst(document: Explained, page: string): void {
  if (!('stops' in document)) return;
  const disclaimers = stopsInForce(document);
  if (disclaimers.length === 0) return;
  const from = plain(page).indexOf(plain(disclaimers[0]!.text));
  expect(from, page).toBeGreaterThanOrEqual(0);
  expect(from, page).toBeLessThan(110);
  expect(page.toLowerCase()).toContain('do not train');
  if (!('document' in document) || document.document === 'record') return;
  const notPrinted = disclaimers.reduce((text, stop) => text.replace(plain(stop.text), ''), plain(page));
  const read = notPrinted.replace(/[Bb]lood pressure \d+\/(\d+|unknown) mmHg/g, '');
  // What is left with a unit is of no setting: how long limbs were restricted is none, a pressure or a load is.
  const rest = read.replace(/(#+ )?SOURCES.*|Sources.*/s, '').replace(/Measure again.*|MEASURE AGAIN.*/s, '');
  expect(rest).not.toMatch(/\d (mmHg|kg|lb)|% of (LOP|1RM)/);
}

const running = { numRuns: 50, seed: 20261128 };

describe('every page prints right', () => {
  it('of plans, reviews, screenings, weeks, records and proposals, in every format and detail', () => {
    let made = 0;
    let stopped = 0;
    fc.assert(
      fc.property(request, felt, (asked, told) => {
        let documents: Explained[];
        try {
          documents = documentsOf(asked, told);
        } catch (error) {
          // Pauses, sides or pressures that do not go together.
          if (!isInputError(error)) throw error;
          return;
        }
        made += 1;
        stopped += stopsInForce(documents[0] as Plan).length > 0 ? 1 : 0;
        for (const document of documents) {
          printsRight(document);
          readsBack(document);
        }
      }),
      running,
    );
    // Most of what is generated is a plan, and enough of it has a stop.
    expect(made).toBeGreaterThan(running.numRuns / 2);
    expect(stopped).toBeGreaterThan(running.numRuns / 10);
  });

  it('of answers and of the comparison of two sessions', () => {
    const occlusion = measuredOcclusionPressure({ valueMmHg: 187, method: 'doppler', limb: 'leg' });
    const oneRepMax = estimateOneRepMax({ load: 80, repetitions: 6, repetitionsInReserve: 2 });
    const session = { scheme: '30-15-15-15', tempo: '2-0-2-0', restS: 30, load: 20 } as const;
    fc.assert(
      fc.property(whole(20, 100), whole(10, 95), whole(1, 10), (percentLop, share, step) => {
        printsRight(targetCuffPressure({ occlusion, percentLop, gaugeStepMmHg: step, ceilingMmHg: 130 }));
        printsRight(trainingLoad({ oneRepMax, percentOneRepMax: share, step }));
        printsRight(
          compareSessions({
            from: { ...session, restriction: 'continuous', pressureMmHg: percentLop + 50 },
            to: { ...session, restriction: 'none', load: share },
          }),
        );
      }),
      { numRuns: 30, seed: 20261128 },
    );
  });

  it('of a screening with every answer there is', () => {
    for (const { code } of screeningQuestions()) {
      printsRight(screen({ ageYears: 40, systolicMmHg: 120, diastolicMmHg: 70, answers: { [code]: 'yes' } }));
    }
  });
});
