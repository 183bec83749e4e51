import { speaker } from '../answer/answer.js';
import type { Catalogue } from '../answer/messages.js';
import { estimateMessages } from './estimate-messages.js';

/** What the pressure layer says. */
export const pressureMessages = {
  ...estimateMessages,
  'error-between-methods':
    'The error is the spread against a second method, so it holds the second method’s error too.',
  'error-largest-published': 'The error is the largest of the published repeat-measurement errors.',
  'error-given': 'The error was given by the caller.',
  'ratio-to-curve-kept': 'We assume that the pressure keeps its ratio to the pooled curve above diastolic.',
  'posture-ratio': 'We assume that a posture multiplies everyone’s pressure above diastolic by the same factor.',
  'normal-update':
    'We assume that the errors of the estimate and of the measurements are independent, and normal on a log scale.',
  'estimate-holds-measuring':
    'We assume that the error of the estimate includes one measurement error of 10.6 mmHg, which is not counted again.',
  'side-error-from-thigh':
    'We assume that each side differs from the mean of both by 4.9 mmHg (standard deviation), as on the thigh in 42 people.',
  'day-error-from-thigh':
    'We assume that a person’s occlusion pressure differs from day to day by 8.5 mmHg (standard deviation), as on the thigh in 42 people.',
  'width-error-shared': 'Measurements with the same other cuff share one error of carrying them.',
  'bias-published':
    'The bias is the fitted mean of a published quality document; how far a reading lies from it is not at hand.',
  'rule-of-the-trade': 'A rule that gives everyone with the same reading the same pressure.',
  'bands-without-gaps':
    'The bands as they are remembered leave gaps; here each reaches to the next: below 51, 56 and 60 cm.',
  'width-converted':
    'Converted from a cuff of {from} cm to one of {to} cm by group means. Cuffs differ: measure with the cuff you use.',
  'measured-far-from-estimate':
    'Measured {measured}: further from the estimate than the errors of both explain. Check the limb, the cuff and the reading before you use either.',
  'measurements-contradict':
    'The measurements of {first} and {second} mmHg contradict each other: by their own errors such a difference is rarer than 1 in {rarer}. Measure again.',
  'not-measured-that-day':
    'Not measured on this day: we used the person’s usual pressure. Measure before the session if you can.',
  'measured-in-other-posture':
    'The occlusion pressure was measured {from}, and the exercise is {to}. We found no published difference for this {limb} and cuff, so no adjustment was made and the true percentage is unknown. Measure in the posture of the exercise.',
  'measured-on-other-side':
    'The occlusion pressure was measured on the {from} {limb} and is used for the {to} one. The two sides of one person differ. Measure this side.',
  'measured-posture-as-planned': 'The posture of the measurement is not given; we assume that of the plan.',
  'measured-cuff-as-planned': 'The cuff of the measurement is not given; we assume the cuff of the plan.',
  'posture-shifted':
    'Converted from {from} to {to} by group means. People differ widely: measure in the posture of the exercise.',
  'not-an-occlusion-pressure':
    'This is a fixed training pressure, not an occlusion pressure. How much of this limb’s occlusion pressure it is, is not known: it may close the artery or do nothing. Take no percentage of it.',
  'arm-outside-bias-range': 'An arm of {value} cm is outside the 26 to 50 cm that the bias was fitted on.',
  'chance-limit-holds':
    'The limit of {limit} % on the chance of closing the artery holds the setting below the {wanted} mmHg that {percent} % asks for.',
  'percent-above-usual': '{percent} % is above the {low} to {high} % of occlusion pressure that guidance gives.',
  'percent-below-usual': '{percent} % is below the {low} to {high} % of occlusion pressure that guidance gives.',
  'true-percent-unbounded':
    'The occlusion pressure is so uncertain that no upper limit of the true percentage can be given.',
  'occlusion-exact':
    'We take the occlusion pressure you entered as exact, so there is no interval. Enter an estimated or measured one to get one.',
  'true-percent-not-known':
    'How wrong the occlusion pressure may be is not known, so neither is the true percentage, nor the chance that the cuff closes the artery.',
  'percent-not-flow': 'A percentage of occlusion pressure is not a percentage of blood flow.',
  'pressure-drifts':
    'Occlusion pressure rises during exercise (34 to 44 mmHg in the arm in one study), so the true percentage falls as the session goes on.',
  'ceiling-reached':
    'The ceiling of {ceiling} mmHg holds the setting below the {wanted} mmHg that {percent} % asks for.',
} as const satisfies Catalogue;

export type PressureCode = keyof typeof pressureMessages;
export const { assumption, caution } = /* @__PURE__ */ speaker(pressureMessages);
