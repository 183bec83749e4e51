import { ownDocument } from '../answer/own.js';
import { Math } from '../quantity/maths.js';
import type { Answer, Caution, Inputs, Severity } from '../answer/answer.js';
import { defined } from '../answer/defined.js';
import type { Path } from '../answer/issues.js';
import { fill, type MessageValues } from '../answer/messages.js';
import { Reader } from '../answer/reader.js';
import { english } from '../answer/translate.js';
import { withInput } from '../answer/with-input.js';
import type { Grade } from '../evidence/grades.js';
import type { SourceId } from '../evidence/sources.js';
import { convertLoad } from '../quantity/convert.js';
import { decimal } from '../quantity/decimal.js';
import { loadUnitOf, type ExerciseMode, type Limb, type Side, type Unit } from '../quantity/quantities.js';
import { version } from '../study/version.js';
import { mostSevereFirst } from './severity.js';
import { guidelines, HEAVY_PERCENT, type Guideline, type GuidelineId, type GuidelineRow } from './guidelines.js';
import { findingValues, measures, type Measure, type Place } from './measures.js';
import { documentMessages } from './document-messages.js';
import { expandedOf } from './read-document.js';
import { isSameLimb } from './limb-and-side.js';
import { heaviestLoad } from './set-counts.js';
import type { ExpandedRecord, ExpandedRecordItem, SessionRecord } from './record.js';
import { documentDisclaimer, type Disclaimer } from './disclaimers.js';
import { inForce, type Stop } from './stops.js';
import type { ExpandedPlan, ExpandedPlanItem, Plan } from './types.js';

/** One figure of a document compared with one range of a guideline. */
export interface Assessment {
  /** What is compared. */
  readonly measure: Measure;
  /** The figure in the document, in `unit`. */
  readonly found: number;
  /** What was asked for, where only rounding puts the figure outside the range. */
  readonly asked?: number;
  /** Unit of the figure and of the range. */
  readonly unit: Unit;
  /** Ends of the range; one that is left out is open. */
  readonly low?: number;
  /** Upper end of the range; an end that is left out is open. */
  readonly high?: number;
  /** How well the range is backed. */
  readonly evidence: Grade;
  /** Source of the range; left out where there is none. */
  readonly source?: SourceId;
  /** Name of the exercise it is about; left out where it is about a limb or the whole plan. */
  readonly exercise?: string;
  /** The limb and side it is about; without a side, an exercise that is alike on every side. */
  readonly limb?: Limb;
  /** Side of the limb. */
  readonly side?: Side;
  /** Its place in the document. */
  readonly path: Path;
}

/** A figure outside its range. */
export interface ReviewFinding extends Assessment, Caution {
  /** Place of the figure in the document. */
  readonly path: Path;
  /** Source of the range; left out where there is none. */
  readonly source?: SourceId;
}

/** A stop of the document that is still in force: it has no figure and no range. */
export interface StopFinding
  extends Caution, Partial<Readonly<Record<Exclude<keyof Assessment, 'path' | 'source'>, undefined>>> {
  /** Always `stop`: do not train. */
  readonly severity: 'stop';
  /** Place of the stop in the document. */
  readonly path: Path;
}

/** A review of a plan or a record: plain JSON. */
export interface Review {
  /** Kind of document. */
  readonly document: 'review';
  /** Version of the format of the document. */
  readonly schemaVersion: 1;
  /** Version of the library that made it. */
  readonly libraryVersion: string;
  /** Kind of document that was reviewed. */
  readonly of: 'plan' | 'record';
  /** The guideline whose ranges were applied. */
  readonly guideline: {
    /** Code of the guideline. */
    readonly id: GuidelineId;
    /** Name of the guideline. */
    readonly name: string;
    /** Source of the guideline; left out where there is none. */
    readonly source?: SourceId;
  };
  /** Reasons not to train, of the document, with the decisions that lifted them. */
  readonly stops: readonly Stop[];
  /** Stops in force, then what is outside the ranges, most severe first. */
  readonly findings: readonly (StopFinding | ReviewFinding)[];
  /** Figures inside the ranges. */
  readonly inside: readonly Assessment[];
  /** Measures that the guideline has a range for and the document does not say. */
  readonly notAssessed: readonly Measure[];
  /** Sentences that always apply. */
  readonly disclaimers: readonly Disclaimer[];
}

/** Which guideline to hold a document against. */
export interface ReviewOptions {
  /** Id of the guideline to compare with; `guideline-review-2019` when left out. */
  readonly guideline?: GuidelineId | undefined;
}

interface Reading extends Place {
  readonly measure: Measure;
  readonly found: number;
  /** What was asked for, where only rounding lies between it and what was found. */
  readonly asked?: number | undefined;
  readonly path: Path;
  readonly toFailure?: boolean | undefined;
}

/** The items that the guidelines are about: those with a cuff. */
const cuffed = ({
  items,
}: ExpandedPlan | ExpandedRecord): [item: ExpandedPlanItem | ExpandedRecordItem, index: number][] =>
  items.flatMap((item: ExpandedPlanItem | ExpandedRecordItem, index) =>
    item.restriction === 'none' ? [] : ([[item, index]] as [ExpandedPlanItem | ExpandedRecordItem, number][]),
  );

const modesOf = (items: readonly [item: ExpandedPlanItem | ExpandedRecordItem, index: number][]): ExerciseMode[] => [
  ...new Set(items.map(([{ mode = 'resistance' }]) => mode)),
];

const hasCode = (cautions: readonly Caution[], code: string): boolean =>
  cautions.some((message) => message.code === code);

/** The share of occlusion pressure that was asked for, or that the ceiling leaves of it; the gauge rounds it down. */
function askedOf(target: Answer<'cuff-pressure'>): number | undefined {
  const { percentLop, ceilingMmHg, occlusion } = target.inputs;
  if (hasCode(target.cautions, 'chance-limit-holds')) return undefined;
  return ceilingMmHg === undefined ? percentLop : Math.min(percentLop, (100 * ceilingMmHg) / occlusion.value);
}

/** The share of the maximum at the upper end of a planned range. */
const upperOf = (item: ExpandedPlanItem | ExpandedRecordItem): Pick<Reading, 'found' | 'asked'> | undefined => {
  const { reached, inputs } = ('done' in item ? undefined : item.upperLoad) ?? {};
  return reached && { found: reached.percentOneRepMax, asked: inputs?.percentOneRepMax };
};

/** The share of the maximum that is or was lifted; with what was asked for, where only rounding moved it. */
function liftedOf(item: ExpandedPlanItem | ExpandedRecordItem): Pick<Reading, 'found' | 'asked'> | undefined {
  const { load } = item;
  const done = 'done' in item ? item.done : undefined;
  const { oneRepMax, percentOneRepMax }: Partial<Inputs<'training-load'>> = load?.inputs ?? {};
  const asked = load && percentOneRepMax;
  const own = load && item.sets.some((set) => set.load !== undefined);
  if (!done && !own) return load?.reached && { found: load.reached.percentOneRepMax, asked };
  if (!load || !oneRepMax || done?.instead !== undefined) return undefined;
  const unit = loadUnitOf(oneRepMax.unit);
  if (!done) {
    const heaviest = convertLoad(heaviestLoad(item.sets, load.value), loadUnitOf(load.unit), unit);
    return { found: (100 * heaviest) / oneRepMax.value, asked: undefined };
  }
  if (done.load === undefined || !done.unit) return undefined;
  const lifted = convertLoad(heaviestLoad(done.sets, done.load), done.unit, unit);
  const asPlanned = !own && convertLoad(lifted, unit, loadUnitOf(load.unit)) === load.value;
  return { found: (100 * lifted) / oneRepMax.value, asked: asPlanned ? asked : undefined };
}

const minutes = (seconds: number): number => seconds / 60;

/** Restriction at both pressures. */
const restrictedMin = ({ restrictionTime, partialRestrictionTime }: Restricted): number =>
  minutes(restrictionTime.value + (partialRestrictionTime?.value ?? 0));
type Restricted = Pick<ExpandedPlanItem['totals'], 'restrictionTime' | 'partialRestrictionTime'>;

/** What a prescription says, planned or done, that a guideline may have a range for. */
function readingsOf(
  item: ExpandedPlanItem | ExpandedRecordItem,
  place: Path,
  cuff: { readonly width?: number | undefined; readonly path: Path },
): Reading[] {
  const done = 'done' in item ? item.done : undefined;
  const { exercise, side, limb, target, tempo, totals, mode = 'resistance', intensityPercent } = item;
  const sets = done?.sets ?? item.sets;
  const within = done ? [...place, 'done'] : place;
  const found: Reading[] = [];
  const read = (
    measure: Measure,
    value: number | undefined,
    path: Path,
    more?: Pick<Reading, 'asked' | 'toFailure'>,
  ): void => {
    if (value !== undefined) found.push({ measure, found: value, exercise, limb, side, path, ...more });
  };
  const { occlusion } = target!.inputs;
  const asked = askedOf(target!);
  if (!done) {
    read('percent-of-occlusion', target!.reached?.percentLop, [...place, 'target'], { asked });
  } else if (done.heldMmHg !== undefined) {
    const share = (100 * done.heldMmHg) / (done.occlusionMmHg ?? occlusion.value);
    const asPlanned = done.heldMmHg === target!.value;
    read('percent-of-occlusion', share, [...within, 'heldMmHg'], asPlanned ? { asked } : {});
  }
  if (done?.reperfusedBeforeS !== undefined) {
    read('reperfusion', minutes(done.reperfusedBeforeS), [...within, 'reperfusedBeforeS']);
  }
  read('cuff-width', cuff.width, cuff.path);
  read('restriction-time', restrictedMin(totals), [...place, 'totals', 'restrictionTime']);
  read('longest-restriction', minutes(totals.longestRestriction.value), [...place, 'totals', 'longestRestriction']);
  read('percent-of-aerobic-capacity', intensityPercent, [...place, 'intensityPercent']);
  read('sets', sets.length, [...within, 'sets']);
  if (mode === 'resistance') {
    const lifted = liftedOf(item);
    const path = done ? [...within, 'load'] : [...place, 'load'];
    read('percent-of-maximum', lifted?.found, path, { asked: lifted?.asked });
    const upper = upperOf(item);
    read('percent-of-maximum', upper?.found, [...place, 'upperLoad'], { asked: upper?.asked });
    const counted = sets.some(({ repetitions }) => repetitions !== undefined);
    if (counted) {
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

const stopFindings = (document: Pick<ExpandedPlan, 'stops'>): StopFinding[] =>
  inForce(document.stops).map((stop) => {
    const { code, text, values, source } = stop;
    const path = ['stops', document.stops.indexOf(stop)];
    return { severity: 'stop', code, text, ...(values && { values }), path, ...(source && { source }) };
  });

/** How long each limb’s cuff is deflated between two exercises, where the plan has the pauses. */
function pausesOf({ session, assumptions }: ExpandedPlan) {
  if (assumptions.some(({ code }) => code === 'reperfusion-taken')) return [];
  const down = new Map<string, { readonly atS: number; readonly exercise: number | undefined }>();
  return session.timeline.events.flatMap(({ event, limb, side, atS, exercise }, index) => {
    const place = `${side} ${limb}`;
    if (event === 'deflate') down.set(place, { atS, exercise });
    const before = event === 'inflate' ? down.get(place) : undefined;
    if (!before || before.exercise === exercise) return [];
    const restS = decimal(atS).minus(decimal(before.atS)).toNumber();
    return [{ limb: limb!, side: side as Side, restS, path: ['session', 'timeline', 'events', index, 'atS'] as Path }];
  });
}

/** Every figure of the document with its row of the guideline, where there is one. */
function readAll(
  document: ExpandedPlan | ExpandedRecord,
  items: readonly [item: ExpandedPlanItem | ExpandedRecordItem, index: number][],
  rows: readonly GuidelineRow[],
): [Reading, GuidelineRow | undefined][] {
  const request = document.document === 'plan' ? document.request : undefined;
  const weeks = request?.weeks;
  const holds = ({ moreThanWeeks = 0, toWeeks = 0 }: GuidelineRow): boolean =>
    weeks === undefined ? toWeeks === 0 : weeks > moreThanWeeks && (toWeeks === 0 || weeks <= toWeeks);
  const rowFor = (measure: Measure, modes: readonly ExerciseMode[]): GuidelineRow | undefined =>
    rows.find((row) => modes.includes(row.mode) && row.measure === measure && holds(row));
  const cuffOf = (item: ExpandedPlanItem | ExpandedRecordItem, place: Path) => {
    if ('cuffWidthCm' in item) return { width: item.cuffWidthCm, path: [...place, 'cuffWidthCm'] };
    const index = request!.limbs.findIndex((one) => isSameLimb(one, item));
    const limbCuff = request!.limbs[index];
    return { ...(limbCuff && { width: limbCuff.cuffWidthCm }), path: ['request', 'limbs', index, 'cuffWidthCm'] };
  };
  const modes = modesOf(items);
  const read = items.flatMap(([item, index]) => {
    const place = ['items', index];
    return readingsOf(item, place, cuffOf(item, place)).map((reading): [Reading, GuidelineRow | undefined] => [
      reading,
      rowFor(reading.measure, [item.mode ?? 'resistance']),
    ]);
  });
  const whole = (reading: Reading): void => {
    read.push([reading, rowFor(reading.measure, modes)]);
  };
  document.limbs.forEach((totals, index) => {
    const { limb, side, exercises } = totals;
    if (exercises === 0) return;
    const path = ['limbs', index, 'restrictionTime'];
    whole({ measure: 'limb-restriction-time', found: restrictedMin(totals), limb, side, path });
  });
  for (const { limb, side, restS, path } of document.document === 'plan' ? pausesOf(document) : []) {
    whole({ measure: 'reperfusion', found: minutes(restS), limb, side, path });
  }
  if (request?.sessionsPerWeek !== undefined) {
    whole({
      measure: 'sessions-per-week',
      found: request.sessionsPerWeek,
      path: ['request', 'sessionsPerWeek'],
    });
  }
  return read;
}

/** A figure with what is found of it; nothing is found where it is inside its range. */
interface Verdict {
  readonly assessed: Assessment;
  readonly severity?: Severity;
  readonly code?: 'review-above' | 'review-below' | 'review-heavy';
}

/** What holds alike for every side of an exercise, once, without the side. */
function merged(verdicts: readonly Verdict[]): Verdict[] {
  const groups = new Map<string, Verdict[]>();
  for (const verdict of verdicts) {
    const { measure, exercise, limb, found, low, high } = verdict.assessed;
    const key = JSON.stringify([verdict.code, measure, exercise, limb, found, low, high]);
    groups.set(key, [...(groups.get(key) ?? []), verdict]);
  }
  return [...groups.values()].map(([first, ...others]) => {
    const { side, ...alike } = first!.assessed;
    const several = alike.exercise !== undefined && others.some(({ assessed }) => assessed.side !== side);
    return several ? { ...first!, assessed: alike } : first!;
  });
}

/** A heavy exercise of a document whose guideline is for light loads: the heaviest, with the row of that guideline. */
function heaviestOf({ items }: ExpandedPlan | ExpandedRecord, rows: readonly GuidelineRow[]) {
  const row = rows.find(({ mode, measure }) => mode === 'resistance' && measure === 'percent-of-maximum');
  const lifts = items.map((item: ExpandedPlanItem | ExpandedRecordItem, index) => ({
    item,
    index,
    ...(upperOf(item) ?? liftedOf(item)),
  }));
  const heavy = row ? lifts.filter(({ found = 0 }) => Math.round(found) >= HEAVY_PERCENT) : [];
  const [heaviest] = [...heavy].sort((a, b) => b.found! - a.found!);
  return { heavy: new Set<ExpandedPlanItem | ExpandedRecordItem>(heavy.map(({ item }) => item)), heaviest, row };
}

/**
 * Compares a plan or a record with published ranges: each figure of the document with the range the guideline gives
 * for it, how well that range is backed, and where the figure is in the document.
 *
 * The guideline is `guideline-review-2019` (Front Physiol 2019;10:533) unless another is named; the list is
 * `guidelines`. Only what is in the document is compared. Percentages are compared as whole percents, as the
 * ranges are printed: those that the gauge and the weights reach, and in a record those that were held and lifted.
 * Rounding alone is no finding: a figure is outside where both the share asked for and the share reached are.
 *
 * A guideline for light loads is not compared with a heavy exercise, from 65 % of 1RM on. One finding,
 * `review-heavy`, says so; the exercise gets no other.
 *
 * - Evidence: each range has its own grade. Of the 2019 review, 40 to 80 % of occlusion pressure and 2 to 3
 *   sessions a week are `secondary`, the rest `unconfirmed`.
 *
 * @function
 * @param document - a plan of `planSession` or a record of `recordSession`.
 * @param options - `guideline`: which one.
 * @returns findings outside the ranges, what is inside, what could not be compared; print it with `explain`.
 * @throws InputError naming every wrong field.
 *
 * @example
 * ```ts
 * import { planSession, reviewPlan } from 'cuffwork/plan';
 * const plan = planSession({
 *   systolicMmHg: 118, diastolicMmHg: 74, posture: 'seated',
 *   limbs: [{ limb: 'leg', side: 'left', circumferenceCm: 56, cuffWidthCm: 10, percentLop: 50, gaugeStepMmHg: 5 }],
 *   exercises: [{
 *     name: 'leg extension', limb: 'leg', oneRepMax: { load: 60 }, percentOneRepMax: 25, step: 2.5,
 *     scheme: '30-15-15-15', tempo: { eccentricS: 2, concentricS: 2 }, restS: 90, restriction: 'continuous',
 *   }],
 * });
 * reviewPlan(plan).findings.map(({ measure }) => measure); // => ['rest']
 * ```
 */
export const reviewPlan = /* @__PURE__ */ withInput(function reviewPlan(
  document: Plan | SessionRecord,
  options: ReviewOptions = {},
): Review {
  const reader = new Reader(options);
  const ids = guidelines.map(({ id }) => id);
  const chosen = reader.optionalChoice('guideline', ids) ?? ids[0];
  reader.done();
  const given = expandedOf(['plan', 'record'], document);
  const { id, name, source, rows } = guidelines.find((guideline) => guideline.id === chosen)! as Guideline & {
    id: GuidelineId;
  };
  const assessmentOf = ({ asked: _, toFailure: __, path, ...reading }: Reading, row: GuidelineRow): Assessment => ({
    ...reading,
    unit: measures[reading.measure].unit,
    ...(row.low !== undefined && { low: row.low }),
    ...(row.high !== undefined && { high: row.high }),
    evidence: row.evidence,
    ...(source && { source }),
    path,
  });
  const verdicts: Verdict[] = [];
  const { heavy, heaviest, row: light } = heaviestOf(given, rows);
  if (heaviest) {
    const { item, index, found } = heaviest;
    const { exercise, limb, side } = item;
    const path = ['items', index, ...('done' in item ? ['done', 'load'] : ['load'])];
    const assessed = assessmentOf({ measure: 'percent-of-maximum', found: found!, exercise, limb, side, path }, light!);
    const limbCuff = [...heavy].some(({ restriction }) => restriction !== 'none');
    verdicts.push({ assessed, severity: limbCuff ? 'caution' : 'note', code: 'review-heavy' });
  }
  const items = cuffed(given).filter(([item]) => !heavy.has(item));
  for (const [reading, row] of readAll(given, items, rows)) {
    if (!row) continue;
    const { found, asked = found, toFailure } = reading;
    const assessed = assessmentOf(reading, row);
    const compared = (value: number): number => (assessed.unit === '%' ? Math.round(value) : value);
    // Outside is what both was asked for and is reached: rounding alone is no finding.
    const above = row.high !== undefined && compared(Math.min(found, asked)) > row.high;
    const below = row.low !== undefined && compared(Math.max(found, asked)) < row.low;
    const beyond = (end: number | undefined, sign: 1 | -1): boolean =>
      end !== undefined && sign * compared(found) > sign * end;
    const rounded = !above && !below && (beyond(row.high, 1) || beyond(row.low, -1));
    if (rounded) verdicts.push({ assessed: { ...assessed, asked } });
    else if ((!above && !below) || (row.orToFailure && toFailure)) verdicts.push({ assessed });
    else {
      const severity = (above ? row.above : row.below) ?? 'note';
      verdicts.push({ assessed, severity, code: above ? 'review-above' : 'review-below' });
    }
  }
  const findings: ReviewFinding[] = [];
  const inside: Assessment[] = [];
  for (const { assessed, severity, code } of merged(verdicts)) {
    if (!severity || !code) inside.push(assessed);
    else {
      const { measure, found, unit, low, high, exercise, limb, side } = assessed;
      const values = defined({ measure, found, unit, low, high, exercise, limb, side, guideline: id }) as MessageValues;
      const text = fill(documentMessages[code], findingValues(english, assessed, name));
      findings.push({ severity, code, values, text, ...assessed });
    }
  }
  const assessed = new Set([...findings, ...inside].map(({ measure }) => measure));
  const modes = modesOf(items);
  const asked = rows.filter(({ mode }) => modes.includes(mode)).map(({ measure }) => measure);
  return ownDocument({
    document: 'review',
    schemaVersion: 1,
    libraryVersion: version,
    of: given.document,
    guideline: { id, name, ...(source && { source }) },
    stops: given.stops,
    findings: [...stopFindings(given), ...mostSevereFirst(findings)],
    inside,
    notAssessed: [...new Set(asked)].filter((measure) => !assessed.has(measure)),
    disclaimers: [
      documentDisclaimer('review-clears-no-one'),
      documentDisclaimer('local-codes-decide'),
      documentDisclaimer(modes.length > 0 ? 'review-partial' : 'review-no-cuff'),
    ],
  });
});
