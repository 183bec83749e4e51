import type { Answer, Assumption, Caution } from '../answer/answer.js';
import { LEFT_OUT_WITH, need } from '../answer/needs.js';
import { Reader } from '../answer/reader.js';
import { withInput } from '../answer/with-input.js';
import type { Grade } from '../evidence/grades.js';
import { formatUnit } from '../quantity/format.js';
import { MANY, MOST, outsideDomain } from './choose.js';
import type { OneRepMaxEquation } from './equation.js';
import { oneRepMaxEquations, type OneRepMaxEquationId } from './equations.js';
import { assumption } from './assumptions.js';
import { caution, comparisonCaution } from './messages.js';
import {
  ABOVE_FLOOR,
  MOST_REPETITIONS,
  ONE_REPETITION,
  PRINTED_REPETITIONS,
  REPETITION_EQUATION,
  WITH_INVERSE,
} from './needs.js';

type Cells = Readonly<Record<number, readonly [percent: number, grade: Grade]>>;

/** Two printed charts. They agree up to 10 repetitions, but not above. */
export const charts: Readonly<Record<RepetitionChart, { readonly name: string; readonly cells: Cells }>> = {
  'training-load-chart': {
    name: 'training load chart',
    cells: {
      1: [100, 'published'],
      2: [95, 'published'],
      3: [93, 'published'],
      4: [90, 'published'],
      5: [87, 'published'],
      6: [85, 'published'],
      7: [83, 'published'],
      8: [80, 'published'],
      9: [77, 'published'],
      10: [75, 'published'],
      12: [70, 'published'],
    },
  },
  'textbook-table': {
    name: 'textbook table',
    cells: {
      1: [100, 'secondary'],
      2: [95, 'secondary'],
      3: [93, 'unconfirmed'],
      4: [90, 'secondary'],
      5: [87, 'secondary'],
      6: [85, 'secondary'],
      7: [83, 'unconfirmed'],
      8: [80, 'secondary'],
      9: [77, 'unconfirmed'],
      10: [75, 'secondary'],
      11: [70, 'secondary'],
      12: [67, 'unconfirmed'],
      15: [65, 'secondary'],
    },
  },
};

const CHARTS = ['training-load-chart', 'textbook-table'] as const;

/** A printed chart of repetitions and percentages. */
export type RepetitionChart = (typeof CHARTS)[number];

/** What {@link percentAtRepetitions} takes. */
export interface PercentInput {
  /** Repetitions to failure, 1–500. */
  readonly repetitions: number;
  /** A printed chart; the training load chart when neither chart nor equation is given. */
  readonly chart?: RepetitionChart | undefined;
  /** A repetition equation, instead of a chart. */
  readonly equation?: OneRepMaxEquationId | undefined;
}

/** What {@link repetitionsAtPercent} takes. */
export interface RepetitionsInput {
  /** Percentage of the 1RM [%], 1–100. */
  readonly percentOneRepMax: number;
  /** A repetition equation with an inverse; Brzycki when left out. */
  readonly equation?: OneRepMaxEquationId | undefined;
}

const IDS = oneRepMaxEquations.map(({ id }) => id);

const equationNamed = (id: string): OneRepMaxEquation => oneRepMaxEquations.find((each) => each.id === id)!;

const assumptionsOf = ({ assumptions, basis, id }: OneRepMaxEquation): Assumption[] => [
  ...assumptions.map((code) => assumption(code)),
  ...(basis === 'data' ? [assumption('fitted-on', { equation: id })] : []),
];

function cautionsOf(equation: OneRepMaxEquation | undefined, r: number): Caution[] {
  const cautions: Caution[] = [
    comparisonCaution('note', 'people-differ', undefined, { source: 'equation-provenance-2014' }),
  ];
  if (equation?.evidence === 'unconfirmed') {
    cautions.push(caution('caution', 'coefficients-unconfirmed', { equation: equation.id }));
  }
  if (r > MANY) cautions.push(caution('caution', 'many-repetitions', undefined, { source: 'bench-press-men-1995' }));
  return cautions;
}

/** The percentage a chart prints. */
function printedAt(reader: Reader, chart: RepetitionChart, repetitions: number): Answer<'percent-of-maximum'> {
  const { cells } = charts[chart];
  const cell = cells[repetitions];
  if (!cell && reader.fine) {
    const expected = need(PRINTED_REPETITIONS, { chart, repetitions: Object.keys(cells) });
    reader.refuse('repetitions', expected, String(repetitions));
  }
  reader.done();
  const [printed, evidence] = cell!;
  const cautions = cautionsOf(undefined, repetitions);
  if (repetitions > MANY)
    cautions.push(comparisonCaution('note', 'charts-differ', undefined, { path: ['repetitions'] }));
  return {
    kind: 'percent-of-maximum',
    value: printed,
    unit: '%',
    equation: chart,
    evidence,
    inputs: { repetitions, chart, printed },
    assumptions: [assumption('chart-as-printed', { chart })],
    cautions,
  };
}

/**
 * The percentage of 1RM that allows a number of repetitions to failure, from a printed chart or a repetition equation.
 *
 * The two charts agree up to 10 repetitions. Above, the training load chart prints 12 at 70 %. The textbook table
 * prints 11 at 70 %, 12 at 67 % and 15 at 65 %. A caution says so. Repetitions that a chart does not print are
 * refused; we do not interpolate. By equation: 100 w / 1RM, up to 20 repetitions; one repetition is 100 %.
 *
 * - Error: not checked; people differ widely.
 * - Evidence: of the training load chart `published`; of the textbook table `secondary`, and `unconfirmed` at 3, 7, 9
 *   and 12 repetitions; else that of the equation.
 * - Source: a stand-alone training load chart; Essentials of strength training and conditioning.
 *
 * @function
 * @param input - `repetitions` to failure; chart or equation
 * @returns percentage of 1RM [%]
 * @throws InputError that lists every wrong field; also for repetitions that the chart does not print, and for a
 * regression, whose percentage depends on the load.
 *
 * @example
 * ```ts
 * import { percentAtRepetitions } from 'cuffwork';
 * percentAtRepetitions({ repetitions: 12 }).value; // => 70
 * percentAtRepetitions({ repetitions: 12, chart: 'textbook-table' }).value; // => 67
 * percentAtRepetitions({ repetitions: 10, equation: 'brzycki-1993' }).value; // => 75
 * ```
 */
export const percentAtRepetitions = withInput(function percentAtRepetitions(
  input: PercentInput,
): Answer<'percent-of-maximum'> {
  const reader = new Reader(input);
  const repetitions = reader.number('repetitions');
  const chart = reader.optionalChoice('chart', CHARTS);
  const id = reader.optionalChoice('equation', IDS);
  if (reader.has('chart')) reader.leaveOut('equation', need(LEFT_OUT_WITH, { field: 'chart' }));
  if (id === undefined) return printedAt(reader, chart ?? 'training-load-chart', repetitions);
  const equation = equationNamed(id);
  if (equation.unit) {
    reader.refuse('equation', REPETITION_EQUATION, id);
  }
  const once = repetitions === 1;
  const outside = once ? undefined : outsideDomain(equation, repetitions);
  if (outside) reader.refuse('repetitions', outside, String(repetitions));
  reader.done();
  return {
    kind: 'percent-of-maximum',
    value: once ? 100 : 100 / equation.apply(1, repetitions),
    unit: '%',
    equation: once ? 'lifted-once' : id,
    evidence: equation.evidence,
    inputs: { repetitions, ...(once && { equation: id }) },
    assumptions: [...(once ? [assumption('one-repetition-is-the-maximum')] : []), ...assumptionsOf(equation)],
    cautions: cautionsOf(equation, repetitions),
  };
});

/**
 * How many repetitions to failure a percentage of 1RM allows, from the inverse of a repetition equation.
 *
 * Formula: the equation solved for r at w / 1RM = p / 100.
 *
 * The number is not rounded. Equations are validated for 1–20 repetitions, so **anything else is refused**. You get no
 * number at 20–40 % of 1RM, the loads of restriction training: there the equations give 22.6 to millions.
 *
 * - Error: not checked; people differ widely.
 * - Evidence: that of the equation.
 *
 * @function
 * @param input - `percentOneRepMax` p [%]; equation
 * @returns repetitions to failure
 * @throws InputError that lists every wrong field; also where the equation gives fewer than 1 or more than 20
 * repetitions, where it levels off, and for an equation without a closed inverse.
 *
 * @example
 * ```ts
 * import { attempt, repetitionsAtPercent } from 'cuffwork';
 * repetitionsAtPercent({ percentOneRepMax: 75 }).value; // => 10
 * attempt(repetitionsAtPercent, { percentOneRepMax: 30 }).ok; // => false
 * ```
 */
export const repetitionsAtPercent = withInput(function repetitionsAtPercent(
  input: RepetitionsInput,
): Answer<'repetitions-to-failure'> {
  const reader = new Reader(input);
  const percentOneRepMax = reader.number('percentOneRepMax');
  const id = reader.optionalChoice('equation', IDS) ?? IDS[0]!;
  const equation = equationNamed(id);
  const { inverse, evidence } = equation;
  const whole = percentOneRepMax === 100;
  let value = NaN;
  if (!inverse) {
    const having = oneRepMaxEquations.filter((each) => 'inverse' in each).map((each) => each.id);
    reader.refuse('equation', need(WITH_INVERSE, { equations: having }), id);
  } else if (reader.fine) {
    value = whole ? 1 : inverse.apply(percentOneRepMax / 100);
    const floor = 100 * (inverse.floor ?? 0);
    const expected =
      percentOneRepMax <= floor
        ? need(ABOVE_FLOOR, { floor, unit: '%', equation: id })
        : value < 1
          ? need(ONE_REPETITION, { equation: id })
          : need(MOST_REPETITIONS, { equation: id, most: MOST });
    // At 12 digits, so that 20.000000000000004 is 20.
    const near = Number(value.toPrecision(12));
    if (!(near >= 1 && near <= MOST)) {
      reader.report('out-of-range', 'percentOneRepMax', expected, formatUnit(percentOneRepMax, '%'));
    }
  }
  reader.done();
  return {
    kind: 'repetitions-to-failure',
    value,
    unit: '{reps}',
    equation: whole ? 'lifted-once' : id,
    evidence,
    inputs: { percentOneRepMax, ...(whole && { equation: id }) },
    assumptions: assumptionsOf(equation),
    cautions: cautionsOf(equation, value),
  };
});
