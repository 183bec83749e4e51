import {
  type Answer,
  type Assumption,
  type Caution,
  type ErrorPart,
  interval,
  normalInterval,
} from '../answer/answer.js';
import { Reader } from '../answer/reader.js';
import { loadUnitCode, type LoadUnit } from '../quantity/quantities.js';
import type { OneRepMaxEquation } from './equation.js';
import { readLoad } from './read-load.js';
import { oneRepMaxEquations, type OneRepMaxEquationId } from './equations.js';
import { assumption, caution } from './messages.js';

/** A one-repetition maximum (1RM), in kg or lb. */
export type OneRepMax = Answer<'one-repetition-maximum'>;

/** What {@link estimateOneRepMax} takes. */
export interface OneRepMaxInput {
  readonly load: number;
  /** Repetitions done. */
  readonly repetitions: number;
  /** Repetitions that could still have been done; 0 when left out. */
  readonly repetitionsInReserve?: number;
  /** An equation by its id; `auto` (the default) takes Brzycki. */
  readonly equation?: OneRepMaxEquationId | 'auto';
  /** Unit of `load` and of the answer; kg when left out. */
  readonly unit?: LoadUnit;
}

/** What {@link testedOneRepMax} takes. */
export interface TestedInput {
  readonly load: number;
  readonly unit?: LoadUnit;
}

/** Standard deviation of an equation’s error at up to 10 repetitions, as a share of the maximum: the wide end of 5 to 10 %. */
const EQUATION_SHARE = 0.1;
/** Median coefficient of variation of repeated tests. */
const RETEST_SHARE = 0.042;
/** Repetitions to failure above which equations spread apart. */
const MANY = 10;
/** The longest set any of the published tests behind the equations went to. */
const FAR_TOO_MANY = 20;

/** How far people misjudge repetitions in reserve: about 1 at 0 to 5 left; more than 2 at 7 and above. */
const reserveError = (reserve: number): number => (reserve <= 5 ? 1 : 2);

/**
 * A tested one-repetition maximum, taken as it is.
 *
 * - Error: repeated tests differ by a median coefficient of variation of 4.2 % (0.5 to 12.1 %).
 * - Evidence: `published`.
 * - Source: Sports Med Open 2020;6:31.
 *
 * @param input - `load` [`unit`]; unit
 * @returns 1RM [`unit`] with its interval.
 * @throws InputError naming every wrong field.
 *
 * @example
 * ```ts
 * import { testedOneRepMax } from 'cuffwork';
 * testedOneRepMax({ load: 100 }).standardDeviation?.toFixed(1); // => '4.2'
 * ```
 */
export function testedOneRepMax(input: TestedInput): OneRepMax {
  const reader = new Reader(input);
  const { load, unit } = readLoad(reader);
  reader.done();
  return {
    kind: 'one-repetition-maximum',
    value: load,
    unit: loadUnitCode(unit),
    ...interval(load, [{ part: 'retest', standardDeviation: RETEST_SHARE * load, evidence: 'published' }]),
    equation: 'tested',
    evidence: 'published',
    formula: 'w',
    symbols: { w: 'load' },
    inputs: { load, unit },
    assumptions: [assumption('retest-error', { percent: 4.2 }), normalInterval],
    cautions: [],
    sources: ['one-rep-max-reliability-2020'],
  };
}

/** The standard deviation that misjudged repetitions in reserve put on the maximum: half the step from r − 1 to r + 1, scaled. */
function reserveDeviation(equation: OneRepMaxEquation, load: number, r: number, reserve: number): number {
  const above = equation.apply(load, Math.min(r + 1, (equation.repetitionsBelow ?? Infinity) - 0.5));
  const below = equation.apply(load, r - 1);
  return (reserveError(reserve) * (above - below)) / 2;
}

/** Standard deviation of the error of a maximum from r repetitions to failure; NaN where no figure is at hand. */
export function maximumDeviation(
  equation: OneRepMaxEquation,
  load: number,
  r: number,
  reserve: number,
  value: number,
): number {
  if (r === 1) return RETEST_SHARE * value;
  if (r > MANY) return NaN;
  const own = EQUATION_SHARE * value;
  return reserve > 0 ? Math.sqrt(own ** 2 + reserveDeviation(equation, load, r, reserve) ** 2) : own;
}

/** A maximum by an equation; a load lifted once is the maximum itself. */
export const maximumBy = (equation: OneRepMaxEquation, load: number, r: number): number =>
  r === 1 ? load : equation.apply(load, r);

/**
 * One-repetition maximum (1RM) from a load and the repetitions done with it.
 *
 * Repetitions in reserve are added to the repetitions done: r = repetitions + repetitions in reserve.
 * A load lifted once to failure is the maximum itself, whatever the equation.
 *
 * - Error, up to 10 repetitions to failure: 10 % of the maximum, the wide end of the 5 to 10 % that
 *   published comparisons add up to (`derived`). With repetitions in reserve, the published
 *   misjudgement of 1 (up to 5 left) or 2 repetitions is added in quadrature.
 * - Above 10 repetitions no error figure is at hand: there is no interval and a caution. Above 20 the caution
 *   is stronger. At a pole (37 for Brzycki) the input is refused.
 * - Evidence: that of the equation.
 *
 * @param input - `load` w [`unit`]; `repetitions`; `repetitionsInReserve`; equation; unit
 * @returns 1RM [`unit`], with its interval where one can be given.
 * @throws InputError naming every wrong field.
 *
 * @example
 * ```ts
 * import { estimateOneRepMax } from 'cuffwork';
 * estimateOneRepMax({ load: 90, repetitions: 8, repetitionsInReserve: 2 }).value; // => 120
 * estimateOneRepMax({ load: 90, repetitions: 1 }).value; // => 90
 * ```
 */
export function estimateOneRepMax(input: OneRepMaxInput): OneRepMax {
  const reader = new Reader(input);
  const { load, unit } = readLoad(reader);
  const repetitions = reader.number('repetitions');
  const repetitionsInReserve = reader.optionalNumber('repetitionsInReserve') ?? 0;
  const asked = reader.optionalChoice('equation', ['auto', ...oneRepMaxEquations.map(({ id }) => id)] as const);
  const equation: OneRepMaxEquation = oneRepMaxEquations.find(({ id }) => id === asked) ?? oneRepMaxEquations[0];
  const r = repetitions + repetitionsInReserve;
  if (equation.repetitionsBelow !== undefined && r >= equation.repetitionsBelow) {
    const expected = `fewer than ${equation.repetitionsBelow} to failure, where ${equation.id} has its pole`;
    reader.report('wrong-relation', 'repetitions', expected, String(r));
  }
  reader.done();

  const inputs = { load, repetitions, repetitionsInReserve, repetitionsToFailure: r, unit };
  const common = { kind: 'one-repetition-maximum', unit: loadUnitCode(unit), inputs } as const;
  if (r === 1) {
    return {
      ...common,
      value: load,
      ...interval(load, [{ part: 'retest', standardDeviation: RETEST_SHARE * load, evidence: 'published' }]),
      equation: 'lifted-once',
      evidence: 'published',
      formula: 'w',
      symbols: { w: 'load' },
      assumptions: [assumption('one-repetition-is-the-maximum'), assumption('retest-error', { percent: 4.2 })],
      cautions: [],
      sources: ['one-rep-max-reliability-2020'],
    };
  }

  const value = equation.apply(load, r);
  const assumptions: Assumption[] = equation.assumptions.map((code) => assumption(code));
  const cautions: Caution[] = [caution('note', 'maximum-not-tested', { repetitions: r })];
  if (equation.basis === 'practitioner') {
    const more = { source: 'equation-provenance-2014' } as const;
    cautions.push(caution('note', 'practitioner-equation', { equation: equation.id }, more));
  }
  const errors: ErrorPart[] = [{ part: 'equation', standardDeviation: EQUATION_SHARE * value, evidence: 'derived' }];
  const sources: OneRepMax['sources'][number][] = [...equation.sources, 'bench-and-curl-2010'];
  if (repetitionsInReserve > 0) {
    assumptions.push(assumption('reserve-added'));
    const more = { path: ['repetitionsInReserve'], source: 'reserve-accuracy-2017' } as const;
    cautions.push(caution('note', 'reserve-inaccurate', undefined, more));
    const standardDeviation = reserveDeviation(equation, load, r, repetitionsInReserve);
    errors.push({ part: 'reserve', standardDeviation, evidence: 'derived' });
    sources.push('reserve-accuracy-2017', 'reserve-accuracy-2022');
  }
  if (r > MANY) {
    cautions.push(
      r > FAR_TOO_MANY
        ? caution('caution', 'far-too-many-repetitions', { repetitions: r }, { path: ['repetitions'] })
        : caution('caution', 'many-repetitions', undefined, { path: ['repetitions'], source: 'bench-press-men-1995' }),
    );
    assumptions.push(assumption('no-error-above-ten'));
  } else {
    assumptions.push(normalInterval);
  }
  return {
    ...common,
    value,
    ...(r <= MANY && interval(value, errors)),
    equation: equation.id,
    evidence: equation.evidence,
    formula: equation.formula,
    symbols: equation.symbols,
    assumptions,
    cautions,
    sources,
  };
}
