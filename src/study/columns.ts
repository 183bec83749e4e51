import { InputError, type InputIssue } from '../answer/issues.js';
import { Reader } from '../answer/reader.js';
import type { AnswerColumns, ColumnAnswer } from './column-answer.js';
import { maximumColumns, type MaximumColumnsInput } from './maximum-columns.js';
import { occlusionColumns, type OcclusionColumnsInput } from './occlusion-columns.js';
import { loadColumns, targetColumns, type LoadColumnsInput, type TargetColumnsInput } from './share-columns.js';

/** What {@link columns} takes, by the kind of answer asked for. */
export type ColumnsInput = OcclusionColumnsInput | TargetColumnsInput | MaximumColumnsInput | LoadColumnsInput;

const ANSWERS = {
  'occlusion-pressure': occlusionColumns,
  'cuff-pressure': targetColumns,
  'one-repetition-maximum': maximumColumns,
  'training-load': loadColumns,
} as const satisfies Record<ColumnsInput['answer'], (reader: Reader) => AnswerColumns>;

/**
 * The answers of the scalar functions over columns of people: value, 95 % interval and a flag for every row.
 *
 * Every field of the scalar function holds one value for all rows or a column: a `Float64Array`, another typed array
 * or a plain list, where `NaN`, `null` and `undefined` mean a missing value. An equation is always named: columns are
 * by one equation.
 *
 * | `answer`                   | scalar function             | fields                                                      |
 * | -------------------------- | --------------------------- | ----------------------------------------------------------- |
 * | `'occlusion-pressure'`     | `estimateOcclusionPressure` | its own; `equation` may be one of {@link fitOcclusionEquation} |
 * | `'cuff-pressure'`          | `targetCuffPressure`        | `occlusion` (a column answer), `percentLop`, `gaugeStepMmHg`, `ceilingMmHg` |
 * | `'one-repetition-maximum'` | `estimateOneRepMax`         | its own                                                     |
 * | `'training-load'`          | `trainingLoad`              | `oneRepMax` (a column answer), `percentOneRepMax`; `step`, or for all rows `available` or `bar`, `collars` and `plates`; `rounding` |
 *
 * A row is never thrown for. Where the scalar function would refuse it, its numbers are NaN and its flag says why;
 * else they are the very numbers of the scalar function. Flags also say what is to be watched for; see {@link rowFlags}.
 * `into` takes the columns of an earlier answer, to be written over.
 *
 * @param input - `answer`, the kind of answer; its fields; `into`
 * @returns `value`, `lower`, `upper` and `flag`, and `about`: what holds for every row, as plain JSON.
 * @throws InputError for a wrong call: an unknown field or equation, columns that differ in length, one value for
 * all rows that is impossible.
 *
 * @example
 * ```ts
 * import { columns, flagCodes } from 'cuffwork/study';
 * const lop = columns({
 *   answer: 'occlusion-pressure', equation: 'width-ratio-1993', limb: 'leg', cuffWidthCm: 10, posture: 'supine',
 *   circumferenceCm: [54, 60, null], systolicMmHg: 120, diastolicMmHg: new Float64Array([70, 130, 70]),
 * });
 * Array.from(lop.value); // => [160, NaN, NaN]
 * Array.from(lop.flag, flagCodes); // => [[], ['relation'], ['missing']]
 * const target = columns({ answer: 'cuff-pressure', occlusion: lop, percentLop: 50, gaugeStepMmHg: 5 });
 * target.value[0]; // => 80
 * ```
 */
export function columns(input: OcclusionColumnsInput): ColumnAnswer<'occlusion-pressure'>;
export function columns(input: TargetColumnsInput): ColumnAnswer<'cuff-pressure'>;
export function columns(input: MaximumColumnsInput): ColumnAnswer<'one-repetition-maximum'>;
export function columns(input: LoadColumnsInput): ColumnAnswer<'training-load'>;
export function columns(input: ColumnsInput): ColumnAnswer {
  const issues: InputIssue[] = [];
  const reader = new Reader(input, [], issues);
  const answer = reader.choice('answer', Object.keys(ANSWERS) as ColumnsInput['answer'][]);
  if (issues.length > 0) throw new InputError(issues);
  return ANSWERS[answer](reader);
}
