const DEEPEST = 40;
const MOST_VALUES = 200_000;

/**
 * A copy that holds plain JSON values only, or `undefined` where the value is not plain JSON
 * (functions, symbols, big integers, dates, cycles, numbers that are not finite). Getters run once, here;
 * what they throw is thrown on.
 */
export function plainCopy(value: unknown): unknown {
  let left = MOST_VALUES;
  const refused = Symbol('refused');
  const copy = (part: unknown, depth: number): unknown => {
    left -= 1;
    if (depth > DEEPEST || left < 0) return refused;
    if (part === null || typeof part === 'string' || typeof part === 'boolean') return part;
    // Plus nothing: −0 becomes 0, as JSON has it.
    if (typeof part === 'number') return Number.isFinite(part) ? part + 0 : refused;
    if (typeof part !== 'object') return refused;
    if (Array.isArray(part)) {
      if (part.length > left) return refused;
      const list: unknown[] = [];
      for (const item of part) {
        const kept = copy(item, depth + 1);
        if (kept === refused) return refused;
        list.push(kept);
      }
      return list;
    }
    const prototype: unknown = Object.getPrototypeOf(part);
    if (prototype !== null && Object.getPrototypeOf(prototype) !== null) return refused;
    const object: Record<string, unknown> = {};
    for (const name of Object.keys(part)) {
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
