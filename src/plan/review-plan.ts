import type { Caution, Severity } from '../answer/answer.js';
import { defined } from '../answer/defined.js';
import type { Path } from '../answer/issues.js';
import { fill, type MessageValues } from '../answer/messages.js';
import { ownDocument } from '../answer/own.js';
import { Reader } from '../answer/reader.js';
import { english } from '../answer/translate.js';
import { withInput } from '../answer/with-input.js';
import type { Grade } from '../evidence/grades.js';
import type { SourceId } from '../evidence/sources.js';
import { Math } from '../quantity/maths.js';
import type { Limb, Side, Unit } from '../quantity/quantities.js';
import { isCuffed } from '../session/prescription.js';
import { documentDisclaimers, type Disclaimer } from './disclaimers.js';
import { documentMessages } from './document-messages.js';
import { head, type DocumentHead } from './document-parts.js';
import { guidelines, HEAVY_PERCENT, type Guideline, type GuidelineId, type GuidelineRow } from './guidelines.js';
import { findingValues, measures, type Measure } from './measures.js';
import { expandedOf } from './read-document.js';
import { largestShareOf, modesOf, readingsOf, type Indexed, type Reading } from './readings.js';
import type { ExpandedItem, SessionRecord } from './record.js';
import { mostSevereFirst } from './severity.js';
import { inForce, type Stop } from './stops.js';
import type { Plan } from './types.js';

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
export interface Review extends DocumentHead<'review', 1> {
  /** Kind of document that was reviewed. */
  readonly of: 'plan' | 'record';
  /** The guideline whose ranges were applied. */
  readonly guideline: Pick<Guideline, 'name' | 'source'> & {
    /** Code of the guideline. */
    readonly id: GuidelineId;
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

const stopFindings = (stops: readonly Stop[]): StopFinding[] =>
  inForce(stops).map((stop) => {
    const { code, text, values, source } = stop;
    const path = ['stops', stops.indexOf(stop)];
    return { severity: 'stop', code, text, ...(values && { values }), path, ...(source && { source }) };
  });

/** A figure with what is found of it; nothing is found where it is inside its range. */
interface Verdict {
  readonly assessed: Assessment;
  readonly severity?: Severity;
  readonly code?: 'review-above' | 'review-below' | 'review-heavy';
}

/** The range of a guideline for a figure; where ranges differ by the length of a block, that of the plan. */
function rowFor({ measure, modes }: Reading, rows: readonly GuidelineRow[], weeks: number | undefined) {
  const holds = ({ moreThanWeeks = 0, toWeeks = 0 }: GuidelineRow): boolean =>
    weeks === undefined ? toWeeks === 0 : weeks > moreThanWeeks && (toWeeks === 0 || weeks <= toWeeks);
  return rows.find((row) => modes.includes(row.mode) && row.measure === measure && holds(row));
}

function assessmentOf(reading: Reading, { low, high, evidence }: GuidelineRow, source?: SourceId): Assessment {
  const { asked: _, toFailure: __, modes: ___, path, ...figure } = reading;
  return defined({ ...figure, unit: measures[reading.measure].unit, low, high, evidence, source, path }) as Assessment;
}

/** A figure compared with its range. Outside is what both was asked for and is reached: rounding alone is no finding. */
function verdictOf({ found, asked = found, toFailure }: Reading, row: GuidelineRow, assessed: Assessment): Verdict {
  const { low = -Infinity, high = Infinity, orToFailure } = row;
  const compared = (value: number): number => (assessed.unit === '%' ? Math.round(value) : value);
  const above = compared(Math.min(found, asked)) > high;
  const below = compared(Math.max(found, asked)) < low;
  if (!above && !below) {
    const isRounded = compared(found) > high || compared(found) < low;
    return { assessed: isRounded ? { ...assessed, asked } : assessed };
  }
  if (orToFailure && toFailure) return { assessed };
  const severity = (above ? row.above : row.below) ?? 'note';
  return { assessed, severity, code: above ? 'review-above' : 'review-below' };
}

/** What holds alike for every side of an exercise, once, without the side; what is about a limb itself, limb by limb. */
function merged(verdicts: readonly Verdict[]): Verdict[] {
  const groups = new Map<string, Verdict[]>();
  for (const verdict of verdicts) {
    const { measure, exercise, limb, side, found, low, high } = verdict.assessed;
    const place = exercise === undefined ? [limb, side] : [limb];
    const key = JSON.stringify([verdict.code, measure, exercise, place, found, low, high]);
    groups.set(key, [...(groups.get(key) ?? []), verdict]);
  }
  return [...groups.values()].map(([first, ...others]) => {
    const { side, ...alike } = first!.assessed;
    return others.some(({ assessed }) => assessed.side !== side) ? { ...first!, assessed: alike } : first!;
  });
}

/** The heaviest of the exercises that a guideline for light loads is not meant for. */
function heavyVerdict(heavy: readonly Indexed[], row: GuidelineRow, source: SourceId | undefined): Verdict | undefined {
  const [heaviest] = [...heavy].sort(([a], [b]) => largestShareOf(b)! - largestShareOf(a)!);
  if (!heaviest) return undefined;
  const [item, index] = heaviest;
  const { exercise, limb, side } = item;
  const path = ['items', index, ...('done' in item ? ['done', 'load'] : ['load'])];
  const found = largestShareOf(item)!;
  const reading: Reading = { measure: 'percent-of-maximum', modes: [], found, exercise, limb, side, path };
  const hasCuff = heavy.some(([one]) => isCuffed(one));
  return { assessed: assessmentOf(reading, row, source), severity: hasCuff ? 'caution' : 'note', code: 'review-heavy' };
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
export const reviewPlan = withInput(function reviewPlan(
  document: Plan | SessionRecord,
  options: ReviewOptions = {},
): Review {
  const reader = new Reader(options);
  const ids = guidelines.map(({ id }) => id);
  const id = reader.optionalChoice('guideline', ids) ?? ids[0]!;
  reader.done();
  const given = expandedOf(['plan', 'record'], document);
  const { name, source, rows }: Guideline = guidelines.find((guideline) => guideline.id === id)!;
  const all = (given.items as readonly ExpandedItem[]).map((item, index): Indexed => [item, index]);
  const light = rows.find(({ mode, measure }) => mode === 'resistance' && measure === 'percent-of-maximum');
  const isHeavy = ([item]: Indexed): boolean =>
    light !== undefined && Math.round(largestShareOf(item) ?? 0) >= HEAVY_PERCENT;
  const heaviest = light && heavyVerdict(all.filter(isHeavy), light, source);
  // The guidelines are about exercise with a cuff.
  const items = all.filter((one) => isCuffed(one[0]) && !isHeavy(one));
  const weeks = given.document === 'plan' ? given.request.weeks : undefined;
  const compared = readingsOf(given, items).flatMap((reading) => {
    const row = rowFor(reading, rows, weeks);
    return row ? [verdictOf(reading, row, assessmentOf(reading, row, source))] : [];
  });
  const findings: ReviewFinding[] = [];
  const inside: Assessment[] = [];
  for (const { assessed, severity, code } of merged([...(heaviest ? [heaviest] : []), ...compared])) {
    if (!severity || !code) {
      inside.push(assessed);
      continue;
    }
    const { measure, found, unit, low, high, exercise, limb, side } = assessed;
    const values = defined({ measure, found, unit, low, high, exercise, limb, side, guideline: id }) as MessageValues;
    const text = fill(documentMessages[code], findingValues(english, assessed, name));
    findings.push({ severity, code, values, text, ...assessed });
  }
  const assessed = new Set([...findings, ...inside].map(({ measure }) => measure));
  const modes = modesOf(items);
  const asked = rows.filter(({ mode }) => modes.includes(mode)).map(({ measure }) => measure);
  return ownDocument({
    ...head('review', 1),
    of: given.document,
    guideline: { id, name, ...(source && { source }) },
    stops: given.stops,
    findings: [...stopFindings(given.stops), ...mostSevereFirst(findings)],
    inside,
    notAssessed: [...new Set(asked)].filter((measure) => !assessed.has(measure)),
    disclaimers: documentDisclaimers(
      'review-clears-no-one',
      'local-codes-decide',
      modes.length > 0 ? 'review-partial' : 'review-no-cuff',
    ),
  });
});
