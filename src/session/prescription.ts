import type { Answer } from '../answer/answer.js';
import type { Full, Given, LeftOut } from '../answer/defined.js';
import { SIDES, type ExerciseMode, type Limb, type LoadUnit, type Side } from '../quantity/quantities.js';
import type { Tempo } from './notation.js';

export type { Tempo };

/** Characters that a name may have, of an exercise, a goal or a person. */
export const MOST_NAME = 120;
export const isName = ({ length }: string): boolean => length > 0 && length <= MOST_NAME;

export const RESTRICTIONS = ['continuous', 'intermittent', 'partial', 'none'] as const;
/**
 * When the cuff is inflated: from the first set to the last, in the sets only, in the sets and at a lower pressure in
 * the rests, or not at all.
 */
export type Restriction = (typeof RESTRICTIONS)[number];

export const EXERCISE_SIDES = [...SIDES, 'both', 'left-then-right', 'right-then-left'] as const;
/** Which sides do the exercise: one, both at once, or every set with one side and then with the other. */
export type ExerciseSide = (typeof EXERCISE_SIDES)[number];

/** One number for every cuff, or one for each side. */
export type PerSide =
  | number
  | {
      /** The number of the left side. */
      readonly left: number;
      /** The number of the right side. */
      readonly right: number;
    };

/** One set, planned or as it was done: repetitions at the tempo, a time, or repetitions with the time they took. */
export interface ExerciseSet {
  /** Repetitions of the set, 1–500. */
  readonly repetitions?: number | undefined;
  /**
   * How long the set lasts [s], 0.1–7200: a hold, an interval of walking or cycling, a passive one, or a set by the
   * watch.
   */
  readonly durationS?: number | undefined;
  /** Rest after this set [s], 0–3600; `restS` of the prescription when left out. The last set has none. */
  readonly restS?: number | undefined;
  /** Load of this set [`unit`], 0.1–2000; that of the prescription when left out. */
  readonly load?: number | undefined;
  /**
   * Cuff pressure of this set [mmHg], 20–1000, kept in the rest after it too; that of the prescription when left out.
   */
  readonly pressureMmHg?: PerSide | undefined;
}

/** A set done without the cuff and without counting: it lengthens the session and nothing else. */
export type WarmUpSet = Pick<ExerciseSet, 'repetitions' | 'durationS' | 'restS'>;

/** A set by time: with or without repetitions counted in it. */
export type Timed<S> = S & {
  /** How long the set lasts [s], 0.1–7200. */
  readonly durationS: number;
};

/** The fields of an exercise that say what is done and when; `S` is one of its sets, `W` one before them. */
export interface SetsFields<S, W = S> {
  /** Sets in the trade’s notation: `30-15-15-15`, `3x10`, or by time `5x2min`, `45s-30s`. Instead of `sets`. */
  readonly scheme?: string | undefined;
  /** The sets one by one. Instead of `scheme`. */
  readonly sets?: readonly S[] | undefined;
  /** Sets before the first, without the cuff; they count in the session time and in nothing else. */
  readonly warmUp?: readonly W[] | undefined;
  /**
   * Seconds of each phase, or the four-phase notation: eccentric, bottom, concentric, top, such as `2-0-2-0` or
   * `2020`. Needed where a set has repetitions and no time.
   */
  readonly tempo?: Tempo | string | undefined;
  /** Rest between sets [s], 0–3600; needed where there is more than one set and one has no rest of its own. */
  readonly restS?: number | undefined;
}

/** Sets in notation by time, with or without a tempo: `5x2min` or `45s-30s`. */
export interface TimedScheme extends LeftOut<'sets'> {
  /** Sets by time in the trade’s notation: `5x2min` or `45s-30s`. */
  readonly scheme: `${string}s` | `${string}min`;
}
/** Sets in notation that are counted, which takes a tempo: `30-15-15-15` or `3x10`. */
export interface CountedScheme extends Given<SetsFields<unknown>, 'scheme' | 'tempo'>, LeftOut<'sets'> {}
/** Sets one by one by time, with or without a tempo. */
export interface TimedSets<S> extends LeftOut<'scheme'> {
  /** The sets one by one, each with its time. */
  readonly sets: readonly Timed<S>[];
}
/** Sets one by one that are counted, which takes a tempo. */
export interface CountedSets<S> extends Given<SetsFields<S>, 'sets' | 'tempo'>, LeftOut<'scheme'> {}

/** The sets: in notation, or one by one. Sets that are counted have a `tempo`; sets by time need none. */
export type ExerciseSets<S> = TimedScheme | CountedScheme | TimedSets<S> | CountedSets<S>;

/** Every field of one exercise; {@link Prescription} has which of them go together. */
export interface PrescriptionFields extends SetsFields<ExerciseSet, WarmUpSet> {
  /**
   * When the cuff is inflated: `continuous`, from the first set to the last; `intermittent`, in the sets alone;
   * `partial`, in the sets and at a lower pressure in the rests; `none`.
   */
  readonly restriction: Restriction;
  /** Kind of exercise; `resistance` when left out. */
  readonly mode?: ExerciseMode | undefined;
  /** Limb the cuff is on; given together with `side`. */
  readonly limb?: Limb | undefined;
  /** Which side or sides do the exercise. */
  readonly side?: ExerciseSide | undefined;
  /**
   * Time to change sides, where every set is done with one side and then with the other [s], 0–600; 0 when left out.
   */
  readonly changeS?: number | undefined;
  /** Load lifted [`unit`], 0.1–2000, for the volume load. */
  readonly load?: number | undefined;
  /** Unit of `load`; kg when left out. */
  readonly unit?: LoadUnit | undefined;
  /** Load as a percentage of the 1RM [%], 1–100, for the relative volume load; instead of `oneRepMax`. */
  readonly percentOneRepMax?: number | undefined;
  /** The maximum that `load` is compared with: an answer of `testedOneRepMax` or `estimateOneRepMax`. */
  readonly oneRepMax?: Answer<'one-repetition-maximum'> | undefined;
  /** Body mass [kg], 20–400; with `bodyMassPercent`, for the volume load of body mass. */
  readonly bodyMassKg?: number | undefined;
  /** Share of body mass that is moved [%], 1–100. */
  readonly bodyMassPercent?: number | undefined;
  /** Cuff pressure [mmHg], 20–1000. */
  readonly pressureMmHg?: PerSide | undefined;
  /** Cuff pressure in the rests, with partial restriction [mmHg], 5–1000. */
  readonly restPressureMmHg?: PerSide | undefined;
  /** Limb occlusion pressure [mmHg], 50–1000, for pressure × time in percent of it. */
  readonly occlusionMmHg?: PerSide | undefined;
  /** How long the cuff was inflated before the first set [s], 0–3600; 0 when left out. */
  readonly inflatedBeforeS?: number | undefined;
  /** How long the cuff stayed inflated after the last set [s], 0–3600; 0 when left out. */
  readonly deflatedAfterS?: number | undefined;
}

/** A load whose share of the 1RM is given, or is not known. */
export interface ShareOfMaximum extends LeftOut<'oneRepMax'> {}
/** A load that is compared with the 1RM. */
export interface LoadOfMaximum extends LeftOut<'percentOneRepMax'> {}

/** The cuff is inflated through the sets and rests, or in the sets alone. */
export interface CuffInflated extends LeftOut<'restPressureMmHg'> {
  /** When the cuff is inflated: from the first set to the last, or in the sets alone. */
  readonly restriction: 'continuous' | 'intermittent';
}
/** The cuff goes to a lower pressure in the rests. */
export interface CuffLowered {
  /** When the cuff is inflated: in the sets, and at a lower pressure in the rests. */
  readonly restriction: 'partial';
}
/** There is no cuff. */
export interface NoCuff extends LeftOut<
  'pressureMmHg' | 'restPressureMmHg' | 'occlusionMmHg' | 'inflatedBeforeS' | 'deflatedAfterS'
> {
  /** When the cuff is inflated: never. */
  readonly restriction: 'none';
}

/**
 * One exercise: its sets, tempo and rests, and when the cuff is inflated. What excludes each other does not compile
 * together. What you hold in looser types, such as a form, goes in by `attempt(sessionTotals, unknown)`.
 */
// Each union is of parts that a given field tells apart: then the compiler names the field that is wrong.
export type Prescription = PrescriptionFields &
  ExerciseSets<ExerciseSet> &
  (CuffInflated | CuffLowered | NoCuff) &
  (LoadOfMaximum | ShareOfMaximum);

/** What is noted about a whole session once it is over. */
export interface SessionNotes {
  /** How hard the whole session was, 0–10, asked about 30 minutes after it. */
  readonly sessionRpe?: number | undefined;
  /** How long the session really took [s], 1–86,400; the time of the schedule when left out. Only with `sessionRpe`. */
  readonly sessionS?: number | undefined;
}

/** What an exercise has in a session. */
export interface InSession {
  /** Name of the exercise. */
  readonly name?: string | undefined;
  /** Pause after this exercise [s], 0–7200; `reperfusionS` of the session when left out. The last exercise has none. */
  readonly reperfusionS?: number | undefined;
}

/** An exercise of a session. */
export type SessionExercise = Prescription & InSession;

/** Several exercises, one after the other, with the cuffs deflated between them. */
export interface Session extends SessionNotes {
  /** The exercises, in order. */
  readonly exercises: readonly SessionExercise[];
  /** Pause between exercises, cuffs deflated [s], 0–7200. */
  readonly reperfusionS?: number | undefined;
}

/** One exercise, or a session of several. */
export type SessionInput = Session | (Prescription & SessionNotes);

/** A set with nothing left out. */
export interface FullSet {
  /** Repetitions of the set. */
  readonly repetitions?: number;
  /** How long the set lasts [s]. */
  readonly durationS?: number;
  /** Rest after the set [s]. */
  readonly restS: number;
  /** Load of the set, in the unit of the prescription. */
  readonly load?: number;
  /** Cuff pressure of the set [mmHg]. */
  readonly pressureMmHg?: PerSide;
}

/** A limb and its side; neither where the input names none. */
export interface Place {
  /** The limb: arm or leg. */
  readonly limb?: Limb;
  /** Side of the limb. */
  readonly side?: Side;
}

/** A prescription with every default in its place. */
export interface FullPrescription {
  readonly name?: string;
  readonly sets: readonly FullSet[];
  readonly warmUp: readonly FullSet[];
  readonly tempo?: Full<Tempo>;
  readonly restriction: Restriction;
  readonly mode: ExerciseMode;
  readonly limb?: Limb;
  readonly side?: ExerciseSide;
  readonly changeS: number;
  readonly unit: LoadUnit;
  readonly load?: number;
  readonly percentOneRepMax?: number;
  readonly oneRepMax?: Answer<'one-repetition-maximum'>;
  readonly bodyMassKg?: number;
  readonly bodyMassPercent?: number;
  readonly restPressureMmHg?: PerSide;
  readonly occlusionMmHg?: PerSide;
  readonly inflatedBeforeS: number;
  readonly deflatedAfterS: number;
}

/** A session with every default in its place. */
export interface FullSession extends SessionNotes {
  readonly exercises: readonly FullPrescription[];
  /** Pause after each exercise but the last [s]. */
  readonly pauses: readonly number[];
}

/** The sides of an exercise, in the order they are done. */
export const sidesOf = (side: ExerciseSide): readonly Side[] =>
  side === 'both' || side === 'left-then-right' ? SIDES : side === 'right-then-left' ? ['right', 'left'] : [side];

/** Whether every set is done with one side and then with the other. */
export const takesTurns = (side: ExerciseSide | undefined): boolean =>
  side === 'left-then-right' || side === 'right-then-left';

/** The limbs that an exercise works, in the order they are worked. */
export const placesOf = ({ limb, side }: FullPrescription): readonly Place[] =>
  limb && side ? sidesOf(side).map((one) => ({ limb, side: one })) : [{}];

/** Whether the cuff is ever inflated. */
export const isCuffed = ({ restriction }: { readonly restriction: Restriction }): boolean => restriction !== 'none';

/** The number that holds on one side. */
export const onSide = (value: PerSide, side: Side | undefined): number =>
  typeof value === 'number' ? value : value[side ?? 'left'];

/** Tells limbs apart: `left leg`. Those that are not named are one. */
export const placeName = ({ limb, side }: Pick<FullPrescription, keyof Place>): string => [side, limb].join(' ');
