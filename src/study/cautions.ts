import type { Caution } from '../answer/answer.js';
import { cautionsOf } from '../answer/sentences.js';
import type { Normality } from '../statistics/normality.js';
import { studyMessages } from './messages.js';

/** A number as it is printed in a caution. */
export const twoDigits = (value: number): number => Number(value.toPrecision(2));

export const caution = cautionsOf(studyMessages);

const FEW_PEOPLE = 10;

export const fewPeople = (people: number): Caution[] =>
  people < FEW_PEOPLE ? [caution('caution', 'few-people', { people })] : [];

/** A caution where values fail the test for a normal distribution. */
export function notNormal(
  code: 'differences-not-normal' | 'residuals-not-normal',
  normality: Normality | undefined,
): Caution[] {
  if (!normality || normality.chance >= 0.05) return [];
  const { skewness, excessKurtosis } = normality;
  return [caution('caution', code, { skewness: twoDigits(skewness), excessKurtosis: twoDigits(excessKurtosis) })];
}
