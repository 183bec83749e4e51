/** Repetitions to failure above which equations spread apart. */
export const MANY = 10;
/** The longest set any of the published tests behind the equations went to. */
export const FAR_TOO_MANY = 20;
/** Mean minus two standard deviations of the ages at which repetition equations were found too low. */
export const OLDER_FROM_YEARS = 59;
