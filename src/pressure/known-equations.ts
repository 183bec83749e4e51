import { frozen } from '../quantity/frozen.js';
import type { SourceId } from '../evidence/sources.js';
import type { Limb, Posture } from '../quantity/quantities.js';

/** An equation that was published, but cannot be had here. */
export interface KnownEquation {
  /** Id of the equation. */
  readonly id: string;
  /** What it is, in words. */
  readonly about: string;
  /** Limb that it applies to. */
  readonly limb: Limb | 'any';
  /** Cuff widths of the study, where known [cm]. */
  readonly cuffWidthCm?: readonly number[];
  /** Posture of the study, where known. */
  readonly posture?: Posture;
  /** Number of people in the study, where known. */
  readonly people?: number;
  /** What it draws on, in words. */
  readonly predictors: readonly string[];
  /** Its published error, in words. */
  readonly error: string;
  /** Why it cannot be had. */
  readonly reason: string;
  /** Id of the publication. */
  readonly source: SourceId;
}

const COEFFICIENTS = 'we did not find its coefficients in the text we read';

/**
 * Occlusion-pressure equations that are known but not available, with their published error and why. No coefficient is
 * made up for them.
 *
 * @example
 * ```ts
 * import { knownEquations } from 'cuffwork/explain';
 * knownEquations.find(({ id }) => id === 'thigh-seated-2024')?.error; // => 'R² 0.54; limits of agreement ± 18.35 mmHg in the sample it was fitted on'
 * ```
 */
export const knownEquations = frozen([
  {
    id: 'padding-table-2006',
    about: 'table of tissue padding coefficients by circumference, for (SBP + 10) / K',
    limb: 'any',
    people: 30,
    predictors: ['circumference of 20 to 75 cm'],
    error: 'below the measured pressure in 62 % of 143 patients',
    reason: 'we have not checked its table; use padding-2006 and give the coefficient yourself',
    source: 'padding-2006',
  },
  {
    id: 'thigh-seated-2024',
    about: 'thigh, 18 cm cuff, seated',
    limb: 'leg',
    cuffWidthCm: [18],
    posture: 'seated',
    people: 143,
    predictors: ['thigh circumference', 'systolic pressure', 'age'],
    error: 'R² 0.54; limits of agreement ± 18.35 mmHg in the sample it was fitted on',
    reason: COEFFICIENTS,
    source: 'thigh-seated-2024',
  },
  {
    id: 'thigh-widths-2025',
    about: 'thigh, 11, 13 and 18 cm cuffs, seated',
    limb: 'leg',
    cuffWidthCm: [11, 13, 18],
    posture: 'seated',
    people: 116,
    predictors: ['thigh circumference', 'systolic pressure', 'diastolic pressure', 'age', 'sex'],
    error: 'R² 0.60 to 0.70, more for the narrower cuffs',
    reason: COEFFICIENTS,
    source: 'thigh-widths-2025',
  },
  {
    id: 'thigh-12-to-5-2024',
    about: 'thigh, 5 cm cuff from the pressure with a 12 cm cuff',
    limb: 'leg',
    cuffWidthCm: [5],
    people: 170,
    predictors: ['occlusion pressure with a 12 cm cuff', 'thigh circumference'],
    error: 'bias 7.1 mmHg, limits of agreement −133.6 to 147.8 mmHg; its publication finds it not valid',
    reason: COEFFICIENTS,
    source: 'narrow-cuffs-2024',
  },
  {
    id: 'arm-widths-2016',
    about: 'arm, 5, 10 and 12 cm cuffs',
    limb: 'arm',
    cuffWidthCm: [5, 10, 12],
    predictors: ['not checked'],
    error: 'not checked',
    reason: COEFFICIENTS,
    source: 'cuff-width-2016',
  },
  {
    id: 'thigh-widths-2012',
    about: 'thigh, 5 and 13.5 cm cuffs, supine',
    limb: 'leg',
    cuffWidthCm: [5, 13.5],
    posture: 'supine',
    people: 116,
    predictors: ['thigh circumference', 'ankle pressure', 'diastolic pressure'],
    error: 'not checked',
    reason: COEFFICIENTS,
    source: 'cuff-width-2012',
  },
  {
    id: 'arm-doppler-2017',
    about: 'arm, total occlusion pressure',
    limb: 'arm',
    predictors: ['not checked'],
    error: 'not checked',
    reason: 'no text of it was found',
    source: 'arm-doppler-2017',
  },
  {
    id: 'thigh-men-2025',
    about: 'thigh, men',
    limb: 'leg',
    people: 158,
    predictors: ['blood pressure', 'fat percentage', 'circumference', 'body-mass index'],
    error: 'not checked',
    reason: COEFFICIENTS,
    source: 'thigh-men-2025',
  },
  {
    id: 'leg-circumference-2025',
    about: 'leg, 10 cm cuff, supine, men',
    limb: 'leg',
    cuffWidthCm: [10],
    posture: 'supine',
    people: 104,
    predictors: ['leg circumference'],
    error: 'R² 0.352 (dominant leg) and 0.360 (other leg)',
    reason: 'we did not find its slopes in the text we read',
    source: 'leg-circumference-2025',
  },
  {
    id: 'pulse-pressure-2021',
    about: 'thigh, supine',
    limb: 'leg',
    posture: 'supine',
    people: 42,
    predictors: ['pulse pressure', 'thigh circumference'],
    error: 'mean absolute error 11.1 mmHg (9.7 to 12.6)',
    reason: COEFFICIENTS,
    source: 'pulse-pressure-2021',
  },
  {
    id: 'posture-abstract-2018',
    about: 'thigh, supine and seated',
    limb: 'leg',
    people: 20,
    predictors: ['supine: thigh circumference, diastolic pressure', 'seated: height only'],
    error: 'R² 0.55 supine, 0.277 seated',
    reason: COEFFICIENTS,
    source: 'posture-abstract-2018',
  },
  {
    id: 'position-and-size-2024',
    about: 'thigh, 11 and 18 cm cuffs in three postures',
    limb: 'leg',
    cuffWidthCm: [11, 18],
    people: 51,
    predictors: ['systolic pressure at 18 cm', 'thigh circumference at 11 cm'],
    error: 'not checked',
    reason: COEFFICIENTS,
    source: 'position-and-size-2024',
  },
  {
    id: 'athletes-2018',
    about: 'arm (6 and 13 cm) and leg (13 and 18 cm) of athletes',
    limb: 'any',
    cuffWidthCm: [6, 13, 18],
    people: 20,
    predictors: ['sex', 'systolic pressure'],
    error: 'R² 0.77 and 0.83 (arm), 0.61 and 0.63 (leg); 20 people, over-fitted',
    reason: COEFFICIENTS,
    source: 'athletes-2018',
  },
  {
    id: 'arm-hierarchical',
    about: 'arm',
    limb: 'arm',
    people: 49,
    predictors: ['systolic pressure', 'arm circumference'],
    error: 'systolic pressure 54.6 % of the variance, arm circumference 8.1 points more',
    reason: COEFFICIENTS,
    source: 'arm-hierarchical',
  },
  {
    id: 'adaptive-tourniquet-2013',
    about: 'arm, patients',
    limb: 'arm',
    predictors: ['not checked'],
    error: 'not checked',
    reason: COEFFICIENTS,
    source: 'adaptive-tourniquet-2013',
  },
] as const satisfies readonly KnownEquation[]);
