import { frozen } from '../quantity/frozen.js';
import type { OcclusionEquation } from './equation.js';
import { arm2015Equation } from './equations/arm-2015.js';
import { padding2006Equation } from './equations/padding-2006.js';
import {
  pooledArmNarrowEquation,
  pooledThighNarrowEquation,
  pooledThighWideEquation,
} from './equations/pooled-means.js';
import { thigh2015Equation } from './equations/thigh-2015.js';
import { thigh2019Equation } from './equations/thigh-2019.js';
import { thighIndex12Equation, thighIndex18Equation } from './equations/thigh-index.js';
import { widthRatioEquation } from './equations/width-ratio.js';

/** Every occlusion-pressure equation. Their order says nothing: `auto` ranks them for the readings at hand. */
export const occlusionEquations = /* @__PURE__ */ frozen([
  thigh2019Equation,
  thigh2015Equation,
  arm2015Equation,
  widthRatioEquation,
  pooledThighWideEquation,
  pooledThighNarrowEquation,
  pooledArmNarrowEquation,
  thighIndex12Equation,
  thighIndex18Equation,
  padding2006Equation,
] as const satisfies readonly OcclusionEquation[]);

/** The id of an occlusion-pressure equation. */
export type OcclusionEquationId = (typeof occlusionEquations)[number]['id'];

export const EQUATION_IDS = /* @__PURE__ */ (() => occlusionEquations.map(({ id }) => id))();
