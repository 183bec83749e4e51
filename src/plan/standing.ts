import type { SourceId } from '../evidence/sources.js';
import { planMessages, type PlanCode } from './messages.js';
import { STOP_CRITERIA, symptomOf } from './symptoms.js';

/** A sentence of every plan. */
export interface StandingSentence {
  /** Code of the sentence. */
  readonly code: PlanCode;
  /** The English sentence. */
  readonly text: string;
  /** Source of the sentence; left out where there is none. */
  readonly source?: SourceId;
}

/** A sentence of the catalogue, with its source. */
export const say = (code: PlanCode, source?: SourceId): StandingSentence => ({
  code,
  text: planMessages[code],
  ...(source && { source }),
});

/** What is about the cuff, and left out of a plan without one. */
const OF_CUFF: readonly PlanCode[] = ['reperfuse-between-exercises', 'burn-usual'];

/** What every plan says, with a cuff or without. */
export const standingSentences = (cuffed: boolean): StandingSentence[] =>
  ALL_PLANS.filter(([code]) => cuffed || !OF_CUFF.includes(code)).map(([code, source]) => say(code, source));

const ALL_PLANS: readonly (readonly [code: PlanCode, source?: SourceId])[] = [
  ['not-cleared'],
  ['local-codes-decide'],
  ['screen-first', 'risk-stratification-2022'],
  ['supervise-first-sessions', 'case-report-2016'],
  ['reperfuse-between-exercises'],
  ['side-effects-usual', 'practitioner-survey-2018'],
  ['burn-usual'],
  ['watch-afterwards'],
];

/** What to stop at, gravest first: the symptoms of a session, from the one table of symptoms. */
export const stopSigns = (cuffed: boolean): StandingSentence[] =>
  STOP_CRITERIA.filter((code) => cuffed || !symptomOf(code).cuff).map((code) => say(code, symptomOf(code).source));
