import type { Answer, AnswerKind, Caution, Inputs, Symbols } from '../answer/answer.js';
import type { Grade } from '../evidence/grades.js';
import type { SourceId } from '../evidence/sources.js';
import { product, sum } from '../quantity/decimal.js';
import { format } from '../quantity/format.js';
import { Math } from '../quantity/maths.js';
import { loadUnitCode, type Unit } from '../quantity/quantities.js';
import { fullPrescription, type FullPrescription, type Prescription } from './prescription.js';
import { repetitionTime } from './timeline.js';
import { caution } from './messages.js';

/** What a session added up to. */
export interface SessionTotals {
  readonly repetitions: Answer<'repetitions'>;
  /** Present when a load was given. */
  readonly volumeLoad?: Answer<'volume-load'>;
  readonly timeUnderTension: Answer<'time-under-tension'>;
  readonly restrictionTime: Answer<'restriction-time'>;
  readonly longestRestriction: Answer<'longest-restriction'>;
  readonly sessionTime: Answer<'session-time'>;
  readonly cautions: readonly Caution[];
}

const list = (values: readonly number[]): string => values.map(format).join(' + ') || '0';

/** A sum of what was given: exact, so it has no interval. */
const total = <K extends AnswerKind>(
  kind: K,
  value: number,
  unit: Unit,
  formula: string,
  symbols: Symbols,
  inputs: Inputs,
  evidence: Grade,
  sources: readonly SourceId[],
): Answer<K> => ({
  kind,
  value,
  unit,
  equation: kind,
  evidence,
  formula,
  symbols,
  inputs,
  assumptions: [],
  cautions: [],
  sources,
});

const limbCautions = (restrictedS: number): Caution[] =>
  restrictedS > 20 * 60 ? [caution('caution', 'restriction-long-limb', { minutes: format(restrictedS / 60) })] : [];

/** The restriction times of a limb’s exercises, added up. */
export function limbRestriction(times: readonly Answer<'restriction-time'>[]) {
  const seconds = times.map(({ value }) => value);
  const value = sum(seconds);
  return {
    restrictionTime: total(
      'restriction-time',
      value,
      's',
      'T',
      { T: 'exercises' },
      { exercises: list(seconds) },
      'practice',
      [],
    ),
    cautions: limbCautions(value),
  };
}

const TEMPO = { e: 'eccentricS', b: 'bottomS', c: 'concentricS', t: 'topS' } as const;

export function addUp({ sets, tempo, restriction, load, unit }: FullPrescription): SessionTotals {
  const counts = sets.map((set) => set.repetitions);
  const rests = sets.slice(0, -1).map((set) => set.restS);
  const repetitions = sum(counts);
  const perRepetition = repetitionTime(tempo);
  const underTensionS = product(repetitions, perRepetition);
  const sessionS = sum([underTensionS, ...rests]);
  const longestSet = Math.max(...counts);

  const restrictedS = { continuous: sessionS, intermittent: underTensionS, none: 0 }[restriction];
  const longestS = { continuous: sessionS, intermittent: product(longestSet, perRepetition), none: 0 }[restriction];

  const ofSets = { repetitionsPerSet: list(counts) };
  const ofTempo = { ...ofSets, ...tempo };
  const ofClock = { ...ofTempo, rests: list(rests) };
  const R = { R: 'repetitionsPerSet' };
  const tension = { formula: 'R * (e + b + c + t)', symbols: { ...R, ...TEMPO }, inputs: ofTempo };
  const whole = {
    formula: 'R * (e + b + c + t) + rest',
    symbols: { ...R, ...TEMPO, rest: 'rests' },
    inputs: ofClock,
  };
  const nothing = { formula: '0', symbols: {}, inputs: {} };
  const oneSet = {
    formula: 'n * (e + b + c + t)',
    symbols: { n: 'longestSet', ...TEMPO },
    inputs: { longestSet, ...tempo },
  };
  const restricted = { continuous: whole, intermittent: tension, none: nothing }[restriction];
  const unbroken = { continuous: whole, intermittent: oneSet, none: nothing }[restriction];
  const seconds = <K extends AnswerKind>(
    kind: K,
    value: number,
    { formula, symbols, inputs }: { formula: string; symbols: Symbols; inputs: Inputs },
    evidence: Grade,
    ...from: SourceId[]
  ) => total(kind, value, 's', formula, symbols, inputs, evidence, from);

  const cautions = limbCautions(restrictedS);
  if (restrictedS > 10 * 60) {
    const minutes = format(restrictedS / 60);
    cautions.push(caution('caution', 'restriction-long-exercise', { minutes }, { source: 'guideline-review-2019' }));
  }
  return {
    repetitions: total('repetitions', repetitions, '{reps}', 'R', R, ofSets, 'practice', []),
    ...(load !== undefined && {
      volumeLoad: total(
        'volume-load',
        product(repetitions, load),
        loadUnitCode(unit),
        'R * w',
        { ...R, w: 'load' },
        { ...ofSets, load, unit },
        'published',
        ['volume-methods-2009'],
      ),
    }),
    timeUnderTension: seconds('time-under-tension', underTensionS, tension, 'published', 'volume-methods-2009'),
    restrictionTime: seconds('restriction-time', restrictedS, restricted, 'practice'),
    longestRestriction: seconds('longest-restriction', longestS, unbroken, 'practice'),
    sessionTime: seconds('session-time', sessionS, whole, 'derived', 'knee-repair-2022'),
    cautions,
  };
}

/**
 * What a session adds up to, planned or as it was done (give the repetitions really done in `sets`).
 *
 * - Repetitions: Σ repetitions of the sets.
 * - Volume load [kg or lb]: repetitions × load (J Strength Cond Res 2009;23(1):106–110). A body-weight
 *   exercise has a volume load of 0 unless the share of body mass is given as the load.
 * - Time under tension [s]: repetitions × (eccentric + bottom + concentric + top).
 * - Restriction time [s]: with continuous restriction from the first repetition to the end of the last set, rests
 *   included; with intermittent restriction the sets only.
 * - Longest unbroken restriction [s]; session time [s].
 *
 * Sums are exact, in decimals, so they have no interval. More than 10 minutes of restriction in the exercise, or
 * 20 on the limb, brings a caution.
 *
 * @param prescription - `scheme` or `sets`; `tempo` [s]; `restS` [s]; restriction; `load` [`unit`]
 * @returns each total as an answer with its working.
 * @throws InputError naming every wrong field.
 *
 * @example
 * ```ts
 * import { accountSession } from 'cuffwork';
 * const totals = accountSession({
 *   scheme: '30-15-15-15', tempo: { eccentricS: 2, concentricS: 2 }, restS: 30, restriction: 'continuous', load: 30,
 * });
 * totals.volumeLoad?.value; // => 2250
 * totals.restrictionTime.value; // => 390
 * ```
 */
export function accountSession(prescription: Prescription): SessionTotals {
  return addUp(fullPrescription(prescription));
}
