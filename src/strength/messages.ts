import { speaker } from '../answer/answer.js';
import type { Catalogue } from '../answer/messages.js';

/** What the strength floor says. */
export const strengthMessages = {
  'one-repetition-is-the-maximum': 'A load lifted once to failure is the maximum itself.',
  'reserve-added': 'Repetitions in reserve are added to the repetitions done.',
  'rational-form': 'The rational form with 36 and 37 is used, not the original’s four-decimal form.',
  'constant-one-thirtieth': 'The constant 1/30 is used; 0.033 and 0.0333 are in circulation too.',
  'retest-error': 'The error is the median coefficient of variation of repeated tests, {percent} %.',
  'no-error-above-ten': 'No error figure is at hand above 10 repetitions, so there is no interval.',
  'many-repetitions':
    'Above 10 repetitions the equations spread apart; test with a heavier load where that is tolerated.',
  'far-too-many-repetitions':
    'No equation is known to hold at {repetitions} repetitions to failure. Do not set loads from this number; test again with a load that allows 10 or fewer.',
  'below-restricted-loads': '{percent} % is below the 20 to 40 % of the maximum that guidance gives with restriction.',
  'above-restricted-loads': '{percent} % is above the 20 to 40 % of the maximum that guidance gives with restriction.',
  'reserve-inaccurate':
    'People misjudge repetitions in reserve by about one when 0 to 5 remain and by more than two when 7 or more remain; worst in long, light sets.',
  'percent-moved': 'The nearest weight there is, {load}, is {reached} % of the maximum and not {percent} %.',
  'practitioner-equation': '{equation} comes from practice, without published data behind it.',
  'maximum-not-tested': 'The maximum is estimated from {repetitions} repetitions, not tested.',
} as const satisfies Catalogue;

export type StrengthCode = keyof typeof strengthMessages;
export const { assumption, caution } = /* @__PURE__ */ speaker(strengthMessages);
