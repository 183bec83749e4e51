import type { OneRepMaxEquation } from '../equation.js';
import type { Lift } from '../lifts.js';

/** The coefficients a0 to a3 of each lift, as printed. */
const TABLE = {
  latPulldown: [0.987542505, 0.0152700149, 0.00278487038, -0.000115638888],
  tricepsDip: [0.973559954, 0.0271642658, 0.000930880743, -0.0000477453474],
  trunkExtension: [1.01565994, -0.0130808261, 0.00601883266, -0.0002286238],
  trunkFlexion: [0.994961852, 0.00731240752, 0.00293967456, -0.00010510901],
  kneeExtension: [0.999714613, 0.00184050532, 0.00390281962, -0.000128405344],
  kneeFlexion: [0.994637813, 0.00715193846, 0.00333621122, -0.000109143358],
} as const;

type Row = (typeof TABLE)[keyof typeof TABLE];

const cubic = ([a0, a1, a2, a3]: Row, load: number, r: number): number =>
  load * (a0 + a1 * r + a2 * r * r + a3 * r * r * r);

const formulaOf = ([a0, a1, a2, a3]: Row): string =>
  `w * (${a0} + ${a1} * r + ${a2} * r ^ 2 + ${a3} * r ^ 3)`.replaceAll('+ -', '- ');

/**
 * One-repetition maximum of trained older adults with osteopenia: lat pulls (2024 cubic).
 *
 * Formula: 1RM = w × (0.987542505 + 0.0152700149 × r + 0.00278487038 × r² − 0.000115638888 × r³)
 *
 * - Shape: it turns over at r = 18.44.
 * - Fitted range: 5 to 16 repetitions; 40 trained adults, 73 ± 8 years, with osteopenia. Refused outside.
 * - Error: none published that we found; see {@link estimateOneRepMax}.
 * - Evidence: `derived`; the coefficients were read, that they form this cubic is inferred: docs/working/cubic-form.ts.
 * - Source: Sports 2024;12(9):233.
 *
 * @param load - w, load lifted [kg or lb]
 * @param r - repetitions to failure, 5 to 16
 * @returns 1RM, in the unit of `load`
 *
 * @example
 * ```ts
 * import { osteopeniaLatPulldown2024 } from 'cuffwork/equations';
 * osteopeniaLatPulldown2024(90, 10).toFixed(2); // => '117.28'
 * ```
 */
export const osteopeniaLatPulldown2024 = (load: number, r: number): number => cubic(TABLE.latPulldown, load, r);

/**
 * One-repetition maximum of trained older adults with osteopenia: triceps dips (2024 cubic).
 *
 * Formula: 1RM = w × (0.973559954 + 0.0271642658 × r + 0.000930880743 × r² − 0.0000477453474 × r³)
 *
 * - Shape: it turns over at r = 21.73.
 * - Fitted range: 5 to 16 repetitions; 40 trained adults, 73 ± 8 years, with osteopenia. Refused outside.
 * - Error: none published that we found; see {@link estimateOneRepMax}.
 * - Evidence: `derived`; the coefficients were read, that they form this cubic is inferred: docs/working/cubic-form.ts.
 * - Source: Sports 2024;12(9):233.
 *
 * @param load - w, load lifted [kg or lb]
 * @param r - repetitions to failure, 5 to 16
 * @returns 1RM, in the unit of `load`
 *
 * @example
 * ```ts
 * import { osteopeniaTricepsDip2024 } from 'cuffwork/equations';
 * osteopeniaTricepsDip2024(90, 10).toFixed(2); // => '116.15'
 * ```
 */
export const osteopeniaTricepsDip2024 = (load: number, r: number): number => cubic(TABLE.tricepsDip, load, r);

/**
 * One-repetition maximum of trained older adults with osteopenia: trunk extension (2024 cubic).
 *
 * Formula: 1RM = w × (1.01565994 − 0.0130808261 × r + 0.00601883266 × r² − 0.000228623800 × r³)
 *
 * - Shape: it turns over at r = 16.39 and has a low at 1.16.
 * - Fitted range: 5 to 16 repetitions; 40 trained adults, 73 ± 8 years, with osteopenia. Refused outside.
 * - Error: none published that we found; see {@link estimateOneRepMax}.
 * - Evidence: `derived`; the coefficients were read, that they form this cubic is inferred: docs/working/cubic-form.ts.
 * - Source: Sports 2024;12(9):233.
 *
 * @param load - w, load lifted [kg or lb]
 * @param r - repetitions to failure, 5 to 16
 * @returns 1RM, in the unit of `load`
 *
 * @example
 * ```ts
 * import { osteopeniaTrunkExtension2024 } from 'cuffwork/equations';
 * osteopeniaTrunkExtension2024(90, 10).toFixed(2); // => '113.23'
 * ```
 */
export const osteopeniaTrunkExtension2024 = (load: number, r: number): number => cubic(TABLE.trunkExtension, load, r);

/**
 * One-repetition maximum of trained older adults with osteopenia: trunk flexion (2024 cubic).
 *
 * Formula: 1RM = w × (0.994961852 + 0.00731240752 × r + 0.00293967456 × r² − 0.000105109010 × r³)
 *
 * - Shape: it turns over at r = 19.82.
 * - Fitted range: 5 to 16 repetitions; 40 trained adults, 73 ± 8 years, with osteopenia. Refused outside.
 * - Error: none published that we found; see {@link estimateOneRepMax}.
 * - Evidence: `derived`; the coefficients were read, that they form this cubic is inferred: docs/working/cubic-form.ts.
 * - Source: Sports 2024;12(9):233.
 *
 * @param load - w, load lifted [kg or lb]
 * @param r - repetitions to failure, 5 to 16
 * @returns 1RM, in the unit of `load`
 *
 * @example
 * ```ts
 * import { osteopeniaTrunkFlexion2024 } from 'cuffwork/equations';
 * osteopeniaTrunkFlexion2024(90, 10).toFixed(2); // => '113.12'
 * ```
 */
export const osteopeniaTrunkFlexion2024 = (load: number, r: number): number => cubic(TABLE.trunkFlexion, load, r);

/**
 * One-repetition maximum of trained older adults with osteopenia: leg extension (2024 cubic).
 *
 * Formula: 1RM = w × (0.999714613 + 0.00184050532 × r + 0.00390281962 × r² − 0.000128405344 × r³)
 *
 * - Shape: it turns over at r = 20.50.
 * - Fitted range: 5 to 16 repetitions; 40 trained adults, 73 ± 8 years, with osteopenia. Refused outside.
 * - Error: none published that we found; see {@link estimateOneRepMax}.
 * - Evidence: `derived`; the coefficients were read, that they form this cubic is inferred: docs/working/cubic-form.ts.
 * - Source: Sports 2024;12(9):233.
 *
 * @param load - w, load lifted [kg or lb]
 * @param r - repetitions to failure, 5 to 16
 * @returns 1RM, in the unit of `load`
 *
 * @example
 * ```ts
 * import { osteopeniaKneeExtension2024 } from 'cuffwork/equations';
 * osteopeniaKneeExtension2024(90, 10).toFixed(2); // => '115.20'
 * ```
 */
export const osteopeniaKneeExtension2024 = (load: number, r: number): number => cubic(TABLE.kneeExtension, load, r);

/**
 * One-repetition maximum of trained older adults with osteopenia: leg flexion (2024 cubic).
 *
 * Formula: 1RM = w × (0.994637813 + 0.00715193846 × r + 0.00333621122 × r² − 0.000109143358 × r³)
 *
 * - Shape: it turns over at r = 21.40.
 * - Fitted range: 5 to 16 repetitions; 40 trained adults, 73 ± 8 years, with osteopenia. Refused outside.
 * - Error: none published that we found; see {@link estimateOneRepMax}.
 * - Evidence: `derived`; the coefficients were read, that they form this cubic is inferred: docs/working/cubic-form.ts.
 * - Source: Sports 2024;12(9):233.
 *
 * @param load - w, load lifted [kg or lb]
 * @param r - repetitions to failure, 5 to 16
 * @returns 1RM, in the unit of `load`
 *
 * @example
 * ```ts
 * import { osteopeniaKneeFlexion2024 } from 'cuffwork/equations';
 * osteopeniaKneeFlexion2024(90, 10).toFixed(2); // => '116.16'
 * ```
 */
export const osteopeniaKneeFlexion2024 = (load: number, r: number): number => cubic(TABLE.kneeFlexion, load, r);

/** What the six equations have in common, around what is its own of each. */
const equationOf = <I extends string, L extends Lift>(
  id: I,
  lift: L,
  words: string,
  key: keyof typeof TABLE,
  apply: (load: number, r: number) => number,
) =>
  ({
    id,
    name: `${words}, older adults with osteopenia (2024)`,
    formula: formulaOf(TABLE[key]),
    symbols: { w: 'load', r: 'repetitionsToFailure' },
    apply,
    lifts: [lift],
    sample: '40 trained adults with osteopenia, 73 ± 8 years',
    // 73 ± 2 × 8 years; the paper does not report the range.
    population: { training: 'trained', ageYears: { low: 57, high: 89 } },
    fittedRepetitions: { low: 5, high: 16 },
    domain: { from: 5, to: 16, reason: 'turns-over' },
    basis: 'data',
    evidence: 'derived',
    sources: ['osteopenia-2024'],
    assumptions: ['cubic-form-inferred'],
  }) as const satisfies OneRepMaxEquation;

export const osteopeniaLatPulldown2024Equation = equationOf(
  'osteopenia-lat-pulldown-2024',
  'lat-pulldown',
  'lat pulls',
  'latPulldown',
  osteopeniaLatPulldown2024,
);
export const osteopeniaTricepsDip2024Equation = equationOf(
  'osteopenia-triceps-dip-2024',
  'triceps-dip',
  'triceps dips',
  'tricepsDip',
  osteopeniaTricepsDip2024,
);
export const osteopeniaTrunkExtension2024Equation = equationOf(
  'osteopenia-trunk-extension-2024',
  'trunk-extension',
  'trunk extension',
  'trunkExtension',
  osteopeniaTrunkExtension2024,
);
export const osteopeniaTrunkFlexion2024Equation = equationOf(
  'osteopenia-trunk-flexion-2024',
  'trunk-flexion',
  'trunk flexion',
  'trunkFlexion',
  osteopeniaTrunkFlexion2024,
);
export const osteopeniaKneeExtension2024Equation = equationOf(
  'osteopenia-knee-extension-2024',
  'knee-extension',
  'leg extension',
  'kneeExtension',
  osteopeniaKneeExtension2024,
);
export const osteopeniaKneeFlexion2024Equation = equationOf(
  'osteopenia-knee-flexion-2024',
  'knee-flexion',
  'leg flexion',
  'kneeFlexion',
  osteopeniaKneeFlexion2024,
);
