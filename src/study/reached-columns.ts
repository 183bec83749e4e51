import { Reader } from '../answer/reader.js';
import { chanceAtOrBelow } from '../pressure/answer-spread.js';
import type { ColumnAnswer } from './column-answer.js';
import { at, ColumnReader, type NumberColumn } from './column-input.js';
import { REFUSED } from './flags.js';
import { flagOfGiven, readBase } from './share-columns.js';

/** What settings can be a percentage of. */
type Base = 'occlusion-pressure' | 'one-repetition-maximum';

/** What {@link reachedColumns} takes. */
export interface ReachedColumnsInput<K extends Base = Base> {
  /** Occlusion pressures or one-repetition maxima. */
  readonly of: ColumnAnswer<K>;
  /** What was set: cuff pressures [mmHg] or loads [unit of the maxima], such as `value` of a column answer. */
  readonly setting: NumberColumn;
}

/** The ends and flags of the percentages, one row a person; NaN where there is no answer. */
interface ReachedEnds {
  /** Lower ends of the 95 % interval of the true percentage [%]. */
  readonly lower: Float64Array;
  /** Upper ends of the 95 % interval of the true percentage [%]. */
  readonly upper: Float64Array;
  /** Why a row has no answer; see `rowFlags`. */
  readonly flag: Uint8Array;
}

/** The percentages of occlusion pressure that cuff pressures really are. */
export interface ReachedPressureColumns extends ReachedEnds {
  /** Percentage of the estimate or measurement [%]. */
  readonly percentLop: Float64Array;
  /** The chance that the setting closes the artery fully [%]. */
  readonly occlusionChancePercent: Float64Array;
}

/** The percentages of the 1RM that loads really are. */
export interface ReachedLoadColumns extends ReachedEnds {
  /** Percentage of the 1RM given [%]. */
  readonly percentOneRepMax: Float64Array;
}

/** The percentages that settings really are, by what they are a percentage of. */
export type ReachedColumns<K extends Base = Base> = K extends 'occlusion-pressure'
  ? ReachedPressureColumns
  : ReachedLoadColumns;

const KINDS = ['occlusion-pressure', 'one-repetition-maximum'] as const;
/** More than any pressure or load there is. */
const LEAST = 1e-6;
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
 * @returns columns `percentLop` or `percentOneRepMax`, `lower`, `upper` and `occlusionChancePercent` [%], and `flag`.
 * @throws InputError for a wrong call: another kind of answer, columns that differ in length.
 *
 * @example
 * ```ts
 * import { columns, reachedColumns } from 'cuffwork/study';
 * const lop = columns({
 *   answer: 'occlusion-pressure', equation: 'pooled-curve-thigh-2026', limb: 'leg', cuffWidthCm: 10, posture: 'supine',
 *   circumferenceCm: [54, 60], systolicMmHg: 120, diastolicMmHg: 70,
 * });
 * const { value: setting } = columns({ answer: 'cuff-pressure', occlusion: lop, percentLop: 50, gaugeStepMmHg: 5 });
 * const reached = reachedColumns({ of: lop, setting });
 * reached.percentLop[0]!.toFixed(1); // => '49.6'
 * reached.upper[0]!.toFixed(0); // => '75'
 * reached.occlusionChancePercent[0]!.toFixed(3); // => '0.041'
 * ```
 */
export function reachedColumns<K extends Base>(input: ReachedColumnsInput<K>): ReachedColumns<K> {
  const reader = new Reader(input);
  const columns = new ColumnReader(reader);
  const of = readBase(reader, columns, { field: 'of', kinds: KINDS, units: ['mm[Hg]', 'kg', '[lb_av]'] });
  const pressures = of?.about.kind === 'occlusion-pressure';
  const settings = columns.numbers('setting', { name: 'setting', unit: of?.about.unit ?? '1', min: LEAST, max: MOST });
  reader.done();
  const { value, lower, upper, standardDeviation, flag: before } = of!;
  const rows = value.length;
  const nothing = (): Float64Array => new Float64Array(rows).fill(NaN);
  const [percents, lowers, uppers, chances] = [nothing(), nothing(), nothing(), nothing()];
  const flag = before.map((_, row) => flagOfGiven(of!, row, LEAST, MOST) & REFUSED);
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
  const ends = { lower: lowers, upper: uppers, flag };
  const reached: ReachedColumns = pressures
    ? { percentLop: percents, occlusionChancePercent: chances, ...ends }
    : { percentOneRepMax: percents, ...ends };
  return reached as ReachedColumns<K>;
}
