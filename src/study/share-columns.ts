import { describe } from '../answer/issues.js';
import { Math } from '../quantity/maths.js';
import type { Answer } from '../answer/answer.js';
import { logNormalInterval, normalInterval } from '../answer/interval.js';
import { plainInput } from '../answer/plain-input.js';
import type { Reader } from '../answer/reader.js';
import { grades } from '../evidence/grades.js';
import { inLoadUnit, quantities, type Unit } from '../quantity/quantities.js';
import { sum, type Rounding } from '../quantity/exact.js';
import { loadableWeights, loadBar, readInventory, ROUNDINGS, type Plate } from '../strength/plates.js';
import { nearestOf } from '../strength/training-load.js';
import {
  inBlocks,
  outputColumns,
  wholeColumns,
  type AnswerColumns,
  type ColumnAnswer,
  type ColumnsAbout,
} from './column-answer.js';
import { at, ColumnReader, Numbers, type NumberColumn } from './column-input.js';
import { DOUBT, exactShare, placeBelow, roundShare, stepOf, type Step } from './exact-share.js';
import { CEILING_REACHED, IMPOSSIBLE, MISSING, REFUSED, RELATION } from './flags.js';
import { LEFT_OUT_WITH, need } from '../answer/needs.js';
import { COLUMN_ANSWER } from './needs.js';

/** Cuff pressures over columns: the fields of `targetCuffPressure`. */
export interface TargetColumnsInput {
  /** Names the calculation: cuff pressure. */
  readonly answer: 'cuff-pressure';
  /** Column answer with the limb occlusion pressures [mmHg]. */
  readonly occlusion: ColumnAnswer<'occlusion-pressure'>;
  /** Cuff pressure as a percent of LOP [%], 1–100. */
  readonly percentLop: NumberColumn;
  /** Smallest step of the gauge [mmHg], 0.1–50. */
  readonly gaugeStepMmHg?: NumberColumn | undefined;
  /** Highest cuff pressure that the answer may take [mmHg], 20–1000. */
  readonly ceilingMmHg?: NumberColumn | undefined;
  /** Columns of an earlier answer, to be written over. */
  readonly into?: AnswerColumns | undefined;
}

/** Training loads over columns: fields of `trainingLoad`, in the unit of the maximum. */
export interface LoadColumnsInput {
  /** Names the calculation: training load. */
  readonly answer: 'training-load';
  /** Column answer with the one-repetition maxima. */
  readonly oneRepMax: ColumnAnswer<'one-repetition-maximum'>;
  /** Load as a percent of 1RM [%], 1–100. */
  readonly percentOneRepMax: NumberColumn;
  /**
   * Smallest step between loads [`unit` of the maximum], 0.01–100; instead of it `available`, or `bar` and `plates`,
   * the same for all rows.
   */
  readonly step?: NumberColumn | undefined;
  /** Loads you can set [`unit` of the maximum]; instead of `step`. */
  readonly available?: readonly number[] | undefined;
  /** Mass of the bar [`unit` of the maximum], 0–200. */
  readonly bar?: number | undefined;
  /** Mass of both collars together [`unit` of the maximum], 0–50. */
  readonly collars?: number | undefined;
  /** Plates that you have; with `bar`. */
  readonly plates?: readonly Plate[] | undefined;
  /** How the loads are rounded to those you can set; `nearest` when left out. */
  readonly rounding?: Rounding | undefined;
  /** Columns of an earlier answer, to be written over. */
  readonly into?: AnswerColumns | undefined;
}

/** A column answer that is given back: its field, and the kinds and units it may have. */
interface Base {
  readonly field: string;
  readonly kinds: readonly Answer['kind'][];
  readonly units: readonly Unit[];
}

/** A column answer of an earlier call; only what is worked with is looked at. */
export function readBase(reader: Reader, input: ColumnReader, { field, kinds, units }: Base): ColumnAnswer | undefined {
  const expected = need(COLUMN_ANSWER, { kinds });
  const given = reader.raw(field);
  let received = describe(given);
  try {
    const columns = wholeColumns(given as ColumnAnswer);
    const { about } = given as ColumnAnswer;
    const { kind, unit, evidence } = about;
    if (columns && kinds.includes(kind) && units.includes(unit) && Object.hasOwn(grades, evidence)) {
      input.rows = columns.value.length;
      // What holds for the rows is passed along, as `inputs` of what is worked out from them.
      return { ...columns, about: plainInput(about, expected) as ColumnsAbout };
    }
    if (columns && !kinds.includes(kind)) received = describe(kind);
  } catch {
    // Whatever cannot be read is no column answer.
  }
  reader.report('wrong-type', field, expected, received);
  return undefined;
}

/** Brings a percentage of a value to what you can set; NaN where nothing will do. */
type Fit = (percent: number, value: number) => number;
/** The same for a row, which may have a step of its own. */
type RowFit = (percent: number, value: number, row: number) => number;

/** Brings to steps, one for all rows or one a row; `otherwise` where there is none. */
function fitToSteps(steps: Numbers, otherwise: number, rounding: Rounding): RowFit {
  let by: Step = stepOf(otherwise);
  return (percent, value, row) => {
    const own = at(steps, row);
    const asked = own === own ? own : otherwise;
    if (asked !== by.step) by = stepOf(asked);
    return roundShare(percent, value, by, rounding);
  };
}

/** The flag of a row that is given back: its own, or what is wrong with its value. */
export function flagOfGiven(
  { value, lower, upper, flag }: Pick<AnswerColumns, 'value' | 'lower' | 'upper' | 'flag'>,
  row: number,
  min: number,
  max: number,
): number {
  const before = flag[row]!;
  const given = value[row]!;
  // An end on the wrong side of its value contradicts it; where there is no interval both are NaN.
  const fine = given >= min && given <= max && !(lower[row]! > given || upper[row]! < given);
  return before & REFUSED || fine ? before : given === given ? IMPOSSIBLE : MISSING;
}

/** A percentage of each row of a column answer, brought to what can be set. */
function shareColumns<K extends 'cuff-pressure' | 'training-load'>(
  { about, ...of }: ColumnAnswer,
  { field, min, max }: { readonly field: string; readonly min: number; readonly max: number },
  percents: Numbers,
  settings: readonly Numbers[],
  fit: RowFit,
  out: AnswerColumns,
  kind: Pick<ColumnsAbout<K>, 'kind' | 'equation'>,
): ColumnAnswer<K> {
  const { value, lower, upper, standardDeviation, flag } = out;
  const { value: whole, lower: wholeLower, upper: wholeUpper, standardDeviation: wholeDeviation } = of;
  const { unit, evidence, scale } = about;
  const log = scale === 'log';
  inBlocks(out, (from, to) => {
    // Earlier flags of a row stay; the given flags are read first, as they may be those written to.
    for (let row = from; row < to; row += 1) flag[row] = flagOfGiven(of, row, min, max);
    for (const column of [percents, ...settings]) column.check(flag, from, to);
    for (let row = from; row < to; row += 1) {
      if ((flag[row]! & REFUSED) !== 0) continue;
      const percent = at(percents, row);
      const share = percent / 100;
      // All are read before any is written: the columns may be the same.
      const low = share * wholeLower[row]!;
      const high = share * wholeUpper[row]!;
      // On a log scale a share of a pressure has the deviation of the pressure.
      const deviation = log ? wholeDeviation[row]! : share * wholeDeviation[row]!;
      const reached = fit(percent, whole[row]!, row);
      if (!(reached > 0)) {
        flag[row] = RELATION;
        continue;
      }
      value[row] = reached;
      lower[row] = low;
      upper[row] = high;
      standardDeviation[row] = deviation;
    }
  });
  return {
    about: {
      ...kind,
      unit,
      level: 0.95,
      evidence,
      ...(log && { scale }),
      assumptions: [log ? logNormalInterval : normalInterval],
      inputs: { [field]: about },
    },
    ...out,
  };
}

export function targetColumns(reader: Reader): ColumnAnswer<'cuff-pressure'> {
  const { min, max } = quantities.occlusionMmHg;
  const base = {
    field: 'occlusion',
    kinds: ['occlusion-pressure'],
    units: ['mm[Hg]'],
    min: min / 2,
    max: max * 4,
  } as const;
  const input = new ColumnReader(reader);
  const of = readBase(reader, input, base);
  const percents = input.numbers('percentLop', quantities.percentLop);
  const steps = input.numbers('gaugeStepMmHg', quantities.gaugeStepMmHg, 'values');
  const ceilings = input.numbers('ceilingMmHg', quantities.ceilingMmHg, 'values');
  const out = outputColumns(reader, of?.value.length ?? 0);
  reader.done();
  const toStep = fitToSteps(steps, 1, 'down');
  const toCeiling: RowFit = (percent, value, row) => {
    const most = at(ceilings, row);
    const above = most === most && exactShare(percent, value) > most;
    if (!above) return toStep(percent, value, row);
    out.flag[row]! |= CEILING_REACHED;
    return toStep(100, most, row);
  };
  const kind = { kind: 'cuff-pressure', equation: 'percent-of-occlusion' } as const;
  return shareColumns(of!, base, percents, [steps, ceilings], toCeiling, out, kind);
}

/** What brings a load to loads you can set: give one of these fields at most. */
const WAYS = ['step', 'available', 'bar'] as const;

/** The highest share of a value that any row asks for. */
function highestShare({ value }: ColumnAnswer, percents: Numbers): number {
  let highest = 0;
  for (let row = 0; row < value.length; row += 1) {
    const percent = at(percents, row);
    const share = (percent / 100) * value[row]!;
    if (share > highest && share < Infinity && percent <= percents.quantity.max) highest = share;
  }
  return highest;
}

/** The ways to bring a load to what there is, besides a step. */
function readLoadFit(reader: Reader, code: Unit, rounding: Rounding): ((highest: number) => Fit) | undefined {
  const available = reader.optionalNumbers('available', inLoadUnit(quantities.load, code))?.sort((a, b) => a - b);
  const inventory = readInventory(reader, code === '[lb_av]' ? 'lb' : 'kg', false);
  const [way, ...others] = WAYS.filter((name) => reader.has(name));
  for (const name of others) reader.leaveOut(name, need(LEFT_OUT_WITH, { field: way! }));
  if (way === 'step') return undefined;
  return (highest) => {
    if (available) return fitTo(available, -Infinity, rounding);
    if (!inventory) return exactShare;
    // One more than the highest, so that the next load above it is there.
    const weights = loadableWeights(inventory, highest + 1);
    if (weights) return fitTo(weights, weights[0]!, rounding);
    return (percent, value) => {
      const loading = loadBar(exactShare(percent, value), inventory, rounding);
      return 'total' in loading ? loading.total : NaN;
    };
  };
}

/** The nearest of some loads, lightest first, to a share that is `least` or more; decimals tell close calls. */
function fitTo(loads: readonly number[], least: number, rounding: Rounding): Fit {
  return (percent, value) => {
    const near = (percent / 100) * value;
    const place = placeBelow(loads, near);
    const below = loads[place];
    const above = loads[place + 1];
    const doubt = DOUBT * near;
    const clear =
      below !== undefined &&
      near - below > doubt &&
      (above === undefined || (above - near > doubt && Math.abs(above + below - 2 * near) > doubt));
    if (clear) return rounding === 'down' || above === undefined || near - below < above - near ? below : above;
    const wanted = exactShare(percent, value);
    if (sum([wanted, -least]) < 0) return NaN;
    return nearestOf(wanted, loads.slice(Math.max(0, place - 1), place + 3), rounding) || NaN;
  };
}

export function loadColumns(reader: Reader): ColumnAnswer<'training-load'> {
  const { min, max } = quantities.load;
  const base = {
    field: 'oneRepMax',
    kinds: ['one-repetition-maximum'],
    units: ['kg', '[lb_av]'],
    min,
    max: max * 40,
  } as const;
  const rounding = reader.optionalChoice('rounding', ROUNDINGS) ?? 'nearest';
  const input = new ColumnReader(reader);
  const of = readBase(reader, input, base);
  const percents = input.numbers('percentOneRepMax', quantities.percentOneRepMax);
  // If you give a step for each row, every row needs one: there is none to fall back on.
  const steps = input.numbers('step', quantities.step, 'column');
  const fitOf = readLoadFit(reader, of?.about.unit ?? 'kg', rounding);
  const out = outputColumns(reader, of?.value.length ?? 0);
  reader.done();
  const fit = fitOf ? fitOf(highestShare(of!, percents)) : fitToSteps(steps, NaN, rounding);
  const kind = { kind: 'training-load', equation: 'percent-of-maximum' } as const;
  return shareColumns(of!, base, percents, [steps], fit, out, kind);
}
