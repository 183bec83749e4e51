import { Math } from '../quantity/maths.js';
import type { Assumption } from '../answer/answer.js';
import { NORMAL_95 } from '../statistics/normal.js';
import { convertLoad } from '../quantity/convert.js';
import { format, formatUnit } from '../quantity/format.js';
import type { OneRepMaxEquation } from './equation.js';
import { oneRepMaxEquations } from './equations.js';
import { assumption } from './assumptions.js';
import type { LiftFacts, ReadSet } from './read-set.js';
import type { LoadUnit } from '../quantity/quantities.js';
import { need, type Needed } from '../answer/needs.js';
import { LONGEST_SET, NO_REPETITION_TERM, TURNS_OVER } from './needs.js';

/** Repetitions to failure above which the equations disagree. */
export const MANY = 10;
/** The longest set in the published tests of any equation; longer sets are refused. */
export const MOST = 20;
/** No sample is known to include younger people, except the high-school powerlifters. */
export const ADULT_FROM_YEARS = 18;
/** Standard deviation of an equation’s error at up to 10 repetitions, as a share of the maximum: the upper end of 5–10 %. */
export const EQUATION_SHARE = 0.1;
/** Mean − 2 standard deviations of the ages at which repetition equations were found too low. */
export const OLDER_FROM_YEARS = 59;

/** An equation for a load in `unit`: the load is converted exactly to the unit of a regression, and the answer back. */
export function inUnit({ unit: own, apply }: OneRepMaxEquation, unit: LoadUnit): OneRepMaxEquation['apply'] {
  if (own === undefined || own === unit) return apply;
  return (load, r) => convertLoad(apply(convertLoad(load, unit, own), r), own, unit);
}

/** Why an equation does not fit a set: a field that is missing, or that has another value. */
export interface Misfit {
  readonly field: keyof LiftFacts | 'repetitions';
  readonly given: boolean;
  readonly expected: string;
  readonly received: string;
}

const REASONS = {
  'longest-set': LONGEST_SET,
  'no-repetition-term': NO_REPETITION_TERM,
  'turns-over': TURNS_OVER,
} as const;

/** The domain of every equation without a narrower one. */
const ANY_SET: NonNullable<OneRepMaxEquation['domain']> = {
  to: MOST,
  reason: 'longest-set',
};

/** The repetitions that an equation expects, where these are outside; `undefined` where they are inside. */
export function outsideDomain({ domain = ANY_SET, id }: OneRepMaxEquation, r: number): Needed | undefined {
  const { from = 1, to, reason } = domain;
  if (r >= from && r <= to) return undefined;
  return need(REASONS[reason], { range: from === 1 || from === to ? `${to}` : `${from}–${to}`, equation: id });
}

/**
 * Whether a load is far from those a regression was fitted on. The papers do not report the loads. We call a load far
 * when the 95 % interval of the published error reaches zero. Up to 10 repetitions, we also do so when the answer lies
 * outside the interval of the first equation.
 */
export function farFromFitted(
  { error, unit: own }: OneRepMaxEquation,
  value: number,
  { load, r, unit }: Pick<ReadSet, 'load' | 'r' | 'unit'>,
): boolean {
  if (own === undefined) return false;
  if (error && 'unit' in error && NORMAL_95 * convertLoad(error.standardDeviation, error.unit, unit) >= value)
    return true;
  const first = oneRepMaxEquations[0].apply(load, r);
  return r <= MANY && Math.abs(value - first) > NORMAL_95 * EQUATION_SHARE * first;
}

/** Every reason why an equation does not fit a set. */
export function misfits(equation: OneRepMaxEquation, facts: LiftFacts, r: number): Misfit[] {
  const { lifts, population = {} } = equation;
  const found: Misfit[] = [];
  const demand = (field: keyof LiftFacts, expected: string, fits: boolean): void => {
    const given = facts[field] !== undefined;
    if (!fits) found.push({ field, given, expected, received: given ? String(facts[field]) : 'nothing' });
  };
  if (lifts !== 'any') demand('lift', lifts.join(' or '), facts.lift !== undefined && lifts.includes(facts.lift));
  if (population.sex) demand('sex', population.sex, facts.sex === population.sex);
  if (population.training) demand('training', population.training, facts.training === population.training);
  if (population.ageYears) {
    const { low, high } = population.ageYears;
    const age = facts.ageYears ?? NaN;
    demand('ageYears', `${low} to ${formatUnit(high, 'a')}`, age >= low && age <= high);
  }
  const outside = outsideDomain(equation, r);
  if (outside) found.push({ field: 'repetitions', given: true, expected: outside.expected, received: format(r) });
  return found;
}

/** Repetitions near 80 % of 1RM by the training load chart; the comparison of 2024 was made at 80 %. */
const NEAR_80_PERCENT = { low: 6, high: 10 };
/** Equations that the comparison found among the best; of several, the best backed or the simplest. */
const COMPARED = [
  { lift: 'squat', sex: 'male', equation: 'lombardi-1989' },
  { lift: 'squat', sex: 'female', equation: 'brzycki-1993' },
  { lift: 'bench-press', sex: 'female', equation: 'brzycki-1993' },
  { lift: 'biceps-curl', sex: 'female', equation: 'mayhew-1992' },
] as const;

/** The equation that `auto` uses, and why. */
export function choose({ facts, r, load, unit }: ReadSet): { equation: OneRepMaxEquation; why: Assumption } {
  const all: readonly OneRepMaxEquation[] = oneRepMaxEquations;
  // An equation fitted on certain people is used only when you describe the person.
  const described = facts.sex !== undefined || facts.ageYears !== undefined || facts.training !== undefined;
  const holdsAt = (candidate: OneRepMaxEquation): boolean => {
    const value = inUnit(candidate, unit)(load, r);
    return value >= load && !farFromFitted(candidate, value, { load, r, unit });
  };
  const fitted =
    described &&
    all.find(
      (candidate) =>
        (candidate.lifts !== 'any' || candidate.population) &&
        !candidate.byNameOnly &&
        misfits(candidate, facts, r).length === 0 &&
        holdsAt(candidate),
    );
  if (fitted) {
    return { equation: fitted, why: assumption('equation-fitted', { equation: fitted.id }) };
  }
  const near = described && r >= NEAR_80_PERCENT.low && r <= NEAR_80_PERCENT.high;
  const compared = near && COMPARED.find(({ lift, sex }) => lift === facts.lift && sex === facts.sex);
  const equation = (compared && all.find(({ id }) => id === compared.equation)) || all[0]!;
  const why = compared ? 'equation-compared' : 'equation-default';
  return { equation, why: assumption(why, { equation: equation.id }) };
}
