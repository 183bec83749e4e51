/**
 * Words: answers and documents explained as text, Markdown, LaTeX or MathML, with working and references; every sentence
 * by its code, to translate; publications; `checkAnswer` for students.
 *
 * @module cuffwork/explain
 */
export { sources, type SourceId } from '../evidence/sources.js';
export type { Source } from '../evidence/source.js';
export { knownEquations, type KnownEquation } from '../pressure/known-equations.js';
export { checkAnswer, type AnswerCheck } from '../teaching/check-answer.js';
export type { CheckCode } from '../teaching/messages.js';
export { bibliography, type BibliographyOptions, type CslRecord } from './bibliography.js';
export { cite, type Citation } from './cite.js';
export { explain, type ExplainFormat, type ExplainOptions, type PlanDocument } from './explain.js';
export { fill } from './fill.js';
export { labelFields, type LabelledField } from './label-fields.js';
export { messages, type MessageCode } from './messages.js';
export { words, type TextCode, type Texts, type WordCode } from './texts.js';
export type { TextOptions } from './translator.js';
export type { UnitSystem } from '../quantity/unit-system.js';
export { methods } from './methods.js';
export { working } from './working.js';
export type { Worked, Working } from './workings/working.js';
export { toRows, type AnswerRow } from './rows.js';
export { show } from './show.js';
