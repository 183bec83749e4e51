/*
 * The working behind the error of the full-squat equations of 2017 (Sports Med Int Open 2017;1(2):E80–E88).
 *
 * An open set of 52 people with a measured 1RM gives how many points of 1RM the form for mean velocity reads too high,
 * on average, at four loads. The standard deviation is half of the largest: an interval of about two standard
 * deviations reaches it. The other two forms were not tried on these people; they get the same error.
 */
export const overReading = [
  { percent: 40, points: 24 },
  { percent: 60, points: 17 },
  { percent: 80, points: 10 },
  { percent: 90, points: 6 },
] as const;

export const standardDeviation = Math.max(...overReading.map(({ points }) => points)) / 2;
