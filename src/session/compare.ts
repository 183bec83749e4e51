import type { Answer, Caution } from '../answer/answer.js';
import { Reader } from '../answer/reader.js';
import { withInput } from '../answer/with-input.js';
import { convertLoad } from '../quantity/convert.js';
import { decimal } from '../quantity/decimal.js';
import type { Unit } from '../quantity/quantities.js';
import { accountFor, type SessionTotals } from './account.js';
import { readSession, type SessionInput } from './prescription.js';
import { caution } from './messages.js';

/** What a comparison is read for; it decides which rows stand first. */
export type TrainingAim = 'rehabilitation' | 'transition' | 'performance';
export const TRAINING_AIMS = ['rehabilitation', 'transition', 'performance'] as const;

/** What {@link compareSessions} takes. */
export interface ComparisonInput {
  /** The session to compare with. */
  readonly from: SessionInput;
  /** The session that may take its place. */
  readonly to: SessionInput;
  readonly aim?: TrainingAim;
}

/** A total that sessions are compared by. */
export type ComparedQuantity =
  | 'peakLoad'
  | 'peakPercent'
  | 'volumeLoad'
  | 'relativeVolumeLoad'
  | 'bodyMassVolumeLoad'
  | 'repetitions'
  | 'timeUnderTension'
  | 'restrictionTime'
  | 'partialRestrictionTime'
  | 'longestRestriction'
  | 'pressureTime'
  | 'relativePressureTime'
  | 'sessionTime'
  | 'sessionLoad';

/** One quantity of two sessions. */
export interface ComparisonRow {
  readonly stress: 'mechanical' | 'restriction' | 'session';
  readonly quantity: ComparedQuantity;
  /** Unit of `change`: that of `from`. */
  readonly unit: Unit;
  readonly from?: Answer;
  readonly to?: Answer;
  /** `to` minus `from`; absent where one of them is not known. */
  readonly change?: number;
  /** The change in percent of `from`; absent where that is 0. */
  readonly percent?: number;
}

/** Two sessions side by side. Plain JSON; print it with `explain`. */
export interface SessionComparison {
  readonly document: 'session-comparison';
  readonly aim?: TrainingAim;
  readonly rows: readonly ComparisonRow[];
  readonly cautions: readonly Caution[];
}

const STRESS: Record<ComparedQuantity, ComparisonRow['stress']> = {
  peakLoad: 'mechanical',
  peakPercent: 'mechanical',
  volumeLoad: 'mechanical',
  relativeVolumeLoad: 'mechanical',
  bodyMassVolumeLoad: 'mechanical',
  repetitions: 'mechanical',
  timeUnderTension: 'mechanical',
  restrictionTime: 'restriction',
  partialRestrictionTime: 'restriction',
  longestRestriction: 'restriction',
  pressureTime: 'restriction',
  relativePressureTime: 'restriction',
  sessionTime: 'session',
  sessionLoad: 'session',
};
const QUANTITIES = /* @__PURE__ */ Object.keys(STRESS) as ComparedQuantity[];

/** What a coach with each aim reads first (`practice`). */
const FIRST: Record<TrainingAim, readonly ComparedQuantity[]> = {
  rehabilitation: ['peakLoad', 'volumeLoad', 'restrictionTime', 'longestRestriction', 'relativePressureTime'],
  transition: ['peakPercent', 'relativeVolumeLoad', 'restrictionTime', 'relativePressureTime'],
  performance: ['peakPercent', 'peakLoad', 'volumeLoad', 'sessionTime', 'restrictionTime'],
};

const isRestricted = ({ longestRestriction }: SessionTotals): boolean => longestRestriction.value > 0;

/** A total of a session; where it is about a cuff that was never up it is 0 and not unknown. */
function totalOf(session: SessionTotals, quantity: ComparedQuantity, other: SessionTotals): Answer | undefined {
  const given = session[quantity];
  const likewise = other[quantity];
  const absent = quantity === 'partialRestrictionTime' || !isRestricted(session);
  if (given || !likewise || STRESS[quantity] !== 'restriction' || !absent) return given;
  return { ...likewise, value: 0, formula: '0', symbols: {}, inputs: {} };
}

function rowOf(quantity: ComparedQuantity, first: SessionTotals, second: SessionTotals): ComparisonRow | undefined {
  const from = totalOf(first, quantity, second);
  const to = totalOf(second, quantity, first);
  const unit = (from ?? to)?.unit;
  if (!unit) return undefined;
  const row = { stress: STRESS[quantity], quantity, unit };
  if (!from || !to) return { ...row, ...(from && { from }), ...(to && { to }) };
  const loadUnit = (code: Unit): 'kg' | 'lb' => (code === '[lb_av]' ? 'lb' : 'kg');
  const after = to.unit === unit ? to.value : convertLoad(to.value, loadUnit(to.unit), loadUnit(unit));
  const change = decimal(after).minus(decimal(from.value));
  return {
    ...row,
    from,
    to,
    change: change.toNumber(),
    ...(from.value > 0 && { percent: change.times(100).div(decimal(from.value)).toNumber() }),
  };
}

/**
 * Two sessions side by side: what mechanical load one spares against the other, and what restriction it adds.
 *
 * Formula, row by row: change = to − from; percent = 100 × change / from.
 *
 * Mechanical: peak load, peak share of the maximum, volume loads, repetitions, time under tension. Restriction: time at
 * the full and the lower pressure, longest unbroken time, pressure × time. A total that one session does not have is
 * left open, except where its cuff is never up: then it is 0. With an `aim` the rows that matter most to it stand first.
 *
 * This is arithmetic. It never claims that two sessions have the same effect.
 *
 * - Evidence: that of each total; which rows an aim puts first is `practice`.
 *
 * @function
 * @param input - `from` and `to`, each one prescription or a session of several exercises; `aim`
 * @returns the rows; print them as a table with `explain`.
 * @throws InputError naming every wrong field.
 *
 * @example
 * ```ts
 * import { compareSessions, explain } from 'cuffwork';
 * const tempo = '2-0-2-0';
 * const { rows } = compareSessions({
 *   from: { scheme: '3x10', tempo, restS: 90, restriction: 'none', load: 75, percent: 75 },
 *   to: { scheme: '30-15-15-15', tempo, restS: 30, restriction: 'continuous', load: 30, percent: 30, pressureMmHg: 80 },
 * });
 * const row = (name: string) => rows.find(({ quantity }) => quantity === name);
 * row('peakLoad')?.change; // => -45
 * row('volumeLoad')?.change; // => 0
 * row('restrictionTime')?.change; // => 390
 * row('pressureTime')?.change; // => 520
 * ```
 */
export const compareSessions = /* @__PURE__ */ withInput(function compareSessions(
  input: ComparisonInput,
): SessionComparison {
  const reader = new Reader(input);
  const first = readSession(reader.child('from'));
  const second = readSession(reader.child('to'));
  const aim = reader.optionalChoice('aim', TRAINING_AIMS);
  reader.done();
  const from = accountFor(first);
  const to = accountFor(second);
  const leading = aim ? FIRST[aim] : [];
  const order = [...leading, ...QUANTITIES.filter((quantity) => !leading.includes(quantity))];
  const several = from.exercises.length > 1 || to.exercises.length > 1;
  const heavyAgainstRestricted = isRestricted(from) !== isRestricted(to);
  return {
    document: 'session-comparison',
    ...(aim && { aim }),
    rows: order.flatMap((quantity) => rowOf(quantity, from, to) ?? []),
    cautions: [
      caution('caution', 'no-equivalence'),
      ...(heavyAgainstRestricted
        ? [caution('note', 'restriction-gives-less-strength', undefined, { source: 'heavy-or-restricted-2018' })]
        : []),
      ...(aim === 'performance'
        ? [caution('note', 'pressure-adds-little-heavy', undefined, { source: 'load-and-pressure-2015' })]
        : []),
      ...(several ? [caution('note', 'different-maximum')] : []),
    ],
  };
});
