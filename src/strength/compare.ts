import { Math } from '../quantity/maths.js';
import type { Assumption, Caution, Sentence } from '../answer/answer.js';
import { Reader } from '../answer/reader.js';
import { withInput } from '../answer/with-input.js';
import type { Grade } from '../evidence/grades.js';
import type { SourceId } from '../evidence/sources.js';
import { format } from '../quantity/format.js';
import { choose, misfits, OLDER_FROM_YEARS, outsideDomain } from './choose.js';
import type { OneRepMaxEquation } from './equation.js';
import { oneRepMaxEquations } from './equations.js';
import { findingsOn } from './findings.js';
import type { Lift } from './lifts.js';
import { caution, comparisonCaution, comparisonSentence } from './messages.js';
import { maximumBy, type OneRepMax } from './one-rep-max.js';
import { type LiftedSet, type LiftFacts, readSet, type ReadSet } from './read-set.js';

/** What a published comparison found about one equation, or that we found none. */
export interface PublishedBias extends Sentence {
  /** Id of the publication, where we found one. */
  readonly source?: SourceId;
  /** Evidence grade of the finding. */
  readonly evidence?: Grade;
}

/** What {@link compareOneRepMaxEquations} answers. */
export interface OneRepMaxComparison {
  /** Id of the equation that `auto` uses. */
  readonly chosen: string;
  /** Why `auto` uses it. */
  readonly why: Assumption;
  /** Every equation that applies, with its answer and its published bias in the lift. */
  readonly applying: readonly {
    /** Id of the equation. */
    readonly equation: string;
    /** Name of the equation. */
    readonly name: string;
    /** Its estimate of the 1RM. */
    readonly answer: OneRepMax;
    /** What published comparisons report about its bias. */
    readonly bias: readonly PublishedBias[];
  }[];
  /** Every other equation, with every reason against it. */
  readonly notApplying: readonly {
    /** Id of the equation. */
    readonly equation: string;
    /** Name of the equation. */
    readonly name: string;
    /** Every reason against it. */
    readonly reasons: readonly Sentence[];
  }[];
  /** Lowest answer [`unit`]. */
  readonly lowest: number;
  /** Median answer [`unit`]. */
  readonly median: number;
  /** Highest answer [`unit`]. */
  readonly highest: number;
  /** Highest minus lowest answer, as a percentage of the median [%]. */
  readonly spreadPercent: number;
  /** Unit of the load and of the answers. */
  readonly unit: OneRepMax['unit'];
  /** What to watch for with these estimates. */
  readonly cautions: readonly Caution[];
}

const liftWords = (lift: Lift): string => lift.replace('-', ' ');

function biasOf({ id }: OneRepMaxEquation, { facts: { lift, sex } }: ReadSet): PublishedBias[] {
  const found = findingsOn(id, lift, sex).map(({ bias, lifts, who, source, evidence }) => ({
    ...comparisonSentence(bias, { lifts: lifts.map(liftWords).join(' and '), who }),
    source,
    evidence,
  }));
  return found.length > 0
    ? found
    : [comparisonSentence('bias-not-known', { lift: lift ? `in the ${liftWords(lift)}` : 'in any lift' })];
}

/** How far two equations, which the text that was read does not name, were off in 27 men [kg]. */
const TWO_EQUATIONS_OFF: { readonly [L in Lift]?: { readonly low: number; readonly high: number } } = {
  'bench-press': { low: -1.3, high: -0.6 },
  'biceps-curl': { low: 1.7, high: 2 },
};

/** What holds for the lift with every equation: comparisons that name no equation, and older people. */
function liftCautions({ lift, sex, ageYears }: LiftFacts): Caution[] {
  const cautions: Caution[] = [];
  const off = lift && TWO_EQUATIONS_OFF[lift];
  if (off) {
    const values = { ...off, lift: liftWords(lift) };
    cautions.push(comparisonCaution('note', 'bias-two-equations', values, { source: 'bench-and-curl-2010' }));
  }
  if (lift === 'biceps-curl' && sex !== 'female') {
    cautions.push(comparisonCaution('note', 'bias-none-accurate', undefined, { source: 'three-lifts-2024' }));
  }
  if ((ageYears ?? 0) >= OLDER_FROM_YEARS) {
    cautions.push(caution('note', 'older-adults-under', undefined, { source: 'older-adults-1999' }));
  }
  return cautions;
}

/** Why an equation does not apply; empty where it does. */
function reasonsAgainst(equation: OneRepMaxEquation, set: ReadSet): Sentence[] {
  if (equation.byNameOnly) return [comparisonSentence('equation-by-name-only', { equation: equation.id })];
  return misfits(equation, set.facts, set.r).map(({ field, expected, received }) =>
    comparisonSentence('equation-needs', { equation: equation.id, field, expected, received }),
  );
}

/**
 * Every one-repetition-maximum equation that applies to a set, side by side. You get the spread of the answers, the
 * bias that published comparisons found in the lift, and why the other equations do not apply.
 *
 * An equation applies when you give its lift, people and repetitions and they fit. Equations that hold only for their
 * own sample are left out; name them in {@link estimateOneRepMax}. Where no bias was published, the answer says so.
 * Figures of comparisons that do not name their equations are in the cautions.
 *
 * @function
 * @param input - as for {@link estimateOneRepMax}, without an equation
 * @returns the answers, their spread, and the reasons against the other equations.
 * @throws InputError that lists every wrong field; also above 20 repetitions, the longest set any equation was tested on.
 *
 * @example
 * ```ts
 * import { compareOneRepMaxEquations } from 'cuffwork';
 * const { applying, chosen, lowest, highest } = compareOneRepMaxEquations({
 *   load: 100, repetitions: 8, lift: 'bench-press', sex: 'male',
 * });
 * chosen; // => 'brzycki-1993'
 * [lowest.toFixed(1), highest.toFixed(1)]; // => ['119.0', '127.7']
 * applying.find(({ equation }) => equation === 'wathan-1994')?.bias[0]?.code; // => 'bias-none'
 * ```
 */
export const compareOneRepMaxEquations = withInput(function compareOneRepMaxEquations(
  input: LiftedSet,
): OneRepMaxComparison {
  const reader = new Reader(input);
  const set = readSet(reader);
  const { equation: chosen, why } = choose(set);
  const outside = reader.fine ? outsideDomain(chosen, set.r) : undefined;
  if (outside) reader.refuse('repetitions', outside, format(set.r));
  const applying: OneRepMaxComparison['applying'][number][] = [];
  const notApplying: OneRepMaxComparison['notApplying'][number][] = [];
  if (reader.fine) {
    for (const equation of oneRepMaxEquations as readonly OneRepMaxEquation[]) {
      const { id, name } = equation;
      const reasons = reasonsAgainst(equation, set);
      const answer = reasons.length === 0 ? maximumBy(equation, set) : undefined;
      if (answer) applying.push({ equation: id, name, answer, bias: biasOf(equation, set) });
      else {
        const below = comparisonSentence('answer-below-load', { equation: id });
        notApplying.push({ equation: id, name, reasons: reasons.length > 0 ? reasons : [below] });
      }
    }
  }
  reader.done();
  const values = applying.map(({ answer }) => answer.value).sort((a, b) => a - b);
  const [lowest, highest] = [values[0]!, values[values.length - 1]!];
  const middle = values.length / 2;
  const median = (values[Math.ceil(middle - 1)]! + values[Math.floor(middle)]!) / 2;
  const spreadPercent = (100 * (highest - lowest)) / median;
  const { unit } = applying[0]!.answer;
  const words = { lowest, highest, unit, percent: Number(format(spreadPercent)) };
  return {
    chosen: chosen.id,
    why,
    applying,
    notApplying,
    lowest,
    median,
    highest,
    spreadPercent,
    unit,
    cautions: [comparisonCaution('note', 'equations-spread', words), ...liftCautions(set.facts)],
  };
});
