import { describe } from '../answer/issues.js';
import { fill, type Catalogue, type MessageValues, type WriteNumber } from '../answer/messages.js';
import { isOwn } from '../answer/own.js';
import { isPart } from '../answer/part.js';
import { need } from '../answer/needs.js';
import { plainInput } from '../answer/plain-input.js';
import { Reader } from '../answer/reader.js';
import { amountToSet, english, marked, type Translate } from '../answer/translate.js';
import type { Unit } from '../quantity/quantities.js';
import { inSystem, UNIT_SYSTEMS, type UnitSystem } from '../quantity/unit-system.js';
import { messages } from './messages.js';
import { words, type TextCode, type Texts } from './texts.js';
import { OPTIONS_OF, TEXTS_BY_CODE } from './needs.js';

/** How texts are written, for every function that writes some. */
export interface TextOptions {
  /**
   * Texts in another language, by the codes of `messages` and `words`: those of `cuffwork/explain/de`, or your own.
   * English where one is left out.
   */
  readonly locale?: Partial<Texts> | undefined;
  /**
   * `imperial` writes pounds and inches, `metric` kilograms and centimetres; pressures stay in mmHg. A number that is
   * set or computed with is written in its own unit too. Left out, each number stays in its own unit.
   */
  readonly units?: UnitSystem | undefined;
}

/** Says a text of the library by its code alone: the English text is in the catalogues. */
export interface Translator extends Translate {
  (code: TextCode, values?: MessageValues): string;
}

/** Slots for your own text, and for text that is in your language already: what is in them is never looked up as a code. */
const OWN_TEXT = ['exercise', 'name', 'notes', 'why', 'event', 'where', 'text', 'equation', 'version'];

/** The code of the word for what a slot holds: a unit meant by mistake, a field, the kind of a total, a stage, a word of choice, a symptom. */
function codeOf(slot: string, value: string): string {
  if (slot === 'total') return `kind.${value}`;
  if (slot === 'stage' || slot === 'next') return `stage.${value}`;
  if (slot === 'chart') return `chart.${value}`;
  if (slot === 'slip') return `slip.${value}`;
  if (slot === 'field' || slot === 'fields') return `field.${value}`;
  return value.startsWith('symptom-') ? value : `value.${value}`;
}

const inTable = (table: Catalogue, code: string): string | undefined =>
  Object.hasOwn(table, code) ? table[code] : undefined;
const englishOf = (code: string): string | undefined => inTable(messages, code) ?? inTable(words, code);

/** The text of a code that may be none of the library’s; nothing where neither this version nor your texts have it. */
export const textIfKnown = (translate: Translate, code: string, values?: MessageValues): string | undefined =>
  translate(code, englishOf(code) ?? '', values) || undefined;

/** Looks up the English text where it is left out. */
const byCode = (translate: Translate): Translator =>
  Object.assign(
    (code: string, english?: string | MessageValues, values?: MessageValues) =>
      typeof english === 'string' ? translate(code, english, values) : translate(code, englishOf(code) ?? '', english),
    { decimalMark: translate.decimalMark, units: translate.units },
  );

/** Codes of choices, fields and symptoms in a slot are translated too; numbers are written as the language does. */
function translator(locale: Catalogue, units: UnitSystem | undefined): Translate {
  const textOf = (code: string): string | undefined => inTable(locale, code) ?? englishOf(code);
  const decimalMark = inTable(locale, 'number.decimal-mark') ?? words['number.decimal-mark'];
  const inSlot = (slot: string, value: MessageValues[string]): MessageValues[string] => {
    if (typeof value === 'number' || OWN_TEXT.includes(slot)) return value;
    if (typeof value !== 'string') return value.map((one) => inSlot(slot, one)).join(', ');
    if (/^[+−-]?\d+\.\d+$/.test(value)) return marked({ decimalMark }, value);
    return textOf(codeOf(slot, value)) ?? value;
  };
  const write: WriteNumber = (value, unit, digits) => {
    const code = unit === 'lb' ? '[lb_av]' : (unit as Unit);
    const isConverted = inSystem(value, code, units).unit !== code;
    return isConverted
      ? amountToSet(translate, value, code)
      : marked({ decimalMark }, digits) + (unit && (textOf(`unit.${code}`) ?? ''));
  };
  const translate: Translate = Object.assign(
    // A sentence of a document comes without its English text.
    (code: string, text: string, values: MessageValues = {}) =>
      fill(
        inTable(locale, code) ?? (text || (englishOf(code) ?? '')),
        Object.fromEntries(Object.entries(values).map(([slot, value]) => [slot, inSlot(slot, value)])),
        write,
      ),
    { decimalMark, units },
  );
  return translate;
}

/** The options that every function has that writes text. */
export function readTextOptions(reader: Reader): Translator {
  const read = reader.anything('locale', TEXTS_BY_CODE, true);
  const units = reader.optionalChoice('units', UNIT_SYSTEMS);
  const given = read === undefined ? {} : read;
  const texts = isPart(given) ? given : undefined;
  if (!texts || (!isOwn(texts) && Object.values(texts).some((text) => typeof text !== 'string'))) {
    reader.report('wrong-type', 'locale', TEXTS_BY_CODE, describe(given));
  }
  const isEnglish = Object.keys(texts ?? {}).length === 0 && units === undefined;
  return byCode(isEnglish ? english : translator(texts as Catalogue, units));
}

/** How the function of this name is to write, where it has no other options. */
export function textOptions(options: TextOptions, name: string): Translator {
  const reader = new Reader(plainInput(options, need(OPTIONS_OF, { name })));
  const translate = readTextOptions(reader);
  reader.done();
  return translate;
}
