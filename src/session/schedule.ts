import { Math } from '../quantity/maths.js';
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

/**
 * Times of a schedule are whole nanoseconds. As plain numbers they add up exactly, so that two intervals touch or do
 * not.
 */
const NANOSECONDS = 1e9;
export const nanoseconds = (seconds: number): number => Math.round(seconds * NANOSECONDS);
export const inSeconds = (ns: number): number => ns / NANOSECONDS;

/** A set at its place in time. All times here are from the start of the session [ns]. */
export interface SetInterval {
  readonly set: FullSet;
  /** Number of the set, from 1; warm-up sets have their own. */
  readonly number: number;
  readonly warmUp: boolean;
  readonly side: ExerciseSide | undefined;
  readonly atNs: number;
  readonly durationNs: number;
}

/** A rest, or the time to change sides. */
export interface Rest {
  readonly number: number;
  readonly warmUp: boolean;
  readonly atNs: number;
  readonly durationNs: number;
}

/** A time for which one cuff is inflated, at its pressure or at the lower one. */
export interface CuffInterval {
  readonly fromNs: number;
  readonly toNs: number;
  readonly state: 'full' | 'partial';
  readonly pressureMmHg: number | undefined;
}

/** One exercise in time. */
export interface ExerciseSchedule {
  readonly full: FullPrescription;
  readonly startNs: number;
  readonly endNs: number;
  readonly setIntervals: readonly SetInterval[];
  readonly rests: readonly Rest[];
  /** For each limb when its cuff is inflated, in order; intervals touch where only the pressure changes. */
  readonly limbs: readonly { readonly place: Place; readonly cuffIntervals: readonly CuffInterval[] }[];
  /** When any cuff is inflated: at its pressure where one of them is. */
  readonly any: readonly CuffInterval[];
}

/** How long one repetition takes [ns]; 0 where no set is counted at a tempo. */
const repetitionTime = ({ tempo }: FullPrescription): number =>
  tempo
    ? [tempo.eccentricS, tempo.bottomS, tempo.concentricS, tempo.topS].reduce((ns, phase) => ns + nanoseconds(phase), 0)
    : 0;

/** A list of intervals that drops empty ones and joins those that touch and do not differ. */
function append(list: CuffInterval[], interval: CuffInterval): void {
  const last = list.at(-1);
  if (interval.toNs <= interval.fromNs) return;
  if (last?.toNs === interval.fromNs && last.state === interval.state && last.pressureMmHg === interval.pressureMmHg) {
    list[list.length - 1] = { ...last, toNs: interval.toNs };
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
  own.forEach(({ set, atNs, durationNs }, index) => {
    const pressureMmHg = set.pressureMmHg === undefined ? undefined : onSide(set.pressureMmHg, side);
    const next = own[index + 1];
    const fromNs = index === 0 ? atNs - nanoseconds(full.inflatedBeforeS) : atNs;
    const doneNs = atNs + durationNs;
    const toNs = next ? doneNs : doneNs + nanoseconds(full.deflatedAfterS);
    append(list, { fromNs, toNs, state: 'full', pressureMmHg });
    if (!next || restriction === 'intermittent') return;
    // Up to the next set the cuff keeps this set’s pressure, or goes to the lower one.
    append(
      list,
      restriction === 'continuous'
        ? { fromNs: toNs, toNs: next.atNs, state: 'full', pressureMmHg }
        : {
            fromNs: toNs,
            toNs: next.atNs,
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
  const edges = lists.flatMap((list) => list.flatMap(({ fromNs, toNs }) => [fromNs, toNs])).sort((a, b) => a - b);
  const at = lists.map(() => 0);
  edges.slice(1).forEach((toNs, index) => {
    const fromNs = edges[index]!;
    const states = lists.map((list, which) => {
      while (list[at[which]!]!?.toNs <= fromNs) at[which]! += 1;
      const interval = list[at[which]!];
      return interval && interval.fromNs <= fromNs ? interval.state : undefined;
    });
    const state = states.includes('full') ? 'full' : states.find((one) => one !== undefined);
    if (state) append(merged, { fromNs, toNs, state, pressureMmHg: undefined });
  });
  return merged;
}

/** An exercise in time, from a moment of the session on. */
export function scheduleExercise(full: FullPrescription, startNs = 0): ExerciseSchedule {
  const { side } = full;
  const perRepetition = repetitionTime(full);
  const turns: readonly (ExerciseSide | undefined)[] = side && takesTurns(side) ? sidesOf(side) : [side];
  const setIntervals: SetInterval[] = [];
  const rests: Rest[] = [];
  let now = startNs;
  const pass = (seconds: number, number: number, warmUp: boolean): void => {
    if (seconds === 0) return;
    const durationNs = nanoseconds(seconds);
    rests.push({ number, warmUp, atNs: now, durationNs });
    now += durationNs;
  };
  const work = (set: FullSet, number: number, warmUp: boolean): void => {
    turns.forEach((turn, index) => {
      if (index > 0) pass(full.changeS, number, warmUp);
      const durationNs =
        set.durationS === undefined ? perRepetition * (set.repetitions ?? 0) : nanoseconds(set.durationS);
      setIntervals.push({ set, number, warmUp, side: turn, atNs: now, durationNs });
      now += durationNs;
    });
    pass(set.restS, number, warmUp);
  };
  full.warmUp.forEach((set, index) => work(set, index + 1, true));
  now += nanoseconds(full.inflatedBeforeS);
  full.sets.forEach((set, index) => work(set, index + 1, false));
  now += nanoseconds(full.deflatedAfterS);
  const limbs = placesOf(full).map((place) => ({ place, cuffIntervals: cuffIntervalsOf(full, place, setIntervals) }));
  return {
    full,
    startNs,
    endNs: now,
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
  const own = scheduleExercise(full).setIntervals.filter((interval) => interval.side === side);
  const sets = own.map(({ set, warmUp, atNs, durationNs }, index) => {
    const next = own[index + 1];
    const before = warmUp && next && !next.warmUp ? full.inflatedBeforeS : 0;
    return { ...set, restS: next ? inSeconds(next.atNs - atNs - durationNs - nanoseconds(before)) : 0 };
  });
  const isWarmUp = (_: FullSet, index: number): boolean => own[index]!.warmUp;
  return { warmUp: sets.filter(isWarmUp), sets: sets.filter((set, index) => !isWarmUp(set, index)) };
}

/** The exercises of a session in time, one after the other with the pauses between them. */
export function scheduleSession({ exercises, pauses }: FullSession): ExerciseSchedule[] {
  let now = 0;
  return exercises.map((full, index) => {
    const schedule = scheduleExercise(full, now);
    now = schedule.endNs + nanoseconds(pauses[index] ?? 0);
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
