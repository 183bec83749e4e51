import jstat from 'jstat';
import { describe, expect, it } from 'vitest';
import { studentQuantile, studentT95, studentTail } from '../../src/statistics/student-t.js';
import { digits } from '../support/digits.js';
import judge from '../study/judge.json' with { type: 'json' };
import distributions from './distributions.json' with { type: 'json' };

describe('Student’s t', () => {
  // Source: R, qt(0.975, df); tests/study/judge.R.
  it.each(judge.studentT95)('%i degrees of freedom', (degrees, expected) => {
    expect(digits(studentT95(degrees!), expected!)).toBeGreaterThanOrEqual(13);
  });
  // Source: jstat, good to eight digits here.
  it('agrees with jstat at any degrees of freedom', () => {
    for (let degrees = 1; degrees < 1200; degrees += 7) {
      expect(digits(studentT95(degrees), jstat.studentt.inv(0.975, degrees))).toBeGreaterThan(7);
    }
  });
  // Source: R, qt and pt; tests/statistics/distributions.R.
  it('has the quantiles and tails of R at any level, whole degrees or not', () => {
    for (const [chance, degrees, t] of distributions.student) {
      expect(digits(studentQuantile(chance!, degrees!), t!), `${chance} of ${degrees}`).toBeGreaterThanOrEqual(11);
    }
    for (const [t, degrees, chance] of distributions.studentTail) {
      expect(digits(studentTail(t!, degrees!), chance!)).toBeGreaterThanOrEqual(11);
    }
  });
});
