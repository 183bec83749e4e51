import { Math } from '../quantity/maths.js';
import type { Answer, Caution } from '../answer/answer.js';
import { idsIn } from '../answer/cite.js';
import type { Path } from '../answer/issues.js';
import { Reader } from '../answer/reader.js';
import { english } from '../answer/words.js';
import type { Grade } from '../evidence/grades.js';
import type { SourceId } from '../evidence/sources.js';
import { convertLoad } from '../quantity/convert.js';
import { decimal } from '../quantity/decimal.js';
import { loadUnitOf, type ExerciseMode, type Unit } from '../quantity/quantities.js';
import { gravestFirst } from './gravest-first.js';
import { guidelines, type Guideline, type GuidelineId, type GuidelineRow } from './guidelines.js';
import { findingValues, measures, type Measure } from './measures.js';
import { caution } from './messages.js';
import { documentOf } from './read-document.js';
import { isSameLimb } from './places.js';
import type { RecordItem, SessionRecord } from './record-session.js';
import { say } from './standing.js';
import type { Stop } from './stops.js';
import type { Plan, PlanItem, StandingSentence } from './types.js';

/** One figure of a document held against one range of a guideline. */
export interface Judgement {
  readonly measure: Measure;
  readonly found: number;
  readonly unit: Unit;
  /** Ends of the range; one that is left out is open. */
  readonly low?: number;
  readonly high?: number;
  /** How well the range is backed. */
  readonly evidence: Grade;
  readonly source?: SourceId;
  /** Where it stands in the document. */
  readonly path: Path;
}

/** A figure outside its range. */
export interface ReviewFinding extends Judgement, Caution {
  readonly path: Path;
  readonly source?: SourceId;
}

/** A review of a plan or a record: plain JSON. */
export interface Review {
  readonly document: 'review';
  readonly schemaVersion: 1;
  readonly of: 'plan' | 'record';
  readonly guideline: { readonly id: GuidelineId; readonly name: string; readonly source?: SourceId };
  /** Reasons not to train, of the document, with the decisions that lifted them. */
  readonly stops: readonly Stop[];
  /** What is outside the ranges, gravest first. */
  readonly findings: readonly ReviewFinding[];
  /** What is inside them. */
  readonly inside: readonly Judgement[];
  /** What the guideline has a range for and the document does not say. */
  readonly notJudged: readonly Measure[];
  readonly standing: readonly StandingSentence[];
  readonly sources: readonly SourceId[];
}

/** Which guideline to hold a document against. */
export interface ReviewOptions {
  /** `guideline-review-2019` when left out. */
  readonly guideline?: GuidelineId | undefined;
}

interface Reading {
  readonly measure: Measure;
  readonly found: number;
  /** Whose figure it is, in words. */
  readonly where: string;
  readonly path: Path;
  readonly toFailure?: boolean;
}

/** The items that the guidelines are about: those with a cuff. */
const cuffed = ({ items }: Plan | SessionRecord): [item: PlanItem | RecordItem, index: number][] =>
  items.flatMap((item: PlanItem | RecordItem, index) =>
    item.restriction === 'none' ? [] : ([[item, index]] as [PlanItem | RecordItem, number][]),
  );

const modesOf = (document: Plan | SessionRecord): ExerciseMode[] => [
  ...new Set(cuffed(document).map(([{ mode = 'resistance' }]) => mode)),
];

const minutes = (seconds: number): number => seconds / 60;

/** Restriction at both pressures. */
const restrictedMin = ({ restrictionTime, partialRestrictionTime }: Restricted): number =>
  minutes(restrictionTime.value + (partialRestrictionTime?.value ?? 0));
type Restricted = Pick<PlanItem['totals'], 'restrictionTime' | 'partialRestrictionTime'>;

/** What a prescription says, planned or done, that a guideline may have a range for. */
function readingsOf(
  item: PlanItem | RecordItem,
  place: Path,
  cuff: { readonly width?: number | undefined; readonly path: Path },
): Reading[] {
  const done = 'done' in item ? item.done : undefined;
  const { exercise, side, limb, target, load, tempo, totals, mode = 'resistance', intensityPercent } = item;
  const where = `${exercise}, ${side} ${limb}`;
  const sets = done?.sets ?? item.sets;
  const within = done ? [...place, 'done'] : place;
  const found: Reading[] = [];
  const read = (measure: Measure, value: number | undefined, path: Path, toFailure?: boolean): void => {
    if (value !== undefined) found.push({ measure, found: value, where, path, ...(toFailure && { toFailure }) });
  };
  const { occlusion } = target!.inputs as { occlusion: Answer<'occlusion-pressure'> };
  if (!done) read('percent-of-occlusion', target!.reached?.percent, [...place, 'target', 'reached', 'percent']);
  else if (done.heldMmHg !== undefined) {
    read('percent-of-occlusion', (100 * done.heldMmHg) / occlusion.value, [...within, 'heldMmHg']);
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
    const { oneRepMax } = (load?.inputs ?? {}) as { oneRepMax?: Answer<'one-repetition-maximum'> };
    if (!done) read('percent-of-maximum', load?.reached?.percent, [...place, 'load', 'reached', 'percent']);
    else if (oneRepMax && done.load !== undefined && done.unit) {
      const lifted = convertLoad(done.load, done.unit, loadUnitOf(oneRepMax.unit));
      read('percent-of-maximum', (100 * lifted) / oneRepMax.value, [...within, 'load']);
    }
    const counted = sets.some(({ repetitions }) => repetitions !== undefined);
    if (counted) {
      read(
        'repetitions',
        totals.repetitions.value,
        [...place, 'totals', 'repetitions'],
        (done ?? item).lastSetToFailure,
      );
    }
    read('lifting', tempo?.concentricS, [...place, 'tempo', 'concentricS']);
    read('lowering', tempo?.eccentricS, [...place, 'tempo', 'eccentricS']);
  }
  const rests = sets.slice(0, -1).map(({ restS }) => restS);
  for (const rest of new Set(rests)) read('rest', rest, [...within, 'sets', rests.indexOf(rest), 'restS']);
  return found;
}

/** How long each limb’s cuff is down between two exercises, where the plan was told the pauses. */
function pausesOf({ session, assumptions }: Plan) {
  if (assumptions.some(({ code }) => code === 'reperfusion-taken')) return [];
  const down = new Map<string, { readonly atS: number; readonly exercise: number | undefined }>();
  return session.timeline.events.flatMap(({ event, limb, side, atS, exercise }, index) => {
    const place = `${side} ${limb}`;
    if (event === 'deflate') down.set(place, { atS, exercise });
    const before = event === 'inflate' ? down.get(place) : undefined;
    if (!before || before.exercise === exercise) return [];
    const restS = decimal(atS).minus(decimal(before.atS)).toNumber();
    return [{ limb, side, restS, path: ['session', 'timeline', 'events', index, 'atS'] as Path }];
  });
}

/** Every figure of the document with the row of the guideline that judges it, where there is one. */
function readAll(document: Plan | SessionRecord, rows: readonly GuidelineRow[]): [Reading, GuidelineRow | undefined][] {
  const request = document.document === 'plan' ? document.request : undefined;
  const weeks = request?.weeks;
  const holds = ({ moreThanWeeks = 0, toWeeks = 0 }: GuidelineRow): boolean =>
    weeks === undefined ? toWeeks === 0 : weeks > moreThanWeeks && (toWeeks === 0 || weeks <= toWeeks);
  const rowFor = (measure: Measure, modes: readonly ExerciseMode[]): GuidelineRow | undefined =>
    rows.find((row) => modes.includes(row.mode) && row.measure === measure && holds(row));
  const cuffOf = (item: PlanItem | RecordItem, place: Path) => {
    if ('cuffWidthCm' in item) return { width: item.cuffWidthCm, path: [...place, 'cuffWidthCm'] };
    const index = request!.limbs.findIndex((one) => isSameLimb(one, item));
    const worn = request!.limbs[index];
    return { ...(worn && { width: worn.cuffWidthCm }), path: ['request', 'limbs', index, 'cuffWidthCm'] };
  };
  const modes = modesOf(document);
  const read = cuffed(document).flatMap(([item, index]) => {
    const place = ['items', index];
    return readingsOf(item, place, cuffOf(item, place)).map((reading): [Reading, GuidelineRow | undefined] => [
      reading,
      rowFor(reading.measure, [item.mode ?? 'resistance']),
    ]);
  });
  const whole = (measure: Measure, found: number, where: string, path: Path): void => {
    read.push([{ measure, found, where, path }, rowFor(measure, modes)]);
  };
  document.limbs.forEach((totals, index) => {
    const { limb, side, exercises } = totals;
    if (exercises === 0) return;
    whole('limb-restriction-time', restrictedMin(totals), `${side} ${limb}`, ['limbs', index, 'restrictionTime']);
  });
  for (const { limb, side, restS, path } of document.document === 'plan' ? pausesOf(document) : []) {
    whole('reperfusion', minutes(restS), `${side} ${limb}`, path);
  }
  if (request?.sessionsPerWeek !== undefined) {
    whole('sessions-per-week', request.sessionsPerWeek, 'Plan', ['request', 'sessionsPerWeek']);
  }
  return read;
}

/**
 * Holds a plan or a record against published ranges: each figure of the document with the range the guideline gives
 * for it, how well that range is backed, and where the figure stands.
 *
 * The guideline is `guideline-review-2019` (Front Physiol 2019;10:533) unless another is named; the list is
 * `guidelines`. Nothing is judged that is not in the document. Percentages are compared as whole percents, as the
 * ranges are printed; what is held against them is what the gauge and the weights really reach, and in a record what
 * was really held and lifted.
 *
 * - Evidence: each range carries its own grade. Of the 2019 review, 40 to 80 % of occlusion pressure and 2 to 3
 *   sessions a week are `secondary`, the rest `unconfirmed`.
 *
 * @param document - a plan of `planSession` or a record of `recordSession`.
 * @param options - `guideline`: which one.
 * @returns findings outside the ranges, what is inside, what could not be judged; print it with `explain`.
 * @throws InputError naming every wrong field.
 *
 * @example
 * ```ts
 * import { planSession, reviewPlan } from 'cuffwork/plan';
 * const plan = planSession({
 *   systolicMmHg: 118, diastolicMmHg: 74, posture: 'seated',
 *   limbs: [{ limb: 'leg', side: 'left', circumferenceCm: 56, cuffWidthCm: 10, percent: 50, gaugeStepMmHg: 5 }],
 *   exercises: [{
 *     name: 'leg extension', limb: 'leg', oneRepMax: { load: 60 }, percent: 25, step: 2.5,
 *     scheme: '30-15-15-15', tempo: { eccentricS: 2, concentricS: 2 }, restS: 90, restriction: 'continuous',
 *   }],
 * });
 * reviewPlan(plan).findings.map(({ measure }) => measure); // => ['rest']
 * ```
 */
export function reviewPlan(document: Plan | SessionRecord, options: ReviewOptions = {}): Review {
  const reader = new Reader(options);
  const ids = guidelines.map(({ id }) => id);
  const chosen = reader.optionalChoice('guideline', ids) ?? ids[0];
  reader.done();
  const given = documentOf(['plan', 'record'], document);
  const { id, name, source, rows } = guidelines.find((guideline) => guideline.id === chosen)! as Guideline & {
    id: GuidelineId;
  };
  const findings: ReviewFinding[] = [];
  const inside: Judgement[] = [];
  for (const [{ measure, found, where, path, toFailure }, row] of readAll(given, rows)) {
    if (!row) continue;
    const { unit } = measures[measure];
    const judged: Judgement = {
      measure,
      found,
      unit,
      ...(row.low !== undefined && { low: row.low }),
      ...(row.high !== undefined && { high: row.high }),
      evidence: row.evidence,
      ...(source && { source }),
      path,
    };
    const compared = unit === '%' ? Math.round(found) : found;
    const above = row.high !== undefined && compared > row.high;
    const below = row.low !== undefined && compared < row.low;
    if ((!above && !below) || (row.orToFailure && toFailure)) inside.push(judged);
    else {
      const values = findingValues(english, judged, where, name);
      const severity = (above ? row.above : row.below) ?? 'note';
      findings.push({ ...caution(severity, above ? 'review-above' : 'review-below', values), ...judged });
    }
  }
  const judged = new Set([...findings, ...inside].map(({ measure }) => measure));
  const modes = modesOf(given);
  const asked = rows.filter(({ mode }) => modes.includes(mode)).map(({ measure }) => measure);
  const review = {
    document: 'review',
    schemaVersion: 1,
    of: given.document,
    guideline: { id, name, ...(source && { source }) },
    stops: given.stops,
    findings: gravestFirst(findings),
    inside,
    notJudged: [...new Set(asked)].filter((measure) => !judged.has(measure)),
    standing: [
      say('review-clears-no-one'),
      say('local-codes-decide'),
      say(modes.length > 0 ? 'review-partial' : 'review-no-cuff'),
    ],
  } as const;
  return { ...review, sources: idsIn(review) };
}
