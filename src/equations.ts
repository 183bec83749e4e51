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
export { benchPress5rm2006 } from './strength/equations/bench-press-5rm-2006.js';
export { benchPressHighSchool2003 } from './strength/equations/bench-press-high-school-2003.js';
export { benchPressVelocity2010 } from './strength/equations/bench-press-velocity-2010.js';
export { berger } from './strength/equations/berger.js';
export { brown } from './strength/equations/brown.js';
export { brzycki } from './strength/equations/brzycki.js';
export { brzyckiDecimal } from './strength/equations/brzycki-decimal.js';
export { chestPressWomen2000 } from './strength/equations/chest-press-women-2000.js';
export { deadliftHighSchool2003 } from './strength/equations/deadlift-high-school-2003.js';
export { epley } from './strength/equations/epley.js';
export { fullSquatVelocity2017 } from './strength/equations/full-squat-velocity-2017.js';
export { kneeExtensionTrained1993 } from './strength/equations/knee-extension-trained-1993.js';
export { kneeExtensionUntrained1993 } from './strength/equations/knee-extension-untrained-1993.js';
export { kneeExtensionWomen2000 } from './strength/equations/knee-extension-women-2000.js';
export { lander } from './strength/equations/lander.js';
export { legPress5rm2006 } from './strength/equations/leg-press-5rm-2006.js';
export { lombardi } from './strength/equations/lombardi.js';
export { mayhew } from './strength/equations/mayhew.js';
export { oconner } from './strength/equations/oconner.js';
export { osteopeniaKneeExtension2024 } from './strength/equations/osteopenia-knee-extension-2024.js';
export { osteopeniaKneeFlexion2024 } from './strength/equations/osteopenia-knee-flexion-2024.js';
export { osteopeniaLatPulldown2024 } from './strength/equations/osteopenia-lat-pulldown-2024.js';
export { osteopeniaTricepsDip2024 } from './strength/equations/osteopenia-triceps-dip-2024.js';
export { osteopeniaTrunkExtension2024 } from './strength/equations/osteopenia-trunk-extension-2024.js';
export { osteopeniaTrunkFlexion2024 } from './strength/equations/osteopenia-trunk-flexion-2024.js';
export { parallelSquatOmni2017 } from './strength/equations/parallel-squat-omni-2017.js';
export { parallelSquatVelocity2017 } from './strength/equations/parallel-squat-velocity-2017.js';
export { postmenopausal2006 } from './strength/equations/postmenopausal-2006.js';
export { shoulderPressWomen2000 } from './strength/equations/shoulder-press-women-2000.js';
export { squatHighSchool2003 } from './strength/equations/squat-high-school-2003.js';
export { wathan } from './strength/equations/wathan.js';
export { welday } from './strength/equations/welday.js';
export { minimalDetectableChange, standardErrorOfMeasurement, typicalError } from './strength/reliability.js';
