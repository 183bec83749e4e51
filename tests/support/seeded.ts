// Taken at load: a test may change them later.
const { floor, imul } = Math;

/** A small generator of numbers from 0 to 1 (mulberry32): the same seed gives the same numbers in every engine. */
export function seeded(seed: number): () => number {
  let state = seed | 0;
  return () => {
    state = (state + 0x6d2b79f5) | 0;
    let mixed = imul(state ^ (state >>> 15), 1 | state);
    mixed = (mixed + imul(mixed ^ (mixed >>> 7), 61 | mixed)) ^ mixed;
    return ((mixed ^ (mixed >>> 14)) >>> 0) / 4294967296;
  };
}

/** One of a list. */
export const oneOf = <T>(random: () => number, list: readonly T[]): T => list[floor(random() * list.length)]!;
