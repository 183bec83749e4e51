import { describe, expect } from 'vitest';
import sessionClock from '../../src/checks/session-clock.json' with { type: 'json' };
import occlusion from '../../src/checks/occlusion-equations.json' with { type: 'json' };
import oneRepMax from '../../src/checks/one-repetition-maximum.json' with { type: 'json' };
import loads from '../../src/checks/training-load.json' with { type: 'json' };
import units from '../../src/checks/units.json' with { type: 'json' };
import volume from '../../src/checks/volume-load.json' with { type: 'json' };
import {
  sessionTotals,
  centimetresToInches,
  estimateOcclusionPressure,
  estimateOneRepMax,
  inchesToCentimetres,
  kilogramsToPounds,
  kilopascalsToMmHg,
  mmHgToKilopascals,
  poundsToKilograms,
  sessionTimeline,
  testedOneRepMax,
  trainingLoad,
  type OcclusionInput,
  type OneRepMaxInput,
  type Prescription,
} from '../../src/index.js';
import { eachRow, expectWithin } from '../support/rows.js';

describe('occlusion pressure', () => {
  eachRow(occlusion, ({ equation, inputs, expected, tolerance }) => {
    const answer = estimateOcclusionPressure({ ...inputs, equation } as OcclusionInput);
    expect(answer.equation).toBe(equation);
    expectWithin(answer.value, expected, tolerance);
  });
});

describe('one-repetition maximum', () => {
  eachRow(oneRepMax, ({ equation, inputs, expected, tolerance }) => {
    expectWithin(estimateOneRepMax({ ...inputs, equation } as OneRepMaxInput).value, expected, tolerance);
  });
});

describe('training load', () => {
  eachRow(loads, ({ inputs: { maximum, ...rest }, expected, tolerance, ...row }) => {
    const load = trainingLoad({ oneRepMax: testedOneRepMax({ load: maximum }), ...rest } as Parameters<
      typeof trainingLoad
    >[0]);
    expectWithin(load.value, expected, tolerance);
    if ('reached' in row) expect(load.reached?.percentOneRepMax.toFixed(2)).toBe(String(row.reached));
  });
});

describe('units', () => {
  const there = {
    'pounds kilograms': [poundsToKilograms, kilogramsToPounds],
    'inches centimetres': [inchesToCentimetres, centimetresToInches],
    'mmHg kilopascals': [mmHgToKilopascals, kilopascalsToMmHg],
  } as const;
  eachRow(units, ({ from, value, to, expected, tolerance }) => {
    const [go, back] = there[`${from} ${to}` as keyof typeof there];
    expectWithin(go(value), expected, tolerance);
    expectWithin(back(expected), value, tolerance);
  });
});

describe('session clock', () => {
  eachRow(sessionClock, ({ inputs, timeUnderTensionS, sessionS }) => {
    const totals = sessionTotals(inputs as Prescription);
    expect(totals.timeUnderTension.value).toBe(timeUnderTensionS);
    expect(totals.sessionTime.value).toBe(sessionS);
    expect(sessionTimeline(inputs as Prescription).durationS).toBe(sessionS);
  });
});

describe('volume load', () => {
  const rest = { tempo: { eccentricS: 2, concentricS: 2 }, restS: 60, restriction: 'none' } as const;
  eachRow(volume, ({ inputs, expected }) => {
    expect(sessionTotals({ ...inputs, ...rest }).volumeLoad?.value).toBe(expected);
  });
});
