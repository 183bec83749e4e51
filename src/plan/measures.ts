import type { Catalogue } from '../answer/messages.js';
import { frozen } from '../quantity/frozen.js';
import { amount, bareAmount, named, type Translate } from '../answer/translate.js';
import type { Limb, Side, Unit } from '../quantity/quantities.js';

/**
 * What a guideline can give a range for, with its name and unit.
 *
 * @example
 * ```ts
 * import { measures } from 'cuffwork/plan';
 * measures['percent-of-maximum'].unit; // => '%'
 * ```
 */
export const measures = frozen({
  'percent-of-maximum': { name: 'load', unit: '%', of: ' of 1RM' },
  'percent-of-occlusion': { name: 'cuff pressure', unit: '%', of: ' of LOP' },
  'percent-of-aerobic-capacity': { name: 'intensity', unit: '%', of: ' of VO2max or heart-rate reserve' },
  'restriction-time': { name: 'restriction', unit: 'min', of: ' in one exercise' },
  'limb-restriction-time': { name: 'restriction', unit: 'min', of: ' on one limb in the session' },
  'longest-restriction': { name: 'longest unbroken restriction', unit: 'min', of: '' },
  reperfusion: { name: 'pause with the cuff deflated', unit: 'min', of: ' between two exercises on one limb' },
  sets: { name: 'number of sets', unit: '1', of: '' },
  repetitions: { name: 'all sets together', unit: '{reps}', of: '' },
  rest: { name: 'rest between sets', unit: 's', of: '' },
  lifting: { name: 'lifting', unit: 's', of: ' a repetition' },
  lowering: { name: 'lowering', unit: 's', of: ' a repetition' },
  'cuff-width': { name: 'cuff width', unit: 'cm', of: '' },
  'sessions-per-week': { name: 'sessions', unit: '1', of: ' a week' },
} as const satisfies Record<string, { name: string; unit: Unit; of: string }>);

/** What a guideline can give a range for. */
export type Measure = keyof typeof measures;

/** What each guideline is called. */
export const guidelineNames = {
  'guideline-review-2019': 'the 2019 guideline review',
  'resistance-update-2015': 'the 2015 review of resistance training with restriction',
  'lower-limb-protocols-2025': 'ten protocols of lower-limb rehabilitation (2025)',
  'common-practice': 'common practice (no source)',
} as const;

/** The place of a figure: an exercise on a limb, a limb, or the whole plan. */
export interface Place {
  readonly exercise?: string;
  readonly limb?: Limb;
  readonly side?: Side;
}

/** A figure held against a range. */
interface Assessed {
  readonly measure: Measure;
  readonly found: number;
  readonly low?: number;
  readonly high?: number;
}

/** How a finding names a place and a range. */
export const placeWording = {
  'page.side': '{side} {limb}',
  'page.at-most': 'at most {high}',
  'page.at-least': 'at least {low}',
  'page.between': '{low}–{high}',
  'page.of-place': '{exercise}, {side}',
  'page.plan': 'the whole plan',
} as const satisfies Catalogue;

const word = (
  translate: Translate,
  code: keyof typeof placeWording,
  values: Readonly<Record<string, string>> = {},
): string => translate(code, placeWording[code], values);

/** What a measure is called, and what it is a share or a part of. */
export const measureWords = (translate: Translate, measure: Measure): { name: string; of: string } => ({
  name: translate(`measure.${measure}`, measures[measure].name),
  of: translate(`measure-of.${measure}`, measures[measure].of),
});

/** `left leg` */
export const sideWords = (translate: Translate, side: string, limb: string): string =>
  word(translate, 'page.side', { side: named(translate, 'value', side), limb: named(translate, 'value', limb) });

/** `leg press, left leg`, `left leg` or `the whole plan` */
export function placeWords(translate: Translate, { exercise, limb, side }: Place): string {
  if (limb === undefined || side === undefined) return exercise ?? word(translate, 'page.plan');
  const where = sideWords(translate, side, limb);
  return exercise === undefined ? where : word(translate, 'page.of-place', { exercise, side: where });
}

/** A figure and its range in words: `40–80 %`, `at most 50 %`. */
export function assessedWords(translate: Translate, { measure, found, low, high }: Assessed) {
  const { unit } = measures[measure];
  const ends = [low, high].filter((end) => end !== undefined);
  const written = (value: number): string => amount(translate, value, unit, ends);
  const range =
    low === undefined
      ? word(translate, 'page.at-most', { high: written(high!) })
      : high === undefined
        ? word(translate, 'page.at-least', { low: written(low) })
        : low === high
          ? written(low)
          : word(translate, 'page.between', { low: bareAmount(translate, low, unit), high: written(high) });
  return { ...measureWords(translate, measure), found: written(found), range };
}

/** The values in the slots of a finding. */
export function findingValues(translate: Translate, assessed: Assessed & Place, guideline: string) {
  return { ...assessedWords(translate, assessed), where: placeWords(translate, assessed), guideline };
}
