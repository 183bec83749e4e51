import { cautionsOf } from '../answer/sentences.js';
import type { Catalogue } from '../answer/messages.js';

/** What the pressure layer says, besides the sentences of an estimate and of a target. */
export const pressureMessages = {
  'width-converted':
    'Converted from a cuff of {from:cm} to one of {to:cm} by group means. Cuffs differ: measure with the cuff you use.',
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
  'posture-shifted':
    'Converted from {from} to {to} by group means. People differ widely: measure in the posture of the exercise.',
  'not-an-occlusion-pressure':
    'This is a fixed training pressure, not an occlusion pressure. We do not know what percentage of this limb’s occlusion pressure it is. It may close the artery or do nothing. Take no percentage of it.',
  'arm-outside-bias-range': 'An arm of {value:cm} is outside the 26 to 50 cm that the bias was fitted on.',
} as const satisfies Catalogue;

export const caution = cautionsOf(pressureMessages);

/** What a target says: apart, so that an app that only sets a cuff ships no other sentence. */
export const targetMessages = {
  'chance-limit-holds':
    'Limited by a chance of {limit} % of closing the artery; {percentLop} % would need {wanted:mm[Hg]}.',
  'percent-above-usual': '{percentLop} % is above the {low} to {high} % of occlusion pressure that guidance gives.',
  'percent-below-usual': '{percentLop} % is below the {low} to {high} % of occlusion pressure that guidance gives.',
  'true-percent-not-known':
    'The error of the occlusion pressure is not known. So the true percentage is not known either, nor the chance that the cuff closes the artery.',
  'percent-not-flow': 'A percentage of occlusion pressure is not a percentage of blood flow.',
  'pressure-drifts':
    'Occlusion pressure rises during exercise (34 to 44 mmHg in the arm in one study), so the true percentage falls as the session goes on.',
  'ceiling-reached': 'Limited to {ceiling} mmHg; {percentLop} % would need {wanted:mm[Hg]}.',
} as const satisfies Catalogue;

export const targetCaution = cautionsOf(targetMessages);
