import { Reader } from '../answer/reader.js';
import { withInput } from '../answer/with-input.js';
import { type Limb, LIMBS } from '../quantity/quantities.js';
import type { OcclusionEquation, Range } from './equation.js';
import { EQUATION_IDS, occlusionEquations, type OcclusionEquationId } from './equations.js';
import { fitsWidth, fittedWidths, inRange } from './uncertainty.js';

/** Where a reading lies; `not-known`: the range of the sample is not reported, or the reading was not given. */
export type Zone = 'inside' | 'outside' | 'not-known';

/** Where each reading lies against the sample of an equation. */
export interface FittedRange {
  /** Id of the equation. */
  readonly equation: OcclusionEquationId;
  /** Where the readings lie together: outside where any is; inside only where every one is known to be. */
  readonly zone: Zone;
  /** Each reading on its own. */
  readonly fields: readonly {
    /** Name of the reading. */
    readonly field: string;
    /** Where the reading lies. */
    readonly zone: Zone;
    /** Range or limb of the sample, where known. */
    readonly fitted?: Range | Limb;
  }[];
}

/** What {@link withinFittedRange} takes: an equation, and the readings that you have. */
export interface FittedRangeInput {
  /** Id of the equation to check. */
  readonly equation: OcclusionEquationId;
  /** The limb under the cuff. */
  readonly limb?: Limb | undefined;
  /** Limb circumference [cm], 25–120 on a leg and 15–70 on an arm. */
  readonly circumferenceCm?: number | undefined;
  /** Systolic blood pressure [mmHg], 60–300. */
  readonly systolicMmHg?: number | undefined;
  /** Diastolic blood pressure [mmHg], 30–200. */
  readonly diastolicMmHg?: number | undefined;
  /** Cuff width [cm], 3–40. */
  readonly cuffWidthCm?: number | undefined;
  /** Age [years], 1–120. */
  readonly ageYears?: number | undefined;
}

const FIELDS = ['circumferenceCm', 'systolicMmHg', 'diastolicMmHg', 'ageYears'] as const;

/** Where a reading lies, if it was given. */
const zoneOf = <T>(value: T | undefined, isInside: (value: T) => boolean): Zone =>
  value === undefined ? 'not-known' : isInside(value) ? 'inside' : 'outside';

/**
 * Whether readings lie in the range of the sample that an occlusion-pressure equation was fitted on, field by field.
 * Most publications do not print their ranges: then the answer is `not-known`, not `inside`. The ranges themselves are
 * data, in `equations.occlusionPressure[…].fitted`.
 *
 * A cuff counts as the fitted width within 0.5 cm.
 *
 * @function
 * @param input - `equation`, its id; limb; `circumferenceCm`, `cuffWidthCm` [cm]; `systolicMmHg`, `diastolicMmHg` [mmHg];
 * `ageYears` [years]
 * @returns a zone for each field the equation draws on, and one for all of them.
 * @throws InputError naming every wrong field.
 *
 * @example
 * ```ts
 * import { withinFittedRange } from 'cuffwork';
 * withinFittedRange({ equation: 'thigh-2019', ageYears: 60 }).zone; // => 'outside'
 * withinFittedRange({ equation: 'width-ratio-1993', circumferenceCm: 55 }).zone; // => 'not-known'
 * ```
 */
export const withinFittedRange = withInput(function withinFittedRange(input: FittedRangeInput): FittedRange {
  const reader = new Reader(input);
  const id = reader.choice('equation', EQUATION_IDS);
  const limb = reader.optionalChoice('limb', LIMBS);
  const cuffWidthCm = reader.optionalNumber('cuffWidthCm');
  const values = FIELDS.map((field) => [field, reader.optionalNumber(field)] as const);
  reader.done();

  const equation: OcclusionEquation = occlusionEquations.find((one) => one.id === id)!;
  const fields: { field: string; zone: Zone; fitted?: Range | Limb }[] = [];
  if (equation.limb !== 'any') {
    fields.push({ field: 'limb', zone: zoneOf(limb, (value) => value === equation.limb), fitted: equation.limb });
  }
  const fitted = fittedWidths(equation);
  if (fitted) {
    fields.push({ field: 'cuffWidthCm', zone: zoneOf(cuffWidthCm, (value) => fitsWidth(equation, value)), fitted });
  }
  const readings = fitted ? values : ([['cuffWidthCm', cuffWidthCm], ...values] as const);
  for (const [field, value] of readings) {
    const range = equation.fitted[field];
    if (range) {
      fields.push({ field, zone: zoneOf(value, (one) => inRange(equation, field, one)), fitted: range });
    } else if (equation.fittedNotKnown.includes(field)) fields.push({ field, zone: 'not-known' });
  }
  const zone = (['outside', 'not-known'] as const).find((one) => fields.some((field) => field.zone === one));
  return { equation: id, zone: zone ?? 'inside', fields };
});
