import { speaker } from '../answer/answer.js';
import type { Catalogue } from '../answer/messages.js';

/** What the strength floor says. */
export const strengthMessages = {
  'one-repetition-is-the-maximum': 'A load lifted once to failure is the maximum itself.',
  'reserve-added': 'Repetitions in reserve are added to the repetitions done.',
  'rational-form': 'The rational form with 36 and 37 is used, not the original’s four-decimal form.',
  'decimal-form':
    'The original four-decimal form is used; the rational form with 36 and 37 is 0.03 % lower at 10 repetitions.',
  'constant-one-thirtieth': 'The constant 1/30 is used; 0.033 and 0.0333 are in circulation too.',
  'retest-error': 'The error is the median coefficient of variation of repeated tests, {percent} %.',
  'error-of-publication': 'The error is the one published with {equation}, on its own sample; elsewhere it is larger.',
  'error-share': 'The error is {percent} % of the maximum, the wide end of what published comparisons add up to.',
  'no-error-above-ten': 'No error figure is at hand above 10 repetitions, so there is no interval.',
  'regression-of-its-device':
    'The intercept belongs to the device and people of the sample; on another device it may be off.',
  'regression-unit-inferred': 'The unit is inferred from that of the published error.',
  'cubic-form-inferred':
    'The coefficients were read in the publication; that they form a cubic in the repetitions is inferred.',
  'fitted-on': '{equation} was fitted on {sample}.',
  'taken-without-knowing-more':
    '{equation} is taken, as the lift and the person are not told or no equation fits them better.',
  'taken-as-fitted':
    '{equation} is taken because it was fitted on this lift, such people and these repetitions: {sample}.',
  'taken-as-compared':
    '{equation} is taken because a published comparison found it among the most accurate for this lift and sex, near 80 % of the maximum.',
  'many-repetitions':
    'Above 10 repetitions the equations spread apart; test with a heavier load where that is tolerated.',
  'outside-fitted-repetitions':
    '{repetitions} repetitions are outside the {low} to {high} that {equation} was fitted on; take the answer as less certain than its interval.',
  'outside-population':
    '{equation} was fitted on {sample}; {field} {value} is outside that. Do not set loads from it without a test.',
  'population-locked':
    '{equation} holds for its own sample and for no one else: {sample}. Its constant is their mean in disguise. Do not set loads from it.',
  'load-far-from-fitted':
    'This load is far from those {equation} was fitted on: its error leaves nothing of the answer, or the answer lies outside the interval of brzycki-1993. Do not set loads from it.',
  'younger-than-samples':
    'No sample of {equation} is known to hold people under 18. A practitioner decides whether and how to test them.',
  'load-not-at-percent':
    '{equation} asks for a load of {asked} % of the maximum; this one is {percent} % of the answer.',
  'older-adults-under':
    'In 51 adults of 70.7 ± 6.1 years, six repetition equations gave less than the measured maximum on all of 11 machine lifts, by 1 to 10 kg.',
  'below-restricted-loads':
    '{percent} % is below the {low} to {high} % of the maximum that guidance gives with restriction.',
  'above-restricted-loads':
    '{percent} % is above the {low} to {high} % of the maximum that guidance gives with restriction.',
  'reserve-inaccurate':
    'People misjudge repetitions in reserve by about one when 0 to 5 remain and by more than two when 7 or more remain; worst in long, light sets.',
  'reserve-under-told':
    'On average people can do 0.95 repetitions more than they tell (95 % confidence 0.17 to 1.73), so the maximum is rather above than below. Nothing was shifted.',
  'reserve-long-set':
    'Repetitions in reserve are told poorly in sets of more than 12 repetitions. Use a heavier load, or go to failure.',
  'reserve-of-rating':
    'The scale of repetitions in reserve gives {from} to {to} in reserve at {rating}; the middle is taken.',
  'load-could-be-added':
    'At 9.5 no repetition was left but more load could have been lifted: the maximum is above the answer.',
  'maximum-without-error':
    'How wrong the maximum may be is not known, or so much that nothing is left of it: what percentage this load really is, cannot be told.',
  'percent-moved': 'The nearest weight there is, {load}, is {reached} % of the maximum and not {percent} %.',
  'practitioner-equation': '{equation} comes from practice, without published data behind it.',
  'basis-not-known': 'Whether data stand behind {equation} is not at hand.',
  'coefficients-unconfirmed': 'The coefficients of {equation} are written from memory; they were not read in any text.',
  'maximum-not-tested': 'The maximum is estimated from {repetitions} repetitions, not tested.',
  'maximum-of-other-limb':
    'The maximum is that of the other limb. How much weaker this limb is, is not known here: the true percentage may be well above the one told. Test this limb where that is allowed.',
  'body-mass-counted': 'The maximum counts the share of body mass that is lifted, and so does the percentage.',
  'static-share': 'The share is that of holding still; the peak in a fast repetition was 68 to 98 % of body mass.',
  'share-from-segments':
    'The share is what is left of body mass without the segments that do not move; its spread is not at hand.',
  'equations-spread':
    'The equations run from {lowest} to {highest}: {percent} % of the middle one. Which is right for this person is not known.',
  'equation-needs': '{equation} needs {field} to be {expected}; received {received}.',
  'equation-by-name-only': '{equation} holds for its own sample alone and is used only when it is named.',
  'answer-below-load': '{equation} gives less than the load that was lifted, so it does not hold here.',
  'bias-none': 'No mean difference from the measured maximum: {lifts}, {who}.',
  'bias-best': 'Among the most accurate: {lifts}, {who}.',
  'bias-under': 'Below the measured maximum: {lifts}, {who}.',
  'bias-over': 'Above the measured maximum of {who} by 21.2 kg: {lifts}.',
  'bias-not-known': 'Its bias {lift} is not known.',
  'bias-two-equations':
    'Two equations, not named in the text that was read, were off by {low} to {high} kg on average in 27 men ({lift}).',
  'bias-none-accurate': 'None of nine equations was accurate in the arm curl of 57 men at 80 % of the maximum.',
  'people-differ':
    'People differ widely: at 80 % of a leg-press maximum eight weightlifters did 11.8 ± 2.7 repetitions and eight runners 19.8 ± 6.4.',
  'charts-differ':
    'The charts differ: at 11 repetitions the training load chart prints nothing and the textbook table 70 %; at 12 they print 70 % and 67 %.',
  'chart-as-printed': 'The percentage is as printed in the {chart}.',
  'maximal-intent':
    'It holds for repetitions lifted as fast as possible. It does not hold for paced repetitions, so not for light sets to a metronome.',
  'velocity-between-people':
    'At 50 to 80 % of the maximum, velocity differs between people by 9 to 25 % (coefficient of variation).',
  'mean-propulsive-velocity': 'The velocity is the mean of the propulsive phase.',
  'mean-velocity': 'The velocity is the average of the lifting phase.',
  'above-the-maximum':
    'A load that was lifted is at most the maximum. Above 100 % the reading says that this person’s own at the maximum differs from the sample’s: take the load as near the maximum.',
  'relative-load-no-error': 'No error figure of {equation} is at hand, so there is no interval.',
  'loaded-nearest': 'Wanted is {target}; of what can be loaded this is nearest.',
  'loaded-not-above': 'Wanted is {target}; of what can be loaded this is nearest not above it.',
  'plates-run-out': 'The heaviest that can be loaded is {most}.',
  'plates-in-pairs': 'Plates go on in pairs, the same on each side; a plate without a partner stays off.',
} as const satisfies Catalogue;

export type StrengthCode = keyof typeof strengthMessages;
export const { assumption, caution } = /* @__PURE__ */ speaker(strengthMessages);
