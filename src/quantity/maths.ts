/**
 * The host’s functions as they were when the library was loaded: a host that changes its own `Math` later cannot
 * change an answer. Every file of `src` that computes imports this one in the place of the global.
 */
export const Math = (() => {
  const { PI, SQRT2, abs, atanh, ceil, exp, floor, imul, log, log10, max, min, round, sqrt, tanh } = globalThis.Math;
  return Object.freeze({ PI, SQRT2, abs, atanh, ceil, exp, floor, imul, log, log10, max, min, round, sqrt, tanh });
})();

/** By multiplying, which every engine rounds alike; a power is not. */
export const square = (value: number): number => value * value;
