import type { Symbols } from '../../answer/answer.js';

/**
 * Training pressure as 130 % of the brachial systolic pressure. It is a fixed training pressure, not an occlusion
 * pressure: it knows neither limb nor cuff.
 *
 * Formula: P = 1.3 × SBP
 *
 * - Fitted range: none; a rule, not a fit.
 * - Error: not known. In surgery, systolic + 150 mmHg was almost flat over three bands of thighs (262 to 267 mmHg).
 *   Settings from a measured occlusion pressure rose by 72 mmHg, part of which is a margin that grows in steps. So a
 *   rule from the systolic pressure alone is too high for small thighs and too low for large ones.
 * - Evidence: `unconfirmed`; written from memory. That many studies set the pressure from the systolic pressure alone
 *   was read.
 * - Source: no publication was read for the multiple.
 *
 * @param systolicMmHg - SBP, brachial systolic pressure [mmHg]
 * @returns P, training pressure [mmHg]
 *
 * @example
 * ```ts
 * import { systolic130 } from 'cuffwork/equations';
 * systolic130(120); // => 156
 * ```
 */
export const systolic130 = (systolicMmHg: number): number => 1.3 * systolicMmHg;

export const systolic130Rule = {
  id: 'systolic-130',
  formula: '1.3 * SBP',
  symbols: { SBP: 'systolicMmHg' } satisfies Symbols,
  evidence: 'unconfirmed',
  sources: ['systolic-130'],
} as const;
