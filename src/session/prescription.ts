import { Reader } from '../answer/reader.js';
import { LOAD_UNITS, loadUnitCode, quantities, type LoadUnit } from '../quantity/quantities.js';

/** When the cuff is up: from the first set to the last, in the sets only, or not at all. */
export type Restriction = 'continuous' | 'intermittent' | 'none';
export const RESTRICTIONS = ['continuous', 'intermittent', 'none'] as const;

/** How long each phase of a repetition takes [s]. Pauses left out are 0. */
export interface Tempo {
  /** Lowering. */
  readonly eccentricS: number;
  /** Pause at the bottom. */
  readonly bottomS?: number;
  /** Lifting. */
  readonly concentricS: number;
  /** Pause at the top. */
  readonly topS?: number;
}

/** One set, planned or as it was done. */
export interface ExerciseSet {
  readonly repetitions: number;
  /** Rest after this set [s]; `restS` of the prescription when left out. The last set has none. */
  readonly restS?: number;
}

/** One exercise: its sets, tempo and rests, and when the cuff is up. */
export interface Prescription {
  /** Repetitions of each set in the trade’s notation: `30-15-15-15`, or `3x10`. Instead of `sets`. */
  readonly scheme?: string;
  /** The sets one by one. Instead of `scheme`. */
  readonly sets?: readonly ExerciseSet[];
  readonly tempo: Tempo;
  /** Rest between sets [s]. */
  readonly restS: number;
  readonly restriction: Restriction;
  /** Load lifted [`unit`], for the volume load. */
  readonly load?: number;
  /** Unit of `load`; kg when left out. */
  readonly unit?: LoadUnit;
}

/** A prescription with nothing left out. */
export interface FullPrescription {
  readonly sets: readonly Required<ExerciseSet>[];
  readonly tempo: Required<Tempo>;
  readonly restriction: Restriction;
  readonly load?: number;
  readonly unit: LoadUnit;
}

const CHAIN = /^\s*\d{1,3}(\s*-\s*\d{1,3})*\s*$/;
const TIMES = /^\s*(\d{1,2})\s*[x×]\s*(\d{1,3})\s*$/;
const SCHEME_WORDS = "repetitions set by set, such as '30-15-15-15', or sets by repetitions, such as '3x10'";
const MOST_SETS = 50;

/** The repetitions of each set of a scheme such as `30-15-15-15` or `3x10`; nothing where it is neither. */
function parseScheme(scheme: string): number[] | undefined {
  const times = TIMES.exec(scheme);
  const counts = times
    ? Array.from<number>({ length: Number(times[1]) }).fill(Number(times[2]))
    : CHAIN.test(scheme)
      ? scheme.split('-').map(Number)
      : [];
  const { min, max } = quantities.repetitions;
  const right = counts.length > 0 && counts.length <= MOST_SETS && counts.every((n) => n >= min && n <= max);
  return right ? counts : undefined;
}

/** A prescription with every default in its place, or an InputError. */
export function fullPrescription(prescription: Prescription): FullPrescription {
  const reader = new Reader(prescription);
  const scheme = reader.optionalText('scheme', SCHEME_WORDS, (text) => parseScheme(text) !== undefined);
  const setReaders = reader.optionalList('sets', 'a list of sets');
  const restS = reader.number('restS');
  const restriction = reader.choice('restriction', RESTRICTIONS);
  const unit = reader.optionalChoice('unit', LOAD_UNITS) ?? 'kg';
  const load = reader.optionalNumber('load', { ...quantities.load, unit: loadUnitCode(unit) });
  const tempoReader = reader.child('tempo');
  const tempo = {
    eccentricS: tempoReader.number('eccentricS'),
    bottomS: tempoReader.optionalNumber('bottomS') ?? 0,
    concentricS: tempoReader.number('concentricS'),
    topS: tempoReader.optionalNumber('topS') ?? 0,
  };
  if (reader.fine && tempo.eccentricS + tempo.bottomS + tempo.concentricS + tempo.topS === 0) {
    reader.report('wrong-relation', 'tempo', 'longer than 0 s a repetition', '0 s');
  }
  const given: readonly ExerciseSet[] =
    setReaders?.map((set) => {
      const repetitions = set.number('repetitions');
      const rest = set.optionalNumber('restS');
      return rest === undefined ? { repetitions } : { repetitions, restS: rest };
    }) ?? (parseScheme(scheme ?? '') ?? []).map((repetitions) => ({ repetitions }));
  if (reader.has('scheme') === reader.has('sets')) {
    const received = reader.has('sets') ? 'both' : 'neither';
    reader.report('wrong-relation', 'sets', 'given, or else scheme, but not both', received);
  }
  reader.done();
  const sets = given.map((set, index) => ({
    repetitions: set.repetitions,
    restS: index === given.length - 1 ? 0 : (set.restS ?? restS),
  }));
  return { sets, tempo, restriction, unit, ...(load !== undefined && { load }) };
}
