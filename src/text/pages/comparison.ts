import { Math } from '../../quantity/maths.js';
import type { Answer } from '../../answer/answer.js';
import { amount, amountToSet, bareAmount, named, sentence } from '../../answer/translate.js';
import { byAudience } from '../../plan/audience.js';
import type { SessionComparison } from '../../plan/compare-sessions.js';
import type { LighterOptions } from '../../plan/lighten.js';
import { clock, format } from '../../quantity/format.js';
import type { Unit } from '../../quantity/quantities.js';
import type { ComparedQuantity, ComparisonRow } from '../../session/compare.js';
import { fields, part, table, type Block, type Field } from '../blocks.js';
import { assumedLine, cautionLine } from '../section.js';
import type { Translator } from '../translator.js';
import { setsBriefly } from './exercises.js';
import { isStopped, opening } from './parts.js';
import { findingLine } from './review.js';

/** What each of the four lines says of a comparison; the table has the rest. */
const SHORT = {
  joint: ['peakLoad', 'peakPercentOneRepMax'],
  work: ['repetitions', 'volumeLoad'],
  cuff: ['restrictionTime', 'percentLop', 'longestRestriction'],
} as const satisfies Partial<Record<ComparisonRow['line'], readonly ComparedQuantity[]>>;

const signed = (value: number, text: string): string => (value > 0 ? `+${text}` : text);

const numberWords = (translate: Translator, value: number, unit: Unit): string =>
  unit === 's'
    ? translate('page.time', { time: `${value < 0 ? '−' : ''}${clock(Math.abs(value))}` })
    : amount(translate, value, unit).replace(/^-/, '−');

const cell = (translate: Translator, answer: Answer | undefined): string =>
  answer ? numberWords(translate, answer.value, answer.unit) : translate('page.not-given');

/** `−45 kg (−60 %)`; a change of a percentage is written in points. */
function changeWords(translate: Translator, { change, changePercent, unit }: ComparisonRow): string {
  if (change === undefined) return translate('page.not-known');
  if (change === 0) return translate('page.same');
  const share =
    changePercent === undefined ? '' : ` (${signed(changePercent, numberWords(translate, changePercent, '%'))})`;
  const moved =
    unit === '%'
      ? translate('page.points', { change: bareAmount(translate, change, '%').replace(/^-/, '−') })
      : numberWords(translate, change, unit);
  return signed(change, moved) + share;
}

/** `75 kg → 30 kg`, or the one number where nothing changes. */
const fromTo = (translate: Translator, { from, to, change }: ComparisonRow): string =>
  change === 0
    ? cell(translate, from)
    : translate('page.from-to', { from: cell(translate, from), to: cell(translate, to) });

const rowName = (translate: Translator, { from, to }: Pick<ComparisonRow, 'from' | 'to'>): string =>
  translate(`kind.${(from ?? to)!.kind}`);

/** The four lines of a comparison: on the joint, work, under the cuff, not known. */
function comparedLines(
  translate: Translator,
  { rows, notKnown }: Pick<SessionComparison, 'rows' | 'notKnown'>,
): Field[] {
  const rowOf = (quantity: string): ComparisonRow | undefined => rows.find((one) => one.quantity === quantity);
  const known = (['joint', 'work', 'cuff'] as const).map((line): Field => {
    const own = SHORT[line].flatMap((quantity) => {
      const row = rowOf(quantity);
      return row ? [translate(`page.short-${quantity}`, { value: fromTo(translate, row) })] : [];
    });
    const none = translate(line === 'cuff' ? 'page.no-cuff' : 'page.nothing-given');
    return [translate(`page.line-${line}`), own.join('; ') || none];
  });
  const open = notKnown.map((code) =>
    code === 'equal-effect' ? translate('page.equal-effect') : rowName(translate, rowOf(code)!),
  );
  return [...known, [translate('page.line-not-known'), open.join('; ')]];
}

/** A comparison of sessions in four lines, then as a table. */
export function comparisonBlocks(comparison: SessionComparison, translate: Translator): Block[] {
  const { rows, cautions, stops } = comparison;
  return [
    ...opening(translate, 'page.session-comparison', { stops, disclaimers: [] }),
    ...(isStopped(comparison)
      ? []
      : [
          fields(...comparedLines(translate, comparison)),
          table(
            rows,
            [translate('page.measured'), (row) => rowName(translate, row)],
            [translate('page.from'), ({ from }) => cell(translate, from)],
            [translate('page.to'), ({ to }) => cell(translate, to)],
            [translate('page.change'), (row) => changeWords(translate, row)],
          ),
          ...part(translate('page.method'), { points: cautions.map((message) => cautionLine(translate, message)) }),
        ]),
  ];
}

/** A way to do an exercise with less load, in four lines with its cautions. */
function optionBlocks(translate: Translator, option: LighterOptions['options'][number]): Block[] {
  const { keeps, load, sets, restriction, comparison, assumptions, findings, cautions } = option;
  return [
    { heading: translate(`page.keeps-${keeps}`), level: 2 },
    fields(
      [translate('page.load'), amountToSet(translate, load.value, load.unit)],
      [translate('page.sets'), setsBriefly(translate, sets)],
      [translate('page.cuff'), named(translate, 'value', restriction)],
      ...comparedLines(translate, comparison),
    ),
    {
      points: [
        ...findings.map((finding) => findingLine(translate, finding)),
        // Remarks on the method are in the data; on this page they would hide the others.
        ...cautions
          .filter((message) => byAudience([message]).method.length === 0)
          .map((message) => cautionLine(translate, message)),
        ...assumptions.map((message) => assumedLine(translate, message)),
      ],
    },
  ];
}

/** Ways to do an exercise with less load; while a stop is in force, the stop. */
export function lighterBlocks(document: LighterOptions, translate: Translator): Block[] {
  const { exercise, lighterPercent, options, notOffered, cautions } = document;
  const asked = translate('page.lighter-asked', { exercise, percent: format(lighterPercent) });
  const general = cautions.map((message) => cautionLine(translate, message));
  return [
    ...opening(translate, 'page.lighter-options', document, [asked], general),
    ...options.flatMap((option) => optionBlocks(translate, option)),
    ...part(translate('page.not-offered'), {
      points: notOffered.map(
        (message) => `${translate(`page.keeps-${message.keeps}`)}: ${sentence(translate, message)}`,
      ),
    }),
  ];
}
