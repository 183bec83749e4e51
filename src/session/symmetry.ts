import { describe } from '../answer/issues.js';
import type { Answer } from '../answer/answer.js';
import { logInterval, logNormalInterval } from '../answer/interval.js';
import { defined } from '../answer/defined.js';
import { Reader } from '../answer/reader.js';
import { withInput } from '../answer/with-input.js';
import { isGrade, weakest, type Grade } from '../evidence/grades.js';
import { deviationAsShare } from '../pressure/answer-spread.js';
import { Math, square } from '../quantity/maths.js';
import { SIDES, type Quantity, type Side } from '../quantity/quantities.js';
import { NORMAL_95 } from '../statistics/normal.js';
import { assumption } from './assumptions.js';
import { comparisonCaution } from './messages.js';
import { LEFT_OUT_FOR_ANSWERS, LIKE_LEFT, NUMBER_OR_ANSWER } from './needs.js';

/** What {@link limbSymmetry} takes. */
export interface SymmetryInput {
  /** The measure of the left side: a number, or an answer; of the same unit or kind as that of the right. */
  readonly left: number | Answer;
  /** The measure of the right side. */
  readonly right: number | Answer;
  /** The side that is compared with the other one, such as the injured one. */
  readonly involved: Side;
  /** Coefficient of variation of one measurement [%], where you give numbers. */
  readonly errorPercent?: number;
}

/** A limb symmetry index [%], with the indices between which no difference can be detected. */
export type LimbSymmetry = Answer<'limb-symmetry'> & {
  /** The range inside which no difference between the sides can be detected [%]; left out where no error is known. */
  readonly undetected?: {
    /** Lower end of the range [%]. */
    readonly low: number;
    /** Upper end of the range [%]. */
    readonly high: number;
  };
};

const MEASURE: Quantity = { name: 'measure of a side', unit: '1', min: 1e-6, max: 1e9, slips: [] };
const ERROR: Quantity = { name: 'coefficient of variation of one measurement', unit: '%', min: 0, max: 100, slips: [] };

interface Measured {
  readonly value: number;
  readonly kind?: string;
  readonly unit?: string;
  readonly evidence: Grade;
  /** Standard deviation of ln(value); left out where it is not known. */
  readonly share?: number;
}

function readSide(reader: Reader, name: Side): Measured | undefined {
  const given = reader.anything(name, NUMBER_OR_ANSWER);
  if (typeof given === 'number') {
    return reader.acceptNumber(name, MEASURE, given) === undefined
      ? undefined
      : { value: given, evidence: 'definition' };
  }
  const { kind, unit, value, evidence, standardDeviation, scale } = (given ?? {}) as Partial<Answer>;
  const isAnswer = typeof kind === 'string' && isGrade(evidence);
  if (!isAnswer || typeof value !== 'number' || !(value > 0) || !((standardDeviation ?? 0) >= 0)) {
    if (given !== undefined) reader.report('wrong-type', name, NUMBER_OR_ANSWER, describe(given));
    return undefined;
  }
  const known = standardDeviation !== undefined;
  const share = known ? deviationAsShare({ value, standardDeviation, scale }) : undefined;
  return defined({ value, kind, unit, evidence, share });
}

/**
 * The limb symmetry index of any measure, with the error of both sides, and what difference can be detected at all.
 *
 * Formula: S = 100 × a / b, where a is the involved side and b the other one. Error: s² = sₐ² + s_b², each the standard
 * deviation of ln(value). No difference can be detected between 100 × exp(−1.96 s) and 100 × exp(1.96 s).
 *
 * Measures with 4.2 % of error, the median of repeated tests of 1RM, cannot tell 90 % from 100 %. We apply no threshold:
 * an index does not give medical clearance.
 *
 * - Error: that of both sides, taken as independent; the 95 % interval is on a log scale.
 * - Evidence: the index is a `definition`; where you give answers, the weaker of theirs.
 * - Source: arithmetic; the 4.2 % from Sports Med Open 2020;6:31.
 *
 * @function
 * @param input - `left` and `right`, numbers in one unit or answers of one kind; `involved`; `errorPercent` [%], the
 *   coefficient of variation of one measurement, for numbers
 * @returns S [%], with its interval, and the indices between which no difference can be detected.
 * @throws InputError naming every wrong field; also where the two answers are not of one kind and unit.
 *
 * @example
 * ```ts
 * import { limbSymmetry } from 'cuffwork';
 * const index = limbSymmetry({ left: 45, right: 50, involved: 'left', errorPercent: 4.2 });
 * index.value; // => 90
 * [index.lower!, index.upper!].map(Math.round); // => [80, 101]
 * Math.round(index.undetected!.low); // => 89
 * ```
 */
export const limbSymmetry = withInput(function limbSymmetry(input: SymmetryInput): LimbSymmetry {
  const reader = new Reader(input);
  const sides = SIDES.map((side) => readSide(reader, side));
  const involved = reader.choice('involved', SIDES);
  const errorPercent = reader.optionalNumber('errorPercent', ERROR);
  const [left, right] = sides;
  if (left && right && (left.kind !== right.kind || left.unit !== right.unit)) {
    reader.refuse('right', LIKE_LEFT, right.kind ?? 'a number');
  }
  if (left?.kind !== undefined) reader.leaveOut('errorPercent', LEFT_OUT_FOR_ANSWERS);
  reader.done();
  const [own, other] = involved === 'left' ? [left!, right!] : [right!, left!];
  const value = (100 * own.value) / other.value;
  const given = errorPercent === undefined ? undefined : errorPercent / 100;
  const shares = [own.share ?? given, other.share ?? given];
  const known = shares.every((share) => share !== undefined) ? (shares as [number, number]) : undefined;
  const limit = known && NORMAL_95 * Math.sqrt(square(known[0]) + square(known[1]));
  const undetected = limit === undefined ? undefined : { low: 100 * Math.exp(-limit), high: 100 * Math.exp(limit) };
  const isHidden = undetected && value > undetected.low && value < undetected.high;
  return {
    kind: 'limb-symmetry',
    value,
    unit: '%',
    equation: 'limb-symmetry',
    evidence: weakest([own.evidence, other.evidence]),
    inputs: { involvedValue: own.value, otherValue: other.value, involved },
    ...(known && {
      ...logInterval(value, [
        { part: 'measurement', standardDeviation: known[0], evidence: own.evidence },
        { part: 'other-side', standardDeviation: known[1], evidence: other.evidence },
      ]),
    }),
    ...(undetected && { undetected }),
    assumptions: known ? [logNormalInterval, assumption('sides-independent')] : [],
    cautions: [
      ...(known ? [] : [comparisonCaution('note', 'symmetry-without-error')]),
      ...(isHidden
        ? [
            comparisonCaution('caution', 'symmetry-not-detected', {
              low: Math.round(undetected.low),
              high: Math.round(undetected.high),
            }),
          ]
        : []),
    ],
  };
});
