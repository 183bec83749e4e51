import type { Grade } from '../evidence/grades.js';
import type { SourceId } from '../evidence/sources.js';
import type { PlanCode, ScreeningCode } from './messages.js';

/** What screening comes to. `nothing-found` clears no one. */
export type ScreeningOutcome = 'refer' | 'caution' | 'nothing-found';
export const SCREENING_OUTCOMES = ['refer', 'caution', 'nothing-found'] as const satisfies ScreeningOutcome[];

/** A condition that is asked after before training with restriction. */
export interface ScreeningItem {
  readonly code: ScreeningCode;
  /** What a yes leads to. That the condition is listed has a source; which of the two it leads to is `practice`. */
  readonly outcome: 'refer' | 'caution';
  /** How well it is backed that the condition is on the list. */
  readonly evidence: Grade;
  readonly source?: SourceId;
  /** What is said of a yes, where it is not to refer or to ask the treating clinician. */
  readonly says?: PlanCode;
  /** Points of the published thrombosis score, where it is an item of it. */
  readonly points?: number;
}

const listed = { evidence: 'published', source: 'risk-stratification-2022' } as const;
const recalled = { evidence: 'unconfirmed' } as const;

/**
 * The contraindications and precautions that {@link screen} asks after. The published list was read in part only,
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
  { code: 'unusual-swelling', outcome: 'refer', ...recalled },
  {
    code: 'compartment-syndrome',
    outcome: 'refer',
    evidence: 'published',
    source: 'compartment-exclusion',
  },
  { code: 'hypertension', outcome: 'caution', ...listed },
  { code: 'diabetes', outcome: 'caution', ...listed },
  { code: 'rheumatoid-arthritis', outcome: 'caution', ...listed },
  { code: 'recent-covid-19', outcome: 'caution', ...listed },
  { code: 'oral-contraceptives', outcome: 'caution', ...listed },
  { code: 'anabolic-steroids', outcome: 'caution', ...listed },
  { code: 'clotting-medicines', outcome: 'caution', ...recalled },
  { code: 'varicose-veins', outcome: 'caution', ...recalled },
  {
    code: 'first-session',
    outcome: 'caution',
    evidence: 'published',
    source: 'case-report-2016',
    says: 'screening-first-session',
  },
];

/** Points of the published thrombosis score for an age of 60 and over. */
export const AGE_POINTS = 1;
