import type { Answer } from '../answer/answer.js';
import type { Loose } from '../answer/defined.js';
import { Math } from '../quantity/maths.js';
import { normalChance, normalQuantile } from '../statistics/normal.js';

type Spread = Loose<Pick<Answer, 'value' | 'standardDeviation' | 'scale'>>;

/** The chance that the true value of an answer is at or below x; `undefined` where its error is not known. */
export function chanceAtOrBelow(x: number, { value, standardDeviation, scale }: Spread): number | undefined {
  if (standardDeviation === undefined) return undefined;
  if (standardDeviation === 0) return x >= value ? 1 : 0;
  return normalChance((scale === 'log' ? Math.log(x / value) : x - value) / standardDeviation);
}

/** The x at which {@link chanceAtOrBelow} is `chance`. */
export function valueAtChance(chance: number, { value, standardDeviation = 0, scale }: Spread): number {
  const shift = normalQuantile(chance) * standardDeviation;
  return scale === 'log' ? value * Math.exp(shift) : value + shift;
}

/** A standard deviation in the unit of the answer, on whichever scale its error is. */
export const deviationInUnit = ({ value, standardDeviation = 0, scale }: Spread): number =>
  scale === 'log' ? value * standardDeviation : standardDeviation;

/** The same as a share of the value. */
export const deviationAsShare = ({ value, standardDeviation = 0, scale }: Spread): number =>
  scale === 'log' ? standardDeviation : standardDeviation / value;
