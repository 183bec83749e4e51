import type { OcclusionEquation } from '../equation.js';

/**
 * Limb occlusion pressure from the systolic pressure and a tissue padding coefficient (2006), any limb.
 *
 * Formula: LOP = (SBP + 10) / K
 *
 * K falls with limb circumference and is below 1. Its table (circumferences of 20 to 75 cm) is not checked: you give
 * K, and the library never makes it up. Cuff width is not in the formula, so it is not for narrow cuffs.
 *
 * - Fitted range: circumference 20 to 75 cm; 30 anaesthetised, relaxed adults, tissue pressure at 100 to 300 mmHg.
 * - Error: not known as a standard deviation, so the answer has no interval. In 143 patients it fell below the
 *   measured pressure in 62 %.
 * - Evidence: `published` for the form; you give the coefficient.
 * - Source: Anesth Analg 2006;102(6):1752–1757.
 *
 * @param systolicMmHg - SBP, brachial systolic pressure [mmHg]
 * @param paddingCoefficient - K, tissue padding coefficient, between 0 and 1
 * @returns LOP, limb occlusion pressure [mmHg]
 *
 * @example
 * ```ts
 * import { padding2006 } from 'cuffwork/equations';
 * padding2006(120, 0.8); // => 162.5
 * ```
 */
export const padding2006 = (systolicMmHg: number, paddingCoefficient: number): number =>
  (systolicMmHg + 10) / paddingCoefficient;

export const padding2006Equation = {
  id: 'padding-2006',
  name: 'systolic plus ten over a padding coefficient (2006)',
  formula: '(SBP + 10) / K',
  symbols: { SBP: 'systolicMmHg', K: 'paddingCoefficient' },
  apply: (r) => padding2006(r.systolicMmHg, r.paddingCoefficient),
  needs: ['paddingCoefficient'],
  limb: 'any',
  cuffWidthCm: 'any',
  posture: 'not-stated',
  sample: '30 anaesthetised, relaxed adults; tissue pressure under the cuff in arms and legs',
  fitted: { circumferenceCm: { low: 20, high: 75 } },
  fittedNotKnown: ['systolicMmHg', 'cuffWidthCm'],
  error: { evidence: 'published', assumption: 'error-not-known' },
  evidence: 'published',
  sources: ['padding-2006', 'tourniquet-proceedings'],
  assumptions: ['padding-from-caller', 'width-not-in-formula', 'padding-too-low'],
} as const satisfies OcclusionEquation;
