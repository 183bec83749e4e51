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
  'with-interval': '{value} (95 % interval {lower} to {upper})',
  'titled-answer': '{name}: {value}',
  'range-between': '{lower} to {upper}',
  'range-from': '{lower} and above',
  'rounded-down': 'rounded down, {steps}: {value}',
  'rounded-nearest': 'brought to the nearest, {steps}: {value}',
  'in-steps': 'steps of {step}',
  'weights-there-are': 'the weights there are',
  'that-is': 'that is {percent}',
  'that-is-perhaps': 'that is {percent}; of the true value it may be {range}',
  'chance-that-closes': 'the chance that it closes the artery fully is {chance}',
  'chance-very-small': 'less than 0.1 %',
  'highest-under-limit': 'highest setting under the limit of that chance: {value}',
  'with-symbols': 'with {list}',
  'coded-as': '{value} (coded {number})',
  'deviation-from': 'standard deviation {value}, from: {parts}',
  'equation-and-grade': 'equation {equation}; evidence {grade}: {meaning}',
  'taken-for-granted': 'taken for granted: {text}',
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
  'part.posture': 'posture',
  'part.circumference': 'circumference',
  'part.systolic': 'systolic',
  'part.diastolic': 'diastolic',
  'part.calibration': 'calibration',
  'part.between-days': 'between-days',
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
  'value.narrower': 'narrower',
  'value.wider': 'wider',
  'value.overshoots': 'overshoots',
  'value.undershoots': 'undershoots',
  'value.yes': 'yes',
  'value.no': 'no',
  'value.unknown': 'unknown',
  'value.continuous': 'continuous',
  'value.intermittent': 'intermittent',
  'value.partial': 'partial',
  'value.partial-at': 'partial ({0} % in the rests)',
  'value.of-occlusion': '{0} % of occlusion pressure',
  'value.no-cuff': 'no cuff',
  'value.two-sessions': '{0} and {1}',
  'value.posture': 'the posture',
  'value.cuff': 'the cuff',
  'value.limb-size': 'the size of the limb',
  'value.mechanical': 'mechanical',
  'value.restriction': 'restriction',
  'value.session': 'session',
} as const satisfies Catalogue;

/** A word that is its own English code, such as a posture or a grade. */
export const named = (say: Say, family: 'severity' | 'grade' | 'part' | 'value', id: string): string =>
  say(`${family}.${id}`, id);
