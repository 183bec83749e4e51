import { isOwn } from './own.js';

const DEEPEST = 40;
const MOST_VALUES = 200_000;

/** How many values may still be copied: shared by the parts of one list, whose items may be one and the same. */
export interface Budget {
  left: number;
}

/**
 * A copy that holds plain JSON values only, or `undefined` where the value is not plain JSON (functions, symbols, big
 * integers, dates, cycles, hidden fields, numbers that are not finite). Getters run once, here; what they throw is
 * thrown on. A document that the library made and froze stays itself. `as` may put something else in the place of a part.
 */
export function plainCopy(
  value: unknown,
  budget: Budget = { left: MOST_VALUES },
  as?: (part: object) => unknown,
): unknown {
  const refused = Symbol('refused');
  const copy = (given: unknown, depth: number): unknown => {
    budget.left -= 1;
    if (depth > DEEPEST || budget.left < 0) return refused;
    if (given === null || typeof given === 'string' || typeof given === 'boolean') return given;
    // Plus nothing: −0 becomes 0, as JSON has it.
    if (typeof given === 'number') return Number.isFinite(given) ? given + 0 : refused;
    if (typeof given !== 'object') return refused;
    if (!as && isOwn(given)) return given;
    const part: unknown = as ? as(given) : given;
    if (typeof part !== 'object' || part === null) return refused;
    if (Array.isArray(part)) {
      // Read once: a proxy may give another length each time, and your own iterator may never end.
      const { length } = part;
      if (!(length <= budget.left)) return refused;
      const list: unknown[] = [];
      for (let index = 0; index < length; index += 1) {
        const kept = copy(part[index], depth + 1);
        if (kept === refused) return refused;
        list.push(kept);
      }
      return list;
    }
    const prototype: unknown = Object.getPrototypeOf(part);
    if (prototype !== null && Object.getPrototypeOf(prototype) !== null) return refused;
    const names = Object.keys(part);
    const all = Object.getOwnPropertyNames(part).length + Object.getOwnPropertySymbols(part).length;
    if (names.length < all || names.length > budget.left) return refused;
    const object: Record<string, unknown> = {};
    for (const name of names) {
      const item = (part as Readonly<Record<string, unknown>>)[name];
      if (item === undefined) continue;
      const kept = copy(item, depth + 1);
      if (kept === refused || name === '__proto__') return refused;
      object[name] = kept;
    }
    return object;
  };
  const result = copy(value, 0);
  return result === refused ? undefined : result;
}
