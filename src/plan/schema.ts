import * as z from 'zod';
import type { AnswerKind } from '../answer/answer.js';
import { grades } from '../evidence/grades.js';
import { measurementMethods } from '../pressure/measured.js';
import { occlusionEquations } from '../pressure/equations.js';
import { LIMBS, LOAD_UNITS, POSTURES, quantities, SEXES, SIDES, type QuantityName } from '../quantity/quantities.js';
import { EXERCISE_MODES, RESTRICTIONS } from '../session/prescription.js';
import { oneRepMaxEquations } from '../strength/equations.js';
import { screeningItems } from './screening-items.js';
import { symptoms } from './standing.js';

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

/** A plan sets one pressure for each limb, so there is no partial release. */
const restriction = z.enum(RESTRICTIONS).exclude(['partial']);

type ObjectOf = typeof z.strictObject;
/** A request refuses fields it does not know: they are slips. */
const strict: ObjectOf = z.strictObject;
/** A document keeps fields it does not know: a later version or an app put them there. */
const open = z.looseObject as unknown as ObjectOf;

const requestWith = (object: ObjectOf) => {
  const set = object({ repetitions: quantity('repetitions'), restS: quantity('restS').optional() });
  const measured = object({
    valueMmHg: quantity('valueMmHg'),
    method: z.enum(measurementMethods),
    cuffWidthCm: quantity('cuffWidthCm').optional(),
    standardDeviationMmHg: quantity('standardDeviationMmHg').optional(),
  });
  const limb = object({
    limb: z.enum(LIMBS),
    side: z.enum(SIDES),
    circumferenceCm: quantity('circumferenceCm').optional(),
    cuffWidthCm: quantity('cuffWidthCm'),
    percent: quantity('percent'),
    measured: measured.optional(),
    equation: auto(occlusionEquations).optional(),
    gaugeStepMmHg: quantity('gaugeStepMmHg').optional(),
    ceilingMmHg: quantity('ceilingMmHg').optional(),
  });
  const oneRepMax = object({
    load: quantity('load'),
    unit: z.enum(LOAD_UNITS).optional(),
    repetitions: quantity('repetitions').optional(),
    repetitionsInReserve: quantity('repetitionsInReserve').optional(),
    equation: auto(oneRepMaxEquations).optional(),
  });
  const tempo = object({
    eccentricS: quantity('eccentricS'),
    bottomS: quantity('bottomS').optional(),
    concentricS: quantity('concentricS'),
    topS: quantity('topS').optional(),
  });
  const exercise = object({
    name: text(120),
    limb: z.enum(LIMBS),
    side: z.enum(SIDES).optional(),
    oneRepMax,
    percent: quantity('percent'),
    unit: z.enum(LOAD_UNITS).optional(),
    step: quantity('step').optional(),
    available: z.array(quantity('load')).min(1).max(1000).optional(),
    rounding: z.enum(['nearest', 'down']).optional(),
    scheme: text(1000).optional(),
    sets: z.array(set).min(1).max(50).optional(),
    tempo,
    restS: quantity('restS'),
    restriction,
  });
  return object({
    label: text(120).optional(),
    ageYears: quantity('ageYears').optional(),
    sex: z.enum(SEXES).optional(),
    systolicMmHg: quantity('systolicMmHg'),
    diastolicMmHg: quantity('diastolicMmHg'),
    posture: z.enum(POSTURES),
    sessionsPerWeek: quantity('sessionsPerWeek').optional(),
    weeks: quantity('weeks').optional(),
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
const values = z.record(z.string(), z.union([z.string(), z.number()]));
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
const load = answerOf('training-load', MASS, positive)
  .extend({ inputs: open({ oneRepMax, percent: quantity('percent') }), reached: open({ percent: z.number() }) })
  .register(annotations, { id: 'trainingLoad' });
const total = (kind: AnswerKind, unit: z.ZodType = z.literal('s')) => answerOf(kind, unit);
const restrictionTime = total('restriction-time').register(annotations, { id: 'restrictionTime' });
const totals = open({
  repetitions: total('repetitions', z.literal('{reps}')),
  volumeLoad: total('volume-load', MASS).optional(),
  timeUnderTension: total('time-under-tension'),
  restrictionTime,
  longestRestriction: total('longest-restriction'),
  sessionTime: total('session-time'),
  cautions,
}).register(annotations, { id: 'totals' });

const sets = z
  .array(open({ repetitions: quantity('repetitions'), restS: quantity('restS') }))
  .min(1)
  .max(50);
const place = { exercise: text(120), limb: z.enum(LIMBS), side: z.enum(SIDES) };
const prescribed = {
  ...place,
  mode: z.enum(EXERCISE_MODES).optional(),
  target,
  load,
  sets,
  tempo: open({
    eccentricS: quantity('eccentricS'),
    bottomS: quantity('bottomS'),
    concentricS: quantity('concentricS'),
    topS: quantity('topS'),
  }),
  restriction,
};
const item = open({
  ...prescribed,
  occlusion,
  oneRepMax,
  timeline: open({
    events: z.array(
      open({
        atS: z.number(),
        event: z.string(),
        set: z.number().optional(),
        repetitions: z.number().optional(),
        durationS: z.number().optional(),
      }),
    ),
    durationS: z.number(),
    assumptions: z.array(assumption),
  }),
  totals,
});
const limbs = z.array(
  open({ limb: z.enum(LIMBS), side: z.enum(SIDES), exercises: z.number(), restrictionTime, cautions }),
);

/** A plan, as `planSession` makes it. */
export const planDocument = open({
  document: z.literal('plan'),
  schemaVersion: z.literal(1),
  request: requestWith(open),
  items: z.array(item).max(200),
  limbs,
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
          .array(strict({ repetitions: quantity('repetitions'), restS: quantity('restS').optional() }))
          .min(1)
          .max(50),
        load: quantity('load').optional(),
        heldMmHg: quantity('heldMmHg').optional(),
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
      open({
        ...prescribed,
        cuffWidthCm: quantity('cuffWidthCm'),
        circumferenceCm: quantity('circumferenceCm').optional(),
        done: open({
          sets,
          load: quantity('load'),
          unit: z.enum(LOAD_UNITS),
          heldMmHg: quantity('heldMmHg').optional(),
          stoppedEarly: z.boolean(),
          lastSetToFailure: z.boolean().optional(),
        }),
        totals,
      }),
    )
    .min(1)
    .max(200),
  limbs,
  symptoms: z.array(z.enum(symptoms)).max(50),
  ...feelings,
  assumptions: z.array(assumption),
  cautions,
  standing,
  sources,
});
