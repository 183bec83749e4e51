import type { Answer } from '../answer/answer.js';
import { describe, InputError, issue } from '../answer/issues.js';
import { kindWords } from './kinds.js';
import { plainInput } from '../answer/plain-input.js';
import { printable, withAnswers } from '../plan/read-document.js';
import { inForce } from '../plan/stops.js';
import { format, formatUnit } from '../quantity/format.js';

type Part = Readonly<Record<string, unknown>>;

const isPart = (value: unknown): value is Part => typeof value === 'object' && value !== null && !Array.isArray(value);

const isAnswer = (value: unknown): value is Answer =>
  isPart(value) &&
  typeof value['kind'] === 'string' &&
  Object.hasOwn(kindWords, value['kind']) &&
  typeof value['value'] === 'number' &&
  typeof value['unit'] === 'string';

const lists = (value: unknown): Part[] => (Array.isArray(value) ? value.filter(isPart) : []);
const text = (value: unknown): string => (typeof value === 'string' ? value : '');

const EXPECTED = 'an answer or a document of this library';

/** `193.2 mmHg (95 % interval 128–292)`. */
function numberOf({ value, unit, lower, upper, level }: Answer): string {
  const ends = [lower, upper];
  const known = ends.every((end) => typeof end === 'number') && typeof level === 'number';
  const interval = known ? ` (${100 * level} % interval ${ends.map((end) => format(end!)).join('–')})` : '';
  return formatUnit(value, unit) + interval;
}

/** How many cautions and stops there are to read. */
function warnings(cautions: readonly Part[]): string[] {
  const count = (severity: string) => cautions.filter((one) => one['severity'] === severity).length;
  const words = (['stop', 'caution'] as const).flatMap((severity) => {
    const of = count(severity);
    return of === 0 ? [] : [`${of} ${severity}${of === 1 ? '' : 's'}`];
  });
  return words.length > 0 ? [`read ${words.join(' and ')}`] : [];
}

function answerLine(answer: Answer): string {
  const { name } = kindWords[answer.kind];
  return [
    `${name} ${numberOf(answer)}`,
    text(answer.equation),
    text(answer.evidence),
    ...warnings(lists(answer.cautions)),
  ].join(' · ');
}

/** A set as it is counted or timed. */
const setText = ({ repetitions, durationS }: Part): string =>
  typeof repetitions === 'number' ? format(repetitions) : typeof durationS === 'number' ? `${format(durationS)}s` : '–';

function itemLine(item: Part): string {
  const { exercise, limb, side, target, load, done, totals } = item;
  const sets = lists(isPart(done) ? done['sets'] : item['sets']);
  const time = isPart(totals) ? totals['restrictionTime'] : undefined;
  return [
    [text(side), text(limb)].filter(Boolean).join(' '),
    text(exercise),
    ...(isAnswer(target) ? [`cuff ${formatUnit(target.value, target.unit)}`] : []),
    ...(isAnswer(load) ? [`load ${formatUnit(load.value, load.unit)}`] : []),
    ...(sets.length > 0 ? [sets.map(setText).join('-')] : []),
    ...(isAnswer(time) && time.value > 0 ? [`restriction ${formatUnit(time.value, time.unit)}`] : []),
    ...(typeof item['action'] === 'string' ? [item['action']] : []),
  ]
    .filter(Boolean)
    .join(' · ');
}

/** The stops of a part of a document that are in force. */
const stopsIn = (part: Part) =>
  inForce(lists(part['stops']).map(({ lifted, ...stop }) => (isPart(lifted) ? { ...stop, lifted } : stop)) as never);

/** A document in a few lines: while a stop is in force its stops, and no setting; else a line for each item. */
function documentLines(document: Part): string[] {
  const stops = stopsIn(document);
  const title = [text(document['document']), text(document['date'])].filter(Boolean).join(' ');
  if (stops.length > 0)
    return [`${title} · stop`, ...stops.map((stop) => `stop: ${text(stop.text) || text(stop.code)}`)];
  const head = [title, ...warnings(lists(document['cautions']))].join(' · ');
  return [head, ...lists(document['items']).map(itemLine)];
}

/**
 * An answer as one short line, and a document as a few, for consoles and notebooks: what it is, the number with unit and
 * interval, the equation, its evidence grade, and how many cautions to read. `explain` shows everything.
 *
 * A document is verified as `readDocument` does. While a stop is in force, it shows its stops and no setting.
 *
 * @param shown - an answer, or a plan, a record or another document
 * @returns the line or lines.
 * @throws InputError for what is neither, and for a document that was changed by hand
 *
 * @example
 * ```ts
 * import { measuredOcclusionPressure } from 'cuffwork';
 * import { show } from 'cuffwork/explain';
 * const occlusion = measuredOcclusionPressure({ valueMmHg: 168, method: 'doppler', limb: 'leg' });
 * show(occlusion); // => 'Limb occlusion pressure 168 mmHg (95 % interval 151.96–185.73) · measured-doppler · derived'
 * ```
 */
export function show(shown: object): string {
  const plain = printable(plainInput(shown, EXPECTED));
  if (isAnswer(plain)) return answerLine(plain);
  if (isPart(plain) && typeof plain['document'] === 'string') return documentLines(plain).join('\n');
  throw new InputError([issue('wrong-type', [], EXPECTED, describe(shown))]);
}

/** One number of a table, as {@link toRows} makes it; a cell without a value is `null`. */
export interface AnswerRow {
  /** Where the number is: names and positions, joined by points; empty for a single answer. */
  readonly place: string;
  /** Name of the exercise that it belongs to. */
  readonly exercise: string | null;
  /** Limb that it belongs to: `leg` or `arm`. */
  readonly limb: string | null;
  /** Side of that limb: `left` or `right`. */
  readonly side: string | null;
  /** What it is, a code. */
  readonly kind: string;
  /** The number [`unit`]. */
  readonly value: number;
  /** UCUM code of the unit. */
  readonly unit: string;
  /** Lower end of the 95 % interval [`unit`]. */
  readonly lower: number | null;
  /** Upper end of the 95 % interval [`unit`]. */
  readonly upper: number | null;
  /** Id of the equation or method. */
  readonly equation: string;
  /** Evidence grade. */
  readonly evidence: string;
  /** Worst severity of its cautions; `stop` while a stop of its document is in force. */
  readonly severity: string | null;
}

const SEVERITIES = ['stop', 'caution', 'note'];

/**
 * Every number of an answer or a document as a row of one table, for a data frame, a spreadsheet or a database. Every
 * row has the same cells. What an answer was worked out from is left in its `inputs`. While a stop of a document is in
 * force, each of its rows has the severity `stop`: show no setting of them.
 *
 * @param from - an answer, a list of answers, or a document
 * @returns the rows, in the order met.
 * @throws InputError for what holds no plain data, and for a plan or a record that was changed by hand
 *
 * @example
 * ```ts
 * import { testedOneRepMax } from 'cuffwork';
 * import { toRows } from 'cuffwork/explain';
 * const [row] = toRows(testedOneRepMax({ load: 100 }));
 * [row?.kind, row?.value, row?.unit, row?.lower?.toFixed(1)]; // => ['one-repetition-maximum', 100, 'kg', '91.8']
 * ```
 */
export function toRows(from: object): AnswerRow[] {
  const rows: AnswerRow[] = [];
  const cell = (part: Part, name: string): string | null => text(part[name]) || null;
  const walk = (part: unknown, place: readonly (string | number)[], of: Part, stopped: boolean): void => {
    if (Array.isArray(part)) return part.forEach((item, index) => walk(item, [...place, index], of, stopped));
    if (!isPart(part)) return;
    if (isAnswer(part)) {
      const { kind, value, unit, lower, upper, equation, evidence } = part;
      const severities = lists(part.cautions).map((one) => one['severity']);
      rows.push({
        place: place.join('.'),
        exercise: cell(of, 'exercise'),
        limb: cell(of, 'limb'),
        side: cell(of, 'side'),
        kind,
        value,
        unit,
        lower: typeof lower === 'number' ? lower : null,
        upper: typeof upper === 'number' ? upper : null,
        equation: text(equation),
        evidence: text(evidence),
        severity: stopped ? 'stop' : (SEVERITIES.find((severity) => severities.includes(severity)) ?? null),
      });
      return;
    }
    // A request holds what the document was made from, not what it says.
    const inner = typeof part['limb'] === 'string' ? part : of;
    const within = stopped || stopsIn(part).length > 0;
    for (const [name, item] of Object.entries(part))
      if (name !== 'request') walk(item, [...place, name], inner, within);
  };
  walk(withAnswers(plainInput(from, 'an answer, a list of answers, or a document')), [], {}, false);
  return rows;
}
