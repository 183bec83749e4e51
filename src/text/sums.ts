import { percentReached, type Answer, type AnswerKind, type ReachedPressure } from '../answer/answer.js';
import { marked, named } from '../answer/translate.js';
import { format } from '../quantity/format.js';
import { Math } from '../quantity/maths.js';
import { loadUnitOf, type Unit } from '../quantity/quantities.js';
import { NORMAL_95, normalQuantile } from '../statistics/normal.js';
import { calculation, type Calculation, type Values } from './arithmetic.js';
import { typeset, type Names } from './formula.js';
import { kindWords } from './kinds.js';
import type { Translator } from './translator.js';
import { conversion } from './workings/strength.js';
import type { FullWorking } from './workings/working.js';

/** One line of arithmetic: what it gives, the formula, the same with numbers, the result. */
export interface Sum extends Calculation {
  readonly label: string;
  readonly formula: string;
  readonly names: Names;
  /** The result with its unit. */
  readonly result: string;
  /** `<` where the result is too small to print. */
  readonly sign: '=' | '≈' | '<';
}

/** A sum as one line of text. */
export const sumText = ({ label, formula, names, numbers, exact, sign, result }: Sum, decimalMark: string): string => {
  const steps = `${typeset(formula, names, decimalMark)} ${exact ? '=' : '≈'} ${typeset(numbers, undefined, decimalMark)}`;
  return `${label}: ${steps} ${sign} ${result}`;
};

const percentText = (percent: number): string => percent.toFixed(1);
/** Printed, a chance below 0.05 % would be none. */
const TINY = '0.0';

const symbolOf = (kind: AnswerKind): string => kindWords[kind].symbol;

/** How a result is printed: its digits and its unit. */
interface Print {
  readonly digits: (number: number) => string;
  readonly unit: string;
}
const inUnit = (translate: Translator, unit: Unit): Print => ({
  digits: format,
  unit: translate(`unit.${unit}`),
});
const plain: Print = { digits: format, unit: '' };
const inPercent = (translate: Translator): Print => ({ ...inUnit(translate, '%'), digits: percentText });

/** One line of arithmetic, in the way of a language. */
const summing =
  (translate: Translator) =>
  (label: string, formula: string, values: Values, exact: number, { digits, unit }: Print, names: Names = {}): Sum => {
    const made = calculation(formula, values, exact, digits);
    const tiny = digits(exact) === TINY;
    return {
      label,
      formula,
      // As it is written in formulas.
      names: { z: marked(translate, '1.96'), ...names },
      ...made,
      sign: tiny ? '<' : made.equals ? '=' : '≈',
      result: marked(translate, tiny ? '0.1' : digits(exact)) + unit,
    };
  };

/** A formula with the numbers and names of its symbols. */
export interface Terms {
  readonly values: Values;
  readonly names: Names;
}

/** The answer that a percentage is of: LOP or the maximum. */
function wholeOf({ inputs }: Answer): Answer | undefined {
  const whole = inputs['occlusion'] ?? inputs['oneRepMax'];
  return typeof whole === 'object' && 'value' in whole ? whole : undefined;
}

/** Each part of the error, and how they add up to the standard deviation. */
function deviationSums(answer: Answer, working: FullWorking | undefined, terms: Terms, translate: Translator): Sum[] {
  const { value, unit, rounding, kind, standardDeviation: s, scale, errors = [] } = answer;
  const sum = summing(translate);
  const print = scale === 'log' ? plain : inUnit(translate, unit);
  const whole = wholeOf(answer);
  const names = { ...terms.names, V: symbolOf(kind), S: 'σ', ...(whole && { W: symbolOf(whole.kind) }) };
  const all: Values = {
    ...terms.values,
    V: rounding?.from ?? value,
    ...(whole && { W: whole.value, ...(whole.standardDeviation !== undefined && { S: whole.standardDeviation }) }),
  };
  const sums = errors.flatMap(({ part, standardDeviation }, index): Sum[] => {
    const { formula, values: own } = working?.errors?.find((one) => one.part === part) ?? {};
    if (formula === undefined) return [];
    const values = Object.fromEntries(
      Object.entries({ ...all, ...own }).filter(([name]) => formula.split(/\W/).includes(name)),
    );
    const label = { name: errors.length > 1 ? `s${index + 1}` : 's', part: named(translate, 'part', part) };
    const text = 'S' in values ? translate('sum-error-of', { ...label, of: names.W! }) : translate('sum-error', label);
    const found = sum(text, formula, values, standardDeviation, print, names);
    // What was entered otherwise, or is of another version, is not worked out.
    return found.matches ? [found] : [];
  });
  if (s === undefined || errors.length < 2) return sums;
  const parts = errors.map((part, index) => [`s${index + 1}`, part.standardDeviation] as const);
  const added = sum(
    's',
    `sqrt(${parts.map(([name]) => `${name} ^ 2`).join(' + ')})`,
    Object.fromEntries(parts),
    s,
    print,
  );
  return added.matches ? [...sums, added] : sums;
}

/** Both ends of the interval. */
function intervalSums(answer: Answer, translate: Translator): Sum[] {
  const { kind, value, unit, rounding, lower, upper, standardDeviation: s, scale } = answer;
  if (s === undefined || lower === undefined || upper === undefined || rounding) return [];
  const sum = summing(translate);
  const print = inUnit(translate, unit);
  const names = { V: symbolOf(kind) };
  const values = { V: value, z: NORMAL_95, s };
  const [down, up] = scale === 'log' ? ['V / exp(z * s)', 'V * exp(z * s)'] : ['V - z * s', 'V + z * s'];
  return [
    sum(translate('sum-lower'), down, values, lower, print, names),
    sum(translate('sum-upper'), up, values, upper, print, names),
  ].filter(({ matches }) => matches);
}

/** The true percentage with its interval, and the chance of closing the artery. */
function reachedSums(answer: Answer, translate: Translator): Sum[] {
  const { kind, value, unit, inputs, reached } = answer;
  const whole = wholeOf(answer);
  if (!whole || !reached) return [];
  const sum = summing(translate);
  const of = symbolOf(whole.kind);
  const bodyMass = inputs['bodyMassLoad'] as Answer | undefined;
  const converted = (part: Answer): string =>
    kind === 'training-load' ? conversion(loadUnitOf(part.unit), loadUnitOf(unit)) : '';
  const part = bodyMass ? `(P + b${converted(bodyMass)})` : 'P';
  const given: Values = { P: value, ...(bodyMass && { b: bodyMass.value }) };
  const names = { P: symbolOf(kind), W: of, ...(bodyMass && { b: symbolOf(bodyMass.kind) }) };
  const by = converted(whole);
  const percent = (
    label: string,
    under: 'W' | 'U' | 'L',
    base: number | undefined,
    exact: number | undefined,
  ): Sum[] => {
    if (base === undefined || exact === undefined) return [];
    const formula = `100 * ${part} / ${by ? `(${under}${by})` : under}`;
    return [sum(label, formula, { ...given, [under]: base }, exact, inPercent(translate), names)];
  };
  const sums = [
    ...percent(translate('sum-percent', { of }), 'W', whole.value, percentReached(reached)),
    ...percent(translate('sum-percent-lower', { of }), 'U', whole.upper, reached.lower),
    ...percent(translate('sum-percent-upper', { of }), 'L', whole.lower, reached.upper),
  ];
  const { occlusionChancePercent: chance, highestMmHg: highest } = reached as Partial<ReachedPressure>;
  const s = whole.standardDeviation;
  if (s === undefined || !(s > 0)) return sums;
  const log = whole.scale === 'log';
  const spread = { ...names, s: 'σ' };
  if (chance !== undefined) {
    const formula = log ? '100 * Phi(ln(P / W) / s)' : '100 * Phi((P - W) / s)';
    sums.push(
      sum(
        translate('sum-chance', { of }),
        formula,
        { P: value, W: whole.value, s },
        chance,
        inPercent(translate),
        spread,
      ),
    );
  }
  const limit = inputs['occlusionChanceLimitPercent'];
  if (highest !== undefined && typeof limit === 'number') {
    const q = normalQuantile(limit / 100);
    const edge = log ? whole.value * Math.exp(q * s) : whole.value + q * s;
    const print = inUnit(translate, unit);
    const formula = log ? 'W * exp(q * s)' : 'W + q * s';
    sums.push(sum(translate('sum-highest', { limit }), formula, { W: whole.value, s, q }, edge, print, spread));
  }
  return sums.filter(({ matches }) => matches);
}

/** The arithmetic behind the standard deviation, the interval, the true percentage and the chance of an answer. */
export const sumsOf = (
  answer: Answer,
  working: FullWorking | undefined,
  terms: Terms,
  translate: Translator,
): readonly Sum[] => [
  ...deviationSums(answer, working, terms, translate),
  ...intervalSums(answer, translate),
  ...reachedSums(answer, translate),
];
