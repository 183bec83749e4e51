import { speaker } from '../answer/answer.js';
import type { Catalogue } from '../answer/messages.js';

/** What an estimate of an occlusion pressure says: apart, so that an app that only estimates ships no other sentence. */
export const estimateMessages = {
  'readings-exact':
    'The tape and the blood-pressure reading are taken as exact: their own errors are not in the interval.',
  'readings-partly-exact':
    'Taken as exact, with no error of its own in the interval: {names}. Errors of readings are taken as independent.',
  'reading-errors-given': 'The errors of the readings were given by the caller, and are taken as independent.',
  'girth-site-not-stated': 'Where along the limb the girth was taken is not in the text that was read.',
  'girth-site-third': 'Thigh girth at 33 % of thigh length from the inguinal crease (recalled, unconfirmed).',
  'fitted-range-not-known': 'The range of {names} in the sample is not at hand, so it was not checked.',
  'width-taken-from-publication':
    'The abstract gives 18 cm as the “circumference” of the cuff; it is taken as the width.',
  'error-from-means': 'The error is that of the formula on {count} published group means, and their spread.',
  'error-from-fit': 'The error of the equation is the residual of the sample it was fitted on.',
  'error-of-left-out': 'The error of the equation is that of each person of its sample, foretold from all the others.',
  'error-of-curve': 'The curve and its errors come from {count} published group means, not from persons’ own readings.',
  'new-person-and-laboratory': 'The interval is for one new person, measured in a new laboratory.',
  'error-not-known': 'No standard deviation of its error was published, so there is no interval.',
  'laboratories-differ':
    'What it costs to carry the equation to another laboratory is taken from published group means.',
  'own-laboratory':
    'The equation is taken to be used in the laboratory that fitted it, on people like its sample: how far laboratories differ is not in the interval.',
  'arm-posture-not-known':
    'What another posture changes on the arm is not at hand (highest seated, lowest standing): it is not in the interval.',
  'own-working': 'The pooled curve is this project’s own working from published group means, not a published equation.',
  'nominal-person':
    'We assume that each published group mean is that of people with 120/70 mmHg and a thigh of 55 cm or an arm of 32 cm.',
  'widths-assumed':
    'Two publications do not report their cuff widths. We assume 5 cm for “narrow”, 13.5 cm for “wide” and 12 cm for a surgical cuff.',
  'circumference-site-not-given-thigh':
    'You did not say where the circumference was taken. Use mid-limb, the middle of the thigh: under the cuff, just below the buttock, a thigh is 7–8 cm bigger, and the estimate would be 7–45 mmHg too high.',
  'circumference-under-cuff-thigh':
    'The circumference was taken under the cuff, and the equations are for mid-limb, the middle of the thigh. Under the cuff a thigh is 7–8 cm bigger, so the estimate may be 7–45 mmHg too high. Measure at mid-limb.',
  'circumference-site-not-given-arm':
    'You did not say where the circumference was taken. Use mid-limb, the middle of the upper arm.',
  'circumference-under-cuff-arm':
    'The circumference was taken under the cuff, and the equations are for mid-limb, the middle of the upper arm. Measure at mid-limb.',
  'too-low-above':
    '{equation} is too low above {limit} cm: its laboratory could not inflate above 300 mmHg. Measure, or use the pooled curve.',
  'index-band-12': 'Published band for healthy legs with a 12 cm cuff: 1.2 to 1.4 times the systolic pressure.',
  'index-band-18': 'Published band for healthy legs with an 18 to 20 cm cuff: 1.0 to 1.2 times the systolic pressure.',
  'padding-from-caller': 'The tissue padding coefficient is the caller’s: its published table is not at hand.',
  'width-ratio-bias':
    'Beside published group means the formula is too low with wide cuffs (thigh at 18 cm 121 for 170 mmHg, arm at 13 cm 111 for 133) and too high with narrow ones on the arm (5 cm 177 for 139).',
  'padding-too-low': 'In 143 patients this rule fell below the measured occlusion pressure in 62 %.',
  'width-not-in-formula': 'The formula knows no cuff width: it is not for narrow cuffs.',
  'estimate-is-a-start':
    'An estimated occlusion pressure is a starting point. Measure it on this limb, with this cuff, in this posture, where you can.',
  'equation-unconfirmed': 'The coefficients of {equation} are written from memory; they were not read in any text.',
  'outside-fitted-range':
    '{name} {value} is outside {low} to {high}, the range {equation} was fitted on; take the answer as less certain than its interval.',
  'posture-differs': '{equation} was fitted {fitted}, and the pressure is asked for {asked}. Nothing was shifted.',
  'posture-ignored': '{equation} has no posture term. Nothing was shifted.',
  'posture-may-differ':
    'The posture {equation} was fitted in is not in the text that was read, and the pressure is asked for {asked}. Nothing was shifted.',
  'posture-shifts-thigh':
    'Published thigh pressures were 17 to 61 mmHg higher seated than supine, and about 55 higher standing.',
  'posture-shifts-arm': 'On the arm the pressure was highest seated and lowest standing; by how much is not at hand.',
  'posture-not-stated': 'The posture {equation} was fitted in is not in the text that was read.',
  'cuff-width-below-published':
    'The cuff width of {value} cm is below {limit} cm, the narrowest that most studies used. Check it: if that was inches, it is {converted} cm.',
  'narrow-cuff-on-thigh':
    'With a narrow cuff on the thigh, occlusion pressure cannot be estimated with precision. Use a wider cuff, or measure.',
  'blood-pressure-refer':
    'Blood pressure {systolic}/{diastolic} mmHg at rest. Too high: {high} (from {systolicLine} systolic or {diastolicLine} diastolic). Do not train. See a doctor first.',
  'blood-pressure-very-high':
    'Blood pressure {systolic}/{diastolic} mmHg at rest. Too high: {high} (from {systolicLine} systolic or {diastolicLine} diastolic). Do not use a cuff until the treating clinician agrees.',
  'blood-pressure-high':
    'Blood pressure {systolic}/{diastolic} mmHg at rest. High: {high} (from {systolicLine} systolic or {diastolicLine} diastolic). Ask the treating clinician before you train.',
  'below-diastolic':
    'The answer is below the diastolic pressure of {diastolic} mmHg, which no occlusion pressure can be. Do not use it: measure.',
  'outside-thigh-index':
    'The answer is {ratio} times the systolic pressure; with a wide cuff on a thigh, lying down, 0.9 to 1.6 is to be expected.',
} as const satisfies Catalogue;

export type EstimateCode = keyof typeof estimateMessages;
export const { assumption, caution } = /* @__PURE__ */ speaker(estimateMessages);
