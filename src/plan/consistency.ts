import type { Answer } from '../answer/answer.js';
import { issue, describe, type InputIssue, type Path } from '../answer/issues.js';
import type { MessageValues } from '../answer/messages.js';
import { isPart, type Part } from '../answer/part.js';
import { Math } from '../quantity/maths.js';
import { passedStep } from '../evidence/guards.js';
import { convertLoad } from '../quantity/convert.js';
import { loadUnitOf, type Unit } from '../quantity/quantities.js';
import { textByCode } from './catalogue.js';
import { AT_LEAST, AT_MOST, need, type Asked, type Needed, LEFT_OUT, WITH_OTHER_END } from '../answer/needs.js';
import {
  POINTER,
  FROM_NOTHING,
  THE_SAME,
  ONE_OF_AVAILABLE,
  MULTIPLE_OF,
  WITHIN_STEP,
  WITH_PRESSURE_STOP,
  NO_OTHER_STOP,
} from './needs.js';

/** Lists whose sentences are looked up by code where they are needed. */
export const BY_CODE = ['disclaimers', 'stopCriteria'];
/** Lists of sentences in a document. */
const SENTENCES = ['cautions', 'findings', 'disclaimers', 'stopCriteria', 'stops', 'reasons', 'measureAgain'];

const isNumber = (part: unknown): part is number => typeof part === 'number';

/** Whether two numbers are the same, but for the last digits that engines and decimals differ in. */
export const isNear = (a: number, b: number): boolean =>
  Math.abs(a - b) <= 1e-9 * Math.max(1, Math.abs(a), Math.abs(b));
const isAbove = (a: number, b: number): boolean => a > b && !isNear(a, b);

/** Whether a part of a document reads like an answer. */
export const isAnswer = (part: unknown): part is Answer =>
  isPart(part) && typeof part['kind'] === 'string' && isNumber(part['value']) && typeof part['unit'] === 'string';

/** What something in a document must be, where it is not. */
export type Found = (path: Path, expected: Asked, received: unknown) => void;

/** An answer of a document by its JSON Pointer. */
type Follow = (pointer: string) => unknown;

/** The value that a percentage is of, in the unit of the answer; nothing where body mass counts too. */
function wholeOf({ kind, unit, inputs }: Answer, follow: Follow): number | undefined {
  const input = inputs[kind === 'cuff-pressure' ? 'occlusion' : 'oneRepMax'];
  const pointer = isPart(input) ? input['ref'] : undefined;
  const whole = (typeof pointer === 'string' ? follow(pointer) : input) as Answer | undefined;
  if (!isPart(whole) || !isNumber(whole.value) || inputs['bodyMassLoad'] !== undefined) return undefined;
  if (kind === 'cuff-pressure') return whole.value;
  return convertLoad(whole.value, loadUnitOf(whole.unit as Unit), loadUnitOf(unit));
}

const same = (value: number): Needed => need(THE_SAME, { value });

/** A cuff pressure and a load against the percentage that they are of a pressure and of a maximum. */
function checkPercent(answer: Answer, follow: Follow, path: Path, found: Found): void {
  const { value, inputs, rounding, reached } = answer;
  const whole = wholeOf(answer, follow);
  const name = answer.kind === 'cuff-pressure' ? 'percentLop' : 'percentOneRepMax';
  const percent = inputs[name];
  if (whole === undefined || !isNumber(percent)) return;
  const asked = (percent / 100) * whole;
  if (!isNear(rounding?.from ?? value, asked)) {
    found([...path, ...(rounding ? ['rounding', 'from'] : ['value'])], same(asked), rounding?.from ?? value);
  }
  const share = (reached as Partial<Record<typeof name, unknown>> | undefined)?.[name];
  if (isNumber(share) && !isNear(share, (100 * value) / whole)) {
    found([...path, 'reached', name], same((100 * value) / whole), share);
  }
}

/** A value against what it was rounded from. */
function checkRounding({ value, inputs, rounding }: Answer, path: Path, found: Found): void {
  if (!rounding) return;
  const { from, to, step, available } = rounding;
  if (to === 'down' && isAbove(value, from)) found([...path, 'value'], need(AT_MOST, { value: from }), value);
  if (available && !available.includes(value)) found([...path, 'value'], ONE_OF_AVAILABLE, value);
  if (step === undefined || available) return;
  if (!isNear(value / step, Math.round(value / step))) found([...path, 'value'], need(MULTIPLE_OF, { step }), value);
  // A ceiling, and a limit on the chance of closing the artery, hold a setting further down.
  const held = ['ceilingMmHg', 'occlusionChanceLimitPercent'].some((name) => inputs[name] !== undefined);
  if (!held && isAbove(Math.abs(value - from), step))
    found([...path, 'value'], need(WITHIN_STEP, { step, from }), value);
  const ceiling = inputs['ceilingMmHg'];
  if (isNumber(ceiling) && isAbove(value, ceiling)) found([...path, 'value'], need(AT_MOST, { value: ceiling }), value);
}

function checkAnswer(answer: Answer, follow: Follow, path: Path, found: Found): void {
  const { value, rounding, lower, upper, standardDeviation, kind } = answer;
  const centre = rounding?.from ?? value;
  if (value < 0) found([...path, 'value'], FROM_NOTHING, value);
  if (isNumber(standardDeviation) && standardDeviation < 0)
    found([...path, 'standardDeviation'], FROM_NOTHING, standardDeviation);
  if (isNumber(lower) !== isNumber(upper))
    found([...path, isNumber(lower) ? 'upper' : 'lower'], WITH_OTHER_END, undefined);
  if (isNumber(lower) && isAbove(lower, centre)) found([...path, 'lower'], need(AT_MOST, { value: centre }), lower);
  if (isNumber(upper) && isAbove(centre, upper)) found([...path, 'upper'], need(AT_LEAST, { least: centre }), upper);
  if (isPart(answer.inputs)) {
    if (kind === 'cuff-pressure' || kind === 'training-load') checkPercent(answer, follow, path, found);
    checkRounding(answer, path, found);
  }
  if (kind === 'cuff-pressure' && passedStep('cuff-pressure', value)?.severity === 'stop') {
    const isStop = (message: unknown): boolean => isPart(message) && message['severity'] === 'stop';
    const { cautions } = answer as { readonly cautions?: unknown };
    if (!Array.isArray(cautions) || !cautions.some(isStop)) {
      found([...path, 'cautions'], WITH_PRESSURE_STOP, cautions);
    }
  }
}

/** A stated number against its answer, which is of the kind that its field asks for. */
function checkStated(stated: Part, answer: unknown, path: Path, found: Found): void {
  const { ref } = stated;
  if (!isPart(answer)) return found([...path, 'ref'], POINTER, ref);
  // A setting or a load of an item: its percentage is checked by its kind.
  if (path.length === 3 && 'value' in stated) {
    const value = stated['unit'] === 'mm[Hg]' ? 'cuff-pressure' : 'training-load';
    const { kind } = answer;
    if (kind !== value) found(['answers', Number(String(ref).split('/')[2]), 'kind'], need(THE_SAME, { value }), kind);
  }
  for (const name of ['value', 'unit', 'lower', 'upper']) {
    if (!('value' in stated) || stated[name] === answer[name]) continue;
    found(
      [...path, name],
      answer[name] === undefined ? LEFT_OUT : need(THE_SAME, { value: String(answer[name]) }),
      stated[name],
    );
  }
}

/** Events of a clock: none before the start, none before the one that it follows. */
function checkEvents(events: readonly unknown[], path: Path, found: Found): void {
  let before = 0;
  events.forEach((event, index) => {
    const atS = isPart(event) ? event['atS'] : undefined;
    if (!isNumber(atS)) return;
    if (atS < before) found([...path, index, 'atS'], need(AT_LEAST, { least: before }), atS);
    else before = atS;
  });
}

/** What stops in the cautions or findings of a document is one of its stops. */
export function checkStops(document: object, found: Found): void {
  const { stops } = document as Part;
  if (!Array.isArray(stops)) return;
  const codes = new Set(stops.map((stop: unknown) => (isPart(stop) ? stop['code'] : undefined)));
  for (const name of ['cautions', 'findings']) {
    const list = (document as Part)[name];
    if (!Array.isArray(list)) continue;
    list.forEach((message: unknown, index) => {
      if (!isPart(message) || message['severity'] !== 'stop' || codes.has(message['code'])) return;
      found([name, index, 'severity'], NO_OTHER_STOP, message['severity']);
    });
  }
}

/** A sentence gets its text from the catalogue: the text of a document is not trusted. */
function restoreText(
  sentence: unknown,
  path: Path,
  unknownCode: (path: Path, code: unknown) => void,
  ownWords: boolean,
  byCode: boolean,
): void {
  // A finding of a review has its figures in words, which its page writes.
  if (!isPart(sentence) || typeof sentence['code'] !== 'string' || typeof sentence['measure'] === 'string') return;
  const { code, values, text } = sentence;
  const known = textByCode(code, isPart(values) ? (values as MessageValues) : {}, text as string);
  if (known === undefined && ownWords) return;
  if (known === undefined) unknownCode([...path, 'code'], code);
  const message = known ?? textByCode('code-unknown');
  // What this version made already says so, and may be shared and frozen.
  if (text !== message && !(byCode && text === undefined)) sentence['text'] = message;
}

/**
 * What must hold in any document, whatever version made it: ends of intervals around their value, times in order,
 * values that fit their inputs. Sentences get their text from the catalogue, by code.
 *
 * @param document - plain JSON of the library’s own; its texts are written anew in place.
 */
export function checkConsistency(
  document: object,
  found: Found,
  unknownCode: (path: Path, code: unknown) => void = () => undefined,
  ownWords = false,
): void {
  const { answers } = document as { readonly answers?: unknown };
  const places = new Map(
    Array.isArray(answers) ? answers.map((answer: unknown, at) => [`/answers/${at}`, answer]) : [],
  );
  const follow: Follow = (pointer) => places.get(pointer);
  const walk = (part: unknown, path: Path): void => {
    if (Array.isArray(part)) part.forEach((item, index) => walk(item, [...path, index]));
    if (!isPart(part)) return;
    if (isAnswer(part)) checkAnswer(part, follow, path, found);
    else if (typeof part['ref'] === 'string') checkStated(part, follow(part['ref']), path, found);
    for (const [name, item] of Object.entries(part)) {
      const place = [...path, name];
      if (Array.isArray(item) && name === 'events') checkEvents(item, place, found);
      if (Array.isArray(item) && SENTENCES.includes(name)) {
        // A stop stays a stop, even where only another version knows its code.
        const unknown = name === 'stops' ? () => undefined : unknownCode;
        item.forEach((sentence, index) =>
          restoreText(sentence, [...place, index], unknown, ownWords, BY_CODE.includes(name) || path[0] === 'answers'),
        );
      }
      walk(item, place);
    }
  };
  walk(document, []);
}

/** Gathers what does not hold. */
export const finder =
  (issues: InputIssue[]): Found =>
  (path, expected, received) => {
    issues.push(issue('changed-document', path, expected, describe(received)));
  };
