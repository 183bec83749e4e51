import { defined, type Exact, type Full, type Loose } from '../answer/defined.js';
import { GIVEN_WITH, LEFT_OUT_WITH, need, type Needed } from '../answer/needs.js';
import { readAnswer } from '../answer/read-answer.js';
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
} from '../quantity/quantities.js';
import { MAXIMUM_MAKERS } from '../strength/needs.js';
import { massRequirement } from '../strength/read-mass.js';
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
import { MOST_SETS, parseScheme, parseTempo, type Tempo } from './notation.js';
import {
  EXERCISE_SIDES,
  isCuffed,
  isName,
  MOST_NAME,
  onSide,
  RESTRICTIONS,
  sidesOf,
  takesTurns,
  type ExerciseSet,
  type FullPrescription,
  type FullSession,
  type PerSide,
  type SessionInput,
} from './prescription.js';

function readTempo(reader: Reader): Full<Tempo> | { readonly without: string } | undefined {
  const given = reader.textOrChild('tempo', TEMPO_PHASES, (text) => parseTempo(text) !== undefined);
  if (given === undefined) return undefined;
  if (typeof given === 'string') {
    const phases = parseTempo(given)!;
    return Object.values(phases).includes(undefined) ? { without: given } : (phases as Full<Tempo>);
  }
  return {
    eccentricS: given.number('eccentricS'),
    bottomS: given.optionalNumber('bottomS') ?? 0,
    concentricS: given.number('concentricS'),
    topS: given.optionalNumber('topS') ?? 0,
  };
}

const readSet = (set: Reader) => ({
  repetitions: set.optionalNumber('repetitions'),
  durationS: set.optionalNumber('durationS'),
  restS: set.optionalNumber('restS'),
});

/** What a set without repetitions is asked for. */
export function orDuration(): Needed {
  const { min, max, unit } = quantities.repetitions;
  return need(OR_DURATION, { min, max, unit });
}

/** Asks for a field that another one needs. */
const requires = (reader: Reader, field: string, other: string): void => {
  if (reader.has(field) && !reader.has(other)) reader.missing(other, need(GIVEN_WITH, { field }));
};

/** Asks for the one that is missing of two fields that go together. */
const together = (reader: Reader, first: string, second: string): void => {
  requires(reader, first, second);
  requires(reader, second, first);
};

function readPrescription(reader: Reader): FullPrescription {
  const scheme = reader.optionalText('scheme', SCHEME, (text) => parseScheme(text) !== undefined);
  const setReaders = reader.optionalList('sets', SETS, MOST_SETS);
  const warmUpReaders = reader.optionalList('warmUp', SETS, MOST_SETS) ?? [];
  const restS = reader.optionalNumber('restS');
  const exercise = {
    restriction: reader.choice('restriction', RESTRICTIONS),
    mode: reader.optionalChoice('mode', EXERCISE_MODES) ?? 'resistance',
    limb: reader.optionalChoice('limb', LIMBS),
    side: reader.optionalChoice('side', EXERCISE_SIDES),
    changeS: reader.optionalNumber('changeS') ?? 0,
    unit: reader.optionalChoice('unit', LOAD_UNITS) ?? 'kg',
  };
  const loads = inLoadUnit(quantities.load, loadUnitCode(exercise.unit));
  const load = reader.optionalNumber('load', loads);
  const percentOneRepMax = reader.optionalNumber('percentOneRepMax');
  const maximum = readAnswer(reader, 'oneRepMax', massRequirement('one-repetition-maximum', MAXIMUM_MAKERS), true);
  const body = {
    bodyMassKg: reader.optionalNumber('bodyMassKg'),
    bodyMassPercent: reader.optionalNumber('bodyMassPercent'),
  };
  const pressureMmHg = reader.optionalNumberOrParts('pressureMmHg', SIDES);
  const cuff = {
    restPressureMmHg: reader.optionalNumberOrParts('restPressureMmHg', SIDES),
    occlusionMmHg: reader.optionalNumberOrParts('occlusionMmHg', SIDES),
    inflatedBeforeS: reader.optionalNumber('inflatedBeforeS') ?? 0,
    deflatedAfterS: reader.optionalNumber('deflatedAfterS') ?? 0,
  };
  const tempo = readTempo(reader);
  const given: readonly Exact<ExerciseSet>[] =
    setReaders?.map((set) => {
      const own = {
        load: set.optionalNumber('load', loads),
        pressureMmHg: set.optionalNumberOrParts('pressureMmHg', SIDES),
      };
      return defined({ ...readSet(set), ...own });
    }) ??
    parseScheme(scheme ?? '') ??
    [];
  const warmUp = warmUpReaders.map((set) => defined(readSet(set)));

  if (reader.has('scheme') === reader.has('sets'))
    reader.refuse('sets', EITHER_SCHEME, reader.has('sets') ? 'both' : 'neither');
  for (const set of [...(setReaders ?? []), ...warmUpReaders]) {
    if (!set.has('repetitions') && !set.has('durationS')) set.missing('repetitions', orDuration());
  }
  const all = [...warmUp, ...given];
  const times = checkTempo(reader, tempo, all);
  if (!reader.has('restS') && all.slice(0, -1).some((set) => set.restS === undefined)) {
    reader.acceptNumber('restS', quantities.restS, undefined);
  }
  together(reader, 'limb', 'side');
  together(reader, 'bodyMassKg', 'bodyMassPercent');
  if (!takesTurns(exercise.side)) reader.leaveOut('changeS', LEFT_OUT_UNLESS_TURNS);
  checkLoads(reader, given);
  const restAfter = (set: ExerciseSet): number => set.restS ?? restS ?? 0;
  const sets = given.map((set, index) => {
    const lifted = set.load ?? load;
    const pressure = set.pressureMmHg ?? pressureMmHg;
    return {
      ...set,
      restS: index === given.length - 1 ? 0 : restAfter(set),
      ...(lifted !== undefined && { load: lifted }),
      ...(pressure !== undefined && { pressureMmHg: pressure }),
    };
  });
  checkPressures(
    reader,
    { ...exercise, ...cuff },
    sets.map((set) => set.pressureMmHg),
  );

  return defined({
    sets,
    warmUp: warmUp.map((set) => ({ ...set, restS: restAfter(set) })),
    tempo: times,
    ...exercise,
    load,
    percentOneRepMax,
    oneRepMax: reader.has('oneRepMax') ? maximum : undefined,
    ...body,
    ...cuff,
  });
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
    } else if (counted && !reader.has('tempo')) reader.missing('tempo', TEMPO_PHASES);
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
    reader.missing('load', need(OR_IN_EVERY_SET, { field: 'load' }));
  }
  if (perSet) reader.leaveOut('percentOneRepMax', LEFT_OUT_LOADS);
  if (reader.has('oneRepMax')) reader.leaveOut('percentOneRepMax', need(LEFT_OUT_WITH, { field: 'oneRepMax' }));
  if (!perSet) requires(reader, 'oneRepMax', 'load');
}

/** Where and when a cuff is inflated, and its pressure in the rests. */
type Cuffed = Loose<Pick<FullPrescription, 'restriction' | 'side' | 'restPressureMmHg' | 'occlusionMmHg'>>;

function checkPressures(
  reader: Reader,
  { restriction, side, restPressureMmHg: rest, occlusionMmHg }: Cuffed,
  pressures: readonly (PerSide | undefined)[],
): void {
  const some = pressures.some((pressure) => pressure !== undefined);
  if (some && pressures.includes(undefined)) {
    reader.missing('pressureMmHg', need(OR_IN_EVERY_SET, { field: 'pressureMmHg' }));
  }
  if (restriction === 'none') {
    for (const name of ['pressureMmHg', 'occlusionMmHg', 'inflatedBeforeS', 'deflatedAfterS'])
      reader.leaveOut(name, LEFT_OUT_UNRESTRICTED);
    if (some && !reader.has('pressureMmHg')) {
      reader.refuse('sets', WITHOUT_PRESSURES, 'pressures');
    }
  }
  if (restriction !== 'partial')
    reader.leaveOut('restPressureMmHg', need(LEFT_OUT_UNLESS, { field: 'restriction', value: 'partial' }));
  else if (some && !reader.has('restPressureMmHg')) {
    reader.missing('restPressureMmHg', REST_PRESSURE);
  }
  const split = [rest, occlusionMmHg, ...pressures].some((pressure) => typeof pressure === 'object');
  if (split && !reader.has('side')) reader.missing('side', SIDE_OF_PRESSURES);
  if (!reader.fine || rest === undefined) return;
  if (!some) requires(reader, 'restPressureMmHg', 'pressureMmHg');
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

const MOST_EXERCISES = 50;

/** A session, or one exercise as a session of its own, with every default in its place; reported to the reader. */
export function readSession(reader: Reader): FullSession {
  const parts = reader.optionalList('exercises', EXERCISES, MOST_EXERCISES);
  const notes = defined({
    sessionRpe: reader.optionalNumber('sessionRpe'),
    sessionS: reader.optionalNumber('sessionS'),
  });
  requires(reader, 'sessionS', 'sessionRpe');
  if (!parts) return { ...notes, exercises: [readPrescription(reader)], pauses: [] };
  const reperfusionS = reader.optionalNumber('reperfusionS');
  const own: (number | undefined)[] = [];
  const exercises = parts.map((part) => {
    const name = part.optionalText('name', need(NAME, { most: MOST_NAME }), isName);
    own.push(part.optionalNumber('reperfusionS'));
    return { ...readPrescription(part), ...(name !== undefined && { name }) };
  });
  if (!reader.has('reperfusionS') && own.slice(0, -1).includes(undefined)) {
    reader.acceptNumber('reperfusionS', quantities.reperfusionS, undefined);
  }
  const cuffed = parts.filter((_, index) => isCuffed(exercises[index]!));
  if (cuffed.some((part) => part.has('limb'))) {
    for (const part of cuffed) {
      if (!part.has('limb')) part.missing('limb', ALL_OR_NONE);
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
