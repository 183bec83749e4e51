import { Math } from '../quantity/maths.js';
import type { Answer, Caution } from '../answer/answer.js';
import { inFull } from '../quantity/format.js';
import {
  limbCautions,
  MINUTE,
  pressureCell,
  pressureTotals,
  REPERFUSION_S,
  restrictionTotals,
  tally,
} from './exposure.js';
import { byLimb, inSeconds, type ExerciseSchedule } from './schedule.js';
import { takesTurns, type Place } from './prescription.js';
import { assumption } from './assumptions.js';
import { caution } from './messages.js';
import { isTense, repetitionsOf, repetitionTotal, seconds, secondsOf, total } from './working.js';

/** What one limb went through in the session. */
export interface LimbExposure extends Place {
  /** Number of exercises with its cuff inflated. */
  readonly exercises: number;
  /** Repetitions this limb took part in; both sides of a two-sided exercise get the same number. */
  readonly repetitions: Answer<'repetitions'>;
  /** Time under tension of this limb [s]. */
  readonly timeUnderTension: Answer<'time-under-tension'>;
  /** Time with its cuff at full pressure [s]. */
  readonly restrictionTime: Answer<'restriction-time'>;
  /** Time with its cuff at the lower pressure [s]; present with partial restriction. */
  readonly partialRestrictionTime?: Answer<'partial-restriction-time'>;
  /** Longest time with its cuff inflated, at either pressure [s]. */
  readonly longestRestriction: Answer<'longest-restriction'>;
  /** Time with its cuff deflated between two restrictions [s]; present where there is such a time. */
  readonly reperfusionTime?: Answer<'reperfusion-time'>;
  /** Cuff pressure × time [mmHg·min]; present when pressures were given. */
  readonly pressureTime?: Answer<'pressure-time'>;
  /** Cuff pressure in percent of LOP × time [%·min]; present when pressures and LOP were given. */
  readonly relativePressureTime?: Answer<'relative-pressure-time'>;
  /** What to watch for with this limb. */
  readonly cautions: readonly Caution[];
}

/** Cautions about the time a limb’s cuff is deflated between two exercises [s]. */
export const reperfusionCautions = (downS: number): Caution[] =>
  downS < REPERFUSION_S
    ? [
        caution('caution', 'reperfusion-short', {
          seconds: inFull(downS),
          low: REPERFUSION_S / MINUTE,
        }),
      ]
    : [];

/** Cautions about one limb in a session: how long its cuff is inflated, and deflated between two exercises. */
export function cautionsOfLimb(cuffIntervals: ReturnType<typeof byLimb>[number]['cuffIntervals']): Caution[] {
  const { full, partial, longest } = tally(cuffIntervals);
  const apart = cuffIntervals.flatMap(({ exercise, fromNs }, index) => {
    const before = cuffIntervals[index - 1];
    return before && before.exercise !== exercise ? [fromNs - before.toNs] : [];
  });
  return [
    ...limbCautions(secondsOf(full) + secondsOf(partial), inSeconds(longest)),
    ...reperfusionCautions(inSeconds(Math.min(...apart))),
  ];
}

/** What each limb went through, in the order the limbs are first worked. */
export function limbsOf(schedule: readonly ExerciseSchedule[]): LimbExposure[] {
  const cuffed = schedule.filter(({ any }) => any.length > 0);
  const assumptions = cuffed.length > 1 && !cuffed[0]!.full.limb ? [assumption('one-limb-taken')] : [];
  return byLimb(schedule).flatMap(({ place, cuffIntervals }): LimbExposure[] => {
    if (!place.limb && cuffIntervals.length === 0 && cuffed.length > 0) return [];
    const own = schedule.flatMap(({ full, setIntervals, limbs }) => {
      const limb = limbs.find((one) => one.place.limb === place.limb && one.place.side === place.side);
      if (!limb || (!place.limb && cuffed.length > 0 && limb.cuffIntervals.length === 0)) return [];
      const done = setIntervals.filter(
        ({ warmUp, side }) => !warmUp && (!takesTurns(full.side) || side === place.side),
      );
      return [{ full, done, cuffIntervals: limb.cuffIntervals }];
    });
    const repetitions = own.flatMap(({ done }) => repetitionsOf(done));
    const tense = own.flatMap(({ full, done }) => (isTense(full) ? done.map(({ durationNs }) => durationNs) : []));
    const restricted = own.filter((part) => part.cuffIntervals.length > 0);
    const cells = restricted.map(({ full, cuffIntervals: part }) => pressureCell(full, place, part));
    const { restrictionTime, ...totals } = restrictionTotals(cuffIntervals);
    return [
      {
        ...place,
        exercises: restricted.length,
        repetitions: repetitionTotal(repetitions),
        timeUnderTension: total('time-under-tension', secondsOf(tense), 's', { setTimes: seconds(tense) }),
        restrictionTime: { ...restrictionTime, assumptions },
        ...totals,
        ...pressureTotals(cells, 'exercises'),
        cautions: cautionsOfLimb(cuffIntervals),
      },
    ];
  });
}
