import { kindWords } from './kinds.js';
import { plainInput } from '../answer/plain-input.js';
import type { AnswerKind } from '../answer/answer.js';
import { grades, type Grade } from '../evidence/grades.js';
import type { SourceId } from '../evidence/sources.js';
import { isWorked, workingBy } from './working.js';
import { columnsAsAbout } from '../study/column-answer.js';
import { version } from '../study/version.js';

/** One way in which numbers were made: all answers of one kind by one equation. */
interface Method {
  readonly kind: AnswerKind;
  readonly equation: string;
  readonly evidence: Grade;
  /** Your own equation. */
  readonly own: boolean;
  readonly formula?: string | undefined;
  readonly sources: readonly SourceId[];
}

/** Every way in which the numbers of a document were made, innermost last, each once. */
function methodsIn(value: unknown, found: Map<string, Method>): void {
  if (typeof value !== 'object' || value === null) return;
  const { evidence } = value as { readonly evidence?: unknown };
  if (isWorked(value) && typeof evidence === 'string' && Object.hasOwn(grades, evidence)) {
    const { kind, equation, ownEquation } = value;
    const { formula, sources } = workingBy(value) ?? { sources: [] };
    const own = ownEquation !== undefined;
    found.set(`${kind} ${equation} ${evidence}`, {
      kind,
      equation,
      evidence: evidence as Grade,
      own,
      formula,
      sources,
    });
  }
  for (const part of Object.values(value)) methodsIn(part, found);
}

/**
 * A methods paragraph for a paper: how each kind of number was made, by which equation, of which grade of evidence,
 * with the keys of {@link bibliography} in brackets, and the version of this package.
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
  methodsIn(plainInput(used, 'an answer, a plan, or anything that holds answers', columnsAsAbout), found);
  const sentences = [...found.values()].map(({ kind, equation, evidence, own, formula, sources: keys }) => {
    const { name, symbol } = kindWords[kind];
    const cited = keys.length > 0 ? ` [${keys.join(', ')}]` : '';
    const ground = own ? 'fitted to measurements of one’s own' : grades[evidence];
    return `${name} was taken from ${equation} (${formula === undefined ? '' : `${symbol} = ${formula}; `}evidence ${evidence}: ${ground})${cited}.`;
  });
  return [
    `Calculations were done with cuffwork ${version}.`,
    ...sentences,
    'Intervals are 95 % intervals; errors are taken as normal, on a log scale where they are shares of the value.',
  ].join(' ');
}
