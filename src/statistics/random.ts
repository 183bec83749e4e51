import { Math } from '../quantity/maths.js';

const WORDS = 624;
const SHIFT = 397;

/** A stream of random 32-bit whole numbers, the same for the same seed. */
export type Random32 = () => number;

/**
 * The Mersenne Twister MT19937 of 1998, as ISO C++ has it in `std::mt19937`: 32-bit words, period 2^19937 − 1.
 * Source: ACM Trans Model Comput Simul 1998;8(1):3–30; initialisation of 2002.
 */
export function mersenneTwister(seed: number): Random32 {
  const state = new Uint32Array(WORDS);
  state[0] = seed;
  for (let i = 1; i < WORDS; i += 1) {
    const last = state[i - 1]!;
    state[i] = Math.imul(1812433253, last ^ (last >>> 30)) + i;
  }
  let next = WORDS;
  const twist = (): void => {
    for (let i = 0; i < WORDS; i += 1) {
      const joined = (state[i]! & 0x80000000) | (state[(i + 1) % WORDS]! & 0x7fffffff);
      state[i] = state[(i + SHIFT) % WORDS]! ^ (joined >>> 1) ^ (joined & 1 ? 0x9908b0df : 0);
    }
    next = 0;
  };
  return () => {
    if (next === WORDS) twist();
    let word = state[next]!;
    next += 1;
    word ^= word >>> 11;
    word ^= (word << 7) & 0x9d2c5680;
    word ^= (word << 15) & 0xefc60000;
    return (word ^ (word >>> 18)) >>> 0;
  };
}

/** Uniform on 0 (excluded) to 1 (excluded), with 53 random bits. */
export function uniform(random: Random32): number {
  const high = random() >>> 5;
  const low = random() >>> 6;
  return (high * 67108864 + low + 0.5) / 9007199254740992;
}

/** Standard normal deviates by the polar method (SIAM Rev 1964;6(3):260–264). */
export function normalDeviates(random: Random32): () => number {
  let kept = NaN;
  return () => {
    if (kept === kept) {
      const deviate = kept;
      kept = NaN;
      return deviate;
    }
    for (;;) {
      const x = 2 * uniform(random) - 1;
      const y = 2 * uniform(random) - 1;
      const square = x * x + y * y;
      if (square >= 1 || square === 0) continue;
      const factor = Math.sqrt((-2 * Math.log(square)) / square);
      kept = y * factor;
      return x * factor;
    }
  };
}

/** A whole number from 0 to below `count`. */
export const indexBelow = (random: Random32, count: number): number => Math.floor(uniform(random) * count);

/** The whole numbers from 0 to below `count` in random order (Fisher–Yates). */
export function shuffled(random: Random32, count: number): Int32Array {
  const order = Int32Array.from({ length: count }, (_, index) => index);
  for (let last = count - 1; last > 0; last -= 1) {
    const other = indexBelow(random, last + 1);
    [order[last], order[other]] = [order[other]!, order[last]!];
  }
  return order;
}

/** Chi-square deviates of `degrees` above 2: twice a gamma, by squeeze (ACM Trans Math Softw 2000;26(3):363–372). */
export function chiSquareDeviate(random: Random32, normal: () => number, degrees: number): number {
  const d = degrees / 2 - 1 / 3;
  const c = 1 / Math.sqrt(9 * d);
  for (;;) {
    const z = normal();
    const root = 1 + c * z;
    if (root <= 0) continue;
    const v = root * root * root;
    if (Math.log(uniform(random)) < (z * z) / 2 + d * (1 - v + Math.log(v))) return 2 * d * v;
  }
}

/**
 * Normal deviates that go together as `correlations` say: L z for independent z, L Lᵀ the matrix of the correlations
 * (Cholesky). `undefined` where the matrix is not positive definite: no deviates go together so.
 */
export function correlatedDeviates(
  correlations: readonly (readonly number[])[],
): ((normal: () => number) => number[]) | undefined {
  const lower: number[][] = [];
  for (const [i, row] of correlations.entries()) {
    const own: number[] = [];
    lower.push(own);
    for (let j = 0; j <= i; j += 1) {
      let rest = row[j]!;
      for (let k = 0; k < j; k += 1) rest -= own[k]! * lower[j]![k]!;
      if (j < i) own.push(rest / lower[j]![j]!);
      else if (rest > 1e-12) own.push(Math.sqrt(rest));
      else return undefined;
    }
  }
  return (normal) => {
    const free = lower.map(() => normal());
    return lower.map((row) => row.reduce((sum, entry, index) => sum + entry * free[index]!, 0));
  };
}
