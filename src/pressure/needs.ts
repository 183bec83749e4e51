/** What inputs of pressures are asked for: a constant each, so that an app ships those it uses. */
export const ABOVE_DIASTOLIC = ['above-diastolic', 'above the diastolic pressure of {value:unit}'] as const;
export const BELOW_MEASURED = ['below-measured', 'below the measured pressure of {value:unit}'] as const;
export const LIMB_OF_EQUATION = ['limb-of-equation', "'{limb}' for equation {equation}"] as const;
export const WIDTH_OF_EQUATION = ['width-of-equation', '{width:cm} (± {tolerance}) for equation {equation}'] as const;
export const WIDTHS_OF_EQUATION = [
  'widths-of-equation',
  '{low} to {high:cm} (± {tolerance}) for equation {equation}',
] as const;
export const GIVEN_FOR_EQUATION = ['given-for-equation', 'given, for equation {equation}'] as const;
export const WITH_INTERVAL = [
  'with-an-interval',
  'an answer with an interval, for a limit on the chance of closing the artery',
] as const;
export const CERTAIN_ENOUGH = [
  'certain-enough',
  'a limit that some gauge setting keeps: this occlusion pressure is too uncertain',
] as const;
export const ESTIMATE_MAKERS = [
  'estimate-of-a-side',
  'an answer of estimateOcclusionPressure or estimateWith that names its side',
] as const;
export const ESTIMATE_WITH = [
  'estimate-with',
  'an answer of estimateOcclusionPressure or estimateWith that has {fields}',
] as const;
export const PRESSURE_OR_NUMBER = [
  'occlusion-or-number',
  'an answer of estimateOcclusionPressure, measuredOcclusionPressure, calibrateOcclusionPressure or a correction, or a number',
] as const;
export const LEG_FOR_POSTURE = [
  'leg-for-posture',
  "'leg': no means of another posture are published for the arm",
] as const;
export const STAYS_AT_LEAST = ['stays-at-least', 'a pressure that stays at or above {least:unit}'] as const;
export const STAYS_ABOVE_DIASTOLIC = [
  'stays-above-diastolic',
  'far enough above the diastolic pressure to stay above it when corrected ({value:unit})',
] as const;
export const CONVERSION_ABOVE_DIASTOLIC = [
  'conversion-above-diastolic',
  'one with which the 95 % interval of the conversion stays above the diastolic pressure of {value:unit}; or measure, so that you need no conversion',
] as const;
export const CONVERSION_SPAN = [
  'conversion-span',
  'one with which the 95 % interval of the conversion spans at most a factor of {most}; or measure, so that you need no conversion',
] as const;
export const MEASUREMENT = ['measurement', 'an answer of measuredOcclusionPressure'] as const;
export const OF_MEASUREMENT = ['of-measurement', 'that of measuredOcclusionPressure'] as const;
export const LEAST_ERROR = ['least-error', 'an error of at least {least:unit}'] as const;
export const ABOVE_ESTIMATE_DIASTOLIC = [
  'above-estimate-diastolic',
  'above the diastolic pressure of the estimate, {value:unit}: no artery closes below it, so measure again',
] as const;
export const AS_IN_ESTIMATE = ['as-in-estimate', "'{asked}', as in the estimate"] as const;
export const MEASUREMENTS = ['measurements', 'a list of 1 to {most} answers of measuredOcclusionPressure'] as const;
export const AGREEING = ['agreeing', 'measurements that agree within their errors; measure again'] as const;
export const RESULT_ABOVE_DIASTOLIC = [
  'result-above-diastolic',
  'measurements whose result is above the diastolic pressure of {value:unit}',
] as const;
