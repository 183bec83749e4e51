import type { Answer } from '../answer/answer.js';
import { ownDocument } from '../answer/own.js';
import { withInput } from '../answer/with-input.js';
import { ageCautions } from './age-cautions.js';
import { assumption } from './assumptions.js';
import { disclaimer } from './disclaimers.js';
import { head } from './document-parts.js';
import { SCREENING_ANSWERS } from './needs.js';
import {
  concluded,
  findingsOfReplies,
  pressureFindings,
  questionsOf,
  readAnswers,
  type Screening,
  type ScreeningRequest,
  type ScreeningFinding,
  type ScreeningQuestion,
} from './questions.js';
import { screeningRequest } from './schema-requests.js';
import { REFER_POINTS, scoredItems, screeningItems, SURGERY, type ScreeningReply } from './screening-items.js';
import { screeningCaution } from './screening-messages.js';

/**
 * The questions of {@link screen}: published contraindications and precautions, each with its source and grade.
 *
 * We read the published list in part, so a practitioner asks further.
 *
 * @returns each question with its code, what a yes leads to, its grade and its source.
 *
 * @example
 * ```ts
 * import { screeningQuestions } from 'cuffwork/plan';
 * screeningQuestions()[0]?.question; // => 'Have you ever had a blood clot in a vein or in your lung?'
 * ```
 */
export const screeningQuestions = (): ScreeningQuestion[] => questionsOf(screeningItems);

function scoreOf({ ageYears, answers }: ScreeningRequest): Answer<'thrombosis-score'> {
  const old = ageYears === undefined ? 'unknown' : ageYears >= 60 ? 'yes' : 'no';
  const scored = scoredItems.map(({ code, points }) => ({
    code,
    points,
    reply: code === 'age-60-and-over' ? old : (answers[code] ?? 'unknown'),
  }));
  const total = (...replies: ScreeningReply[]): number =>
    scored.reduce((sum, { points, reply }) => sum + (replies.includes(reply) ? points : 0), 0);
  const open = scored.some(({ reply }) => reply === 'unknown');
  const [possible, most] = [total('yes', 'unknown'), total('yes', 'no', 'unknown')];
  return {
    kind: 'thrombosis-score',
    value: total('yes'),
    unit: '1',
    equation: 'thrombosis-score-2022',
    evidence: 'published',
    inputs: Object.fromEntries(scored.map(({ code, reply }) => [code, reply])),
    assumptions: [assumption('score-for-inpatients'), assumption('score-cut-offs'), assumption('score-points-differ')],
    cautions: [
      ...(SURGERY.some((code) => answers[code] === 'yes') ? [screeningCaution('caution', 'score-after-surgery')] : []),
      ...(open ? [screeningCaution('note', 'score-incomplete', { possible, most })] : []),
    ],
  };
}

function findingsOf(
  { ageYears, systolicMmHg, diastolicMmHg, answers }: ScreeningRequest,
  score: number,
): ScreeningFinding[] {
  const more = { path: ['answers'], source: 'thrombosis-score-2014' } as const;
  const high = screeningCaution('stop', 'thrombosis-score-high', { score, cutOff: REFER_POINTS }, more);
  return [
    ...pressureFindings(systolicMmHg, diastolicMmHg),
    ...findingsOfReplies(screeningItems, answers),
    ...(score >= REFER_POINTS ? [{ ...high, outcome: 'refer', evidence: 'published' } as const] : []),
    ...ageCautions(ageYears).map(
      (message) => ({ ...message, outcome: 'caution', evidence: message.source ? 'published' : 'practice' }) as const,
    ),
  ];
}

/**
 * Compares answers with published contraindications and precautions, and a resting blood pressure with its lines:
 * from 180/110 mmHg refer (`published`); from 160/100 refer too, since no cuff is used until the treating clinician
 * agrees (`practice`); from 140/90 ask the treating clinician (`secondary`).
 *
 * The outcome is `refer`, `caution`, `incomplete` or `nothing-found`, the first that applies. `nothing-found` is no
 * clearance. An unanswered question stays unanswered: `complete` is false, `unanswered` lists it, and the outcome is
 * `incomplete` where nothing else was found.
 *
 * The thrombosis score adds up its published points; from 3 on it refers (two steps: 3 and more; three steps: 4 and
 * more). It was made for people in hospital with an illness and does not count operations: a low score is not a low
 * risk, and after an operation a caution says so.
 *
 * Give the document to `planSession` as `screening`: its findings, its date and what is open go into the plan.
 *
 * - Evidence: every finding has the grade of its place on the list; whether it refers or asks for care is
 *   `practice`, save for the blood-pressure lines and the cut-offs of the score.
 * - Source: Front Physiol 2022;13:808622, Tables 1, 3 and 5 (Table 5 read in part); cut-offs Chest 2011;140:706–714
 *   and J Am Heart Assoc 2014;3(6):e001152.
 *
 * @function
 * @param request - `answers`: `yes`, `no` or `unknown` by code; `ageYears` [years]; resting pressures [mmHg]; `date`
 *   (`YYYY-MM-DD`), since which a stop is in force.
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
export const screen = withInput(function screen(request: ScreeningRequest): Screening {
  const value = readAnswers(screeningRequest, SCREENING_ANSWERS, request);
  const { ageYears, systolicMmHg, diastolicMmHg, answers } = value;
  const thrombosisScore = scoreOf(value);
  const findings = findingsOf(value, thrombosisScore.value);
  return ownDocument({
    ...head('screening', 1),
    request: value,
    ...concluded(findings, screeningItems, answers, { ageYears, systolicMmHg, diastolicMmHg }),
    thrombosisScore,
    disclaimers: [
      disclaimer('screening-clears-no-one'),
      disclaimer('local-codes-decide'),
      disclaimer('screening-again'),
    ],
  });
});
