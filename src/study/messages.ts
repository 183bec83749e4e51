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
  'collinear-term':
    'The term {field} nearly follows from the others (variance inflation {inflation}). Its coefficient is uncertain: leave a term out.',
  'influential-row': 'Row {row} moves the whole fit (Cook’s distance {distance}). Check it, and fit again without it.',
  'residuals-not-normal':
    'The residuals are not normally distributed (skewness {skewness}, excess kurtosis {excessKurtosis}). Prediction intervals do not hold: use conformal intervals.',
  'residual-spread-changes':
    'The residuals spread more at one end than at the other: {slope} for each mmHg. Prediction intervals are too narrow there. Use the robust standard errors for the coefficients.',
  'recalibration-no-better':
    'Recalibrated, the equation predicts people it has not seen no better than as published ({recalibrated} against {published} mmHg). Use it as published, or measure more people.',
  'recalibration-reversed':
    'The slope on {equation} is {slope}: where it estimates more, you measured less. Do not use the result. Check the rows for swapped columns, or use another equation.',
  'few-people': 'Only {people} people: the intervals are wide, and the assumptions cannot be checked.',
} as const satisfies Catalogue;
