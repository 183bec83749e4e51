import { describe, expect, it } from 'vitest';
import {
  sessionTotals,
  estimateOcclusionPressure,
  estimateOneRepMax,
  measuredOcclusionPressure,
  targetCuffPressure,
  testedOneRepMax,
  trainingLoad,
  type Answer,
} from '../../src/index.js';
import { checkAnswer } from '../../src/text/index.js';
import { messages } from '../../src/text/index.js';
import { teachingMessages } from '../../src/teaching/messages.js';
import { CHAIN } from '../support/inputs.js';

const seated = { limb: 'leg', circumferenceCm: 54, systolicMmHg: 120, diastolicMmHg: 70, cuffWidthCm: 10 } as const;
const ratio = estimateOcclusionPressure({ ...seated, posture: 'supine', equation: 'width-ratio-1993' });
const curve = estimateOcclusionPressure({ ...seated, posture: 'seated' });
const measured = measuredOcclusionPressure({ valueMmHg: 172, method: 'doppler', limb: 'leg' });
const target = targetCuffPressure({ occlusion: measured, percentLop: 50, gaugeStepMmHg: 5 });
const ofEstimate = targetCuffPressure({ occlusion: ratio, percentLop: 60, gaugeStepMmHg: 2 });
const maximum = estimateOneRepMax({ load: 60, repetitions: 8, repetitionsInReserve: 1, equation: 'epley-1985' });
const load = trainingLoad({ oneRepMax: maximum, percentOneRepMax: 30, step: 2.5 });
const rack = trainingLoad({
  oneRepMax: testedOneRepMax({ load: 50 }),
  percentOneRepMax: 33,
  available: [10, 14, 18, 22],
});
const free = trainingLoad({ oneRepMax: testedOneRepMax({ load: 54.6 }), percentOneRepMax: 30 });
const session = sessionTotals({ ...CHAIN, load: 20 });

/*
 * Every number below is worked out by hand in the comment next to it, from the printed formulas: width ratio
 * (SBP − DBP) × C / (3 × W) + DBP (Clin Orthop Relat Res 1993;286:257–261, coefficients unconfirmed); Epley
 * w × (1 + r / 30); Brzycki w × 36 / (37 − r); percentages, sums and rounding by definition.
 */
const rows: readonly (readonly [Answer, number, string, string, (readonly string[])?])[] = [
  [ratio, 160, 'right', 'check-right'], // 50 × 54 / 30 + 70
  [ratio, 30, 'wrong', 'check-swapped-pressures'], // −50 × 54 / 30 + 120
  [ratio, 90, 'wrong', 'check-diastolic-left-out'], // 160 − 70
  [ratio, 73.1, 'wrong', 'check-swapped-lengths'], // 50 × 10 / (3 × 54) + 70
  [ratio, 105.4, 'wrong', 'check-circumference-in-inches'], // 50 × 21.26 / 30 + 70
  [ratio, 298.6, 'wrong', 'check-width-in-inches'], // 50 × 54 / (3 × 3.937) + 70
  [ratio, 21.33, 'wrong', 'check-other-unit'], // 160 mmHg in kPa
  [ratio, 1600, 'wrong', 'check-decimal-point'],
  [ratio, 131, 'wrong', 'check-wrong'],
  [curve, 191.66, 'wrong', 'check-posture-left-out'], // 70 + 25 + 17.9 × 54 / 10 = 191.66
  [curve, 160, 'wrong', 'check-other-equation'], // the width ratio of the same readings
  [target, 85, 'right', 'check-right'], // 86 down to fives
  [target, 86, 'wrong', 'check-not-rounded'],
  [target, 90, 'wrong', 'check-rounded-wrong-way'],
  [target, 87, 'wrong', 'check-not-a-step'],
  [target, 172, 'wrong', 'check-percent-left-out'],
  [target, 344, 'wrong', 'check-percent-divided'], // 172 / 0.5
  [ofEstimate, 96, 'right', 'check-right'], // 0.6 × 160
  [ofEstimate, 64, 'wrong', 'check-percent-left-over'], // 0.4 × 160
  [ofEstimate, 54, 'wrong', 'check-diastolic-left-out', ['occlusion']], // 0.6 × 90
  [ofEstimate, 18, 'wrong', 'check-swapped-pressures', ['occlusion']], // 0.6 × 30
  [maximum, 78, 'right', 'check-right'], // 60 × (1 + 9 / 30)
  [maximum, 76, 'wrong', 'check-reserve-left-out'], // 60 × (1 + 8 / 30)
  [maximum, 74, 'wrong', 'check-reserve-subtracted'], // 60 × (1 + 7 / 30)
  [maximum, 80, 'wrong', 'check-one-repetition-off'], // 60 × (1 + 10 / 30)
  [maximum, 77.14, 'wrong', 'check-other-equation'], // Brzycki: 60 × 36 / 28
  [maximum, 171.96, 'wrong', 'check-other-unit'], // 78 / 0.45359237 lb
  [load, 22.5, 'right', 'check-right'], // 23.4 to the nearest 2.5
  [load, 23.4, 'wrong', 'check-not-rounded'],
  [load, 25, 'wrong', 'check-rounded-wrong-way'],
  [load, 22.8, 'wrong', 'check-reserve-left-out', ['oneRepMax']], // 0.3 × 76
  [rack, 18, 'right', 'check-right'], // 16.5; 14 and 18 are around it, 18 is nearer
  [rack, 14, 'wrong', 'check-rounded-wrong-way'],
  [free, 16.38, 'right', 'check-right'], // 0.3 × 54.6
  [free, 16.4, 'rounded', 'check-rounded'],
  [free, 16, 'rounded', 'check-rounded'],
  [trainingLoad({ oneRepMax: 22, percentOneRepMax: 20 }), 4, 'wrong', 'check-rounded-too-far'], // 4.4
  [session.volumeLoad!, 1500, 'right', 'check-right'], // 75 × 20
  [session.volumeLoad!, 75, 'wrong', 'check-load-left-out'],
  [session.volumeLoad!, 600, 'wrong', 'check-one-set'], // 30 × 20
  [session.restrictionTime, 390, 'right', 'check-right'], // 75 × 4 + 3 × 30
  [session.restrictionTime, 300, 'wrong', 'check-rests-left-out'],
  [session.restrictionTime, 420, 'wrong', 'check-rest-after-last-set'],
  [session.restrictionTime, 6.5, 'wrong', 'check-other-unit'], // minutes
  [session.restrictionTime, 240, 'wrong', 'check-one-phase'], // 75 × 2 + 90
];

const cases = rows.map(([answer, given, verdict, code, path = []]) => ({ answer, given, verdict, code, path }));

describe('checkAnswer', () => {
  it.each(cases)('$given: $code', ({ answer, given, verdict, code, path }) => {
    const check = checkAnswer(answer, given);
    expect([check.verdict, check.code, check.path]).toEqual([verdict, code, path]);
    expect(check.difference).toBe(given - answer.value);
    // A sentence with every slot filled.
    expect(check.text).not.toMatch(/[{}]|NaN|undefined/);
  });
  it('has a row for every step that it can find', () => {
    const seen = new Set(rows.map(([, , , code]) => code));
    expect(Object.keys(teachingMessages).filter((code) => !seen.has(code))).toEqual([]);
    expect(messages).toMatchObject(teachingMessages);
  });
  it('works on an answer that was stored', () => {
    const stored = JSON.parse(JSON.stringify(ofEstimate)) as Answer;
    expect(checkAnswer(stored, 54)).toEqual(checkAnswer(ofEstimate, 54));
  });
  it('names what a wrong step is worked out with', () => {
    expect(checkAnswer(ratio, 90).text).toContain('Add 70 mmHg');
    expect(checkAnswer(maximum, 76).text).toContain('9 repetitions');
    expect(checkAnswer(ratio, 131).text).toContain('-29 mmHg');
  });
  it('finds no step where it does not know the working', () => {
    const edited = { ...ratio, value: 150 };
    expect(checkAnswer(edited, 90).code).toBe('check-wrong');
    expect(checkAnswer({ ...ratio, inputs: { limb: 'tail' } }, 90).code).toBe('check-wrong');
  });
  it('refuses what is no answer or no number', () => {
    expect(() => checkAnswer(5 as never, 5)).toThrow('an answer');
    expect(() => checkAnswer({ ...ratio, unit: undefined } as never, 5)).toThrow('answer must be an answer');
    expect(() => checkAnswer(ratio, NaN)).toThrow('given must be a finite number');
    expect(() => checkAnswer(ratio, '171' as never)).toThrow('given must be a finite number');
    expect(() => checkAnswer(ratio, undefined as never)).toThrow('given is missing');
  });
});
