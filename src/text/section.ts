import { reference, sources, type SourceId } from '../evidence/sources.js';
import { format } from '../quantity/format.js';
import { inSystem } from '../quantity/unit-system.js';
import { loadUnitCode, quantities, type LoadUnit, type Unit } from '../quantity/quantities.js';
import {
  percentReached,
  type Answer,
  type Assumption,
  type Caution,
  type ReachedPressure,
  type Symbols,
} from '../answer/answer.js';
import { calculation, printedSum, type Calculation } from './arithmetic.js';
import { typeset, type Names } from './formula.js';
import { kindWords } from './kinds.js';
import { sumsOf, type Sum } from './sums.js';
import { fill, type MessageValues } from '../answer/messages.js';
import {
  amount,
  amountToSet,
  bareAmount,
  marked,
  named,
  numeral,
  ownAmount,
  sentence,
  type Translate,
} from '../answer/translate.js';
import { planMessages } from '../plan/messages.js';
import { assumptionTexts } from './assumptions.js';
import { textIfKnown, type Translator } from './translator.js';
import { workingBy } from './working.js';

/** An answer explained, before it is written as text or in another format. */
export interface Section extends Calculation {
  readonly title: string;
  /** Symbol of the answer. */
  readonly symbol: string;
  /** The mark before the decimals of a number. */
  readonly decimalMark: string;
  readonly formula: string;
  /** Symbols that are written otherwise than in `formula`. */
  readonly names: Names;
  readonly result: { readonly number: string; readonly unit: string };
  /** What was done to the result: rounding, the percentage reached. */
  readonly notes: readonly string[];
  /** Each symbol with its name and value. */
  readonly glossary: readonly string[];
  /** `glossary` as one sentence. */
  readonly with: string;
  /** The standard deviation with its parts, and the arithmetic behind interval, true percentage and chance. */
  readonly deviation: readonly string[];
  readonly sums: readonly Sum[];
  /** What the answer rests on: equation, grade, assumptions. */
  readonly basis: readonly string[];
  readonly cautions: readonly string[];
  readonly sources: readonly string[];
  /** The answers it was worked out from. */
  readonly inner: readonly Section[];
}

const isAnswer = (value: unknown): value is Answer => Object.hasOwn(Object(value) as object, 'equation');

/** The codes in the values of an assumption as words: fields, a chart, the sample of an equation, a load with its unit. */
function inWords(translate: Translate, values: MessageValues): MessageValues {
  const { fields, chart, target, unit, equation } = values;
  const known = (code: string, otherwise: string): string => textIfKnown(translate, code) ?? otherwise;
  const sample = textIfKnown(translate, `sample.${String(equation)}`);
  return {
    ...values,
    ...(Array.isArray(fields) && {
      fields: (fields as readonly string[]).map((field) => known(`field.${field}`, field)).join(', '),
    }),
    ...(typeof chart === 'string' && { chart: known(`chart.${chart}`, chart) }),
    ...(typeof target === 'number' && { target: amount(translate, target, loadUnitCode(unit as LoadUnit)) }),
    ...(sample !== undefined && { sample }),
  };
}

/** An assumption as a sentence; one that only another version knows says so. */
export function assumptionText(translate: Translate, { code, values = {} }: Assumption): string {
  if (!Object.hasOwn(assumptionTexts, code)) return translate('code-unknown', planMessages['code-unknown']);
  return translate(code, assumptionTexts[code], inWords(translate, values));
}

/** `assumption: …` */
export const assumedLine = (translate: Translator, assumption: Assumption): string =>
  translate('assumption', { text: assumptionText(translate, assumption) });

/** `caution: …` */
export const cautionLine = (translate: Translator, printed: Caution): string =>
  translate('with-severity', {
    severity: named(translate, 'severity', printed.severity),
    text: sentence(translate, printed),
  });

/** `160 mmHg (95 % interval 75–245 mmHg)`; what was rounded to what can be set has no interval of its own. */
export function numberWords(translate: Translator, { value, unit, lower, upper, rounding }: Answer): string {
  if (rounding) return amountToSet(translate, value, unit);
  const number = amount(translate, value, unit);
  if (typeof lower !== 'number' || typeof upper !== 'number') return number;
  const most = unit === 'kg' || unit === '[lb_av]' ? 1 : undefined;
  return translate('with-interval', {
    value: number,
    lower: bareAmount(translate, lower, unit, [], most),
    upper: amount(translate, upper, unit, [], most),
  });
}

/** `Limb occlusion pressure: 160 mmHg (95 % interval 75–245 mmHg)` */
const titleOf = (answer: Answer, translate: Translator): string =>
  translate('titled-answer', { name: translate(`kind.${answer.kind}`), value: numberWords(translate, answer) });

/** The unit of an input that no vocabulary has: a day has that of its week, one side that of the other. */
const unitOfField = (field: string, { unit }: Answer): Unit | undefined => (/^day\d$/.test(field) ? unit : undefined);

/** The numbers of a formula’s symbols, how each symbol is written, and a line of what it is. */
function symbolsOf(answer: Answer, symbols: Symbols, translate: Translator) {
  const values: Record<string, number | string> = {};
  const names: Record<string, string> = {};
  const glossary: string[] = [];
  const { inputs, kind } = answer;
  const kinds = Object.values(inputs).flatMap((given) => (isAnswer(given) ? [given.kind] : []));
  for (const [symbol, use] of Object.entries(symbols)) {
    const field = typeof use === 'string' ? use : use.field;
    const given = inputs[field];
    const quantity = Object.hasOwn(quantities, field) ? quantities[field as keyof typeof quantities] : undefined;
    const name = textIfKnown(translate, `field.${field}`) ?? translate(field, field);
    const add = (value: number | string, printed: string): void => {
      values[symbol] = value;
      glossary.push(`${names[symbol] ?? symbol} ${name} ${printed}`);
    };
    if (isAnswer(given)) {
      // One symbol for one thing, in every answer, unless two of its kind meet.
      if (given.kind !== kind && kinds.filter((other) => other === given.kind).length === 1) {
        names[symbol] = kindWords[given.kind].symbol;
      }
      add(given.rounding?.from ?? given.value, amountToSet(translate, given.value, given.unit));
    } else if (typeof given === 'number') {
      const pounds = quantity?.unit === 'kg' && inputs['unit'] === 'lb';
      const unit: Unit | undefined = pounds ? '[lb_av]' : (quantity?.unit ?? unitOfField(field, answer));
      add(given, unit ? amountToSet(translate, given, unit) : numeral(translate, given));
    } else if (typeof use !== 'string') {
      const number = use.codes[String(given)] ?? NaN;
      add(number, translate('coded-as', { value: String(given), number: format(number) }));
    } else {
      add(String(given), typeset(printedSum(String(given), format), undefined, translate.decimalMark));
    }
  }
  return { values, names, glossary };
}

function notesOf({ rounding, value, unit, reached }: Answer, translate: Translator): string[] {
  const notes: string[] = [];
  if (rounding) {
    const { step, to } = rounding;
    const steps =
      step !== undefined
        ? translate('in-steps', { step: amountToSet(translate, step, unit) })
        : translate('weights-there-are');
    notes.push(translate(`rounded-${to}`, { steps, value: amountToSet(translate, value, unit) }));
  }
  if (reached) {
    const tenths = (percent: number): string => marked(translate, percent.toFixed(1));
    const share = (percent: number): string => tenths(percent) + translate('unit.%');
    const { lower, upper } = reached;
    const percent = share(percentReached(reached));
    if (lower === undefined) notes.push(translate('that-is', { percent }));
    else {
      const range =
        upper === undefined
          ? translate('range-from', { lower: share(lower) })
          : translate('range-between', { lower: tenths(lower), upper: share(upper) });
      notes.push(translate('that-is-perhaps', { percent, range }));
    }
    const { occlusionChancePercent: chance, highestMmHg: highest }: Partial<ReachedPressure> = reached;
    if (chance !== undefined) {
      notes.push(
        translate('chance-that-closes', { chance: chance < 0.05 ? translate('chance-very-small') : share(chance) }),
      );
    }
    if (highest !== undefined) {
      notes.push(translate('highest-under-limit', { value: amount(translate, highest, unit) }));
    }
  }
  return notes;
}

/** An answer put together by hand may leave the slots of a sentence open. */
const filled = (printed: Caution): Caution => ({ ...printed, text: fill(printed.text, printed.values) });

/** Lines that were not printed yet; what answers share is printed once. */
const notPrinted = (lines: readonly string[], printed: Set<string>): string[] =>
  lines.filter((line) => !printed.has(line) && printed.add(line));

/** A standard deviation and its parts: in the unit of the answer, or as shares of its value. */
function deviationLine({ errors, standardDeviation, scale, unit }: Answer, translate: Translator): string[] {
  const log = scale === 'log';
  const size = (deviation: number): string =>
    log
      ? ownAmount(translate, 100 * deviation, '%')
      : numeral(translate, inSystem(deviation, unit, translate.units).value);
  const parts = errors
    ?.map(
      (e) =>
        `${named(translate, 'part', e.part)} ${size(e.standardDeviation)} (${named(translate, 'grade', e.evidence)})`,
    )
    .join(', ');
  if (!parts) return [];
  const ending = log ? '' : translate(`unit.${inSystem(0, unit, translate.units).unit}`);
  const value = size(standardDeviation!) + ending;
  return [translate(log ? 'share-deviation-from' : 'deviation-from', { value, parts })];
}

function basisOf(answer: Answer, translate: Translator, printed: Set<string>): string[] {
  const { equation, evidence, assumptions } = answer;
  const meaning = translate(`meaning.${evidence}`);
  const inherited = evidence !== 'definition' && workingBy(answer)?.arithmetic === true;
  return [
    translate(inherited ? 'equation-and-grade-of-parts' : 'equation-and-grade', {
      equation,
      grade: named(translate, 'grade', evidence),
      meaning,
    }),
    ...notPrinted(
      assumptions.map((one) => assumedLine(translate, one)),
      printed,
    ),
  ];
}

/** The references of the sources that the library has. */
export const sourceLines = (ids: readonly SourceId[]): string[] =>
  ids.filter((id) => Object.hasOwn(sources, id)).map((id) => `${id}: ${reference(id)}`);

/** An answer with its working and what it rests on, and no more; without what was printed before. */
export function workingOf(answer: Answer, translate: Translator, printed = new Set<string>()): Section {
  const { unit, value, rounding, kind } = answer;
  const working = workingBy(answer);
  const { formula, symbols } = working ?? { formula: format(rounding?.from ?? value), symbols: {} };
  const { values, names, glossary } = symbolsOf(answer, symbols, translate);
  const exact = rounding?.from ?? value;
  const number = format(exact);
  const deviation = deviationLine(answer, translate);
  const sums = sumsOf(answer, working, { values, names }, translate);
  return {
    title: titleOf(answer, translate),
    symbol: kindWords[kind].symbol,
    decimalMark: translate.decimalMark,
    formula,
    names,
    ...calculation(formula, values, exact),
    result: { number, unit: translate(`unit.${unit}`) },
    notes: notesOf(answer, translate),
    glossary,
    with: translate('with-symbols', { list: glossary.join(', ') }),
    deviation,
    sums,
    basis: basisOf(answer, translate, printed),
    cautions: [],
    sources: [],
    inner: [],
  };
}

/** The sum of an answer alone. */
export const sumOf = (answer: Answer, translate: Translator): Section => ({
  ...workingOf(answer, translate),
  deviation: [],
  sums: [],
  basis: [],
});

/** The answers that an answer was worked out from. */
export const partsOf = ({ inputs }: Answer): Answer[] => Object.values(inputs).flat().filter(isAnswer);

/** The stops of an answer and of what it was worked out from, each once: they come before its number. */
export const stopsOfAnswer = (answer: Answer, translate: Translator): string[] => [
  ...new Set([
    ...answer.cautions.filter(({ severity }) => severity === 'stop').map((one) => cautionLine(translate, filled(one))),
    ...partsOf(answer).flatMap((part) => stopsOfAnswer(part, translate)),
  ]),
];

/** An answer explained in full, with the answers it was worked out from. */
export function sectionOf(answer: Answer, translate: Translator, printed = new Set<string>()): Section {
  const { cautions } = answer;
  return {
    ...workingOf(answer, translate, printed),
    cautions: notPrinted(
      cautions.map((one) => cautionLine(translate, filled(one))),
      printed,
    ),
    sources: notPrinted(
      sourceLines(workingBy(answer)?.sources ?? []).map((text) => translate('from-source', { text })),
      printed,
    ),
    inner: partsOf(answer).map((part) => sectionOf(part, translate, printed)),
  };
}
