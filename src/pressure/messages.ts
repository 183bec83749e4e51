import { speaker } from '../answer/answer.js';
import type { Catalogue } from '../answer/messages.js';

/** What the pressure floor says. */
export const pressureMessages = {
  'readings-exact':
    'The tape and the blood-pressure reading are taken as exact: their own errors are not in the interval.',
  'girth-site-not-stated': 'Where along the limb the girth was taken is not in the text that was read.',
  'girth-site-third': 'Thigh girth at 33 % of thigh length from the inguinal crease (recalled, unconfirmed).',
  'fitted-range-not-known': 'The range of {names} in the sample is not at hand, so it was not checked.',
  'width-taken-from-publication':
    'The abstract gives 18 cm as the “circumference” of the cuff; it is taken as the width.',
  'error-from-means': 'The error is that of the formula on {count} published group means, and their spread.',
  'error-from-fit': 'The error is the residual of the sample the equation was fitted on; elsewhere it is larger.',
  'error-between-methods':
    'The error is the spread against a second method, so it holds the second method’s error too.',
  'error-largest-published': 'The error is the largest of the published repeat-measurement errors.',
  'error-given': 'The error was given by the caller.',
  'width-ratio-carries': 'Pressure above diastolic is taken as inversely proportional to cuff width.',
  'estimate-is-a-start':
    'An estimated occlusion pressure is a starting point. Measure it on this limb, with this cuff, in this posture, where you can.',
  'equation-unconfirmed': 'The coefficients of {equation} are written from memory; they were not read in any text.',
  'outside-fitted-range':
    '{name} {value} is outside {low} to {high}, the range {equation} was fitted on; take the answer as less certain than its interval.',
  'posture-differs':
    '{equation} was fitted {fitted}, and the pressure is asked for {asked}. Published thigh pressures were 17 to 61 mmHg higher seated than supine, and about 55 higher standing. Nothing was shifted.',
  'posture-ignored':
    '{equation} has no posture term. Published thigh pressures were 17 to 61 mmHg higher seated than supine, and about 55 higher standing. Nothing was shifted.',
  'posture-not-stated': 'The posture {equation} was fitted in is not in the text that was read.',
  'narrow-cuff-on-thigh':
    'With a narrow cuff on the thigh, occlusion pressure cannot be estimated with precision. Use a wider cuff, or measure.',
  'blood-pressure-refer':
    'Blood pressure {systolic}/{diastolic} mmHg is at or above 180/110: do not train; refer to a physician.',
  'blood-pressure-high':
    'Blood pressure {systolic}/{diastolic} mmHg is at or above 140/90: ask the treating clinician before training.',
  'width-correction-biased':
    'Carried to a {direction} cuff, this correction {bias} against published pairs. Measure with the cuff that will be worn.',
  'percent-above-usual': '{percent} % is above the 40 to 80 % of occlusion pressure that guidance gives.',
  'percent-below-usual': '{percent} % is below the 40 to 80 % of occlusion pressure that guidance gives.',
  'may-occlude':
    'The cuff may close the artery fully: at this setting the true percentage may be {upper} % of occlusion pressure.',
  'true-percent-unbounded':
    'The occlusion pressure is so uncertain that no upper limit of the true percentage can be given.',
  'percent-not-flow': 'A percentage of occlusion pressure is not a percentage of blood flow.',
  'pressure-drifts':
    'Occlusion pressure rises during exercise (34 to 44 mmHg in the arm in one study), so the true percentage falls as the session goes on.',
  'ceiling-reached':
    'The ceiling of {ceiling} mmHg holds the setting below the {wanted} mmHg that {percent} % asks for.',
} as const satisfies Catalogue;

export type PressureCode = keyof typeof pressureMessages;
export const { assumption, caution } = /* @__PURE__ */ speaker(pressureMessages);
