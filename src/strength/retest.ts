import type { Grade } from '../evidence/grades.js';
import type { SourceId } from '../evidence/sources.js';
import type { LiftFacts } from './read-set.js';

/** How much repeated tests of one maximum differ, as a share of it, and where that figure is from. */
export interface Retest {
  readonly share: number;
  readonly evidence: Grade;
  readonly source: SourceId;
  /** Whether this may be a first test, which a second one exceeds. */
  readonly first: boolean;
}

/** Median coefficient of variation of repeated tests in 32 studies. */
const REPEATED: Retest = {
  share: 0.042,
  evidence: 'published',
  source: 'one-rep-max-reliability-2020',
  first: false,
};

/** Typical error between a first and a second test [share of the maximum]: 39 people, each leg. */
const LEG_PRESS = 0.053;
const KNEE_EXTENSION = 0.078;

/** How far the second test was above the first, over both lifts [%]. */
export const FIRST_TEST_GAIN = { low: 7.8, high: 10.2 } as const;

/** The error of a tested maximum. Of an untrained person it is that of a first test; the larger one in other lifts. */
export function retestOf({ lift, training }: Pick<LiftFacts, 'lift' | 'training'>): Retest {
  if (training !== 'untrained') return REPEATED;
  const share = lift === 'leg-press' ? LEG_PRESS : KNEE_EXTENSION;
  return { share, evidence: 'derived', source: 'first-and-second-test', first: true };
}
