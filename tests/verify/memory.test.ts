import { execFileSync } from 'node:child_process';
import { expect, it } from 'vitest';
import budgets from './budgets.json' with { type: 'json' };

const CALLS = 1e7;

/** Run on its own: an app that estimates on and on, with readings that are seldom the same twice. */
const app = `
  import { attempt, estimateOcclusionPressure } from 'cuffwork';
  const postures = ['supine', 'seated', 'standing'];
  let kept;
  const estimate = (turn) => {
    kept = attempt(estimateOcclusionPressure, {
      limb: turn % 2 ? 'arm' : 'leg',
      circumferenceCm: 20 + ((turn * 0.618034) % 50),
      systolicMmHg: 90 + ((turn * 0.414214) % 100),
      diastolicMmHg: 50 + ((turn * 0.732051) % 60),
      cuffWidthCm: 4 + ((turn * 0.236068) % 16),
      posture: postures[turn % 3],
    });
  };
  const heap = () => { gc(); gc(); return process.memoryUsage().heapUsed; };
  for (let turn = 0; turn < ${CALLS / 10}; turn += 1) estimate(turn);
  const before = heap();
  for (let turn = 0; turn < ${CALLS}; turn += 1) estimate(turn);
  console.log(heap() - before);
`;

it(`the heap is as large after ${CALLS} estimates as before them`, () => {
  const grown = Number(execFileSync(process.execPath, ['--expose-gc', '--input-type=module', '-e', app]));
  console.log(`heap: ${(grown / 1024).toFixed(0)} kB more after ${CALLS} estimates`);
  // One byte a call would be 10 MB; what the engine itself learns about the code is some 100 kB.
  expect(grown).toBeLessThanOrEqual(budgets.heapGrowthBytes);
});
