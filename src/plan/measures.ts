import { frozen } from '../quantity/frozen.js';
import { amount } from '../answer/explain.js';
import { explainWords, type Say } from '../answer/words.js';
import { format } from '../quantity/format.js';
import type { Unit } from '../quantity/quantities.js';
import { pageWords } from './page-words.js';

/**
 * What a guideline can give a range for, with its name and unit.
 *
 * @example
 * ```ts
 * import { measures } from 'cuffwork/plan';
 * measures['percent-of-maximum'].unit; // => '%'
 * ```
 */
export const measures = /* @__PURE__ */ frozen({
  'percent-of-maximum': { name: 'load', unit: '%', of: ' of the maximum' },
  'percent-of-occlusion': { name: 'cuff pressure', unit: '%', of: ' of occlusion pressure' },
  'percent-of-aerobic-capacity': { name: 'intensity', unit: '%', of: ' of VO2max or heart-rate reserve' },
  'restriction-time': { name: 'restriction', unit: 'min', of: ' in one exercise' },
  'limb-restriction-time': { name: 'restriction', unit: 'min', of: ' on one limb in the session' },
  'longest-restriction': { name: 'longest unbroken restriction', unit: 'min', of: '' },
  reperfusion: { name: 'pause with the cuff down', unit: 'min', of: ' between two exercises on one limb' },
  sets: { name: 'number of sets', unit: '1', of: '' },
  repetitions: { name: 'all sets together,', unit: '{reps}', of: '' },
  rest: { name: 'rest between sets', unit: 's', of: '' },
  lifting: { name: 'lifting', unit: 's', of: '' },
  lowering: { name: 'lowering', unit: 's', of: '' },
  'cuff-width': { name: 'cuff width', unit: 'cm', of: '' },
  'sessions-per-week': { name: 'sessions a week,', unit: '1', of: '' },
} as const satisfies Record<string, { name: string; unit: Unit; of: string }>);

/** What a guideline can give a range for. */
export type Measure = keyof typeof measures;

/** What each guideline is called. */
export const guidelineNames = {
  'guideline-review-2019': 'the 2019 guideline review',
  'resistance-update-2015': 'the 2015 review of resistance training with restriction',
  'lower-limb-protocols-2025': 'ten protocols of lower-limb rehabilitation (2025)',
  'common-practice': 'common practice, without a source',
} as const;

/** A figure held against a range. */
interface Judged {
  readonly measure: Measure;
  readonly found: number;
  readonly low?: number;
  readonly high?: number;
}

/** What a measure is called, and what it is a share or a part of. */
export const measureWords = (say: Say, measure: Measure): { name: string; of: string } => ({
  name: say(`measure.${measure}`, measures[measure].name),
  of: say(`measure-of.${measure}`, measures[measure].of),
});

/** A figure and its range in words: `40 to 80 %`, `50 % at most`. */
export function judgedWords(say: Say, { measure, found, low, high }: Judged) {
  const told = (value: number): string => amount(say, value, measures[measure].unit);
  const range =
    low === undefined
      ? say('page.at-most', pageWords['page.at-most'], { high: told(high!) })
      : high === undefined
        ? say('page.at-least', pageWords['page.at-least'], { low: told(low) })
        : low === high
          ? told(low)
          : say('range-between', explainWords['range-between'], { lower: format(low), upper: told(high) });
  return { ...measureWords(say, measure), found: told(found), range };
}

/** What stands in the slots of a finding. */
export function findingValues(say: Say, judged: Judged, where: string, guideline: string) {
  const { name, of, found, range } = judgedWords(say, judged);
  return { where, name, found, range: range + of, guideline };
}
