import type { Answer, Assumption } from '../answer/answer.js';
import { describe, InputError, isInputError, issue, moved, refuse, type InputIssue } from '../answer/issues.js';
import { emptyColumns, refuseRows, type ColumnAnswer, type ColumnsAbout } from './column-answer.js';
import { wrongLength } from './column-input.js';
import {
  BLOOD_PRESSURE_REFER,
  CEILING_REACHED,
  IMPOSSIBLE,
  MISSING,
  NO_INTERVAL,
  OUTSIDE_FITTED_RANGE,
  RELATION,
} from './flags.js';
import { isList } from './lists.js';
import { A_FUNCTION, OUR_ANSWER, need } from '../answer/needs.js';
import { VALUES_OR_COLUMNS, MOST_FIELDS_OF, ONE_COLUMN, ONE_KIND, SOME_ANSWER } from './needs.js';

/** The fields that a function takes, each a value for all rows or a column. */
export type RowFields<I> = { readonly [Field in keyof I]: I[Field] | ArrayLike<I[Field] | null | undefined> };

const REFUSALS: Readonly<Record<string, number>> = { missing: MISSING, 'wrong-relation': RELATION };
const CAUTION_FLAGS: Readonly<Record<string, number>> = {
  'outside-fitted-range': OUTSIDE_FITTED_RANGE,
  'outside-fitted-repetitions': OUTSIDE_FITTED_RANGE,
  'outside-population': OUTSIDE_FITTED_RANGE,
  'ceiling-reached': CEILING_REACHED,
  'blood-pressure-refer': BLOOD_PRESSURE_REFER,
};

/** More than any function of the library takes; each row is refused for every field that it does not know. */
const MOST_FIELDS = 100;

/** Fields that are columns, the others, and how many rows there are. */
function readFields(columns: unknown) {
  if (typeof columns !== 'object' || columns === null || isList(columns)) {
    refuse('wrong-type', [], VALUES_OR_COLUMNS, describe(columns));
  }
  const varying: [name: string, column: ArrayLike<unknown>][] = [];
  const same: Record<string, unknown> = {};
  let rows: number | undefined;
  try {
    const fields = Object.entries(columns as object);
    if (fields.length > MOST_FIELDS)
      refuse('wrong-relation', [], need(MOST_FIELDS_OF, { most: MOST_FIELDS }), `${fields.length}`);
    for (const [name, value] of fields) {
      if (!isList(value)) {
        same[name] = value;
        continue;
      }
      const { length } = value;
      const expected = wrongLength(length, rows);
      if (expected) refuse('wrong-relation', [name], expected, String(length));
      rows = length;
      varying.push([name, value]);
    }
  } catch (error) {
    if (isInputError(error)) throw error;
    refuse('unreadable', [], VALUES_OR_COLUMNS, 'an error');
  }
  if (rows === undefined) refuse('wrong-relation', [], ONE_COLUMN, 'none');
  return { varying, same, rows: rows! };
}

const refusalOf = ({ issues }: InputError): number =>
  issues.reduce((flag, { code }) => flag | (REFUSALS[code] ?? IMPOSSIBLE), 0) || IMPOSSIBLE;

/** What an answer and those before it all assume; refuses an answer of another kind than the first. */
function sharedBy(
  first: Answer,
  assumptions: readonly Assumption[],
  answer: Answer,
  row: number,
): readonly Assumption[] {
  for (const name of ['kind', 'unit', 'equation', 'scale'] as const) {
    if (answer[name] === first[name]) continue;
    const expected = need(ONE_KIND, { name, value: String(first[name]) });
    refuse('wrong-relation', ['calculate', row, name], expected, answer[name]);
  }
  const own = answer.assumptions;
  // Most answers assume the same in the same order.
  if (assumptions.every(({ code }, index) => own[index]?.code === code)) return assumptions;
  return assumptions.filter(({ code }) => own.some((other) => other.code === code));
}

/**
 * Any calculation of the library over columns of people: corrections, calibration, measured pressures, whole chains of
 * them. Your function is called once a row, with the fields of the row, and returns an answer.
 *
 * Use {@link columns} for estimates, targets, maxima and loads: it takes tens of nanoseconds a row, `eachRow` some
 * microseconds. A value that is `NaN`, `null` or `undefined` is missing and left out of the row. A row for which your
 * function throws an `InputError` has no answer: its numbers are NaN and its flag says why; see {@link rowFlags}.
 *
 * - Error and evidence: those of the answers.
 *
 * @param calculate - from a row to an answer; all answers are of one kind, unit, equation and scale
 * @param fields - an object; a list or typed array is a column, anything else is the same in every row
 * @returns a column answer, for {@link columns}, `agreement`, `methods` and the rest.
 * @throws InputError for columns that differ in length, where rows have answers of several kinds, and where no row has
 * one: with what is wrong with the first row.
 *
 * @example
 * ```ts
 * import { correctForCuffWidth, measuredOcclusionPressure, targetCuffPressure } from 'cuffwork';
 * import { eachRow, flagCodes } from 'cuffwork/study';
 * const people = { limb: 'leg', circumferenceCm: [54, 60], systolicMmHg: 120, diastolicMmHg: 70 } as const;
 * const wide = eachRow(correctForCuffWidth, { ...people, occlusionMmHg: [180, null], fromWidthCm: 12, toWidthCm: 10 });
 * [Math.round(wide.value[0]!), wide.value[1]]; // => [197, NaN]
 * flagCodes(wide.flag[1]!); // => ['missing']
 * const half = eachRow(
 *   ({ valueMmHg }: { valueMmHg: number }) => {
 *     const occlusion = measuredOcclusionPressure({ valueMmHg, method: 'doppler', limb: 'leg' });
 *     return targetCuffPressure({ occlusion, percentLop: 50 });
 *   },
 *   { valueMmHg: [165, 180] },
 * );
 * Array.from(half.value); // => [82, 90]
 * ```
 */
export function eachRow<I extends object, A extends Answer>(
  calculate: (row: I) => A,
  fields: RowFields<I>,
): ColumnAnswer<A['kind']> {
  if (typeof calculate !== 'function') refuse('wrong-type', ['calculate'], A_FUNCTION, describe(calculate));
  const { varying, same, rows } = readFields(fields);
  const out = emptyColumns(rows);
  const { value, lower, upper, standardDeviation, flag } = out;
  let first: A | undefined;
  let refused: InputIssue[] | undefined;
  let assumptions: readonly Assumption[] = [];
  for (let row = 0; row < rows; row += 1) {
    const given: Record<string, unknown> = { ...same };
    for (const [name, column] of varying) {
      const one = column[row];
      if (one !== null && one !== undefined && one === one) given[name] = one;
    }
    let answer: A;
    try {
      answer = calculate(given as I);
    } catch (error) {
      if (!isInputError(error)) throw error;
      flag[row] = refusalOf(error);
      refused ??= error.issues.map((one) => moved(one, ['calculate', row, ...one.path]));
      continue;
    }
    if (!Number.isFinite((answer as Partial<Answer> | undefined)?.value)) {
      refuse('wrong-type', ['calculate', row], OUR_ANSWER, describe(answer));
    }
    assumptions = first ? sharedBy(first, assumptions, answer, row) : answer.assumptions;
    first ??= answer;
    value[row] = answer.value;
    lower[row] = answer.lower ?? NaN;
    upper[row] = answer.upper ?? NaN;
    standardDeviation[row] = answer.standardDeviation ?? NaN;
    const message = answer.cautions.reduce((bits, { code }) => bits | (CAUTION_FLAGS[code] ?? 0), 0);
    flag[row] = answer.lower === undefined ? message | NO_INTERVAL : message;
  }
  // A slip in the name of a column refuses every row: the first one says which.
  if (!first) throw new InputError([issue('wrong-relation', ['calculate'], SOME_ANSWER, 'none'), ...(refused ?? [])]);
  refuseRows(out, 0, rows);
  const { kind, unit, scale, equation, evidence, ownEquation } = first;
  const about: ColumnsAbout = {
    kind,
    unit,
    level: 0.95,
    ...(scale && { scale }),
    equation,
    evidence,
    ...(ownEquation && { ownEquation }),
    assumptions: [...assumptions],
  };
  return { about: about as ColumnsAbout<A['kind']>, ...out };
}
