import type { Grade } from '../evidence/grades.js';
import type { SourceId } from '../evidence/sources.js';
import type { PlanCode } from './messages.js';
import type { RecordItem } from './record-session.js';

/** When to raise a load, by name. */
export interface ProgressionRule {
  readonly id: string;
  readonly says: PlanCode;
  /** How many sessions running must meet it. */
  readonly sessions: number;
  /** By how much the load goes up [%]; where it is left out, by the smallest step there is. */
  readonly lowPercent?: number;
  readonly highPercent?: number;
  /** The step where the plan names none [kg]. */
  readonly stepKg?: number;
  readonly evidence: Grade;
  readonly source?: SourceId;
  /** Whether one session meets it; nothing where the record does not say. */
  readonly met: (item: RecordItem) => boolean | undefined;
}

const done = ({ done: { sets } }: RecordItem, index: number): number => sets[index]?.repetitions ?? 0;

/** Whether so many more than the planned repetitions were done in the last planned set. */
const overInLastSet = (item: RecordItem, more: number): boolean => {
  const last = item.sets.length - 1;
  return done(item, last) >= item.sets[last]!.repetitions + more;
};

const allDone = (item: RecordItem): boolean =>
  item.sets.every(({ repetitions }, index) => done(item, index) >= repetitions);

/** The rules that `nextSession` knows, as data. */
export const progressionRules = [
  {
    id: 'two-for-two',
    says: 'rule-two-for-two',
    sessions: 2,
    lowPercent: 2.5,
    highPercent: 10,
    evidence: 'secondary',
    source: 'two-for-two-rule',
    met: (item) => overInLastSet(item, 2),
  },
  { id: 'all-repetitions', says: 'rule-all-repetitions', sessions: 1, evidence: 'practice', met: allDone },
  {
    id: 'set-four-over-15',
    says: 'rule-set-four-over-15',
    sessions: 1,
    stepKg: 5,
    evidence: 'published',
    source: 'rehabilitation-trial-protocol',
    met: (item) => {
      if (item.done.sets.length !== 4 || done(item, 3) <= 15) return false;
      return item.done.lastSetToFailure;
    },
  },
  {
    id: 'two-to-ten-percent',
    says: 'rule-two-to-ten-percent',
    sessions: 1,
    lowPercent: 2,
    highPercent: 10,
    evidence: 'published',
    source: 'progression-models-2009',
    met: (item) => allDone(item) && overInLastSet(item, 1),
  },
] as const satisfies readonly ProgressionRule[];

/** The name of a rule in {@link progressionRules}. */
export type ProgressionRuleId = (typeof progressionRules)[number]['id'];
