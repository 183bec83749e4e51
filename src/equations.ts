/**
 * The bare functions: numbers in, a number out, nothing checked.
 *
 * @module cuffwork/equations
 */
export { armCurve2026 } from './pressure/equations/arm-curve-2026.js';
export { arm2015 } from './pressure/equations/arm-2015.js';
export { diastolicBias, systolicBias, zeroErrorBladderWidth } from './pressure/equations/bladder-width.js';
export { circumferenceBands } from './pressure/equations/circumference-bands.js';
export { padding2006 } from './pressure/equations/padding-2006.js';
export { systolic130 } from './pressure/equations/systolic-130.js';
export { thighCurve2026 } from './pressure/equations/thigh-curve-2026.js';
export { thigh2015 } from './pressure/equations/thigh-2015.js';
export { thigh2019 } from './pressure/equations/thigh-2019.js';
export { thighIndex } from './pressure/equations/thigh-index.js';
export { widthRatio } from './pressure/equations/width-ratio.js';
export { adams } from './strength/equations/adams.js';
export { baechle } from './strength/equations/baechle.js';
export { benchPressVelocity2010 } from './strength/equations/bench-press-velocity-2010.js';
export { berger } from './strength/equations/berger.js';
export { brown } from './strength/equations/brown.js';
export { brzycki } from './strength/equations/brzycki.js';
export { brzyckiDecimal } from './strength/equations/brzycki-decimal.js';
export { epley } from './strength/equations/epley.js';
export { benchPress5rm2006, legPress5rm2006 } from './strength/equations/five-repetitions-2006.js';
export {
  fullSquatMeanVelocity2017,
  fullSquatPeakVelocity2017,
  fullSquatVelocity2017,
} from './strength/equations/full-squat-velocity-2017.js';
export {
  benchPressHighSchool2003,
  deadliftHighSchool2003,
  squatHighSchool2003,
} from './strength/equations/high-school-2003.js';
export { kneeExtensionTrained1993, kneeExtensionUntrained1993 } from './strength/equations/knee-extension-1993.js';
export { lander } from './strength/equations/lander.js';
export { lombardi } from './strength/equations/lombardi.js';
export { mayhew } from './strength/equations/mayhew.js';
export { oconner } from './strength/equations/oconner.js';
export {
  osteopeniaKneeExtension2024,
  osteopeniaKneeFlexion2024,
  osteopeniaLatPulldown2024,
  osteopeniaTricepsDip2024,
  osteopeniaTrunkExtension2024,
  osteopeniaTrunkFlexion2024,
} from './strength/equations/osteopenia-2024.js';
export { parallelSquatOmni2017 } from './strength/equations/parallel-squat-omni-2017.js';
export { parallelSquatVelocity2017 } from './strength/equations/parallel-squat-velocity-2017.js';
export { postmenopausal2006 } from './strength/equations/postmenopausal-2006.js';
export { wathan } from './strength/equations/wathan.js';
export { welday } from './strength/equations/welday.js';
export {
  chestPressWomen2000,
  kneeExtensionWomen2000,
  shoulderPressWomen2000,
} from './strength/equations/women-2000.js';
export { minimalDetectableChange, standardErrorOfMeasurement, typicalError } from './strength/reliability.js';
