import type { cautionAudiences } from './audiences.js';

/**
 * The codes of cautions and of assumptions, of every layer: an answer carries them, and an app decides by them. The
 * sentences of cautions are in `messages.ts` of their layer, those of assumptions in `text/assumptions.ts`; the compiler
 * compares both with these lists. The codes of most cautions are in `audiences.ts`, with whom each is for.
 */

/** The assumptions that answers of every layer make. */
export type AnswerAssumption = 'normal-interval' | 'log-normal-interval';

/** What the pressure layer assumes. */
export type PressureAssumption =
  | 'readings-exact'
  | 'readings-partly-exact'
  | 'reading-errors-given'
  | 'circumference-site-not-checked'
  | 'circumference-site-third'
  | 'fitted-range-not-known'
  | 'width-taken-from-publication'
  | 'error-from-means'
  | 'error-from-fit'
  | 'error-of-prediction'
  | 'error-of-curve'
  | 'new-person-and-laboratory'
  | 'error-not-known'
  | 'laboratories-differ'
  | 'own-laboratory'
  | 'arm-posture-not-known'
  | 'own-working'
  | 'nominal-person'
  | 'widths-assumed'
  | 'index-band-12'
  | 'index-band-18'
  | 'padding-from-caller'
  | 'width-ratio-bias'
  | 'padding-too-low'
  | 'width-not-in-formula'
  | 'error-between-methods'
  | 'error-largest-published'
  | 'error-given'
  | 'ratio-to-curve-kept'
  | 'posture-ratio'
  | 'normal-update'
  | 'estimate-holds-measuring'
  | 'side-error-from-thigh'
  | 'day-error-from-thigh'
  | 'width-error-shared'
  | 'bias-published'
  | 'rule-of-the-trade'
  | 'bands-without-gaps'
  | 'measured-posture-as-planned'
  | 'measured-cuff-as-planned'
  | 'occlusion-exact';

/** What the strength layer assumes. */
export type StrengthAssumption =
  | 'one-repetition-is-the-maximum'
  | 'reserve-added'
  | 'rational-form'
  | 'decimal-form'
  | 'constant-one-thirtieth'
  | 'retest-error'
  | 'first-test-error'
  | 'error-of-publication'
  | 'error-share'
  | 'no-error-above-ten'
  | 'regression-of-its-device'
  | 'regression-unit-inferred'
  | 'cubic-form-inferred'
  | 'fitted-on'
  | 'equation-default'
  | 'equation-fitted'
  | 'equation-compared'
  | 'reserve-of-rating'
  | 'one-rep-max-exact'
  | 'body-mass-load-exact'
  | 'body-mass-counted'
  | 'share-from-segments'
  | 'chart-as-printed'
  | 'mean-propulsive-velocity'
  | 'mean-velocity'
  | 'peak-velocity'
  | 'relative-load-no-error'
  | 'loaded-nearest'
  | 'loaded-not-above'
  | 'plates-in-pairs';

/** What the session layer assumes. */
export type SessionAssumption =
  | 'clock-starts-with-inflation'
  | 'tempo-kept'
  | 'one-limb-taken'
  | 'standard-deviation-sample'
  | 'standard-deviation-population'
  | 'standard-deviation-not-reported'
  | 'sides-independent';

/** What the plan layer assumes. */
export type PlanAssumption =
  | 'load-as-stated'
  | 'load-range-lower'
  | 'lower-load-lifted'
  | 'reperfusion-taken'
  | 'tempo-not-recorded'
  | 'pressure-as-planned'
  | 'readings-carried'
  | 'lighter-reserve-of-fresh-set'
  | 'lower-of-two-sides'
  | 'screening-age-unknown'
  | 'screening-dated'
  | 'score-for-inpatients'
  | 'score-cut-offs'
  | 'score-points-differ';

/** The code of an assumption. */
export type AssumptionCode =
  AnswerAssumption | PressureAssumption | StrengthAssumption | SessionAssumption | PlanAssumption;

/** A condition that `screen` asks about: its question, and the caution of a yes. */
export type ScreeningCode =
  | 'venous-thromboembolism'
  | 'thrombophilia'
  | 'limb-paralysis'
  | 'cancer-within-5-years'
  | 'intensive-care'
  | 'immobile'
  | 'pregnancy'
  | 'after-birth'
  | 'sickle-cell'
  | 'heart-failure'
  | 'unstable-heart'
  | 'arrhythmia'
  | 'heart-inflammation'
  | 'peripheral-artery-disease'
  | 'aortic-aneurysm'
  | 'low-exercise-capacity'
  | 'drop-on-standing'
  | 'high-cholesterol'
  | 'acute-illness'
  | 'kidney-disease'
  | 'fistula-or-graft'
  | 'cancer-in-limb'
  | 'lymph-trouble'
  | 'infection-or-wound'
  | 'surgery-or-fracture'
  | 'surgery-released'
  | 'unusual-swelling'
  | 'compartment-syndrome'
  | 'hypertension'
  | 'diabetes'
  | 'rheumatoid-arthritis'
  | 'recent-covid-19'
  | 'oral-contraceptives'
  | 'anabolic-steroids'
  | 'clotting-medicines'
  | 'varicose-veins'
  | 'first-session';

/** A question of `checkDay`, and the caution of a yes. */
export type DayCode =
  | 'today-new-condition'
  | 'today-chest'
  | 'today-dark-urine'
  | 'today-swelling'
  | 'today-sensation'
  | 'today-circulation'
  | 'today-skin'
  | 'today-bruises'
  | 'today-illness';

/**
 * The code of a caution. A later version may have more: keep a default where you read what another version made.
 */
export type CautionCode = ScreeningCode | DayCode | keyof typeof cautionAudiences;
