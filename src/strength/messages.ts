import { cautionsOf, sentencesOf } from '../answer/sentences.js';
import type { Catalogue } from '../answer/messages.js';

/** The sentences of maxima, loads and plates. */
export const strengthMessages = {
  'first-test-too-low':
    'An untrained person lifts more in a second test: on average {low}–{high} % more in 39 people. Test again before you set loads. No adjustment made.',
  'many-repetitions':
    'Above 10 repetitions the equations disagree. Test with a heavier load if the person tolerates it.',
  'outside-fitted-repetitions':
    '{repetitions} repetitions are outside the {low}–{high} that {equation} was fitted on. Expect a larger error than the interval shows.',
  'outside-population':
    '{equation} was fitted on {sample}; {field} {value} is outside that. Do not set loads from it without a test.',
  'population-locked':
    '{equation} holds only for its own sample: {sample}. Its constant is close to their mean. Do not set loads from it.',
  'load-far-from-fitted':
    'This load is far from those {equation} was fitted on. Its 95 % interval reaches zero, or the answer lies outside the interval of brzycki-1993. Do not set loads from it.',
  'younger-than-samples':
    'We know of no sample of {equation} with people under 18. Let a practitioner decide whether and how to test.',
  'load-not-at-percent':
    '{equation} needs a load of {asked} % of 1RM. This load is {percentOneRepMax:%} of the answer.',
  'older-adults-under':
    'Six equations were 1–10 kg too low on all 11 machine lifts of 51 adults aged 70.7 ± 6.1 years.',
  'below-restricted-loads': '{percentOneRepMax:%} of 1RM is below the {low}–{high} % recommended with restriction.',
  'above-restricted-loads': '{percentOneRepMax:%} of 1RM is above the {low}–{high} % recommended with restriction.',
  'reserve-inaccurate':
    'People misjudge repetitions in reserve by about one when 0–5 remain, and by more than two when 7 or more remain. Long, light sets are worst.',
  'reserve-underestimated':
    'On average people can do 0.95 repetitions more than they report (95 % confidence interval 0.17–1.73). The 1RM is therefore more likely above the answer than below. No adjustment made.',
  'reserve-long-set':
    'People estimate repetitions in reserve poorly in sets of more than 12. Use a heavier load, or go to failure.',
  'load-could-be-added': 'At 9.5 no repetition was left, but more load was possible. The 1RM is above the answer.',
  'maximum-without-error':
    'The true percentage of this load is unknown: the 1RM has no interval, or one that reaches zero. Test the 1RM where that is allowed.',
  'percent-moved': 'The nearest load you can set, {load:unit}, is {reached:%} of 1RM instead of {percentOneRepMax} %.',
  'practitioner-equation': '{equation} comes from practice. No published data support it.',
  'basis-not-known': 'We have not checked whether data support {equation}.',
  'coefficients-unconfirmed': 'We wrote the coefficients of {equation} from memory. We have not read them in any text.',
  'maximum-not-tested': 'The 1RM is estimated from {repetitions} repetitions, not tested.',
  'maximum-of-other-limb':
    'The 1RM is that of the other limb. This limb may be weaker, so the true percentage may be well above the one shown. Test this limb where that is allowed.',
  'plates-run-out': 'The heaviest load you can set is {most:unit}.',
} as const satisfies Catalogue;

/** The sentences of percentages, of repetitions and of equations compared: no maximum and no load has them. */
export const comparisonMessages = {
  'static-share': 'The share was measured while holding still. In a fast repetition the peak was 68–98 % of body mass.',
  'equations-spread':
    'The equations range from {lowest:unit} to {highest:unit}, which is {percent:%} of the median. We do not know which is right for this person.',
  'equation-needs': '{equation} needs {field} to be {expected}; received {received}.',
  'equation-by-name-only': '{equation} holds only for its own sample. We use it only when you name it.',
  'answer-below-load': '{equation} gives less than the load lifted, so it does not apply here.',
  'bias-none': 'No mean difference from the measured 1RM: {lifts}, {who}.',
  'bias-best': 'Among the most accurate: {lifts}, {who}.',
  'bias-under': 'Below the measured 1RM: {lifts}, {who}.',
  'bias-over': 'Above the measured 1RM by 21.2 kg: {lifts}, {who}.',
  'bias-not-known': 'We found no published bias {lift}.',
  'bias-two-equations':
    'Two equations were off by {low:kg} to {high:kg} on average in 27 men ({lift}). The text we read does not name them.',
  'bias-none-accurate': 'None of nine equations was accurate for the biceps curl of 57 men at 80 % of 1RM.',
  'people-differ':
    'People differ widely. At 80 % of 1RM in the leg press, eight weightlifters did 11.8 ± 2.7 repetitions and eight runners 19.8 ± 6.4.',
  'charts-differ':
    'The charts disagree. At 11 repetitions the training load chart prints nothing and the textbook table 70 %. At 12 they print 70 % and 67 %.',
  'maximal-intent':
    'This holds only for repetitions lifted as fast as possible. Do not use it for paced repetitions, such as light sets to a metronome.',
  'velocity-between-people': 'At 50–80 % of 1RM, velocity differs between people by 9–25 % (coefficient of variation).',
  'full-squat-velocity-over-reads':
    'This equation over-reads. In 52 other people, its form for mean velocity read 6–24 points of 1RM too high, most with light loads. Prefer your own load–velocity line from three loads.',
  'above-the-maximum':
    'The reading gives more than 100 %, so this person moves more slowly at 1RM than the sample did. Treat the load as close to 1RM.',
} as const satisfies Catalogue;

export type ComparisonCode = keyof typeof comparisonMessages;
// One name a line: bundlers keep a pattern of names whole.
export const caution = cautionsOf(strengthMessages);
export const comparisonCaution = cautionsOf(comparisonMessages);
export const comparisonSentence = sentencesOf(comparisonMessages);
