import { Math } from '../quantity/maths.js';
import type { Section } from './section.js';
import { latexNotation, mathmlNotation, typeset, typesetIn, type Notation } from './formula.js';

export const indent = (lines: readonly string[], by = '  '): string[] => lines.map((line) => (line ? by + line : line));

/** A title, or a heading in capitals with a blank line above it; each with a rule below. */
export function headingText(heading: string, level: 1 | 2 = 2): string[] {
  const capitals = heading.toUpperCase();
  return level === 1 ? [capitals, '='.repeat(capitals.length)] : ['', capitals, '-'.repeat(capitals.length)];
}

/** Rows of cells as lines whose columns stand below each other. */
export function aligned(table: readonly (readonly string[])[]): string[] {
  const width = (column: number): number => Math.max(...table.map((row) => row[column]?.length ?? 0));
  return table.map((row) =>
    row
      .map((text, column) => text.padEnd(width(column)))
      .join('  ')
      .trimEnd(),
  );
}

/** The sums of an answer, one step a line, the signs of equality below each other. */
function workingText({ symbol, steps, result }: Section): string[] {
  const pad = ' '.repeat(symbol.length);
  return [
    `${symbol} = ${typeset(steps[0])}`,
    `${pad} = ${typeset(steps[1])}`,
    ...(result ? [`${pad} = ${result.number}${result.unit}`] : []),
  ];
}

/** An answer as lines of text, with the answers it was worked out from below it. */
export function sectionText(section: Section): string[] {
  const { title, symbol, notes, glossary, basis, cautions, sources, inner } = section;
  const below = [...notes, ...(glossary.length > 0 ? [section.with] : [])];
  return [
    title,
    ...indent([
      ...workingText(section),
      ...indent(below, ' '.repeat(symbol.length + 3)),
      ...basis,
      ...cautions,
      ...sources,
    ]),
    ...inner.flatMap((part) => ['', ...indent(sectionText(part))]),
  ];
}

/** Text that Markdown shows as it is. */
export const markdownText = (text: string): string =>
  text
    .replace(/\s+/g, ' ')
    .replace(/[\\`*_[\]<>&~|]/g, '\\$&')
    .replace(/^[#+=-]/, '\\$&')
    .replace(/^(\d+)([.)])(?= |$)/, '$1\\$2');

export const markdownPoints = (points: readonly string[]): string[] => points.map((text) => `- ${markdownText(text)}`);

/** An answer as lines of Markdown, under a heading of the level given. */
export function sectionMarkdown(section: Section, level: number): string[] {
  const { title, notes, glossary, basis, cautions, sources, inner } = section;
  return [
    `${'#'.repeat(Math.min(level, 6))} ${markdownText(title)}`,
    '',
    // Four blanks make a block of code that nothing inside can close.
    ...indent(workingText(section), '    '),
    '',
    ...markdownPoints([...notes, ...(glossary.length > 0 ? [section.with] : []), ...basis, ...cautions, ...sources]),
    ...inner.flatMap((part) => ['', ...sectionMarkdown(part, level + 1)]),
  ];
}

/** Answers explained together, under a title where there are several groups of them. */
export interface Group {
  readonly group?: string;
  readonly sections: readonly Section[];
}

/** Titles and sums as rows of two cells; the second starts with the sign of equality, or is words. */
function rowsOf({ sections, group }: Group, notation: Notation): [left: string, right: string][] {
  const words = (text: string): [string, string] => ['', notation.text(text)];
  const equals = (right: string): string => notation.sign('=') + right;
  const rows = sections.flatMap(({ title, symbol, steps, result, notes, glossary, inner }): [string, string][] => [
    ...(title === '' ? [] : [words(title)]),
    [notation.name(symbol), equals(typesetIn(notation, steps[0]))],
    ['', equals(typesetIn(notation, steps[1]))],
    ...(result
      ? [['', equals(typesetIn(notation, result.number) + notation.text(result.unit))] as [string, string]]
      : []),
    ...[...notes, ...glossary].map(words),
    ...rowsOf({ sections: inner }, notation),
  ]);
  return group === undefined ? rows : [words(`[${group}]`), ...rows];
}

/** The working of answers as one LaTeX environment. */
export function workingLatex(groups: readonly Group[]): string {
  const rows = groups.flatMap((group) => rowsOf(group, latexNotation)).map(([left, right]) => `${left} &${right}`);
  return `\\begin{aligned}\n${rows.join(' \\\\\n')}\n\\end{aligned}`;
}

/** The working of answers as one element of presentation MathML. */
export function workingMathml(groups: readonly Group[]): string {
  const cell = (inside: string): string => `<mtd>${inside}</mtd>`;
  const rows = groups
    .flatMap((group) => rowsOf(group, mathmlNotation))
    .map(([left, right]) => `<mtr>${cell(left)}${cell(right)}</mtr>`);
  const table = `<mtable columnalign="right left" displaystyle="true">\n${rows.join('\n')}\n</mtable>`;
  return `<math xmlns="http://www.w3.org/1998/Math/MathML" display="block">${table}</math>`;
}
