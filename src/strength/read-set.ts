import { defined, type Exact } from '../answer/defined.js';
import { LEFT_OUT_WITH, need } from '../answer/needs.js';
import type { Reader } from '../answer/reader.js';
import {
  inLoadUnit,
  LOAD_UNITS,
  loadUnitCode,
  quantities,
  SEXES,
  type LoadUnit,
  type Sex,
} from '../quantity/quantities.js';
import { LIFTS, TRAINING, type Lift, type Training } from './lifts.js';
import { readRating, type Reserve } from './reserve.js';

/** What you know of the lift and the person. Every field is optional. */
export interface LiftFacts {
  /** The lift; for the equations fitted on it. */
  readonly lift?: Lift | undefined;
  /** Sex of the person. */
  readonly sex?: Sex | undefined;
  /** Age [years], 1–120. */
  readonly ageYears?: number | undefined;
  /** Training status of the person. */
  readonly training?: Training | undefined;
}

/** A set of one lift, and what you know of the lift and the person. */
export interface LiftedSet extends LiftFacts {
  /** Load lifted [`unit`], 0.1–2000. */
  readonly load: number;
  /** Repetitions done, 1–500. */
  readonly repetitions: number;
  /** Repetitions in reserve: those that were still possible, 0–10; 0 when left out. */
  readonly repetitionsInReserve?: number | undefined;
  /**
   * Rating on the scale of repetitions in reserve, 1–10, instead of `repetitionsInReserve`. It is not the scale of
   * session effort.
   */
  readonly reserveRpe?: number | undefined;
  /** Unit of `load` and of the answer; kg when left out. */
  readonly unit?: LoadUnit | undefined;
}

/** A set after reading. */
export interface ReadSet {
  readonly load: number;
  readonly unit: LoadUnit;
  readonly repetitions: number;
  readonly reserve: Reserve;
  /** Repetitions to failure. */
  readonly r: number;
  readonly facts: Exact<LiftFacts>;
}

/** A load in its `unit`; kg when left out. */
export function readLoad(reader: Reader): { load: number; unit: LoadUnit } {
  const unit = reader.optionalChoice('unit', LOAD_UNITS) ?? 'kg';
  return { load: reader.number('load', inLoadUnit(quantities.load, loadUnitCode(unit))), unit };
}

export function readSet(reader: Reader): ReadSet {
  const { load, unit } = readLoad(reader);
  const repetitions = reader.number('repetitions');
  const reported = reader.optionalNumber('repetitionsInReserve');
  const rating = readRating(reader, reader.optionalNumber('reserveRpe'));
  if (reported !== undefined) reader.leaveOut('reserveRpe', need(LEFT_OUT_WITH, { field: 'repetitionsInReserve' }));
  const facts = defined({
    lift: reader.optionalChoice('lift', LIFTS),
    sex: reader.optionalChoice('sex', SEXES),
    ageYears: reader.optionalNumber('ageYears'),
    training: reader.optionalChoice('training', TRAINING),
  });
  const reserve = rating ?? { repetitions: reported ?? 0, from: reported ?? 0, to: reported ?? 0 };
  return { load, unit, repetitions, reserve, r: repetitions + reserve.repetitions, facts };
}
