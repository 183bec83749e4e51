import type { Answer, Caution } from '../answer/answer.js';
import { idsIn } from '../answer/cite.js';
import { InputError } from '../answer/issues.js';
import { plainInput } from '../answer/plain-input.js';
import type { Grade } from '../evidence/grades.js';
import type { SourceId } from '../evidence/sources.js';
import { bloodPressureCautions, checkBloodPressure } from '../pressure/blood-pressure.js';
import { version } from '../study/version.js';
import { assumption, caution, screeningMessages, type ScreeningCode } from './messages.js';
import { ageCautions } from './age-cautions.js';
import { parseDocument } from './parse.js';
import { screeningRequest } from './schema.js';
import { AGE_POINTS, screeningItems, type ScreeningOutcome } from './screening-items.js';
import { say } from './standing.js';
import type { StandingSentence } from './types.js';

/** What can be answered to a screening question. Left out is the same as `unknown`. */
export type ScreeningReply = 'yes' | 'no' | 'unknown';

/** What {@link screen} takes. */
export interface ScreeningRequest {
  /** What to call the person on the page; no real name is needed. */
  readonly label?: string | undefined;
  readonly ageYears?: number | undefined;
  /** Resting brachial pressures; one alone is judged too. */
  readonly systolicMmHg?: number | undefined;
  readonly diastolicMmHg?: number | undefined;
  /** Replies by the code of the condition. */
  readonly answers: { readonly [code in ScreeningCode]?: ScreeningReply | undefined };
}

/** A reason to refer or to take care. */
export interface ScreeningFinding extends Caution {
  readonly outcome: 'refer' | 'caution';
  /** How well it is backed that this is on the list. */
  readonly evidence: Grade;
}

/** A question of the screening. */
export interface ScreeningQuestion {
  readonly code: ScreeningCode;
  readonly question: string;
  readonly outcome: 'refer' | 'caution';
  readonly evidence: Grade;
  readonly source?: SourceId;
}

/** A screening: plain JSON, to store, send and print. */
export interface Screening {
  readonly document: 'screening';
  readonly schemaVersion: 1;
  /** Version of the library that made it. */
  readonly libraryVersion: string;
  readonly request: ScreeningRequest;
  readonly outcome: ScreeningOutcome;
  /** Whether every question, the age and both pressures are answered. */
  readonly complete: boolean;
  /** Referrals first. */
  readonly findings: readonly ScreeningFinding[];
  /** What is not answered: fields of the request, and codes of questions. */
  readonly unanswered: readonly { readonly code: string; readonly question: string }[];
  readonly thrombosisScore: Answer<'thrombosis-score'>;
  readonly standing: readonly StandingSentence[];
  readonly sources: readonly SourceId[];
}

/**
 * The questions of {@link screen}: published contraindications and precautions, each with its source and grade.
 *
 * The published list was read in part, so a practitioner asks further.
 *
 * @returns each question with its code, what a yes leads to, its grade and its source.
 *
 * @example
 * ```ts
 * import { screeningQuestions } from 'cuffwork/plan';
 * screeningQuestions()[0]?.question; // => 'A blood clot in a vein or in the lung, now or ever?'
 * ```
 */
export const screeningQuestions = (): ScreeningQuestion[] =>
  screeningItems.map(({ points: _, says: __, ...item }) => ({ ...item, question: `${screeningMessages[item.code]}?` }));

const READINGS = {
  ageYears: 'Age?',
  systolicMmHg: 'Resting systolic blood pressure?',
  diastolicMmHg: 'Resting diastolic blood pressure?',
} as const;

function thrombosisScore({ ageYears, answers }: ScreeningRequest): Answer<'thrombosis-score'> {
  const scored = [
    ...screeningItems.flatMap(({ code, points }) =>
      points === undefined ? [] : [{ code, points, reply: answers[code] ?? 'unknown' }],
    ),
    {
      code: 'age-60-and-over',
      points: AGE_POINTS,
      reply: ageYears === undefined ? 'unknown' : ageYears >= 60 ? 'yes' : 'no',
    } as const,
  ];
  const total = (...replies: ScreeningReply[]): number =>
    scored.reduce((sum, { points, reply }) => sum + (replies.includes(reply) ? points : 0), 0);
  const codes = { yes: 1, no: 0, unknown: 0 };
  const symbol = (index: number): string => `q${index + 1}`;
  return {
    kind: 'thrombosis-score',
    value: total('yes'),
    unit: '1',
    equation: 'thrombosis-score-2022',
    evidence: 'published',
    formula: scored.map(({ points }, index) => `${points} * ${symbol(index)}`).join(' + '),
    symbols: Object.fromEntries(scored.map(({ code }, index) => [symbol(index), { field: code, codes }])),
    inputs: Object.fromEntries(scored.map(({ code, reply }) => [code, reply])),
    assumptions: [assumption('score-no-cut-off')],
    cautions: scored.some(({ reply }) => reply === 'unknown')
      ? [
          caution('note', 'score-incomplete', {
            possible: total('yes', 'unknown'),
            most: total('yes', 'no', 'unknown'),
          }),
        ]
      : [],
    sources: ['risk-stratification-2022'],
  };
}

function findingsOf({ ageYears, systolicMmHg, diastolicMmHg, answers }: ScreeningRequest): ScreeningFinding[] {
  const found: ScreeningFinding[] = bloodPressureCautions(systolicMmHg, diastolicMmHg).map((pressure) => ({
    ...pressure,
    outcome: pressure.severity === 'stop' ? 'refer' : 'caution',
    evidence: pressure.severity === 'stop' ? 'published' : 'secondary',
  }));
  for (const { code, outcome, evidence, source, says } of screeningItems) {
    if (answers[code] !== 'yes') continue;
    const refer = outcome === 'refer';
    const said = caution(
      refer ? 'stop' : 'caution',
      says ?? (refer ? 'screening-refer' : 'screening-caution'),
      { condition: screeningMessages[code] },
      { path: ['answers', code], ...(source && { source }) },
    );
    found.push({ ...said, code, outcome, evidence });
  }
  for (const said of ageCautions(ageYears)) {
    found.push({ ...said, outcome: 'caution', evidence: said.source ? 'published' : 'practice' });
  }
  return found.sort((a, b) => Number(b.outcome === 'refer') - Number(a.outcome === 'refer'));
}

/**
 * Holds answers against published contraindications and precautions, and a resting blood pressure against published
 * thresholds (180/110 mmHg and above: refer; 140/90 and above: ask the treating clinician).
 *
 * The outcome is `refer`, `caution` or `nothing-found`, never more than that: `nothing-found` clears no one, and an
 * unanswered question stays unanswered (`complete` is false, and `unanswered` lists it). The published thrombosis
 * score is added up from its points; the text that was read gives no cut-off, so none is drawn.
 *
 * - Evidence: every finding carries the grade of its place on the list; whether it refers or asks for care is
 *   `practice`, save for the blood-pressure thresholds (`published`, `secondary`).
 * - Source: Front Physiol 2022;13:808622, Tables 1, 3 and 5 (Table 5 read in part).
 *
 * @param request - `answers`: `yes`, `no` or `unknown` by code; `ageYears` [years]; resting pressures [mmHg].
 * @returns outcome, findings with reasons and sources, what is unanswered; print it with `explain`.
 * @throws InputError naming every wrong field.
 *
 * @example
 * ```ts
 * import { screen } from 'cuffwork/plan';
 * const screening = screen({ ageYears: 67, systolicMmHg: 150, diastolicMmHg: 84, answers: { diabetes: 'yes' } });
 * screening.outcome; // => 'caution'
 * screening.complete; // => false
 * screening.findings.map(({ code }) => code); // => ['blood-pressure-high', 'diabetes', 'age-60-and-over']
 * ```
 */
export function screen(request: ScreeningRequest): Screening {
  const document = plainInput(request, 'answers to a screening');
  const { value, issues } = parseDocument<ScreeningRequest>(screeningRequest, document);
  if (!value) throw new InputError(issues);
  const { systolicMmHg, diastolicMmHg } = value;
  if (systolicMmHg !== undefined && diastolicMmHg !== undefined) checkBloodPressure({ systolicMmHg, diastolicMmHg });
  const findings = findingsOf(value);
  const unanswered = [
    ...Object.entries(READINGS)
      .filter(([code]) => value[code as keyof typeof READINGS] === undefined)
      .map(([code, question]) => ({ code, question })),
    ...screeningQuestions()
      .filter(({ code }) => (value.answers[code] ?? 'unknown') === 'unknown')
      .map(({ code, question }) => ({ code, question })),
  ];
  const screening = {
    document: 'screening',
    schemaVersion: 1,
    libraryVersion: version,
    request: value,
    outcome: findings[0]?.outcome ?? 'nothing-found',
    complete: unanswered.length === 0,
    findings,
    unanswered,
    thrombosisScore: thrombosisScore(value),
    standing: [say('screening-clears-no-one'), say('local-codes-decide'), say('screening-again')],
  } as const;
  return { ...screening, sources: idsIn(screening) };
}
