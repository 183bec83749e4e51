import type { SourceId } from '../evidence/sources.js';
import { planMessages, type PlanCode } from './messages.js';
import type { StandingSentence } from './types.js';

const say = (code: PlanCode, source?: SourceId): StandingSentence => ({
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

/** Signs to let the cuff down at once. */
export const stopSigns = (): StandingSentence[] => [
  say('stop-numbness'),
  say('stop-pain'),
  say('stop-dizziness'),
  say('stop-cold-limb'),
  say('stop-refill'),
  say('stop-chest'),
  say('stop-vision'),
  say('stop-movement'),
];
