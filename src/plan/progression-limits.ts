import { frozen } from '../quantity/frozen.js';
import type { Grade } from '../evidence/grades.js';
import type { SourceId } from '../evidence/sources.js';

/** A figure that a proposal never passes, or that it decides by. */
export interface ProgressionLimit {
  /** The figure, in `unit`. */
  readonly value: number;
  /** Unit of the figure. */
  readonly unit: string;
  /** How well the figure is backed. */
  readonly evidence: Grade;
  /** Source of the figure; left out where there is none. */
  readonly source?: SourceId;
}

/**
 * The figures that `nextSession` keeps to whatever the rule says.
 *
 * | figure                             | means                                                                      |
 * | ---------------------------------- | -------------------------------------------------------------------------- |
 * | `largestPressureStep`              | points of percent of LOP that a pressure goes up by in one step, at most   |
 * | `largestLoadStep`                  | points of percent of 1RM that a load goes up by in one step, at most       |
 * | `largestLoadStepPercent`           | the same in percent of the load, where 1RM is not known                    |
 * | `pressureTolerance`                | points of percent of LOP that the held pressure may differ from the plan   |
 * | `overGoalFrom`                     | percent of 1RM that repetitions beyond the goal of a restricted set need   |
 * | `longBreakDays`                    | days between sessions from which nothing is raised                         |
 * | `topEffort`                        | session RPE from which the next session is lighter                         |
 * | `mostRepetitions`                  | repetitions that a set is raised to, at most                               |
 *
 * @example
 * ```ts
 * import { progressionLimits } from 'cuffwork/plan';
 * progressionLimits.largestPressureStep.value; // => 10
 * ```
 */
export const progressionLimits = frozen({
  largestPressureStep: { value: 10, unit: '% of LOP', evidence: 'practice' },
  largestLoadStep: { value: 5, unit: '% of 1RM', evidence: 'practice' },
  largestLoadStepPercent: { value: 10, unit: '%', evidence: 'published', source: 'progression-models-2009' },
  pressureTolerance: { value: 5, unit: '% of LOP', evidence: 'practice' },
  overGoalFrom: { value: 30, unit: '% of 1RM', evidence: 'published', source: 'restricted-reserve-2025' },
  // The four weeks after which trials test strength again; no text that was read names a number for a break.
  longBreakDays: { value: 28, unit: 'd', evidence: 'practice', source: 'retest-schedule' },
  topEffort: { value: 10, unit: '1', evidence: 'practice' },
  // The first set of 30-15-15-15.
  mostRepetitions: { value: 30, unit: '{reps}', evidence: 'practice' },
} as const satisfies Readonly<Record<string, ProgressionLimit>>);
