import { Math } from '../quantity/maths.js';
import { isEmpty, type Block } from './blocks.js';
import { xmlText as text } from './formula.js';
import type { Section } from './section.js';
import { notesBelow, workingMathml } from './write.js';

const tag = (name: string, inside: string): string => `<${name}>${inside}</${name}>`;
const points = (lines: readonly string[]): string =>
  lines.length === 0 ? '' : tag('ul', lines.map((line) => tag('li', text(line))).join(''));
const row = (name: 'th scope="col"' | 'td', cells: readonly string[]): string =>
  tag('tr', cells.map((cell) => `<${name}>${text(cell)}</${name.slice(0, 2)}>`).join(''));
const table = (rows: readonly (readonly string[])[], heads?: readonly string[]): string =>
  tag(
    'table',
    (heads ? tag('thead', row('th scope="col"', heads)) : '') +
      tag('tbody', rows.map((cells) => row('td', cells)).join('')),
  );

/** What may be wider than a phone: give its box `overflow-x: auto`. */
const wide = (inside: string): string => `<div class="wide">${inside}</div>`;

/** An answer: a heading, its working, what it rests on, then the answers it was worked out from. */
function sectionHtml(section: Section, level: number): string {
  const { title, basis, cautions, sources, inner } = section;
  const working = wide(workingMathml([{ sections: [{ ...section, title: '', notes: [], glossary: [], inner: [] }] }]));
  const below = [...notesBelow(section), ...basis, ...cautions, ...sources];
  return [
    tag(`h${Math.min(level, 6)}`, text(title)),
    working,
    points(below),
    ...inner.map((part) => sectionHtml(part, level + 1)),
  ].join('\n');
}

function blockHtml(block: Block): string {
  if ('heading' in block) return tag(`h${block.level}`, text(block.heading));
  if ('points' in block) return points(block.points);
  if ('fields' in block) {
    const pairs = block.fields.map(([label, words]) => tag('div', tag('dt', text(label)) + tag('dd', text(words))));
    return tag('dl', pairs.join('\n'));
  }
  if ('table' in block) {
    const [heads, ...rows] = block.table;
    return (block.under === undefined ? '' : tag('h3', text(block.under))) + wide(table(rows, heads));
  }
  if ('section' in block) return sectionHtml(block.section, 3);
  if ('group' in block) {
    return [tag('h3', text(block.group)), ...block.sections.map((section) => sectionHtml(section, 4))].join('\n');
  }
  if ('rows' in block) return tag('h3', text(block.under)) + table(block.rows);
  return 'under' in block
    ? tag('h3', text(block.under)) + points(block.lines)
    : block.lines.map((line) => tag('p', text(line))).join('\n');
}

/** An answer on its own, its stops first. */
export const answerHtml = (section: Section, stops: readonly string[]): string =>
  ['<article>', ...(stops.length > 0 ? [points(stops)] : []), sectionHtml(section, 1), '</article>'].join('\n');

/**
 * A page as HTML: an `article` with its title and a `section` for each heading below it. A section with a part of its
 * own, such as the stop criteria, has it as its class.
 */
export function pageHtml(blocks: readonly Block[]): string[] {
  const lines: string[] = [];
  let open = false;
  for (const block of blocks.filter((one) => !isEmpty(one))) {
    if ('heading' in block && block.level === 2) {
      lines.push(...(open ? ['</section>'] : []), block.part ? `<section class="${block.part}">` : '<section>');
      open = true;
    }
    lines.push(blockHtml(block));
  }
  return ['<article>', ...lines, ...(open ? ['</section>'] : []), '</article>'];
}
