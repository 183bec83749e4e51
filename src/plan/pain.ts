import type { CautionCode } from '../answer/codes.js';
import { frozen } from '../quantity/frozen.js';
import type { MessageValues } from '../answer/messages.js';
import type { Grade } from '../evidence/grades.js';
import type { SourceId } from '../evidence/sources.js';
import type { Limb, Side } from '../quantity/quantities.js';
import type { LimbAndSide } from './document-parts.js';
import type { PlanCode } from './document-messages.js';

/** Where it hurts: in a joint, in a tendon, in the skin and flesh under the cuff, in the muscle that works. */
export const PAIN_SITES = ['joint', 'tendon', 'under-cuff', 'muscle'] as const;
/** Where it hurts. */
export type PainSite = (typeof PAIN_SITES)[number];

/** When it hurts. `after`: once the cuff has been deflated for some minutes. */
export const PAIN_MOMENTS = ['before', 'during', 'after', 'nextMorning'] as const;
/** When it hurts. */
export type PainMoment = (typeof PAIN_MOMENTS)[number];

/** Pain at one site on the 0 to 10 numeric rating scale; what is left out is not known. */
export interface PainReport {
  /** Where it hurts. */
  readonly site: PainSite;
  /** The limb it is in; every limb of the session is meant where it is left out. */
  readonly limb?: Limb | undefined;
  /** The side it is on; both sides are meant where it is left out. */
  readonly side?: Side | undefined;
  /** Pain before the session, 0–10. */
  readonly before?: number | undefined;
  /** The worst pain in the session, 0–10. */
  readonly during?: number | undefined;
  /** Pain once the cuff has been deflated for some minutes, 0–10: the burn of a hard set is gone by then. */
  readonly after?: number | undefined;
  /** Pain on waking the next day, 0–10. */
  readonly nextMorning?: number | undefined;
}

/** From this pain on nothing is trained before a clinician has looked [0 to 10], `practice`. */
export const SEVERE_PAIN_FROM = 8;

/** What pain allows, as data: lines on the 0 to 10 scale, which hold whatever the pain was before. */
export interface PainRule {
  /** Name of the rule. */
  readonly id: string;
  /** The sites it is for. */
  readonly sites: readonly PainSite[];
  /** The moments it looks at. */
  readonly moments: readonly PainMoment[];
  /** Pain up to which to go on; above it, hold. */
  readonly holdAbove: number;
  /** Pain above which to go back. */
  readonly backOffAbove: number;
  /** Pain from which to stop (`practice` in every rule). */
  readonly stopFrom?: number;
  /**
   * Pain that is higher after the session than before it holds, or goes back where it is above `holdAbove`; pain that
   * is higher the next morning goes back.
   */
  readonly settles: boolean;
  /** What goes down. */
  readonly lower: 'load' | 'pressure';
  /** Evidence grade of the lines `holdAbove` and `backOffAbove`. */
  readonly evidence: Grade;
  /** Source of the lines; left out where there is none. */
  readonly source?: SourceId;
}

const joints = {
  sites: ['joint', 'tendon'],
  moments: PAIN_MOMENTS,
  stopFrom: SEVERE_PAIN_FROM,
  settles: true,
  lower: 'load',
} as const;
const secondary = { evidence: 'secondary' } as const;

/** Rules of joint and tendon pain, one of which is chosen by name; the first is the default. */
const chosen = [
  { id: 'cautious', ...joints, holdAbove: 1, backOffAbove: 3, evidence: 'practice' },
  { id: 'tendon-monitoring', ...joints, holdAbove: 3, backOffAbove: 5, ...secondary, source: 'achilles-trial-2007' },
  // “Best below 2”, in whole points.
  { id: 'front-of-knee', ...joints, holdAbove: 1, backOffAbove: 5, ...secondary, source: 'front-of-knee-page' },
] as const satisfies readonly PainRule[];

/** Rules of the other sites, which always apply. */
const always = [
  {
    // Discomfort of 5 to 7 in the fourth set is usual, so it neither holds nor goes back.
    id: 'under-cuff-in-sets',
    sites: ['under-cuff'],
    moments: ['during'],
    holdAbove: 7,
    backOffAbove: 7,
    settles: false,
    lower: 'pressure',
    evidence: 'published',
    source: 'discomfort-2016',
  },
  {
    id: 'under-cuff',
    sites: ['under-cuff'],
    moments: ['before', 'after', 'nextMorning'],
    holdAbove: 1,
    backOffAbove: 3,
    stopFrom: SEVERE_PAIN_FROM,
    settles: true,
    lower: 'pressure',
    evidence: 'practice',
  },
  {
    // Nothing of the session itself: the burn of a hard set alone never holds.
    id: 'muscle',
    sites: ['muscle'],
    moments: ['before', 'after', 'nextMorning'],
    holdAbove: 4,
    backOffAbove: 6,
    stopFrom: SEVERE_PAIN_FROM,
    settles: false,
    lower: 'load',
    evidence: 'practice',
  },
] as const satisfies readonly PainRule[];

/** Name of a rule of joint and tendon pain. */
export type PainRuleId = (typeof chosen)[number]['id'];

/**
 * The rules that `nextSession` applies to pain, as data.
 *
 * For joint and tendon pain, choose one of the first three by name as `painRule`; `cautious` when left out:
 * the lower line of each of the two others, so it is `practice`. Pain under the cuff and in the muscle always has rules
 * of its own. Muscle burn in the sets never holds: the published rules were made for joints and tendons.
 *
 * - Evidence: `tendon-monitoring` `secondary` (two clinical summaries of Am J Sports Med 2007;35(6):897–906);
 *   `front-of-knee` `secondary` (a patient-education page); `under-cuff-in-sets` `published` for the discomfort of
 *   5 to 7 that it lets pass (Physiol Behav 2016;157:277–280); the others, and every `stopFrom`, `practice`.
 *
 * @example
 * ```ts
 * import { painRules } from 'cuffwork/plan';
 * painRules.find(({ id }) => id === 'tendon-monitoring')?.backOffAbove; // => 5
 * ```
 */
export const painRules: readonly PainRule[] = frozen([...chosen, ...always]);

export const PAIN_RULE_IDS: readonly PainRuleId[] = chosen.map(({ id }) => id);

/** What pain leads to, mildest first. */
const PAIN_VERDICTS = ['go-on', 'hold', 'back-off', 'stop'] as const;
type PainVerdict = (typeof PAIN_VERDICTS)[number];

/** One report by one rule: what follows, and the pain that decided. */
export interface PainAssessment {
  readonly verdict: PainVerdict;
  readonly rule: PainRule;
  readonly report: PainReport;
  /** Absent where nothing was recorded that the rule looks at. */
  readonly moment?: PainMoment;
  readonly pain?: number;
  /** Pain before the session, where it was higher later. */
  readonly before?: number;
}

const rank = (verdict: PainVerdict): number => PAIN_VERDICTS.indexOf(verdict);

function assessBy(rule: PainRule, report: PainReport): PainAssessment {
  const { holdAbove, backOffAbove, stopFrom = Infinity, settles, moments } = rule;
  let worst: PainAssessment = { verdict: 'go-on', rule, report };
  const found = (verdict: PainVerdict, moment: PainMoment, pain: number, before?: number): void => {
    if (rank(verdict) <= rank(worst.verdict) && worst.moment) return;
    worst = { verdict, rule, report, moment, pain, ...(before !== undefined && { before }) };
  };
  for (const moment of moments) {
    const pain = report[moment];
    if (pain === undefined) continue;
    found(
      pain >= stopFrom ? 'stop' : pain > backOffAbove ? 'back-off' : pain > holdAbove ? 'hold' : 'go-on',
      moment,
      pain,
    );
  }
  const { before, after, nextMorning } = report;
  if (settles && before !== undefined) {
    if (nextMorning !== undefined && nextMorning > before) found('back-off', 'nextMorning', nextMorning, before);
    if (after !== undefined && after > before) found(after > holdAbove ? 'back-off' : 'hold', 'after', after, before);
  }
  return worst;
}

/** What reports of pain lead to, the most severe first: absolute lines first, then whether the pain settled. */
export function assessPain(reports: readonly PainReport[], chosenRule: PainRuleId): PainAssessment[] {
  const rules = [chosen.find(({ id }) => id === chosenRule)!, ...always] as readonly PainRule[];
  return reports
    .flatMap((report) => rules.filter(({ sites }) => sites.includes(report.site)).map((rule) => assessBy(rule, report)))
    .sort((a, b) => rank(b.verdict) - rank(a.verdict));
}

/** The default of `painRule`. */
export const CAUTIOUS_PAIN_RULE: PainRuleId = 'cautious';

/** Whether a pain report is about a limb: about every limb where none is named. */
export const painIsOf = (report: PainReport, place: LimbAndSide): boolean =>
  (report.limb ?? place.limb) === place.limb && (report.side ?? place.side) === place.side;

/** The sentence of a judgement, and the codes and numbers in it; nothing where pain lets training go on. */
export function painSentence(assessed: PainAssessment): [PlanCode & CautionCode, MessageValues] | undefined {
  const { verdict, rule, report, moment, pain, before } = assessed;
  if (verdict === 'go-on') return undefined;
  const { site, limb, side } = report;
  const values = {
    pain: pain!,
    site,
    moment: moment!,
    ...(limb && { limb }),
    ...(side && { side }),
  };
  if (verdict === 'stop') return ['pain-severe', { ...values, line: rule.stopFrom! }];
  const line = verdict === 'hold' ? rule.holdAbove : rule.backOffAbove;
  return before === undefined
    ? [`pain-${verdict}`, { ...values, line, rule: rule.id }]
    : [`pain-${verdict}-rose`, { ...values, before, rule: rule.id }];
}
