import * as bare from '../../src/equations.js';
import { equations, isInputError, quantities } from '../../src/index.js';
import { publicFunctions } from './public-functions.js';
import { oneOf, seeded } from './seeded.js';

// Taken at load: a test may change them later.
const { ceil, imul, min: least, round } = Math;

/** A digest of text, 53 bits: not for secrets, only to see a difference. */
class Digest {
  private a = 0xdeadbeef;
  private b = 0x41c6ce57;
  add(text: string): void {
    for (let index = 0; index < text.length; index += 1) {
      const code = text.charCodeAt(index);
      this.a = imul(this.a ^ code, 2654435761);
      this.b = imul(this.b ^ code, 1597334677);
    }
  }
  toString(): string {
    return (4294967296 * (2097151 & this.b) + (this.a >>> 0)).toString(16);
  }
}

/** What one function gave: `exact` must be the same to the last bit, `numbers` within some units in the last place. */
export interface Given {
  readonly calls: number;
  readonly answers: number;
  readonly exact: string;
  readonly numbers: readonly number[];
  /** Numbers that are differences of near values, by what they are. */
  readonly differences: Readonly<Record<DifferenceName, readonly number[]>>;
}

/**
 * Errors by misjudged repetitions are the difference of an equation’s answers a repetition to either side; a spread is
 * that of the highest answer and the lowest. The chance of full occlusion is the tail of a normal distribution.
 */
export type DifferenceName = 'reserve' | 'spreadPercent' | 'occlusionChancePercent';
const NUMBER =
  /(?:"part":"(reserve)","standardDeviation":|"(spreadPercent|occlusionChancePercent)":)?(-?\d+(?:\.\d+)?(?:e[+-]?\d+)?)/g;
/** An issue about such a field, which says what it has to be and what it is. */
const ABOUT = /"path":\[[^\]]*"(spreadPercent|occlusionChancePercent)"\](?:(?!"path":)[^])*/g;
/** Each number of it, with the name of the field before it. */
const named = (issue: string, field: string): string =>
  issue.replace(NUMBER, (...[, , , number]: string[]) => `"${field}":${number}`);

// Powers, exponentials and logarithms are not rounded alike by every engine; roots are, and whole powers, which are multiplied.
const INEXACT = /\^ (?!\d+(?![\d.]))|\*\*|\b(exp|expm1|log|log10|log2|log1p|ln|pow|cbrt|sinh|cosh|tanh)\b/;
/** The equations whose formula has one. */
const INEXACT_EQUATIONS = new Set(
  Object.values(equations).flatMap((list) =>
    (list as readonly { id: string; formula: string }[])
      .filter(({ formula }) => INEXACT.test(formula))
      .map(({ id }) => id),
  ),
);
/**
 * Answers whose formula has none, but whose error has: an interval on a log scale, carrying a pressure to another width,
 * the range in which sides cannot be told apart. A changed document is refused with what it would have to say.
 */
const INEXACT_ERROR = /"scale":"log"|"part":"width-correction"|"undetected":|"code":"changed-document"/;
const isInexact = (answer: string): boolean =>
  INEXACT_ERROR.test(answer) ||
  [...answer.matchAll(/"equation":"([^"]*)"/g)].some(([, id]) => INEXACT_EQUATIONS.has(id!)) ||
  [...answer.matchAll(/"formula":"([^"]*)"/g)].some(([, formula]) => INEXACT.test(formula!));

class Recorder {
  private readonly exact = new Digest();
  private readonly numbers: number[] = [];
  private readonly differences: Record<DifferenceName, number[]> = {
    reserve: [],
    spreadPercent: [],
    occlusionChancePercent: [],
  };
  private calls = 0;
  private answers = 0;
  add(text: string, answered: boolean, inexact: boolean): void {
    this.calls += 1;
    if (answered) this.answers += 1;
    const shown = inexact
      ? text
          .replace(ABOUT, named)
          .replace(
            NUMBER,
            (_, reserve?: 'reserve', other?: 'spreadPercent' | 'occlusionChancePercent', number?: string) => {
              const name = reserve ?? other;
              (name ? this.differences[name] : this.numbers).push(Number(number));
              return `${name ?? ''}#`;
            },
          )
      : text;
    this.exact.add(`${shown}\n`);
  }
  given(): Given {
    const { calls, answers, exact, numbers, differences } = this;
    return { calls, answers, exact: String(exact), numbers, differences };
  }
}

function outcome(call: () => unknown): { text: string; answered: boolean } {
  try {
    return { text: JSON.stringify(call()), answered: true };
  } catch (error) {
    return { text: isInputError(error) ? JSON.stringify(error.issues) : `threw ${String(error)}`, answered: false };
  }
}

/** Words that fields take, so that another branch of the library is met too. */
const words: Readonly<Record<string, readonly string[]>> = {
  limb: ['arm', 'leg'],
  side: ['left', 'right'],
  posture: ['supine', 'seated', 'standing'],
  sex: ['male', 'female'],
  unit: ['kg', 'lb'],
  rounding: ['down', 'nearest'],
  restriction: ['continuous', 'intermittent', 'none'],
  scheme: ['30-15-15-15', '3x10', '4x15'],
  equation: Object.values(equations).flatMap((list) => (list as readonly { id: string }[]).map(({ id }) => id)),
};

/** Another input of the same shape, a share of it changed: numbers up to a quarter off, words swapped now and then. */
function varied(random: () => number, value: unknown, share: number, field = ''): unknown {
  if (typeof value !== 'object' && share < 1 && random() >= share) return value;
  if (typeof value === 'number') {
    const other = value * (0.75 + random() / 2);
    return Number.isInteger(value) && random() < 0.7 ? round(other) : other;
  }
  if (typeof value === 'string') return words[field] && random() < 0.3 ? oneOf(random, words[field]!) : value;
  if (Array.isArray(value)) return value.map((item) => varied(random, item, share, field));
  if (typeof value !== 'object' || value === null) return value;
  return Object.fromEntries(Object.entries(value).map(([name, item]) => [name, varied(random, item, share, name)]));
}

/** The optional fields that a function takes, found by trying, once. */
const tried = new Map<string, [string, unknown][]>();
function options(call: (input: never) => unknown, right: object): [string, unknown][] {
  const numbers = Object.entries(quantities).map(([name, { min, max }]) => [name, [least(max, min * 2 + 5)]] as const);
  return [...numbers, ...Object.entries(words)].flatMap(([name, values]) =>
    Object.hasOwn(right, name)
      ? []
      : values
          .filter((value) => outcome(() => call({ ...right, [name]: value } as never)).answered)
          .map((value): [string, unknown] => [name, value]),
  );
}

/** Random answers of every function that takes an object, and random values of every bare function. */
export function answers(count: number, seed: number): Record<string, Given> {
  const given: Record<string, Given> = {};
  const each = ceil(count / Object.keys(publicFunctions).length);
  for (const [name, { call, right }] of Object.entries(publicFunctions)) {
    const random = seeded(seed + name.length);
    const recorder = new Recorder();
    if (!tried.has(name)) tried.set(name, options(call, right));
    const more = tried.get(name)!;
    for (let index = 0; index < each; index += 1) {
      const added = more.length > 0 && random() < 0.6 ? [oneOf(random, more)] : [];
      // What is refused, as a document is that was changed in many places, is tried again with fewer changes.
      for (const share of [1, 0.1, 0.01, 0]) {
        const input = varied(random, { ...right, ...(share === 1 && Object.fromEntries(added)) }, share);
        const { text, answered } = outcome(() => call(input as never));
        recorder.add(text, answered, isInexact(text));
        if (answered) break;
      }
    }
    given[name] = recorder.given();
  }
  const functions = Object.entries(bare as Record<string, unknown>).filter(([, value]) => typeof value === 'function');
  for (const [name, value] of functions) {
    const equation = value as (...numbers: number[]) => number;
    const random = seeded(seed);
    const recorder = new Recorder();
    const inexact = INEXACT.test(String(equation));
    for (let index = 0; index < ceil(count / functions.length); index += 1) {
      const { text, answered } = outcome(() =>
        equation(...Array.from({ length: equation.length }, () => 1 + round(random() * 2000) / 10)),
      );
      recorder.add(text, answered, inexact);
    }
    given[`equations.${name}`] = recorder.given();
  }
  return given;
}
