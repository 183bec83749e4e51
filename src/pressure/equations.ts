import type { OcclusionEquation } from './equation.js';
import { arm2015Equation } from './equations/arm-2015.js';
import { thigh2015Equation } from './equations/thigh-2015.js';
import { thigh2019Equation } from './equations/thigh-2019.js';
import { widthRatioEquation } from './equations/width-ratio.js';

/** Every occlusion-pressure equation, best first where several apply: an equation fitted for the very cuff leads. */
export const occlusionEquations = [
  thigh2019Equation,
  thigh2015Equation,
  arm2015Equation,
  widthRatioEquation,
] as const satisfies readonly OcclusionEquation[];

/** The id of an occlusion-pressure equation. */
export type OcclusionEquationId = (typeof occlusionEquations)[number]['id'];
