import type { DayCode } from '../answer/codes.js';
import { ownDocument } from '../answer/own.js';
import { withInput } from '../answer/with-input.js';
import { disclaimer } from './disclaimers.js';
import { head } from './document-parts.js';
import { DAY_ANSWERS } from './needs.js';
import { SEVERE_PAIN_FROM } from './pain.js';
import {
  concluded,
  findingsOfReplies,
  outcomeOf,
  pressureFindings,
  questionsOf,
  readAnswers,
  type DayCheck,
  type DayCheckRequest,
  type ScreeningFinding,
  type ScreeningQuestion,
} from './questions.js';
import { dayCheckRequest } from './schema-requests.js';
import { dayItems, PAIN_LINE } from './screening-items.js';
import { screeningCaution } from './screening-messages.js';

/**
 * The questions of {@link checkDay}.
 *
 * @returns each question with its code, what a yes leads to, its grade and its source.
 *
 * @example
 * ```ts
 * import { dayQuestions } from 'cuffwork/plan';
 * dayQuestions().find(({ code }) => code === 'today-illness')?.question; // => 'Do you have a fever, or do you feel ill?'
 * ```
 */
export const dayQuestions = (): ScreeningQuestion<DayCode>[] => questionsOf(dayItems);

function painFindings(pain: number | undefined): ScreeningFinding[] {
  if (pain === undefined || pain <= PAIN_LINE) return [];
  const path = ['painNow'];
  const message =
    pain >= SEVERE_PAIN_FROM
      ? screeningCaution('stop', 'today-pain-severe', { pain }, { path })
      : screeningCaution('caution', 'today-pain', { pain, line: PAIN_LINE }, { path });
  return [{ ...message, outcome: outcomeOf(message), evidence: 'practice' }];
}

/**
 * A short check on the day, before each session: new symptoms, illness, skin and feeling of the limbs, pain now and
 * blood pressure. It does not replace a screening.
 *
 * A `refer` outcome is a stop: give the document to `planSession` or `recordSession` as `dayCheck`, and the stop stays
 * until a practitioner’s decision lifts it. Pain above 3 of 10 asks to do less; from 8 on it is a stop. Blood pressure
 * has the lines of {@link screen}.
 *
 * - Evidence: every finding has its own grade; which outcome it leads to, and both lines of pain, are `practice`.
 *
 * @function
 * @param request - `date` (`YYYY-MM-DD`); `answers`: `yes`, `no` or `unknown` by code; pressures [mmHg]; `painNow`
 *   [0 to 10].
 * @returns outcome, findings with reasons and sources, what is unanswered; print it with `explain`.
 * @throws InputError naming every wrong field.
 *
 * @example
 * ```ts
 * import { checkDay } from 'cuffwork/plan';
 * const check = checkDay({ date: '2026-03-02', painNow: 1, answers: { 'today-illness': 'yes' } });
 * check.outcome; // => 'refer'
 * check.findings.map(({ code }) => code); // => ['today-illness']
 * checkDay({ date: '2026-03-02', answers: {} }).outcome; // => 'incomplete'
 * ```
 */
export const checkDay = withInput(function checkDay(request: DayCheckRequest): DayCheck {
  const value = readAnswers(dayCheckRequest, DAY_ANSWERS, request);
  const { systolicMmHg, diastolicMmHg, painNow, answers } = value;
  const findings = [
    ...findingsOfReplies(dayItems, answers),
    ...painFindings(painNow),
    ...pressureFindings(systolicMmHg, diastolicMmHg),
  ];
  return ownDocument({
    ...head('day-check', 1),
    request: value,
    ...concluded(findings, dayItems, answers, { systolicMmHg, diastolicMmHg, painNow }),
    disclaimers: [disclaimer('screening-clears-no-one'), disclaimer('local-codes-decide')],
  });
});
