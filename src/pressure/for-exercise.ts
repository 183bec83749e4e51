import type { Answer, Assumption, Caution, ErrorPart } from '../answer/answer.js';
import { logInterval } from '../answer/interval.js';
import { refusedAt, type Path } from '../answer/issues.js';
import type { Limb, Posture, Side } from '../quantity/quantities.js';
import { correctForCuffWidth } from './cuff-width.js';
import { placeOf } from './held-pressure.js';
import { assumption } from './assumptions.js';
import { caution } from './messages.js';
import { OTHER_SIDE_DEVIATION } from './person-variation.js';
import { deviationInUnit } from './answer-spread.js';
import { correctForPosture } from './posture.js';

type Pressure = Answer<'occlusion-pressure'>;

/** Where and how an occlusion pressure is going to be used. */
export interface ExercisePlace {
  readonly limb: Limb;
  readonly side: Side;
  readonly posture: Posture;
  readonly cuffWidthCm: number;
  /** Needed where the measurement was made with another cuff. */
  readonly circumferenceCm: number | undefined;
  /** Whether the pressure is one that the request holds as it is, not a measurement field by field. */
  readonly held?: boolean;
  readonly systolicMmHg: number;
  readonly diastolicMmHg: number;
}

/** An answer with one more error [mmHg]. */
function withError(answer: Pressure, part: ErrorPart['part'], deviationMmHg: number): Pressure {
  const { value, errors } = answer;
  if (!errors) return answer;
  const own = { part, standardDeviation: deviationMmHg / value, evidence: 'derived' } as const;
  return { ...answer, ...logInterval(value, [...errors, own]) };
}

/** An answer whose error is not known: its number is still shown, but no range and no chance is made of it. */
function withoutInterval(answer: Pressure): Pressure {
  const { lower: _l, upper: _u, level: _v, standardDeviation: _s, scale: _c, errors: _e, ...rest } = answer;
  const assumptions = rest.assumptions.filter(({ code }) => code !== 'log-normal-interval');
  return { ...rest, assumptions };
}

/** A corrected answer with the one it was corrected from, and the cautions of that one. */
const correctedFrom = (measured: Pressure, corrected: Pressure): Pressure => ({
  // An error that is not known does not become known by a correction.
  ...(measured.standardDeviation === undefined ? withoutInterval(corrected) : corrected),
  inputs: { ...corrected.inputs, measured },
  cautions: [...measured.cautions, ...corrected.cautions],
});

/**
 * A conversion; what is wrong with it is wrong with the pressure or a field of it, and what is missing is a reading.
 */
const converted = (path: Path, convert: () => Pressure): Pressure =>
  refusedAt(convert, ({ code, path: own }) => (code === 'missing' ? own : path));

/**
 * A measured occlusion pressure for the cuff, posture and side of an exercise. Differences of cuff and posture are
 * corrected by the pooled curve; a conversion that it refuses is refused here. For another posture or side of an arm no
 * difference is published: a caution says so and no error is given.
 */
export function occlusionForExercise(measured: Pressure, place: ExercisePlace): Pressure {
  const { side, posture, cuffWidthCm } = placeOf(measured);
  const { limb, held } = place;
  const pathOf = (field: string): Path => (held ? ['occlusion'] : ['measured', field]);
  let answer = measured;
  if (cuffWidthCm !== undefined && cuffWidthCm !== place.cuffWidthCm) {
    const corrected = converted(pathOf('cuffWidthCm'), () =>
      correctForCuffWidth({
        occlusionMmHg: measured.value,
        limb,
        circumferenceCm: place.circumferenceCm!,
        systolicMmHg: place.systolicMmHg,
        diastolicMmHg: place.diastolicMmHg,
        fromWidthCm: cuffWidthCm,
        toWidthCm: place.cuffWidthCm,
        standardDeviationMmHg: deviationInUnit(measured),
      }),
    );
    answer = correctedFrom(measured, corrected);
  }
  if (posture !== undefined && posture !== place.posture) {
    const before = answer;
    if (limb === 'leg') {
      const corrected = converted(pathOf('posture'), () =>
        correctForPosture({
          occlusionMmHg: before.value,
          diastolicMmHg: place.diastolicMmHg,
          limb,
          cuffWidthCm: place.cuffWidthCm,
          fromPosture: posture,
          toPosture: place.posture,
          standardDeviationMmHg: deviationInUnit(before),
        }),
      );
      answer = correctedFrom(before, corrected);
    } else {
      const values = { limb, from: posture, to: place.posture };
      answer = withCaution(withoutInterval(before), caution('caution', 'measured-in-other-posture', values));
    }
  }
  if (side !== undefined && side !== place.side) {
    const values = { limb, from: side, to: place.side };
    answer = withCaution(
      limb === 'leg' ? withError(answer, 'other-side', OTHER_SIDE_DEVIATION) : withoutInterval(answer),
      caution('caution', 'measured-on-other-side', values, { source: 'pulse-pressure-2021' }),
    );
  }
  return answer;
}

const withCaution = (answer: Pressure, message: Caution): Pressure => ({
  ...answer,
  cautions: [...answer.cautions, message],
});

/** What is assumed of a measurement that does not name its posture or its cuff. */
export const assumedOfMeasurement = (named: {
  readonly posture?: unknown;
  readonly cuffWidthCm?: unknown;
}): Assumption[] => [
  ...(named.posture === undefined ? [assumption('measured-posture-as-planned')] : []),
  ...(named.cuffWidthCm === undefined ? [assumption('measured-cuff-as-planned')] : []),
];
