import { Math, square } from '../quantity/maths.js';
import type { Answer, Assumption, Caution, ErrorPart, WithInterval } from '../answer/answer.js';
import { interval, normalInterval } from '../answer/interval.js';
import { defined } from '../answer/defined.js';
import { Reader } from '../answer/reader.js';
import { withInput } from '../answer/with-input.js';
import { convertLoad } from '../quantity/convert.js';
import { format, formatUnit } from '../quantity/format.js';
import { loadUnitCode, type LoadUnit } from '../quantity/quantities.js';
import {
  ADULT_FROM_YEARS,
  choose,
  EQUATION_SHARE,
  farFromFitted,
  inUnit,
  MANY,
  misfits,
  OLDER_FROM_YEARS,
  outsideDomain,
} from './choose.js';
import type { OneRepMaxEquation } from './equation.js';
import { oneRepMaxEquations, type OneRepMaxEquationId } from './equations.js';
import { LIFTS, TRAINING, type Lift, type Training } from './lifts.js';
import { assumption } from './assumptions.js';
import { caution } from './messages.js';
import { readLoad, readSet, type LiftedSet, type ReadSet } from './read-set.js';
import { reserveError } from './reserve.js';
import { FIRST_TEST_GAIN, retestOf } from './retest.js';
import { need } from '../answer/needs.js';
import { HEAVIER, liftsOf } from './needs.js';

/** A one-repetition maximum (1RM), in kg or lb. */
export type OneRepMax = Answer<'one-repetition-maximum'>;

/** What {@link estimateOneRepMax} takes. */
export interface OneRepMaxInput extends LiftedSet {
  /** An equation by its id. `auto` (the default) uses one fitted on the lift, person and repetitions, else Brzycki. */
  readonly equation?: OneRepMaxEquationId | 'auto' | undefined;
}

/** What {@link testedOneRepMax} takes. */
export interface TestedInput {
  /** Heaviest load lifted once [`unit`], 0.1–2000. */
  readonly load: number;
  /** Unit of the load; kg when left out. */
  readonly unit?: LoadUnit | undefined;
  /** The lift; with `training: 'untrained'` a caution says how much more a second test gave. */
  readonly lift?: Lift | undefined;
  /** Training status of the person. */
  readonly training?: Training | undefined;
}

/** Above this many repetitions in a set, people estimate repetitions in reserve poorly. */
const LONG_SET = 12;
/** A load is about at the percentage an equation asks for when it is within ten points of it (`practice`). */
const PERCENT_TOLERANCE = 10;

/**
 * A tested one-repetition maximum, with the error of a repeated test.
 *
 * - Error: repeated tests differ by a median coefficient of variation of 4.2 % (0.5–12.1 %). Of an untrained person,
 *   the typical error between a first and a second test: leg press 5.3 %, knee extension 7.8 %, other lifts 7.8 %. A
 *   caution then says that the second test was 7.8–10.2 % higher; no adjustment is made.
 * - Evidence: 4.2 % `published`; of an untrained person `derived`, from open data of 39 people.
 * - Source: Sports Med Open 2020;6:31.
 *
 * @function
 * @param input - `load` [`unit`]; unit; lift; training
 * @returns 1RM [`unit`] with its interval.
 * @throws InputError that lists every wrong field.
 *
 * @example
 * ```ts
 * import { testedOneRepMax } from 'cuffwork';
 * testedOneRepMax({ load: 100 }).standardDeviation?.toFixed(1); // => '4.2'
 * const first = testedOneRepMax({ load: 100, lift: 'leg-press', training: 'untrained' });
 * first.standardDeviation?.toFixed(1); // => '5.3'
 * ```
 */
export const testedOneRepMax = withInput(function testedOneRepMax(input: TestedInput): WithInterval<OneRepMax> {
  const reader = new Reader(input);
  const { load, unit } = readLoad(reader);
  const facts = defined({
    lift: reader.optionalChoice('lift', LIFTS),
    training: reader.optionalChoice('training', TRAINING),
  });
  reader.done();
  return { ...asTested({ load, unit, facts }), equation: 'tested', inputs: { load, unit, ...facts } };
});

/** A load lifted once, with the error of a repeated test. */
function asTested({ load, unit, facts }: Pick<ReadSet, 'load' | 'unit' | 'facts'>) {
  const { share, evidence, source, first } = retestOf(facts);
  return {
    kind: 'one-repetition-maximum',
    value: load,
    unit: loadUnitCode(unit),
    ...interval(load, [{ part: 'retest', standardDeviation: share * load, evidence }]),
    evidence,
    assumptions: [
      assumption(first ? 'first-test-error' : 'retest-error', { percent: Number((100 * share).toPrecision(3)) }),
      normalInterval,
    ],
    cautions: first ? [caution('caution', 'first-test-too-low', FIRST_TEST_GAIN, { path: ['training'], source })] : [],
  } as const;
}

/**
 * The error of an equation: as published with it, else as comparisons found for short sets. NaN where there is neither.
 */
function equationDeviation({ error }: OneRepMaxEquation, value: number, r: number, unit: LoadUnit): number {
  if (error) return 'share' in error ? error.share * value : convertLoad(error.standardDeviation, error.unit, unit);
  return r > MANY ? NaN : EQUATION_SHARE * value;
}

/**
 * The error of the maximum from misjudged repetitions in reserve: the slope of the equation from r − 1 to r + 1. A
 * regression has no term for repetitions, or one that holds for its group; the slope of the first equation replaces it.
 */
function reserveDeviation(equation: OneRepMaxEquation, value: number, r: number, misjudged: number): number {
  if (misjudged === 0) return 0;
  const { apply, domain }: OneRepMaxEquation = equation.unit === undefined ? equation : oneRepMaxEquations[0];
  const low = Math.max(r - 1, domain?.from ?? 0);
  const high = Math.min(r + 1, domain?.to ?? Infinity);
  const slope = (apply(1, high) - apply(1, low)) / (high - low) / apply(1, r);
  return Math.abs(misjudged * slope * value);
}

/** Standard deviation of the error of a maximum from r repetitions to failure; NaN where there is no error figure. */
export function maximumDeviation(
  equation: OneRepMaxEquation,
  value: number,
  { r, reserve, unit, facts }: Pick<ReadSet, 'r' | 'reserve' | 'unit' | 'facts'>,
): number {
  if (r === 1) return retestOf(facts).share * value;
  const own = equationDeviation(equation, value, r, unit);
  return Math.sqrt(square(own) + square(reserveDeviation(equation, value, r, reserveError(reserve))));
}

function equationCautions(equation: OneRepMaxEquation, { facts, r }: ReadSet): Caution[] {
  const { id, basis, evidence, sample, fittedRepetitions: fitted } = equation;
  const values = { equation: id };
  const cautions: Caution[] = [caution('note', 'maximum-not-tested', { repetitions: r })];
  if (basis === 'practitioner') {
    cautions.push(caution('note', 'practitioner-equation', values, { source: 'equation-provenance-2014' }));
  }
  if (basis === 'not-known') cautions.push(caution('note', 'basis-not-known', values));
  if (evidence === 'unconfirmed') cautions.push(caution('caution', 'coefficients-unconfirmed', values));
  if (equation.byNameOnly) {
    cautions.push(caution('caution', 'population-locked', { equation: id, sample }, { path: ['equation'] }));
  }
  for (const { field, given, received } of misfits(equation, facts, r)) {
    if (!given) continue;
    const words = { equation: id, sample, field: field === 'ageYears' ? 'age' : field, value: received };
    cautions.push(caution('caution', 'outside-population', words, { path: [field], source: equation.sources[0]! }));
  }
  if (fitted && (r < fitted.low || r > fitted.high)) {
    const words = { repetitions: r, equation: id, ...fitted };
    const more = { path: ['repetitions'], source: equation.sources[0]! } as const;
    cautions.push(caution('caution', 'outside-fitted-repetitions', words, more));
  }
  if (basis !== 'data' && (facts.ageYears ?? 0) >= OLDER_FROM_YEARS) {
    cautions.push(
      caution('note', 'older-adults-under', undefined, { path: ['ageYears'], source: 'older-adults-1999' }),
    );
  }
  if ((facts.ageYears ?? NaN) < ADULT_FROM_YEARS && !equation.byNameOnly) {
    cautions.push(caution('caution', 'younger-than-samples', values, { path: ['ageYears'] }));
  }
  if (r > MANY) {
    const path = ['repetitions'];
    cautions.push(
      fitted
        ? caution('note', 'many-repetitions', undefined, { path })
        : caution('caution', 'many-repetitions', undefined, { path, source: 'bench-press-men-1995' }),
    );
  }
  return cautions;
}

function reserveCautions({ repetitions, reserve }: ReadSet): Caution[] {
  const path = [reserve.rating === undefined ? 'repetitionsInReserve' : 'reserveRpe'];
  const cautions: Caution[] = [];
  if (reserveError(reserve) > 0) {
    cautions.push(
      caution('note', 'reserve-inaccurate', undefined, { path, source: 'reserve-accuracy-2017' }),
      caution('note', 'reserve-underestimated', undefined, { path, source: 'reserve-accuracy-2022' }),
    );
    if (repetitions > LONG_SET) {
      cautions.push(caution('caution', 'reserve-long-set', undefined, { path, source: 'reserve-accuracy-2022' }));
    }
  }
  if (reserve.rating === 9.5) cautions.push(caution('note', 'load-could-be-added', undefined, { path }));
  return cautions;
}

const inputsOf = ({ load, unit, repetitions, reserve, r, facts }: ReadSet) => ({
  load,
  repetitions,
  repetitionsInReserve: reserve.repetitions,
  repetitionsToFailure: r,
  unit,
  ...(reserve.rating !== undefined && { reserveRpe: reserve.rating }),
  ...facts,
});

/** A load lifted once is the maximum itself. */
function liftedOnce(set: ReadSet): OneRepMax {
  const tested = asTested(set);
  return {
    ...tested,
    equation: 'lifted-once',
    inputs: inputsOf(set),
    assumptions: [assumption('one-repetition-is-the-maximum'), ...tested.assumptions],
    cautions: [...tested.cautions, ...reserveCautions(set)],
  };
}

/** Cautions about a load that is not as an equation asks for it. */
function loadCautions(equation: OneRepMaxEquation, value: number, set: ReadSet): Caution[] {
  const { id, loadPercent, sources } = equation;
  const more = { path: ['load'], source: sources[0]! } as const;
  const cautions: Caution[] = [];
  if (farFromFitted(equation, value, set))
    cautions.push(caution('caution', 'load-far-from-fitted', { equation: id }, more));
  const percentOneRepMax = (100 * set.load) / value;
  if (loadPercent !== undefined && Math.abs(percentOneRepMax - loadPercent) > PERCENT_TOLERANCE) {
    const values = { equation: id, asked: loadPercent, percentOneRepMax: Number(format(percentOneRepMax)) };
    cautions.push(caution('caution', 'load-not-at-percent', values, more));
  }
  return cautions;
}

/** The maximum by one equation; `undefined` where the answer would be less than what was lifted. */
export function maximumBy(equation: OneRepMaxEquation, set: ReadSet, why?: Assumption): OneRepMax | undefined {
  const { load, unit, reserve, r } = set;
  if (r === 1) return liftedOnce(set);
  const value = inUnit(equation, unit)(load, r);
  if (value < load) return undefined;
  const { id, basis, error } = equation;
  const own = equationDeviation(equation, value, r, unit);
  const known = !Number.isNaN(own);
  const misjudged = reserveError(reserve);
  const errors: ErrorPart[] = [{ part: 'equation', standardDeviation: own, evidence: error ? 'published' : 'derived' }];
  if (misjudged > 0) {
    const standardDeviation = reserveDeviation(equation, value, r, misjudged);
    errors.push({ part: 'reserve', standardDeviation, evidence: 'derived' });
  }
  const assumptions: Assumption[] = why ? [why] : [];
  if (basis === 'data' && why?.code !== 'equation-fitted') assumptions.push(assumption('fitted-on', { equation: id }));
  for (const code of equation.assumptions) assumptions.push(assumption(code));
  if (!known) assumptions.push(assumption('no-error-above-ten'));
  else if (error) assumptions.push(assumption('error-of-publication', { equation: id }), normalInterval);
  else assumptions.push(assumption('error-share', { percentOneRepMax: 100 * EQUATION_SHARE }), normalInterval);
  if (reserve.rating !== undefined) {
    const { rating, from, to } = reserve;
    assumptions.push(assumption('reserve-of-rating', { from, to, rating }));
  }
  if (misjudged > 0) assumptions.push(assumption('reserve-added'));
  return {
    kind: 'one-repetition-maximum',
    value,
    unit: loadUnitCode(unit),
    ...(known && interval(value, errors)),
    equation: id,
    evidence: equation.evidence,
    inputs: inputsOf(set),
    assumptions,
    cautions: [...equationCautions(equation, set), ...reserveCautions(set), ...loadCautions(equation, value, set)],
  };
}

const CHOICES = ['auto' as const, ...oneRepMaxEquations.map(({ id }) => id)];

/**
 * One-repetition maximum (1RM) from a load and the repetitions done with it.
 *
 * Repetitions in reserve are added to those done: r = repetitions + repetitions in reserve. You can give a rating
 * instead, as `reserveRpe`. A load lifted once to failure is the 1RM.
 *
 * With `equation: 'auto'` the library uses the first of these, and the answer says which and why:
 * 1. an equation fitted on this lift, such people and these repetitions. You must give what its sample is restricted
 *    to (`lift`, `sex`, `ageYears`, `training`), and the load must not be far from those it was fitted on;
 * 2. at 6–10 repetitions, one that a published comparison found among the best for this lift and sex;
 * 3. Brzycki, the best of six at up to 10 repetitions in 220 men (bench press).
 *
 * A regression has an intercept in its own unit. The library converts the load to it exactly, and the answer back.
 * Name an equation, and a lift or repetitions outside it are refused. A person outside its sample gets a caution.
 *
 * - Error: the standard error or coefficient of variation published with the equation. Without one, 10 % of 1RM up to
 *   10 repetitions, the upper end of the 5–10 % in published comparisons (`derived`), and no interval above. People
 *   misjudge repetitions in reserve by 1 (up to 5 left) or 2 (the least of “more than two”); this adds in quadrature.
 * - Above 10 repetitions you get a caution, and a stronger one outside the fitted repetitions. Above 20, the longest
 *   set any equation was tested on, the input is refused: there the equations disagree without bound. From 20 kg done
 *   30 times they give 28–103 kg. Regressions are refused outside their tests.
 * - Evidence: that of the equation.
 *
 * @function
 * @param input - `load` w [`unit`]; `repetitions`; `repetitionsInReserve` or `reserveRpe`; lift; sex; `ageYears` [years];
 * training; equation; unit
 * @returns 1RM [`unit`], with its interval where there is one.
 * @throws InputError that lists every wrong field.
 *
 * @example
 * ```ts
 * import { estimateOneRepMax } from 'cuffwork';
 * estimateOneRepMax({ load: 90, repetitions: 8, repetitionsInReserve: 2 }).value; // => 120
 * estimateOneRepMax({ load: 90, repetitions: 1 }).value; // => 90
 * const trained = estimateOneRepMax({
 *   load: 40, repetitions: 9, lift: 'knee-extension', training: 'trained', ageYears: 27,
 * });
 * trained.equation; // => 'knee-extension-trained-1993'
 * trained.value.toFixed(3); // => '54.584'
 * ```
 */
export const estimateOneRepMax = withInput(function estimateOneRepMax(input: OneRepMaxInput): OneRepMax {
  const reader = new Reader(input);
  const set = readSet(reader);
  const asked = reader.optionalChoice('equation', CHOICES);
  const named: OneRepMaxEquation | undefined = oneRepMaxEquations.find(({ id }) => id === asked);
  const { equation, why } = named ? { equation: named, why: undefined } : choose(set);
  let answer: OneRepMax | undefined;
  if (reader.fine) {
    const { lifts, id } = equation;
    const { lift } = set.facts;
    const outside = set.r === 1 ? undefined : outsideDomain(equation, set.r);
    if (outside) reader.refuse('repetitions', outside, format(set.r));
    if (lift !== undefined && lifts !== 'any' && !lifts.includes(lift)) {
      reader.refuse('lift', liftsOf(lifts, id), lift);
    }
    answer = maximumBy(equation, set, why);
    if (!answer && reader.fine) {
      const expected = need(HEAVIER, { equation: id });
      reader.refuse('load', expected, formatUnit(set.load, loadUnitCode(set.unit)));
    }
  }
  reader.done();
  return answer!;
});
