import { compare, exact, exactSum, minus, plus, times, toNumber, ZERO, type Exact } from '../quantity/exact.js';
import type { Side } from '../quantity/quantities.js';
import {
  onSide,
  placeName,
  placesOf,
  sidesOf,
  takesTurns,
  type ExerciseSide,
  type FullPrescription,
  type FullSession,
  type FullSet,
  type Place,
} from './prescription.js';

/** A set at its place in time. All times here are decimals, seconds from the start of the session. */
export interface SetInterval {
  readonly set: FullSet;
  /** Number of the set, from 1; warm-up sets have their own. */
  readonly number: number;
  readonly warmUp: boolean;
  readonly side: ExerciseSide | undefined;
  readonly atS: Exact;
  readonly durationS: Exact;
}

/** A rest, or the time to change sides. */
export interface Rest {
  readonly number: number;
  readonly warmUp: boolean;
  readonly atS: Exact;
  readonly durationS: Exact;
}

/** A time for which one cuff is inflated, at its pressure or at the lower one. */
export interface CuffInterval {
  readonly fromS: Exact;
  readonly toS: Exact;
  readonly state: 'full' | 'partial';
  readonly pressureMmHg: number | undefined;
}

/** One exercise in time. */
export interface ExerciseSchedule {
  readonly full: FullPrescription;
  readonly startS: Exact;
  readonly endS: Exact;
  readonly setIntervals: readonly SetInterval[];
  readonly rests: readonly Rest[];
  /** For each limb when its cuff is inflated, in order; intervals touch where only the pressure changes. */
  readonly limbs: readonly { readonly place: Place; readonly cuffIntervals: readonly CuffInterval[] }[];
  /** When any cuff is inflated: at its pressure where one of them is. */
  readonly any: readonly CuffInterval[];
}

/** Seconds one repetition takes; 0 where no set is counted at a tempo. */
export const repetitionTime = ({ tempo }: FullPrescription): Exact =>
  tempo ? exactSum([tempo.eccentricS, tempo.bottomS, tempo.concentricS, tempo.topS].map(exact)) : ZERO;

const isBefore = (a: Exact, b: Exact): boolean => compare(a, b) < 0;

/** Whether one interval begins where the one before it ends. */
export const touches = (before: CuffInterval | undefined, { fromS }: CuffInterval): boolean =>
  before !== undefined && compare(before.toS, fromS) === 0;

/** A list of intervals that drops empty ones and joins those that touch and do not differ. */
function append(list: CuffInterval[], interval: CuffInterval): void {
  const last = list.at(-1);
  if (!isBefore(interval.fromS, interval.toS)) return;
  if (last?.state === interval.state && last.pressureMmHg === interval.pressureMmHg && touches(last, interval)) {
    list[list.length - 1] = { ...last, toS: interval.toS };
  } else list.push(interval);
}

function cuffIntervalsOf(
  full: FullPrescription,
  { side }: Place,
  setIntervals: readonly SetInterval[],
): CuffInterval[] {
  const { restriction, restPressureMmHg } = full;
  const list: CuffInterval[] = [];
  if (restriction === 'none') return list;
  const own = setIntervals.filter((interval) => !interval.warmUp && (!takesTurns(full.side) || interval.side === side));
  own.forEach(({ set, atS, durationS }, index) => {
    const pressureMmHg = set.pressureMmHg === undefined ? undefined : onSide(set.pressureMmHg, side);
    const next = own[index + 1];
    const fromS = index === 0 ? minus(atS, exact(full.inflatedBeforeS)) : atS;
    const doneS = plus(atS, durationS);
    const toS = next ? doneS : plus(doneS, exact(full.deflatedAfterS));
    append(list, { fromS, toS, state: 'full', pressureMmHg });
    if (!next || restriction === 'intermittent') return;
    // Up to the next set the cuff keeps this set’s pressure, or goes to the lower one.
    append(
      list,
      restriction === 'continuous'
        ? { fromS: toS, toS: next.atS, state: 'full', pressureMmHg }
        : {
            fromS: toS,
            toS: next.atS,
            state: 'partial',
            pressureMmHg: restPressureMmHg === undefined ? undefined : onSide(restPressureMmHg, side),
          },
    );
  });
  return list;
}

/** When any of several cuffs is inflated, at its pressure where one of them is; pressures are left out. */
function union(lists: readonly (readonly CuffInterval[])[]): CuffInterval[] {
  const merged: CuffInterval[] = [];
  if (lists.length === 1) {
    for (const interval of lists[0]!) append(merged, { ...interval, pressureMmHg: undefined });
    return merged;
  }
  const edges = lists.flatMap((list) => list.flatMap(({ fromS, toS }) => [fromS, toS])).sort(compare);
  const at = lists.map(() => 0);
  for (const [index, fromS] of edges.entries()) {
    const toS = edges[index + 1];
    if (!toS) break;
    const states = lists.map((list, which) => {
      while (list[at[which]!] && !isBefore(fromS, list[at[which]!]!.toS)) at[which]! += 1;
      const interval = list[at[which]!];
      return interval && !isBefore(fromS, interval.fromS) ? interval.state : undefined;
    });
    const state = states.includes('full') ? 'full' : states.includes('partial') ? 'partial' : undefined;
    if (state) append(merged, { fromS, toS, state, pressureMmHg: undefined });
  }
  return merged;
}

function scheduleExercise(full: FullPrescription, startS: Exact): ExerciseSchedule {
  const { side, restriction } = full;
  const perRepetition = repetitionTime(full);
  const turns: readonly (ExerciseSide | undefined)[] = side && takesTurns(side) ? sidesOf(side) : [side];
  const setIntervals: SetInterval[] = [];
  const rests: Rest[] = [];
  let now = startS;
  const pass = (seconds: number, number: number, warmUp: boolean): void => {
    if (seconds === 0) return;
    rests.push({ number, warmUp, atS: now, durationS: exact(seconds) });
    now = plus(now, exact(seconds));
  };
  const work = (set: FullSet, number: number, warmUp: boolean): void => {
    turns.forEach((turn, index) => {
      if (index > 0) pass(full.changeS, number, warmUp);
      const durationS =
        set.durationS === undefined ? times(perRepetition, exact(set.repetitions ?? 0)) : exact(set.durationS);
      setIntervals.push({ set, number, warmUp, side: turn, atS: now, durationS });
      now = plus(now, durationS);
    });
    pass(set.restS, number, warmUp);
  };
  full.warmUp.forEach((set, index) => work(set, index + 1, true));
  if (restriction !== 'none') now = plus(now, exact(full.inflatedBeforeS));
  full.sets.forEach((set, index) => work(set, index + 1, false));
  if (restriction !== 'none') now = plus(now, exact(full.deflatedAfterS));
  const limbs = placesOf(full).map((place) => ({ place, cuffIntervals: cuffIntervalsOf(full, place, setIntervals) }));
  return {
    full,
    startS,
    endS: now,
    setIntervals,
    rests,
    limbs,
    any: union(limbs.map(({ cuffIntervals }) => cuffIntervals)),
  };
}

/**
 * An exercise as one of its sides does it. Where sides take turns, the rests of one hold the set of the other and the
 * time to change.
 */
export function ofSide(full: FullPrescription, side: Side): FullPrescription {
  const { restPressureMmHg, occlusionMmHg } = full;
  const { warmUp, sets } = takesTurns(full.side) ? turnsOf(full, side) : full;
  return {
    ...full,
    side,
    changeS: 0,
    warmUp,
    sets: sets.map(({ pressureMmHg, ...set }) =>
      pressureMmHg === undefined ? set : { ...set, pressureMmHg: onSide(pressureMmHg, side) },
    ),
    ...(restPressureMmHg !== undefined && { restPressureMmHg: onSide(restPressureMmHg, side) }),
    ...(occlusionMmHg !== undefined && { occlusionMmHg: onSide(occlusionMmHg, side) }),
  };
}

/** The sets of one side, where sides take turns, with the rests that it has. */
function turnsOf(full: FullPrescription, side: Side): Pick<FullPrescription, 'warmUp' | 'sets'> {
  const own = scheduleExercise(full, ZERO).setIntervals.filter((interval) => interval.side === side);
  const lead = full.restriction === 'none' ? 0 : full.inflatedBeforeS;
  const sets = own.map(({ set, warmUp, atS, durationS }, index) => {
    const next = own[index + 1];
    const gap = next ? minus(next.atS, plus(atS, durationS)) : ZERO;
    return { ...set, restS: toNumber(warmUp && next && !next.warmUp ? minus(gap, exact(lead)) : gap) };
  });
  const isWarmUp = (_: FullSet, index: number): boolean => own[index]!.warmUp;
  return { warmUp: sets.filter(isWarmUp), sets: sets.filter((set, index) => !isWarmUp(set, index)) };
}

/** The exercises of a session in time, one after the other with the pauses between them. */
export function scheduleSession({ exercises, pauses }: FullSession): ExerciseSchedule[] {
  let now = ZERO;
  return exercises.map((full, index) => {
    const schedule = scheduleExercise(full, now);
    now = plus(schedule.endS, exact(pauses[index] ?? 0));
    return schedule;
  });
}

/** The cuff intervals of each limb over the whole session, limbs in the order they are first worked. */
export function byLimb(schedule: readonly ExerciseSchedule[]) {
  const limbs = new Map<string, { place: Place; cuffIntervals: (CuffInterval & { readonly exercise: number })[] }>();
  schedule.forEach((exercise, index) => {
    for (const { place, cuffIntervals } of exercise.limbs) {
      const name = placeName(place);
      const limb = limbs.get(name) ?? { place, cuffIntervals: [] };
      limbs.set(name, limb);
      for (const interval of cuffIntervals) limb.cuffIntervals.push({ ...interval, exercise: index + 1 });
    }
  });
  return [...limbs.values()];
}
