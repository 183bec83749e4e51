import { Math } from '../quantity/maths.js';
import { logNormalInterval, normalInterval, type Answer } from '../answer/answer.js';
import { plainInput } from '../answer/plain-input.js';
import type { Reader } from '../answer/reader.js';
import { grades } from '../evidence/grades.js';
import { decimal } from '../quantity/decimal.js';
import { inLoadUnit, quantities, type Quantity, type Unit } from '../quantity/quantities.js';
import type { Rounding } from '../quantity/exact.js';
import { loadableWeights, loadBar, readInventory, ROUNDINGS, type Plate } from '../strength/plates.js';
import { nearestOf } from '../strength/training-load.js';
import {
  hasColumns,
  inBlocks,
  outputColumns,
  refuseRows,
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

/** A column answer that is given back, and the range its scalar sister takes. */
interface Base {
  readonly field: string;
  readonly kinds: readonly Answer['kind'][];
  readonly units: readonly Unit[];
  readonly min: number;
  readonly max: number;
}

/** A column answer of an earlier call; only what is worked with is looked at. */
export function readBase(
  reader: Reader,
  input: ColumnReader,
  { field, kinds, units }: Pick<Base, 'field' | 'kinds' | 'units'>,
): ColumnAnswer | undefined {
  const expected = need(COLUMN_ANSWER, { kinds });
  const given = reader.raw(field);
  try {
    const { value, lower, upper, standardDeviation, flag, about } = given as ColumnAnswer;
    const { kind, unit, evidence } = about;
    const whole = hasColumns({ value, lower, upper, standardDeviation, flag }, value.length);
    if (whole && kinds.includes(kind) && units.includes(unit) && Object.hasOwn(grades, evidence)) {
      input.rows = value.length;
      // What holds for the rows is passed along, as `inputs` of what is worked out from them.
      return { value, lower, upper, standardDeviation, flag, about: plainInput(about, expected) as ColumnsAbout };
    }
  } catch {
    // Whatever cannot be read is no column answer.
  }
  reader.report(given === undefined ? 'missing' : 'wrong-type', field, expected, 'something else');
  return undefined;
}

/** Brings a percentage of a value to what there is; NaN where nothing there is will do. */
type Fit = (percent: number, value: number) => number;

interface Share {
  /** The field of the percentage. */
  readonly percent: 'percentLop' | 'percentOneRepMax';
  readonly base: Base;
  readonly step: { readonly field: string; readonly quantity: Quantity; readonly otherwise?: number };
  /** Reads what a value is brought to where that is no step, in the unit of the column answer. */
  readonly readFit?: (unit: Unit) => ((highest: number) => Fit) | undefined;
  readonly ceiling?: { readonly field: string; readonly quantity: Quantity };
  readonly about: Pick<ColumnsAbout, 'kind' | 'equation'>;
}

/** A percentage of a column answer, brought to a step: what targets and loads have in common. */
function shareColumns(
  reader: Reader,
  { percent: field, base, step, readFit, ceiling, about }: Share,
  rounding: Rounding,
): ColumnAnswer {
  const input = new ColumnReader(reader);
  const of = readBase(reader, input, base);
  const percents = input.numbers(field, quantities[field]);
  const given = input.numbers(step.field, step.quantity, 'values');
  // If you give a step for each row, every row needs one, unless there is one to fall back on.
  const steps =
    given.varies && step.otherwise === undefined ? new Numbers(step.quantity, given.values, true, false) : given;
  const fitOf = readFit?.(of?.about.unit ?? base.units[0]!);
  const ceilings = ceiling ? input.numbers(ceiling.field, ceiling.quantity, 'values') : undefined;
  const rows = of?.value.length ?? 0;
  const out = outputColumns(reader, rows);
  reader.done();

  const { value, lower, upper, standardDeviation, flag } = out;
  const {
    value: whole,
    lower: wholeLower,
    upper: wholeUpper,
    standardDeviation: wholeDeviation,
    flag: wholeFlag,
  } = of!;
  const log = of!.about.scale === 'log';
  const fallback = step.otherwise ?? NaN;
  const fit = fitOf?.(highestShare(of!, percents));
  let by: Step = stepOf(fallback);
  const setting = (row: number, percent: number): number => {
    const given = whole[row]!;
    if (fit) return fit(percent, given);
    const ownStep = steps.values[row & steps.mask]!;
    const asked = ownStep === ownStep ? ownStep : fallback;
    if (asked !== by.step) by = stepOf(asked);
    const most = ceilings ? ceilings.values[row & ceilings.mask]! : NaN;
    const near = (percent / 100) * given;
    const above = near > most * (1 + DOUBT) || (near > most * (1 - DOUBT) && exactShare(percent, given) > most);
    if (above) {
      flag[row]! |= CEILING_REACHED;
      return roundShare(100, most, by, rounding);
    }
    return roundShare(percent, given, by, rounding);
  };
  inBlocks(rows, (from, to) => {
    // Earlier flags of a row stay; the given flags are read first, as they may be those written to.
    for (let row = from; row < to; row += 1) {
      const before = wholeFlag[row]!;
      const given = whole[row]!;
      // An end on the wrong side of its value contradicts it; where there is no interval both are NaN.
      const fine = given >= base.min && given <= base.max && !(wholeLower[row]! > given || wholeUpper[row]! < given);
      flag[row] = before & REFUSED || fine ? before : given === given ? IMPOSSIBLE : MISSING;
    }
    percents.check(flag, from, to);
    steps.check(flag, from, to);
    ceilings?.check(flag, from, to);
    for (let row = from; row < to; row += 1) {
      if ((flag[row]! & REFUSED) === 0) {
        const percent = percents.values[row & percents.mask]!;
        const low = (percent / 100) * wholeLower[row]!;
        const high = (percent / 100) * wholeUpper[row]!;
        // On a log scale a share of a pressure has the deviation of the pressure.
        const deviation = log ? wholeDeviation[row]! : (percent / 100) * wholeDeviation[row]!;
        const reached = setting(row, percent);
        if (reached > 0) {
          value[row] = reached;
          lower[row] = low;
          upper[row] = high;
          standardDeviation[row] = deviation;
          continue;
        }
        flag[row] = RELATION;
      }
    }
    refuseRows(out, from, to);
  });
  const { unit, evidence, scale } = of!.about;
  return {
    about: {
      ...about,
      unit,
      level: 0.95,
      evidence,
      ...(log && { scale }),
      assumptions: [log ? logNormalInterval : normalInterval],
      inputs: { [base.field]: of!.about },
    },
    ...out,
  };
}

export const targetColumns = (reader: Reader): ColumnAnswer<'cuff-pressure'> =>
  shareColumns(
    reader,
    {
      percent: 'percentLop',
      base: {
        field: 'occlusion',
        kinds: ['occlusion-pressure'],
        units: ['mm[Hg]'],
        min: quantities.occlusionMmHg.min / 2,
        max: quantities.occlusionMmHg.max * 4,
      },
      step: { field: 'gaugeStepMmHg', quantity: quantities.gaugeStepMmHg, otherwise: 1 },
      ceiling: { field: 'ceilingMmHg', quantity: quantities.ceilingMmHg },
      about: {
        kind: 'cuff-pressure',
        equation: 'percent-of-occlusion',
      },
    },
    'down',
  ) as ColumnAnswer<'cuff-pressure'>;

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
  const available = reader.optionalNumbers('available', inLoadUnit(quantities.load, code));
  const inventory = readInventory(reader, code === '[lb_av]' ? 'lb' : 'kg', false);
  const [way, ...others] = WAYS.filter((name) => reader.has(name));
  for (const name of others) reader.report('wrong-relation', name, need(LEFT_OUT_WITH, { field: way! }), 'both');
  if (way === 'step') return undefined;
  return (highest) => {
    if (available)
      return fitTo(
        [...available].sort((a, b) => a - b),
        -Infinity,
        rounding,
      );
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
    if (wanted < least && decimal(wanted).lt(decimal(least))) return NaN;
    return nearestOf(wanted, loads.slice(Math.max(0, place - 1), place + 3), rounding) || NaN;
  };
}

export function loadColumns(reader: Reader): ColumnAnswer<'training-load'> {
  const rounding = reader.optionalChoice('rounding', ROUNDINGS) ?? 'nearest';
  return shareColumns(
    reader,
    {
      percent: 'percentOneRepMax',
      base: {
        field: 'oneRepMax',
        kinds: ['one-repetition-maximum'],
        units: ['kg', '[lb_av]'],
        min: quantities.load.min,
        max: quantities.load.max * 40,
      },
      step: { field: 'step', quantity: quantities.step },
      readFit: (unit) => readLoadFit(reader, unit, rounding),
      about: {
        kind: 'training-load',
        equation: 'percent-of-maximum',
      },
    },
    rounding,
  ) as ColumnAnswer<'training-load'>;
}
