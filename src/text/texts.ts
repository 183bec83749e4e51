import type { AnswerKind } from '../answer/answer.js';
import * as answerNeeds from '../answer/needs.js';
import type { Need } from '../answer/needs.js';
import { grades, type Grade } from '../evidence/grades.js';
import { guidelineNames, measures, type Measure } from '../plan/measures.js';
import * as planNeeds from '../plan/needs.js';
import { progression, type Stage } from '../plan/next-stage.js';
import { planValueWords } from '../plan/messages.js';
import * as pressureNeeds from '../pressure/needs.js';
import { unitWords } from '../quantity/format.js';
import { frozen } from '../quantity/frozen.js';
import { quantities, type QuantityName } from '../quantity/quantities.js';
import type { WrittenUnit } from '../quantity/unit-system.js';
import {
  oneRepMaxEquations,
  relativeLoadEquations,
  type OneRepMaxEquationId,
  type RelativeLoadEquationId,
} from '../strength/equations.js';
import { charts, type RepetitionChart } from '../strength/repetitions.js';
import * as sessionNeeds from '../session/needs.js';
import * as strengthNeeds from '../strength/needs.js';
import * as studyNeeds from '../study/needs.js';
import { kindWords } from './kinds.js';
import type { MessageCode } from './messages.js';
import * as textNeeds from './needs.js';
import { pageWords } from './page-words.js';
import { choiceWords, explainWords, fieldWords, labelWords, receivedWords } from './words.js';
import { where } from '../answer/form.js';

type MeasureOf = { [M in Measure]: (typeof measures)[M]['of'] extends '' ? never : M }[Measure];

/** The constants of a layer that are asked for: all of its file but functions. */
const needsOf = <L extends object>(layer: L) =>
  Object.values(layer as Record<string, unknown>).filter(Array.isArray) as unknown[] as Extract<L[keyof L], Need>[];

/** What any input is asked for: codes and English words. */
const needs = [
  ...needsOf(answerNeeds),
  ...needsOf(pressureNeeds),
  ...needsOf(strengthNeeds),
  ...needsOf(sessionNeeds),
  ...needsOf(planNeeds),
  ...needsOf(studyNeeds),
  ...needsOf(textNeeds),
];

/** The code of what is asked for. */
type RequirementCode = (typeof needs)[number][0];

/** The code of a word or a frame in {@link words}. */
export type WordCode =
  | keyof typeof explainWords
  | keyof typeof pageWords
  | keyof typeof planValueWords
  | `kind.${AnswerKind}`
  | `field.${QuantityName | keyof typeof fieldWords}`
  | `label.${keyof typeof labelWords}`
  | `chart.${RepetitionChart}`
  | `stage.${Stage['id']}`
  | `meaning.${Grade}`
  | `unit.${WrittenUnit}`
  | `measure.${Measure}`
  | `measure-of.${MeasureOf}`
  | `guideline.${keyof typeof guidelineNames}`
  | `requirement.${RequirementCode}`
  | `received.${keyof typeof receivedWords}`
  | `where.${keyof typeof where}`
  | `choice.${keyof typeof choiceWords}`
  | `sample.${OneRepMaxEquationId | RelativeLoadEquationId}`;

/** The code of anything in words: a sentence of {@link messages}, or a word of {@link words}. */
export type TextCode = MessageCode | WordCode;

/**
 * Every text of the library in one language, by its code: what a catalogue holds. `satisfies Texts` finds what yours
 * leaves out.
 */
export type Texts = Readonly<Record<TextCode, string>>;

const named = <K extends string>(family: string, names: Readonly<Record<K, string>>): Record<string, string> =>
  Object.fromEntries(Object.entries<string>(names).map(([id, name]) => [`${family}.${id}`, name]));
const namesOf = (records: Readonly<Record<string, { readonly name: string }>>): Record<string, string> =>
  Object.fromEntries(Object.entries(records).map(([id, { name }]) => [id, name]));

/**
 * Every word that {@link explain} writes around the sentences of `messages`, by its code: headings, names of answers
 * and fields, grades, units, and the decimal mark. Translate the texts, keep the `{slots}`, and give them to `explain`
 * with those of `messages`.
 *
 * @example
 * ```ts
 * import { words } from 'cuffwork/explain';
 * words['page.title']; // => 'Session plan'
 * words['kind.training-load']; // => 'Training load'
 * ```
 */
export const words: Readonly<Record<WordCode, string>> = frozen({
  ...explainWords,
  ...named('kind', namesOf(kindWords)),
  ...named('field', { ...namesOf(quantities), ...fieldWords }),
  ...named('label', labelWords),
  ...Object.fromEntries(needs.map(([code, english]) => [`requirement.${code}`, english])),
  ...named('received', receivedWords),
  ...named('where', where),
  ...named('choice', choiceWords),
  ...named('chart', namesOf(charts)),
  ...Object.fromEntries(progression.map(({ id, name }) => [`stage.${id}`, name])),
  ...named('meaning', grades),
  ...named('unit', unitWords),
  ...named('measure', namesOf(measures)),
  ...named('guideline', guidelineNames),
  ...Object.fromEntries(Object.entries(measures).flatMap(([id, { of }]) => (of ? [[`measure-of.${id}`, of]] : []))),
  ...Object.fromEntries(
    [...oneRepMaxEquations, ...relativeLoadEquations].map(({ id, sample }) => [`sample.${id}`, sample]),
  ),
  ...pageWords,
  ...planValueWords,
}) as Record<WordCode, string>;
