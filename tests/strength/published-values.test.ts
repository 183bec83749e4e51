import { readFileSync } from 'node:fs';
import { describe, expect } from 'vitest';
import bodyMass from '../../src/checks/body-mass-load.json' with { type: 'json' };
import ends from '../../src/checks/equation-ends.json' with { type: 'json' };
import charts from '../../src/checks/percent-at-repetitions.json' with { type: 'json' };
import firstTest from '../../src/checks/first-test.json' with { type: 'json' };
import plateLoading from '../../src/checks/plate-loading.json' with { type: 'json' };
import plateSetRows from '../../src/checks/plate-sets.json' with { type: 'json' };
import relativeLoad from '../../src/checks/relative-load.json' with { type: 'json' };
import reliability from '../../src/checks/reliability.json' with { type: 'json' };
import restricted from '../../src/checks/restricted-sets.json' with { type: 'json' };
import repetitions from '../../src/checks/repetitions-at-percent.json' with { type: 'json' };
import {
  attempt,
  bodyMassLoad,
  equations,
  estimateRelativeLoad,
  loadPlates,
  percentAtRepetitions,
  plateSets,
  repetitionsAtPercent,
  testedOneRepMax,
  type BodyMassInput,
  type OneRepMaxEquation,
  type PercentInput,
  type PlatesInput,
  type RelativeLoadInput,
  type RepetitionsInput,
  type TestedInput,
} from '../../src/index.js';
import { minimalDetectableChange, standardErrorOfMeasurement, typicalError } from '../../src/equations.js';
import { sources } from '../../src/text/index.js';
import { eachRow, expectWithin } from '../support/rows.js';
import { withWorking } from '../support/invariants.js';

const all: readonly OneRepMaxEquation[] = equations.oneRepetitionMaximum;

describe('ends of the repetition equations', () => {
  eachRow(ends, ({ equation, kAtOne, pole, levelsAt, turnsAt }) => {
    const { apply, domain, inverse } = all.find(({ id }) => id === equation)!;
    if (kAtOne !== null) expectWithin(apply(1, 1), kAtOne, 5.1e-7);
    if (pole !== null) {
      // A pole changes the sign: half of the last printed digit before it, and behind it.
      expect(apply(1, pole - 5.1e-9)).toBeGreaterThan(1e7);
      expect(apply(1, pole + 5.1e-9)).toBeLessThan(-1e7);
    }
    if (levelsAt !== null) {
      expectWithin(apply(1, 1e6), levelsAt, 5.1e-7);
      expect(inverse!.floor!.toFixed(3)).toBe((1 / levelsAt).toFixed(3));
    }
    if (turnsAt !== null) {
      // Steepness of the curve half of the last printed digit before the turning point, and behind it.
      const slope = (r: number) => apply(1, r + 1e-4) - apply(1, r - 1e-4);
      expect(slope(turnsAt - 0.0051)).toBeGreaterThan(0);
      expect(slope(turnsAt + 0.0051)).toBeLessThan(0);
      expect(domain!.to!).toBeLessThan(turnsAt);
    }
  });
});

describe('repetitions at a percentage', () => {
  eachRow(repetitions, ({ equation, percentOneRepMax, expected, tolerance }) => {
    const bare = all.find(({ id }) => id === equation)!.inverse!.apply(percentOneRepMax / 100);
    const answer = attempt(repetitionsAtPercent, { equation, percentOneRepMax } as RepetitionsInput);
    if (expected === null) expect(bare).toBeNaN();
    else expectWithin(bare, expected, tolerance);
    expect(answer.ok).toBe(expected !== null && expected >= 1 && expected <= 20);
    if (answer.ok) expect(answer.value.value).toBe(bare);
  });
});

describe('percentage at a number of repetitions', () => {
  eachRow(charts, ({ chart, repetitions: count, expected, grade }) => {
    const answer = percentAtRepetitions({ chart, repetitions: count } as PercentInput);
    expect(answer).toMatchObject({ value: expected, evidence: grade, equation: chart });
  });
});

describe('percentage by bar velocity or rating', () => {
  eachRow(relativeLoad, ({ inputs, expected, tolerance, grade }) => {
    const answer = estimateRelativeLoad(inputs as RelativeLoadInput);
    expectWithin(answer.value, expected, tolerance);
    expect(answer.evidence).toBe(grade);
  });
});

describe('error of a tested maximum', () => {
  eachRow(firstTest, ({ inputs, expected, tolerance, cautions, source, grade }) => {
    const answer = testedOneRepMax(inputs as TestedInput);
    expectWithin(answer.standardDeviation!, expected, tolerance);
    expect(withWorking(answer)).toMatchObject({ evidence: grade, sources: [source] });
    expect(answer.cautions.map(({ code }) => code)).toEqual(cautions);
  });
});

describe('repetitions under the cuff, as the guide on loads prints them', () => {
  const lines = readFileSync('docs/loads.md', 'utf8').split('\n');
  /** The figures of every row of a table that begins with a cell. */
  const printed = (first: string) =>
    lines
      .map((line) => line.split('|').map((cell) => cell.trim()))
      .filter(([, cell]) => cell === first)
      .map(([, , ...cells]) => cells.flatMap((cell) => cell.match(/\d+(\.\d+)?/g) ?? []).map(Number));
  eachRow(restricted, ({ percentOneRepMax, set, values, reserveError, source }) => {
    const first = percentOneRepMax === undefined ? String(set ?? 'all') : `${percentOneRepMax} % of 1RM`;
    expect(printed(first)).toContainEqual([...values, ...(reserveError ?? [])]);
    expect(sources).toHaveProperty(source);
  });
});

describe('load that body mass is', () => {
  eachRow(bodyMass, ({ inputs, expected, standardDeviation, tolerance, grade }) => {
    const answer = bodyMassLoad(inputs as BodyMassInput);
    expectWithin(answer.value, expected, tolerance);
    if (standardDeviation === null) expect(answer).not.toHaveProperty('standardDeviation');
    else expectWithin(answer.standardDeviation!, standardDeviation, tolerance);
    expect(answer.evidence).toBe(grade);
  });
});

describe('plates', () => {
  eachRow(plateSetRows, ({ set, bar, collars, masses, source, grade }) => {
    const plates = masses.map((mass) => ({ mass }));
    expect(plateSets[set as keyof typeof plateSets]).toMatchObject({ bar, collars, plates, source, evidence: grade });
  });
  eachRow(plateLoading, ({ inputs, expected, perSide }) => {
    const loaded = loadPlates(inputs as PlatesInput);
    expect(loaded.value).toBe(expected);
    if (perSide) expect(loaded.perSide).toEqual(perSide);
  });
});

describe('reliability', () => {
  const formulas: Readonly<Record<string, (...values: number[]) => number>> = {
    minimalDetectableChange: (sem) => minimalDetectableChange(sem!),
    standardErrorOfMeasurement: (sd, icc) => standardErrorOfMeasurement(sd!, icc!),
    typicalError: (sd) => typicalError(sd!),
  };
  eachRow(reliability, ({ formula, inputs, expected, tolerance }) => {
    expectWithin(formulas[formula]!(...inputs), expected, tolerance);
  });
});
