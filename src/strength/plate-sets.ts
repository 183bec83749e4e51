import type { Grade } from '../evidence/grades.js';
import type { SourceId } from '../evidence/sources.js';
import type { LoadUnit } from '../quantity/quantities.js';
import { frozen } from '../quantity/frozen.js';

/** A bar, its collars and the plates that go with it. */
export interface PlateSet {
  /** Unit of every mass in the set. */
  readonly unit: LoadUnit;
  /** Mass of the bar [`unit`]. */
  readonly bar: number;
  /** Mass of both collars together [`unit`]. */
  readonly collars: number;
  /** The plates, heaviest first. */
  readonly plates: readonly {
    /** Mass of one plate [`unit`]. */
    readonly mass: number;
  }[];
  /** Evidence grade of the set. */
  readonly evidence: Grade;
  /** Id of the publication, or a note that it is common practice. */
  readonly source: SourceId | 'common practice, no source';
}

const masses = (...list: readonly number[]): PlateSet['plates'] => list.map((mass) => ({ mass }));

const WEIGHTLIFTING = {
  unit: 'kg',
  collars: 5,
  plates: masses(25, 20, 15, 10, 5, 2.5, 2, 1.5, 1, 0.5),
  evidence: 'secondary',
  source: 'weightlifting-rules',
} as const;

/**
 * Plates and bars of sport rules and of a common gym, as a start for your own inventory. The number of each is not
 * limited. We read the masses of the two sports in summaries of their rules.
 *
 * @example
 * ```ts
 * import { loadPlates, plateSets } from 'cuffwork';
 * const { unit, bar, collars, plates } = plateSets.powerlifting;
 * loadPlates({ target: 102.5, unit, bar, collars, plates }).perSide; // => [{ mass: 25, count: 1 }, { mass: 10, count: 1 }, { mass: 2.5, count: 1 }, { mass: 1.25, count: 1 }]
 * ```
 */
export const plateSets = frozen({
  weightliftingMen: { ...WEIGHTLIFTING, bar: 20 },
  weightliftingWomen: { ...WEIGHTLIFTING, bar: 15 },
  powerlifting: {
    unit: 'kg',
    bar: 20,
    collars: 5,
    plates: masses(50, 25, 20, 15, 10, 5, 2.5, 1.25),
    evidence: 'secondary',
    source: 'powerlifting-rules',
  },
  gymPounds: {
    unit: 'lb',
    bar: 45,
    collars: 0,
    plates: masses(45, 35, 25, 10, 5, 2.5),
    evidence: 'practice',
    source: 'common practice, no source',
  },
} as const satisfies Record<string, PlateSet>);
