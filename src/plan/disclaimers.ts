import type { SourceId } from '../evidence/sources.js';
import type { Catalogue } from '../answer/messages.js';
import { documentMessages, type PlanCode } from './document-messages.js';
import { planMessages } from './messages.js';
import { STOP_CRITERIA, symptomOf } from './symptoms.js';

/** A sentence of every plan, by its code. */
export interface DisclaimerCode {
  /** Code of the sentence. */
  readonly code: PlanCode;
  /** Source of the sentence; left out where there is none. */
  readonly source?: SourceId;
}

/** A sentence of every plan. */
export interface Disclaimer extends DisclaimerCode {
  /** The English sentence. */
  readonly text: string;
}

const disclaimersOf =
  <C extends Catalogue>(catalogue: C) =>
  (code: keyof C & PlanCode, source?: SourceId): Disclaimer => ({
    code,
    text: catalogue[code]!,
    ...(source && { source }),
  });
/** A sentence of a plan, with its source. */
export const disclaimer = disclaimersOf(planMessages);
const ofDocument = disclaimersOf(documentMessages);
/** The sentences that always apply to a document. */
export const documentDisclaimers = (...codes: readonly PlanCode[]): Disclaimer[] =>
  codes.map((code) => ofDocument(code));

/** What is about the cuff, and left out of a plan without one. */
const OF_CUFF: readonly (keyof typeof planMessages)[] = ['reperfuse-between-exercises', 'burn-usual'];

/** What every plan says, with a cuff or without. */
export const disclaimers = (cuffed: boolean): Disclaimer[] =>
  ALL_PLANS.filter(([code]) => cuffed || !OF_CUFF.includes(code)).map(([code, source]) => disclaimer(code, source));

const ALL_PLANS: readonly (readonly [code: keyof typeof planMessages, source?: SourceId])[] = [
  ['not-cleared'],
  ['local-codes-decide'],
  ['screen-first', 'risk-stratification-2022'],
  ['supervise-first-sessions', 'case-report-2016'],
  ['reperfuse-between-exercises'],
  ['side-effects-usual', 'practitioner-survey-2018'],
  ['burn-usual'],
  ['watch-afterwards'],
];

/** What to stop at, most severe first: the symptoms of a session, from the one table of symptoms. */
export const stopCriteria = (cuffed: boolean): Disclaimer[] =>
  STOP_CRITERIA.filter((code) => cuffed || !symptomOf(code).cuff).map((code) =>
    disclaimer(code, symptomOf(code).source),
  );
