import { frozen } from '../quantity/frozen.js';
import type { Grade } from '../evidence/grades.js';
import type { SourceId } from '../evidence/sources.js';
import type { PlanCode } from './document-messages.js';

/**
 * What a symptom asks for. `emergency`: deflate, stop and call the emergency number. `clinician-first`: deflate and
 * stop until a clinician has looked. `lower`: note it and do less next time.
 */
export type SymptomGrade = (typeof SYMPTOM_GRADES)[number];
/** The grades of symptoms, most severe first. */
export const SYMPTOM_GRADES = ['emergency', 'clinician-first', 'lower'] as const;

/** A symptom that a record can report. Its words stand in `messages` under its code. */
export interface SymptomRow {
  /** Code of the symptom. */
  readonly code: string;
  /** How severe the symptom is, and so what follows. */
  readonly grade: SymptomGrade;
  /** When it comes: in the session, or in the hours and days after it. Those of the session are the stop criteria. */
  readonly when: 'session' | 'after';
  /** It is about the cuff: no stop criterion of a session without one, and it lowers nothing of an exercise without. */
  readonly cuff?: true;
  /** What goes down next time; only where the grade is `lower`. */
  readonly lower?: 'pressure' | 'load';
  /** How well it is backed that this symptom is reported or watched for. Which grade it has here is `practice`. */
  readonly evidence: Grade;
  /** Source of the row; left out where there is none. */
  readonly source?: SourceId;
}

/** A symptom with its code as a record takes it. */
interface CodedSymptom extends SymptomRow {
  /** Code of the symptom. */
  readonly code: Symptom;
}

const practice = { evidence: 'practice' } as const;
const survey = { evidence: 'published', source: 'practitioner-survey-2018' } as const;
const muscleBreakdown = { evidence: 'published', source: 'case-report-2018' } as const;

const rows = frozen([
  { code: 'symptom-chest-pain', grade: 'emergency', when: 'session', ...practice },
  { code: 'symptom-breathlessness', grade: 'emergency', when: 'session', ...practice },
  { code: 'symptom-fainting', grade: 'emergency', when: 'session', ...survey },
  { code: 'symptom-vision', grade: 'emergency', when: 'session', ...practice },
  { code: 'symptom-movement', grade: 'emergency', when: 'session', ...practice },
  { code: 'symptom-limb-stays-cold', grade: 'emergency', when: 'session', cuff: true, ...practice },
  { code: 'symptom-dark-urine', grade: 'emergency', when: 'after', ...muscleBreakdown },
  { code: 'symptom-numbness-stays', grade: 'clinician-first', when: 'session', cuff: true, ...practice },
  { code: 'symptom-sharp-pain', grade: 'clinician-first', when: 'session', ...practice },
  { code: 'symptom-slow-refill', grade: 'clinician-first', when: 'session', cuff: true, ...practice },
  { code: 'symptom-dizziness-stays', grade: 'clinician-first', when: 'session', ...practice },
  { code: 'symptom-pain-out-of-proportion', grade: 'clinician-first', when: 'after', ...muscleBreakdown },
  { code: 'symptom-swelling', grade: 'clinician-first', when: 'after', ...practice },
  { code: 'symptom-bruising-spreads', grade: 'clinician-first', when: 'after', ...practice },
  { code: 'symptom-dizziness', grade: 'lower', when: 'session', lower: 'pressure', ...survey },
  { code: 'symptom-limb-turns-cold', grade: 'lower', when: 'session', lower: 'pressure', cuff: true, ...practice },
  { code: 'symptom-tingling', grade: 'lower', when: 'session', lower: 'pressure', cuff: true, ...survey },
  { code: 'symptom-bruising', grade: 'lower', when: 'after', lower: 'pressure', cuff: true, ...survey },
  { code: 'symptom-soreness', grade: 'lower', when: 'after', lower: 'load', ...survey },
] as const satisfies readonly (SymptomRow & { code: PlanCode })[]);

/** Code of a symptom that a record can report. */
export type Symptom = (typeof rows)[number]['code'];

/**
 * The symptoms that a record can report, in three grades, most severe first: the one table behind the stop criteria of
 * every page, the `symptoms` of a record and what `nextSession` makes of them. Their words stand in `messages`.
 *
 * Symptoms of the grades `emergency` and `clinician-first` are stops: they stay until a practitioner’s decision lifts
 * them. One of the grade `lower` gives a way down. Burning in the muscle that fades within a minute of deflation is
 * usual, so it is not in the table.
 *
 * - Evidence: each row has its own, for the symptom being reported or watched for; that its grade asks for this is `practice`.
 *
 * @example
 * ```ts
 * import { messages } from 'cuffwork/explain';
 * import { symptoms } from 'cuffwork/plan';
 * symptoms.filter(({ grade }) => grade === 'lower').map(({ code }) => code).includes('symptom-bruising'); // => true
 * messages['symptom-tingling']; // => 'tingling or numbness that stays while the cuff is inflated, and goes away within minutes of deflation'
 * ```
 */
export const symptoms: readonly CodedSymptom[] = rows;

export const SYMPTOM_CODES: readonly Symptom[] = rows.map(({ code }) => code);

const byCode = new Map<string, SymptomRow>(rows.map((row) => [row.code, row]));

/** A symptom of the table, by its code. */
export const symptomOf = (code: Symptom): SymptomRow => byCode.get(code)!;
