import { execFileSync } from 'node:child_process';
import { describe, expect, it } from 'vitest';

describe('the example of the README', () => {
  const page = execFileSync('node', ['examples/athlete.mjs'], { encoding: 'utf8' });

  // Worked by hand from the inputs in the example.
  it.each([
    ['72 + 1.25 × (23 + 17.9 × 51 / 10) = 214.86', '≈ 214.86 mmHg'],
    ['half of 214.86 is 107.43, down to the 5 mmHg step', 'rounded down, steps of 5 mmHg: 105 mmHg'],
    ['half of 172 is 86, down to the 5 mmHg step', 'rounded down, steps of 5 mmHg: 85 mmHg'],
    ['20 × 36 / (37 − 10) = 26.67', '≈ 26.67 kg'],
    ['30 % of 26.67 is 8.00, nearest 2.5 kg step', 'rounded to the nearest, steps of 2.5 kg: 7.5 kg'],
    ['30 % of 80 is 24, nearest 5 kg step', 'rounded to the nearest, steps of 5 kg: 25 kg'],
    ['75 × 4 s and three rests of 30 s', 'time under tension 5:00 min, session time 6:30 min'],
    ['75 × 7.5 kg', 'volume load 562.5 kg'],
    ['30 × 4 s with the cuff inflated, longest set 10 × 4 s', 'restriction 2:00 min, longest unbroken 0:40 min'],
    ['390 s and 120 s', 'left leg: 8:30 min of restriction in 2 exercises'],
  ])('prints what a hand calculation gives: %s', (_working, line) => {
    expect(page).toContain(line);
  });

  it('prints the cautions', () => {
    expect(page).toContain('Local codes, the treating clinician and a licensed practitioner decide.');
    expect(page).toContain('numbness or tingling that stays after deflation');
  });
});
