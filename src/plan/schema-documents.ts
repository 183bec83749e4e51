import * as z from 'zod/mini';
import { once } from '../answer/own.js';
import { EXERCISE_MODES, LIMBS, LOAD_UNITS, POSTURES, type Unit } from '../quantity/quantities.js';
import { LINES, type ComparedQuantity } from '../session/compare.js';
import { EXERCISE_SIDES, MOST_NAME, RESTRICTIONS } from '../session/prescription.js';
import { SESSION_EVENTS } from '../session/timeline.js';
import type { PlanCode } from './document-messages.js';
import { guidelineNames, measures, type Measure } from './measures.js';
import { VERSION } from './needs.js';
import { PAIN_RULE_IDS, PAIN_SITES } from './pain.js';
import { progressionRules } from './progression-rules.js';
import { MEASURED_AGAIN, PROGRESSION_ACTIONS } from './proposal.js';
import {
  answerOf,
  answersOnce,
  anyAnswer,
  assumptions,
  cautionFields,
  cautions,
  grade,
  limbTotals,
  MASS,
  message,
  path,
  positive,
  SECONDS,
  sessionLoad,
  sessionTotals,
  sourced,
  statedLoad,
  statedTarget,
  time,
  totals,
} from './schema-answers.js';
import {
  code,
  day,
  limbAndSide,
  list,
  named,
  numbers,
  open,
  pattern,
  place,
  quantity,
  some,
  strict,
  text,
} from './schema-parts.js';
import {
  dayCheckGiven,
  dayCheckRequest,
  done,
  doneDetails,
  feelings,
  ofSet,
  painReport,
  planRequest,
  reported,
  screeningRequest,
  setLength,
  stops,
} from './schema-requests.js';
import { FINDING_OUTCOMES, SCREENING_OUTCOMES } from './screening-items.js';
import { GOAL_MEASURES, GOAL_OUTCOMES } from './stage-goals.js';

/** What every document says of itself. */
const head = <D extends string, V extends 1 | 2>(document: D, version: V) => ({
  document: z.literal(document),
  schemaVersion: z.literal(version),
  libraryVersion: pattern(/^\d{1,4}\.\d{1,4}\.\d{1,4}(-(alpha|beta|rc)(\.\d{1,4})?)?$/, VERSION),
});

const sentence = named('sentence', () => open(message()));
const disclaimerCode = once(() => ({ code: code<PlanCode>(), ...sourced() }));
const disclaimerCodes = once(() => z.array(open(disclaimerCode())));
const disclaimers = once(() => z.array(open({ ...disclaimerCode(), text: z.string() })));

// Where sides take turns, a rest holds the set of the other side: longer than any that is asked for.
const sets = named('sets', () =>
  list(open({ ...setLength(), ...ofSet(), restS: z.number().check(z.minimum(0), z.maximum(20_000)) }), 50),
);
const prescribed = once(() => ({
  ...place(),
  sets: sets(),
  ...some({
    mode: z.enum(EXERCISE_MODES),
    posture: z.enum(POSTURES),
    ...numbers('intensityPercent', 'bodyMassKg', 'bodyMassPercent'),
    lastSetToFailure: z.literal(true),
    tempo: open(numbers('eccentricS', 'bottomS', 'concentricS', 'topS')),
  }),
}));

/** An exercise on a limb, of a plan or of a record: with a cuff and what it is set to, or without. */
const itemOf = <P extends z.core.$ZodShape>(parts: P) => {
  const loads = some({ load: statedLoad(), upperLoad: statedLoad() });
  const own = { ...prescribed(), ...parts, totals: totals(), ...loads };
  const [target, restTarget] = [statedTarget(), z.optional(statedTarget())];
  const restricted = RESTRICTIONS.filter((restriction) => restriction !== 'none');
  const either = z.discriminatedUnion('restriction', [
    open({ ...own, target, restTarget, restriction: z.enum(restricted) }),
    open({ ...own, restriction: z.literal('none') }),
  ]);
  /** The two as one, as the types have them. */
  const one = () => open({ ...own, target: z.optional(target), restTarget, restriction: z.enum(RESTRICTIONS) });
  return either as unknown as ReturnType<typeof one>;
};

const timeline = named('timeline', () =>
  open({
    events: z.array(
      open({
        atS: time(),
        event: z.enum(SESSION_EVENTS),
        ...some({
          exercise: z.int().check(z.minimum(1)),
          limb: z.enum(LIMBS),
          side: z.enum(EXERCISE_SIDES),
          set: z.int().check(z.minimum(1)),
          warmUp: z.literal(true),
          repetitions: time(),
          durationS: time(),
          pressureMmHg: time(),
        }),
      }),
    ),
    durationS: time(),
    assumptions: assumptions(),
  }),
);

/** A plan, as `planSession` makes it. */
export const planDocument = once(() =>
  open({
    ...head('plan', 2),
    ...answersOnce(),
    request: planRequest(),
    items: list(itemOf(some({ warmUp: sets() })), 200),
    limbs: limbTotals(),
    session: open({ timeline: timeline(), totals: sessionTotals() }),
    assumptions: assumptions(),
    stops: stops(),
    cautions: cautions(),
    disclaimers: disclaimerCodes(),
    stopCriteria: disclaimerCodes(),
  }),
);

/** What `recordSession` takes. */
export const recordRequest = once(() => strict({ plan: planDocument(), ...done() }));

/** What a record says of an exercise on a limb, besides what was planned. */
const recorded = once(() => ({
  ...some(numbers('cuffWidthCm', 'circumferenceCm')),
  done: open({
    sets: sets(),
    stoppedEarly: z.boolean(),
    ...doneDetails(),
    ...some({ unit: z.enum(LOAD_UNITS) }),
  }),
}));

/** A record, as `recordSession` makes it. */
export const recordDocument = once(() =>
  open({
    ...head('record', 2),
    ...answersOnce(),
    date: day(),
    posture: z.enum(POSTURES),
    items: list(itemOf(recorded()), 200),
    limbs: limbTotals(),
    symptoms: reported(),
    ...feelings(),
    ...some({
      label: text(MOST_NAME),
      pain: list(open(painReport()), 20, 0),
      dayCheck: dayCheckGiven(),
      sessionLoad: sessionLoad(),
    }),
    assumptions: assumptions(),
    stops: stops(),
    cautions: cautions(),
    disclaimers: disclaimerCodes(),
  }),
);

/** What a document of answers has, with its request. */
const concluded = once(() => ({
  outcome: z.enum(SCREENING_OUTCOMES),
  complete: z.boolean(),
  findings: z.array(open({ ...cautionFields(), outcome: z.enum(FINDING_OUTCOMES), evidence: grade() })),
  unanswered: z.array(open({ code: z.string(), question: z.string() })),
  disclaimers: disclaimers(),
}));

/** A screening, as `screen` makes it. */
export const screeningDocument = once(() =>
  open({
    ...head('screening', 1),
    request: screeningRequest(),
    ...concluded(),
    thrombosisScore: answerOf('thrombosis-score', ['1']),
  }),
);

/** A check of the day, as `checkDay` makes it. */
export const dayCheckDocument = once(() =>
  open({ ...head('day-check', 1), request: dayCheckRequest(), ...concluded() }),
);

/** Where something is, and where it goes: nothing where that is not known. */
const fromTo = <T extends z.ZodMiniType>(number: T) => ({ from: number, ...some({ to: number }) });

const setsCounted = once(() => list(open(setLength()), 50));

/** A proposal, as `nextSession` makes it. */
export const proposalDocument = once(() =>
  open({
    ...head('proposal', 1),
    painRule: open({ id: z.enum(PAIN_RULE_IDS), evidence: grade(), ...sourced() }),
    rule: open({
      id: z.enum(progressionRules.map(({ id }) => id)),
      text: z.string(),
      evidence: grade(),
      ...sourced(),
    }),
    items: list(
      open({
        ...place(),
        action: z.enum(PROGRESSION_ACTIONS),
        reasons: z.array(sentence()),
        ...some({
          load: open({ ...fromTo(positive()), unit: z.enum(LOAD_UNITS) }),
          percentOneRepMax: open(fromTo(positive())),
          percentLop: open(fromTo(quantity('percentLop'))),
          cuffMmHg: open(fromTo(positive())),
          sets: open({ from: setsCounted(), to: setsCounted() }),
        }),
      }),
      200,
      0,
    ),
    measureAgain: z.array(
      open({
        ...message(),
        what: z.enum(MEASURED_AGAIN),
        due: z.boolean(),
        evidence: grade(),
        ...sourced(),
      }),
    ),
    stops: stops(),
    cautions: cautions(),
    disclaimers: disclaimers(),
  }),
);

const MEASURES = once(() => Object.keys(measures) as Measure[]);
const assessment = once(() => ({
  measure: z.enum(MEASURES()),
  found: z.number(),
  unit: code<Unit>(),
  evidence: grade(),
  path: path(),
  ...sourced(),
  ...some({
    asked: z.number(),
    low: z.number(),
    high: z.number(),
    ...place(),
  }),
}));

/** A review, as `reviewPlan` makes it. */
export const reviewDocument = once(() =>
  open({
    ...head('review', 1),
    of: z.enum(['plan', 'record']),
    guideline: open({
      id: z.enum(Object.keys(guidelineNames) as (keyof typeof guidelineNames)[]),
      name: z.string(),
      ...sourced(),
    }),
    stops: stops(),
    findings: z.array(
      z.union([
        open({ ...cautionFields(), ...assessment() }),
        open({ ...cautionFields(), severity: z.literal('stop'), path: path(), measure: z.optional(z.undefined()) }),
      ]),
    ),
    inside: z.array(open(assessment())),
    notAssessed: z.array(z.enum(MEASURES())),
    disclaimers: disclaimers(),
  }),
);

const compared = once(() => Object.keys(LINES) as ComparedQuantity[]);

/** A comparison of two sessions, as `compareSessions` makes it. */
export const sessionComparisonDocument = once(() =>
  open({
    ...head('session-comparison', 1),
    rows: z.array(
      open({
        line: z.enum(Object.values(LINES)),
        quantity: z.enum(compared()),
        unit: code<Unit>(),
        ...some({ from: anyAnswer(), to: anyAnswer(), change: z.number(), changePercent: z.number() }),
      }),
    ),
    notKnown: z.array(z.enum(['equal-effect', ...compared()])),
    stops: stops(),
    cautions: cautions(),
  }),
);

const ofWeek = once(() => ({
  restrictionTime: answerOf('restriction-time', SECONDS),
  ...some({
    peakLoad: answerOf('peak-load', MASS),
    peakPercentOneRepMax: answerOf('peak-percent-of-maximum', ['%']),
    partialRestrictionTime: answerOf('partial-restriction-time', SECONDS),
  }),
}));
const weekSums = once(() =>
  open({
    sessions: answerOf('sessions', ['{sessions}']),
    restrictedSessions: answerOf('sessions', ['{sessions}']),
    ...some({
      restrictedAtRest: answerOf('sessions', ['{sessions}']),
      sessionLoad: answerOf('session-load', ['{AU}']),
    }),
    limbs: z.array(
      open({
        ...limbAndSide(),
        ...ofWeek(),
        exercises: z.array(
          open({
            exercise: text(MOST_NAME),
            ...ofWeek(),
            ...some({ percentLop: answerOf('percent-of-occlusion', ['%']) }),
          }),
        ),
        ...some({
          volumeLoad: answerOf('volume-load', MASS),
          relativePressureTime: answerOf('relative-pressure-time', ['%.min']),
          occlusion: open({ valueMmHg: positive(), measured: z.boolean(), ...some({ date: day() }) }),
          circumferenceCm: quantity('circumferenceCm'),
          worstPain: open({ value: z.number(), ...some({ site: z.enum(PAIN_SITES) }) }),
        }),
      }),
    ),
  }),
);

/** A comparison of weeks, as `compareWeeks` makes it. */
export const weekComparisonDocument = once(() =>
  open({
    ...head('week-comparison', 1),
    weeks: z.array(
      open({ week: z.int(), ...some({ deload: z.literal(true), planned: weekSums(), done: weekSums() }) }),
    ),
    goals: z.array(
      open({
        name: text(MOST_NAME),
        outcome: z.enum(GOAL_OUTCOMES),
        ...some({
          measure: z.enum(GOAL_MEASURES),
          ...place(),
          found: z.number(),
          atLeast: z.number(),
          atMost: z.number(),
        }),
      }),
    ),
    stops: stops(),
    cautions: cautions(),
    disclaimers: disclaimers(),
  }),
);
