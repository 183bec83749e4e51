import { kindWords } from './kinds.js';
import { plainInput } from '../answer/plain-input.js';
import type { Symbols } from '../answer/answer.js';
import { grades, type Grade } from '../evidence/grades.js';
import { isWorked, workingBy } from './working.js';
import { unitWords } from '../quantity/format.js';
import { quantities, type QuantityName } from '../quantity/quantities.js';
import { columnsAsAbout, type ColumnAnswer } from '../study/column-answer.js';
import { MISSING, REFUSED } from '../study/flags.js';
import { statisticsUsed } from './statistics-used.js';
import { version } from '../study/version.js';
import { HOLDS_ANSWERS } from './needs.js';
import type { Worked, Working } from './workings/working.js';

/** One way in which numbers were made: all answers of one kind by one equation. */
interface Method extends Partial<Working> {
  readonly answer: Worked;
  readonly evidence: Grade;
  readonly rows: Rows | undefined;
}

/** How many rows a column answer has. */
interface Rows {
  readonly answered: number;
  readonly missing: number;
  readonly refused: number;
}

/** A column answer by what holds for every row, and how many rows it has. */
function columnsAsCounted(part: object): object {
  const about = columnsAsAbout(part);
  if (about === part) return part;
  const rows = { answered: 0, missing: 0, refused: 0 };
  for (const flag of (part as ColumnAnswer).flag) {
    if ((flag & REFUSED) === 0) rows.answered += 1;
    else if ((flag & MISSING) !== 0) rows.missing += 1;
    else rows.refused += 1;
  }
  return { ...about, rows };
}

/** `SBP, systolic blood pressure [mmHg]; sex, 1 male, 2 female`. */
function symbolText(symbols: Symbols): string {
  return Object.entries(symbols)
    .map(([symbol, use]) => {
      const field = typeof use === 'string' ? use : use.field;
      const known = Object.hasOwn(quantities, field) ? quantities[field as QuantityName] : undefined;
      const unit = known && known.unit !== '1' ? ` [${unitWords[known.unit].trim()}]` : '';
      const codes =
        typeof use === 'string'
          ? ''
          : `: ${Object.entries(use.codes)
              .map(([word, code]) => `${code} ${word}`)
              .join(', ')}`;
      return `${symbol}, ${known?.name ?? field}${unit}${codes}`;
    })
    .join('; ');
}

/** Every way in which the numbers of a document were made, innermost last, each once. */
function methodsIn(value: unknown, found: Map<string, Method>): void {
  if (typeof value !== 'object' || value === null) return;
  const { evidence } = value as { readonly evidence?: unknown };
  if (isWorked(value) && typeof evidence === 'string' && Object.hasOwn(grades, evidence)) {
    const key = `${value.kind} ${value.equation} ${evidence}`;
    const { rows = found.get(key)?.rows } = value as { readonly rows?: Rows };
    found.set(key, { ...workingBy(value), answer: value, evidence: evidence as Grade, rows });
  }
  for (const part of Object.values(value)) methodsIn(part, found);
}

/**
 * A methods paragraph for a paper: how each kind of number was made, by which equation, of which grade of evidence,
 * with the keys of {@link bibliography} in brackets, its symbols with units and coding, how many rows of a column answer
 * are missing or refused, every statistic (agreement, reliability, fits, Monte Carlo, resampling) with n, draws and seed,
 * and the version of this package.
 *
 * @param used - an answer, a plan, a column answer (or its `about`), or a list of them
 * @returns one paragraph of plain text.
 * @throws InputError where `used` is not plain JSON.
 *
 * @example
 * ```ts
 * import { testedOneRepMax } from 'cuffwork';
 * import { methods } from 'cuffwork/explain';
 * methods(testedOneRepMax({ load: 100 })).startsWith('Calculations were done with cuffwork'); // => true
 * ```
 */
export function methods(used: object): string {
  const found = new Map<string, Method>();
  const document = plainInput(used, HOLDS_ANSWERS, columnsAsCounted);
  methodsIn(document, found);
  const sentences = [...found.values()].map(
    ({ answer: { kind, equation, ownEquation }, evidence, formula, symbols = {}, rows, sources: keys = [] }) => {
      const { name, symbol } = kindWords[kind];
      const cited = keys.length > 0 ? ` [${keys.join(', ')}]` : '';
      const ground = ownEquation ? 'fitted to your own measurements' : grades[evidence];
      const where = Object.keys(symbols).length > 0 ? `${symbolText(symbols)}; ` : '';
      const how = formula === undefined ? '' : `${symbol} = ${formula}; ${where}`;
      const counts = rows
        ? ` It was computed for ${rows.answered} rows; ${rows.missing} were missing a value and ${rows.refused} were refused.`
        : '';
      return `${name} was taken from ${equation} (${how}evidence ${evidence}: ${ground})${cited}.${counts}`;
    },
  );
  return [
    `Calculations were done with cuffwork ${version} [cuffwork].`,
    ...sentences,
    ...statisticsUsed(document).map(({ sentence, sources: keys }) =>
      keys.length > 0 ? `${sentence.slice(0, -1)} [${keys.join(', ')}].` : sentence,
    ),
    'Intervals are 95 % intervals; errors are assumed normal, on a log scale where they are shares of the value.',
  ].join(' ');
}
