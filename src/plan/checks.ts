import type { Caution } from '../answer/answer.js';
import { describe, within, refuse, type Path } from '../answer/issues.js';
import { need } from '../answer/needs.js';
import { checkDay } from './day-check.js';
import { AGAIN } from './needs.js';
import type { DayCheck, Screening } from './questions.js';
import { screen } from './screen.js';
import { screeningCaution } from './screening-messages.js';

/** A document of answers, worked out again from them. One that says something else was edited, or is of another version. */
export function answersAgain<D extends Screening | DayCheck>(given: D, place: Path): D {
  const made = within([...place, 'request'], () =>
    given.document === 'screening' ? screen(given.request) : checkDay(given.request),
  );
  for (const name of ['outcome', 'complete'] as const) {
    if (made[name] === given[name]) continue;
    const expected = need(AGAIN, { value: String(made[name]) });
    refuse('wrong-relation', [...place, name], expected, describe(given[name]));
  }
  return { ...given, ...made };
}

/**
 * What a document of answers brings into a plan or a record of `date`: that it is incomplete, which a brief page has to
 * show, or of another day, and its findings.
 */
export function answersCautions(given: Screening | DayCheck, date: string | undefined): Caution[] {
  const { document, complete, unanswered, findings, request } = given;
  const field = document === 'screening' ? 'screening' : 'dayCheck';
  const found: Caution[] = [];
  if (!complete) {
    const path = [field, 'unanswered'];
    found.push(screeningCaution('caution', `${document}-incomplete`, { count: unanswered.length }, { path }));
  }
  if (document === 'day-check' && date !== undefined && date !== request.date) {
    const path = [field, 'request', 'date'];
    found.push(screeningCaution('caution', 'day-check-other-day', { checked: request.date!, date }, { path }));
  }
  return [
    ...found,
    ...findings.map(({ outcome: _, evidence: __, path = [], ...message }) => ({ ...message, path: [field, ...path] })),
  ];
}
