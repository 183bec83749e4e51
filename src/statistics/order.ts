import { Math } from '../quantity/maths.js';
import { binomialChance } from './beta.js';

/**
 * The order statistics that bound a quantile of the population with at least 95 %, whatever the distribution: the largest
 * r with P(X₍ᵣ₎ > quantile) ≤ 2.5 %, and its mirror image. An end is left out where there are too few values for it.
 */
export function quantileBounds(
  sorted: Float64Array,
  share: number,
): { readonly lower?: number; readonly upper?: number } {
  const n = sorted.length;
  const rank = (of: number): number => {
    let [from, to] = [0, n];
    while (from < to) {
      const middle = Math.floor((from + to + 1) / 2);
      if (binomialChance(middle - 1, n, of) <= 0.025) from = middle;
      else to = middle - 1;
    }
    return from;
  };
  const [below, above] = [rank(share), rank(1 - share)];
  return {
    ...(below > 0 && { lower: sorted[below - 1]! }),
    ...(above > 0 && { upper: sorted[n - above]! }),
  };
}
