/*
 * How one person’s occlusion pressure varies [mmHg], standard deviations. Of the variance of thigh occlusion pressure in
 * 42 people (`pulse-pressure-2021`) 47 % is between people, 18 % between days, 6 % between legs and 28 % error; what is
 * not between people, 52 %, is a standard deviation of 14.4 mmHg.
 */

/** Between days: 14.4 × √(18 / 52). */
export const DAY_DEVIATION = 8.5;
/** A side from the mean of both: 14.4 × √(6 / 52). */
export const SIDE_DEVIATION = 4.9;
/** One side from the other: √2 times that. */
export const OTHER_SIDE_DEVIATION = 6.9;
/** Error of one measurement, which the error of an estimate includes: 14.4 × √(28 / 52). */
export const MEASURING_DEVIATION = 10.6;
