import type { SourceId } from '../evidence/sources.js';
import type { Catalogue } from '../answer/messages.js';
import { documentMessages, type PlanCode } from './document-messages.js';
import { planMessages } from './messages.js';
import { symptoms } from './symptoms.js';

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

/** What every plan says, with a cuff or without. */
export const disclaimers = (cuffed: boolean): Disclaimer[] => [
  disclaimer('not-cleared'),
  disclaimer('local-codes-decide'),
  disclaimer('screen-first', 'risk-stratification-2022'),
  disclaimer('supervise-first-sessions', 'case-report-2016'),
  ...(cuffed ? [disclaimer('reperfuse-between-exercises')] : []),
  disclaimer('side-effects-usual', 'practitioner-survey-2018'),
  ...(cuffed ? [disclaimer('burn-usual')] : []),
  disclaimer('watch-afterwards'),
];

/** What to stop at, most severe first: the symptoms of a session, from the one table of symptoms. */
export const stopCriteria = (cuffed: boolean): Disclaimer[] =>
  symptoms
    .filter(({ when, cuff }) => when === 'session' && (cuffed || !cuff))
    .map(({ code, source }) => disclaimer(code, source));
