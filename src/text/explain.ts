import type { Answer, AnswerKind } from '../answer/answer.js';
import { describe, refuse } from '../answer/issues.js';
import { isOwn } from '../answer/own.js';
import { plainInput } from '../answer/plain-input.js';
import { Reader } from '../answer/reader.js';
import type { SessionComparison } from '../plan/compare-sessions.js';
import type { WeekComparison } from '../plan/compare-weeks.js';
import { pageMarkdown, pageText, type Block } from './blocks.js';
import type { LighterOptions } from '../plan/lighten.js';
import type { Proposal } from '../plan/proposal.js';
import { printable } from '../plan/read-document.js';
import type { SessionRecord } from '../plan/record.js';
import type { Review } from '../plan/review-plan.js';
import type { DayCheck, Screening } from '../plan/questions.js';
import type { ExpandedPlan, Plan } from '../plan/types.js';
import { kindWords } from './kinds.js';
import { answerHtml, pageHtml } from './html.js';
import { comparisonBlocks, lighterBlocks } from './pages/comparison.js';
import { prescriptionBlocks } from './pages/exercises.js';
import type { Detail } from './pages/parts.js';
import { planBlocks } from './pages/plan.js';
import { planWorking } from './pages/plan-working.js';
import { proposalBlocks } from './pages/proposal.js';
import { recordBlocks } from './pages/record.js';
import { reviewBlocks } from './pages/review.js';
import { dayCheckBlocks, screeningBlocks } from './pages/screening.js';
import { weeksBlocks } from './pages/weeks.js';
import { sectionOf, stopsOfAnswer, type Section } from './section.js';
import { readTextOptions, type TextOptions, type Translator } from './translator.js';
import { markdownPoints, sectionMarkdown, sectionText, workingLatex, workingMathml, type Group } from './write.js';
import { need } from '../answer/needs.js';
import { EXPLAINED, OPTIONS_OF, FORMAT_HERE, FULL_HERE } from './needs.js';

/** A document of `cuffwork/plan`. */
export type PlanDocument =
  Plan | Screening | DayCheck | Review | SessionRecord | Proposal | WeekComparison | LighterOptions;

/** What an explanation is written as. */
export type ExplainFormat = 'text' | 'markdown' | 'html' | 'latex' | 'mathml';
const FORMATS: readonly ExplainFormat[] = ['text', 'markdown', 'html', 'latex', 'mathml'];
const DETAILS: readonly Detail[] = ['full', 'brief', 'sentence'];

/** How {@link explain} is to write. */
export interface ExplainOptions extends TextOptions {
  /** Format of the page: `text`, `markdown`, `html`, `latex` or `mathml`; `text` when left out. */
  readonly format?: ExplainFormat | undefined;
  /**
   * `brief`: a plan or a record as a page of what to do, or what was done, and what to watch for. `sentence`: a plan as
   * one line for each exercise, for a note or a message. `full` when left out.
   */
  readonly detail?: 'full' | 'brief' | 'sentence' | undefined;
}

function readOptions(options: ExplainOptions): { format: ExplainFormat; detail: Detail; translate: Translator } {
  const reader = new Reader(plainInput(options, need(OPTIONS_OF, { name: 'explain' })));
  const format = reader.optionalChoice('format', FORMATS) ?? 'text';
  const detail = reader.optionalChoice('detail', DETAILS) ?? 'full';
  const translate = readTextOptions(reader);
  reader.done();
  return { format, detail, translate };
}

/** What each document is as a page. */
const pages = {
  plan: (plan: ExpandedPlan, translate: Translator, detail: Detail) =>
    detail === 'sentence' ? prescriptionBlocks(plan, translate) : planBlocks(plan, translate, detail),
  screening: screeningBlocks,
  'day-check': dayCheckBlocks,
  review: reviewBlocks,
  record: recordBlocks,
  proposal: proposalBlocks,
  'lighter-options': lighterBlocks,
  'week-comparison': weeksBlocks,
  'session-comparison': comparisonBlocks,
} as const satisfies Record<string, (document: never, translate: Translator, detail: Detail) => Block[]>;

/** Documents that hold nothing to make them again from: stored and read back, they cannot be checked. */
const NOT_CHECKED: readonly string[] = [
  'review',
  'lighter-options',
  'week-comparison',
  'session-comparison',
] satisfies (keyof typeof pages)[];

const pageWriters = { text: pageText, markdown: pageMarkdown, html: pageHtml };
const isPage = (format: ExplainFormat): format is keyof typeof pageWriters => Object.hasOwn(pageWriters, format);

/** A page in a format; of a plan the working alone too. */
function writePage(
  document: { readonly document: keyof typeof pages },
  format: ExplainFormat,
  translate: Translator,
  detail: Detail,
): string {
  if (isPage(format)) {
    const [title, ...blocks] = pages[document.document](document as never, translate, detail);
    const unchecked =
      NOT_CHECKED.includes(document.document) && !isOwn(document) ? [{ lines: [translate('page.not-checked')] }] : [];
    return pageWriters[format]([title!, ...unchecked, ...blocks]).join('\n');
  }
  if (document.document === 'plan') {
    const working = planWorking(document as unknown as ExpandedPlan, translate);
    return format === 'latex' ? workingLatex(working) : workingMathml(working);
  }
  refuse('not-one-of', ['format'], FORMAT_HERE, `'${format}'`);
}

const below = (stops: readonly string[], lines: readonly string[]): string =>
  [...stops, ...(stops.length > 0 ? [''] : []), ...lines].join('\n');
const answerWriters = {
  text: (section, stops) => below(stops, sectionText(section)),
  markdown: (section, stops) => below(markdownPoints(stops), sectionMarkdown(section, 1)),
  html: answerHtml,
  latex: (section, stops) => workingLatex([...stops.map(stopGroup), { sections: [section] }]),
  mathml: (section, stops) => workingMathml([...stops.map(stopGroup), { sections: [section] }]),
} satisfies Record<ExplainFormat, (section: Section, stops: readonly string[]) => string>;
const stopGroup = (group: string): Group => ({ group, sections: [] });

/** An answer in a format, its stops first. */
function writeAnswer(answer: Answer, format: ExplainFormat, translate: Translator): string {
  const stops = stopsOfAnswer(answer, translate);
  return answerWriters[format](sectionOf(answer, translate, new Set(stops)), stops);
}

/**
 * An answer with its working: the formula, the same with your numbers in it, the error and where it comes
 * from, the assumptions, what to watch for, the sources. A plan, a screening, a review, a record or a
 * proposal as a page to take to the gym; a comparison of sessions or of weeks as a table.
 *
 * In `brief`, a plan is what you need in the gym: stop criteria, for each exercise the cuffs, load, sets, rests and
 * pause, each limb’s restriction, and the cautions; a record is what was done and how it felt. The clock, the notes,
 * the working and the sources stay on the full page. As a `sentence`, a plan is one line for each exercise.
 *
 * It works on answers and documents that were stored as JSON and read back. A plan, a record, a proposal, a screening
 * and a check of the day are verified as `readDocument` does. An answer, a review or a comparison is checked against
 * itself, and the text of each caution is taken from the catalogue by its code. The page of a review or a comparison that
 * was stored says that it cannot be checked: make it again from its documents. What was changed by hand is refused.
 *
 * Formats: `text`, one line for each fact; `markdown`, with headings, lists and a table for the clock; `html`, an
 * `article` without any style, whose sections `do-not-train`, `stop-criteria`, `exercise` and `write-down` have these
 * names as classes, and the boxes of tables and formulas the class `wide`, to scroll on a phone; `latex` and `mathml`, the working alone, of answers and plans: one `aligned` environment, to put in
 * display mathematics, or one `math` element of presentation MathML. Your own text, such as the name of an exercise, is
 * escaped in each.
 *
 * @param answer - an {@link Answer}, a {@link SessionComparison}, or a document of `cuffwork/plan`
 * @param options - `format`; `detail`; `locale`, texts in another language; `units`, metric or imperial
 * @returns plain text, one line for each fact, or the format asked for.
 * @throws InputError when it is given none of them, or an option it does not have.
 *
 * @example
 * ```ts
 * import { testedOneRepMax, trainingLoad } from 'cuffwork';
 * import { explain } from 'cuffwork/explain';
 * const load = trainingLoad({ oneRepMax: testedOneRepMax({ load: 100 }), percentOneRepMax: 20 });
 * explain(load).split('\n').slice(0, 4); // => ['Training load: 20 kg (95 % interval 18.4–21.6 kg)', '  w = p / 100 × 1RM', '    = 20 / 100 × 100', '    = 20 kg']
 * explain(load, { format: 'latex' }).split('\n')[2]; // => 'w & = \\frac{p}{100} \\times \\mathrm{1RM} \\\\'
 * explain(load, { units: 'imperial' }).split('\n')[0]; // => 'Training load: 44.09 lb (95 % interval 40.5–47.7 lb)'
 * ```
 */
export function explain(answer: Answer | SessionComparison | PlanDocument, options: ExplainOptions = {}): string {
  const copy = plainInput(answer, EXPLAINED) as { readonly document?: string; readonly kind?: AnswerKind };
  const { document, kind } = copy;
  const { format, detail, translate } = readOptions(options);
  const brief = document === 'plan' || (document === 'record' && detail === 'brief');
  if (detail !== 'full' && !(isPage(format) && brief)) {
    refuse('not-one-of', ['detail'], FULL_HERE, `'${detail}'`);
  }
  try {
    if (document !== undefined && Object.hasOwn(pages, document)) {
      return writePage(printable(copy) as { readonly document: keyof typeof pages }, format, translate, detail);
    }
    if (kind !== undefined && Object.hasOwn(kindWords, kind)) {
      return writeAnswer(printable(copy) as Answer, format, translate);
    }
  } catch (error) {
    // A document that was cut short or changed by hand breaks somewhere inside; that is an input error too.
    if (!(error instanceof TypeError)) throw error;
  }
  refuse('wrong-type', [], EXPLAINED, describe(document ?? kind ?? copy));
}
