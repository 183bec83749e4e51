import { normalInterval } from '../answer/interval.js';
import { defined } from '../answer/defined.js';
import type { Reader } from '../answer/reader.js';
import {
  inLoadUnit,
  LOAD_UNITS,
  loadUnitCode,
  quantities,
  SEXES,
  type LoadUnit,
  type Sex,
} from '../quantity/quantities.js';
import { inUnit, misfits, outsideDomain } from '../strength/choose.js';
import type { OneRepMaxEquation } from '../strength/equation.js';
import { oneRepMaxEquations, type OneRepMaxEquationId } from '../strength/equations.js';
import { LIFTS, TRAINING, type Lift, type Training } from '../strength/lifts.js';
import { maximumDeviation } from '../strength/one-rep-max.js';
import type { LiftFacts } from '../strength/read-set.js';
import { reserveOf } from '../strength/reserve.js';
import { inBlocks, outputColumns, writeIntervals, type AnswerColumns, type ColumnAnswer } from './column-answer.js';
import { at, ColumnReader, type NumberColumn, type WordColumn } from './column-input.js';
import { DOES_NOT_APPLY, IMPOSSIBLE, NO_INTERVAL, OUTSIDE_FITTED_RANGE, RELATION } from './flags.js';
import { liftsOf } from '../strength/needs.js';
import { describe } from '../answer/issues.js';

/** One-repetition maxima over columns: the fields of `estimateOneRepMax`. */
export interface MaximumColumnsInput {
  /** Names the calculation: one-repetition maximum (1RM). */
  readonly answer: 'one-repetition-maximum';
  /** Id of the 1RM equation, the same for all rows. */
  readonly equation: OneRepMaxEquationId;
  /** Load of each set [`unit`], 0.1–2000. */
  readonly load: NumberColumn;
  /** Repetitions of each set, 1–500. */
  readonly repetitions: NumberColumn;
  /** Repetitions in reserve (RIR) after each set, 0–10. */
  readonly repetitionsInReserve?: NumberColumn | undefined;
  /** Rating on the scale of repetitions in reserve, 1–10; instead of `repetitionsInReserve`. */
  readonly reserveRpe?: NumberColumn | undefined;
  /** The lift of each row. */
  readonly lift?: WordColumn<Lift> | undefined;
  /** Sex of the person in each row. */
  readonly sex?: WordColumn<Sex> | undefined;
  /** Age [years], 1–120. */
  readonly ageYears?: NumberColumn | undefined;
  /** Training status of the person in each row. */
  readonly training?: WordColumn<Training> | undefined;
  /** Unit of the loads and of the answers; kg when left out. */
  readonly unit?: LoadUnit | undefined;
  /** Columns of an earlier answer, to be written over. */
  readonly into?: AnswerColumns | undefined;
}

/** The columns that a maximum is estimated from. */
function readColumns(reader: Reader, unit: LoadUnit) {
  const input = new ColumnReader(reader);
  const columns = {
    loads: input.numbers('load', inLoadUnit(quantities.load, loadUnitCode(unit))),
    repetitions: input.numbers('repetitions', quantities.repetitions),
    reserves: input.numbers('repetitionsInReserve', quantities.repetitionsInReserve, 'values'),
    ratings: input.numbers('reserveRpe', quantities.reserveRpe, 'values'),
    lift: input.words('lift', LIFTS, 'values'),
    sex: input.words('sex', SEXES, 'values'),
    ages: input.numbers('ageYears', quantities.ageYears, 'values'),
    training: input.words('training', TRAINING, 'values'),
  };
  return { columns, rows: input.someRows('load') };
}
type Columns = ReturnType<typeof readColumns>['columns'];

/** What the deviation of a row depends on, in an object that serves for all rows. */
type RowSet = Parameters<typeof maximumDeviation>[2];
type Row = { -readonly [Field in keyof RowSet]: RowSet[Field] };

const isOtherLift = ({ lifts }: OneRepMaxEquation, lift: Lift | undefined): boolean =>
  lift !== undefined && lifts !== 'any' && !lifts.includes(lift);

/** Reads the repetitions of a row into `set`; the flag that refuses the row, or 0. */
function repetitionsReader(equation: OneRepMaxEquation, { repetitions, reserves, ratings, lift }: Columns, set: Row) {
  const stated = { repetitions: 0, from: 0, to: 0 };
  return (row: number): number => {
    const reserve = at(reserves, row);
    const rating = at(ratings, row);
    stated.repetitions = stated.from = stated.to = reserve === reserve ? reserve : 0;
    set.reserve = stated;
    if (rating === rating) {
      if (reserve === reserve) return RELATION;
      const mark = reserveOf(rating);
      if (!mark) return IMPOSSIBLE;
      set.reserve = mark;
    }
    set.r = at(repetitions, row) + set.reserve.repetitions;
    if (isOtherLift(equation, lift.at(row))) return DOES_NOT_APPLY;
    return set.r !== 1 && outsideDomain(equation, set.r) !== undefined ? RELATION : 0;
  };
}

/** Whether a row lies outside the sample, as the scalar function says it. */
function isOutside(equation: OneRepMaxEquation, { sex, training, ages }: Columns, row: number, r: number): boolean {
  const { fittedRepetitions: fitted, population } = equation;
  if (fitted && (r < fitted.low || r > fitted.high)) return true;
  if (!population) return false;
  const age = at(ages, row);
  const facts = {
    sex: sex.at(row),
    training: training.at(row),
    ageYears: age === age ? age : undefined,
  } as LiftFacts;
  return misfits(equation, facts, r).some(({ field, given }) => given && field !== 'repetitions');
}

export function maximumColumns(reader: Reader): ColumnAnswer<'one-repetition-maximum'> {
  const id = reader.choice(
    'equation',
    oneRepMaxEquations.map((equation) => equation.id),
  );
  const equation: OneRepMaxEquation = oneRepMaxEquations.find((candidate) => candidate.id === id)!;
  const unit = reader.optionalChoice('unit', LOAD_UNITS) ?? 'kg';
  const { columns, rows } = readColumns(reader, unit);
  const { loads, lift, training } = columns;
  const oneLift = lift.varies ? undefined : lift.at(0);
  if (isOtherLift(equation, oneLift)) {
    reader.refuse('lift', liftsOf(equation.lifts as readonly Lift[], id), describe(oneLift));
  }
  const out = outputColumns(reader, rows);
  reader.done();

  const { value, standardDeviation, flag } = out;
  const apply = inUnit(equation, unit);
  const set: Row = { r: 0, reserve: { repetitions: 0, from: 0, to: 0 }, unit, facts: {} };
  const readRow = repetitionsReader(equation, columns, set);
  const all = Object.values(columns);
  inBlocks(out, (from, to) => {
    flag.fill(0, from, to);
    for (const column of all) column.check(flag, from, to);
    for (let row = from; row < to; row += 1) {
      if (flag[row] === 0) flag[row] = readRow(row);
      if (flag[row] !== 0) continue;
      const load = at(loads, row);
      const once = set.r === 1;
      const maximum = once ? load : apply(load, set.r);
      if (maximum < load) {
        flag[row] = RELATION;
        continue;
      }
      if (once) set.facts = defined({ lift: lift.at(row), training: training.at(row) });
      const deviation = maximumDeviation(equation, maximum, set);
      value[row] = maximum;
      standardDeviation[row] = deviation;
      if (deviation !== deviation) flag[row]! |= NO_INTERVAL;
      if (!once && isOutside(equation, columns, row, set.r)) flag[row]! |= OUTSIDE_FITTED_RANGE;
    }
    writeIntervals(out, from, to);
  });
  return {
    about: {
      kind: 'one-repetition-maximum',
      unit: loadUnitCode(unit),
      level: 0.95,
      equation: id,
      evidence: equation.evidence,
      assumptions: [normalInterval],
    },
    ...out,
  };
}
