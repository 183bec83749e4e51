import { describe, expect, it } from 'vitest';
import { countsOf, lighter, notOffered, sets, share, stated } from '../support/lighter.js';
import { planOf } from '../support/plans.js';

// Brzycki: 37 − 36 p repetitions to failure, so 1 at 100 %, 10 at 75 % and 8.2 at 80 %.
describe('the same repetitions in reserve', () => {
  it('are so many more repetitions in each set', () => {
    const found = lighter(planOf(share(100, 1)), 25);
    expect(countsOf(found, 'repetitions-in-reserve')).toEqual([10]);
    const option = found.options.find(({ keeps }) => keeps === 'repetitions-in-reserve')!;
    expect(option.assumptions.map(({ code, values }) => [code, values])).toEqual([
      ['lighter-reserve-of-fresh-set', { from: 1, to: 10 }],
    ]);
    expect(option.cautions.map(({ code }) => code)).not.toContain('lighter-reserve-without-cuff');
  });

  it('are what they are without a cuff, said where one is used', () => {
    const found = lighter(planOf(share(90, 2, { restriction: 'continuous' })), 10);
    const option = found.options.find(({ keeps }) => keeps === 'repetitions-in-reserve')!;
    expect(option.cautions.map(({ severity, code }) => `${severity} ${code}`)).toContain(
      'caution lighter-reserve-without-cuff',
    );
  });

  it.each([
    [10, 75, undefined],
    [11, 75, { repetitions: 10 }],
    [9, 80, { repetitions: 8.2 }],
  ])('are not known of %i repetitions at %i %% that are more than to failure', (count, percent, values) => {
    // Of several sets, one is enough.
    const found = lighter(planOf(share(percent, 1, { sets: sets(1, count) })), 10);
    const passed = found.notOffered.filter(({ keeps }) => keeps === 'repetitions-in-reserve');
    expect(passed.map((one) => [one.code, one.values])).toEqual(values ? [['lighter-reserve-passed', values]] : []);
  });

  it('are not known where no equation is valid at the lighter load', () => {
    expect(notOffered(lighter(planOf(share(80, 2)), 90))).toContainEqual([
      'repetitions-in-reserve',
      'lighter-reserve-not-known',
    ]);
  });

  it('are not known where no maximum is', () => {
    expect(notOffered(lighter(planOf(stated(80)), 10))).toEqual([
      ['repetitions-in-reserve', 'lighter-reserve-not-known'],
    ]);
  });

  // 80 kg of 100 kg, which are 220.46226218 lb.
  it('are known of a load in another unit than its maximum', () => {
    const own = share(75, 2, { oneRepMax: { load: 220.46226218, unit: 'lb' }, unit: 'kg', step: 1 });
    const found = lighter(planOf(own), 10);
    expect(found.options[0]!.load.unit).toBe('kg');
    expect(countsOf(found, 'repetitions-in-reserve')).toEqual([4]);
  });
});
