import type { ZodMiniType } from 'zod/mini';
import type { Answer, Caution } from '../answer/answer.js';
import type { DayCode, ScreeningCode } from '../answer/codes.js';
import type { Asked } from '../answer/needs.js';
import type { Grade } from '../evidence/grades.js';
import type { SourceId } from '../evidence/sources.js';
import { bloodPressureCautions, checkBloodPressure } from '../pressure/blood-pressure.js';
import type { DocumentHead } from './document-parts.js';
import type { Disclaimer } from './disclaimers.js';
import { requestReader } from './parse.js';
import type { AskedItem, FindingOutcome, ScreeningOutcome, ScreeningReply } from './screening-items.js';
import { questionMessages, screeningCaution } from './screening-messages.js';

/** Replies by the code of what is asked about. */
export type Replies<C extends string> = { readonly [code in C]?: ScreeningReply | undefined };

/** A reason to refer or to take care. */
export interface ScreeningFinding extends Caution {
  /** Whether to refer or to take care. */
  readonly outcome: FindingOutcome;
  /** How well it is backed that this is on the list. */
  readonly evidence: Grade;
}

/** A question of the screening or of the check of the day. */
export interface ScreeningQuestion<C extends string = ScreeningCode> {
  /** Code of the question. */
  readonly code: C;
  /** The question in English. */
  readonly question: string;
  /** What a `yes` leads to. */
  readonly outcome: FindingOutcome;
  /** How well it is backed that this is on the list. */
  readonly evidence: Grade;
  /** Source of the question; left out where there is none. */
  readonly source?: SourceId;
}

/** A question that is not answered. */
export interface OpenQuestion {
  /** Field of the request, or code of the question. */
  readonly code: string;
  /** The question in English. */
  readonly question: string;
}

/** What `screen` takes. */
export interface ScreeningRequest {
  /** What to call the person on the page; no real name is needed. */
  readonly label?: string | undefined;
  /** Day of the answers, `YYYY-MM-DD`; the library has no clock. */
  readonly date?: string | undefined;
  /** Age [years], 1–120. */
  readonly ageYears?: number | undefined;
  /** Resting systolic blood pressure at the upper arm [mmHg], 60–300; one pressure alone is checked too. */
  readonly systolicMmHg?: number | undefined;
  /** Resting diastolic blood pressure at the upper arm [mmHg], 30–200. */
  readonly diastolicMmHg?: number | undefined;
  /** Replies by the code of the condition. */
  readonly answers: Replies<ScreeningCode>;
}

/** What `checkDay` takes. */
export interface DayCheckRequest {
  /** What to call the person on the page; no real name is needed. */
  readonly label?: string | undefined;
  /** Day of the answers, `YYYY-MM-DD`; the library has no clock. */
  readonly date: string;
  /** Systolic blood pressure at rest today [mmHg], 60–300; one pressure alone is checked too. */
  readonly systolicMmHg?: number | undefined;
  /** Diastolic blood pressure at rest today [mmHg], 30–200. */
  readonly diastolicMmHg?: number | undefined;
  /** The worst pain now, anywhere, on the numeric rating scale 0–10. */
  readonly painNow?: number | undefined;
  /** Replies by the code of the question. */
  readonly answers: Replies<DayCode>;
}

/** A document of answers, and what they lead to. */
export interface AnswersDocument<D extends string, R> extends DocumentHead<D, 1> {
  /** The answers and readings you gave. */
  readonly request: R;
  /** What the answers lead to, on the whole. */
  readonly outcome: ScreeningOutcome;
  /** Whether every question is answered, and every reading that is asked for given. */
  readonly complete: boolean;
  /** What the answers lead to, referrals first. */
  readonly findings: readonly ScreeningFinding[];
  /** What is not answered: fields of the request, and codes of questions. */
  readonly unanswered: readonly OpenQuestion[];
  /** Sentences that always apply. */
  readonly disclaimers: readonly Disclaimer[];
}

/** A screening: plain JSON, to store, send, print and give to `planSession`. Age and both pressures are asked for too. */
export interface Screening extends AnswersDocument<'screening', ScreeningRequest> {
  /** Score of the risk of thrombosis, from the answers. */
  readonly thrombosisScore: Answer<'thrombosis-score'>;
}

/**
 * A check before a session: plain JSON, to store, print and give to `planSession` or `recordSession`. Both pressures and
 * the pain are asked for too.
 */
export interface DayCheck extends AnswersDocument<'day-check', DayCheckRequest> {}

type ReadingName = 'ageYears' | 'systolicMmHg' | 'diastolicMmHg' | 'painNow';

const questionOf = (code: ScreeningCode | DayCode | ReadingName): string => questionMessages[`ask-${code}`];

export const questionsOf = <C extends ScreeningCode | DayCode>(
  items: readonly AskedItem<C>[],
): ScreeningQuestion<C>[] =>
  items.map(({ code, outcome, evidence, source }) => ({
    code,
    question: questionOf(code),
    outcome,
    evidence,
    ...(source && { source }),
  }));

/** How well the line of a blood-pressure caution is backed. */
const BLOOD_PRESSURE_GRADES: Readonly<Record<string, Grade>> = {
  'blood-pressure-refer': 'published',
  'blood-pressure-very-high': 'practice',
  'blood-pressure-high': 'secondary',
};

export const outcomeOf = ({ severity }: Caution): FindingOutcome => (severity === 'stop' ? 'refer' : 'caution');

export const pressureFindings = (systolicMmHg?: number, diastolicMmHg?: number): ScreeningFinding[] =>
  bloodPressureCautions(systolicMmHg, diastolicMmHg).map((message) => ({
    ...message,
    outcome: outcomeOf(message),
    evidence: BLOOD_PRESSURE_GRADES[message.code]!,
  }));

/** A request that is right: by its declaration, and of a blood pressure the systolic above the diastolic. */
export function readAnswers<R extends ScreeningRequest | DayCheckRequest>(
  schema: () => ZodMiniType<R>,
  expected: Asked,
  request: R,
): R {
  const value = requestReader(schema, expected)(request);
  const { systolicMmHg, diastolicMmHg } = value;
  if (systolicMmHg !== undefined && diastolicMmHg !== undefined) checkBloodPressure({ systolicMmHg, diastolicMmHg });
  return value;
}

/** What the answers with a yes lead to. */
export const findingsOfReplies = <C extends ScreeningCode | DayCode>(
  items: readonly AskedItem<C>[],
  replies: Replies<C>,
): ScreeningFinding[] =>
  items
    .filter(({ code }) => replies[code] === 'yes')
    .map(({ code, outcome, evidence, source }) => {
      const severity = outcome === 'refer' ? 'stop' : 'caution';
      const more = { path: ['answers', code], ...(source && { source }) };
      return { ...screeningCaution(severity, code, undefined, more), outcome, evidence };
    });

/** Findings with referrals first, what is not answered, and what they lead to. */
export function concluded<C extends ScreeningCode | DayCode>(
  findings: readonly ScreeningFinding[],
  items: readonly AskedItem<C>[],
  replies: Replies<C>,
  readings: Readonly<Partial<Record<ReadingName, number | undefined>>>,
): Pick<Screening, 'outcome' | 'complete' | 'findings' | 'unanswered'> {
  const open = [
    ...(Object.keys(readings) as ReadingName[]).filter((name) => readings[name] === undefined),
    ...items.map(({ code }) => code).filter((code) => (replies[code] ?? 'unknown') === 'unknown'),
  ];
  const unanswered = open.map((code) => ({ code, question: questionOf(code) }));
  const complete = unanswered.length === 0;
  const sorted = [...findings].sort((a, b) => Number(b.outcome === 'refer') - Number(a.outcome === 'refer'));
  const outcome = sorted[0]?.outcome ?? (complete ? 'nothing-found' : 'incomplete');
  return { outcome, complete, findings: sorted, unanswered };
}
