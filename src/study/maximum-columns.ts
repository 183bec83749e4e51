import { normalInterval } from '../answer/answer.js';
import type { Reader } from '../answer/reader.js';
import { LOAD_UNITS, loadUnitCode, quantities, type LoadUnit } from '../quantity/quantities.js';
import type { OneRepMaxEquation } from '../strength/equation.js';
import { oneRepMaxEquations, type OneRepMaxEquationId } from '../strength/equations.js';
import { maximumBy, maximumDeviation } from '../strength/one-rep-max.js';
import { inBlocks, outputColumns, writeIntervals, type AnswerColumns, type ColumnAnswer } from './column-answer.js';
import { ColumnReader, type NumberColumn } from './column-input.js';
import { NO_INTERVAL, RELATION } from './flags.js';

/** One-repetition maxima over columns: the fields of `estimateOneRepMax`. */
export interface MaximumColumnsInput {
  readonly answer: 'one-repetition-maximum';
  readonly equation: OneRepMaxEquationId;
  readonly load: NumberColumn;
  readonly repetitions: NumberColumn;
  readonly repetitionsInReserve?: NumberColumn;
  /** Unit of the loads and of the answers; kg when left out. */
  readonly unit?: LoadUnit;
  /** Columns of an earlier answer, to be written over. */
  readonly into?: AnswerColumns;
}

export function maximumColumns(reader: Reader): ColumnAnswer<'one-repetition-maximum'> {
  const id = reader.choice(
    'equation',
    oneRepMaxEquations.map((equation) => equation.id),
  );
  const equation: OneRepMaxEquation = oneRepMaxEquations.find((candidate) => candidate.id === id)!;
  const unit = loadUnitCode(reader.optionalChoice('unit', LOAD_UNITS) ?? 'kg');
  const input = new ColumnReader(reader);
  const loads = input.numbers('load', { ...quantities.load, unit });
  const repetitions = input.numbers('repetitions', quantities.repetitions);
  const reserves = input.numbers('repetitionsInReserve', quantities.repetitionsInReserve, true);
  const rows = input.someRows('load');
  const out = outputColumns(reader, rows);
  reader.done();

  const { value, upper, flag } = out;
  const pole = equation.repetitionsBelow ?? Infinity;
  inBlocks(rows, (from, to) => {
    flag.fill(0, from, to);
    for (const column of [loads, repetitions, reserves]) column.check(flag, from, to);
    for (let row = from; row < to; row += 1) {
      const given = reserves.values[row & reserves.mask]!;
      const reserve = given === given ? given : 0;
      const r = repetitions.values[row & repetitions.mask]! + reserve;
      if (flag[row] === 0 && r >= pole) flag[row] = RELATION;
      if (flag[row] !== 0) {
        value[row] = upper[row] = NaN;
        continue;
      }
      const load = loads.values[row & loads.mask]!;
      const maximum = maximumBy(equation, load, r);
      const deviation = maximumDeviation(equation, load, r, reserve, maximum);
      value[row] = maximum;
      upper[row] = deviation;
      if (deviation !== deviation) flag[row] = NO_INTERVAL;
    }
    writeIntervals(out, from, to);
  });
  const { evidence, formula, symbols, sources } = equation;
  return {
    about: {
      kind: 'one-repetition-maximum',
      unit,
      level: 0.95,
      equation: id,
      evidence,
      formula,
      symbols,
      assumptions: [normalInterval],
      sources,
    },
    ...out,
  };
}
