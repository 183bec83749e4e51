import { frozen } from '../quantity/frozen.js';
import type { SourceId } from '../evidence/sources.js';
import { planMessages, type PlanCode } from './messages.js';
import type { StandingSentence } from './types.js';

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
  say('watch-afterwards'),
];

const STOP_SIGNS = [
  'stop-numbness',
  'stop-pain',
  'stop-dizziness',
  'stop-cold-limb',
  'stop-refill',
  'stop-chest',
  'stop-vision',
  'stop-movement',
] as const satisfies PlanCode[];

/**
 * What a record can report: the signs to stop at, and those of the days after. Their texts stand in `messages`.
 *
 * @example
 * ```ts
 * import { symptoms } from 'cuffwork/plan';
 * symptoms.includes('stop-dizziness'); // => true
 * ```
 */
export const symptoms = /* @__PURE__ */ frozen([
  ...STOP_SIGNS,
  'after-bruising',
  'after-dark-urine',
  'after-swelling',
  'after-soreness',
] as const satisfies PlanCode[]);

/** Signs to let the cuff down at once. */
export const stopSigns = (): StandingSentence[] => STOP_SIGNS.map((code) => say(code));
