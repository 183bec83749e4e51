import type { Answer } from '../answer/answer.js';
import { describe, refuse } from '../answer/issues.js';
import { plainInput } from '../answer/plain-input.js';
import { scoredItems } from '../plan/screening-items.js';
import { kindWords } from './kinds.js';
import { pressureWorkings } from './workings/pressure.js';
import { sessionWorkings } from './workings/session.js';
import { strengthWorkings } from './workings/strength.js';
import type { FullWorking, Worked, Working, Workings } from './workings/working.js';
import { OUR_ANSWER } from '../answer/needs.js';

const replies = { yes: 1, no: 0, unknown: 0 };

const workings: Workings = {
  ...pressureWorkings,
  ...strengthWorkings,
  ...sessionWorkings,
  'thrombosis-score-2022': {
    formula: scoredItems.map(({ points }, index) => `${points} * q${index + 1}`).join(' + '),
    symbols: Object.fromEntries(
      scoredItems.map(({ code }, index) => [`q${index + 1}`, { field: code, codes: replies }]),
    ),
    sources: ['risk-stratification-2022', 'thrombosis-score-2011', 'thrombosis-score-2014'],
  },
};

/** The working of an answer; nothing where this version does not know its equation, or not for its kind. */
export function workingBy(answer: Worked): FullWorking | undefined {
  const { equation, ownEquation, ...others } = answer;
  if (ownEquation) {
    const { base, ...own } = ownEquation;
    return { ...own, sources: (base !== undefined && workingBy({ ...others, equation: base })?.sources) || [] };
  }
  const found = Object.hasOwn(workings, equation) ? workings[equation] : undefined;
  if (typeof found !== 'function') return found;
  try {
    return found(answer);
  } catch (error) {
    // Inputs that were changed by hand or cut short break somewhere inside.
    if (!(error instanceof TypeError)) throw error;
    return undefined;
  }
}

/** Whether it is an answer, or holds for a column of answers. */
export const isWorked = (value: object): value is Worked => {
  const { kind, equation, assumptions } = value as Partial<Worked>;
  return (
    typeof kind === 'string' &&
    Object.hasOwn(kindWords, kind) &&
    typeof equation === 'string' &&
    Array.isArray(assumptions)
  );
};

/**
 * The formula of an answer, what its symbols mean, and the sources it rests on. They are facts of its equation, so
 * the answer itself, stored or not, does not repeat them.
 *
 * @param answer - an answer, perhaps read back from JSON, or the `about` of a column answer
 * @returns `formula`, an expression in `symbols`; each symbol with its field of the answer’s inputs;
 * `sources`, ids of `sources`. Nothing where this version of the library does not know the equation.
 * @throws InputError where it is no answer, or no plain JSON.
 *
 * @example
 * ```ts
 * import { testedOneRepMax, trainingLoad } from 'cuffwork';
 * import { working } from 'cuffwork/explain';
 * const { formula, symbols, sources } = working(trainingLoad({ oneRepMax: 60, percentOneRepMax: 30 }))!;
 * formula; // => 'p / 100 * M'
 * symbols; // => { p: 'percentOneRepMax', M: 'oneRepMax' }
 * sources; // => ['guideline-review-2019']
 * working(testedOneRepMax({ load: 60 }))?.formula; // => 'w'
 * ```
 */
export function working(answer: Answer | Worked): Working | undefined {
  const given = plainInput(answer, OUR_ANSWER);
  if (!isWorked(given)) refuse('wrong-type', [], OUR_ANSWER, describe(given));
  const found = workingBy(given);
  return found && { formula: found.formula, symbols: found.symbols, sources: found.sources };
}
