import type { Answer } from '../answer/answer.js';
import { defined, type Full, type Given, type LeftOut } from '../answer/defined.js';
import { readAnswer } from '../answer/read-answer.js';
import { GIVEN_WITH, need, LEFT_OUT_WITH, type Asked, type Needed } from '../answer/needs.js';
import { Reader } from '../answer/reader.js';
import { format } from '../quantity/format.js';
import {
  EXERCISE_MODES,
  inLoadUnit,
  LIMBS,
  LOAD_UNITS,
  loadUnitCode,
  quantities,
  SIDES,
  type ExerciseMode,
  type Limb,
  type LoadUnit,
  type Side,
} from '../quantity/quantities.js';
import { MOST_SETS, parseScheme, parseTempo, type Tempo } from './notation.js';
import {
  ALL_OR_NONE,
  BELOW_FIELD,
  EITHER_SCHEME,
  EXERCISES,
  LEFT_OUT_LOADS,
  LEFT_OUT_UNLESS,
  LEFT_OUT_UNLESS_TURNS,
  LEFT_OUT_UNRESTRICTED,
  LONGER_REPETITION,
  NAME,
  OR_DURATION,
  OR_IN_EVERY_SET,
  REST_PRESSURE,
  SCHEME,
  SETS,
  SIDE_OF_PRESSURES,
  TEMPO_PHASES,
  WITHOUT_EXPLOSIVE,
  WITHOUT_PRESSURES,
} from './needs.js';
import { MAXIMUM_MAKERS } from '../strength/needs.js';
import { massRequirement } from '../strength/read-mass.js';

export type { Tempo };

/**
 * When the cuff is inflated: from the first set to the last, in the sets only, in the sets and at a lower pressure in
 * the rests, or not at all.
 */
export type Restriction = 'continuous' | 'intermittent' | 'partial' | 'none';
export const RESTRICTIONS = ['continuous', 'intermittent', 'partial', 'none'] as const;

/** Which sides do the exercise: one, both at once, or every set with one side and then with the other. */
export type ExerciseSide = Side | 'both' | 'left-then-right' | 'right-then-left';
export const EXERCISE_SIDES = /* @__PURE__ */ (() =>
  [...SIDES, 'both', 'left-then-right', 'right-then-left'] as const)();

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

/** The number that holds on one side. */
export const onSide = (value: PerSide, side: Side | undefined): number =>
  typeof value === 'number' ? value : value[side ?? 'left'];

/** Names a limb: `left leg`. */
export const placeName = ({ limb, side }: Place): string => (limb && side ? `${side} ${limb}` : 'the limb');

function readTempo(reader: Reader): Full<Tempo> | { readonly without: string } | undefined {
  const given = reader.textOrChild('tempo', TEMPO_PHASES, (text) => parseTempo(text) !== undefined);
  if (given === undefined) return undefined;
  if (typeof given === 'string') {
    const { eccentricS, bottomS, concentricS, topS } = parseTempo(given)!;
    if (eccentricS === undefined || bottomS === undefined || concentricS === undefined || topS === undefined) {
      return { without: given };
    }
    return { eccentricS, bottomS, concentricS, topS };
  }
  return {
    eccentricS: given.number('eccentricS'),
    bottomS: given.optionalNumber('bottomS') ?? 0,
    concentricS: given.number('concentricS'),
    topS: given.optionalNumber('topS') ?? 0,
  };
}

function readSet(set: Reader): ExerciseSet {
  return defined({
    repetitions: set.optionalNumber('repetitions'),
    durationS: set.optionalNumber('durationS'),
    restS: set.optionalNumber('restS'),
  }) as ExerciseSet;
}

/** What a set without repetitions is asked for. */
export function orDuration(): Needed {
  const { min, max, unit } = quantities.repetitions;
  return need(OR_DURATION, { min, max, unit });
}

/** Reports a field that does not go with the others. */
const refuse = (reader: Reader, name: string, asked: Asked): void => {
  if (reader.has(name)) reader.refuse(name, asked, 'a value');
};

/** Reports the one that is missing of two fields that go together. */
function together(reader: Reader, ...[first, second]: readonly [string, string]): void {
  if (reader.has(first) === reader.has(second)) return;
  const [there, absent] = reader.has(first) ? [first, second] : [second, first];
  reader.report('missing', absent, need(GIVEN_WITH, { field: there }));
}

function readPrescription(reader: Reader): FullPrescription {
  const scheme = reader.optionalText('scheme', SCHEME, (text) => parseScheme(text) !== undefined);
  const setReaders = reader.optionalList('sets', SETS, MOST_SETS);
  const warmUpReaders = reader.optionalList('warmUp', SETS, MOST_SETS);
  const restS = reader.optionalNumber('restS');
  const restriction = reader.choice('restriction', RESTRICTIONS);
  const mode = reader.optionalChoice('mode', EXERCISE_MODES) ?? 'resistance';
  const limb = reader.optionalChoice('limb', LIMBS);
  const side = reader.optionalChoice('side', EXERCISE_SIDES);
  const changeS = reader.optionalNumber('changeS') ?? 0;
  const unit = reader.optionalChoice('unit', LOAD_UNITS) ?? 'kg';
  const loads = inLoadUnit(quantities.load, loadUnitCode(unit));
  const load = reader.optionalNumber('load', loads);
  const percentOneRepMax = reader.optionalNumber('percentOneRepMax');
  const maximum = readAnswer(reader, 'oneRepMax', massRequirement('one-repetition-maximum', MAXIMUM_MAKERS), true);
  const bodyMassKg = reader.optionalNumber('bodyMassKg');
  const bodyMassPercent = reader.optionalNumber('bodyMassPercent');
  const pressureMmHg = reader.optionalNumberOrParts('pressureMmHg', SIDES);
  const restPressureMmHg = reader.optionalNumberOrParts('restPressureMmHg', SIDES);
  const occlusionMmHg = reader.optionalNumberOrParts('occlusionMmHg', SIDES);
  const inflatedBeforeS = reader.optionalNumber('inflatedBeforeS') ?? 0;
  const deflatedAfterS = reader.optionalNumber('deflatedAfterS') ?? 0;
  const tempo = readTempo(reader);

  const given: readonly ExerciseSet[] =
    setReaders?.map((set) => {
      const own = {
        load: set.optionalNumber('load', loads),
        pressureMmHg: set.optionalNumberOrParts('pressureMmHg', SIDES),
      };
      return defined({ ...readSet(set), ...own }) as ExerciseSet;
    }) ??
    parseScheme(scheme ?? '') ??
    [];
  const warmUpGiven = warmUpReaders?.map(readSet) ?? [];

  if (reader.has('scheme') === reader.has('sets')) {
    const received = reader.has('sets') ? 'both' : 'neither';
    reader.refuse('sets', EITHER_SCHEME, received);
  }
  for (const set of [...(setReaders ?? []), ...(warmUpReaders ?? [])]) {
    if (!set.has('repetitions') && !set.has('durationS')) {
      set.report('missing', 'repetitions', orDuration());
    }
  }
  const times = checkTempo(reader, tempo, [...warmUpGiven, ...given]);
  const resting = [...warmUpGiven, ...given].slice(0, -1);
  if (!reader.has('restS') && resting.some((set) => set.restS === undefined)) {
    reader.judge('restS', quantities.restS, undefined);
  }
  together(reader, 'limb', 'side');
  together(reader, 'bodyMassKg', 'bodyMassPercent');
  if (!takesTurns(side)) refuse(reader, 'changeS', LEFT_OUT_UNLESS_TURNS);
  checkLoads(reader, given);
  const pressures = given.map((set) => set.pressureMmHg ?? pressureMmHg);
  checkPressures(reader, { restriction, side, pressures, rest: restPressureMmHg, occlusionMmHg });

  const rest = (set: ExerciseSet): FullSet => defined({ ...set, restS: set.restS ?? restS ?? 0 }) as FullSet;
  return defined({
    sets: given.map((set, index) => {
      const pressure = pressures[index];
      const own = pressure !== undefined && { pressureMmHg: pressure };
      const lifted = set.load ?? load;
      const last = index === given.length - 1;
      return { ...rest(set), ...(lifted !== undefined && { load: lifted }), ...own, ...(last && { restS: 0 }) };
    }),
    warmUp: warmUpGiven.map(rest),
    tempo: times,
    restriction,
    mode,
    limb,
    side,
    changeS,
    unit,
    load,
    percentOneRepMax,
    oneRepMax: reader.has('oneRepMax') ? maximum : undefined,
    bodyMassKg,
    bodyMassPercent,
    restPressureMmHg,
    occlusionMmHg,
    inflatedBeforeS,
    deflatedAfterS,
  }) as FullPrescription;
}

/** The tempo, if it is one that sets of repetitions can be timed by. */
function checkTempo(
  reader: Reader,
  tempo: ReturnType<typeof readTempo>,
  sets: readonly ExerciseSet[],
): Full<Tempo> | undefined {
  const counted = sets.some((set) => set.durationS === undefined && set.repetitions !== undefined);
  if (!tempo || 'without' in tempo) {
    if (tempo && counted) {
      reader.refuse('tempo', WITHOUT_EXPLOSIVE, `'${tempo.without}'`);
    } else if (counted && !reader.has('tempo')) reader.report('missing', 'tempo', TEMPO_PHASES);
    return undefined;
  }
  if (reader.fine && tempo.eccentricS + tempo.bottomS + tempo.concentricS + tempo.topS === 0) {
    reader.refuse('tempo', LONGER_REPETITION, '0 s');
  }
  return tempo;
}

function checkLoads(reader: Reader, sets: readonly ExerciseSet[]): void {
  const perSet = sets.some((set) => set.load !== undefined);
  if (perSet && !reader.has('load') && sets.some((set) => set.load === undefined)) {
    reader.report('missing', 'load', need(OR_IN_EVERY_SET, { field: 'load' }));
  }
  if (perSet) refuse(reader, 'percentOneRepMax', LEFT_OUT_LOADS);
  if (reader.has('oneRepMax')) {
    refuse(reader, 'percentOneRepMax', need(LEFT_OUT_WITH, { field: 'oneRepMax' }));
    if (!perSet && !reader.has('load')) reader.report('missing', 'load', need(GIVEN_WITH, { field: 'oneRepMax' }));
  }
}

interface Pressures {
  readonly restriction: Restriction;
  readonly side: ExerciseSide | undefined;
  readonly pressures: readonly (PerSide | undefined)[];
  readonly rest: PerSide | undefined;
  readonly occlusionMmHg: PerSide | undefined;
}

function checkPressures(reader: Reader, { restriction, side, pressures, rest, occlusionMmHg }: Pressures): void {
  const some = pressures.some((pressure) => pressure !== undefined);
  if (some && pressures.includes(undefined)) {
    reader.report('missing', 'pressureMmHg', need(OR_IN_EVERY_SET, { field: 'pressureMmHg' }));
  }
  if (restriction === 'none') {
    for (const name of ['pressureMmHg', 'occlusionMmHg', 'inflatedBeforeS', 'deflatedAfterS'])
      refuse(reader, name, LEFT_OUT_UNRESTRICTED);
    if (some && !reader.has('pressureMmHg')) {
      reader.refuse('sets', WITHOUT_PRESSURES, 'pressures');
    }
  }
  if (restriction !== 'partial')
    refuse(reader, 'restPressureMmHg', need(LEFT_OUT_UNLESS, { field: 'restriction', value: 'partial' }));
  else if (some && !reader.has('restPressureMmHg')) {
    reader.report('missing', 'restPressureMmHg', REST_PRESSURE);
  }
  const split = [rest, occlusionMmHg, ...pressures].some((pressure) => typeof pressure === 'object');
  if (split && !reader.has('side')) reader.report('missing', 'side', SIDE_OF_PRESSURES);
  if (!reader.fine || rest === undefined) return;
  if (!some) reader.report('missing', 'pressureMmHg', need(GIVEN_WITH, { field: 'restPressureMmHg' }));
  for (const one of side ? sidesOf(side) : SIDES) {
    const lower = onSide(rest, one);
    if (pressures.some((pressure) => pressure !== undefined && onSide(pressure, one) <= lower)) {
      reader.refuse('restPressureMmHg', need(BELOW_FIELD, { field: 'pressureMmHg' }), `${format(lower)} mmHg`);
      return;
    }
  }
}

/** A prescription with every default in its place, or an InputError. */
export function fullPrescription(prescription: unknown): FullPrescription {
  const reader = new Reader(prescription);
  const full = readPrescription(reader);
  reader.done();
  return full;
}

const MOST_NAME = 120;
const MOST_EXERCISES = 50;

/** A session, or one exercise as a session of its own, with every default in its place; reported to the reader. */
export function readSession(reader: Reader): FullSession {
  const parts = reader.optionalList('exercises', EXERCISES, MOST_EXERCISES);
  const sessionRpe = reader.optionalNumber('sessionRpe');
  const sessionS = reader.optionalNumber('sessionS');
  const notes = defined({ sessionRpe, sessionS }) as SessionNotes;
  if (reader.has('sessionS') && !reader.has('sessionRpe')) {
    reader.report('missing', 'sessionRpe', need(GIVEN_WITH, { field: 'sessionS' }));
  }
  if (!parts) {
    return { ...notes, exercises: reader.has('exercises') ? [] : [readPrescription(reader)], pauses: [] };
  }
  const reperfusionS = reader.optionalNumber('reperfusionS');
  const own: (number | undefined)[] = [];
  const exercises = parts.map((part) => {
    const name = part.optionalText(
      'name',
      need(NAME, { most: MOST_NAME }),
      ({ length }) => length > 0 && length <= MOST_NAME,
    );
    own.push(part.optionalNumber('reperfusionS'));
    return { ...readPrescription(part), ...(name !== undefined && { name }) };
  });
  if (!reader.has('reperfusionS') && own.slice(0, -1).includes(undefined)) {
    reader.judge('reperfusionS', quantities.reperfusionS, undefined);
  }
  const cuffed = parts.filter((_, index) => exercises[index]!.restriction !== 'none');
  if (cuffed.some((part) => part.has('limb'))) {
    for (const part of cuffed) {
      if (!part.has('limb')) part.report('missing', 'limb', ALL_OR_NONE);
    }
  }
  const pauses = own.slice(0, -1).map((pause) => pause ?? reperfusionS ?? 0);
  return { ...notes, exercises, pauses };
}

/** A session with every default in its place, or an InputError. */
export function fullSession(input: SessionInput): FullSession {
  const reader = new Reader(input);
  const full = readSession(reader);
  reader.done();
  return full;
}
