import { expect, it } from 'vitest';
import { planSession } from '../../src/plan/index.js';
import { planOf, recordOf } from '../support/plans.js';

const bytes = (document: object): number => new TextEncoder().encode(JSON.stringify(document)).length;
const one = planOf({ percentOneRepMax: 20, step: 2.5 });
const leg = one.request.limbs[0]!;
const six = planSession({
  ...one.request,
  limbs: [leg, { ...leg, side: leg.side === 'left' ? 'right' : 'left' }],
  exercises: Array.from({ length: 6 }, (_, index) => ({ ...one.request.exercises[0]!, name: `exercise ${index + 1}` })),
});

// As measured, a little above.
it.each([
  ['a plan of one exercise on one leg', one, 15_800],
  ['a plan of six exercises on two legs', six, 96_100],
  ['a record of one exercise on one leg', recordOf(one, [5]), 7_330],
])('%s keeps within its bytes of JSON', (_name, document, most) => {
  expect(bytes(document)).toBeLessThanOrEqual(most);
});

it('repeats no formula, symbols, sources or sentence of an assumption', () => {
  const text = JSON.stringify([six, recordOf(six, [5])]);
  expect(text).not.toMatch(/"(formula|symbols|sources)":/);
  for (const { assumptions, cautions } of six.answers)
    for (const part of [...assumptions, ...cautions]) expect(part).not.toHaveProperty('text');
});
