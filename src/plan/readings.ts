import type { Answer, Inputs } from '../answer/answer.js';
import type { Path } from '../answer/issues.js';
import { convertLoad } from '../quantity/convert.js';
import { sum } from '../quantity/exact.js';
import { Math } from '../quantity/maths.js';
import { loadUnitOf, type ExerciseMode, type Limb, type Side } from '../quantity/quantities.js';
import { isSameLimb } from './limb-and-side.js';
import type { Measure, Place } from './measures.js';
import type { ExpandedItem, ExpandedRecord } from './record.js';
import { heaviestLoad } from './set-counts.js';
import type { ExpandedPlan, ExpandedPlanItem } from './types.js';

/** A figure of a document that a guideline may have a range for. */
export interface Reading extends Place {
  readonly measure: Measure;
  /** Kinds of exercise it is about: that of an exercise, or all of the document. */
  readonly modes: readonly ExerciseMode[];
  readonly found: number;
  /** What was asked for, where only rounding lies between it and what was found. */
  readonly asked?: number | undefined;
  readonly path: Path;
  readonly toFailure?: boolean | undefined;
}

/** An item of a document, with its index. */
export type Indexed = readonly [item: ExpandedItem, index: number];

/** A figure that was found, with what was asked for where only rounding moved it. */
type Found = Pick<Reading, 'found' | 'asked'>;

const modeOf = ({ mode = 'resistance' }: ExpandedItem): ExerciseMode => mode;

/** Kinds of exercise among items, each once. */
export const modesOf = (items: readonly Indexed[]): ExerciseMode[] => [...new Set(items.map(([item]) => modeOf(item)))];

/** The share of occlusion pressure that was asked for, or that the ceiling leaves of it; the gauge rounds it down. */
export function askedOf(target: Answer<'cuff-pressure'>): number | undefined {
  const { percentLop, ceilingMmHg, occlusion } = target.inputs;
  if (target.cautions.some(({ code }) => code === 'chance-limit-holds')) return undefined;
  return ceilingMmHg === undefined ? percentLop : Math.min(percentLop, (100 * ceilingMmHg) / occlusion.value);
}

/** The share of the maximum at the upper end of a planned range. */
function upperOf(item: ExpandedItem): Found | undefined {
  const { reached, inputs } = ('done' in item ? undefined : item.upperLoad) ?? {};
  return reached && { found: reached.percentOneRepMax, asked: inputs?.percentOneRepMax };
}

/** The share of the maximum that is or was lifted. */
function liftedOf(item: ExpandedItem): Found | undefined {
  const { load } = item;
  const done = 'done' in item ? item.done : undefined;
  const { oneRepMax, percentOneRepMax }: Partial<Inputs<'training-load'>> = load?.inputs ?? {};
  const asked = load && percentOneRepMax;
  const own = load && item.sets.some((set) => set.load !== undefined);
  if (!done && !own) return load?.reached && { found: load.reached.percentOneRepMax, asked };
  if (!load || !oneRepMax || done?.instead !== undefined) return undefined;
  const unit = loadUnitOf(oneRepMax.unit);
  const shareOf = (lifted: number): number => (100 * lifted) / oneRepMax.value;
  if (!done) {
    return { found: shareOf(convertLoad(heaviestLoad(item.sets, load.value), loadUnitOf(load.unit), unit)) };
  }
  if (done.load === undefined || !done.unit) return undefined;
  const lifted = convertLoad(heaviestLoad(done.sets, done.load), done.unit, unit);
  const asPlanned = !own && convertLoad(lifted, unit, loadUnitOf(load.unit)) === load.value;
  return { found: shareOf(lifted), asked: asPlanned ? asked : undefined };
}

/** The largest share of the maximum of an item. */
export const largestShareOf = (item: ExpandedItem): number | undefined => (upperOf(item) ?? liftedOf(item))?.found;

const minutes = (seconds: number): number => seconds / 60;

/** Restriction at both pressures [min]. */
export const restrictedMin = ({
  restrictionTime,
  partialRestrictionTime,
}: Pick<ExpandedPlanItem['totals'], 'restrictionTime' | 'partialRestrictionTime'>): number =>
  minutes(restrictionTime.value + (partialRestrictionTime?.value ?? 0));

/** What an item with a cuff says, planned or done. */
function readingsOfItem(
  item: ExpandedItem,
  place: Path,
  cuff: { readonly width?: number | undefined; readonly path: Path },
) {
  const done = 'done' in item ? item.done : undefined;
  const { exercise, side, limb, tempo, totals, intensityPercent } = item;
  const target = item.target!;
  const sets = done?.sets ?? item.sets;
  const within = done ? [...place, 'done'] : place;
  const found: Reading[] = [];
  const modes = [modeOf(item)];
  const read = (
    measure: Measure,
    value: number | undefined,
    path: Path,
    more?: Pick<Reading, 'asked' | 'toFailure'>,
  ): void => {
    if (value !== undefined) found.push({ measure, modes, found: value, exercise, limb, side, path, ...more });
  };
  const asked = askedOf(target);
  if (!done) {
    read('percent-of-occlusion', target.reached?.percentLop, [...place, 'target'], { asked });
  } else if (done.heldMmHg !== undefined) {
    const share = (100 * done.heldMmHg) / (done.occlusionMmHg ?? target.inputs.occlusion.value);
    read('percent-of-occlusion', share, [...within, 'heldMmHg'], done.heldMmHg === target.value ? { asked } : {});
  }
  if (done?.reperfusedBeforeS !== undefined) {
    read('reperfusion', minutes(done.reperfusedBeforeS), [...within, 'reperfusedBeforeS']);
  }
  read('cuff-width', cuff.width, cuff.path);
  read('restriction-time', restrictedMin(totals), [...place, 'totals', 'restrictionTime']);
  read('longest-restriction', minutes(totals.longestRestriction.value), [...place, 'totals', 'longestRestriction']);
  read('percent-of-aerobic-capacity', intensityPercent, [...place, 'intensityPercent']);
  read('sets', sets.length, [...within, 'sets']);
  if (modeOf(item) === 'resistance') {
    const [lifted, upper] = [liftedOf(item), upperOf(item)];
    read('percent-of-maximum', lifted?.found, [...within, 'load'], { asked: lifted?.asked });
    read('percent-of-maximum', upper?.found, [...place, 'upperLoad'], { asked: upper?.asked });
    if (sets.some(({ repetitions }) => repetitions !== undefined)) {
      const toFailure = (done ?? item).lastSetToFailure;
      read('repetitions', totals.repetitions.value, [...place, 'totals', 'repetitions'], { toFailure });
    }
    read('lifting', tempo?.concentricS, [...place, 'tempo', 'concentricS']);
    read('lowering', tempo?.eccentricS, [...place, 'tempo', 'eccentricS']);
  }
  const rests = sets.slice(0, -1).map(({ restS }) => restS);
  for (const rest of new Set(rests)) read('rest', rest, [...within, 'sets', rests.indexOf(rest), 'restS']);
  return found;
}

/** How long each limb’s cuff is deflated between two exercises, where the plan has the pauses. */
function pausesOf({ session, assumptions }: ExpandedPlan) {
  if (assumptions.some(({ code }) => code === 'reperfusion-taken')) return [];
  const down = new Map<string, { readonly atS: number; readonly exercise: number | undefined }>();
  return session.timeline.events.flatMap(({ event, limb, side, atS, exercise }, index) => {
    const place = `${side} ${limb}`;
    if (event === 'deflate') down.set(place, { atS, exercise });
    const before = event === 'inflate' ? down.get(place) : undefined;
    if (!before || before.exercise === exercise) return [];
    const restS = sum([atS, -before.atS]);
    return [{ limb: limb as Limb, side: side as Side, restS, path: ['session', 'timeline', 'events', index, 'atS'] }];
  });
}

/** The width of the cuff of an item, and where the document has it. */
function cuffOf(document: ExpandedPlan | ExpandedRecord, [item, index]: Indexed) {
  if (document.document === 'record') {
    return { width: 'cuffWidthCm' in item ? item.cuffWidthCm : undefined, path: ['items', index, 'cuffWidthCm'] };
  }
  const { limbs } = document.request;
  const at = limbs.findIndex((one) => isSameLimb(one, item));
  return { width: limbs[at]?.cuffWidthCm, path: ['request', 'limbs', at, 'cuffWidthCm'] };
}

/** Every figure that a document has about items with a cuff, their limbs and the session. */
export function readingsOf(document: ExpandedPlan | ExpandedRecord, items: readonly Indexed[]): Reading[] {
  const modes = modesOf(items);
  const found = items.flatMap(([item, index]) =>
    readingsOfItem(item, ['items', index], cuffOf(document, [item, index])),
  );
  document.limbs.forEach((totals, index) => {
    const { limb, side, exercises } = totals;
    if (exercises === 0) return;
    const path = ['limbs', index, 'restrictionTime'];
    found.push({ measure: 'limb-restriction-time', modes, found: restrictedMin(totals), limb, side, path });
  });
  if (document.document === 'record') return found;
  for (const { restS, ...of } of pausesOf(document)) {
    found.push({ measure: 'reperfusion', modes, found: minutes(restS), ...of });
  }
  const { sessionsPerWeek } = document.request;
  if (sessionsPerWeek !== undefined) {
    found.push({ measure: 'sessions-per-week', modes, found: sessionsPerWeek, path: ['request', 'sessionsPerWeek'] });
  }
  return found;
}
