import type { Caution, Sentence } from '../answer/answer.js';
import type { Grade } from '../evidence/grades.js';
import type { SourceId } from '../evidence/sources.js';
import type { LoadUnit } from '../quantity/quantities.js';
import type { DocumentHead, ExerciseOnLimb } from './document-parts.js';
import type { PainRuleId } from './pain.js';
import type { ProgressionRuleId } from './progression-rules.js';
import type { Stop, StopDecision } from './stops.js';
import type { Disclaimer } from './disclaimers.js';
import type { Plan, PlanSet } from './types.js';
import type { SessionRecord } from './record.js';

/** What is proposed for an exercise. */
export const PROGRESSION_ACTIONS = [
  'raise-load',
  'raise-pressure',
  'raise-repetitions',
  'repeat',
  'back-off',
  'stop',
] as const;
/** What is proposed for an exercise: raise one thing, repeat, go back or stop. */
export type ProgressionAction = (typeof PROGRESSION_ACTIONS)[number];

/** What can be due to be measured or tested again. */
export const MEASURED_AGAIN = ['occlusion-pressure', 'one-repetition-maximum'] as const;

/** What `nextSession` takes. */
export interface ProgressionRequest {
  /** The plan that was trained by. */
  readonly plan: Plan;
  /** What was done, in any order. */
  readonly records: readonly SessionRecord[];
  /** Name of the progression rule to apply. */
  readonly rule: ProgressionRuleId;
  /** The rule for joint and tendon pain; `cautious` when left out. */
  readonly painRule?: PainRuleId | undefined;
  /** Percent of LOP to go to when the rule is met, instead of a heavier load [%], 1–100; at most 10 points up. */
  readonly nextPercentLop?: number | undefined;
  /** Ask for a lighter session, whatever was done. */
  readonly deload?: true | undefined;
  /** Day of the next session, `YYYY-MM-DD`; that of the last record when left out. */
  readonly date?: string | undefined;
  /** Days between sessions from which nothing is raised, 1–365; 28 (`practice`) when left out. */
  readonly longBreakDays?: number | undefined;
  /** Decisions of practitioners about stops of the plan and the records. Each lifts the stop it names. */
  readonly decisions?: readonly StopDecision[] | undefined;
  /** Day the maximum was tested, `YYYY-MM-DD`. */
  readonly oneRepMaxTestedOn?: string | undefined;
}

/** What a set asks for: repetitions or a time [s]. */
export type SetGoal = Pick<PlanSet, 'repetitions' | 'durationS'>;

/** A number of the plan, and the one that is proposed. */
export interface ProposedChange {
  /** Present number. */
  readonly from: number;
  /** Proposed number; left out where none can be given. */
  readonly to?: number;
}

/** What is proposed for one exercise on one limb. */
export interface ProposalItem extends ExerciseOnLimb {
  /** What to do in the next session. */
  readonly action: ProgressionAction;
  /** Load, present and proposed; left out where the plan has none. */
  readonly load?: ProposedChange & {
    /** Unit of both loads. */
    readonly unit: LoadUnit;
  };
  /** Percentage of 1RM, present and proposed [%]; left out where the plan has no 1RM. */
  readonly percentOneRepMax?: ProposedChange;
  /** Percentage of LOP, present and proposed [%]; left out where there is no cuff. */
  readonly percentLop?: ProposedChange;
  /** Cuff pressure, present and proposed [mmHg]; left out where there is no cuff. */
  readonly cuffMmHg?: ProposedChange;
  /** Sets, present and proposed; present where they change: more repetitions, those before again, or a set fewer. */
  readonly sets?: {
    /** Sets of the plan. */
    readonly from: readonly SetGoal[];
    /** Proposed sets. */
    readonly to: readonly SetGoal[];
  };
  /** Why this is proposed. */
  readonly reasons: readonly Sentence[];
}

/** Something to measure or test again. */
export interface MeasureAgain extends Sentence {
  /** What to measure or test. */
  readonly what: (typeof MEASURED_AGAIN)[number];
  /** Whether the documents show that it is due; otherwise it is a reminder. */
  readonly due: boolean;
  /** How well the advice to measure again is backed. */
  readonly evidence: Grade;
  /** Source of the advice; left out where there is none. */
  readonly source?: SourceId;
}

/** A proposal for the next session: plain JSON. */
export interface Proposal extends DocumentHead<'proposal', 1> {
  /** The progression rule that was applied. */
  readonly rule: {
    /** Name of the rule. */
    readonly id: ProgressionRuleId;
    /** The rule as an English sentence. */
    readonly text: string;
    /** How well the rule is backed. */
    readonly evidence: Grade;
    /** Source of the rule; left out where there is none. */
    readonly source?: SourceId;
  };
  /** The rule applied to joint and tendon pain. */
  readonly painRule: {
    /** Name of the rule. */
    readonly id: PainRuleId;
    /** How well the rule is backed. */
    readonly evidence: Grade;
    /** Source of the rule; left out where there is none. */
    readonly source?: SourceId;
  };
  /** What is proposed for each exercise on each limb. */
  readonly items: readonly ProposalItem[];
  /** What to measure or test again. */
  readonly measureAgain: readonly MeasureAgain[];
  /** Reasons not to train: those of the plan and of every record, with the decisions that lifted them. */
  readonly stops: readonly Stop[];
  /** The cautions of the last session and of a new cuff pressure, most severe first. */
  readonly cautions: readonly Caution[];
  /** Sentences that always apply. */
  readonly disclaimers: readonly Disclaimer[];
}
