import type { Answer, AnswerKind } from './answer/answer.js';
import { addAnswerWords, sectionOf } from './answer/explain.js';
import { kindWords } from './answer/kinds.js';
import { InputError, issue } from './answer/issues.js';
import { fill, type Catalogue } from './answer/messages.js';
import { plainInput } from './answer/plain-input.js';
import { Reader } from './answer/reader.js';
import { english, type Say } from './answer/words.js';
import { indent, sectionMarkdown, sectionText, workingLatex, workingMathml } from './answer/write.js';
import type { WeekComparison } from './plan/compare-weeks.js';
import {
  comparisonPage,
  proposalPage,
  recordPage,
  reviewPage,
  screeningPage,
  weeksPage,
} from './plan/document-pages.js';
import { guidelineNames, measures } from './plan/measures.js';
import { planMessages, screeningMessages } from './plan/messages.js';
import type { Proposal } from './plan/next-session.js';
import { planMarkdown, planText, planWorking, type Detail } from './plan/page.js';
import { pageWords } from './plan/page-words.js';
import type { SessionRecord } from './plan/record-session.js';
import type { Review } from './plan/review-plan.js';
import type { Screening } from './plan/screen.js';
import type { Plan } from './plan/types.js';
import type { SessionComparison } from './session/compare.js';
import { frozen } from './quantity/frozen.js';

/** A document of `cuffwork/plan`. */
export type PlanDocument = Plan | Screening | Review | SessionRecord | Proposal | WeekComparison;

const EXPECTED = 'an answer, a comparison or a document of this library';

/** What an explanation is written as. */
export type ExplainFormat = 'text' | 'markdown' | 'latex' | 'mathml';
const FORMATS: readonly ExplainFormat[] = ['text', 'markdown', 'latex', 'mathml'];
const DETAILS: readonly Detail[] = ['full', 'brief'];

/** How {@link explain} is to write. */
export interface ExplainOptions {
  /** Plain text when left out. */
  readonly format?: ExplainFormat | undefined;
  /** `brief`: a plan or a record as a page of what to do, or what was done, and what to watch for; `full` when left out. */
  readonly detail?: 'full' | 'brief' | undefined;
  /**
   * Texts of the caller’s own, by the codes of `messages` and `words`; English where one is left out. For answers,
   * comparisons and every document.
   */
  readonly messages?: Readonly<Record<string, string>> | undefined;
}

/**
 * Every word that {@link explain} says around the sentences of `messages`, by its code: headings, names of answers
 * and fields, grades, units. Translate the texts, keep the `{slots}`, and give them to `explain` with those of
 * `messages`.
 *
 * @example
 * ```ts
 * import { words } from 'cuffwork';
 * words['page.title']; // => 'Session plan'
 * words['kind.training-load']; // => 'Training load'
 * ```
 */
export const words: Readonly<Record<string, string>> = /* @__PURE__ */ (() => {
  const all: Record<string, string> = {};
  addAnswerWords(all);
  for (const [measure, { name, of }] of Object.entries(measures)) {
    all[`measure.${measure}`] = name;
    if (of) all[`measure-of.${measure}`] = of;
  }
  for (const [id, name] of Object.entries(guidelineNames)) all[`guideline.${id}`] = name;
  return frozen(Object.assign(all, pageWords));
})();

/** Slots of text that is the caller’s already, or said already. */
const SAID = ['exercise', 'event', 'where', 'text', 'notes'];

/** A language of the caller’s. Fields, words of choice, symptoms and conditions that stand in a slot are translated too. */
function sayingWith(catalogue: Catalogue): Say {
  const own = (code: string): string | undefined => (Object.hasOwn(catalogue, code) ? catalogue[code] : undefined);
  const inSlots = new Map<string, string>(
    Object.entries({ ...words, ...planMessages, ...screeningMessages }).flatMap(([code, text]) =>
      /^(field\.|value\.|stop-|after-)/.test(code) || Object.hasOwn(screeningMessages, code)
        ? [[text, own(code) ?? text]]
        : [],
    ),
  );
  /** One word, or one with numbers in it. */
  const inPart = (part: string): string => {
    const numbers: string[] = [];
    const pattern = part.replace(/[\d–][\d.s–-]*/g, (number) => `{${numbers.push(number) - 1}}`);
    const said = inSlots.get(pattern);
    return said === undefined ? part : fill(said, Object.fromEntries(numbers.entries()));
  };
  const inSlot = ([slot, value]: [string, string | number]): [string, string | number] => [
    slot,
    typeof value !== 'string' || SAID.includes(slot)
      ? value
      : (inSlots.get(value) ?? value.split(', ').map(inPart).join(', ')),
  ];
  return (code, text, values = {}) => fill(own(code) ?? text, Object.fromEntries(Object.entries(values).map(inSlot)));
}

function readOptions(options: ExplainOptions): { format: ExplainFormat; detail: Detail; say: Say } {
  const copy = plainInput(options, 'options of explain');
  const reader = new Reader(copy);
  const format = reader.optionalChoice('format', FORMATS) ?? 'text';
  const detail = reader.optionalChoice('detail', DETAILS) ?? 'full';
  const expected = 'texts by their codes';
  const read = reader.anything('messages', expected, true);
  const given = read === undefined ? {} : read;
  const texts = typeof given === 'object' && given !== null && !Array.isArray(given) ? given : undefined;
  if (!texts || Object.values(texts).some((text) => typeof text !== 'string')) {
    reader.report('wrong-type', 'messages', expected, 'something else');
  }
  reader.done();
  return { format, detail, say: Object.keys(texts!).length > 0 ? sayingWith(texts as Catalogue) : english };
}

/** Documents that are a page of text, and the one of them that is long enough to be told in brief. */
const pages = {
  screening: (document: object, say: Say) => screeningPage(document as Screening, say),
  review: (document: object, say: Say) => reviewPage(document as Review, say),
  record: (document: object, say: Say, detail: Detail) => recordPage(document as SessionRecord, say, detail),
  proposal: (document: object, say: Say) => proposalPage(document as Proposal, say),
  'week-comparison': (document: object, say: Say) => weeksPage(document as WeekComparison, say),
  'session-comparison': (document: object, say: Say) => comparisonPage(document as SessionComparison, say),
} as const;

/** A page of text in a format: as it stands, or as a block of code. */
function writePage(lines: readonly string[], format: ExplainFormat): string {
  if (format === 'text') return lines.join('\n');
  if (format === 'markdown') return indent(lines, '    ').join('\n');
  throw new InputError([issue('not-one-of', ['format'], "'text' or 'markdown' for this document", `'${format}'`)]);
}

/** An answer, or a plan, in a format. */
const writers = {
  text: {
    answer: (answer: Answer, say: Say) => sectionText(sectionOf(answer, say)).join('\n'),
    plan: (plan: Plan, say: Say, detail: Detail) => planText(plan, say, detail).join('\n'),
  },
  markdown: {
    answer: (answer: Answer, say: Say) => sectionMarkdown(sectionOf(answer, say), 1).join('\n'),
    plan: (plan: Plan, say: Say, detail: Detail) => planMarkdown(plan, say, detail).join('\n'),
  },
  latex: {
    answer: (answer: Answer, say: Say) => workingLatex([{ sections: [sectionOf(answer, say)] }]),
    plan: (plan: Plan, say: Say) => workingLatex(planWorking(plan, say)),
  },
  mathml: {
    answer: (answer: Answer, say: Say) => workingMathml([{ sections: [sectionOf(answer, say)] }]),
    plan: (plan: Plan, say: Say) => workingMathml(planWorking(plan, say)),
  },
} satisfies Record<ExplainFormat, object>;

/**
 * An answer with its working: the formula, the same with the caller’s numbers in it, the error and where it comes
 * from, what is taken for granted, what to watch for, the sources. A plan, a screening, a review, a record or a
 * proposal as a page to take to the gym floor; a comparison of sessions or of weeks as a table.
 *
 * In `brief`, a plan is what the gym floor needs: signs to stop at, for each exercise the cuffs, load, sets, rests and
 * pause, each limb’s restriction, and the cautions; a record is what was done and how it felt. The clock, the notes, the
 * working and the sources stay on the full page.
 *
 * It works on answers and documents that were stored as JSON and read back.
 *
 * Formats: `text`, one line for each fact; `markdown`, with headings, lists and a table for the clock; `latex` and
 * `mathml`, the working alone, of answers and plans: one `aligned` environment, to stand in display mathematics, or one
 * `math` element of presentation MathML. Text of the caller’s own, such as the name of an exercise, is escaped in each.
 *
 * @param answer - an {@link Answer}, a {@link SessionComparison}, or a document of `cuffwork/plan`
 * @param options - `format`; `detail`; `messages`, texts in another language by the codes of `messages` and `words`
 * @returns plain text, one line for each fact, or the format asked for.
 * @throws InputError when it is given none of them, or an option it does not have.
 *
 * @example
 * ```ts
 * import { explain, testedOneRepMax, trainingLoad } from 'cuffwork';
 * const load = trainingLoad({ oneRepMax: testedOneRepMax({ load: 100 }), percent: 20 });
 * explain(load).split('\n').slice(0, 4); // => ['Training load: 20 kg (95 % interval 18.35 to 21.65 kg)', '  w = p / 100 × M', '    = 20 / 100 × 100', '    = 20 kg']
 * explain(load, { format: 'latex' }).split('\n')[2]; // => 'w & = \\frac{p}{100} \\times M \\\\'
 * explain(load, { messages: { 'kind.training-load': 'Trainingslast' } }).split(':')[0]; // => 'Trainingslast'
 * ```
 */
export function explain(answer: Answer | SessionComparison | PlanDocument, options: ExplainOptions = {}): string {
  const copy = plainInput(answer, EXPECTED) as { readonly document?: string; readonly kind?: AnswerKind };
  const { document, kind } = copy;
  const { format, detail, say } = readOptions(options);
  const page = format === 'text' || format === 'markdown';
  if (detail === 'brief' && !(page && (document === 'plan' || document === 'record'))) {
    throw new InputError([
      issue('not-one-of', ['detail'], "'brief' for the page of a plan or a record alone", "'brief'"),
    ]);
  }
  try {
    if (document === 'plan') return writers[format].plan(copy as Plan, say, detail);
    if (document !== undefined && Object.hasOwn(pages, document)) {
      return writePage(pages[document as keyof typeof pages](copy, say, detail), format);
    }
    if (kind !== undefined && Object.hasOwn(kindWords, kind)) return writers[format].answer(copy as Answer, say);
  } catch (error) {
    // A document that was cut short or changed by hand breaks somewhere inside; that is an input error too.
    if (!(error instanceof TypeError)) throw error;
  }
  throw new InputError([issue('wrong-type', [], EXPECTED, 'something else')]);
}
