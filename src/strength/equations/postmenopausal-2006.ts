import type { OneRepMaxEquation } from '../equation.js';

/**
 * One-repetition maximum of trained postmenopausal women, on machines (2006 cubic).
 *
 * Formula: 1RM = w × (0.988 + 0.0104 × r + 0.0019 × r² − 0.0000584 × r³)
 *
 * - Shape: 1.0002 w at r = 1; it turns over at r = 24.15, so it is refused above 20. The term in r² is positive;
 *   copies with a negative one are wrong.
 * - Fitted range: 3 to 20 repetitions; 70 women, 57.4 ± 3.1 years, four machines. The abstract does not name
 *   them: use it for machines, not for free weights.
 * - Error: coefficient of variation below 3.3 %, taken as 3.3 %; mean absolute difference 1.5 to 3.1 %, whatever
 *   the machine and the repetitions.
 * - Evidence: `published`.
 * - Source: J Strength Cond Res 2006;20(4):838–842.
 *
 * @param load - w, load lifted [kg or lb]
 * @param r - repetitions to failure, at most 20
 * @returns 1RM, in the unit of `load`
 *
 * @example
 * ```ts
 * import { postmenopausal2006 } from 'cuffwork/equations';
 * postmenopausal2006(90, 10).toFixed(2); // => '110.12'
 * ```
 */
export const postmenopausal2006 = (load: number, r: number): number =>
  load * (0.988 + 0.0104 * r + 0.0019 * r * r - 0.0000584 * r * r * r);

export const postmenopausal2006Equation = {
  id: 'postmenopausal-2006',
  name: 'trained postmenopausal women (2006)',
  formula: 'w * (0.988 + 0.0104 * r + 0.0019 * r ^ 2 - 0.0000584 * r ^ 3)',
  symbols: { w: 'load', r: 'repetitionsToFailure' },
  apply: postmenopausal2006,
  // The abstract does not name the four machines; we do not use it for free weights.
  lifts: [
    'chest-press',
    'shoulder-press',
    'triceps-dip',
    'lat-pulldown',
    'leg-press',
    'knee-extension',
    'knee-flexion',
    'trunk-extension',
    'trunk-flexion',
  ],
  sample: '70 trained postmenopausal women, 57.4 ± 3.1 years, four machines',
  // 57.4 ± 2 × 3.1 years, to whole years outwards; the paper does not report the range.
  population: { sex: 'female', training: 'trained', ageYears: { low: 51, high: 64 } },
  fittedRepetitions: { low: 3, high: 20 },
  domain: { to: 20, reason: 'turns-over' },
  error: { share: 0.033 },
  basis: 'data',
  evidence: 'published',
  sources: ['postmenopausal-2006'],
  assumptions: [],
} as const satisfies OneRepMaxEquation;
