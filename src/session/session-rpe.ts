import { frozen } from '../quantity/frozen.js';

/**
 * The session-RPE scale: how hard the whole session was, asked about 30 minutes after it. Ratings 6, 8 and 9 have no
 * words of their own.
 *
 * It runs from 0 to 10, unlike the scale of repetitions in reserve, which runs from 1 to 10.
 *
 * - Evidence: `published`.
 * - Source: J Sports Sci Med 2006;5:289–, table 1.
 *
 * @example
 * ```ts
 * import { sessionRpeScale } from 'cuffwork';
 * sessionRpeScale[3]; // => 'moderate'
 * ```
 */
export const sessionRpeScale: Readonly<Record<number, string>> = frozen({
  0: 'rest',
  1: 'very, very easy',
  2: 'easy',
  3: 'moderate',
  4: 'somewhat hard',
  5: 'hard',
  7: 'very hard',
  10: 'maximal',
});
