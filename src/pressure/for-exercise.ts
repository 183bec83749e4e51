import { type Answer, type Assumption, type Caution, type ErrorPart, interval, logInterval } from '../answer/answer.js';
import { isInputError } from '../answer/issues.js';
import type { Limb, Posture, Side } from '../quantity/quantities.js';
import { correctForCuffWidth } from './cuff-width.js';
import { placeOf } from './held-pressure.js';
import { assumption } from './assumptions.js';
import { caution } from './messages.js';
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
  readonly systolicMmHg: number;
  readonly diastolicMmHg: number;
}

/**
 * How far the two legs of one person differ [mmHg], standard deviation of the difference: legs are 6 of the 52 % of
 * variance that, as a standard deviation of 14.4 mmHg, is not between people; √2 × 14.4 × √(6 / 52).
 */
export const OTHER_SIDE_DEVIATION = 6.9;

/** An answer with one more error [mmHg], on its own scale. */
function withError(answer: Pressure, part: ErrorPart['part'], deviation: number): Pressure {
  const { value, scale, errors } = answer;
  if (!errors) return answer;
  const own = {
    part,
    standardDeviation: scale === 'log' ? deviation / value : deviation,
    evidence: 'derived',
  } as const;
  const all = [...errors, own];
  return { ...answer, ...(scale === 'log' ? logInterval(value, all) : interval(value, all)) };
}

/** An answer whose error is not known: its number is still shown, but no range and no chance is made of it. */
function withoutInterval(answer: Pressure): Pressure {
  const { lower: _l, upper: _u, level: _v, standardDeviation: _s, scale: _c, errors: _e, ...rest } = answer;
  const assumptions = rest.assumptions.filter(({ code }) => !code.endsWith('normal-interval'));
  return { ...rest, assumptions };
}

/** A corrected answer with what it was corrected from, and with what was said of that. */
const correctedFrom = (measured: Pressure, corrected: Pressure): Pressure => ({
  ...corrected,
  inputs: { ...corrected.inputs, measured },
  cautions: [...measured.cautions, ...corrected.cautions],
});

/** What a correction gives; nothing where no published shift allows it. */
function attempted(correct: () => Pressure): Pressure | undefined {
  try {
    return correct();
  } catch (error) {
    if (!isInputError(error)) throw error;
    return undefined;
  }
}

/**
 * A measured occlusion pressure for the cuff, posture and side of an exercise. Differences of cuff and posture are
 * corrected where a published relation allows it. Where none does, a caution says so and no error is given: how far
 * off the percentage is, nobody knows.
 */
export function occlusionForExercise(measured: Pressure, place: ExercisePlace): Pressure {
  const { side, posture, cuffWidthCm } = placeOf(measured);
  const { limb } = place;
  let answer = measured;
  if (cuffWidthCm !== undefined && cuffWidthCm !== place.cuffWidthCm) {
    const corrected = correctForCuffWidth({
      occlusionMmHg: answer.value,
      limb,
      circumferenceCm: place.circumferenceCm!,
      systolicMmHg: place.systolicMmHg,
      diastolicMmHg: place.diastolicMmHg,
      fromWidthCm: cuffWidthCm,
      toWidthCm: place.cuffWidthCm,
      standardDeviationMmHg: deviationInUnit(answer),
    });
    // An error that is not known does not become known by a correction.
    const known = measured.standardDeviation !== undefined;
    answer = correctedFrom(measured, known ? corrected : withoutInterval(corrected));
  }
  if (posture !== undefined && posture !== place.posture) {
    const before = answer;
    const corrected = attempted(() =>
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
    const values = { limb, from: posture, to: place.posture };
    answer = corrected
      ? correctedFrom(before, before.standardDeviation === undefined ? withoutInterval(corrected) : corrected)
      : withCaution(withoutInterval(before), caution('caution', 'measured-in-other-posture', values));
  }
  if (side !== undefined && side !== place.side) {
    const values = { limb, from: side, to: place.side };
    answer = withCaution(
      limb === 'leg' ? withError(answer, 'other-side', OTHER_SIDE_DEVIATION) : withoutInterval(answer),
      caution('caution', 'measured-on-other-side', values, { source: 'variance-days-legs' }),
    );
  }
  return answer;
}

const withCaution = (answer: Pressure, said: Caution): Pressure => ({
  ...answer,
  cautions: [...answer.cautions, said],
});

/** What is assumed of a measurement that does not name its posture or its cuff. */
export const assumedOfMeasurement = (named: {
  readonly posture?: unknown;
  readonly cuffWidthCm?: unknown;
}): Assumption[] => [
  ...(named.posture === undefined ? [assumption('measured-posture-as-planned')] : []),
  ...(named.cuffWidthCm === undefined ? [assumption('measured-cuff-as-planned')] : []),
];
