import { frozen } from './quantity/frozen.js';
import { occlusionEquations } from './pressure/equations.js';
import { oneRepMaxEquations, relativeLoadEquations } from './strength/equations.js';

/**
 * Every equation of the library with its formula, symbols, sample, error, evidence grade and sources.
 *
 * @example
 * ```ts
 * import { equations } from 'cuffwork';
 * equations.occlusionPressure.find(({ id }) => id === 'thigh-2019')?.evidence; // => 'published'
 * ```
 */
export const equations: {
  /** Equations for limb occlusion pressure. */
  readonly occlusionPressure: typeof occlusionEquations;
  /** Equations for the one-repetition maximum (1RM). */
  readonly oneRepetitionMaximum: typeof oneRepMaxEquations;
  /** Equations for a load as a percentage of the maximum, from bar velocity or an OMNI rating. */
  readonly relativeLoad: typeof relativeLoadEquations;
} = frozen({
  occlusionPressure: occlusionEquations,
  oneRepetitionMaximum: oneRepMaxEquations,
  relativeLoad: relativeLoadEquations,
});
