import type { Limb } from '../quantity/quantities.js';
import { frozen } from '../quantity/frozen.js';
import type { OcclusionEquation } from './equation.js';
import { armCurve2026Equation } from './equations/arm-curve-2026.js';
import { arm2015Equation } from './equations/arm-2015.js';
import { padding2006Equation } from './equations/padding-2006.js';
import { thighCurve2026Equation } from './equations/thigh-curve-2026.js';
import { thigh2015Equation } from './equations/thigh-2015.js';
import { thigh2019Equation } from './equations/thigh-2019.js';
import { thighIndex12Equation, thighIndex18Equation } from './equations/thigh-index.js';
import { widthRatioEquation } from './equations/width-ratio.js';

/** Every occlusion-pressure equation, in the order in which they are compared. */
export const occlusionEquations = frozen([
  thighCurve2026Equation,
  armCurve2026Equation,
  thigh2019Equation,
  thigh2015Equation,
  arm2015Equation,
  widthRatioEquation,
  thighIndex12Equation,
  thighIndex18Equation,
  padding2006Equation,
] as const satisfies readonly OcclusionEquation[]);

/** The id of an occlusion-pressure equation. */
export type OcclusionEquationId = (typeof occlusionEquations)[number]['id'];

export const EQUATION_IDS = occlusionEquations.map(({ id }) => id);

/** The default of each limb. Adding an equation above does not change it. */
export const defaultEquations = {
  leg: thighCurve2026Equation,
  arm: armCurve2026Equation,
} as const satisfies Record<Limb, OcclusionEquation>;
