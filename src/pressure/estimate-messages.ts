import type { Caution } from '../answer/answer.js';
import { cautionsOf } from '../answer/sentences.js';
import type { Catalogue } from '../answer/messages.js';
import type { SourceId } from '../evidence/sources.js';
import type { Quantity } from '../quantity/quantity.js';

/**
 * What an estimate of an occlusion pressure says: apart, so that an app that only estimates ships no other sentence.
 */
export const estimateMessages = {
  'circumference-site-not-given-thigh':
    'You did not say where the circumference was taken. Measure at mid-limb, the middle of the thigh. Under the cuff, just below the buttock, a thigh is 7–8 cm bigger, and the estimate would be 7–45 mmHg too high.',
  'circumference-under-cuff-thigh':
    'The circumference was taken under the cuff, and the equations are for mid-limb, the middle of the thigh. Under the cuff a thigh is 7–8 cm bigger, so the estimate may be 7–45 mmHg too high. Measure at mid-limb.',
  'circumference-site-not-given-arm':
    'You did not say where the circumference was taken. Measure at mid-limb, the middle of the upper arm.',
  'circumference-under-cuff-arm':
    'The circumference was taken under the cuff, and the equations are for mid-limb, the middle of the upper arm. Measure at mid-limb.',
  'too-low-above':
    '{equation} is too low above {limit:cm}: its laboratory could not inflate above 300 mmHg. Measure, or use the pooled curve.',
  'estimate-is-a-start':
    'An estimated occlusion pressure is a starting point. Measure it on this limb, with this cuff, in this posture, where you can.',
  'equation-unconfirmed': 'We wrote the coefficients of {equation} from memory. We have not read them in any text.',
  'outside-fitted-range':
    '{field} {value:unit} is outside {low:unit} to {high:unit}, the range {equation} was fitted on. Expect a larger error than the interval shows.',
  'posture-differs': '{equation} was fitted {fitted}, and you asked for {asked}. No adjustment made.',
  'posture-ignored': '{equation} has no posture term. No adjustment made.',
  'posture-may-differ':
    'We did not find the posture {equation} was fitted in, and you asked for {asked}. No adjustment made.',
  'posture-shifts-thigh':
    'Published thigh pressures were 17 to 61 mmHg higher seated than supine, and about 55 higher standing.',
  'posture-shifts-arm':
    'On the arm the pressure was highest seated and lowest standing. The paper does not report by how much.',
  'posture-not-stated': 'We did not find the posture {equation} was fitted in.',
  'cuff-width-below-published':
    'The cuff width of {value:cm} is below {limit:cm}, the narrowest that most studies used. Check it: if that was inches, it is {converted} cm.',
  'narrow-cuff-on-thigh':
    'With a narrow cuff on the thigh, occlusion pressure cannot be estimated with precision. Use a wider cuff, or measure.',
  'blood-pressure-refer':
    'Blood pressure {systolic}/{diastolic} mmHg at rest. Too high: {high} (from {systolicLine} systolic or {diastolicLine} diastolic). Do not train. See a doctor first.',
  'blood-pressure-very-high':
    'Blood pressure {systolic}/{diastolic} mmHg at rest. Too high: {high} (from {systolicLine} systolic or {diastolicLine} diastolic). Do not use a cuff until the treating clinician agrees.',
  'blood-pressure-high':
    'Blood pressure {systolic}/{diastolic} mmHg at rest. High: {high} (from {systolicLine} systolic or {diastolicLine} diastolic). Ask the treating clinician before you train.',
  'below-diastolic':
    'The answer is below the diastolic pressure of {diastolic} mmHg. No occlusion pressure can be that low. Do not use it: measure.',
  'outside-thigh-index':
    'The answer is {ratio} times the systolic pressure. With a wide cuff on a thigh, lying down, expect 0.9–1.6 times.',
} as const satisfies Catalogue;

export const caution = cautionsOf(estimateMessages);

/** A reading outside the range that an equation was fitted on; the values hold its code, the text its name. */
export function outsideRange(
  field: string,
  { name, unit }: Pick<Quantity, 'name' | 'unit'>,
  value: number,
  { low, high }: { readonly low: number; readonly high: number },
  equation: string,
  source?: SourceId,
): Caution {
  const values = { field, value, low, high, unit, equation };
  return {
    ...caution('caution', 'outside-fitted-range', { ...values, field: name }, { path: [field], source }),
    values,
  };
}
