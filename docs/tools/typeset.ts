import katex from 'katex';
import { FunctionNode, parse, SymbolNode, type MathNode } from 'mathjs';
import { escaped } from './escaped.js';

const FUNCTIONS = new Set(['exp', 'ln', 'log', 'sqrt', 'abs', 'min', 'max']);
const SUBSCRIPTS = '₀₁₂₃₄₅₆₇₈₉';
const POWERS: Readonly<Record<string, string>> = { '²': '^2', '³': '^3', '⁻¹': '^(-1)' };
/** A number, a symbol, or a quantity named in up to four words, such as “SD of the differences”. */
const WORD = new RegExp(`%?[\\p{L}\\d.${SUBSCRIPTS}]+( \\p{L}+){0,3}`, 'gu');

/** A word of a formula as TeX: one letter is italic, an abbreviation upright, a number as it was printed. */
function wordTex(word: string): string {
  const [, stem, digits] = new RegExp(`^(.*?)([${SUBSCRIPTS}]*)$`).exec(word)!;
  const under = digits && `_{${[...digits].map((digit) => SUBSCRIPTS.indexOf(digit)).join('')}}`;
  if (stem!.includes(' ')) return `\\text{${stem}}`;
  if (FUNCTIONS.has(stem!)) return `\\${stem}${under}`;
  const upright = stem!.length > 1 && !/^[\d.]+$/.test(stem!);
  return (upright ? `\\mathrm{${stem!.replace('%', '\\%')}}` : stem!) + under;
}

/** One side of a formula, written as people write it, as TeX; nothing where it is words rather than a formula. */
function sideTex(side: string): string | undefined {
  const words: string[] = [];
  const expression = side
    .replaceAll('−', '-')
    .replaceAll(/[×·]/g, '*')
    .replaceAll(/√(\d+)/g, 'sqrt($1)')
    .replaceAll('√', 'sqrt')
    .replaceAll(/[²³]|⁻¹/g, (power) => POWERS[power]!)
    // A number keeps the digits it is printed with, and 1RM is one word: each is a symbol while parsing.
    .replaceAll(WORD, (word) => (FUNCTIONS.has(word) ? word : `w${words.push(word) - 1}_`));
  if (/w\d+_ w\d+_|…/.test(expression)) return undefined;
  const own = (name: string): string | undefined =>
    /^w\d+_$/.test(name) ? wordTex(words[Number(name.slice(1, -1))]!) : undefined;
  const handler = (node: MathNode, options: object): string | undefined => {
    if (node instanceof SymbolNode) return own(node.name);
    if (!(node instanceof FunctionNode)) return undefined;
    const name = own(node.fn.name);
    return name && `${name}\\left(${node.args.map((argument) => argument.toTex(options)).join(',\\,')}\\right)`;
  };
  return parse(expression).toTex({ handler, parenthesis: 'auto' }).replaceAll('\\cdot', '\\times ');
}

/** Where a formula ends and words about it begin: the first comma, semicolon, full stop or unit outside brackets. */
function endOf(line: string): number {
  let depth = 0;
  for (const [index, letter] of [...line].entries()) {
    if (letter === '(') depth += 1;
    if (letter === ')') depth -= 1;
    if (depth === 0 && /^([,;.](\s|$)| \[)/.test(line.slice(index, index + 2))) return index;
  }
  return line.length;
}

/** A line such as `LOP = a × b, rounded down`: the formula as TeX, and the note after it. */
export function formulaTex(line: string): { readonly tex: string; readonly note: string } | undefined {
  const end = endOf(line);
  const sides = line.slice(0, end).split(' = ').map(sideTex);
  if (sides.length < 2 || sides.includes(undefined)) return undefined;
  return {
    tex: sides.join(' = '),
    note: line
      .slice(end)
      .replace(/^[,;.]\s*/, '')
      .trim(),
  };
}

/** The same, typeset: HTML for the eye and MathML for screen readers, without any script. What is words stays words. */
export function typeset(line: string): string {
  const formula = formulaTex(line);
  if (!formula) return `<p class="formula formula-note">${escaped(line)}</p>`;
  const math = katex.renderToString(formula.tex, { displayMode: true, output: 'htmlAndMathml' });
  return `<div class="formula" role="group" aria-label="formula" tabindex="0">${math}${formula.note && `<p class="formula-note">${escaped(formula.note)}</p>`}</div>`;
}

/** As much of markdown-it as is needed here. */
interface Token {
  type: string;
  content: string;
  children: unknown[] | null;
  hidden: boolean;
  attrSet(name: string, value: string): void;
}
interface Parser {
  readonly renderer: { readonly rules: Record<string, unknown> };
  readonly core: { readonly ruler: { push(name: string, rule: (state: { readonly tokens: Token[] }) => void): void } };
}

const ROLES: Readonly<Record<string, string>> = {
  thead_open: 'rowgroup',
  tbody_open: 'rowgroup',
  tr_open: 'row',
  th_open: 'columnheader',
  td_open: 'cell',
};

/** Teaches the Markdown parser that a paragraph beginning with “Formula: ” is to be typeset, and that a wide table scrolls. */
export function siteMarkdown(parser: Parser): void {
  parser.renderer.rules.table_open = () =>
    '<div class="table" role="group" aria-label="table" tabindex="0"><table role="table">';
  parser.renderer.rules.table_close = () => '</table></div>';
  // On a phone a row becomes a card: each cell carries the words of its column.
  parser.core.ruler.push('labels', ({ tokens }) => {
    let heads: string[] = [];
    let column = 0;
    for (const [index, token] of tokens.entries()) {
      // Named outright: a browser forgets what a table is once a style sheet makes a block of it.
      const role = ROLES[token.type];
      if (role) token.attrSet('role', role);
      if (token.type === 'table_open') heads = [];
      if (token.type === 'th_open') heads.push(tokens[index + 1]!.content);
      if (token.type === 'tr_open') column = 0;
      if (token.type !== 'td_open') continue;
      token.attrSet('data-label', heads[column]!);
      column += 1;
    }
  });
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
