import { Math } from '../quantity/maths.js';
import type { Section } from './section.js';
import { sumText } from './sums.js';
import { latexNotation, mathmlNotation, typeset, typesetIn, type Names, type Notation } from './formula.js';

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

/** The steps of an answer after its formula: the numbers, unless they are in it or are the result, and the result. */
function stepsOf({ formula, numbers, exact, equals, result }: Section) {
  const given = numbers !== formula && numbers !== result.number;
  const sign = { numbers: exact ? '=' : '≈', result: equals && (given || exact) ? '=' : '≈' } as const;
  return { sign, numbers: given ? numbers : undefined };
}

/** The sums of an answer, one step a line, the signs of equality below each other. */
function workingText(section: Section): string[] {
  const { symbol, formula, names, result, decimalMark } = section;
  const { sign, numbers } = stepsOf(section);
  const pad = ' '.repeat(symbol.length);
  return [
    `${symbol} = ${typeset(formula, names, decimalMark)}${formula === result.number ? result.unit : ''}`,
    ...(numbers === undefined ? [] : [`${pad} ${sign.numbers} ${typeset(numbers, undefined, decimalMark)}`]),
    ...(formula === result.number
      ? []
      : [`${pad} ${sign.result} ${typeset(result.number, undefined, decimalMark)}${result.unit}`]),
  ];
}

/** The lines below the sums of an answer. */
const belowSums = ({ deviation, sums, basis, cautions, sources, decimalMark }: Section): string[] => [
  ...deviation,
  ...sums.map((sum) => sumText(sum, decimalMark)),
  ...basis,
  ...cautions,
  ...sources,
];
/** What was done to the result, then the symbols in one sentence. */
export const notesBelow = ({ notes, glossary, with: symbols }: Section): string[] =>
  glossary.length > 0 ? [...notes, symbols] : [...notes];

/** An answer as lines of text, with the answers it was worked out from below it. */
export function sectionText(section: Section): string[] {
  const { title, symbol, inner } = section;
  const notes = indent(notesBelow(section), ' '.repeat(symbol.length + 3));
  return [
    title,
    ...indent([...workingText(section), ...notes, ...belowSums(section)]),
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
  const { title, inner } = section;
  return [
    `${'#'.repeat(Math.min(level, 6))} ${markdownText(title)}`,
    '',
    // Four blanks make a block of code that nothing inside can close.
    ...indent(workingText(section), '    '),
    '',
    ...markdownPoints([...notesBelow(section), ...belowSums(section)]),
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
  const row = (right: string): [string, string] => ['', right];
  const words = (text: string): [string, string] => row(notation.text(text));
  const after = (sign: '=' | '≈' | '<', right: string): string => notation.sign(sign) + right;
  const rows = sections.flatMap((section): [string, string][] => {
    const { title, symbol, formula, names, result, notes, glossary, deviation, sums, inner } = section;
    const set = (text: string, as?: Names): string => typesetIn(notation, text, as, section.decimalMark);
    const amount = (number: string, unit: string): string => set(number) + notation.text(unit);
    const { sign, numbers } = stepsOf(section);
    return [
      ...(title === '' ? [] : [words(title)]),
      [
        notation.name(symbol),
        after('=', formula === result.number ? amount(formula, result.unit) : set(formula, names)),
      ],
      ...(numbers === undefined ? [] : [row(after(sign.numbers, set(numbers)))]),
      ...(formula === result.number ? [] : [row(after(sign.result, amount(result.number, result.unit)))]),
      ...[...notes, ...glossary, ...deviation].map(words),
      ...sums.map((sum) =>
        row(
          notation.text(`${sum.label}: `) +
            set(sum.formula, sum.names) +
            after(sum.exact ? '=' : '≈', set(sum.numbers)) +
            after(sum.sign, notation.text(sum.result)),
        ),
      ),
      ...rowsOf({ sections: inner }, notation),
    ];
  });
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
