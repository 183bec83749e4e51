import { Math } from '../quantity/maths.js';
import type { Answer, AnswerKind, Caution, Inputs } from '../answer/answer.js';
import { guardCautions } from '../answer/guards.js';
import type { Path } from '../answer/issues.js';
import { guards } from '../evidence/guards.js';
import { commonPractice, guidance2019 } from '../evidence/guidance.js';
import type { ExerciseMode } from '../quantity/quantities.js';
import { decimal } from '../quantity/decimal.js';
import { product, ratio, sum } from '../quantity/exact.js';
import { format, inFull } from '../quantity/format.js';
import { inSeconds, type CuffInterval, type ExerciseSchedule, type SetInterval } from './schedule.js';
import { isCuffed, onSide, takesTurns, type FullPrescription, type Place } from './prescription.js';
import { caution } from './messages.js';
import { added, isCounted, list, repetitionsOf, seconds, secondsOf, total } from './working.js';

export const MINUTE = 60;
const EXERCISE_CAUTION = {
  resistance: 'restriction-long-exercise',
  aerobic: 'restriction-long-aerobic',
  passive: 'restriction-long-passive',
} as const;
/** Usual pause with the cuff deflated between two exercises on one limb [s]. */
export const REPERFUSION_S = commonPractice.reperfusionMin.low * MINUTE;

/** How long a limb’s cuff is inflated, at either pressure [s]: the limits on a limb count both. */
export const inflatedS = ({
  restrictionTime,
  partialRestrictionTime,
}: {
  readonly restrictionTime: Answer;
  readonly partialRestrictionTime?: Answer | undefined;
}): number => sum([restrictionTime.value, partialRestrictionTime?.value ?? 0]);

/** Cautions about a limb’s restriction in a session: all of it, and the longest without a break. */
export const limbCautions = (restrictedS: number, longestS: number): Caution[] => [
  ...guardCautions('limb-restriction-session', restrictedS / MINUTE),
  ...guardCautions('unbroken-restriction', longestS / MINUTE),
];

/** Whether a session has restriction at rest and none in work. */
export function isAtRest(
  exercises: readonly (Pick<FullPrescription, 'restriction'> & { readonly mode?: ExerciseMode | undefined })[],
): boolean {
  const cuffed = exercises.filter(isCuffed);
  return cuffed.length > 0 && cuffed.every(({ mode }) => mode === 'passive');
}

/**
 * Cautions about the number of sessions with restriction in a week. Guidance gives restriction at rest once or twice a
 * day, so those sessions count for the stop alone.
 */
export function sessionCountCautions(sessions: number, atRest: number, path?: Path): Caution[] {
  const of = (count: number) => guardCautions('restricted-sessions-week', count, path && { path });
  const all = of(sessions);
  return all[0]?.severity === 'stop' ? all : of(sessions - atRest);
}

const LIMB_CODES = new Set<string>(
  (['limb-restriction-session', 'unbroken-restriction'] as const).flatMap((id) =>
    guards[id].steps.map(({ code }) => code),
  ),
);

/** Whether a caution is one of {@link limbCautions}: about a limb, and not about each of its exercises. */
export const isOfLimb = ({ code }: Caution): boolean => LIMB_CODES.has(code);

/** What intervals of restriction add up to [ns]. */
export function tally(cuffIntervals: readonly CuffInterval[]) {
  const full: number[] = [];
  const partial: number[] = [];
  const runs: number[] = [];
  const gaps: number[] = [];
  let before: CuffInterval | undefined;
  for (const interval of cuffIntervals) {
    const { fromNs, toNs, state } = interval;
    const durationNs = toNs - fromNs;
    (state === 'full' ? full : partial).push(durationNs);
    if (before?.toNs === fromNs) runs.push(runs.pop()! + durationNs);
    else {
      if (before) gaps.push(fromNs - before.toNs);
      runs.push(durationNs);
    }
    before = interval;
  }
  const longest = Math.max(0, ...runs);
  return { full, partial, longest, gaps };
}

/** The restriction of a limb, or of all of them, each total with the intervals it is made of. */
export function restrictionTotals(cuffIntervals: readonly CuffInterval[]) {
  const { full, partial, longest, gaps } = tally(cuffIntervals);
  const time = <K extends AnswerKind>(kind: K, parts: readonly number[], field: string) =>
    total(kind, secondsOf(parts), 's', { [field]: seconds(parts) });
  return {
    restrictionTime: time('restriction-time', full, 'cuffIntervals'),
    ...(partial.length > 0 && { partialRestrictionTime: time('partial-restriction-time', partial, 'cuffIntervals') }),
    longestRestriction: time('longest-restriction', [longest], 'longestInterval'),
    ...(gaps.length > 0 && { reperfusionTime: time('reperfusion-time', gaps, 'gaps') }),
  };
}

/**
 * The restriction of one exercise. Where the sides do not take turns its totals are shown as sets and rests, otherwise
 * as intervals of the clock. `inSets` is what the time of the working sets is made of.
 */
export function exerciseRestriction(
  { full, rests, any }: ExerciseSchedule,
  working: readonly SetInterval[],
  inSets: Inputs,
) {
  const totals = restrictionTotals(any);
  const { restriction, side } = full;
  if (takesTurns(side)) return totals;
  const held = rests.filter(({ warmUp }) => !warmUp).map(({ durationNs }) => durationNs);
  const before = full.inflatedBeforeS > 0 && { inflatedBeforeS: inFull(full.inflatedBeforeS) };
  const after = full.deflatedAfterS > 0 && { deflatedAfterS: inFull(full.deflatedAfterS) };
  const inRests = held.length > 0 && { rests: seconds(held) };
  const whole = added(before, inSets, inRests, after);
  const sets = added(before, inSets, after);
  const restricted = { continuous: whole, intermittent: sets, partial: sets, none: {} }[restriction];
  const simple = !before && !after && working.every(isCounted) && held.length === working.length - 1;
  const longestSet = Math.max(...repetitionsOf(working));
  const oneSet = simple && { longestSet, ...full.tempo };
  const unbroken = { continuous: whole, intermittent: oneSet, partial: whole, none: {} }[restriction];
  return {
    ...totals,
    restrictionTime: { ...totals.restrictionTime, inputs: restricted },
    ...(totals.partialRestrictionTime &&
      inRests && { partialRestrictionTime: { ...totals.partialRestrictionTime, inputs: inRests } }),
    longestRestriction: { ...totals.longestRestriction, ...(unbroken && { inputs: unbroken }) },
  };
}

/** One cuff’s pressure × time in one exercise: exact, in mmHg × s. */
export interface Cell {
  readonly mmHgSeconds: number;
  readonly occlusionMmHg: number | undefined;
  /** `80 × 300 + 40 × 90` */
  readonly terms: string;
}

/** Pressure × time of one limb in one exercise; nothing where a pressure is not given. */
export function pressureCell(
  { occlusionMmHg }: FullPrescription,
  { side }: Place,
  cuffIntervals: readonly CuffInterval[],
): Cell | undefined {
  const held = new Map<number, number>();
  for (const { fromNs, toNs, pressureMmHg } of cuffIntervals) {
    if (pressureMmHg === undefined) return undefined;
    held.set(pressureMmHg, (held.get(pressureMmHg) ?? 0) + toNs - fromNs);
  }
  return {
    mmHgSeconds: sum([...held].map(([pressure, time]) => product(inSeconds(time), pressure))),
    occlusionMmHg: occlusionMmHg === undefined ? undefined : onSide(occlusionMmHg, side),
    terms: [...held].map(([pressure, time]) => `${inFull(pressure)} × ${inFull(inSeconds(time))}`).join(' + '),
  };
}

/** Shares of occlusion pressure × time, added up before they are rounded [%·min]. */
function sumOfShares(cells: readonly Cell[]): number {
  const byOcclusion = new Map<number, number[]>();
  for (const { mmHgSeconds, occlusionMmHg = NaN } of cells) {
    byOcclusion.set(occlusionMmHg, [...(byOcclusion.get(occlusionMmHg) ?? []), mmHgSeconds]);
  }
  return [...byOcclusion]
    .reduce((all, [occlusion, times]) => all.plus(decimal(sum(times)).times(100).div(decimal(occlusion))), decimal(0))
    .div(MINUTE)
    .toNumber();
}

/**
 * Pressure × time of several cells, divided by 60 once, at the end; nothing where one of them is not known. One cell is
 * shown with its pressures and times, several as a list of their values.
 */
export function pressureTotals(cells: readonly (Cell | undefined)[], field: string) {
  const known = cells.filter((cell) => cell !== undefined);
  const [first] = known;
  if (!first || known.length < cells.length) return {};
  const one = known.length === 1;
  const inputs = { pressureSeconds: first.terms };
  const parts = known.map(({ mmHgSeconds }) => ratio([mmHgSeconds], [MINUTE]));
  const pressureTime = total(
    'pressure-time',
    ratio([sum(known.map(({ mmHgSeconds }) => mmHgSeconds))], [MINUTE]),
    'mm[Hg].min',
    one ? inputs : { [field]: list(parts) },
  );
  const shares = known.flatMap(({ mmHgSeconds, occlusionMmHg }) =>
    occlusionMmHg === undefined ? [] : [ratio([mmHgSeconds, 100], [occlusionMmHg, MINUTE])],
  );
  if (shares.length < known.length) return { pressureTime };
  const ofLop = { ...inputs, occlusionMmHg: first.occlusionMmHg! };
  return {
    pressureTime,
    relativePressureTime: total(
      'relative-pressure-time',
      sumOfShares(known),
      '%.min',
      one ? ofLop : { [field]: list(shares) },
    ),
  };
}

export function exerciseCautions({ full, limbs }: Pick<ExerciseSchedule, 'full' | 'limbs'>): Caution[] {
  const { mode, occlusionMmHg, sets } = full;
  const cautions: Caution[] = [];
  const { low, high } = guidance2019.restrictionMin[mode];
  const restrictedS = limbs.map(({ cuffIntervals }) => {
    const { full: whole, partial, longest } = tally(cuffIntervals);
    return mode === 'passive' ? inSeconds(longest) : secondsOf([...whole, ...partial]);
  });
  const most = Math.max(...restrictedS) / MINUTE;
  if (most > high) {
    const values = { minutes: Number(format(most)), low, high };
    cautions.push(caution('caution', EXERCISE_CAUTION[mode], values, { source: 'guideline-review-2019' }));
  }
  for (const { place, cuffIntervals } of limbs) {
    const pressure = Math.max(0, ...cuffIntervals.map(({ pressureMmHg }) => pressureMmHg ?? 0));
    const occlusion = occlusionMmHg === undefined ? Infinity : onSide(occlusionMmHg, place.side);
    if (pressure > occlusion) {
      const values = { pressure, occlusion: Number(format(occlusion)) };
      cautions.push(caution('caution', 'pressure-above-occlusion', values));
    }
    cautions.push(...guardCautions('cuff-pressure', pressure));
  }
  if (sets.some(({ repetitions, load }) => repetitions === undefined && load !== undefined)) {
    cautions.push(caution('note', 'timed-sets-no-volume'));
  }
  return cautions;
}
