import type { Caution } from '../answer/answer.js';
import { InputError, issue, isInputError, moved, type Path, describe } from '../answer/issues.js';
import { checkDay } from './day-check.js';
import type { DayCheck, DayCheckRequest, Screening, ScreeningRequest } from './questions.js';
import { screen } from './screen.js';
import { screeningCaution } from './screening-messages.js';
import { need } from '../answer/needs.js';
import { AGAIN } from './needs.js';

interface Answered<R> {
  readonly request: R;
  readonly outcome: string;
  readonly complete: boolean;
}

/** A document of answers, worked out again from them. One that says something else was edited, or is of another version. */
function again<R, D extends Answered<R>>(make: (request: R) => D, given: D, place: Path): D {
  let made: D;
  try {
    made = make(given.request);
  } catch (error) {
    if (!isInputError(error)) throw error;
    throw new InputError(error.issues.map((found) => moved(found, (path) => [...place, 'request', ...path])));
  }
  for (const name of ['outcome', 'complete'] as const) {
    if (made[name] === given[name]) continue;
    const expected = need(AGAIN, { value: String(made[name]) });
    throw new InputError([issue('wrong-relation', [...place, name], expected, describe(given[name]))]);
  }
  return { ...given, ...made };
}

export const screeningAgain = (given: Screening, place: Path): Screening =>
  again<ScreeningRequest, Screening>(screen, given, place);
export const dayCheckAgain = (given: DayCheck, place: Path): DayCheck =>
  again<DayCheckRequest, DayCheck>(checkDay, given, place);

/** The findings of a document of answers as cautions of the document it is given to. */
const converted = ({ findings }: Pick<Screening, 'findings'>, place: string): Caution[] =>
  findings.map(({ outcome: _, evidence: __, path = [], ...message }) => ({ ...message, path: [place, ...path] }));

/** What a screening brings into a plan: that it is incomplete, which a brief page has to show, and its findings. */
export const screeningCautions = (screening: Screening): Caution[] => [
  ...(screening.complete
    ? []
    : [
        screeningCaution(
          'caution',
          'screening-incomplete',
          { count: screening.unanswered.length },
          { path: ['screening', 'unanswered'] },
        ),
      ]),
  ...converted(screening, 'screening'),
];

/** What a check of the day brings into a plan or a record of `date`: its findings, what is open, and another day. */
export function dayCheckCautions(check: DayCheck, date: string | undefined): Caution[] {
  const { complete, unanswered, request } = check;
  const found: Caution[] = [];
  if (!complete) {
    const path = ['dayCheck', 'unanswered'];
    found.push(screeningCaution('caution', 'day-check-incomplete', { count: unanswered.length }, { path }));
  }
  if (date !== undefined && date !== request.date) {
    const path = ['dayCheck', 'request', 'date'];
    found.push(screeningCaution('caution', 'day-check-other-day', { checked: request.date, date }, { path }));
  }
  return [...found, ...converted(check, 'dayCheck')];
}
