import * as z from 'zod/mini';
import type { Answer, AnswerKind, ErrorPart, Severity } from '../answer/answer.js';
import type { AssumptionCode, CautionCode } from '../answer/codes.js';
import { once } from '../answer/own.js';
import { grades } from '../evidence/grades.js';
import type { SourceId } from '../evidence/sources.js';
import type { Unit } from '../quantity/quantities.js';
import { POINTER } from './needs.js';
import {
  annotations,
  byName,
  code,
  limbAndSide,
  list,
  named,
  open,
  pattern,
  quantity,
  some,
  typed,
  type Shape,
} from './schema-parts.js';
import type { DocumentAnswer, Stated, StatedAnswer } from './stated.js';

// Sentences.

export const grade = named('grade', () => z.enum(Object.keys(grades) as (keyof typeof grades)[]));
export const values = named('values', () => byName(z.union([z.string(), z.number(), z.array(z.string())])));
/** Where a sentence, a finding or a rule comes from. */
export const sourced = once(() => some({ source: code<SourceId>() }));
export const path = once(() => z.array(z.union([z.string(), z.number()])));
export const message = once(() => ({
  code: z.string(),
  text: z.string(),
  ...some({ values: values() }),
}));
const assumption = named('assumption', () => open({ code: code<AssumptionCode>(), ...some({ values: values() }) }));
export const assumptions = once(() => z.array(assumption()));
export const cautionFields = once(() => ({
  ...message(),
  code: code<CautionCode>(),
  severity: z.enum(['note', 'caution', 'stop'] as const satisfies readonly Severity[]),
  ...some({ path: path() }),
  ...sourced(),
}));
const caution = named('caution', () => open(cautionFields()));
export const cautions = once(() => z.array(caution()));

// Answers.

export const positive = once(() => z.number().check(z.minimum(0.001), z.maximum(1e6)));
export const time = once(() => z.number().check(z.minimum(0)));
const ends = once(() => some({ lower: z.number(), upper: z.number() }));

const ownEquation = named('ownEquation', () =>
  open({
    formula: z.string(),
    symbols: byName(z.union([z.string(), open({ field: z.string(), codes: byName(z.number()) })])),
    ...some({ base: z.string() }),
  }),
);
const errors = named('errors', () =>
  z.array(open({ part: code<ErrorPart['part']>(), standardDeviation: time(), evidence: grade() })),
);
const rounding = named('rounding', () =>
  open({
    from: z.number(),
    to: z.enum(['down', 'nearest']),
    ...some({ step: z.number(), available: z.array(z.number()) }),
  }),
);
/** What every answer has besides its kind, unit and inputs. */
const evidence = once(() => ({
  value: z.number(),
  equation: z.string(),
  evidence: grade(),
  assumptions: assumptions(),
  cautions: cautions(),
  ...some({ ownEquation: ownEquation() }),
  ...ends(),
  ...some({
    level: z.literal(0.95),
    scale: z.literal('log'),
    standardDeviation: time(),
    errors: errors(),
    rounding: rounding(),
  }),
}));
const reachedPressure = named('reachedPressure', () =>
  open({
    percentLop: z.number(),
    ...ends(),
    ...some({ occlusionChancePercent: z.number(), highestMmHg: z.number() }),
  }),
);
const reachedLoad = named('reachedLoad', () => open({ percentOneRepMax: z.number(), ...ends() }));
/** The percentages that a rounded value really is, by its kind. */
const reached = once((): Readonly<Partial<Record<AnswerKind, z.ZodMiniType>>> => ({
  'cuff-pressure': reachedPressure(),
  'training-load': reachedLoad(),
}));
const anyReached = once(() => some({ reached: z.union([reachedPressure(), reachedLoad()]) }));
/** The fields of an answer, without what differs by its kind. */
export const answerFields = once(() => open({ ...evidence(), ...anyReached() }));

/** An answer of a kind; `inputs` that are worked with later are declared. */
export const answerOf = <K extends AnswerKind>(
  kind: K,
  units: readonly Unit[],
  value: z.ZodMiniType<number> = time(),
  inputs?: z.ZodMiniType,
) => {
  const own = reached()[kind];
  const answer = open({
    ...evidence(),
    kind: z.literal(kind),
    value,
    unit: z.enum(units),
    inputs: inputs ?? byName(z.unknown()),
    ...(own && some({ reached: own })),
  });
  return typed<Answer<K>>(answer.register(annotations, { id: kind }));
};

const PRESSURE = ['mm[Hg]'] as const;
export const MASS = ['kg', '[lb_av]'] as const;
export const SECONDS = ['s'] as const;
export const occlusion = once(() => answerOf('occlusion-pressure', PRESSURE, positive()));
export const oneRepMax = named('oneRepetitionMaximum', () => answerOf('one-repetition-maximum', MASS, positive()));
// A load of the user’s own has no maximum behind it.
export const load = once(() =>
  answerOf(
    'training-load',
    MASS,
    positive(),
    open(some({ oneRepMax: oneRepMax(), percentOneRepMax: quantity('percentOneRepMax') })),
  ),
);

/** Any answer, read back on its own, with the answers that it was worked out from. */
export const anyAnswer = once(() =>
  typed<Answer>(
    open({
      ...evidence(),
      kind: code<AnswerKind>(),
      unit: code<Unit>(),
      inputs: byName(z.union([z.string(), z.number(), z.lazy(innerAnswer), z.array(z.lazy(innerAnswer))])),
      ...anyReached(),
    }),
  ),
);
function innerAnswer(): z.ZodMiniType<Answer, Answer> {
  return anyAnswer();
}

// Numbers that a document states.

const pointer = once(() => ({ ref: pattern(/^\/answers\/\d{1,4}$/, POINTER) }));
export const stated = (units: readonly Unit[]) =>
  typed<Stated>(open({ value: time(), unit: z.enum(units), ...ends() }));
/** A number whose answer is among the answers of its document. */
const statedAnswer = (units: readonly Unit[]) =>
  typed<StatedAnswer>(open({ value: positive(), unit: z.enum(units), ...ends(), ...pointer() }));

export const statedTarget = named('statedPressure', () => statedAnswer(PRESSURE));
export const statedLoad = named('statedLoad', () => statedAnswer(MASS));

const seconds = named('seconds', () => stated(SECONDS));
const mass = named('mass', () => stated(MASS));
const pressureTime = named('pressureTime', () => stated(['mm[Hg].min']));
const relativePressureTime = named('relativePressureTime', () => stated(['%.min']));
const restriction = once(() => ({
  restrictionTime: seconds(),
  ...some({
    partialRestrictionTime: seconds(),
    pressureTime: pressureTime(),
    relativePressureTime: relativePressureTime(),
  }),
}));
export const sessionLoad = once(() => stated(['{AU}']));
const exerciseTotals = once(() => ({
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
export const totals = named('totals', () => open(exerciseTotals()));
export const sessionTotals = once(() =>
  open({
    ...exerciseTotals(),
    ...some({ peakLoad: mass(), peakPercentOneRepMax: stated(['%']), sessionLoad: sessionLoad() }),
  }),
);
export const limbTotals = once(() =>
  z.array(
    open({
      ...limbAndSide(),
      exercises: z.int().check(z.minimum(0)),
      ...restriction(),
      ...some({ longestRestriction: seconds(), volumeLoad: mass() }),
    }),
  ),
);

const answerPointer = named('answerPointer', () => open(pointer()));
/** An answer of a document; `inputs` that are worked with later are declared. */
const documentAnswer = (kind: AnswerKind, units: readonly Unit[], inputs: Shape = {}, more: Shape = {}) =>
  open({
    ...evidence(),
    kind: z.literal(kind),
    unit: z.enum(units),
    inputs: z.catchall(z.object(inputs), z.union([z.string(), z.number(), answerPointer(), z.array(answerPointer())])),
    cautions: z.array(open({ ...cautionFields(), text: z.optional(z.string()) })),
    ...more,
  });
/** A setting or a load, and what these are worked out from. */
const answer = named('answer', () => {
  const ofCuff = { occlusion: answerPointer(), percentLop: quantity('percentLop') };
  const ofLoad = some({ oneRepMax: answerPointer(), percentOneRepMax: quantity('percentOneRepMax') });
  return typed<DocumentAnswer>(
    z.discriminatedUnion('kind', [
      documentAnswer('occlusion-pressure', PRESSURE),
      documentAnswer('cuff-pressure', PRESSURE, ofCuff, some({ reached: reachedPressure() })),
      documentAnswer('one-repetition-maximum', MASS),
      documentAnswer('training-load', MASS, ofLoad, some({ reached: reachedLoad() })),
      documentAnswer('body-mass-load', MASS),
    ]),
  );
});
/** What a document has of answers. */
export const answersOnce = once(() => ({
  equations: z.array(z.string()),
  answers: list(answer(), 2000, 0),
}));
