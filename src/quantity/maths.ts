/**
 * The host’s functions as they were when the library was loaded: a host that changes its own `Math` later cannot
 * change an answer. Every file of `src` that computes imports this one in the place of the global.
 */
export const Math = /* @__PURE__ */ (({ abs, ceil, exp, floor, log, log1p, expm1, max, min, pow, round, sign, sqrt }) =>
  Object.freeze({ abs, ceil, exp, floor, log, log1p, expm1, max, min, pow, round, sign, sqrt }))(globalThis.Math);
