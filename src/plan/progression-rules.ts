import type { Grade } from '../evidence/grades.js';
import type { SourceId } from '../evidence/sources.js';
import { documentMessages, type PlanCode } from './document-messages.js';
import { painRules, type PainRuleId } from './pain.js';
import type { RecordItem } from './record.js';
import { documentDisclaimers } from './disclaimers.js';
import type { PlanItem } from './types.js';
import { frozen } from '../quantity/frozen.js';

/** When to raise a load, by name. */
export interface ProgressionRule {
  /** Name to choose the rule by in `nextSession`. */
  readonly id: string;
  /** Code of the sentence that words the rule. */
  readonly messages: PlanCode;
  /** How many sessions running must meet it. */
  readonly sessions: number;
  /** Smallest rise of the load [%]; absent where the load goes up by the smallest step you can set. */
  readonly lowPercent?: number;
  /** Largest rise of the load [%]; absent where the load goes up by the smallest step you can set. */
  readonly highPercent?: number;
  /** Present where it asks for repetitions beyond the goal, which say little in light restricted sets. */
  readonly overGoal?: true;
  /** The step where the plan names none [kg]. */
  readonly stepKg?: number;
  /** Evidence grade of the rule. */
  readonly evidence: Grade;
  /** Where the rule is published; absent where it is common practice. */
  readonly source?: SourceId;
  /** Whether what was done meets it for the sets of the plan; nothing where the record does not say. */
  readonly met: (done: RecordItem['done'], goal: PlanItem['sets']) => boolean | undefined;
}

type Sets = PlanItem['sets'];

const repetitionsOf = (sets: Sets, index: number): number => sets[index]?.repetitions ?? 0;

/** Whether so many more than the planned repetitions were done in the last planned set. */
const overInLastSet = (sets: Sets, goal: Sets, more: number): boolean =>
  repetitionsOf(sets, goal.length - 1) >= repetitionsOf(goal, goal.length - 1) + more;

const allDone = (sets: Sets, goal: Sets): boolean =>
  goal.every((_, index) => repetitionsOf(sets, index) >= repetitionsOf(goal, index));

const rules = frozen([
  {
    id: 'two-for-two',
    messages: 'rule-two-for-two',
    sessions: 2,
    overGoal: true,
    lowPercent: 2.5,
    highPercent: 10,
    evidence: 'secondary',
    source: 'two-for-two-rule',
    // The rule’s text names the last set alone; that those before it were done is taken with it (`practice`).
    met: ({ sets }, goal) => allDone(sets, goal) && overInLastSet(sets, goal, 2),
  },
  {
    id: 'all-repetitions',
    messages: 'rule-all-repetitions',
    sessions: 1,
    evidence: 'practice',
    met: ({ sets }, goal) => allDone(sets, goal),
  },
  {
    id: 'set-four-over-15',
    messages: 'rule-set-four-over-15',
    sessions: 1,
    stepKg: 5,
    evidence: 'published',
    source: 'rehabilitation-trial-protocol',
    met: ({ sets, lastSetToFailure }) => sets.length === 4 && repetitionsOf(sets, 3) > 15 && lastSetToFailure,
  },
  {
    id: 'two-to-ten-percent',
    messages: 'rule-two-to-ten-percent',
    sessions: 1,
    overGoal: true,
    lowPercent: 2,
    highPercent: 10,
    evidence: 'published',
    source: 'progression-models-2009',
    met: ({ sets }, goal) => allDone(sets, goal) && overInLastSet(sets, goal, 1),
  },
] as const satisfies readonly ProgressionRule[]);

/** The name of a rule in {@link progressionRules}. */
export type ProgressionRuleId = (typeof rules)[number]['id'];

/** A rule with its id as `nextSession` takes it. */
interface NamedRule extends ProgressionRule {
  /** Id of the rule. */
  readonly id: ProgressionRuleId;
}

/**
 * The rules that `nextSession` knows, as data.
 *
 * @example
 * ```ts
 * import { progressionRules } from 'cuffwork/plan';
 * progressionRules.map(({ id }) => id).includes('two-for-two'); // => true
 * ```
 */
export const progressionRules: readonly NamedRule[] = rules;

/** What a proposal says of the rules it was made by, and the sentences that every proposal has. */
export function ruledBy(id: ProgressionRuleId, painRule: PainRuleId) {
  const { messages, evidence, source } = progressionRules.find((rule) => rule.id === id)!;
  const pain = painRules.find((rule) => rule.id === painRule)!;
  return {
    rule: { id, text: documentMessages[messages], evidence, ...(source && { source }) },
    painRule: { id: painRule, evidence: pain.evidence, ...(pain.source && { source: pain.source }) },
    disclaimers: documentDisclaimers(
      'proposal-clears-no-one',
      'local-codes-decide',
      'one-thing-at-a-time',
      'pressure-last',
    ),
  };
}
