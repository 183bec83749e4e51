import type { Answer, Caution } from '../answer/answer.js';
import { guardCautions } from '../answer/guards.js';
import { percentage, sum } from '../quantity/exact.js';
import { inflatedS, sessionCountCautions } from '../session/exposure.js';
import { inKilograms } from '../session/working.js';
import { codedCaution } from './coded.js';
import { isSameLimb, keyOf } from './limb-and-side.js';
import { progressionLimits as limits } from './progression-limits.js';
import { uniqueCautions } from './severity.js';
import { wholeExercises, type WeekRow, type WeekSums } from './week-rows.js';

/** A week as it went, else as it was planned. */
const sumsOf = ({ done, planned }: WeekRow): WeekSums => (done ?? planned)!;

/** Two weeks as they are compared: done with done, else planned with planned, else each as it is. */
function comparableSums(before: WeekRow, after: WeekRow): [WeekSums, WeekSums] {
  const way = (['done', 'planned'] as const).find((one) => before[one] && after[one]);
  return way ? [before[way]!, after[way]!] : [sumsOf(before), sumsOf(after)];
}

/** What an exercise of a row went up by, compared with an earlier row. */
function jumpsOf(before: WeekRow, after: WeekRow): Caution[] {
  const exercisesOf = (sums: WeekSums) =>
    sums.limbs.flatMap(({ limb, side, exercises }) =>
      wholeExercises(exercises).map((exercise) => ({ limb, side, ...exercise })),
    );
  const [first, second] = comparableSums(before, after);
  const earlier = new Map(exercisesOf(first).map((one) => [keyOf(one), one]));
  return exercisesOf(second).flatMap((now): Caution[] => {
    const was = earlier.get(keyOf(now));
    if (!was) return [];
    const who = { exercise: now.exercise, side: now.side, limb: now.limb, from: before.week, to: after.week };
    const difference = (a: number, b: number): number => sum([a, -b]);
    const heavier = now.peakLoad && was.peakLoad ? difference(inKilograms(now.peakLoad), inKilograms(was.peakLoad)) : 0;
    const tighter = now.percentLop && was.percentLop ? difference(now.percentLop.value, was.percentLop.value) : 0;
    const found: Caution[] = [];
    if (now.peakPercentOneRepMax && was.peakPercentOneRepMax) {
      const points = difference(now.peakPercentOneRepMax.value, was.peakPercentOneRepMax.value);
      const { value: largest } = limits.largestLoadStep;
      if (points > largest) found.push(codedCaution('caution', 'load-jump', { ...who, points, largest }));
    } else if (heavier > 0) {
      const percent = percentage(heavier, inKilograms(was.peakLoad!));
      const { value: largest } = limits.largestLoadStepPercent;
      if (percent > largest) found.push(codedCaution('caution', 'load-jump-percent', { ...who, percent, largest }));
    }
    const { value: largest } = limits.largestPressureStep;
    if (tighter > largest) found.push(codedCaution('caution', 'pressure-jump', { ...who, points: tighter, largest }));
    // The gauge rounds pressures down: less than one point is no rise.
    if (heavier > 0 && tighter >= 1) found.push(codedCaution('caution', 'both-raised', who));
    return found;
  });
}

/** Weeks marked as deload that are not lighter than the week before. */
function notLighter(before: WeekRow, after: WeekRow): Caution[] {
  const [first, second] = comparableSums(before, after);
  return second.limbs.flatMap((now) => {
    const was = first.limbs.find((one) => isSameLimb(one, now));
    const isLess = (a: Answer | undefined, b: Answer | undefined): boolean =>
      a !== undefined && b !== undefined && a.value < b.value;
    if (!was || isLess(now.volumeLoad, was.volumeLoad) || isLess(now.restrictionTime, was.restrictionTime)) return [];
    const { limb, side } = now;
    return [codedCaution('note', 'deload-not-lighter', { side, limb, from: before.week, to: after.week })];
  });
}

/** What the guards say of the restriction of a week, as it went. */
function doseCautions(row: WeekRow, index: number): Caution[] {
  const sums = sumsOf(row);
  return [
    ...sums.limbs.flatMap(({ limb, side, ...times }) =>
      guardCautions('limb-restriction-week', inflatedS(times) / 60, {
        values: { limb, side },
        path: ['weeks', index],
      }),
    ),
    ...sessionCountCautions(sums.restrictedSessions.value, sums.restrictedAtRest?.value ?? 0, ['weeks', index]),
  ];
}

/** The cautions about weeks: each week alone, and compared with the last one before it that was no deload. */
export function weekCautions(rows: readonly WeekRow[]): Caution[] {
  const found = rows.flatMap((row, index) => {
    const earlier = rows.slice(0, index);
    const before = earlier.filter(({ deload }) => !deload).at(-1);
    const last = earlier.at(-1);
    return [
      ...doseCautions(row, index),
      ...(before ? jumpsOf(before, row) : []),
      ...(row.deload && last ? notLighter(last, row) : []),
    ];
  });
  return uniqueCautions(found);
}
