import { Math, square } from '../quantity/maths.js';
import type { WithConfidence } from './interval.js';
import { NORMAL_95 } from './normal.js';
import type { People } from './people.js';
import { accurateSum } from './sums.js';

/** A share of pairs with its 95 % confidence interval (score interval). */
export interface Share extends WithConfidence {
  /** Number of pairs that count towards the share. */
  readonly count: number;
  /** Number of pairs the share is taken of. */
  readonly of: number;
}

/**
 * A share with the score interval, which stays within 0 and 1; `effective` is the count it is worth where rows
 * depend.
 */
export function share(count: number, of: number, effective = of): Share {
  const z2 = square(NORMAL_95);
  const value = count / of;
  const middle = (value + z2 / (2 * effective)) / (1 + z2 / effective);
  const half =
    (NORMAL_95 / (1 + z2 / effective)) *
    Math.sqrt((value * (1 - value)) / effective + z2 / (4 * effective * effective));
  return { value, lower: Math.max(0, middle - half), upper: Math.min(1, middle + half), count, of };
}

/** What a count is worth where the rows of a person go together: p (1 − p) over the variance between people. */
function effectiveRows(hits: Uint8Array, count: number, { of, count: people, rows }: People): number {
  const p = count / hits.length;
  if (count === 0 || count === hits.length) return people;
  const off = rows.map((number) => -p * number);
  for (let row = 0; row < hits.length; row += 1) off[of[row]!]! += hits[row]!;
  const variance = ((people / (people - 1)) * accurateSum(off.map(square))) / square(hits.length);
  return Math.min(hits.length, (p * (1 - p)) / variance);
}

/** The share of rows that hit, and its interval. */
export function shareOf(rows: number, hit: (row: number) => boolean, people: People | undefined): Share {
  const hits = new Uint8Array(rows);
  for (let row = 0; row < rows; row += 1) if (hit(row)) hits[row] = 1;
  const count = accurateSum(hits);
  return share(count, rows, people && people.count > 1 ? effectiveRows(hits, count, people) : undefined);
}
