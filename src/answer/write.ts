import type { Section } from './explain.js';
import { latexNotation, mathmlNotation, typeset, typesetIn } from './formula.js';

export const indent = (lines: readonly string[], by = '  '): string[] => lines.map((line) => (line ? by + line : line));

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
  const { title, symbol, notes, glossary, grounds, cautions, sources, inner } = section;
  const below = [...notes, ...(glossary.length > 0 ? [section.with] : [])];
  return [
    title,
    ...indent([
      ...workingText(section),
      ...indent(below, ' '.repeat(symbol.length + 3)),
      ...grounds,
      ...cautions,
      ...sources,
    ]),
    ...inner.flatMap((part) => ['', ...indent(sectionText(part))]),
  ];
}

/** Text that Markdown shows as it stands. */
export const markdownText = (text: string): string =>
  text
    .replace(/\s+/g, ' ')
    .replace(/[\\`*_[\]<>&~|]/g, '\\$&')
    .replace(/^[#+=-]/, '\\$&')
    .replace(/^(\d+)([.)])/, '$1\\$2');

export const markdownPoints = (points: readonly string[]): string[] => points.map((text) => `- ${markdownText(text)}`);

/** An answer as lines of Markdown, under a heading of the level given. */
export function sectionMarkdown(section: Section, level: number): string[] {
  const { title, notes, glossary, grounds, cautions, sources, inner } = section;
  return [
    `${'#'.repeat(Math.min(level, 6))} ${markdownText(title)}`,
    '',
    // Four blanks make a block of code that nothing inside can close.
    ...indent(workingText(section), '    '),
    '',
    ...markdownPoints([...notes, ...(glossary.length > 0 ? [section.with] : []), ...grounds, ...cautions, ...sources]),
    ...inner.flatMap((part) => ['', ...sectionMarkdown(part, level + 1)]),
  ];
}

/** The titles and sums of answers as rows of two cells, the second of which starts with the sign of equality. */
function sums(
  sections: readonly Section[],
  notation: typeof latexNotation,
  cells: (left: string, right: string) => string,
): string[] {
  return sections.flatMap((section): string[] => {
    const { title, symbol, steps, result, notes, glossary, inner } = section;
    const words = (text: string): string => cells('', notation.text(text));
    const equals = (right: string): string => notation.sign('=') + right;
    return [
      words(title),
      cells(notation.name(symbol), equals(typesetIn(notation, steps[0]))),
      cells('', equals(typesetIn(notation, steps[1]))),
      ...(result ? [cells('', equals(typesetIn(notation, result.number) + notation.text(result.unit)))] : []),
      ...[...notes, ...glossary].map(words),
      ...sums(inner, notation, cells),
    ];
  });
}

/** The working of answers as one LaTeX environment. */
export const workingLatex = (sections: readonly Section[]): string =>
  `\\begin{aligned}\n${sums(sections, latexNotation, (left, right) => `${left} &${right}`).join(' \\\\\n')}\n\\end{aligned}`;

/** The working of answers as one element of presentation MathML. */
export const workingMathml = (sections: readonly Section[]): string =>
  `<math xmlns="http://www.w3.org/1998/Math/MathML" display="block"><mtable columnalign="right left" displaystyle="true">${sums(
    sections,
    mathmlNotation,
    (left, right) => `<mtr><mtd>${left}</mtd><mtd>${right}</mtd></mtr>`,
  ).join('\n')}</mtable></math>`;
