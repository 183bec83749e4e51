import type { SourceId } from '../evidence/sources.js';
import { planMessages, type PlanCode } from './messages.js';
import { STOP_CRITERIA, symptomOf } from './symptoms.js';

/** A sentence every plan carries. */
export interface StandingSentence {
  readonly code: PlanCode;
  readonly text: string;
  readonly source?: SourceId;
}

/** A sentence of the catalogue, with its source. */
export const say = (code: PlanCode, source?: SourceId): StandingSentence => ({
  code,
  text: planMessages[code],
  ...(source && { source }),
});

/** What every plan says, whoever it is for. */
export const standingSentences = (): StandingSentence[] => [
  say('not-cleared'),
  say('local-codes-decide'),
  say('screen-first', 'risk-stratification-2022'),
  say('supervise-first-sessions', 'case-report-2016'),
  say('reperfuse-between-exercises'),
  say('side-effects-usual', 'practitioner-survey-2018'),
  say('burn-usual'),
  say('watch-afterwards'),
];

/** What to deflate at, gravest first: the symptoms of a session, from the one table of symptoms. */
export const stopSigns = (): StandingSentence[] => STOP_CRITERIA.map((code) => say(code, symptomOf(code).source));
