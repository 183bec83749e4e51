import { fitOcclusionEquation, type FitInput, type RecalibrateInput } from '../../src/study/index.js';
import judge from '../study/judge.json' with { type: 'json' };

const { valueMmHg, circumferenceCm, systolicMmHg, diastolicMmHg, ageYears, sex } = judge.people;

/** The invented people of the judge, and a fit to them. */
export const fitInput: FitInput = {
  id: 'lab-thigh',
  limb: 'leg',
  posture: 'seated',
  cuffWidthCm: 11,
  terms: ['circumferenceCm', 'systolicMmHg', 'diastolicMmHg', 'ageYears', 'sex'],
  rows: valueMmHg.map((value, row) => ({
    valueMmHg: value,
    circumferenceCm: circumferenceCm[row]!,
    systolicMmHg: systolicMmHg[row]!,
    diastolicMmHg: diastolicMmHg[row]!,
    ageYears: ageYears[row]!,
    sex: sex[row] as 'male' | 'female',
  })),
};
/** The first twenty of them, for a published equation. */
export const recalibrateInput: RecalibrateInput = {
  id: 'lab-2019',
  equation: 'thigh-2019',
  limb: 'leg',
  posture: 'seated',
  cuffWidthCm: 18,
  rows: fitInput.rows.slice(0, 20) as RecalibrateInput['rows'],
};
export const fittedExample = fitOcclusionEquation(fitInput);
