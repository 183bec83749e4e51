import type { Caution, Sentence } from '../answer/answer.js';
import type { Grade } from '../evidence/grades.js';
import type { SourceId } from '../evidence/sources.js';
import type { Limb, LoadUnit, Side } from '../quantity/quantities.js';
import type { PainRuleId } from './pain.js';
import type { ProgressionRuleId } from './progression-rules.js';
import type { Stop, StopDecision } from './stops.js';
import type { StandingSentence } from './standing.js';
import type { MEASURED_AGAIN, Plan, PlanSet, ProgressionAction } from './types.js';
import type { SessionRecord } from './record.js';

/** What `nextSession` takes. */
export interface ProgressionRequest {
  /** The plan that was trained by. */
  readonly plan: Plan;
  /** What was done, in any order. */
  readonly records: readonly SessionRecord[];
  readonly rule: ProgressionRuleId;
  /** The rule for joint and tendon pain; `cautious` when left out. */
  readonly painRule?: PainRuleId | undefined;
  /** Percent of occlusion pressure to go to when the rule is met, instead of a heavier load; at most 10 points up. */
  readonly nextPercent?: number | undefined;
  /** Ask for a lighter session, whatever was done. */
  readonly deload?: true | undefined;
  /** Day of the next session, `YYYY-MM-DD`; that of the last record when left out. */
  readonly date?: string | undefined;
  /** From so many days between sessions on, nothing is raised; 28 (`practice`) when left out. */
  readonly longBreakDays?: number | undefined;
  /** Decisions of practitioners about stops of the plan and the records. Each lifts the stop it names. */
  readonly decisions?: readonly StopDecision[] | undefined;
  /** Day the maximum was tested, `YYYY-MM-DD`. */
  readonly oneRepMaxTestedOn?: string | undefined;
}

/** What a set asks for: repetitions or a time [s]. */
export type SetGoal = Pick<PlanSet, 'repetitions' | 'durationS'>;

/** What is proposed for one exercise on one limb. `to` is left out where no number can be given. */
export interface ProposalItem {
  readonly exercise: string;
  readonly limb: Limb;
  readonly side: Side;
  readonly action: ProgressionAction;
  /** Left out where the plan has no load. */
  readonly load?: { readonly from: number; readonly to?: number; readonly unit: LoadUnit };
  /** Left out where the plan has no maximum. */
  readonly percentOfMaximum?: { readonly from: number; readonly to?: number };
  /** Left out where there is no cuff. */
  readonly percentOfOcclusion?: { readonly from: number; readonly to?: number };
  /** What the gauge is set to [mmHg]. */
  readonly cuffMmHg?: { readonly from: number; readonly to?: number };
  /** Present where the sets change: more repetitions, or a set fewer. */
  readonly sets?: { readonly from: readonly SetGoal[]; readonly to: readonly SetGoal[] };
  readonly reasons: readonly Sentence[];
}

/** Something to measure or test again. */
export interface MeasureAgain extends Sentence {
  readonly what: (typeof MEASURED_AGAIN)[number];
  /** Whether the documents show that it is due; otherwise it is a reminder. */
  readonly due: boolean;
  readonly evidence: Grade;
  readonly source?: SourceId;
}

/** A proposal for the next session: plain JSON. */
export interface Proposal {
  readonly document: 'proposal';
  readonly schemaVersion: 1;
  /** Version of the library that made it. */
  readonly libraryVersion: string;
  readonly rule: {
    readonly id: ProgressionRuleId;
    readonly text: string;
    readonly evidence: Grade;
    readonly source?: SourceId;
  };
  /** The rule applied to joint and tendon pain. */
  readonly painRule: { readonly id: PainRuleId; readonly evidence: Grade; readonly source?: SourceId };
  readonly items: readonly ProposalItem[];
  readonly measureAgain: readonly MeasureAgain[];
  /** Reasons not to train: those of the plan and of every record, with the decisions that lifted them. */
  readonly stops: readonly Stop[];
  /** The cautions of the last session and of a new cuff pressure, gravest first. */
  readonly cautions: readonly Caution[];
  readonly standing: readonly StandingSentence[];
}
