import { frozen } from '../quantity/frozen.js';
import type { OneRepMaxEquation, RelativeLoadEquation } from './equation.js';
import { adamsEquation } from './equations/adams.js';
import { baechleEquation } from './equations/baechle.js';
import { benchPressVelocity2010Equation } from './equations/bench-press-velocity-2010.js';
import { bergerEquation } from './equations/berger.js';
import { brownEquation } from './equations/brown.js';
import { brzyckiDecimalEquation } from './equations/brzycki-decimal.js';
import { brzyckiEquation } from './equations/brzycki.js';
import { epleyEquation } from './equations/epley.js';
import { benchPress5rm2006Equation, legPress5rm2006Equation } from './equations/five-repetitions-2006.js';
import {
  fullSquatMeanVelocity2017Equation,
  fullSquatPeakVelocity2017Equation,
  fullSquatVelocity2017Equation,
} from './equations/full-squat-velocity-2017.js';
import {
  benchPressHighSchool2003Equation,
  deadliftHighSchool2003Equation,
  squatHighSchool2003Equation,
} from './equations/high-school-2003.js';
import {
  kneeExtensionTrained1993Equation,
  kneeExtensionUntrained1993Equation,
} from './equations/knee-extension-1993.js';
import { landerEquation } from './equations/lander.js';
import { lombardiEquation } from './equations/lombardi.js';
import { mayhewEquation } from './equations/mayhew.js';
import { oconnerEquation } from './equations/oconner.js';
import {
  osteopeniaKneeExtension2024Equation,
  osteopeniaKneeFlexion2024Equation,
  osteopeniaLatPulldown2024Equation,
  osteopeniaTricepsDip2024Equation,
  osteopeniaTrunkExtension2024Equation,
  osteopeniaTrunkFlexion2024Equation,
} from './equations/osteopenia-2024.js';
import { parallelSquatOmni2017Equation } from './equations/parallel-squat-omni-2017.js';
import { parallelSquatVelocity2017Equation } from './equations/parallel-squat-velocity-2017.js';
import { postmenopausal2006Equation } from './equations/postmenopausal-2006.js';
import { wathanEquation } from './equations/wathan.js';
import { weldayEquation } from './equations/welday.js';
import {
  chestPressWomen2000Equation,
  kneeExtensionWomen2000Equation,
  shoulderPressWomen2000Equation,
} from './equations/women-2000.js';

/**
 * Every one-repetition-maximum equation: the repetition equations, of which the first is taken where nothing fits
 * better, then those fitted on certain people, then the regressions.
 */
export const oneRepMaxEquations = frozen([
  brzyckiEquation,
  brzyckiDecimalEquation,
  epleyEquation,
  landerEquation,
  lombardiEquation,
  mayhewEquation,
  oconnerEquation,
  wathanEquation,
  adamsEquation,
  baechleEquation,
  bergerEquation,
  brownEquation,
  weldayEquation,
  postmenopausal2006Equation,
  osteopeniaLatPulldown2024Equation,
  osteopeniaTricepsDip2024Equation,
  osteopeniaTrunkExtension2024Equation,
  osteopeniaTrunkFlexion2024Equation,
  osteopeniaKneeExtension2024Equation,
  osteopeniaKneeFlexion2024Equation,
  legPress5rm2006Equation,
  benchPress5rm2006Equation,
  kneeExtensionUntrained1993Equation,
  kneeExtensionTrained1993Equation,
  chestPressWomen2000Equation,
  shoulderPressWomen2000Equation,
  kneeExtensionWomen2000Equation,
  squatHighSchool2003Equation,
  benchPressHighSchool2003Equation,
  deadliftHighSchool2003Equation,
] as const satisfies readonly OneRepMaxEquation[]);

/** The id of a one-repetition-maximum equation. */
export type OneRepMaxEquationId = (typeof oneRepMaxEquations)[number]['id'];

/** Every equation from a bar velocity or a rating to a percentage of the maximum. */
export const relativeLoadEquations = frozen([
  benchPressVelocity2010Equation,
  fullSquatVelocity2017Equation,
  fullSquatMeanVelocity2017Equation,
  fullSquatPeakVelocity2017Equation,
  parallelSquatVelocity2017Equation,
  parallelSquatOmni2017Equation,
] as const satisfies readonly RelativeLoadEquation[]);

/** The id of an equation to a percentage of the maximum. */
export type RelativeLoadEquationId = (typeof relativeLoadEquations)[number]['id'];
