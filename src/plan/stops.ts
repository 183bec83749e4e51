import type { CautionCode } from '../answer/codes.js';
import type { Caution } from '../answer/answer.js';
import { defined } from '../answer/defined.js';
import { describe, gather, InputError, issue, refuse, type InputIssue, type Path } from '../answer/issues.js';
import type { MessageValues } from '../answer/messages.js';
import { plainInput } from '../answer/plain-input.js';
import type { SourceId } from '../evidence/sources.js';
import { messageKey } from './severity.js';
import { LIMBS, SIDES, type Limb, type Side } from '../quantity/quantities.js';
import { need, ONE_OF, type Asked } from '../answer/needs.js';
import {
  WITH_STOPS,
  STOPS,
  A_STOP,
  NOT_AFTER_SESSION,
  NOT_BEFORE_STOP,
  CODE_OF_STOP,
  NO_STOP,
  DAY_OF_STOP,
  DAY_OF_ONE_STOP,
} from './needs.js';

/** Who can decide about a stop: a role, never a name. */
export const DECIDER_ROLES = ['physician', 'surgeon', 'physiotherapist', 'nurse', 'other-clinician'] as const;
/** The role of a person who can decide about a stop. */
export type DeciderRole = (typeof DECIDER_ROLES)[number];

/** Code of the caution that a stop came from, such as `blood-pressure-refer`. */
export type StopCode = CautionCode;

/** A practitioner’s decision about a stop. The library records it; it gives no clearance of its own. */
export interface StopDecision {
  /** Code of the stop, or of the symptom that it is about. */
  readonly stop: string;
  /** The day since which the stop is in force, `YYYY-MM-DD`; needed where the same code is there more than once. */
  readonly since?: string | undefined;
  /** The role of the person who decided. */
  readonly by: DeciderRole;
  /** Day of the decision, `YYYY-MM-DD`. */
  readonly on: string;
  /** The reason, in the words of the person who decided. */
  readonly why: string;
}

/** A reason not to train. It stays in force until a practitioner’s decision lifts it. */
export interface Stop {
  /** Code of the caution that it came from. */
  readonly code: StopCode;
  /** The symptom it is about, where the sentence serves several. A decision can name it instead of `code`. */
  readonly about?: string | undefined;
  /** The English sentence of its caution. */
  readonly text: string;
  /** Values in the sentence of its caution. */
  readonly values?: MessageValues | undefined;
  /** Day of the record, screening or readings that it came from, `YYYY-MM-DD`; left out where that is not known. */
  readonly since?: string | undefined;
  /** The limb, where it concerns one. */
  readonly limb?: Limb | undefined;
  /** Side of the limb. */
  readonly side?: Side | undefined;
  /** Source of its caution; left out where there is none. */
  readonly source?: SourceId | undefined;
  /** The decision that lifted it; left out while it is in force. */
  readonly lifted?: StopDecision | undefined;
}

const oneOf = <T extends string>(all: readonly T[], value: unknown): T | undefined => all.find((one) => one === value);

/** The stops among cautions, in force since a day. */
export const stopsOf = (cautions: readonly Caution[], since?: string): Stop[] =>
  cautions
    .filter(({ severity }) => severity === 'stop')
    .map(({ code, text, values, source }) => {
      const about = typeof values?.['symptom'] === 'string' ? values['symptom'] : undefined;
      const limb = oneOf(LIMBS, values?.['limb']);
      const side = oneOf(SIDES, values?.['side']);
      return defined({ code, about, text, values, since, limb, side, source }) as Stop;
    });

/** One stop is another where all but its words and its decision is alike. */
const keyOf = ({ code, since, limb, side, values }: Stop): string =>
  JSON.stringify([messageKey({ code, ...(values && { values }) }), since, limb, side]);

/** Whether the decision in a stop lifts it: it names the stop, and is no older than the stop. */
const isLifted = ({ code, about, since, lifted }: Stop): boolean =>
  lifted !== undefined && [code, about].includes(lifted.stop) && (since === undefined || lifted.on >= since);

/** What makes one stop another, whatever its values and its decision: they may be of another version. */
const placeOf = ({ code, about, since, limb, side }: Stop): string => JSON.stringify([code, about, since, limb, side]);

/** Stops as they were on a day: a decision of a later day had not lifted them then. */
export const asOfDay = (stops: readonly Stop[], day: string | undefined): Stop[] =>
  stops.map((stop) => {
    if (day === undefined || stop.lifted === undefined || stop.lifted.on <= day) return stop;
    const { lifted: _, ...inForceThen } = stop;
    return inForceThen;
  });

/** The stops of a document, in place of its own those that were derived again: they cannot be emptied or lifted by hand. */
export function derivedStops(own: readonly Stop[], derived: readonly Stop[]): Stop[] {
  const places = new Set(derived.map(placeOf));
  return [...derived, ...own.filter((stop) => !places.has(placeOf(stop)))];
}

/** The stops among cautions that a list of stops does not have. */
export function stopsMissing(stops: readonly Stop[], cautions: readonly Caution[]): Stop[] {
  const codes = new Set(stops.map(({ code }) => code));
  return mergeStops(stopsOf(cautions).filter(({ code }) => !codes.has(code)));
}

/** The stops of a list that no decision has lifted. */
export const inForce = (stops: readonly Stop[]): Stop[] => stops.filter((stop) => !isLifted(stop));

/** Stops of several documents, each once; a stop that is lifted in one of them is lifted. */
export function mergeStops(...lists: readonly (readonly Stop[])[]): Stop[] {
  const merged = new Map<string, Stop>();
  for (const stop of lists.flat()) {
    const key = keyOf(stop);
    const known = merged.get(key);
    if (!known || !isLifted(known)) merged.set(key, stop);
  }
  return [...merged.values()];
}

/** The stops that a decision is about: at most those of one day. */
function stopsMeant(stops: readonly Stop[], { stop: code, since, on }: StopDecision, day: string | undefined): Stop[] {
  const refuseField = (name: keyof StopDecision, expected: Asked, received?: string): never =>
    refuse('wrong-relation', [name], expected, received);
  if (day !== undefined && on > day) return refuseField('on', need(NOT_AFTER_SESSION, { date: day }), on);
  const named = stops.filter((stop) => stop.code === code || stop.about === code);
  if (named.length === 0) {
    const codes = [...new Set(stops.map((stop) => stop.about ?? stop.code))];
    return refuseField('stop', codes.length > 0 ? need(CODE_OF_STOP, { codes }) : NO_STOP, describe(code));
  }
  const ofDay = since === undefined ? named : named.filter((stop) => stop.since === since);
  const days = [...new Set(ofDay.map((stop) => stop.since))];
  if (days.length === 0) {
    return refuseField('since', need(DAY_OF_STOP, { days: named.map((stop) => stop.since ?? '–') }), since!);
  }
  const before = ofDay.filter((stop) => stop.since === undefined || stop.since <= on);
  if (before.length === 0) return refuseField('on', need(NOT_BEFORE_STOP, { date: days.sort()[0]! }), on);
  if (new Set(before.map((stop) => stop.since)).size > 1) {
    return refuse(
      'missing',
      ['since'],
      need(DAY_OF_ONE_STOP, { days: days.sort().map((one) => one ?? '–') }),
      undefined,
    );
  }
  const abouts = [...new Set(before.map((stop) => stop.about ?? code))];
  if (abouts.length > 1)
    return refuseField('stop', need(ONE_OF, { options: abouts.map((one) => describe(one)) }), describe(code));
  return before;
}

/** Cautions of a document: one whose stops are all lifted is a caution, not a stop. It stays visible. */
export const softened = <C extends Caution>(cautions: readonly C[], stops: readonly Stop[]): C[] =>
  cautions.map((message) => {
    const [same] = stopsOf([message]);
    const own = same ? stops.filter((stop) => keyOf({ ...stop, since: undefined }) === keyOf(same)) : [];
    return own.length > 0 && own.every(isLifted) ? { ...message, severity: 'caution' } : message;
  });

/**
 * Stops with decisions about them. A decision lifts only the stop it names, by code and day, and none that came after
 * it. One that fits no stop is refused: silence would hide that nothing was lifted; so is one of a later day than the
 * document.
 */
export function applyDecisions(stops: readonly Stop[], decisions: readonly StopDecision[] = [], day?: string): Stop[] {
  const lifted = new Map<Stop, StopDecision>();
  const issues: InputIssue[] = [];
  decisions.forEach((decision, index) => {
    const inside = (path: Path): Path => ['decisions', index, ...path];
    for (const stop of gather(issues, () => stopsMeant(stops, decision, day), inside) ?? []) lifted.set(stop, decision);
  });
  if (issues.length > 0) throw new InputError(issues);
  return stops.map((stop) => (isLifted(stop) || !lifted.has(stop) ? stop : { ...stop, lifted: lifted.get(stop)! }));
}

/** A document that carries stops. */
interface WithStops {
  /** Its stops, those that were lifted included. */
  readonly stops: readonly Stop[];
}

/**
 * The stops of a document that are still in force: those that no decision has lifted.
 *
 * While one is in force, do not train: pages show no setting and `nextSession` proposes `stop`. To lift it, give the
 * decision of a practitioner to `planSession` or `nextSession` as `decisions`.
 *
 * - Evidence: that of the caution the stop came from; that a decision lifts it is `practice`.
 *
 * @param document - a plan, a record, a review or a proposal.
 * @returns its stops without those that were lifted.
 * @throws InputError where it has no list of stops.
 *
 * @example
 * ```ts
 * import { planSession, stopsInForce } from 'cuffwork/plan';
 * const plan = planSession({
 *   systolicMmHg: 200, diastolicMmHg: 120, posture: 'seated',
 *   limbs: [{ limb: 'leg', side: 'left', cuffWidthCm: 10, percentLop: 50, measured: { valueMmHg: 240, method: 'doppler' } }],
 *   exercises: [{
 *     name: 'walking', mode: 'aerobic', limb: 'leg', scheme: '5x2min', restS: 60, restriction: 'continuous',
 *   }],
 * });
 * stopsInForce(plan).map(({ code }) => code); // => ['blood-pressure-refer']
 * ```
 */
export function stopsInForce(document: WithStops): Stop[] {
  const { stops } = plainInput(document, WITH_STOPS) as { readonly stops?: unknown };
  const issues: InputIssue[] = [];
  if (!Array.isArray(stops)) issues.push(issue('wrong-type', ['stops'], STOPS, describe(stops)));
  else {
    stops.forEach((stop: unknown, index) => {
      if (typeof (stop as Stop | null | undefined)?.code === 'string') return;
      issues.push(issue('wrong-type', ['stops', index], A_STOP, describe(stop)));
    });
  }
  if (issues.length > 0) throw new InputError(issues);
  return inForce(stops as Stop[]);
}
