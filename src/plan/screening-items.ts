import type { Grade } from '../evidence/grades.js';
import type { SourceId } from '../evidence/sources.js';
import type { DayCode, ScreeningCode } from '../answer/codes.js';

/** What a finding leads to, most severe first. */
export const FINDING_OUTCOMES = ['refer', 'caution'] as const;
/** Whether to refer or to take care. */
export type FindingOutcome = (typeof FINDING_OUTCOMES)[number];

export const SCREENING_OUTCOMES = [...FINDING_OUTCOMES, 'incomplete', 'nothing-found'] as const;
/** What answers lead to, most severe first. `nothing-found` is no clearance. */
export type ScreeningOutcome = (typeof SCREENING_OUTCOMES)[number];

export const REPLIES = ['yes', 'no', 'unknown'] as const;
/** What can be answered to a question. Left out is the same as `unknown`. */
export type ScreeningReply = (typeof REPLIES)[number];

/** Something that `screen` or `checkDay` asks about. */
export interface AskedItem<C extends string> {
  readonly code: C;
  /** What a yes leads to. That the item is asked about may have a source; which of the two it leads to is `practice`. */
  readonly outcome: FindingOutcome;
  /** How well it is backed that the item is on the list. */
  readonly evidence: Grade;
  readonly source?: SourceId;
}

/** A condition that `screen` asks about. */
export interface ScreeningItem extends AskedItem<ScreeningCode> {
  /** Points of the published thrombosis score, where it is an item of it. */
  readonly points?: number;
}

const listed = { evidence: 'published', source: 'risk-stratification-2022' } as const;
const recalled = { evidence: 'unconfirmed' } as const;
const practice = { evidence: 'practice' } as const;

/**
 * The contraindications and precautions that {@link screen} asks about. We read the published list in part only,
 * so it is not complete; a practitioner asks further.
 */
export const screeningItems: readonly ScreeningItem[] = [
  { code: 'venous-thromboembolism', outcome: 'refer', ...listed, points: 3 },
  { code: 'thrombophilia', outcome: 'refer', ...listed, points: 2 },
  { code: 'limb-paralysis', outcome: 'caution', ...listed, points: 2 },
  { code: 'cancer-within-5-years', outcome: 'caution', ...listed, points: 2 },
  { code: 'intensive-care', outcome: 'caution', ...listed, points: 1 },
  { code: 'immobile', outcome: 'caution', ...listed, points: 1 },
  { code: 'pregnancy', outcome: 'refer', ...listed },
  { code: 'after-birth', outcome: 'refer', ...listed },
  { code: 'sickle-cell', outcome: 'refer', ...recalled },
  { code: 'heart-failure', outcome: 'refer', ...listed },
  { code: 'unstable-heart', outcome: 'refer', ...listed },
  { code: 'arrhythmia', outcome: 'refer', ...listed },
  { code: 'heart-inflammation', outcome: 'refer', ...listed },
  { code: 'peripheral-artery-disease', outcome: 'refer', ...listed },
  { code: 'aortic-aneurysm', outcome: 'refer', ...listed },
  { code: 'low-exercise-capacity', outcome: 'refer', ...listed },
  { code: 'drop-on-standing', outcome: 'refer', ...listed },
  { code: 'high-cholesterol', outcome: 'refer', ...listed },
  { code: 'acute-illness', outcome: 'refer', ...listed },
  { code: 'kidney-disease', outcome: 'refer', ...listed },
  { code: 'fistula-or-graft', outcome: 'refer', ...recalled },
  { code: 'cancer-in-limb', outcome: 'refer', ...recalled },
  { code: 'lymph-trouble', outcome: 'refer', ...recalled },
  { code: 'infection-or-wound', outcome: 'refer', ...recalled },
  { code: 'surgery-or-fracture', outcome: 'refer', ...recalled },
  // A release does not make the operation go away: the score below does not see it.
  { code: 'surgery-released', outcome: 'caution', ...practice },
  { code: 'unusual-swelling', outcome: 'refer', ...recalled },
  { code: 'compartment-syndrome', outcome: 'refer', evidence: 'published', source: 'compartment-exclusion' },
  { code: 'hypertension', outcome: 'caution', ...listed },
  { code: 'diabetes', outcome: 'caution', ...listed },
  { code: 'rheumatoid-arthritis', outcome: 'caution', ...listed },
  { code: 'recent-covid-19', outcome: 'caution', ...listed },
  { code: 'oral-contraceptives', outcome: 'caution', ...listed },
  { code: 'anabolic-steroids', outcome: 'caution', ...listed },
  { code: 'clotting-medicines', outcome: 'caution', ...recalled },
  { code: 'varicose-veins', outcome: 'caution', ...recalled },
  { code: 'first-session', outcome: 'caution', evidence: 'published', source: 'case-report-2016' },
];

/** Answers after which the thrombosis score must not be read as a low risk: it leaves operations out. */
export const SURGERY = ['surgery-or-fracture', 'surgery-released'] as const satisfies ScreeningCode[];

/** The items of the published thrombosis score: conditions, and an age of 60 and over. */
export const scoredItems: readonly { readonly code: ScreeningCode | 'age-60-and-over'; readonly points: number }[] = [
  ...screeningItems.flatMap(({ code, points }) => (points === undefined ? [] : [{ code, points }])),
  { code: 'age-60-and-over', points: 1 },
];

/** From so many points on the two-step cut-off refers; the three-step one, from 4 on, lies above it. */
export const REFER_POINTS = 3;

/** What {@link checkDay} asks about before each session. */
export const dayItems: readonly AskedItem<DayCode>[] = [
  { code: 'today-chest', outcome: 'refer', ...practice },
  { code: 'today-dark-urine', outcome: 'refer', evidence: 'published', source: 'case-report-2018' },
  { code: 'today-swelling', outcome: 'refer', ...practice },
  { code: 'today-sensation', outcome: 'refer', ...practice },
  { code: 'today-circulation', outcome: 'refer', ...practice },
  { code: 'today-illness', outcome: 'refer', ...listed },
  { code: 'today-skin', outcome: 'refer', ...recalled },
  { code: 'today-new-condition', outcome: 'refer', ...practice },
  { code: 'today-bruises', outcome: 'caution', ...practice },
];

/** Above this pain on the 0 to 10 scale, do less today (`practice`). */
export const PAIN_LINE = 3;
