import { frozen } from '../quantity/frozen.js';

/**
 * How well a number is backed. The grades are never blurred: an `unconfirmed` equation says so
 * in its docs, in its answers and in the tables.
 */
export type Grade = 'published' | 'secondary' | 'unconfirmed' | 'derived' | 'practice' | 'definition';

/**
 * What each grade means. An answer has the grade of its weakest part, in this order from the strongest: `definition`,
 * `published`, `derived`, `secondary`, `practice`, `unconfirmed`.
 *
 * @example
 * ```ts
 * import { grades } from 'cuffwork';
 * grades.practice; // => 'common practice, no source'
 * ```
 */
export const grades = frozen({
  published: 'its form and every coefficient read in the publication’s own text or abstract',
  secondary: 'read only in a later text that reprints it',
  derived: 'worked out in this project from published figures; the working is a committed script',
  unconfirmed: 'widely used, written here from memory; the coefficients were not read in any text',
  practice: 'common practice, no source',
  definition: 'arithmetic that defines a quantity, of numbers you entered',
} as const satisfies Record<Grade, string>);

const ORDER = [
  'definition',
  'published',
  'derived',
  'secondary',
  'practice',
  'unconfirmed',
] as const satisfies readonly Grade[];

export const isGrade = (value: unknown): value is Grade => ORDER.includes(value as Grade);

/** Of the grades of several numbers, that of the one that is backed least: what is worked out from them has it too. */
export const weakest = (grades: readonly Grade[]): Grade =>
  grades.reduce<Grade>((least, grade) => (ORDER.indexOf(grade) > ORDER.indexOf(least) ? grade : least), 'definition');
