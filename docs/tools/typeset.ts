import katex from 'katex';
import { parse, type MathNode, SymbolNode } from 'mathjs';

const FUNCTIONS = new Set(['exp', 'ln', 'log', 'sqrt', 'abs', 'min', 'max']);
const SUBSCRIPTS = '₀₁₂₃₄₅₆₇₈₉';
const SUPERSCRIPTS: Readonly<Record<string, string>> = { '²': '^2', '³': '^3', '⁻¹': '^(-1)' };

/** A word of a formula as TeX: one letter is italic, an abbreviation upright, a number as it was printed. */
function wordTex(word: string): string {
  const [, stem, digits] = new RegExp(`^(.*?)([${SUBSCRIPTS}]*)$`).exec(word)!;
  const under = digits && `_{${[...digits].map((digit) => SUBSCRIPTS.indexOf(digit)).join('')}}`;
  const numeric = /^[\d.]+$/.test(stem!);
  if (stem!.includes(' ')) return `\\text{${stem}}`;
  const upright = stem!.length > 1 && !numeric;
  return (upright ? `\\mathrm{${stem!.replace('%', '\\%')}}` : stem!) + under;
}

/** One side of a formula, written as people write it, as TeX. */
function sideTex(side: string): string {
  const words: string[] = [];
  const expression = side
    .replaceAll('−', '-')
    .replaceAll('×', '*')
    .replaceAll('·', '*')
    .replaceAll(/√(\d+)/g, 'sqrt($1)')
    .replaceAll('√', 'sqrt')
    .replaceAll(/[²³]|⁻¹/g, (power) => SUPERSCRIPTS[power]!)
    // A number keeps the digits it is printed with, and 1RM and “SD of the differences” are one word each: they stand
    // as symbols while parsing.
    .replaceAll(new RegExp(`%?[\\p{L}\\d.${SUBSCRIPTS}]+( \\p{L}+)*`, 'gu'), (word) =>
      FUNCTIONS.has(word) ? word : `w${words.push(word) - 1}_`,
    );
  const handler = (node: MathNode): string | undefined =>
    node instanceof SymbolNode && /^w\d+_$/.test(node.name)
      ? wordTex(words[Number(node.name.slice(1, -1))]!)
      : undefined;
  return parse(expression).toTex({ handler, parenthesis: 'auto' }).replaceAll('\\cdot', '\\times ');
}

/** A line such as `LOP = a × b, rounded down`: the formula as TeX, and what is said after it. */
export function formulaTex(line: string): { readonly tex: string; readonly note: string } {
  const end = /[,;]\s|\.\s|\.$|\s\[/.exec(line);
  const text = end ? line.slice(0, end.index) : line;
  const rest = end
    ? line
        .slice(end.index)
        .replace(/^[,;.]\s*/, '')
        .trim()
    : '';
  const sides = text.split(' = ');
  if (sides.length < 2) throw new Error(`no formula in “${line}”`);
  return { tex: sides.map(sideTex).join(' = '), note: rest };
}

/** The same, typeset: HTML for the eye and MathML for screen readers, without any script. */
export function typeset(line: string): string {
  const { tex, note } = formulaTex(line);
  const math = katex.renderToString(tex, { displayMode: true, output: 'htmlAndMathml', throwOnError: true });
  return `<div class="formula">${math}${note && `<p class="formula-note">${note.replaceAll('<', '&lt;')}</p>`}</div>`;
}

/** As much of markdown-it as is needed here. */
interface Token {
  type: string;
  content: string;
  children: unknown[] | null;
  hidden: boolean;
}
interface Parser {
  readonly renderer: { readonly rules: Record<string, unknown> };
  readonly core: { readonly ruler: { push(name: string, rule: (state: { readonly tokens: Token[] }) => void): void } };
}

/** Teaches the Markdown parser that a paragraph beginning with “Formula: ” is to be typeset, and that a wide table scrolls. */
export function siteMarkdown(parser: Parser): void {
  parser.renderer.rules.table_open = () => '<div class="table" role="group" aria-label="table" tabindex="0"><table>';
  parser.renderer.rules.table_close = () => '</table></div>';
  parser.core.ruler.push('formula', ({ tokens }) => {
    for (const [index, token] of tokens.entries()) {
      if (token.type !== 'inline' || !token.content.startsWith('Formula: ')) continue;
      for (const edge of [tokens[index - 1], tokens[index + 1]]) if (edge) edge.hidden = true;
      token.type = 'html_block';
      token.content = typeset(token.content.slice('Formula: '.length).replaceAll('\n', ' '));
      token.children = null;
    }
  });
}
