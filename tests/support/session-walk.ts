import type { ExerciseSide, Prescription, Session, SessionEvent, SessionExercise, Side } from '../../src/index.js';

/** An exercise as the walk takes it: everything spelt out, times in whole ticks. */
export interface WalkedExercise {
  /** Sets of repetitions at the tempo, or of ticks where the set is timed. */
  readonly sets: readonly {
    readonly repetitions?: number;
    readonly ticks?: number;
    readonly rest: number;
    readonly pressure: number;
    /** Load of this set [kg]. */
    readonly load?: number;
  }[];
  /** Ticks of the four phases of a repetition. */
  readonly tempo: readonly [number, number, number, number];
  readonly warmUp: readonly { readonly ticks: number; readonly rest: number }[];
  readonly restriction: Prescription['restriction'];
  readonly side: ExerciseSide;
  readonly change: number;
  readonly restPressure: number;
  readonly before: number;
  readonly after: number;
  /** Pause after the exercise. */
  readonly pause: number;
}

interface Tick {
  readonly exercise: number;
  readonly what: 'work' | 'other';
  readonly side?: Side;
  readonly pressure?: number;
}

/** What one cuff does in one tick. */
export interface CuffTick {
  readonly state: 'down' | 'full' | 'partial';
  readonly pressure: number;
}
const DOWN: CuffTick = { state: 'down', pressure: 0 };

/** Everything that happens, tick by tick, from the exercises alone. */
function ticksOf(exercises: readonly WalkedExercise[]): Tick[] {
  const ticks: Tick[] = [];
  exercises.forEach((given, exercise) => {
    const spend = (count: number, tick: Omit<Tick, 'exercise'>) => {
      for (let n = 0; n < count; n += 1) ticks.push({ exercise, ...tick });
    };
    const other = { what: 'other' } as const;
    const turns: (Side | undefined)[] =
      given.side === 'left-then-right'
        ? ['left', 'right']
        : given.side === 'right-then-left'
          ? ['right', 'left']
          : [undefined];
    const inTurn = (count: number, of: (side: Side | undefined) => Omit<Tick, 'exercise'>) =>
      turns.forEach((side, index) => {
        if (index > 0) spend(given.change, other);
        spend(count, of(side));
      });
    for (const { ticks: count, rest } of given.warmUp) {
      inTurn(count, () => other);
      spend(rest, other);
    }
    const cuffed = given.restriction !== 'none';
    if (cuffed) spend(given.before, other);
    const perRepetition = given.tempo.reduce((total, phase) => total + phase, 0);
    given.sets.forEach(({ repetitions = 0, ticks: count = repetitions * perRepetition, rest, pressure }, index) => {
      inTurn(count, (side) => ({ what: 'work', pressure, ...(side && { side }) }));
      if (index < given.sets.length - 1) spend(rest, other);
    });
    if (cuffed) spend(given.after, other);
    if (exercise < exercises.length - 1) spend(given.pause, { what: 'other' });
  });
  return ticks;
}

const has = (side: ExerciseSide, one: Side): boolean => side === one || (side !== 'left' && side !== 'right');

/** What the cuff of one side does in every tick: it looks back and ahead for the side’s own sets in the exercise. */
function cuffOf(side: Side, ticks: readonly Tick[], exercises: readonly WalkedExercise[]): CuffTick[] {
  const own = (index: number): boolean => {
    const tick = ticks[index]!;
    return tick.what === 'work' && has(exercises[tick.exercise]!.side, side) && (tick.side ?? side) === side;
  };
  const firsts = exercises.map((_, exercise) =>
    ticks.findIndex((tick, index) => tick.exercise === exercise && own(index)),
  );
  const lasts = exercises.map((_, exercise) =>
    ticks.findLastIndex((tick, index) => tick.exercise === exercise && own(index)),
  );
  let held = 0;
  return ticks.map(({ exercise, pressure }, index) => {
    const { restriction, before, after, restPressure, sets } = exercises[exercise]!;
    const [first, last] = [firsts[exercise]!, lasts[exercise]!];
    if (restriction === 'none' || first < 0) return DOWN;
    if (own(index)) {
      held = pressure!;
      return { state: 'full', pressure: held };
    }
    if (index < first) return index >= first - before ? { state: 'full', pressure: sets[0]!.pressure } : DOWN;
    if (index > last) return index <= last + after ? { state: 'full', pressure: held } : DOWN;
    if (restriction === 'continuous') return { state: 'full', pressure: held };
    return restriction === 'partial' ? { state: 'partial', pressure: restPressure } : DOWN;
  });
}

/** Counts of a cuff’s ticks. */
function count(cuff: readonly CuffTick[]) {
  let [full, partial, run, longest, pressure, first, last] = [0, 0, 0, 0, 0, -1, -1];
  cuff.forEach((tick, index) => {
    if (tick.state === 'full') full += 1;
    if (tick.state === 'partial') partial += 1;
    run = tick.state === 'down' ? 0 : run + 1;
    longest = Math.max(longest, run);
    pressure += tick.pressure;
    if (tick.state !== 'down') {
      if (first < 0) first = index;
      last = index;
    }
  });
  const reperfusion = first < 0 ? 0 : last - first + 1 - full - partial;
  return { full, partial, longest, pressure, reperfusion };
}

/**
 * An independent account of a session: it walks the clock tick by tick and looks at what is going on, from the exercises
 * alone. It shares no code and no formula with the library.
 */
export function walkSession(exercises: readonly WalkedExercise[]) {
  const ticks = ticksOf(exercises);
  const cuffs = { left: cuffOf('left', ticks, exercises), right: cuffOf('right', ticks, exercises) };
  const any = ticks.map((_, index): CuffTick => {
    const both = [cuffs.left[index]!, cuffs.right[index]!];
    return both.find(({ state }) => state === 'full') ?? both.find(({ state }) => state === 'partial') ?? DOWN;
  });
  const worked = (side: Side) =>
    ticks.filter(
      (tick) => tick.what === 'work' && has(exercises[tick.exercise]!.side, side) && (tick.side ?? side) === side,
    ).length;
  return {
    all: ticks.length,
    repetitions: exercises
      .map(
        ({ sets, side }) =>
          sets.reduce((total, { repetitions = 0 }) => total + repetitions, 0) * (side.includes('then') ? 2 : 1),
      )
      .reduce((total, own) => total + own, 0),
    // Repetition by repetition, each with the load of its set.
    volume: exercises
      .flatMap(({ sets, side }) => [...sets, ...(side.includes('then') ? sets : [])])
      .flatMap(({ repetitions = 0, load = 0 }) => Array.from({ length: repetitions }, () => load))
      .reduce((total, load) => total + load, 0),
    peak: Math.max(...exercises.flatMap(({ sets }) => sets.map(({ load = 0 }) => load))),
    work: ticks.filter(({ what }) => what === 'work').length,
    cuffs,
    whole: count(any),
    left: { ...count(cuffs.left), work: worked('left') },
    right: { ...count(cuffs.right), work: worked('right') },
  };
}

/** What events say a cuff does in every tick: they are replayed one by one. */
export function replay(events: readonly SessionEvent[], side: Side, ticks: number, tickS: number): CuffTick[] {
  const cuff: CuffTick[] = [];
  const own = events.filter((event) => event.side === side && ['inflate', 'lower', 'deflate'].includes(event.event));
  let at = 0;
  let now = DOWN;
  for (let tick = 0; tick < ticks; tick += 1) {
    while (at < own.length && Math.round(own[at]!.atS / tickS) <= tick) {
      const { event, pressureMmHg = 0 } = own[at]!;
      at += 1;
      now = event === 'deflate' ? DOWN : { state: 'full', pressure: pressureMmHg };
    }
    cuff.push(now);
  }
  return cuff;
}

/** The same exercises as the library takes them. */
export function asSession(exercises: readonly WalkedExercise[], tickS: number): Session {
  // Ticks are tenths or whole seconds: their products are brought back to one decimal.
  const seconds = (ticks: number): number => Math.round(ticks * tickS * 10) / 10;
  return {
    reperfusionS: 0,
    exercises: exercises.map(
      ({
        sets,
        tempo: [eccentric, bottom, concentric, top],
        warmUp,
        restriction,
        side,
        change,
        restPressure,
        before,
        after,
        pause,
      }): SessionExercise => {
        const cuffed = restriction !== 'none';
        const turns = side === 'left-then-right' || side === 'right-then-left';
        return {
          sets: sets.map(({ repetitions, ticks, rest, pressure, load }) => ({
            ...(load !== undefined && { load }),
            ...(repetitions === undefined ? {} : { repetitions }),
            ...(ticks === undefined ? {} : { durationS: seconds(ticks) }),
            restS: seconds(rest),
            ...(cuffed && { pressureMmHg: pressure }),
          })),
          ...(warmUp.length > 0 && {
            warmUp: warmUp.map(({ ticks, rest }) => ({ durationS: seconds(ticks), restS: seconds(rest) })),
          }),
          tempo: {
            eccentricS: seconds(eccentric),
            bottomS: seconds(bottom),
            concentricS: seconds(concentric),
            topS: seconds(top),
          },
          restriction,
          limb: 'leg',
          side,
          ...(turns && { changeS: seconds(change) }),
          ...(restriction === 'partial' && { restPressureMmHg: restPressure }),
          ...(cuffed && { inflatedBeforeS: seconds(before), deflatedAfterS: seconds(after) }),
          reperfusionS: seconds(pause),
        } as SessionExercise;
      },
    ),
  };
}
