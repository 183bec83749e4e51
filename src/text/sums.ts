import { percentReached, type Answer, type AnswerKind, type ReachedPressure } from '../answer/answer.js';
import { amount, translating, type Translate } from '../answer/translate.js';
import { format } from '../quantity/format.js';
import { Math } from '../quantity/maths.js';
import { loadUnitOf } from '../quantity/quantities.js';
import { NORMAL_95, normalQuantile } from '../statistics/normal.js';
import { calculation, type Calculation, type Values } from './arithmetic.js';
import { typeset, type Names } from './formula.js';
import { kindWords } from './kinds.js';
import { explainWords } from './words.js';
import { conversion } from './workings/strength.js';

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
export const sumText = ({ label, formula, names, numbers, exact, sign, result }: Sum): string =>
  `${label}: ${typeset(formula, names)} ${exact ? '=' : '≈'} ${typeset(numbers)} ${sign} ${result}`;

/** 1.96, as it is written in formulas. */
const Z = { z: '1.96' };

const isNear = (a: number, b: number): boolean => Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(a), Math.abs(b));

/** What an answer is a share of: a pressure of LOP, a load of the maximum. */
const wholeOf = ({ kind, inputs }: Answer): Answer | undefined => {
  const whole = inputs[kind === 'cuff-pressure' ? 'occlusion' : 'oneRepMax'];
  return (kind === 'cuff-pressure' || kind === 'training-load') && typeof whole === 'object' && 'value' in whole
    ? whole
    : undefined;
};

const percentText = (percent: number): string => percent.toFixed(1);
/** Printed, a chance below 0.05 % would be none. */
const TINY = '0.0';

/** The arithmetic behind the standard deviation, the interval, the true percentage and the chance of an answer. */
export function sumsOf(answer: Answer, translate: Translate): Sum[] {
  const { kind, value, unit, rounding, lower, upper, standardDeviation: s, scale, errors, reached } = answer;
  const word = translating(translate, explainWords);
  const sums: Sum[] = [];
  const symbol = (of: AnswerKind): string => kindWords[of].symbol;
  const add = (
    label: string,
    formula: string,
    values: Values,
    exact: number | undefined,
    print: (number: number) => readonly [number: string, unit: string],
    names: Names = {},
  ): void => {
    if (exact === undefined) return;
    const [number, unit] = print(exact);
    const made = calculation(formula, values, exact, (found) => print(found)[0]);
    const tiny = number === TINY;
    sums.push({
      label,
      formula,
      names: { ...Z, ...names },
      ...made,
      sign: tiny ? '<' : made.equals ? '=' : '≈',
      result: (tiny ? '0.1' : number) + unit,
    });
  };
  const inUnit = (number: number) =>
    [format(number), amount(translate, number, unit).slice(format(number).length)] as const;
  const plain = (number: number) => [format(number), ''] as const;
  const inPercent = (number: number) => [percentText(number), ' %'] as const;

  if (s !== undefined && errors && errors.length > 1) {
    const parts = errors.map((part, index) => [`s${index + 1}`, part.standardDeviation] as const);
    const formula = `sqrt(${parts.map(([name]) => `${name} ^ 2`).join(' + ')})`;
    // Parts that depend on each other do not add up so.
    const sum = Math.sqrt(errors.reduce((total, part) => total + part.standardDeviation ** 2, 0));
    if (isNear(sum, s)) add('s', formula, Object.fromEntries(parts), s, scale === 'log' ? plain : inUnit);
  }
  const centre = rounding?.from ?? value;
  if (s !== undefined && lower !== undefined && upper !== undefined && !rounding) {
    const names = { V: symbol(kind) };
    const values = { V: centre, z: NORMAL_95, s };
    const log = scale === 'log';
    const factor = Math.exp(NORMAL_95 * s);
    const ends = log ? [centre / factor, centre * factor] : [centre - NORMAL_95 * s, centre + NORMAL_95 * s];
    if (isNear(ends[0]!, lower) && isNear(ends[1]!, upper)) {
      add(word('sum-lower'), log ? 'V / exp(z * s)' : 'V - z * s', values, lower, inUnit, names);
      add(word('sum-upper'), log ? 'V * exp(z * s)' : 'V + z * s', values, upper, inUnit, names);
    }
  }
  const whole = wholeOf(answer);
  if (!whole || !reached) return sums;
  const of = symbol(whole.kind);
  const bodyMass = answer.inputs['bodyMassLoad'] as Answer | undefined;
  const converted = (part: Answer): string =>
    kind === 'training-load' ? conversion(loadUnitOf(part.unit), loadUnitOf(unit)) : '';
  const part = bodyMass ? `(P + b${converted(bodyMass)})` : 'P';
  const given: Values = { P: value, ...(bodyMass && { b: bodyMass.value }) };
  const names = { P: symbol(kind), W: of, ...(bodyMass && { b: symbol(bodyMass.kind) }) };
  const share = (under: 'W' | 'U' | 'L'): string => {
    const by = converted(whole);
    return `100 * ${part} / ${by ? `(${under}${by})` : under}`;
  };
  const percent = (
    label: string,
    under: 'W' | 'U' | 'L',
    base: number | undefined,
    exact: number | undefined,
  ): void => {
    if (base !== undefined) add(label, share(under), { ...given, [under]: base }, exact, inPercent, names);
  };
  percent(word('sum-percent', { of }), 'W', whole.value, percentReached(reached));
  percent(word('sum-percent-lower', { of }), 'U', whole.upper, reached.lower);
  percent(word('sum-percent-upper', { of }), 'L', whole.lower, reached.upper);
  const { occlusionChancePercent: chance, highestMmHg: highest } = reached as Partial<ReachedPressure>;
  const deviation = whole.standardDeviation;
  if (deviation === undefined) return sums;
  const log = whole.scale === 'log';
  const values = { P: value, W: whole.value, s: deviation };
  const spread = { ...names, s: 'σ' };
  if (chance !== undefined && deviation > 0) {
    const formula = log ? '100 * Phi(ln(P / W) / s)' : '100 * Phi((P - W) / s)';
    add(word('sum-chance', { of }), formula, values, chance, inPercent, spread);
  }
  const limit = answer.inputs['occlusionChanceLimitPercent'];
  if (highest !== undefined && typeof limit === 'number') {
    const q = normalQuantile(limit / 100);
    const edge = log ? whole.value * Math.exp(q * deviation) : whole.value + q * deviation;
    const { P: _, ...others } = values;
    add(word('sum-highest', { limit }), log ? 'W * exp(q * s)' : 'W + q * s', { ...others, q }, edge, inUnit, spread);
  }
  return sums;
}
