import { createRequire } from 'node:module';
import { bench, describe } from 'vitest';
import * as z from 'zod';
import { EXTENSION, PERSON } from '../support/inputs.js';

// The built package (run the build first). Compare ratios within one run only.
const require = createRequire(import.meta.url);
const { nextSession, planSession, recordSession } =
  require('cuffwork/plan') as typeof import('../../src/plan/index.js');

/** What is worked out is kept, so that no engine leaves the work out. */
export let kept: unknown = 0;

const limb = (side: 'left' | 'right') =>
  ({
    limb: 'leg',
    side,
    cuffWidthCm: 10,
    percentLop: 50,
    gaugeStepMmHg: 5,
    measured: { valueMmHg: 172, method: 'doppler' },
  }) as const;
const exercise = (name: string) => ({ ...EXTENSION, name }) as const;
const one = { ...PERSON, limbs: [limb('left')], exercises: [exercise('press')] };
const six = {
  ...PERSON,
  limbs: [limb('left'), limb('right')],
  exercises: Array.from({ length: 6 }, (_, index) => exercise(`press ${index}`)),
};

describe('a plan against parsing the readings of an estimate', () => {
  const flat = z.object({
    limb: z.string(),
    circumferenceCm: z.number().min(20).max(90),
    cuffWidthCm: z.number().min(3).max(20),
    systolicMmHg: z.number().min(50).max(300),
    diastolicMmHg: z.number().min(30).max(200),
    posture: z.enum(['seated', 'supine']),
  });
  const own = { ...PERSON, limb: 'leg', circumferenceCm: 56, cuffWidthCm: 10 };
  bench('a parse', () => {
    kept = flat.parse(own);
  });
  bench('planSession, 1 exercise', () => {
    kept = planSession(one);
  });
  bench('planSession, 6 exercises on 2 legs', () => {
    kept = planSession(six);
  });
});

describe('nextSession by the number of records', () => {
  const plan = planSession(one);
  const done = [
    { exercise: 'press', limb: 'leg', side: 'left', sets: [30, 15, 15, 15].map((repetitions) => ({ repetitions })) },
  ] as const;
  const dayOf = (index: number) => new Date(Date.UTC(2025, 0, 1 + index)).toISOString().slice(0, 10);
  const records = Array.from({ length: 365 }, (_, index) => recordSession({ plan, date: dayOf(index), items: done }));
  for (const count of [12, 365]) {
    const last = records.slice(-count);
    bench(`after ${count} records`, () => {
      kept = nextSession({ plan, records: last, rule: 'all-repetitions' });
    });
  }
});
