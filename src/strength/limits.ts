/** Repetitions to failure above which the equations disagree. */
export const MANY = 10;
/** The longest set in the published tests of any equation; longer sets are refused. */
export const MOST = 20;
/** No sample is known to include younger people, except the high-school powerlifters. */
export const ADULT_FROM_YEARS = 18;
/** Standard deviation of an equation’s error at up to 10 repetitions, as a share of the maximum: the upper end of 5–10 %. */
export const EQUATION_SHARE = 0.1;
/** Mean − 2 standard deviations of the ages at which repetition equations were found too low. */
export const OLDER_FROM_YEARS = 59;
