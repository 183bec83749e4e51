import { Math, square } from '../quantity/maths.js';
import type { Answer } from '../answer/answer.js';
import { Reader } from '../answer/reader.js';
import { withInput } from '../answer/with-input.js';
import { assumption } from './assumptions.js';
import { caution } from './messages.js';
import { need } from '../answer/needs.js';
import { SCALE_MARK } from './needs.js';

/**
 * The 1–10 scale of repetitions in reserve, for the ratings that name repetitions. Below 5 it describes effort only.
 * It is not the 0–10 scale of session effort.
 */
const SCALE = [
  { rating: 10, from: 0, to: 0 },
  { rating: 9.5, from: 0, to: 0 },
  { rating: 9, from: 1, to: 1 },
  { rating: 8.5, from: 1, to: 2 },
  { rating: 8, from: 2, to: 2 },
  { rating: 7.5, from: 2, to: 3 },
  { rating: 7, from: 3, to: 3 },
  { rating: 6, from: 4, to: 6 },
  { rating: 5, from: 4, to: 6 },
] as const;

/** Repetitions in reserve as reported: the middle and the range. */
export interface Reserve {
  readonly repetitions: number;
  readonly from: number;
  readonly to: number;
  /** The rating they come from. */
  readonly rating?: number;
}

const MARKS: ReadonlyMap<number, Reserve> = new Map(
  SCALE.map((mark) => [mark.rating, { ...mark, repetitions: (mark.from + mark.to) / 2 }]),
);

/** The repetitions in reserve that the scale gives for a rating; `undefined` where it gives none. */
export const reserveOf = (rating: number): Reserve | undefined => MARKS.get(rating);

/** Reads `reserveRpe`: the repetitions in reserve that the scale gives for it. */
export function readRating(reader: Reader, rating: number | undefined): Reserve | undefined {
  if (rating === undefined) return undefined;
  const reserve = reserveOf(rating);
  if (!reserve) {
    const marks = SCALE.map(({ rating: mark }) => String(mark));
    reader.refuse('reserveRpe', need(SCALE_MARK, { marks }), String(rating));
  }
  return reserve;
}

/**
 * How far people misjudge repetitions in reserve: about 1 with 0–5 left, more than 2 with 7 and more. A rating that
 * covers several repetitions adds a uniform spread. A set to failure has no such error.
 */
export function reserveError({ repetitions, from, to, rating }: Reserve): number {
  const toFailure = rating === undefined ? repetitions === 0 : rating === 10;
  return toFailure ? 0 : Math.sqrt(square(repetitions <= 5 ? 1 : 2) + square(to - from) / 12);
}

/** What {@link repetitionsInReserveFromRpe} takes. */
export interface ReserveRatingInput {
  /** Rating on the scale of repetitions in reserve, 1–10; not the 0–10 scale of session effort. */
  readonly reserveRpe: number;
}

/**
 * Repetitions in reserve from a rating on the 1–10 scale made for them.
 *
 * The scale gives 10 and 9.5 as none in reserve, 9 as 1, 8.5 as 1–2, 8 as 2, 7.5 as 2–3, 7 as 3, and 5–6 as 4–6. We
 * use the middle of a range. Lower ratings describe effort only, and the scale has no 6.5; both are refused. This is
 * not the 0–10 scale that rates a whole session.
 *
 * - Error: people misjudge by about one repetition when 0–5 remain, and by more than two when 7 or more remain.
 * - Evidence: `secondary`; the scale was read in a reproduction.
 * - Source: J Strength Cond Res 2016;30(1):267–275; Strength Cond J 2016;38(4):42–49.
 *
 * @function
 * @param input - `reserveRpe`, 5 to 10
 * @returns repetitions in reserve, without an interval: the errors are not normal.
 * @throws InputError for a rating without repetitions on the scale.
 *
 * @example
 * ```ts
 * import { repetitionsInReserveFromRpe } from 'cuffwork';
 * repetitionsInReserveFromRpe({ reserveRpe: 8 }).value; // => 2
 * repetitionsInReserveFromRpe({ reserveRpe: 9.5 }).value; // => 0
 * ```
 */
export const repetitionsInReserveFromRpe = withInput(function repetitionsInReserveFromRpe(
  input: ReserveRatingInput,
): Answer<'repetitions-in-reserve'> {
  const reader = new Reader(input);
  const reserveRpe = reader.number('reserveRpe');
  const reserve = reader.fine ? readRating(reader, reserveRpe) : undefined;
  reader.done();
  const { repetitions, from, to } = reserve!;
  return {
    kind: 'repetitions-in-reserve',
    value: repetitions,
    unit: '{reps}',
    equation: 'reserve-scale-2016',
    evidence: 'secondary',
    inputs: { reserveRpe, from, to },
    assumptions: [assumption('reserve-of-rating', { from, to, rating: reserveRpe })],
    cautions: [
      caution('note', 'reserve-inaccurate', undefined, { source: 'reserve-accuracy-2017' }),
      caution('note', 'reserve-underestimated', undefined, { source: 'reserve-accuracy-2022' }),
    ],
  };
});
