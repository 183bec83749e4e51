import { fill, type Catalogue, type MessageValues } from './messages.js';

/**
 * Says what stands behind a code: the English text, or the caller’s own for that code, with values in its slots.
 */
export type Say = (code: string, english: string, values?: MessageValues) => string;

/** Says everything in English. */
export const english: Say = (_code, text, values) => fill(text, values);

/** The words of one table, by their codes alone. */
export const saying =
  <T extends Catalogue>(say: Say, table: T) =>
  (code: keyof T & string, values?: MessageValues): string =>
    say(code, table[code]!, values);

/** A sentence of a document: as it stands there, unless the caller has one of their own. */
export const sentence = (
  say: Say,
  { code, text, values }: { readonly code: string; readonly text: string; readonly values?: MessageValues },
): string => say(code, '', values) || text;

/** What an explanation says around an answer: headings, frames, and the words that stand in slots. */
export const explainWords = {
  'with-interval': '{value} (95 % interval {lower}–{upper})',
  'titled-answer': '{name}: {value}',
  'range-between': '{lower}–{upper}',
  'range-from': '{lower} and above',
  'rounded-down': 'rounded down, {steps}: {value}',
  'rounded-nearest': 'rounded to the nearest, {steps}: {value}',
  'in-steps': 'steps of {step}',
  'weights-there-are': 'loads you can set',
  'that-is': 'that is {percent}',
  'that-is-perhaps': 'that is {percent}; 95 % interval {range}',
  'chance-that-closes': 'the chance that it closes the artery fully is {chance}',
  'chance-very-small': 'less than 0.1 %',
  'highest-under-limit': 'highest setting under the limit of that chance: {value}',
  'with-symbols': 'with {list}',
  'coded-as': '{value} (coded {number})',
  'deviation-from': 'standard deviation {value}, from: {parts}',
  'share-deviation-from': 'standard deviation {value} of the value (on a log scale), from: {parts}',
  'equation-and-grade': 'equation {equation}; evidence {grade}: {meaning}',
  assumption: 'assumption: {text}',
  'with-severity': '{severity}: {text}',
  'from-source': 'source {text}',
  'severity.note': 'note',
  'severity.caution': 'caution',
  'severity.stop': 'stop',
  'grade.published': 'published',
  'grade.secondary': 'secondary',
  'grade.derived': 'derived',
  'grade.unconfirmed': 'unconfirmed',
  'grade.practice': 'practice',
  'grade.definition': 'definition',
  'part.equation': 'equation',
  'part.measurement': 'measurement',
  'part.width-correction': 'width-correction',
  'part.occlusion': 'occlusion',
  'part.retest': 'retest',
  'part.reserve': 'reserve',
  'part.maximum': 'maximum',
  'part.laboratory': 'laboratory',
  'part.people': 'people',
  'part.posture': 'posture',
  'part.circumference': 'circumference',
  'part.systolic': 'systolic',
  'part.diastolic': 'diastolic',
  'part.calibration': 'calibration',
  'part.between-days': 'between-days',
  'part.other-side': 'other-side',
  'part.sample': 'sample',
  'value.arm': 'arm',
  'value.leg': 'leg',
  'value.left': 'left',
  'value.right': 'right',
  'value.supine': 'supine',
  'value.seated': 'seated',
  'value.standing': 'standing',
  'value.male': 'male',
  'value.female': 'female',
  'value.yes': 'yes',
  'value.no': 'no',
  'value.unknown': 'unknown',
  'value.systolic': 'systolic',
  'value.diastolic': 'diastolic',
  'value.both': 'both',
  'value.continuous': 'continuous',
  'value.intermittent': 'intermittent',
  'value.partial': 'partial',
} as const satisfies Catalogue;

/** A word that is its own English code, such as a posture or a grade. */
export const named = (say: Say, family: 'severity' | 'grade' | 'part' | 'value', id: string): string =>
  say(`${family}.${id}`, id);
