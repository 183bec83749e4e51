import { DAY_EXPECTED } from '../answer/needs.js';
import * as z from 'zod/mini';
import type { Answer, AnswerKind, ErrorPart, Severity } from '../answer/answer.js';
import type { AssumptionCode, CautionCode } from '../answer/codes.js';
import { grades } from '../evidence/grades.js';
import type { SourceId } from '../evidence/sources.js';
import { measurementMethods } from '../pressure/measured.js';
import { occlusionEquations } from '../pressure/equations.js';
import {
  CIRCUMFERENCE_SITES,
  EXERCISE_MODES,
  LIMBS,
  LOAD_UNITS,
  POSTURES,
  quantities,
  SEXES,
  SIDES,
  type QuantityName,
  type Unit,
} from '../quantity/quantities.js';
import { TEMPO } from '../session/notation.js';
import { EXERCISE_SIDES, RESTRICTIONS } from '../session/prescription.js';
import { LINES, type ComparedQuantity } from '../session/compare.js';
import { SESSION_EVENTS } from '../session/timeline.js';
import { oneRepMaxEquations } from '../strength/equations.js';
import { LIFTS, TRAINING } from '../strength/lifts.js';
import { MAXIMUM_OF } from '../strength/training-load.js';
import { DAY } from '../answer/day.js';
import { once } from '../answer/own.js';
import { guidelineNames, measures, type Measure } from './measures.js';
import type { PlanCode } from './document-messages.js';
import { PAIN_MOMENTS, PAIN_RULE_IDS, PAIN_SITES } from './pain.js';
import type { DocumentAnswer, Stated, StatedAnswer } from './stated.js';
import { progressionRules } from './progression-rules.js';
import type { DayCheck, Screening } from './questions.js';
import { dayItems, SCREENING_OUTCOMES, screeningItems, type AskedItem } from './screening-items.js';
import { GOAL_MEASURES } from './stage-goals.js';
import { DECIDER_ROLES } from './stops.js';
import { SYMPTOM_CODES } from './symptoms.js';
import { MEASURED_AGAIN, PROGRESSION_ACTIONS, type PlanExercise } from './types.js';
import { KIND_OF_ANSWER, LINE_OF, POINTER, TEXT_OF, VERSION, WORDING_OF } from './needs.js';
import { TEMPO_PHASES } from '../session/needs.js';

// Each declaration is made when it is first needed: importing makes none of them, and a bundler leaves out those that
// nothing uses.

/** Names for JSON Schema, in a registry of the library’s own: the one that an app shares with zod is left alone. */
export const annotations = /* @__PURE__ */ z.registry<{ id?: string; title?: string; description?: string }>();

// The parts that every declaration is put together from.

/** A number of the vocabulary: its bounds stand in one table for readers and schemas alike. */
function quantity(name: QuantityName) {
  const { min, max, name: title, unit, ...rest } = quantities[name];
  const number = 'whole' in rest ? z.int() : z.number();
  return number
    .check(z.minimum(min), z.maximum(max))
    .register(annotations, { title, description: `UCUM unit: ${unit}` });
}

/** Numbers of the vocabulary under their own names. */
const numbers = <N extends QuantityName>(...names: N[]) =>
  Object.fromEntries(names.map((name) => [name, quantity(name)])) as Record<N, ReturnType<typeof quantity>>;

type Shape = Readonly<Record<string, z.ZodMiniType>>;

/** Fields that may be left out. */
const some = <S extends Shape>(shape: S) =>
  Object.fromEntries(Object.entries(shape).map(([name, type]) => [name, z.optional(type)])) as {
    [N in keyof S]: z.ZodMiniOptional<S[N]>;
  };

const list = <T extends z.ZodMiniType>(of: T, most: number, least = 1) =>
  z.array(of).check(...(least > 0 ? [z.minLength(least)] : []), z.maxLength(most));

// A pattern’s message is the code of what it asks for, and the most characters.

/** Text of at most so many characters; counted as JSON Schema counts them. */
const text = (most: number) =>
  z.string().check(z.regex(new RegExp(`^[\\s\\S]{1,${most}}$`, 'u'), `${TEXT_OF[0]} ${most}`));

/** Text of at most so many characters that says something. */
const wording = (most: number) =>
  z.string().check(z.regex(new RegExp(`^(?=[\\s\\S]*\\S)[\\s\\S]{1,${most}}$`, 'u'), `${WORDING_OF[0]} ${most}`));

/** One line of a page that says something: a second line could pass for one of the library. */
const line = (most: number) =>
  z.string().check(z.regex(new RegExp(`^(?=.*\\S).{1,${most}}$`, 'u'), `${LINE_OF[0]} ${most}`));

/** A day of the calendar. */
const day = /* @__PURE__ */ once(() =>
  z.string().check(z.regex(DAY, DAY_EXPECTED[0])).register(annotations, { id: 'day' }),
);

/** A code of a catalogue, which is looked up when the document is verified. */
const code = <C extends string>() => z.string() as unknown as z.ZodMiniType<C, C>;

/** Parts by names of any kind. `z.record` does the same with 3 kB more for an app to load. */
const byName = <T extends z.ZodMiniType>(part: T) => z.catchall(z.object({}), part);

/** A request refuses fields it does not know: they are slips. */
const strict = z.strictObject;
/** A document keeps fields it does not know, and never looks at them: an app or a later version put them there. */
const open = z.looseObject as unknown as typeof z.strictObject;

const auto = <T extends string>(equations: readonly { readonly id: T }[]) =>
  z.enum(['auto', ...equations.map(({ id }) => id)]);

// Requests.

/** What a set lasts: repetitions or a time; that one of them is there is a relation. */
const setLength = /* @__PURE__ */ once(() => some(numbers('repetitions', 'durationS')));

const values = /* @__PURE__ */ once(() =>
  byName(z.union([z.string(), z.number(), z.array(z.string())])).register(annotations, { id: 'values' }),
);
const source = /* @__PURE__ */ once(() => code<SourceId>());

const decision = /* @__PURE__ */ once(() =>
  strict({
    stop: text(120),
    by: z.enum(DECIDER_ROLES),
    on: day(),
    why: wording(1000),
    ...some({ since: day() }),
  }).register(annotations, { id: 'stopDecision' }),
);
const decisions = /* @__PURE__ */ once(() => list(decision(), 100, 0));

/** The decisions of a request that is read field by field. */
export const decisionsRequest = /* @__PURE__ */ once(() => strict(some({ decisions: decisions() })));

const stops = /* @__PURE__ */ once(() =>
  list(
    open({
      code: text(120) as unknown as z.ZodMiniType<CautionCode, CautionCode>,
      text: text(4000),
      ...some({
        about: text(120),
        values: values(),
        since: day(),
        limb: z.enum(LIMBS),
        side: z.enum(SIDES),
        source: source(),
        lifted: decision(),
      }),
    }).register(annotations, { id: 'stop' }),
    1000,
    0,
  ),
);

/** What a set may have of its own, planned or done. */
const ofSet = /* @__PURE__ */ once(() => some(numbers('load', 'repetitionsInReserve', 'reserveRpe')));
const askedSet = /* @__PURE__ */ once(() =>
  strict({ ...setLength(), ...ofSet(), ...some(numbers('restS', 'percentOneRepMax')) }).register(annotations, {
    id: 'askedSet',
  }),
);
const doneSet = /* @__PURE__ */ once(() => strict({ ...setLength(), ...ofSet(), ...some(numbers('restS')) }));

const replies = /* @__PURE__ */ once(() => z.enum(['yes', 'no', 'unknown']).register(annotations, { id: 'reply' }));
const repliesTo = <C extends string>(items: readonly AskedItem<C>[]) =>
  strict(
    Object.fromEntries(items.map(({ code }) => [code, z.optional(replies())])) as Record<
      C,
      z.ZodMiniOptional<ReturnType<typeof replies>>
    >,
  );

/** What `screen` takes. */
export const screeningRequest = /* @__PURE__ */ once(() =>
  strict({
    answers: repliesTo(screeningItems),
    ...some({ label: line(120), date: day(), ...numbers('ageYears', 'systolicMmHg', 'diastolicMmHg') }),
  }),
);

/** What `checkDay` takes. */
export const dayCheckRequest = /* @__PURE__ */ once(() =>
  strict({
    date: day(),
    answers: repliesTo(dayItems),
    ...some({ label: line(120), ...numbers('systolicMmHg', 'diastolicMmHg', 'painNow') }),
  }),
);

/** Answers that are given to another request: the rest of the document is worked out again from them. */
const answered = /* @__PURE__ */ once(() => ({
  schemaVersion: z.literal(1),
  outcome: z.enum(SCREENING_OUTCOMES),
  complete: z.boolean(),
}));
const screeningGiven = /* @__PURE__ */ once(
  () =>
    open({
      ...answered(),
      document: z.literal('screening'),
      request: screeningRequest(),
    }) as unknown as z.ZodMiniType<Screening, Screening>,
);
const dayCheckGiven = /* @__PURE__ */ once(
  () =>
    open({
      ...answered(),
      document: z.literal('day-check'),
      request: dayCheckRequest(),
    }).register(annotations, { id: 'dayCheckGiven' }) as unknown as z.ZodMiniType<DayCheck, DayCheck>,
);

// Answers.

const grade = /* @__PURE__ */ once(() =>
  z.enum(Object.keys(grades) as (keyof typeof grades)[]).register(annotations, { id: 'grade' }),
);
const path = /* @__PURE__ */ once(() => z.array(z.union([z.string(), z.number()])));
const message = /* @__PURE__ */ once(() => ({ code: z.string(), text: z.string(), ...some({ values: values() }) }));
// An id makes a part one definition of the JSON Schema.
const assumption = /* @__PURE__ */ once(() =>
  open({ code: code<AssumptionCode>(), ...some({ values: values() }) }).register(annotations, {
    id: 'assumption',
  }),
);
const cautionFields = /* @__PURE__ */ once(() => ({
  ...message(),
  code: code<CautionCode>(),
  severity: z.enum(['note', 'caution', 'stop'] as const satisfies readonly Severity[]),
  ...some({ path: path(), source: source() }),
}));
const caution = /* @__PURE__ */ once(() => open(cautionFields()).register(annotations, { id: 'caution' }));
const cautions = /* @__PURE__ */ once(() => z.array(caution()));
const assumptions = /* @__PURE__ */ once(() => z.array(assumption()));
const sentence = /* @__PURE__ */ once(() => open(message()).register(annotations, { id: 'sentence' }));
const disclaimers = /* @__PURE__ */ once(() =>
  z.array(open({ code: code<PlanCode>(), text: z.string(), ...some({ source: source() }) })),
);
const disclaimerCodes = /* @__PURE__ */ once(() =>
  z.array(open({ code: code<PlanCode>(), ...some({ source: source() }) })),
);

const positive = /* @__PURE__ */ once(() => z.number().check(z.minimum(0.001), z.maximum(1e6)));
const time = /* @__PURE__ */ once(() => z.number().check(z.minimum(0)));

/** What every answer has besides its kind, unit and inputs. */
const evidence = /* @__PURE__ */ once(() => ({
  value: z.number(),
  equation: z.string(),
  evidence: grade(),
  assumptions: assumptions(),
  cautions: cautions(),
  ...some({
    ownEquation: open({
      formula: z.string(),
      symbols: byName(z.union([z.string(), open({ field: z.string(), codes: byName(z.number()) })])),
      ...some({ base: z.string() }),
    }).register(annotations, { id: 'ownEquation' }),
    lower: z.number(),
    upper: z.number(),
    level: z.literal(0.95),
    scale: z.literal('log'),
    standardDeviation: time(),
    errors: z
      .array(open({ part: code<ErrorPart['part']>(), standardDeviation: time(), evidence: grade() }))
      .register(annotations, { id: 'errors' }),
    rounding: open({
      from: z.number(),
      to: z.enum(['down', 'nearest']),
      ...some({ step: z.number(), available: z.array(z.number()) }),
    }).register(annotations, { id: 'rounding' }),
  }),
}));
const ends = /* @__PURE__ */ once(() => some({ lower: z.number(), upper: z.number() }));
/** The percentages that a rounded value really is, by its kind. */
const reached = /* @__PURE__ */ once(() => ({
  'cuff-pressure': open({
    percentLop: z.number(),
    ...ends(),
    ...some({ occlusionChancePercent: z.number(), highestMmHg: z.number() }),
  }).register(annotations, { id: 'reachedPressure' }),
  'training-load': open({ percentOneRepMax: z.number(), ...ends() }).register(annotations, { id: 'reachedLoad' }),
}));
/** The fields of an answer, without what differs by its kind. */
export const answerFields = /* @__PURE__ */ once(() =>
  open({ ...evidence(), ...some({ reached: z.union(Object.values(reached())) }) }),
);

/** An answer of a kind; `inputs` that are worked with later are declared. */
const answerOf = <K extends AnswerKind>(
  kind: K,
  units: readonly Unit[],
  value: z.ZodMiniType<number> = time(),
  inputs?: z.ZodMiniType,
) =>
  open({
    ...evidence(),
    kind: z.literal(kind),
    value,
    unit: z.enum(units),
    inputs: inputs ?? byName(z.unknown()),
    ...(kind in reached() && some({ reached: reached()[kind as keyof ReturnType<typeof reached>] })),
  }).register(annotations, { id: kind }) as unknown as z.ZodMiniType<Answer<K>, Answer<K>>;

const PRESSURE = ['mm[Hg]'] as const;
const MASS = ['kg', '[lb_av]'] as const;
const SECONDS = ['s'] as const;
const occlusion = /* @__PURE__ */ once(() => answerOf('occlusion-pressure', PRESSURE, positive()));
const oneRepMax = /* @__PURE__ */ once(() =>
  answerOf('one-repetition-maximum', MASS, positive()).register(annotations, {
    id: 'oneRepetitionMaximum',
  }),
);
// A load of the user’s own has no maximum behind it.
const load = /* @__PURE__ */ once(() =>
  answerOf(
    'training-load',
    MASS,
    positive(),
    open(some({ oneRepMax: oneRepMax(), percentOneRepMax: quantity('percentOneRepMax') })),
  ),
);

// Requests that take answers.

const limb = /* @__PURE__ */ once(() =>
  strict({
    limb: z.enum(LIMBS),
    side: z.enum(SIDES),
    ...some({
      ...numbers('circumferenceCm', 'cuffWidthCm', 'percentLop', 'gaugeStepMmHg', 'ceilingMmHg'),
      measured: strict({
        valueMmHg: quantity('valueMmHg'),
        method: z.enum(measurementMethods),
        ...some({
          side: z.enum(SIDES),
          posture: z.enum(POSTURES),
          date: day(),
          ...numbers('cuffWidthCm', 'standardDeviationMmHg'),
        }),
      }),
      occlusion: z.union([quantity('occlusionMmHg'), occlusion()]),
      circumferenceSite: z.enum(CIRCUMFERENCE_SITES),
      equation: z.enum(occlusionEquations.map(({ id }) => id)),
    }),
  }),
);

const percentRange = /* @__PURE__ */ once(() => {
  const end = quantity('percentOneRepMax');
  return strict({ from: end, to: end }).register(annotations, { id: 'percentRange' });
});

/** Every field of an exercise; which go together is a relation, for `planSession` and the type. */
export const exerciseFields = /* @__PURE__ */ once(() =>
  strict({
    name: line(120),
    limb: z.enum(LIMBS),
    restriction: z.enum(RESTRICTIONS),
    ...some({
      mode: z.enum(EXERCISE_MODES),
      posture: z.enum(POSTURES),
      side: z.enum(EXERCISE_SIDES),
      changeS: quantity('changeS'),
      oneRepMax: z.union([
        quantity('load'),
        strict({
          load: quantity('load'),
          ...some({
            unit: z.enum(LOAD_UNITS),
            ...numbers('repetitions', 'repetitionsInReserve', 'reserveRpe'),
            equation: auto(oneRepMaxEquations),
            lift: z.enum(LIFTS),
            training: z.enum(TRAINING),
          }),
        }),
        oneRepMax(),
      ]),
      percentOneRepMax: z.union([quantity('percentOneRepMax'), percentRange()]),
      load: z.union([quantity('load'), load()]),
      unloaded: z.literal(true),
      bodyMassPercent: quantity('bodyMassPercent'),
      unit: z.enum(LOAD_UNITS),
      step: quantity('step'),
      available: list(quantity('load'), 1000),
      ...numbers('bar', 'collars'),
      plates: list(strict({ mass: quantity('mass'), ...some(numbers('count')) }), 50),
      rounding: z.enum(['nearest', 'down']),
      maximumOf: z.enum(MAXIMUM_OF),
      intensityPercent: quantity('intensityPercent'),
      scheme: text(1000),
      sets: list(askedSet(), 50),
      lastSetToFailure: z.literal(true),
      raisedFrom: list(quantity('repetitions'), 50),
      warmUp: list(askedSet(), 50),
      tempo: z.union([
        z.string().check(z.regex(TEMPO, TEMPO_PHASES[0])),
        strict({ ...numbers('eccentricS', 'concentricS'), ...some(numbers('bottomS', 'topS')) }),
      ]),
      ...numbers('restS', 'percentLop', 'restPercentLop', 'reperfusionS'),
    }),
  }),
);
const exercise = exerciseFields() as unknown as z.ZodMiniType<PlanExercise, PlanExercise>;

/** What `planSession` takes. */
export const planRequest = /* @__PURE__ */ once(() =>
  strict({
    ...numbers('systolicMmHg', 'diastolicMmHg'),
    posture: z.enum(POSTURES),
    limbs: list(limb(), 4),
    exercises: list(exercise, 50),
    ...some({
      label: line(120),
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

// Numbers that a document states.

const pointer = /* @__PURE__ */ once(() => ({
  ref: z.string().check(z.regex(/^\/answers\/\d{1,4}$/, POINTER[0])),
}));
const stated = (units: readonly Unit[]) =>
  open({ value: time(), unit: z.enum(units), ...ends() }) as unknown as z.ZodMiniType<Stated, Stated>;
/** A number whose answer is among the answers of its document. */
const statedAnswer = (units: readonly Unit[], id: string) =>
  open({
    value: positive(),
    unit: z.enum(units),
    ...ends(),
    ...pointer(),
  }).register(annotations, { id }) as unknown as z.ZodMiniType<StatedAnswer, StatedAnswer>;

const seconds = /* @__PURE__ */ once(() => stated(SECONDS).register(annotations, { id: 'seconds' }));
const mass = /* @__PURE__ */ once(() => stated(MASS).register(annotations, { id: 'mass' }));
const statedTarget = /* @__PURE__ */ once(() => statedAnswer(PRESSURE, 'statedPressure'));
const statedLoad = /* @__PURE__ */ once(() => statedAnswer(MASS, 'statedLoad'));

const restriction = /* @__PURE__ */ once(() => ({
  restrictionTime: seconds(),
  ...some({
    partialRestrictionTime: seconds(),
    pressureTime: stated(['mm[Hg].min']).register(annotations, { id: 'pressureTime' }),
    relativePressureTime: stated(['%.min']).register(annotations, { id: 'relativePressureTime' }),
  }),
}));
const sessionLoad = /* @__PURE__ */ once(() => stated(['{AU}']));
const exerciseTotals = /* @__PURE__ */ once(() => ({
  repetitions: stated(['{reps}']),
  timeUnderTension: seconds(),
  ...restriction(),
  longestRestriction: seconds(),
  sessionTime: seconds(),
  ...some({
    volumeLoad: mass(),
    bodyMassVolumeLoad: mass(),
    relativeVolumeLoad: stated(['1']),
    reperfusionTime: seconds(),
  }),
}));
const totals = /* @__PURE__ */ once(() => open(exerciseTotals()).register(annotations, { id: 'totals' }));
const sessionTotals = /* @__PURE__ */ once(() =>
  open({
    ...exerciseTotals(),
    ...some({ peakLoad: mass(), peakPercentOneRepMax: stated(['%']), sessionLoad: sessionLoad() }),
  }),
);

const answerPointer = /* @__PURE__ */ once(() => open(pointer()).register(annotations, { id: 'answerPointer' }));
const input = /* @__PURE__ */ once(() => z.union([z.string(), z.number(), answerPointer(), z.array(answerPointer())]));
/** An answer of a document; `inputs` that are worked with later are declared. */
const documentAnswer = (kind: z.ZodMiniType<string>, inputs: Shape = {}, more: Shape = {}) =>
  open({
    ...evidence(),
    kind,
    unit: code<Unit>(),
    inputs: z.catchall(z.object(inputs), input()),
    cautions: z.array(open({ ...cautionFields(), text: z.optional(z.string()) })),
    ...more,
  });
const asked = /* @__PURE__ */ once(() => numbers('percentLop', 'percentOneRepMax'));

/** What a document has of answers; any kind may be among them. */
const answersOnce = /* @__PURE__ */ once(() => ({
  equations: z.array(z.string()),
  answers: list(
    z
      .union([
        documentAnswer(
          z.literal('cuff-pressure'),
          { occlusion: answerPointer(), percentLop: asked().percentLop },
          some({ reached: reached()['cuff-pressure'] }),
        ),
        documentAnswer(
          z.literal('training-load'),
          some({ oneRepMax: answerPointer(), percentOneRepMax: asked().percentOneRepMax }),
          some({ reached: reached()['training-load'] }),
        ),
        documentAnswer(z.string().check(z.regex(/^(?!(cuff-pressure|training-load)$)/, KIND_OF_ANSWER[0]))),
      ])
      .register(annotations, { id: 'answer' }) as unknown as z.ZodMiniType<DocumentAnswer, DocumentAnswer>,
    2000,
    0,
  ),
}));

// Documents.

/** What every document says of itself. */
const head = <D extends string, V extends 1 | 2>(document: D, version: V) => ({
  document: z.literal(document),
  schemaVersion: z.literal(version),
  libraryVersion: z.string().check(z.regex(/^\d{1,4}\.\d{1,4}\.\d{1,4}(-(alpha|beta|rc)(\.\d{1,4})?)?$/, VERSION[0])),
});

// Where sides take turns, a rest holds the set of the other side: longer than any that is asked for.
const sets = /* @__PURE__ */ once(() =>
  list(open({ ...setLength(), ...ofSet(), restS: z.number().check(z.minimum(0), z.maximum(20_000)) }), 50).register(
    annotations,
    { id: 'sets' },
  ),
);
const place = /* @__PURE__ */ once(() => ({ exercise: text(120), limb: z.enum(LIMBS), side: z.enum(SIDES) }));
const prescribed = /* @__PURE__ */ once(() => ({
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

/** An exercise on a limb: with a cuff and what it is set to, or without. */
const itemOf = <P extends z.core.$ZodShape, C extends z.core.$ZodShape, T extends z.ZodMiniType>(
  parts: P,
  cuff: C,
  pressure: T,
) => {
  const restricted = RESTRICTIONS.filter((restriction) => restriction !== 'none');
  const cuffed = { ...cuff, target: pressure, ...some({ restTarget: pressure }) };
  const either = z.discriminatedUnion('restriction', [
    open({ ...parts, ...cuffed, restriction: z.enum(restricted) }),
    open({ ...parts, restriction: z.literal('none') }),
  ]);
  /** The two as one, as the types have them. */
  const one = (shape: P & { [N in keyof C]: z.ZodMiniOptional<C[N]> }) =>
    open({ ...shape, restriction: z.enum(RESTRICTIONS), ...some({ target: pressure, restTarget: pressure }) });
  return either as unknown as ReturnType<typeof one>;
};

const timeline = /* @__PURE__ */ once(() =>
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
  }).register(annotations, { id: 'timeline' }),
);

const limbTotals = /* @__PURE__ */ once(() =>
  z.array(
    open({
      limb: z.enum(LIMBS),
      side: z.enum(SIDES),
      exercises: z.int().check(z.minimum(0)),
      ...restriction(),
      ...some({ longestRestriction: seconds(), volumeLoad: mass() }),
    }),
  ),
);

const planItem = /* @__PURE__ */ once(() =>
  itemOf(
    { ...prescribed(), totals: totals(), ...some({ warmUp: sets(), load: statedLoad(), upperLoad: statedLoad() }) },
    {},
    statedTarget(),
  ),
);

/** A plan, as `planSession` makes it. */
export const planDocument = /* @__PURE__ */ once(() =>
  open({
    ...head('plan', 2),
    ...answersOnce(),
    request: planRequest(),
    items: list(planItem(), 200),
    limbs: limbTotals(),
    session: open({ timeline: timeline(), totals: sessionTotals() }),
    assumptions: assumptions(),
    stops: stops(),
    cautions: cautions(),
    disclaimers: disclaimerCodes(),
    stopCriteria: disclaimerCodes(),
  }),
);

const painReport = /* @__PURE__ */ once(() => ({
  site: z.enum(PAIN_SITES),
  ...some({ limb: z.enum(LIMBS), side: z.enum(SIDES), ...numbers(...PAIN_MOMENTS) }),
}));
const feelings = /* @__PURE__ */ once(() =>
  some({
    ...numbers('sessionOfDay', 'sessionRpe', 'sessionS', 'systolicMmHg', 'diastolicMmHg'),
    notes: text(4000),
  }),
);

const doneDetails = /* @__PURE__ */ once(() =>
  some(
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
);
const lastDone = /* @__PURE__ */ once(() =>
  some({ lastSetToFailure: z.boolean(), instead: text(120), unloaded: z.literal(true) }),
);
const reported = /* @__PURE__ */ once(() => list(z.enum(SYMPTOM_CODES), 50, 0));

const done = /* @__PURE__ */ once(() => ({
  date: day(),
  ...some({
    asPlanned: z.literal(true),
    items: list(
      strict({
        ...place(),
        ...some({ sets: list(z.union([quantity('repetitions'), doneSet()]), 50), stoppedEarly: z.boolean() }),
        ...doneDetails(),
        ...lastDone(),
      }),
      200,
      0,
    ),
    symptoms: reported(),
    pain: list(strict(painReport()), 20, 0),
    dayCheck: dayCheckGiven(),
  }),
  ...feelings(),
}));

/** What `recordSession` takes besides the plan. */
export const doneRequest = /* @__PURE__ */ once(() => strict(done()));

/** What `recordSession` takes. */
export const recordRequest = /* @__PURE__ */ once(() => strict({ plan: planDocument(), ...done() }));

/** What a record says of an exercise on a limb, besides its numbers. */
const recorded = /* @__PURE__ */ once(() => ({
  ...prescribed(),
  ...some(numbers('cuffWidthCm', 'circumferenceCm')),
  done: open({
    sets: sets(),
    stoppedEarly: z.boolean(),
    ...doneDetails(),
    ...some({ unit: z.enum(LOAD_UNITS) }),
    ...lastDone(),
  }),
}));

const recordItem = /* @__PURE__ */ once(() =>
  itemOf(
    { ...recorded(), totals: totals(), ...some({ load: statedLoad(), upperLoad: statedLoad() }) },
    {},
    statedTarget(),
  ),
);

/** A record, as `recordSession` makes it. */
export const recordDocument = /* @__PURE__ */ once(() =>
  open({
    ...head('record', 2),
    ...answersOnce(),
    date: day(),
    posture: z.enum(POSTURES),
    items: list(recordItem(), 200),
    limbs: limbTotals(),
    symptoms: reported(),
    ...feelings(),
    ...some({
      label: text(120),
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

const screeningFindings = /* @__PURE__ */ once(() =>
  z.array(open({ ...cautionFields(), outcome: z.enum(['refer', 'caution']), evidence: grade() })),
);
/** What a document of answers has, with its request. */
const concluded = /* @__PURE__ */ once(() => ({
  outcome: z.enum(SCREENING_OUTCOMES),
  complete: z.boolean(),
  findings: screeningFindings(),
  unanswered: z.array(open({ code: z.string(), question: z.string() })),
  disclaimers: disclaimers(),
}));

/** A screening, as `screen` makes it. */
export const screeningDocument = /* @__PURE__ */ once(() =>
  open({
    ...head('screening', 1),
    request: screeningRequest(),
    ...concluded(),
    thrombosisScore: answerOf('thrombosis-score', ['1']),
  }),
);

/** A check of the day, as `checkDay` makes it. */
export const dayCheckDocument = /* @__PURE__ */ once(() =>
  open({ ...head('day-check', 1), request: dayCheckRequest(), ...concluded() }),
);

/** Where something is, and where it goes: nothing where that is not known. */
const fromTo = <T extends z.ZodMiniType>(number: T) => ({ from: number, ...some({ to: number }) });

const setsCounted = /* @__PURE__ */ once(() => list(open(setLength()), 50));

/** A proposal, as `nextSession` makes it. */
export const proposalDocument = /* @__PURE__ */ once(() =>
  open({
    ...head('proposal', 1),
    painRule: open({ id: z.enum(PAIN_RULE_IDS), evidence: grade(), ...some({ source: source() }) }),
    rule: open({
      id: z.enum(progressionRules.map(({ id }) => id)),
      text: z.string(),
      evidence: grade(),
      ...some({ source: source() }),
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
        ...some({ source: source() }),
      }),
    ),
    stops: stops(),
    cautions: cautions(),
    disclaimers: disclaimers(),
  }),
);

/** Any answer, read back on its own, with the answers that it was worked out from. */
export const anyAnswer = /* @__PURE__ */ once(
  () =>
    open({
      ...evidence(),
      kind: code<AnswerKind>(),
      unit: code<Unit>(),
      inputs: byName(z.union([z.string(), z.number(), z.lazy(innerAnswer), z.array(z.lazy(innerAnswer))])),
      ...some({ reached: z.union(Object.values(reached())) }),
    }) as unknown as z.ZodMiniType<Answer, Answer>,
);
function innerAnswer(): z.ZodMiniType<Answer, Answer> {
  return anyAnswer();
}

const MEASURES = /* @__PURE__ */ once(() => Object.keys(measures) as Measure[]);
const assessment = /* @__PURE__ */ once(() => ({
  measure: z.enum(MEASURES()),
  found: z.number(),
  unit: code<Unit>(),
  evidence: grade(),
  path: path(),
  ...some({
    asked: z.number(),
    low: z.number(),
    high: z.number(),
    source: source(),
    exercise: text(120),
    limb: z.enum(LIMBS),
    side: z.enum(SIDES),
  }),
}));

/** A review, as `reviewPlan` makes it. */
export const reviewDocument = /* @__PURE__ */ once(() =>
  open({
    ...head('review', 1),
    of: z.enum(['plan', 'record']),
    guideline: open({
      id: z.enum(Object.keys(guidelineNames) as (keyof typeof guidelineNames)[]),
      name: z.string(),
      ...some({ source: source() }),
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

const compared = /* @__PURE__ */ once(() => Object.keys(LINES) as ComparedQuantity[]);

/** A comparison of two sessions, as `compareSessions` makes it. */
export const sessionComparisonDocument = /* @__PURE__ */ once(() =>
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

const ofWeek = /* @__PURE__ */ once(() => ({
  restrictionTime: answerOf('restriction-time', SECONDS),
  ...some({
    peakLoad: answerOf('peak-load', MASS),
    peakPercentOneRepMax: answerOf('peak-percent-of-maximum', ['%']),
  }),
}));
const weekSums = /* @__PURE__ */ once(() =>
  open({
    sessions: answerOf('sessions', ['{sessions}']),
    restrictedSessions: answerOf('sessions', ['{sessions}']),
    ...some({ sessionLoad: answerOf('session-load', ['{AU}']) }),
    limbs: z.array(
      open({
        limb: z.enum(LIMBS),
        side: z.enum(SIDES),
        ...ofWeek(),
        exercises: z.array(
          open({ exercise: text(120), ...ofWeek(), ...some({ percentLop: answerOf('percent-of-occlusion', ['%']) }) }),
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
export const weekComparisonDocument = /* @__PURE__ */ once(() =>
  open({
    ...head('week-comparison', 1),
    weeks: z.array(
      open({ week: z.int(), ...some({ deload: z.literal(true), planned: weekSums(), done: weekSums() }) }),
    ),
    goals: z.array(
      open({
        name: text(120),
        outcome: z.enum(['met', 'not-met', 'not-measured']),
        ...some({
          measure: z.enum(GOAL_MEASURES),
          limb: z.enum(LIMBS),
          side: z.enum(SIDES),
          exercise: text(120),
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
