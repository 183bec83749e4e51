import { bench, describe } from 'vitest';
import { weekTotals, type TrainingDay } from '../../src/index.js';

const ATHLETES = 1000;
const WEEKS = 52;

/** Invented daily records: two days of rest a week, loads and restriction that move from day to day. */
const weeksOf = (athlete: number): TrainingDay[][] =>
  Array.from({ length: WEEKS }, (_week, week) =>
    Array.from({ length: 7 }, (_day, day) => {
      const rest = (athlete + day) % 7 < 2;
      const loadAu = rest ? 0 : 200 + ((athlete * 31 + week * 17 + day * 43) % 400);
      return rest ? { loadAu } : { loadAu, restrictedS: { leftLeg: 390 + (day % 3) * 60, rightLeg: 390 } };
    }),
  );

describe('a year of daily records for 1,000 athletes', () => {
  const records = Array.from({ length: ATHLETES }, (_, athlete) => weeksOf(athlete));
  bench(
    'weekTotals',
    () => {
      let total = 0;
      for (const weeks of records) for (const days of weeks) total += weekTotals({ days }).load.value;
      if (!(total > 0)) throw new Error('nothing was added up');
    },
    { iterations: 5, warmupIterations: 1, time: 0 },
  );
});
