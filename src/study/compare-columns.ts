import { describe, InputError, isInputError, type InputIssue } from '../answer/issues.js';
import { Reader } from '../answer/reader.js';
import { occlusionEquations, type OcclusionEquationId } from '../pressure/equations.js';
import {
  copyColumns,
  emptyColumns,
  type AnswerColumns,
  type ColumnAnswer,
  type ColumnsAbout,
} from './column-answer.js';
import { columns } from './columns.js';
import type { OcclusionColumnsInput } from './occlusion-columns.js';
import { READINGS } from './needs.js';
import { LEFT_OUT } from '../answer/needs.js';

/** What {@link compareColumns} takes: the readings of `columns`, without `equation` and `into`. */
export type CompareColumnsInput = Omit<OcclusionColumnsInput, 'answer' | 'equation' | 'into'>;

/** Every equation for every person, in long form: one row a person and equation, equation by equation. */
export interface ComparedColumns extends AnswerColumns {
  /** The row of the person in the input, from 0. */
  readonly row: Uint32Array;
  /** The equation of each row, as its place in `about`. */
  readonly equation: Uint8Array;
  /** What holds for the rows of each equation. */
  readonly about: readonly ColumnsAbout<'occlusion-pressure'>[];
  /** The equations that apply to no row, and the field because of which. */
  readonly notApplicable: readonly {
    /** Id of the equation. */
    readonly equation: OcclusionEquationId;
    /** The field that is missing, or whose value the equation is not for. */
    readonly field: string;
  }[];
}

/**
 * The field because of which an equation is not for these columns at all; `undefined` where the call itself is wrong.
 */
function inapplicable(error: unknown, needs: readonly string[]): string | undefined {
  if (!isInputError(error)) throw error;
  const [first] = error.issues;
  const field = String(first?.path[0]);
  const lacking = error.issues.every(({ code, path }) => code === 'missing' && needs.includes(String(path[0])));
  const elsewhere = first?.code === 'wrong-relation' && (field === 'limb' || field === 'cuffWidthCm');
  return lacking || (elsewhere && error.issues.length === 1) ? field : undefined;
}

/** The fields, to be read by one equation after the other. */
function fieldsOf(input: CompareColumnsInput): object {
  const issues: InputIssue[] = [];
  const reader = new Reader(input, [], issues);
  let fields: object = {};
  try {
    fields = { ...input };
  } catch {
    reader.report('unreadable', [], READINGS, 'an error');
  }
  for (const name of ['answer', 'equation', 'into']) {
    if (Object.hasOwn(fields, name)) reader.refuse(name, LEFT_OUT, describe(name));
  }
  if (issues.length > 0) throw new InputError(issues);
  return fields;
}

const optional = ['circumferenceCm', 'diastolicMmHg', 'cuffWidthCm', 'posture'] as const;

/**
 * Limb occlusion pressures by every equation that applies, over columns of people, in long form for a data frame: the
 * numbers of `compareOcclusionEquations`.
 *
 * An equation that needs a column you did not give, or is for another limb or cuff than all rows have, is listed in
 * `notApplicable`. Where it does not apply to some rows only, those are flagged `does-not-apply`.
 *
 * - Error and evidence: those of each equation.
 *
 * @param input - the readings of {@link columns} for `'occlusion-pressure'`, each a value or a column
 * @returns columns `row`, `equation`, `value`, `lower`, `upper`, `standardDeviation` and `flag`; `about` and
 * `notApplicable`.
 * @throws InputError for a wrong call, as {@link columns}.
 *
 * @example
 * ```ts
 * import { compareColumns } from 'cuffwork/study';
 * const long = compareColumns({
 *   limb: 'leg', cuffWidthCm: 18, posture: 'supine', circumferenceCm: [54, 60], systolicMmHg: 120, diastolicMmHg: 70,
 * });
 * long.about.map(({ equation }) => equation); // => ['pooled-curve-thigh-2026', 'width-ratio-1993', 'thigh-index-18']
 * Array.from(long.row); // => [0, 1, 0, 1, 0, 1]
 * Array.from(long.value, Math.round); // => [149, 155, 120, 126, 132, 132]
 * long.notApplicable.find(({ equation }) => equation === 'thigh-2019')?.field; // => 'ageYears'
 * ```
 */
export function compareColumns(input: CompareColumnsInput): ComparedColumns {
  const given = fieldsOf(input);
  const parts: ColumnAnswer<'occlusion-pressure'>[] = [];
  const notApplicable: ComparedColumns['notApplicable'][number][] = [];
  let refused: InputError | undefined;
  for (const { id, needs } of occlusionEquations) {
    try {
      parts.push(columns({ ...given, answer: 'occlusion-pressure', equation: id } as OcclusionColumnsInput));
    } catch (error) {
      const field = inapplicable(error, [...needs, ...optional]);
      if (field === undefined) throw error;
      refused = error as InputError;
      notApplicable.push({ equation: id, field });
    }
  }
  const [first] = parts;
  if (!first) throw refused!;
  const rows = first.value.length;
  const all = emptyColumns(parts.length * rows);
  const row = new Uint32Array(parts.length * rows);
  const equation = new Uint8Array(parts.length * rows);
  parts.forEach((part, at) => {
    copyColumns(part, all, at * rows);
    equation.fill(at, at * rows, (at + 1) * rows);
    for (let person = 0; person < rows; person += 1) row[at * rows + person] = person;
  });
  return { row, equation, ...all, about: parts.map(({ about }) => about), notApplicable };
}
