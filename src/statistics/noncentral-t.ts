import { Math } from '../quantity/maths.js';
import { normalChance } from './normal.js';
import { rootOf } from './root.js';

/** Steps of the trapezoidal rule; its error falls exponentially here, because both ends of the integrand vanish. */
const STEPS = 240;

/**
 * The quantile of the noncentral t: of (Z + δ) / √(χ² / ν).
 *
 * P(T ≤ t) = ∫ Φ(t u − δ) f(u) du, u = √(χ² / ν), by the trapezoidal rule in w = ln u, in which
 * f(u) du ∝ exp(ν w − ν e^(2w) / 2) dw. The weights are divided by their sum.
 */
export function noncentralTQuantile(chance: number, degrees: number, delta: number): number {
  const logDensity = (w: number): number => degrees * (w - (Math.exp(2 * w) - 1) / 2);
  const low = rootOf(logDensity, -40, -100, 0);
  const high = -rootOf((w) => logDensity(-w), -40, -100, 0);
  const points = Array.from({ length: STEPS + 1 }, (_, step) => low + ((high - low) * step) / STEPS);
  const weights = points.map((w) => Math.exp(logDensity(w)));
  const spreads = points.map((w) => Math.exp(w));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const below = (t: number): number =>
    weights.reduce((sum, weight, step) => sum + weight * normalChance(t * spreads[step]! - delta), 0) / total;
  let reach = Math.abs(delta) + 10;
  while (below(reach) < chance || below(-reach) > chance) reach *= 2;
  // False position, the end that stays halved (Illinois): a tenth of the steps of halving.
  let [from, to] = [-reach, reach];
  let [under, over] = [below(from) - chance, below(to) - chance];
  for (let step = 0, side = 0; step < 200; step += 1) {
    const at = (from * over - to * under) / (over - under);
    const off = below(at) - chance;
    if (Math.abs(off) < 1e-15 || !(at > from && at < to)) return at;
    if (off < 0) {
      [from, under] = [at, off];
      if (side < 0) over /= 2;
      side = -1;
    } else {
      [to, over] = [at, off];
      if (side > 0) under /= 2;
      side = 1;
    }
  }
  return (from + to) / 2;
}
