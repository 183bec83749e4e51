import { Math } from '../quantity/maths.js';
import type { Section } from './section.js';
import {
  aligned,
  headingText,
  indent,
  markdownPoints,
  markdownText,
  sectionMarkdown,
  sectionText,
  type Group,
} from './write.js';

/** Parts of a page that look different from the others. */
export type PartName = 'do-not-train' | 'stop-criteria' | 'exercise' | 'write-down';

export type Field = readonly [label: string, text: string];

/** One part of a page, whatever the page is written as. */
export type Block =
  /** What it heads has a part by which HTML can be styled: its class. */
  | { readonly heading: string; readonly level: 1 | 2; readonly part?: PartName }
  | { readonly lines: readonly string[] }
  | { readonly points: readonly string[] }
  | { readonly fields: readonly Field[] }
  | { readonly under: string; readonly rows: readonly (readonly [at: string, text: string])[] }
  | { readonly under: string; readonly lines: readonly string[] }
  /** The first row has the names of the columns. */
  | { readonly table: readonly (readonly string[])[]; readonly under?: string }
  /** One answer with its working. */
  | { readonly section: Section }
  | Required<Group>;

/** What is left out of a list where it does not apply. */
type Maybe<T> = T | false | undefined | '';
export const present = <T>(...items: readonly Maybe<T>[]): T[] => items.filter((item): item is T => !!item);
export const joined = (...texts: readonly Maybe<string>[]): string => present(...texts).join(', ');

export const lines = (...texts: readonly Maybe<string>[]): Block => ({ lines: present(...texts) });
export const fields = (...of: readonly Maybe<Field>[]): Block => ({ fields: present(...of) });
/** The head of a column, and its cell of an item. */
export type Column<T> = readonly [head: string, cell: (item: T) => string];
/** A table with a row for each item. */
export const table = <T>(items: readonly T[], ...columns: readonly Column<T>[]) => ({
  table: [columns.map(([head]) => head), ...items.map((item) => columns.map(([, cell]) => cell(item)))],
});
/** Where there is nothing to list, a page says so. */
export const pointsOr = (otherwise: string, points: readonly string[]): Block =>
  points.length > 0 ? { points } : { lines: [otherwise] };

export function isEmpty(block: Block): boolean {
  if ('heading' in block) return false;
  if ('table' in block) return block.table.length === 1;
  return Object.values(block).some((inside) => Array.isArray(inside) && inside.length === 0);
}

/** Blocks under a heading; nothing where they have nothing to say. */
export function part(heading: string, ...blocks: readonly Block[]): Block[] {
  const full = blocks.filter((block) => !isEmpty(block));
  return full.length > 0 ? [{ heading, level: 2 }, ...full] : [];
}

/** The same, named. */
export const namedPart = (name: PartName, blocks: readonly Block[]): Block[] =>
  blocks.map((block, index) => (index === 0 && 'heading' in block ? { ...block, part: name } : block));

function blockText(block: Block): string[] {
  if ('heading' in block) return headingText(block.heading, block.level);
  if ('points' in block) return block.points.map((text) => `- ${text}`);
  if ('fields' in block) {
    const width = Math.max(...block.fields.map(([label]) => label.length)) + 2;
    return block.fields.map(([label, text]) => label.padEnd(width) + text);
  }
  if ('table' in block) return ['', ...present(block.under), ...aligned(block.table)];
  if ('section' in block) return sectionText(block.section);
  if ('group' in block) {
    return [`[${block.group}]`, ...block.sections.flatMap((section) => indent([...sectionText(section), '']))];
  }
  if ('rows' in block) return [block.under, ...indent(block.rows.map(([at, text]) => `${at.padStart(6)}  ${text}`))];
  return 'under' in block ? [block.under, ...indent(block.lines)] : [...block.lines];
}

/** A page as lines of text. */
export const pageText = (blocks: readonly Block[]): string[] =>
  blocks
    .filter((block) => !isEmpty(block))
    .flatMap(blockText)
    // A group of workings ends in a blank line already.
    .filter((line, index, lines) => line !== '' || lines[index - 1] !== '');

const markdownRow = (cells: readonly string[]): string => `| ${cells.map(markdownText).join(' | ')} |`;

function blockMarkdown(block: Block): string[] {
  if ('heading' in block)
    return [`${'#'.repeat(block.level)} ${markdownText(block.heading).replace(/^(\d+)\\/, '$1')}`];
  if ('points' in block) return markdownPoints(block.points);
  if ('fields' in block) {
    return block.fields.map(([label, text]) => `- **${markdownText(label)}** ${markdownText(text)}`);
  }
  if ('table' in block) {
    const [heads = [], ...rows] = block.table;
    const under = block.under === undefined ? [] : [`**${markdownText(block.under)}**`, ''];
    return [...under, markdownRow(heads), `|${' --- |'.repeat(heads.length)}`, ...rows.map(markdownRow)];
  }
  if ('section' in block) return sectionMarkdown(block.section, 3);
  if ('group' in block) {
    const sections = block.sections.flatMap((section) => [...sectionMarkdown(section, 4), '']);
    return [`### ${markdownText(block.group)}`, '', ...sections.slice(0, -1)];
  }
  if ('rows' in block) {
    const rows = block.rows.map(([at, text]) => `| ${at} | ${markdownText(text)} |`);
    return [`| ${markdownText(block.under)} | |`, '| ---: | --- |', ...rows];
  }
  return 'under' in block
    ? [`**${markdownText(block.under)}**`, '', ...markdownPoints(block.lines)]
    : block.lines.flatMap((line) => [markdownText(line), '']).slice(0, -1);
}

/** A page as lines of Markdown. */
export const pageMarkdown = (blocks: readonly Block[]): string[] =>
  blocks
    .filter((block) => !isEmpty(block))
    .flatMap((block) => [...blockMarkdown(block), ''])
    .slice(0, -1);
