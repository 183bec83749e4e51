import { frozen } from '../quantity/frozen.js';
import type { Severity } from '../answer/answer.js';
import type { Grade } from '../evidence/grades.js';
import { commonPractice, guidance2019 } from '../evidence/guidance.js';
import type { SourceId } from '../evidence/sources.js';
import { EXERCISE_MODES, type ExerciseMode } from '../quantity/quantities.js';
import { guidelineNames, type Measure } from './measures.js';

/** One range of a guideline. An end that is left out is open. */
export interface GuidelineRow {
  /** Kind of exercise that the range is for. */
  readonly mode: ExerciseMode;
  /** What the range is about; its unit is in `measures`. */
  readonly measure: Measure;
  /** Lower end of the range [unit of the measure]. */
  readonly low?: number;
  /** Upper end of the range [unit of the measure]. */
  readonly high?: number;
  /** Blocks longer than this [weeks] are meant; any when left out. */
  readonly moreThanWeeks?: number;
  /** Longest block that the range is for [weeks]; a block of any length when left out. */
  readonly toWeeks?: number;
  /** Sets to failure may have any number of repetitions. */
  readonly orToFailure?: true;
  /** Severity of a figure above `high`; `note` when left out. */
  readonly above?: Severity;
  /** Severity of a figure below `low`; `note` when left out. */
  readonly below?: Severity;
  /** Evidence grade of the range. */
  readonly evidence: Grade;
  /** Where the range does not come from the guideline itself. */
  readonly note?: string;
}

/** Published ranges that a plan or a record can be held against. */
export interface Guideline {
  /** Name to choose it by in `reviewPlan`. */
  readonly id: string;
  /** Name to print. */
  readonly name: string;
  /** Where it is published; absent for common practice. */
  readonly source?: SourceId;
  /** Its ranges, one for each mode and measure, and for each length of block where they differ. */
  readonly rows: readonly GuidelineRow[];
}

/**
 * From here on a load is heavy [% of 1RM]: the lightest that the trials which compare light loads under the cuff with
 * heavy ones call so (J Appl Physiol 2009;106(4):1119–1124). No guideline for light loads is meant for it.
 */
export const HEAVY_PERCENT = 65;

const unconfirmed = { evidence: 'unconfirmed' } as const;
const secondary = { evidence: 'secondary' } as const;
const published = { evidence: 'published' } as const;
const tooMuch = { above: 'caution' } as const;

const moving = (['resistance', 'aerobic'] as const).flatMap((mode): GuidelineRow[] => [
  { mode, measure: 'percent-of-occlusion', ...guidance2019.percentLop[mode], ...tooMuch },
  { mode, measure: 'restriction-time', ...guidance2019.restrictionMin[mode], ...tooMuch },
  { mode, measure: 'sessions-per-week', low: 2, high: 3, moreThanWeeks: 3, ...secondary },
  {
    mode,
    measure: 'sessions-per-week',
    low: 7,
    high: 14,
    toWeeks: 3,
    ...unconfirmed,
    note: '1 to 2 a day, counted as 7 to 14 a week',
  },
]);

/**
 * The guidelines that `reviewPlan` knows, as data. The first is taken when none is named.
 *
 * @example
 * ```ts
 * import { guidelines } from 'cuffwork/plan';
 * guidelines[0].id; // => 'guideline-review-2019'
 * ```
 */
export const guidelines = frozen([
  {
    id: 'guideline-review-2019',
    name: guidelineNames['guideline-review-2019'],
    source: 'guideline-review-2019',
    rows: [
      ...moving,
      { mode: 'resistance', measure: 'percent-of-maximum', ...guidance2019.percentOneRepMax },
      { mode: 'resistance', measure: 'sets', low: 2, high: 4, ...secondary },
      { mode: 'resistance', measure: 'repetitions', low: 75, high: 75, orToFailure: true, ...secondary },
      { mode: 'resistance', measure: 'rest', low: 30, high: 60, ...secondary },
      { mode: 'resistance', measure: 'lifting', low: 1, high: 2, ...unconfirmed },
      { mode: 'resistance', measure: 'lowering', low: 1, high: 2, ...unconfirmed },
      { mode: 'aerobic', measure: 'percent-of-aerobic-capacity', high: 50, ...unconfirmed },
      { mode: 'passive', measure: 'sessions-per-week', low: 7, high: 14, ...unconfirmed, note: '1 to 2 a day' },
      { mode: 'passive', measure: 'percent-of-occlusion', ...guidance2019.percentLop.passive, ...tooMuch },
      { mode: 'passive', measure: 'longest-restriction', ...guidance2019.restrictionMin.passive, ...tooMuch },
      { mode: 'passive', measure: 'sets', low: 3, high: 5, ...unconfirmed },
      { mode: 'passive', measure: 'rest', low: 180, high: 300, ...unconfirmed },
      ...EXERCISE_MODES.map((mode) => ({
        mode,
        measure: 'cuff-width' as const,
        low: 5,
        high: 18,
        ...unconfirmed,
        note: '5 narrow, 10 or 12 medium, 17 or 18 wide',
      })),
    ],
  },
  {
    id: 'resistance-update-2015',
    name: guidelineNames['resistance-update-2015'],
    source: 'resistance-update-2015',
    rows: [
      { mode: 'resistance', measure: 'percent-of-maximum', low: 20, high: 40, ...unconfirmed },
      { mode: 'resistance', measure: 'percent-of-occlusion', low: 50, high: 80, ...tooMuch, ...unconfirmed },
      { mode: 'resistance', measure: 'sessions-per-week', low: 2, high: 4, ...unconfirmed },
      { mode: 'resistance', measure: 'repetitions', low: 50, high: 80, ...unconfirmed },
      { mode: 'resistance', measure: 'rest', low: 30, high: 45, ...unconfirmed },
    ],
  },
  {
    id: 'lower-limb-protocols-2025',
    name: guidelineNames['lower-limb-protocols-2025'],
    source: 'lower-limb-protocols-2025',
    rows: [
      { mode: 'resistance', measure: 'percent-of-occlusion', low: 60, high: 80, ...tooMuch, ...published },
      { mode: 'resistance', measure: 'restriction-time', low: 5, high: 15, ...tooMuch, ...published },
    ],
  },
  {
    id: 'common-practice',
    name: guidelineNames['common-practice'],
    rows: EXERCISE_MODES.flatMap((mode) => [
      { mode, measure: 'limb-restriction-time' as const, ...commonPractice.limbRestrictionMin, ...tooMuch },
      { mode, measure: 'reperfusion' as const, ...commonPractice.reperfusionMin, below: 'caution' as const },
    ]),
  },
] as const satisfies readonly Guideline[]);

/** The id of a guideline in {@link guidelines}. */
export type GuidelineId = (typeof guidelines)[number]['id'];
