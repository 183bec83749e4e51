import type { Answer } from '../answer/answer.js';
import { convertLoad } from '../quantity/convert.js';
import { decimal } from '../quantity/decimal.js';
import { percentage } from '../quantity/exact.js';
import { Math } from '../quantity/maths.js';
import { loadUnitOf, type Side, type Unit } from '../quantity/quantities.js';
import { exercisePart, limbRestriction, peakTotals, totalsOfExercise, wholeTotals, workTotals } from './totals.js';
import { ofSide, scheduleSession } from './schedule.js';
import { isCuffed, onSide, placeName, sidesOf, type FullPrescription, type FullSession } from './prescription.js';
import { highest, total } from './working.js';

/** Four lines that a comparison is read in; the fourth is what the numbers do not say. */
export type ComparedLine = 'joint' | 'work' | 'cuff' | 'session';

/** Every quantity that sessions are compared by, with the line it belongs to. */
export const LINES = {
  peakLoad: 'joint',
  peakPercentOneRepMax: 'joint',
  repetitions: 'work',
  volumeLoad: 'work',
  relativeVolumeLoad: 'work',
  bodyMassVolumeLoad: 'work',
  timeUnderTension: 'work',
  restrictionTime: 'cuff',
  percentLop: 'cuff',
  longestRestriction: 'cuff',
  partialRestrictionTime: 'cuff',
  pressureTime: 'cuff',
  relativePressureTime: 'cuff',
  sessionTime: 'session',
  sessionLoad: 'session',
} as const satisfies Record<string, ComparedLine>;

/** A quantity that sessions are compared by. */
export type ComparedQuantity = keyof typeof LINES;
const QUANTITIES = Object.keys(LINES) as ComparedQuantity[];

/** One quantity of two sessions. */
export interface ComparisonRow {
  /** Line that the row belongs to. */
  readonly line: ComparedLine;
  /** Quantity that the row compares. */
  readonly quantity: ComparedQuantity;
  /** Unit of `change`: that of `from`. */
  readonly unit: Unit;
  /** Answer of the first session, where it has one. */
  readonly from?: Answer;
  /** Answer of the second session, where it has one. */
  readonly to?: Answer;
  /** `to` minus `from`; absent where one of them is not known. */
  readonly change?: number;
  /** The change in percent of `from`; absent where that is 0. */
  readonly changePercent?: number;
}

/** What two sessions do not tell: whether they have an equal effect, and the quantities that only one of them has. */
export type NotKnown = 'equal-effect' | ComparedQuantity;

/** A session to be compared: its exercises as one limb does each, and what is known of it as a whole. */
export interface ComparedSession {
  readonly parts: readonly FullPrescription[];
  readonly sessionTime?: Answer<'session-time'> | undefined;
  readonly sessionLoad?: Answer<'session-load'> | undefined;
}

/** Totals of a limb or a session, by what they are compared by. */
export type ComparedTotals = { readonly [Q in ComparedQuantity]?: Answer | undefined };

/** A session as it was prescribed, limb by limb. */
export function comparedSession(session: FullSession): ComparedSession {
  const { sessionTime, sessionLoad } = wholeTotals(session, scheduleSession(session).map(exercisePart));
  const parts = session.exercises.flatMap((full) =>
    full.side ? sidesOf(full.side).map((side) => ofSide(full, side)) : [full],
  );
  return { parts, sessionTime, sessionLoad };
}

/** The highest share of occlusion pressure in the sets of an exercise [%]. */
function percentLop({ sets, occlusionMmHg, side }: FullPrescription): Answer<'percent-of-occlusion'> | undefined {
  const own = side as Side | undefined;
  const pressures = sets.flatMap(({ pressureMmHg }) => (pressureMmHg === undefined ? [] : [onSide(pressureMmHg, own)]));
  if (pressures.length === 0 || occlusionMmHg === undefined) return undefined;
  const [pressure, occlusion] = [Math.max(...pressures), onSide(occlusionMmHg, own)];
  const value = percentage(pressure, occlusion);
  const inputs = { pressureMmHg: pressure, occlusionMmHg: occlusion };
  return total('percent-of-occlusion', value, '%', inputs, 'definition');
}

/** What one limb does and bears in a session. */
export function limbTotals(parts: readonly FullPrescription[]): ComparedTotals {
  const all = parts.map((full) => ({ full, totals: totalsOfExercise(full) }));
  const cuffed = all.filter(({ full }) => isCuffed(full));
  const { cautions: _, ...restriction } = limbRestriction(cuffed.map(({ totals }) => totals));
  // Under a cuff at a pressure that is not given, these are not known.
  const unknown = { pressureTime: undefined, relativePressureTime: undefined };
  return {
    ...peakTotals(all),
    ...workTotals(all),
    ...(cuffed.length > 0 && {
      ...unknown,
      ...restriction,
      percentLop: highest(cuffed.map(({ full }) => percentLop(full))),
    }),
  };
}

/** What the limb that has most of each quantity has of it, and what is known of the whole session. */
function totalsOf({ parts, sessionTime, sessionLoad }: ComparedSession): ComparedTotals {
  const limbs = [...new Set(parts.map(placeName))].map((place) =>
    limbTotals(parts.filter((part) => placeName(part) === place)),
  );
  const most = QUANTITIES.map((quantity) => {
    // A limb without a load, or without a cuff, has none of it; where it should have one, nothing is known.
    const own = limbs.filter((limb) => quantity in limb && (LINES[quantity] !== 'joint' || limb[quantity]));
    return [quantity, own.length > 0 ? highest(own.map((limb) => limb[quantity])) : undefined] as const;
  });
  return { ...Object.fromEntries(most), sessionTime, sessionLoad };
}

/** A total of a session; where it is about a cuff that was never inflated it is 0 and not unknown. */
function totalOf(session: ComparedTotals, quantity: ComparedQuantity, other: ComparedTotals): Answer | undefined {
  const likewise = other[quantity];
  const absent = quantity === 'partialRestrictionTime' || !session.longestRestriction;
  if (session[quantity] || !likewise || LINES[quantity] !== 'cuff' || !absent) return session[quantity];
  const { kind, unit, evidence } = likewise;
  return total(kind, 0, unit, {}, evidence);
}

function rowOf(quantity: ComparedQuantity, first: ComparedTotals, second: ComparedTotals): ComparisonRow | undefined {
  const from = totalOf(first, quantity, second);
  const to = totalOf(second, quantity, first);
  const unit = (from ?? to)?.unit;
  if (!unit) return undefined;
  const row = { line: LINES[quantity], quantity, unit };
  if (!from || !to) return { ...row, ...(from && { from }), ...(to && { to }) };
  // What is no load is in one unit anyway.
  const after = convertLoad(to.value, loadUnitOf(to.unit), loadUnitOf(unit));
  const change = decimal(after).minus(decimal(from.value));
  // Of nothing, and of next to nothing, no percentage can be written.
  const changePercent = change.times(100).div(decimal(from.value)).toNumber();
  return {
    ...row,
    from,
    to,
    change: change.toNumber(),
    ...(Number.isFinite(changePercent) && { changePercent }),
  };
}

/** The rows of two sessions in the order of their lines, and what they do not tell. */
export function compareTotals(
  from: ComparedSession,
  to: ComparedSession,
): { readonly rows: readonly ComparisonRow[]; readonly notKnown: readonly NotKnown[] } {
  const [first, second] = [totalsOf(from), totalsOf(to)];
  const rows = QUANTITIES.flatMap((quantity) => rowOf(quantity, first, second) ?? []);
  const open = rows.flatMap(({ change, quantity }) => (change === undefined ? [quantity] : []));
  return { rows, notKnown: ['equal-effect', ...open] };
}
