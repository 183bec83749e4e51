import type { Path } from '../answer/issues.js';
import { occlusionEquations } from '../pressure/equations.js';
import { placeOf } from '../pressure/held-pressure.js';
import type { PlanLimb } from './types.js';

/** The day on which the pressure of a limb was measured, where it is known. */
export const measuredDay = ({ measured, occlusion }: PlanLimb): string | undefined =>
  measured ? measured.date : typeof occlusion === 'object' ? placeOf(occlusion).date : undefined;

/** Where a request has that day, or the answer with it. */
export const measuredAt = ({ measured }: PlanLimb, index: number): Path => [
  'limbs',
  index,
  ...(measured ? ['measured', 'date'] : ['occlusion']),
];

/** Whether the pressure of a limb is an estimate by an equation: neither measured, nor updated by a measurement. */
export const isEstimated = ({ measured, occlusion }: PlanLimb): boolean =>
  !measured &&
  (occlusion === undefined ||
    (typeof occlusion === 'object' && occlusionEquations.some(({ id }) => id === occlusion.equation)));
