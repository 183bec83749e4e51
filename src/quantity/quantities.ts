import { CENTIMETRES_PER_INCH, KILOGRAMS_PER_POUND } from './conversion-factors.js';
import { frozen } from './frozen.js';
import type { Quantity, Unit } from './quantity.js';
import { KPA, LENGTH, METRIC_LENGTH, readingQuantities } from './readings.js';

export type { Quantity, Unit } from './quantity.js';

const FRACTION = [{ unit: 'a fraction of one', factor: 100 }] as const;
const MINUTES = [{ unit: 'milliseconds', factor: 0.001 }] as const;
const GRAMS = [{ unit: 'grams', factor: 0.001 }] as const;

/** The part of the vocabulary that sets a cuff: an app that only sets one ships no more. */
export const settingQuantities = frozen({
  occlusionMmHg: { name: 'occlusion pressure', unit: 'mm[Hg]', min: 50, max: 1000, slips: KPA },
  occlusionChanceLimitPercent: {
    name: 'highest chance that the artery is closed',
    unit: '%',
    min: 0.1,
    max: 50,
    slips: FRACTION,
  },
  gaugeStepMmHg: { name: 'gauge step', unit: 'mm[Hg]', min: 0.1, max: 50 },
  ceilingMmHg: { name: 'ceiling pressure', unit: 'mm[Hg]', min: 20, max: 1000, slips: KPA },
  percentLop: { name: 'percent of LOP', unit: '%', min: 1, max: 100, slips: FRACTION },
} as const satisfies Record<string, Quantity>);

/**
 * The vocabulary: every numeric field of the library, once. Hand-written guards, schemas and
 * docs all read their bounds here. A field has one meaning and one unit everywhere.
 *
 * @example
 * ```ts
 * import { quantities } from 'cuffwork';
 * quantities.cuffWidthCm.unit; // => 'cm'
 * ```
 */
export const quantities = frozen({
  ...readingQuantities,
  ...settingQuantities,
  fromWidthCm: {
    name: 'width of the cuff the pressure belongs to',
    unit: 'cm',
    min: 2,
    max: 40,
    slips: METRIC_LENGTH,
  },
  toWidthCm: { name: 'width of the cuff that will be used', unit: 'cm', min: 2, max: 40, slips: METRIC_LENGTH },
  valueMmHg: { name: 'measured occlusion pressure', unit: 'mm[Hg]', min: 50, max: 1000, slips: KPA },
  standardDeviationMmHg: { name: 'standard deviation of a pressure', unit: 'mm[Hg]', min: 0, max: 300 },
  bladderWidthCm: { name: 'width of the bladder in the cuff', unit: 'cm', min: 12, max: 18, slips: LENGTH },
  day: { name: 'number of the day', unit: '1', min: 0, max: 1_000_000, whole: true },
  restPercentLop: { name: 'percent of LOP in the rests', unit: '%', min: 1, max: 99, slips: FRACTION },
  intensityPercent: { name: 'share of VO2max or heart-rate reserve', unit: '%', min: 1, max: 100, slips: FRACTION },
  percentOneRepMax: { name: 'percent of 1RM', unit: '%', min: 1, max: 100, slips: FRACTION },
  load: { name: 'load', unit: 'kg', min: 0.1, max: 2000, slips: GRAMS },
  step: { name: 'smallest step between loads', unit: 'kg', min: 0.01, max: 100, slips: GRAMS },
  target: { name: 'weight to load', unit: 'kg', min: 0.1, max: 2000, slips: GRAMS },
  bar: { name: 'mass of the bar', unit: 'kg', min: 0, max: 200, slips: GRAMS },
  collars: { name: 'mass of both collars together', unit: 'kg', min: 0, max: 50, slips: GRAMS },
  mass: { name: 'mass of one plate', unit: 'kg', min: 0.01, max: 200, slips: GRAMS },
  count: { name: 'plates of that mass there are', unit: '1', min: 1, max: 10_000, whole: true },
  bodyMass: { name: 'body mass', unit: 'kg', min: 20, max: 800, slips: GRAMS },
  repetitions: { name: 'repetitions', unit: '{reps}', min: 1, max: 500, whole: true },
  repetitionsInReserve: { name: 'repetitions in reserve', unit: '{reps}', min: 0, max: 10 },
  reserveRpe: { name: 'rating on the 1–10 scale of repetitions in reserve', unit: '1', min: 1, max: 10 },
  velocityMPerS: {
    name: 'bar velocity',
    unit: 'm/s',
    min: 0.05,
    max: 3,
    slips: [
      { unit: 'cm/s', factor: 0.01 },
      { unit: 'mm/s', factor: 0.001 },
    ],
  },
  omniRating: { name: 'rating on the OMNI-RES 0–10 scale', unit: '1', min: 0, max: 10 },
  restS: { name: 'rest between sets', unit: 's', min: 0, max: 3600, slips: MINUTES },
  eccentricS: { name: 'eccentric (lowering) time', unit: 's', min: 0, max: 60, slips: MINUTES },
  bottomS: { name: 'pause at the bottom', unit: 's', min: 0, max: 60, slips: MINUTES },
  concentricS: { name: 'concentric (lifting) time', unit: 's', min: 0, max: 60, slips: MINUTES },
  topS: { name: 'pause at the top', unit: 's', min: 0, max: 60, slips: MINUTES },
  heldMmHg: { name: 'cuff pressure really held', unit: 'mm[Hg]', min: 1, max: 1000, slips: KPA },
  painNow: { name: 'pain now, 0 to 10', unit: '1', min: 0, max: 10 },
  before: { name: 'pain before the session, 0 to 10', unit: '1', min: 0, max: 10 },
  during: { name: 'worst pain in the session, 0 to 10', unit: '1', min: 0, max: 10 },
  after: { name: 'pain after the session, 0 to 10', unit: '1', min: 0, max: 10 },
  nextMorning: { name: 'pain the next morning, 0 to 10', unit: '1', min: 0, max: 10 },
  sessionOfDay: { name: 'number of the session on its day', unit: '1', min: 1, max: 10, whole: true },
  sessionRpe: { name: 'session RPE', unit: '1', min: 0, max: 10 },
  sessionsPerWeek: { name: 'sessions a week', unit: '1', min: 1, max: 21 },
  weeks: { name: 'weeks of the block', unit: '1', min: 1, max: 104 },
  nextPercentLop: { name: 'percent of LOP wanted next', unit: '%', min: 1, max: 100, slips: FRACTION },
  durationS: { name: 'time of the set', unit: 's', min: 0.1, max: 7200, slips: MINUTES },
  changeS: { name: 'time to change sides', unit: 's', min: 0, max: 600, slips: MINUTES },
  reperfusionS: { name: 'pause between exercises, cuff deflated', unit: 's', min: 0, max: 7200, slips: MINUTES },
  reperfusedBeforeS: {
    name: 'time the cuff was deflated before the exercise',
    unit: 's',
    min: 0,
    max: 7200,
    slips: MINUTES,
  },
  inflatedBeforeS: {
    name: 'time the cuff is inflated before the first set',
    unit: 's',
    min: 0,
    max: 3600,
    slips: MINUTES,
  },
  deflatedAfterS: {
    name: 'time the cuff stays inflated after the last set',
    unit: 's',
    min: 0,
    max: 3600,
    slips: MINUTES,
  },
  sessionS: { name: 'time the session took', unit: 's', min: 1, max: 86_400 },
  pressureMmHg: { name: 'cuff pressure', unit: 'mm[Hg]', min: 20, max: 1000, slips: KPA },
  restHeldMmHg: { name: 'cuff pressure really held in the rests', unit: 'mm[Hg]', min: 1, max: 1000, slips: KPA },
  restPressureMmHg: { name: 'cuff pressure in the rests', unit: 'mm[Hg]', min: 5, max: 1000 },
  bodyMassKg: {
    name: 'body mass',
    unit: 'kg',
    min: 20,
    max: 400,
    slips: [
      { unit: 'grams', factor: 0.001 },
      { unit: 'pounds', factor: KILOGRAMS_PER_POUND },
    ],
  },
  heightCm: {
    name: 'height',
    unit: 'cm',
    min: 60,
    max: 260,
    slips: [
      { unit: 'metres', factor: 100 },
      { unit: 'inches', factor: CENTIMETRES_PER_INCH },
    ],
  },
  bodyMassIndex: { name: 'body mass index', unit: 'kg/m2', min: 8, max: 100 },
  skinfoldMm: { name: 'skinfold', unit: 'mm', min: 1, max: 120, slips: [{ unit: 'centimetres', factor: 10 }] },
  bodyMassPercent: { name: 'share of body mass that is moved', unit: '%', min: 1, max: 100, slips: FRACTION },
  loadAu: { name: 'session-RPE load of a day', unit: '{AU}', min: 0, max: 14_400 },
  weekLoadAu: { name: 'session-RPE load of a week', unit: '{AU}', min: 0, max: 100_800 },
  restrictedS: { name: 'restriction time of a day', unit: 's', min: 0, max: 86_400 },
  volumeKg: { name: 'volume load of a day', unit: 'kg', min: 0, max: 1e6 },
  sessions: { name: 'sessions of a day', unit: '{sessions}', min: 0, max: 10, whole: true },
  restrictedAtRest: {
    name: 'sessions of a day with restriction at rest',
    unit: '{sessions}',
    min: 0,
    max: 10,
    whole: true,
  },
  restrictedSessions: {
    name: 'sessions of a day with restriction',
    unit: '{sessions}',
    min: 0,
    max: 10,
    whole: true,
  },
} as const satisfies Record<string, Quantity>);

/** The name of a numeric field of the vocabulary. */
export type QuantityName = keyof typeof quantities;

export {
  CIRCUMFERENCE_SITES,
  limbCircumference,
  LIMBS,
  POSTURES,
  SEXES,
  SIDES,
  type CircumferenceSite,
  type Limb,
  type Posture,
  type Sex,
  type Side,
} from './readings.js';

export const LOAD_UNITS = ['kg', 'lb'] as const;
/** Unit of a load: kilograms or pounds. */
export type LoadUnit = (typeof LOAD_UNITS)[number];

export const EXERCISE_MODES = ['resistance', 'aerobic', 'passive'] as const;
/** What is done under the cuff. It decides what counts as time under tension and which limits bring a caution. */
export type ExerciseMode = (typeof EXERCISE_MODES)[number];

/** UCUM code of a load unit. */
export const loadUnitCode = (unit: LoadUnit): 'kg' | '[lb_av]' => (unit === 'lb' ? '[lb_av]' : 'kg');

/** The load unit of a UCUM code. */
export const loadUnitOf = (code: Unit): LoadUnit => (code === '[lb_av]' ? 'lb' : 'kg');

/** A mass in the unit of a load. That grams were meant is the likely slip of kilograms alone. */
export const inLoadUnit = (mass: Quantity, code: Unit): Quantity =>
  code === 'kg' ? mass : { ...mass, unit: code, slips: [] };
