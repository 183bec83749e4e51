import { Reader } from '../answer/reader.js';
import { chanceAtOrBelow } from '../pressure/answer-spread.js';
import type { ColumnAnswer } from './column-answer.js';
import { at, ColumnReader, type NumberColumn } from './column-input.js';
import { REFUSED } from './flags.js';
import { readBase } from './share-columns.js';

/** What {@link reachedColumns} takes. */
export interface ReachedColumnsInput {
  /** Occlusion pressures or one-repetition maxima. */
  readonly of: ColumnAnswer<'occlusion-pressure'> | ColumnAnswer<'one-repetition-maximum'>;
  /** What was set: cuff pressures [mmHg] or loads [unit of the maxima], such as `value` of a column answer. */
  readonly setting: NumberColumn;
}

/** The percentages that settings really are, one row a person; NaN where there is no answer. */
export interface ReachedColumns {
  /** The setting as a percentage of the estimate or measurement [%]. */
  readonly percent: Float64Array;
  /** Lower ends of the 95 % interval of the true percentage [%]. */
  readonly lower: Float64Array;
  /** Upper ends of the 95 % interval of the true percentage [%]. */
  readonly upper: Float64Array;
  /** The chance that the setting closes the artery fully [%]; of occlusion pressures only. */
  readonly occlusionChancePercent?: Float64Array;
  /** Why a row has no answer; see `rowFlags`. */
  readonly flag: Uint8Array;
}

const KINDS = ['occlusion-pressure', 'one-repetition-maximum'] as const;
/** More than any pressure or load there is. */
const MOST = 1e5;

/**
 * What percentage settings really are of the limb occlusion pressure or maximum, over columns: after rounding, with its
 * 95 % range, and the chance of closing the artery. The numbers are those of `reached` in `targetCuffPressure` and
 * `trainingLoad`.
 *
 * Formula: p = 100 × P / LOP; chance = 100 × Φ(ln(P / LOP) / s), on a plain scale 100 × Φ((P − LOP) / s)
 *
 * - Error: the range is 100 × P over the ends of the interval of `of`.
 *
 * @param input - `of`, a column answer of occlusion pressures [mmHg] or maxima; `setting` P, a column in its unit
 * @returns columns `percent`, `lower`, `upper` and `occlusionChancePercent` [%], and `flag`.
 * @throws InputError for a wrong call: another kind of answer, columns that differ in length.
 *
 * @example
 * ```ts
 * import { columns, reachedColumns } from 'cuffwork/study';
 * const lop = columns({
 *   answer: 'occlusion-pressure', equation: 'pooled-curve-thigh-2026', limb: 'leg', cuffWidthCm: 10, posture: 'supine',
 *   circumferenceCm: [54, 60], systolicMmHg: 120, diastolicMmHg: 70,
 * });
 * const { value: setting } = columns({ answer: 'cuff-pressure', occlusion: lop, percent: 50, gaugeStepMmHg: 5 });
 * const reached = reachedColumns({ of: lop, setting });
 * reached.percent[0]!.toFixed(1); // => '49.6'
 * reached.upper[0]!.toFixed(0); // => '75'
 * reached.occlusionChancePercent![0]!.toFixed(3); // => '0.041'
 * ```
 */
export function reachedColumns(input: ReachedColumnsInput): ReachedColumns {
  const reader = new Reader(input);
  const columns = new ColumnReader(reader);
  const of = readBase(reader, columns, { field: 'of', kinds: KINDS, units: ['mm[Hg]', 'kg', '[lb_av]'] });
  const pressures = of?.about.kind === 'occlusion-pressure';
  const settings = columns.numbers('setting', { name: 'setting', unit: of?.about.unit ?? '1', min: 1e-6, max: MOST });
  reader.done();
  const { value, lower, upper, standardDeviation, flag: before } = of!;
  const rows = value.length;
  const [percents, lowers, uppers, chances] = [0, 0, 0, 0].map(() => new Float64Array(rows).fill(NaN)) as [
    Float64Array,
    Float64Array,
    Float64Array,
    Float64Array,
  ];
  const flag = new Uint8Array(rows);
  for (let row = 0; row < rows; row += 1) flag[row] = before[row]! & REFUSED;
  settings.check(flag, 0, rows);
  for (let row = 0; row < rows; row += 1) {
    if (flag[row] !== 0) continue;
    const setting = at(settings, row);
    percents[row] = (100 * setting) / value[row]!;
    if (upper[row]! > 0) lowers[row] = (100 * setting) / upper[row]!;
    if (lower[row]! > 0) uppers[row] = (100 * setting) / lower[row]!;
    const deviation = standardDeviation[row]!;
    if (!pressures || deviation !== deviation) continue;
    const { scale } = of!.about;
    const spread = { value: value[row]!, standardDeviation: deviation, ...(scale && { scale }) };
    chances[row] = 100 * chanceAtOrBelow(setting, spread)!;
  }
  const shared = { percent: percents, lower: lowers, upper: uppers, flag };
  return pressures ? { ...shared, occlusionChancePercent: chances } : shared;
}
