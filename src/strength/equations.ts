import type { OneRepMaxEquation } from './equation.js';
import { brzyckiEquation } from './equations/brzycki.js';
import { epleyEquation } from './equations/epley.js';

/** Every one-repetition-maximum equation; the first is taken when none is named. */
export const oneRepMaxEquations = [brzyckiEquation, epleyEquation] as const satisfies readonly OneRepMaxEquation[];

/** The id of a one-repetition-maximum equation. */
export type OneRepMaxEquationId = (typeof oneRepMaxEquations)[number]['id'];
