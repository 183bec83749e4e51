import { Math } from '../quantity/maths.js';
import { format, inPractice, unitWords } from '../quantity/format.js';
import type { Unit } from '../quantity/quantities.js';
import { inSystem, type UnitSystem, type WrittenUnit } from '../quantity/unit-system.js';
import { fill, type MessageValues } from './messages.js';

/**
 * Gives the sentence of a code: the English text, or your own for that code, with values in its slots. It knows how
 * numbers are written.
 */
export interface Translate {
  (code: string, english: string, values?: MessageValues): string;
  /** The mark before the decimals of a number. */
  readonly decimalMark: string;
  /** The units that numbers are converted to; left out, each stays in its own. */
  readonly units: UnitSystem | undefined;
}

/** English, each number in its own unit. */
export const english: Translate = Object.assign(
  (_code: string, text: string, values?: MessageValues) => fill(text, values),
  {
    decimalMark: '.',
    units: undefined,
  },
);

/** A sentence of a document: as it is there, unless you give your own. */
export const sentence = (
  translate: Translate,
  { code, text, values }: { readonly code: string; readonly text: string; readonly values?: MessageValues | undefined },
): string => translate(code, '', values) || text;

/** A word that is its own English code, such as a posture or a grade. */
export const named = (translate: Translate, family: 'severity' | 'grade' | 'part' | 'value', id: string): string =>
  translate(`${family}.${id}`, id);

/** Digits with the decimal mark of your language. */
export const marked = ({ decimalMark }: Pick<Translate, 'decimalMark'>, digits: string): string =>
  decimalMark === '.' ? digits : digits.replace('.', decimalMark);

/** A number in your language. */
export const numeral = (translate: Translate, value: number): string => marked(translate, format(value));

/** A number as text: more decimals where it would look like one of `others`, and otherwise at `most` so many. */
type Written = (translate: Translate, value: number, unit: Unit, others?: readonly number[], most?: number) => string;

function written(...[translate, value, unit, others, most]: Parameters<Written>) {
  const converted = inSystem(value, unit, translate.units);
  const whole = unit === '%' && Math.abs(value) >= 10;
  const digits = inPractice(converted.value, converted.unit, others, whole ? 0 : most);
  return { digits: marked(translate, digits), unit: converted.unit };
}

/** A number in the unit that you ask for, with the digits that people use, without the unit. */
export const bareAmount: Written = (...asked) => written(...asked).digits;

/** The same with its unit. */
export const amount: Written = (translate, ...asked) => {
  const { digits, unit } = written(translate, ...asked);
  return digits + translate(`unit.${unit}`, unitWords[unit]);
};

/** A number with its own unit. */
export const ownAmount = (translate: Translate, value: number, unit: WrittenUnit): string =>
  numeral(translate, value) + translate(`unit.${unit}`, unitWords[unit]);

/** A number that is set or computed with: in the unit that you ask for, and in its own where that is another. */
export function amountToSet(translate: Translate, value: number, unit: Unit): string {
  const own = ownAmount(translate, value, unit);
  const other = inSystem(value, unit, translate.units);
  const converted = ownAmount(translate, other.value, other.unit);
  return own === converted ? own : translate('both-units', '{converted} ({own})', { converted, own });
}

type Amount = { readonly value: number; readonly unit: Unit };

/** What is set, or a range of it: `15 kg`, `15–20 kg`; the unit is written once where there is but one. */
export function rangeToSet(translate: Translate, from: Amount, to: Amount | undefined): string {
  const lower = amountToSet(translate, from.value, from.unit);
  if (!to || to.value === from.value) return lower;
  const isAlone = lower === ownAmount(translate, from.value, from.unit);
  const start = isAlone && from.unit === to.unit ? numeral(translate, from.value) : lower;
  return translate('range-to-set', '{from}–{to}', { from: start, to: amountToSet(translate, to.value, to.unit) });
}
