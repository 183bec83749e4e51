import type { Answer, Assumption, Caution } from '../answer/answer.js';
import { describe, InputError, isInputError, refuse, type InputIssue } from '../answer/issues.js';
import { isPart, type Part } from '../answer/part.js';
import { plainInput } from '../answer/plain-input.js';
import { amountToSet, named, rangeToSet, sentence } from '../answer/translate.js';
import { measures, sideWords } from '../plan/measures.js';
import { documentMessages } from '../plan/document-messages.js';
import { printable } from '../plan/read-document.js';
import type { SetGoal } from '../plan/proposal.js';
import type { ScreeningFinding } from '../plan/questions.js';
import type { ReviewFinding } from '../plan/review-plan.js';
import { inForce, type Stop } from '../plan/stops.js';
import { loadUnitCode, type LoadUnit } from '../quantity/quantities.js';
import { assumptionText, numberWords } from './section.js';
import { issueText, labelText, moreText } from './issue-text.js';
import { present } from './blocks.js';
import { kindWords } from './kinds.js';
import { SHOWN } from './needs.js';
import { setsBriefly } from './pages/exercises.js';
import { answerAmount, pressure } from './pages/parts.js';
import { findingText } from './pages/review.js';
import { foundText } from './pages/screening.js';
import { textIfKnown, textOptions, type TextOptions, type Translator } from './translator.js';

export const isAnswer = (value: unknown): value is Answer =>
  isPart(value) &&
  typeof value['kind'] === 'string' &&
  Object.hasOwn(kindWords, value['kind']) &&
  typeof value['value'] === 'number' &&
  typeof value['unit'] === 'string';

export const parts = (value: unknown): Part[] => (Array.isArray(value) ? value.filter(isPart) : []);
export const text = (value: unknown): string => (typeof value === 'string' ? value : '');

/** How many cautions and stops there are to read; empty where there are none. */
function toRead(translate: Translator, cautions: readonly Part[]): string {
  const counts = (['stop', 'caution'] as const).map((severity) => {
    const count = cautions.filter((one) => one['severity'] === severity).length;
    return count > 0 && translate(count === 1 ? `show.${severity}-one` : `show.${severity}`, { count });
  });
  const [first, second] = present(...counts);
  if (first === undefined) return '';
  return translate('show.read', { list: second === undefined ? first : translate('show.and', { first, second }) });
}

function answerLine(translate: Translator, answer: Answer): string {
  return present(
    `${translate(`kind.${answer.kind}`)} ${numberWords(translate, answer)}`,
    text(answer.equation),
    named(translate, 'grade', text(answer.evidence)),
    toRead(translate, parts(answer.cautions)),
  ).join(' · ');
}

function itemLine(translate: Translator, item: Part): string {
  const { exercise, limb, side, target, load, upperLoad, totals, action } = item;
  const done = isPart(item['done']) ? item['done'] : {};
  const { heldMmHg, load: lifted, unit } = done;
  const sets = parts(done['sets'] ?? item['sets']) as readonly SetGoal[];
  const time = isPart(totals) ? totals['restrictionTime'] : undefined;
  return present(
    text(side) && text(limb) ? sideWords(translate, text(side), text(limb)) : text(limb),
    text(exercise),
    isAnswer(target) &&
      translate('show.cuff', { value: pressure(translate, typeof heldMmHg === 'number' ? heldMmHg : target.value) }),
    typeof lifted === 'number'
      ? translate('show.load', { value: amountToSet(translate, lifted, loadUnitCode(unit as LoadUnit)) })
      : isAnswer(load) &&
          translate('show.load', { value: rangeToSet(translate, load, isAnswer(upperLoad) ? upperLoad : undefined) }),
    sets.length > 0 && setsBriefly(translate, sets),
    isAnswer(time) && time.value > 0 && translate('show.restriction', { value: answerAmount(translate, time) }),
    textIfKnown(translate, `page.propose-${text(action)}`),
  ).join(' · ');
}

/** The stops of a part of a document that are in force. */
export const stopsIn = (part: Part): readonly Stop[] =>
  inForce(parts(part['stops']).map(({ lifted, ...stop }) => (isPart(lifted) ? { ...stop, lifted } : stop)) as never);

/** What a document is called. */
function titleOf(translate: Translator, { document, of }: Part): string {
  const name = document === 'plan' ? 'title' : document === 'review' ? `review-${text(of)}` : text(document);
  return textIfKnown(translate, `page.${name}`) ?? name;
}

/** A document in a few lines: while a stop is in force its stops, and no setting; else a line for each item. */
function documentLines(translate: Translator, document: Part): string[] {
  const stops = stopsIn(document);
  const title = present(titleOf(translate, document), text(document['date'])).join(' ');
  if (stops.length > 0) {
    const severity = named(translate, 'severity', 'stop');
    const lines = stops.map((stop) =>
      translate('with-severity', { severity, text: sentence(translate, stop) || stop.code }),
    );
    return [translate('show.stopped', { title }), ...lines];
  }
  const outcome = textIfKnown(translate, `page.${text(document['outcome'])}`);
  const head = present(title, outcome, toRead(translate, parts(document['cautions']))).join(' · ');
  const found = outcome === undefined ? [] : parts(document['findings']);
  const findings = found.map((one) => foundText(translate, one as unknown as ScreeningFinding));
  return [head, ...findings, ...parts(document['items']).map((item) => itemLine(translate, item))];
}

/** What has a code, in words; nothing for what has none. */
function codeText(translate: Translator, part: Part): string | undefined {
  const { code, path, expected, received, question, measure, text: english } = part;
  if (typeof code !== 'string') return undefined;
  if (Array.isArray(path) && typeof expected === 'string' && typeof received === 'string')
    return issueText(translate, part as unknown as InputIssue);
  if (typeof question === 'string') return translate(`ask-${code}`, question);
  if (typeof measure === 'string' && Object.hasOwn(measures, measure) && Object.hasOwn(documentMessages, code))
    return findingText(translate, part as unknown as ReviewFinding);
  if (typeof english === 'string') return sentence(translate, part as unknown as Caution);
  return assumptionText(translate, part as unknown as Assumption);
}

/** Everything that is wrong with an input, a line each. */
const issueLines = (translate: Translator, issues: readonly Part[], more: number): string[] => [
  ...issues.map((one) => issueText(translate, one as unknown as InputIssue)),
  ...(more > 0 ? [moreText(translate, more)] : []),
];

function lines(translate: Translator, shown: unknown): string[] {
  if (Array.isArray(shown)) return shown.flatMap((one) => lines(translate, one));
  if (isPart(shown)) {
    const { document, name, label, issues, more } = shown;
    if (Array.isArray(issues)) return issueLines(translate, parts(issues), typeof more === 'number' ? more : 0);
    if (isAnswer(shown)) return [answerLine(translate, printable(shown as never) as Answer)];
    if (typeof document === 'string') return documentLines(translate, printable(shown as never) as Part);
    const coded = codeText(translate, shown);
    if (coded !== undefined) return [coded];
    // A field of a form.
    if (typeof name === 'string' && typeof shown['required'] === 'boolean')
      return [labelText(translate, name) ?? (text(label) || name)];
  }
  refuse('wrong-type', [], SHOWN, describe(shown));
}

/**
 * Anything that the library gives, as text, in your language and units: an answer as one short line, a document as a
 * few, an issue, a caution, an assumption, a finding or a question as its sentence, a field of a form as its label. Of
 * an {@link InputError}, of what `attempt` returns for a bad input, and of a list, a line each.
 *
 * Of an answer: what it is, the number with unit and interval, the equation, its evidence grade, and how many cautions
 * to read. `explain` shows everything.
 *
 * A document is verified as `readDocument` does. While a stop is in force, it shows its stops and no setting.
 *
 * @param shown - an answer, a document, an issue, a caution, an assumption, a finding, a question, a field, or a list
 * @param options - `locale`, texts in another language; `units`, metric or imperial
 * @returns the line or lines.
 * @throws InputError for what is none of them, and for a document that was changed by hand
 *
 * @example
 * ```ts
 * import { attempt, measuredOcclusionPressure, testedOneRepMax } from 'cuffwork';
 * import { show } from 'cuffwork/explain';
 * import { de } from 'cuffwork/explain/de';
 * const occlusion = measuredOcclusionPressure({ valueMmHg: 168, method: 'doppler', limb: 'leg' });
 * show(occlusion); // => 'Limb occlusion pressure 168 mmHg (95 % interval 152–186 mmHg) · measured-doppler · derived'
 * show(attempt(testedOneRepMax, { load: -5 }), { locale: de }); // => 'Last – erwartet: eine Zahl von 0,1 bis 2000 kg; angegeben: -5 kg.'
 * ```
 */
export function show(shown: object, options: TextOptions = {}): string {
  const translate = textOptions(options, 'show');
  const given = isInputError(shown) ? { issues: shown.issues, more: shown.more } : shown;
  return lines(translate, plainInput(given, SHOWN)).join('\n');
}
