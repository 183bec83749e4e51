import { speaker } from '../answer/answer.js';
import type { Catalogue } from '../answer/messages.js';

/** What the statistics of a study say about their own assumptions. */
export const studyMessages = {
  'differences-not-normal':
    'The differences are not normally distributed (skewness {skewness}, excess kurtosis {excessKurtosis}). Use the percentiles, or the limits on a log scale.',
  'spread-changes-with-size':
    'The differences spread more at one end of the range than at the other: {slope} for each unit of size. Use the limits by size, or a log scale.',
  'bias-changes-with-size':
    'The bias changes with size: {slope} for each unit. One bias and one pair of limits do not hold over the whole range. Use the limits by size.',
  'tests-differ':
    'The mean changes between tests {from} and {to} by {change}. Let people practise before the first test that counts.',
  'few-people': 'Only {people} people: the intervals are wide, and the assumptions cannot be checked.',
} as const satisfies Catalogue;

export const { caution } = /* @__PURE__ */ speaker(studyMessages);
