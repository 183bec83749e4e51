import { Math } from '../quantity/maths.js';
import { normalChance } from '../statistics/normal.js';

/** A formula taken apart. */
type Term =
  | { readonly number: string }
  | { readonly name: string }
  | { readonly sign: '+' | '-' | '*'; readonly left: Term; readonly right: Term }
  | { readonly over: Term; readonly under: Term }
  | { readonly base: Term; readonly power: Term }
  | { readonly minus: Term }
  | { readonly group: Term }
  | { readonly call: string; readonly of: readonly Term[] }
  | { readonly when: Less; readonly then: Term; readonly otherwise: Term };
interface Less {
  readonly less: Term;
  readonly than: Term;
}

type Sign = '+' | '-' | '*' | '=' | '≈' | '<' | '≤';

/** How the pieces of a formula are written. */
export interface Notation {
  /** On one line: no bar or raised place groups by itself. */
  readonly inline?: true;
  readonly minus: string;
  readonly number: (digits: string) => string;
  readonly name: (name: string) => string;
  readonly sign: (sign: Sign) => string;
  readonly fraction: (over: string, under: string) => string;
  readonly power: (base: string, power: string) => string;
  readonly root: (of: string) => string;
  readonly group: (of: string) => string;
  readonly call: (name: string, of: readonly string[], between?: string) => string;
  /** A decimal mark, as it is written in a number. */
  readonly decimal?: (mark: string) => string;
  /** Σ over a list. */
  readonly sum: (of: string) => string;
  /** Values with the range that each holds in. */
  readonly cases: (rows: readonly (readonly [value: string, range: string])[]) => string;
  readonly text: (text: string) => string;
}

const TOKEN = /\s*(?:(\d+(?:\.\d+)?(?:e[+-]?\d+)?)|([A-Za-z_]\w*)|([-+*/^(),<?:]))/y;
/** More than any formula here has; it bounds the recursion below. */
const MOST_TOKENS = 1000;

function tokens(formula: string): string[] | undefined {
  const found: string[] = [];
  // A working that replaces a symbol is written for people: 80 × 300.
  const text = formula.replaceAll('×', '*');
  TOKEN.lastIndex = 0;
  while (TOKEN.lastIndex < text.length) {
    const token = TOKEN.exec(text)?.[0].trim();
    if (token === undefined || found.length === MOST_TOKENS) return undefined;
    found.push(token);
  }
  return found;
}

/** A formula in infix, with the usual precedence; nothing where it is not one. */
function parse(formula: string): Term | undefined {
  const left = tokens(formula)?.reverse();
  if (!left) return undefined;
  const next = (): string | undefined => left.at(-1);
  const take = (token: string): boolean => next() === token && left.pop() !== undefined;

  const sum = (): Term | undefined => {
    let term = product();
    while (term && (next() === '+' || next() === '-')) {
      const sign = left.pop() as '+' | '-';
      const right = product();
      term = right && { sign, left: term, right };
    }
    return term;
  };
  const product = (): Term | undefined => {
    let term = signed();
    while (term && (next() === '*' || next() === '/')) {
      const sign = left.pop() as '*' | '/';
      const right = signed();
      term = right && (sign === '*' ? { sign, left: term, right } : { over: term, under: right });
    }
    return term;
  };
  const signed = (): Term | undefined => {
    if (!take('-')) return power();
    const minus = signed();
    return minus && { minus };
  };
  const power = (): Term | undefined => {
    const base = atom();
    if (!base || !take('^')) return base;
    const exponent = signed();
    return exponent && { base, power: exponent };
  };
  const list = (): Term[] | undefined => {
    const terms: Term[] = [];
    do {
      const term = sum();
      if (!term) return undefined;
      terms.push(term);
    } while (take(','));
    return take(')') ? terms : undefined;
  };
  const atom = (): Term | undefined => {
    const token = left.pop() ?? '';
    if (/^\d/.test(token)) return { number: token };
    if (token === '(') {
      const inside = list();
      return inside?.length === 1 ? { group: inside[0]! } : undefined;
    }
    if (!/\w/.test(token)) return undefined;
    if (!take('(')) return { name: token };
    const of = list();
    return of && { call: token, of };
  };

  const comparison = (): Term | Less | undefined => {
    const less = sum();
    if (!less || !take('<')) return less;
    const than = sum();
    return than && { less, than };
  };
  const choice = (): Term | undefined => {
    const when = comparison();
    if (!when || !('less' in when)) return when;
    const then = take('?') ? sum() : undefined;
    const otherwise = then && take(':') ? choice() : undefined;
    return then && otherwise && { when, then, otherwise };
  };

  const whole = choice();
  return left.length === 0 ? whole : undefined;
}

/** Brackets that the notation makes needless: a bar or a raised place groups by itself. */
const bare = (term: Term): Term => ('group' in term ? bare(term.group) : term);

/** Ranges of what is compared, each from where the one before it ends. */
function ranges(term: Term, notation: Notation, from?: Term): (readonly [value: string, range: string])[] {
  const on = (part: Term): string => write(part, notation);
  const start = from ? on(from) + notation.sign('≤') : '';
  if (!('when' in term)) return [[on(term), start]];
  const { when, then, otherwise } = term;
  const below = `${start}${on(when.less)}${notation.sign('<')}${on(when.than)}`;
  const [next, ...more] = ranges(otherwise, notation, when.than);
  const [value, range] = next!;
  return [[on(then), below], [value, 'when' in otherwise ? range : range + on(when.less)], ...more];
}

function write(term: Term, notation: Notation): string {
  const on = (part: Term): string => write(part, notation);
  const inner = (part: Term): string => on(notation.inline ? part : bare(part));
  if ('number' in term) return notation.number(term.number);
  if ('name' in term) return notation.name(term.name);
  if ('sign' in term) return on(term.left) + notation.sign(term.sign) + on(term.right);
  if ('over' in term) return notation.fraction(inner(term.over), inner(term.under));
  if ('power' in term) return notation.power(on(term.base), inner(term.power));
  if ('minus' in term) return notation.minus + on(term.minus);
  if ('group' in term) return notation.group(on(term.group));
  if ('when' in term) return notation.cases(ranges(term, notation));
  const [only] = term.of;
  if (term.call === 'sqrt' && term.of.length === 1) return notation.root(on(only!));
  if (term.call === 'sum' && term.of.length === 1) return notation.sum(on(only!));
  return notation.call(term.call, term.of.map(on));
}

/** Symbols that are written otherwise than the formula names them. */
export type Names = Readonly<Record<string, string>>;

/** A formula in a notation; what cannot be parsed stays as it is, on one line. */
export function typesetIn(notation: Notation, formula: string, names: Names = {}, decimalMark = '.'): string {
  const term = parse(formula);
  const name = (of: string): string => notation.name(Object.hasOwn(names, of) ? names[of]! : of);
  return term
    ? write(term, { ...withMark(notation, decimalMark), name })
    : notation.text(unparsed(formula).replace(/(\d)\.(?=\d)/g, `$1${decimalMark}`));
}

/** A notation with your decimal mark; where that is a comma, a semicolon parts the numbers of a list. */
const withMark = (notation: Notation, mark: string): Notation =>
  mark === '.'
    ? notation
    : {
        ...notation,
        number: (digits) => notation.number(digits).replace('.', notation.decimal?.(mark) ?? mark),
        call: (name, of) => notation.call(name, of, mark === ',' ? ';' : ','),
      };

const FUNCTIONS: Readonly<Record<string, (...of: number[]) => number>> = {
  exp: Math.exp,
  ln: Math.log,
  log: Math.log,
  sqrt: Math.sqrt,
  max: Math.max,
  Phi: normalChance,
  sum: (of) => of,
};

/** Squares and cubes as products; engines round powers differently. */
function raised(base: number, power: number): number {
  if (power === 2) return base * base;
  return power === 3 ? base * base * base : Math.exp(power * Math.log(base));
}

function valueOf(term: Term): number {
  if ('number' in term) return Number(term.number);
  if ('name' in term) return NaN;
  if ('sign' in term) {
    const [left, right] = [valueOf(term.left), valueOf(term.right)];
    return term.sign === '+' ? left + right : term.sign === '-' ? left - right : left * right;
  }
  if ('over' in term) return valueOf(term.over) / valueOf(term.under);
  if ('power' in term) return raised(valueOf(term.base), valueOf(term.power));
  if ('minus' in term) return -valueOf(term.minus);
  if ('group' in term) return valueOf(term.group);
  if ('when' in term) {
    const { less, than } = term.when;
    return valueOf(valueOf(less) < valueOf(than) ? term.then : term.otherwise);
  }
  const { call, of } = term;
  return Object.hasOwn(FUNCTIONS, call) ? FUNCTIONS[call]!(...of.map(valueOf)) : NaN;
}

/** The value of a formula of numbers alone; NaN where it is none. */
export function evaluated(formula: string): number {
  const term = parse(formula);
  return term ? valueOf(term) : NaN;
}

const unparsed = (formula: string): string => formula.replaceAll('*', '×').replaceAll(' - ', ' − ');

const TEXT_SIGNS = { '+': ' + ', '-': ' − ', '*': ' × ', '=': ' = ', '≈': ' ≈ ', '<': ' < ', '≤': ' ≤ ' } as const;
const TEXT_CALLS: Readonly<Record<string, string>> = { Phi: 'Φ', log: 'ln' };

const textNotation: Notation = {
  inline: true,
  number: (digits) => digits,
  name: (name) => name,
  minus: '−',
  sign: (sign) => TEXT_SIGNS[sign],
  fraction: (over, under) => `${over} / ${under}`,
  power: (base, power) => `${base} ^ ${power}`,
  root: (of) => `√(${of})`,
  group: (of) => `(${of})`,
  call: (name, of, between = ',') => `${TEXT_CALLS[name] ?? name}(${of.join(`${between} `)})`,
  sum: (of) => `Σ${of}`,
  cases: (rows) => rows.map(([value, range]) => `${value} (${range})`).join(', '),
  text: (text) => text,
};

/** A formula on one line of text. */
export const typeset = (formula: string, names?: Names, decimalMark?: string): string =>
  typesetIn(textNotation, formula, names, decimalMark);

/**
 * Control characters, odd and invisible blanks, halves of pairs, private and forbidden characters. By number: engines
 * without Unicode tables refuse a class by its property.
 */
const UNWRITABLE =
  /[\0-\x1f\x7f-\xa0\xad\u061c\u1680\u180e\u2000-\u200f\u2028-\u202f\u205f-\u206f\u3000\ud800-\udfff\ue000-\uf8ff\ufdd0-\ufdef\ufeff\ufff0-\ufffb\ufffe\uffff]/gu;

/** Text without what neither TeX nor XML can hold. */
const plain = (text: string): string => text.replace(UNWRITABLE, ' ');

const TEX_WORDS: Readonly<Record<string, string>> = {
  '\\': '\\textbackslash{}',
  '^': '\\textasciicircum{}',
  '~': '\\textasciitilde{}',
  '×': '$\\times$',
  Φ: '$\\Phi$',
  σ: '$\\sigma$',
};
const texText = (text: string): string =>
  plain(text).replace(/[\\^~{}$&#_%×Φσ]/g, (mark) => TEX_WORDS[mark] ?? `\\${mark}`);
const TEX_SIGNS = {
  '+': ' + ',
  '-': ' - ',
  '*': ' \\times ',
  '=': ' = ',
  '≈': ' \\approx ',
  '<': ' < ',
  '≤': ' \\le ',
} as const;
const TEX_CALLS = ['exp', 'ln', 'log', 'min', 'max', 'Phi'];

/** A symbol with the number it ends in below the line: W1. */
const indexed = (name: string): [string, string | undefined] => {
  const parts = /^([A-Za-z]+)(\d+)$/.exec(name);
  return parts ? [parts[1]!, parts[2]] : [name, undefined];
};

export const latexNotation: Notation = {
  minus: TEX_SIGNS['-'],
  number: (digits) => digits.replace(/e\+?(-?\d+)/, ' \\times 10^{$1}'),
  name: (name) => {
    const [base, index] = indexed(name);
    if (name === 'σ') return '\\sigma';
    return (base.length === 1 ? base : `\\mathrm{${texText(base)}}`) + (index ? `_{${index}}` : '');
  },
  sign: (sign) => TEX_SIGNS[sign],
  fraction: (over, under) => `\\frac{${over}}{${under}}`,
  power: (base, power) => `{${base}}^{${power}}`,
  root: (of) => `\\sqrt{${of}}`,
  group: (of) => `\\left(${of}\\right)`,
  // A comma alone brings a space.
  decimal: (mark) => `{${mark}}`,
  call: (name, of, between = ',') =>
    `${TEX_CALLS.includes(name) ? `\\${name === 'log' ? 'ln' : name}` : `\\operatorname{${texText(name)}}`}\\left(${of.join(`${between} `)}\\right)`,
  sum: (of) => `\\sum ${of}`,
  cases: (rows) => `\\begin{cases} ${rows.map(([value, range]) => `${value} & ${range}`).join(' \\\\ ')} \\end{cases}`,
  text: (text) => `\\text{${texText(text)}}`,
};

const XML_WORDS: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' };
/** Text inside an element of XML or HTML, or in quotes. */
export const xmlText = (text: string): string => plain(text).replace(/[&<>"]/g, (mark) => XML_WORDS[mark]!);
const XML_SIGNS = { '+': '+', '-': '−', '*': '×', '=': '=', '≈': '≈', '<': '&lt;', '≤': '≤' } as const;
const tag = (name: string, inside: string): string => `<${name}>${inside}</${name}>`;
const operator = (mark: string): string => tag('mo', mark);
const row = (inside: string): string => tag('mrow', inside);

export const mathmlNotation: Notation = {
  minus: operator('−'),
  number: (digits) => {
    const [whole, power] = digits.split(/e\+?/) as [string, string?];
    const exponent = power?.replace(/-?/, (minus) => (minus ? operator('−') : '') + '<mn>');
    return tag('mn', whole) + (exponent ? `${operator('×')}<msup><mn>10</mn>${row(`${exponent}</mn>`)}</msup>` : '');
  },
  name: (name) => {
    const [base, index] = indexed(name);
    const letter = tag('mi', xmlText(base));
    return index ? tag('msub', letter + tag('mn', index)) : letter;
  },
  sign: (sign) => operator(XML_SIGNS[sign]),
  fraction: (over, under) => tag('mfrac', row(over) + row(under)),
  power: (base, power) => tag('msup', row(base) + row(power)),
  root: (of) => tag('msqrt', of),
  group: (of) => row(operator('(') + of + operator(')')),
  call: (name, of, between = ',') =>
    row(
      tag('mi', xmlText(TEXT_CALLS[name] ?? name)) +
        operator('\u2061') +
        row(operator('(') + of.join(operator(between)) + operator(')')),
    ),
  sum: (of) => operator('∑') + of,
  cases: (rows) =>
    row(
      operator('{') +
        tag('mtable', rows.map(([value, range]) => tag('mtr', tag('mtd', value) + tag('mtd', range))).join('')),
    ),
  // A blank at the start, as before a unit, would fall away.
  text: (text) => tag('mtext', xmlText(text).replace(/^ /, '\u00a0')),
};
