import * as z from 'zod';
import type { AnswerKind } from '../answer/answer.js';
import { grades } from '../evidence/grades.js';
import type { SourceId } from '../evidence/sources.js';
import { measurementMethods } from '../pressure/measured.js';
import { occlusionEquations } from '../pressure/equations.js';
import {
  EXERCISE_MODES,
  CIRCUMFERENCE_SITES,
  LIMBS,
  LOAD_UNITS,
  POSTURES,
  quantities,
  SEXES,
  SIDES,
  type QuantityName,
} from '../quantity/quantities.js';
import { EXERCISE_SIDES, RESTRICTIONS } from '../session/prescription.js';
import { SESSION_EVENTS } from '../session/timeline.js';
import { oneRepMaxEquations } from '../strength/equations.js';
import { LIFTS, TRAINING } from '../strength/lifts.js';
import { MAXIMUM_OF } from '../strength/training-load.js';
import type { ProgressionAction } from './next-session.js';
import { SCREENING_OUTCOMES, screeningItems } from './screening-items.js';
import { symptoms } from './standing.js';
import { DECIDER_ROLES } from './stops.js';

/** Names for JSON Schema, in a registry of the library’s own: the one that an app shares with zod is left alone. */
export const annotations = z.registry<{ id?: string; title?: string; unit?: string }>();

/** A number of the vocabulary: its bounds stand in one table for guards and schemas alike. */
function quantity(name: QuantityName) {
  const { min, max, name: title, unit, ...rest } = quantities[name];
  const number = 'whole' in rest ? z.int() : z.number();
  return number.min(min).max(max).register(annotations, { title, unit });
}

const auto = <T extends string>(equations: readonly { readonly id: T }[]) =>
  z.enum(['auto', ...equations.map(({ id }) => id)]);

/** Text of at most so many characters; counted as JSON Schema counts them. */
const text = (most: number) =>
  z.string().regex(new RegExp(`^[\\s\\S]{1,${most}}$`, 'u'), `text of 1 to ${most} characters`);

/** A day of the calendar. */
export const day = z.iso.date('a date such as 2026-03-02');

/** What a set lasts: repetitions or a time; that one of them is there is a relation. */
const setLength = { repetitions: quantity('repetitions').optional(), durationS: quantity('durationS').optional() };

type ObjectOf = typeof z.strictObject;
/** A request refuses fields it does not know: they are slips. */
const strict: ObjectOf = z.strictObject;
/** A document keeps fields it does not know: a later version or an app put them there. */
const open = z.looseObject as unknown as ObjectOf;

const values = z.record(z.string(), z.union([z.string(), z.number()]));

/** A practitioner’s decision about a stop. */
const decision = strict({
  stop: text(120),
  since: day.optional(),
  by: z.enum(DECIDER_ROLES),
  on: day,
  why: text(1000),
}).register(annotations, { id: 'stopDecision' });
const decisions = z.array(decision).max(100);

/** The decisions of a request that is read field by field. */
export const decisionsRequest = strict({ decisions: decisions.optional() });

const stop = open({
  code: text(120),
  text: text(4000),
  values: values.optional(),
  since: day.optional(),
  limb: z.enum(LIMBS).optional(),
  side: z.enum(SIDES).optional(),
  source: (z.string() as unknown as z.ZodType<SourceId, SourceId>).optional(),
  lifted: decision.optional(),
}).register(annotations, { id: 'stop' });
const stops = z.array(stop).max(1000);

const requestWith = (object: ObjectOf) => {
  const set = object({ ...setLength, restS: quantity('restS').optional() });
  const measured = object({
    valueMmHg: quantity('valueMmHg'),
    method: z.enum(measurementMethods),
    side: z.enum(SIDES).optional(),
    posture: z.enum(POSTURES).optional(),
    date: day.optional(),
    cuffWidthCm: quantity('cuffWidthCm').optional(),
    standardDeviationMmHg: quantity('standardDeviationMmHg').optional(),
  });
  const limb = object({
    limb: z.enum(LIMBS),
    side: z.enum(SIDES),
    circumferenceCm: quantity('circumferenceCm').optional(),
    circumferenceSite: z.enum(CIRCUMFERENCE_SITES).optional(),
    cuffWidthCm: quantity('cuffWidthCm').optional(),
    percent: quantity('percent').optional(),
    measured: measured.optional(),
    equation: z.enum(occlusionEquations.map(({ id }) => id)).optional(),
    gaugeStepMmHg: quantity('gaugeStepMmHg').optional(),
    ceilingMmHg: quantity('ceilingMmHg').optional(),
  });
  const oneRepMax = object({
    load: quantity('load'),
    unit: z.enum(LOAD_UNITS).optional(),
    repetitions: quantity('repetitions').optional(),
    repetitionsInReserve: quantity('repetitionsInReserve').optional(),
    reserveRpe: quantity('reserveRpe').optional(),
    equation: auto(oneRepMaxEquations).optional(),
    lift: z.enum(LIFTS).optional(),
    training: z.enum(TRAINING).optional(),
  });
  const tempo = object({
    eccentricS: quantity('eccentricS'),
    bottomS: quantity('bottomS').optional(),
    concentricS: quantity('concentricS'),
    topS: quantity('topS').optional(),
  });
  const exercise = object({
    name: text(120),
    mode: z.enum(EXERCISE_MODES).optional(),
    posture: z.enum(POSTURES).optional(),
    limb: z.enum(LIMBS),
    side: z.enum(EXERCISE_SIDES).optional(),
    changeS: quantity('changeS').optional(),
    oneRepMax: oneRepMax.optional(),
    percent: quantity('percent').optional(),
    load: quantity('load').optional(),
    unloaded: z.literal(true).optional(),
    bodyMassPercent: quantity('bodyMassPercent').optional(),
    unit: z.enum(LOAD_UNITS).optional(),
    step: quantity('step').optional(),
    available: z.array(quantity('load')).min(1).max(1000).optional(),
    bar: quantity('bar').optional(),
    collars: quantity('collars').optional(),
    plates: z
      .array(object({ mass: quantity('mass'), count: quantity('count').optional() }))
      .min(1)
      .max(50)
      .optional(),
    rounding: z.enum(['nearest', 'down']).optional(),
    maximumOf: z.enum(MAXIMUM_OF).optional(),
    intensityPercent: quantity('intensityPercent').optional(),
    scheme: text(1000).optional(),
    sets: z.array(set).min(1).max(50).optional(),
    lastSetToFailure: z.literal(true).optional(),
    warmUp: z.array(set).min(1).max(50).optional(),
    tempo: tempo.optional(),
    restS: quantity('restS').optional(),
    restriction: z.enum(RESTRICTIONS),
    cuffPercent: quantity('cuffPercent').optional(),
    restCuffPercent: quantity('restCuffPercent').optional(),
    reperfusionS: quantity('reperfusionS').optional(),
  });
  return object({
    label: text(120).optional(),
    date: day.optional(),
    stops: stops.optional(),
    decisions: decisions.optional(),
    screening: z.enum(SCREENING_OUTCOMES).optional(),
    ageYears: quantity('ageYears').optional(),
    sex: z.enum(SEXES).optional(),
    bodyMassKg: quantity('bodyMassKg').optional(),
    systolicMmHg: quantity('systolicMmHg'),
    diastolicMmHg: quantity('diastolicMmHg'),
    posture: z.enum(POSTURES),
    sessionsPerWeek: quantity('sessionsPerWeek').optional(),
    weeks: quantity('weeks').optional(),
    reperfusionS: quantity('reperfusionS').optional(),
    limbs: z.array(limb).min(1).max(4),
    exercises: z.array(exercise).min(1).max(50),
  });
};

/** What `planSession` takes. */
export const planRequest = requestWith(strict);

/** What `screen` takes. */
export const screeningRequest = strict({
  label: text(120).optional(),
  ageYears: quantity('ageYears').optional(),
  systolicMmHg: quantity('systolicMmHg').optional(),
  diastolicMmHg: quantity('diastolicMmHg').optional(),
  answers: strict(
    Object.fromEntries(screeningItems.map(({ code }) => [code, z.enum(['yes', 'no', 'unknown']).optional()])),
  ),
});

const GRADES = Object.keys(grades) as (keyof typeof grades)[];
const path = z.array(z.union([z.string(), z.number()]));
const said = { code: z.string(), text: z.string(), values: values.optional() };
const sources = z.array(z.string());
// An id makes a part one definition of the JSON Schema.
const assumption = open(said).register(annotations, { id: 'assumption' });
const caution = open({
  ...said,
  severity: z.enum(['note', 'caution', 'stop']),
  path: path.optional(),
  source: z.string().optional(),
}).register(annotations, { id: 'caution' });
const cautions = z.array(caution);
const standing = z.array(open({ code: z.string(), text: z.string(), source: z.string().optional() }));

/** What every answer has beside its kind, value and unit. */
const evidence = {
  lower: z.number().optional(),
  upper: z.number().optional(),
  level: z.literal(0.95).optional(),
  standardDeviation: z.number().min(0).optional(),
  scale: z.literal('log').optional(),
  errors: z
    .array(open({ part: z.string(), standardDeviation: z.number(), evidence: z.enum(GRADES) }))
    .register(annotations, { id: 'errors' })
    .optional(),
  equation: z.string(),
  evidence: z.enum(GRADES),
  formula: z.string(),
  symbols: z
    .record(z.string(), z.union([z.string(), open({ field: z.string(), codes: z.record(z.string(), z.number()) })]))
    .register(annotations, { id: 'symbols' }),
  inputs: z.record(z.string(), z.unknown()),
  rounding: open({
    from: z.number(),
    to: z.enum(['down', 'nearest']),
    step: z.number().optional(),
    available: z.array(z.number()).optional(),
  })
    .register(annotations, { id: 'rounding' })
    .optional(),
  reached: open({ percent: z.number(), lower: z.number().optional(), upper: z.number().optional() })
    .register(annotations, { id: 'reached' })
    .optional(),
  assumptions: z.array(assumption),
  cautions,
  sources,
};

const answerOf = <U extends z.ZodType>(kind: AnswerKind, unit: U, value = z.number().min(0)) =>
  open({ kind: z.literal(kind), value, unit, ...evidence });

/** A value that is divided by. */
const positive = z.number().min(0.001).max(1e6);
const MMHG = z.literal('mm[Hg]');
const MASS = z.enum(['kg', '[lb_av]']);
const occlusion = answerOf('occlusion-pressure', MMHG, positive).register(annotations, { id: 'occlusionPressure' });
const target = answerOf('cuff-pressure', MMHG, positive)
  .extend({ inputs: open({ occlusion, percent: quantity('percent') }), reached: open({ percent: z.number() }) })
  .register(annotations, { id: 'cuffPressure' });
const oneRepMax = answerOf('one-repetition-maximum', MASS, positive).register(annotations, {
  id: 'oneRepetitionMaximum',
});
// A load of the caller’s own has no maximum behind it.
const load = answerOf('training-load', MASS, positive)
  .extend({
    inputs: open({ oneRepMax: oneRepMax.optional(), percent: quantity('percent').optional() }),
    reached: open({ percent: z.number() }).optional(),
  })
  .register(annotations, { id: 'trainingLoad' });
const total = (kind: AnswerKind, unit: z.ZodType = z.literal('s')) => answerOf(kind, unit);
const restrictionTime = total('restriction-time').register(annotations, { id: 'restrictionTime' });
const partialRestrictionTime = total('partial-restriction-time').optional();
const longestRestriction = total('longest-restriction');
const pressureTimes = {
  pressureTime: total('pressure-time', z.literal('mm[Hg].min')).optional(),
  relativePressureTime: total('relative-pressure-time', z.literal('%.min')).optional(),
};
const totals = open({
  repetitions: total('repetitions', z.literal('{reps}')),
  volumeLoad: total('volume-load', MASS).optional(),
  bodyMassVolumeLoad: total('body-mass-volume-load', MASS).optional(),
  relativeVolumeLoad: total('relative-volume-load', z.literal('1')).optional(),
  timeUnderTension: total('time-under-tension'),
  restrictionTime,
  partialRestrictionTime,
  longestRestriction,
  reperfusionTime: total('reperfusion-time').optional(),
  ...pressureTimes,
  sessionTime: total('session-time'),
  cautions,
}).register(annotations, { id: 'totals' });

// Where sides take turns, a rest holds the set of the other side: longer than any that is asked for.
const sets = z
  .array(open({ ...setLength, restS: z.number().min(0).max(20_000) }))
  .min(1)
  .max(50);
const place = { exercise: text(120), limb: z.enum(LIMBS), side: z.enum(SIDES) };
const prescribed = {
  ...place,
  posture: z.enum(POSTURES).optional(),
  mode: z.enum(EXERCISE_MODES).optional(),
  load: load.optional(),
  intensityPercent: quantity('intensityPercent').optional(),
  bodyMassKg: quantity('bodyMassKg').optional(),
  bodyMassPercent: quantity('bodyMassPercent').optional(),
  sets,
  lastSetToFailure: z.literal(true).optional(),
  tempo: open({
    eccentricS: quantity('eccentricS'),
    bottomS: quantity('bottomS'),
    concentricS: quantity('concentricS'),
    topS: quantity('topS'),
  }).optional(),
};

/** An exercise on a limb: with a cuff and what it is set to, or without. */
const itemOf = <P extends z.ZodRawShape, C extends z.ZodRawShape>(parts: P, cuff: C) =>
  z.discriminatedUnion('restriction', [
    open({
      ...parts,
      ...cuff,
      restriction: z.enum(RESTRICTIONS).exclude(['none']),
      target,
      restTarget: target.optional(),
    }),
    open({ ...parts, restriction: z.literal('none') }),
  ]);
const timeline = open({
  events: z.array(
    open({
      atS: z.number(),
      event: z.enum(SESSION_EVENTS),
      exercise: z.number().optional(),
      limb: z.enum(LIMBS).optional(),
      side: z.enum(EXERCISE_SIDES).optional(),
      set: z.number().optional(),
      repetitions: z.number().optional(),
      durationS: z.number().optional(),
      pressureMmHg: z.number().optional(),
    }),
  ),
  durationS: z.number(),
  assumptions: z.array(assumption),
}).register(annotations, { id: 'timeline' });
const item = itemOf(
  { ...prescribed, warmUp: sets.optional(), oneRepMax: oneRepMax.optional(), timeline, totals },
  { occlusion },
);
const limbs = z.array(
  open({
    limb: z.enum(LIMBS),
    side: z.enum(SIDES),
    exercises: z.number(),
    restrictionTime,
    partialRestrictionTime,
    longestRestriction: longestRestriction.optional(),
    ...pressureTimes,
    volumeLoad: total('volume-load', MASS).optional(),
    cautions,
  }),
);

/** A plan, as `planSession` makes it. */
export const planDocument = open({
  document: z.literal('plan'),
  schemaVersion: z.literal(1),
  request: requestWith(open),
  items: z.array(item).max(200),
  limbs,
  session: open({ timeline, totals }),
  assumptions: z.array(assumption),
  stops,
  cautions,
  standing,
  stopSigns: standing,
  sources,
});

const feelings = {
  painBefore: quantity('painBefore').optional(),
  painDuring: quantity('painDuring').optional(),
  painAfter: quantity('painAfter').optional(),
  sessionRpe: quantity('sessionRpe').optional(),
  sessionS: quantity('sessionS').optional(),
  notes: text(4000).optional(),
};

/** What `recordSession` takes beside the plan. */
export const doneRequest = strict({
  date: day,
  items: z
    .array(
      strict({
        ...place,
        sets: z
          .array(strict({ ...setLength, restS: quantity('restS').optional() }))
          .min(1)
          .max(50),
        load: quantity('load').optional(),
        heldMmHg: quantity('heldMmHg').optional(),
        restHeldMmHg: quantity('restHeldMmHg').optional(),
        reperfusedBeforeS: quantity('reperfusedBeforeS').optional(),
        inflatedBeforeS: quantity('inflatedBeforeS').optional(),
        deflatedAfterS: quantity('deflatedAfterS').optional(),
        stoppedEarly: z.boolean().optional(),
        lastSetToFailure: z.boolean().optional(),
      }),
    )
    .min(1)
    .max(200),
  symptoms: z.array(z.enum(symptoms)).max(50).optional(),
  ...feelings,
});

/** What `recordSession` takes. */
export const recordRequest = doneRequest.extend({ plan: planDocument });

/** A record, as `recordSession` makes it. */
export const recordDocument = open({
  document: z.literal('record'),
  schemaVersion: z.literal(1),
  date: day,
  label: text(120).optional(),
  posture: z.enum(POSTURES),
  items: z
    .array(
      itemOf(
        {
          ...prescribed,
          cuffWidthCm: quantity('cuffWidthCm').optional(),
          circumferenceCm: quantity('circumferenceCm').optional(),
          done: open({
            sets,
            load: quantity('load').optional(),
            unit: z.enum(LOAD_UNITS).optional(),
            heldMmHg: quantity('heldMmHg').optional(),
            restHeldMmHg: quantity('restHeldMmHg').optional(),
            reperfusedBeforeS: quantity('reperfusedBeforeS').optional(),
            inflatedBeforeS: quantity('inflatedBeforeS').optional(),
            deflatedAfterS: quantity('deflatedAfterS').optional(),
            stoppedEarly: z.boolean(),
            lastSetToFailure: z.boolean().optional(),
          }),
          totals,
        },
        {},
      ),
    )
    .min(1)
    .max(200),
  limbs,
  sessionLoad: total('session-load', z.literal('{AU}')).optional(),
  symptoms: z.array(z.enum(symptoms)).max(50),
  ...feelings,
  assumptions: z.array(assumption),
  stops,
  cautions,
  standing,
  sources,
});

const fromTo = <T extends z.ZodType>(number: T) => ({ from: number, to: number.optional() });

/** A proposal, as `nextSession` makes it. */
export const proposalDocument = open({
  document: z.literal('proposal'),
  schemaVersion: z.literal(1),
  rule: open({ id: z.string(), text: z.string(), evidence: z.enum(GRADES), source: z.string().optional() }),
  items: z
    .array(
      open({
        ...place,
        action: z.enum([
          'raise-load',
          'raise-pressure',
          'repeat',
          'back-off',
          'stop',
        ] as const satisfies readonly ProgressionAction[]),
        load: open({ ...fromTo(positive), unit: z.enum(LOAD_UNITS) }).optional(),
        percentOfMaximum: open(fromTo(positive)).optional(),
        percentOfOcclusion: open(fromTo(quantity('percent'))).optional(),
        cuffMmHg: open(fromTo(positive)).optional(),
        reasons: z.array(assumption),
      }),
    )
    .max(200),
  measureAgain: z.array(
    open({
      ...said,
      what: z.enum(['occlusion-pressure', 'one-repetition-maximum']),
      due: z.boolean(),
      evidence: z.enum(GRADES),
      source: z.string().optional(),
    }),
  ),
  stops,
  cautions,
  standing,
  sources,
});
