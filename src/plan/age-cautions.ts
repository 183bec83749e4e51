import type { Caution } from '../answer/answer.js';
import { format } from '../quantity/format.js';
import { caution } from './messages.js';

/** What a person’s age asks for: 60 and over is `published`, that the practitioner decides under 18 is `practice`. */
export function ageCautions(ageYears: number | undefined): Caution[] {
  if (ageYears === undefined || (ageYears >= 18 && ageYears < 60)) return [];
  const age = { age: format(ageYears) };
  const path = ['ageYears'];
  return [
    ageYears < 18
      ? caution('caution', 'age-under-18', age, { path })
      : caution('caution', 'age-60-and-over', age, { path, source: 'risk-stratification-2022' }),
  ];
}
