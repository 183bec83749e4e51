import * as z from 'zod/mini';
import type { CautionCode } from '../answer/codes.js';
import { once } from '../answer/own.js';
import { occlusionEquations } from '../pressure/equations.js';
import { measurementMethods } from '../pressure/measured.js';
import {
  CIRCUMFERENCE_SITES,
  EXERCISE_MODES,
  LIMBS,
  LOAD_UNITS,
  POSTURES,
  SEXES,
  SIDES,
} from '../quantity/quantities.js';
import { TEMPO } from '../session/notation.js';
import { TEMPO_PHASES } from '../session/needs.js';
import { EXERCISE_SIDES, MOST_NAME, RESTRICTIONS } from '../session/prescription.js';
import { oneRepMaxEquations } from '../strength/equations.js';
import { LIFTS, TRAINING } from '../strength/lifts.js';
import { ROUNDINGS } from '../strength/plates.js';
import { MAXIMUM_OF } from '../strength/training-load.js';
import { PAIN_MOMENTS, PAIN_SITES } from './pain.js';
import type { DayCheck, Screening } from './questions.js';
import { load, occlusion, oneRepMax, sourced, values } from './schema-answers.js';
import {
  day,
  limbAndSide,
  line,
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
  typed,
  wording,
} from './schema-parts.js';
import { dayItems, REPLIES, SCREENING_OUTCOMES, screeningItems, type AskedItem } from './screening-items.js';
import { DECIDER_ROLES } from './stops.js';
import { SYMPTOM_CODES } from './symptoms.js';
import type { PlanExercise } from './types.js';

// Stops and the decisions about them.

/** Limbs of one person. */
export const MOST_LIMBS = 4;

const decision = named('stopDecision', () =>
  strict({
    stop: text(MOST_NAME),
    by: z.enum(DECIDER_ROLES),
    on: day(),
    why: wording(1000),
    ...some({ since: day() }),
  }),
);
const decisions = once(() => list(decision(), 100, 0));

/** The decisions of a request that is read field by field. */
export const decisionsRequest = once(() => strict(some({ decisions: decisions() })));

const stop = named('stop', () =>
  open({
    code: typed<CautionCode>(text(MOST_NAME)),
    text: text(4000),
    ...some({ about: text(MOST_NAME), values: values(), since: day(), ...limbAndSide() }),
    ...sourced(),
    ...some({ lifted: decision() }),
  }),
);
export const stops = once(() => list(stop(), 1000, 0));

// Screening and the check of the day.

const reply = named('reply', () => z.enum(REPLIES));
const repliesTo = <C extends string>(items: readonly AskedItem<C>[]) =>
  strict(some(Object.fromEntries(items.map(({ code }) => [code, reply()])) as Record<C, ReturnType<typeof reply>>));

/** What `screen` takes. */
export const screeningRequest = once(() =>
  strict({
    answers: repliesTo(screeningItems),
    ...some({ label: line(MOST_NAME), date: day(), ...numbers('ageYears', 'systolicMmHg', 'diastolicMmHg') }),
  }),
);

/** What `checkDay` takes. */
export const dayCheckRequest = once(() =>
  strict({
    date: day(),
    answers: repliesTo(dayItems),
    ...some({ label: line(MOST_NAME), ...numbers('systolicMmHg', 'diastolicMmHg', 'painNow') }),
  }),
);

/** Answers that are given to another request: the rest of the document is worked out again from them. */
const answered = <D extends string, R extends z.ZodMiniType>(document: D, request: R) =>
  open({
    schemaVersion: z.literal(1),
    outcome: z.enum(SCREENING_OUTCOMES),
    complete: z.boolean(),
    document: z.literal(document),
    request,
  });
const screeningGiven = once(() => typed<Screening>(answered('screening', screeningRequest())));
export const dayCheckGiven = named('dayCheckGiven', () => typed<DayCheck>(answered('day-check', dayCheckRequest())));

// Sets.

/** What a set lasts: repetitions or a time; that one of them is there is a relation. */
export const setLength = once(() => some(numbers('repetitions', 'durationS')));
/** What a set may have of its own, planned or done. */
export const ofSet = once(() => some(numbers('load', 'repetitionsInReserve', 'reserveRpe')));
const askedSet = named('askedSet', () =>
  strict({ ...setLength(), ...ofSet(), ...some(numbers('restS', 'percentOneRepMax')) }),
);
const doneSet = once(() => strict({ ...setLength(), ...ofSet(), ...some(numbers('restS')) }));

// A plan.

const measured = once(() =>
  strict({
    valueMmHg: quantity('valueMmHg'),
    method: z.enum(measurementMethods),
    ...some({
      side: z.enum(SIDES),
      posture: z.enum(POSTURES),
      date: day(),
      ...numbers('cuffWidthCm', 'standardDeviationMmHg'),
    }),
  }),
);
const limb = once(() =>
  strict({
    ...limbAndSide(),
    ...some({
      ...numbers('circumferenceCm', 'cuffWidthCm', 'percentLop', 'gaugeStepMmHg', 'ceilingMmHg'),
      measured: measured(),
      occlusion: z.union([quantity('occlusionMmHg'), occlusion()]),
      circumferenceSite: z.enum(CIRCUMFERENCE_SITES),
      equation: z.enum(occlusionEquations.map(({ id }) => id)),
    }),
  }),
);

const maximum = once(() =>
  strict({
    load: quantity('load'),
    ...some({
      unit: z.enum(LOAD_UNITS),
      ...numbers('repetitions', 'repetitionsInReserve', 'reserveRpe'),
      equation: z.enum(['auto', ...oneRepMaxEquations.map(({ id }) => id)]),
      lift: z.enum(LIFTS),
      training: z.enum(TRAINING),
    }),
  }),
);
const percentRange = named('percentRange', () => {
  const end = quantity('percentOneRepMax');
  return strict({ from: end, to: end });
});
const tempo = once(() =>
  z.union([
    pattern(TEMPO, TEMPO_PHASES),
    strict({ ...numbers('eccentricS', 'concentricS'), ...some(numbers('bottomS', 'topS')) }),
  ]),
);

/** Every field of an exercise; which go together is a relation, for `planSession` and the type. */
export const exerciseFields = once(() =>
  strict({
    name: line(MOST_NAME),
    limb: z.enum(LIMBS),
    restriction: z.enum(RESTRICTIONS),
    ...some({
      mode: z.enum(EXERCISE_MODES),
      posture: z.enum(POSTURES),
      side: z.enum(EXERCISE_SIDES),
      changeS: quantity('changeS'),
      oneRepMax: z.union([quantity('load'), maximum(), oneRepMax()]),
      percentOneRepMax: z.union([quantity('percentOneRepMax'), percentRange()]),
      load: z.union([quantity('load'), load()]),
      unloaded: z.literal(true),
      bodyMassPercent: quantity('bodyMassPercent'),
      unit: z.enum(LOAD_UNITS),
      step: quantity('step'),
      available: list(quantity('load'), 1000),
      ...numbers('bar', 'collars'),
      plates: list(strict({ mass: quantity('mass'), ...some(numbers('count')) }), 50),
      rounding: z.enum(ROUNDINGS),
      maximumOf: z.enum(MAXIMUM_OF),
      intensityPercent: quantity('intensityPercent'),
      scheme: text(1000),
      sets: list(askedSet(), 50),
      lastSetToFailure: z.literal(true),
      raisedFrom: list(quantity('repetitions'), 50),
      warmUp: list(askedSet(), 50),
      tempo: tempo(),
      ...numbers('restS', 'percentLop', 'restPercentLop', 'reperfusionS'),
    }),
  }),
);

/** What `planSession` takes. */
export const planRequest = once(() =>
  strict({
    ...numbers('systolicMmHg', 'diastolicMmHg'),
    posture: z.enum(POSTURES),
    limbs: list(limb(), MOST_LIMBS),
    exercises: list(typed<PlanExercise>(exerciseFields()), 50),
    ...some({
      label: line(MOST_NAME),
      date: day(),
      notes: text(4000),
      stops: stops(),
      decisions: decisions(),
      screening: screeningGiven(),
      dayCheck: dayCheckGiven(),
      sex: z.enum(SEXES),
      ...numbers('ageYears', 'bodyMassKg', 'sessionsPerWeek', 'weeks', 'reperfusionS'),
    }),
  }),
);

// What was done of a plan.

export const painReport = once(() => ({
  site: z.enum(PAIN_SITES),
  ...some({ ...limbAndSide(), ...numbers(...PAIN_MOMENTS) }),
}));
export const feelings = once(() =>
  some({
    ...numbers('sessionOfDay', 'sessionRpe', 'sessionS', 'systolicMmHg', 'diastolicMmHg'),
    notes: text(4000),
  }),
);
export const reported = once(() => list(z.enum(SYMPTOM_CODES), 50, 0));
export const doneDetails = once(() => ({
  ...some(
    numbers(
      'load',
      'heldMmHg',
      'restHeldMmHg',
      'occlusionMmHg',
      'reperfusedBeforeS',
      'inflatedBeforeS',
      'deflatedAfterS',
    ),
  ),
  ...some({ lastSetToFailure: z.boolean(), instead: text(MOST_NAME), unloaded: z.literal(true) }),
}));

const doneItem = once(() =>
  strict({
    ...place(),
    ...some({ sets: list(z.union([quantity('repetitions'), doneSet()]), 50), stoppedEarly: z.boolean() }),
    ...doneDetails(),
  }),
);
export const done = once(() => ({
  date: day(),
  ...some({
    asPlanned: z.literal(true),
    items: list(doneItem(), 200, 0),
    symptoms: reported(),
    pain: list(strict(painReport()), 20, 0),
    dayCheck: dayCheckGiven(),
  }),
  ...feelings(),
}));

/** What `recordSession` takes besides the plan. */
export const doneRequest = once(() => strict(done()));
