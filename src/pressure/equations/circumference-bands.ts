import type { Symbols } from '../../answer/answer.js';

/**
 * Training pressure for a 5 cm cuff on the thigh by bands of thigh circumference. It is a fixed training pressure, not
 * an occlusion pressure.
 *
 * Formula: P = 120 below 51 cm, 150 below 56 cm, 180 below 60 cm, 210 mmHg from there
 *
 * - Fitted range: not checked. From memory, the bands leave gaps (45 to 50.9, 51 to 55.9, 56 to 59.9); here
 *   each reaches to the next. They are recalled as about 60 % of an estimated occlusion pressure.
 * - Error: not known.
 * - Evidence: `unconfirmed`; written from memory, with edges also printed as 50, 55 and 59 cm.
 * - Source: no publication was read.
 *
 * @param circumferenceCm - TC, thigh circumference [cm]
 * @returns P, training pressure [mmHg]
 *
 * @example
 * ```ts
 * import { circumferenceBands } from 'cuffwork/equations';
 * circumferenceBands(55); // => 150
 * ```
 */
export const circumferenceBands = (circumferenceCm: number): number =>
  circumferenceCm < 51 ? 120 : circumferenceCm < 56 ? 150 : circumferenceCm < 60 ? 180 : 210;

export const circumferenceBandsRule = {
  id: 'circumference-bands',
  formula: 'TC < 51 ? 120 : TC < 56 ? 150 : TC < 60 ? 180 : 210',
  symbols: { TC: 'circumferenceCm' } satisfies Symbols,
  evidence: 'unconfirmed',
  sources: ['circumference-bands'],
} as const;
