import type { Answer } from '../answer/answer.js';
import { isPart, type Part } from '../answer/part.js';
import { plainInput } from '../answer/plain-input.js';
import { withAnswers } from '../plan/read-document.js';
import { SEVERITIES } from '../plan/severity.js';
import { inSystem } from '../quantity/unit-system.js';
import { isAnswer, parts, stopsIn, text } from './show.js';
import { ROWS_OF } from './needs.js';
import { textOptions, type TextOptions } from './translator.js';

/** One number of a table, as {@link toRows} makes it; a cell without a value is `null`. */
export interface AnswerRow {
  /** Where the number is: names and positions, joined by points; empty for a single answer. */
  readonly place: string;
  /** Name of the exercise that it belongs to. */
  readonly exercise: string | null;
  /** Limb that it belongs to: `leg` or `arm`. */
  readonly limb: string | null;
  /** Side of that limb: `left` or `right`. */
  readonly side: string | null;
  /** What it is, a code. */
  readonly kind: string;
  /** What it is, in words. */
  readonly name: string;
  /** The number [`unit`]. */
  readonly value: number;
  /** UCUM code, such as `[lb_av]` or `[in_i]` where you ask for imperial units. */
  readonly unit: string;
  /** Lower end of the 95 % interval [`unit`]. */
  readonly lower: number | null;
  /** Upper end of the 95 % interval [`unit`]. */
  readonly upper: number | null;
  /** Id of the equation or method. */
  readonly equation: string;
  /** Evidence grade. */
  readonly evidence: string;
  /** Worst severity of its cautions; `stop` while a stop of its document is in force. */
  readonly severity: string | null;
}

/**
 * Every number of an answer or a document as a row of one table, for a data frame, a spreadsheet or a database. Every
 * row has the same cells. What an answer was worked out from is left in its `inputs`. While a stop of a document is in
 * force, each of its rows has the severity `stop`: show no setting of them.
 *
 * @param from - an answer, a list of answers, or a document
 * @param options - `locale`, the language of the names; `units`, metric or imperial
 * @returns the rows, in the order met.
 * @throws InputError for what holds no plain data, and for a plan or a record that was changed by hand
 *
 * @example
 * ```ts
 * import { testedOneRepMax } from 'cuffwork';
 * import { toRows } from 'cuffwork/explain';
 * const [row] = toRows(testedOneRepMax({ load: 100 }));
 * [row?.name, row?.value, row?.unit, row?.lower?.toFixed(1)]; // => ['One-repetition maximum', 100, 'kg', '91.8']
 * ```
 */
export function toRows(from: object, options: TextOptions = {}): AnswerRow[] {
  const translate = textOptions(options, 'toRows');
  const rows: AnswerRow[] = [];
  const cell = (part: Part, name: string): string | null => text(part[name]) || null;
  const walk = (part: unknown, place: readonly (string | number)[], of: Part, stopped: boolean): void => {
    if (Array.isArray(part)) return part.forEach((item, index) => walk(item, [...place, index], of, stopped));
    if (!isPart(part)) return;
    if (isAnswer(part)) {
      const { kind, value, unit, lower, upper, equation, evidence } = part as Answer;
      const written = inSystem(value, unit, translate.units);
      const end = (at: unknown): number | null =>
        typeof at === 'number' ? inSystem(at, unit, translate.units).value : null;
      const severities = parts(part.cautions).map((one) => one['severity']);
      rows.push({
        place: place.join('.'),
        exercise: cell(of, 'exercise'),
        limb: cell(of, 'limb'),
        side: cell(of, 'side'),
        kind,
        name: translate(`kind.${kind}`),
        ...written,
        lower: end(lower),
        upper: end(upper),
        equation: text(equation),
        evidence: text(evidence),
        severity: stopped ? 'stop' : (SEVERITIES.find((severity) => severities.includes(severity)) ?? null),
      });
      return;
    }
    // A request holds what the document was made from, not what it says.
    const inner = typeof part['limb'] === 'string' ? part : of;
    const within = stopped || stopsIn(part).length > 0;
    for (const [name, item] of Object.entries(part))
      if (name !== 'request') walk(item, [...place, name], inner, within);
  };
  walk(withAnswers(plainInput(from, ROWS_OF)), [], {}, false);
  return rows;
}
