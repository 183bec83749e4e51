/** Repetitions to failure above which equations spread apart. */
export const MANY = 10;
/** The longest set any of the published tests behind the equations went to; beyond it they are refused. */
export const MOST = 20;
/** Younger than any sample is known to hold, high-school powerlifters aside. */
export const ADULT_FROM_YEARS = 18;
/** Standard deviation of an equation’s error at up to 10 repetitions, as a share of the maximum: the wide end of 5 to 10 %. */
export const EQUATION_SHARE = 0.1;
/** Mean minus two standard deviations of the ages at which repetition equations were found too low. */
export const OLDER_FROM_YEARS = 59;
