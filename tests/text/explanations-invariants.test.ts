import MarkdownIt from 'markdown-it';
import { describe, expect, it } from 'vitest';
import { latexNotation, mathmlNotation, typesetIn } from '../../src/text/formula.js';
import { markdownText } from '../../src/text/write.js';
import { grades } from '../../src/evidence/grades.js';
import type { Answer, AssumptionCode, CautionCode } from '../../src/index.js';
import { explain, messages, words } from '../../src/text/index.js';

// The answers are made up, so that each holds all that an answer may hold; what is expected is written by hand.

const inner: Answer = {
  kind: 'one-repetition-maximum',
  value: 90,
  unit: 'kg',
  lower: 84.111,
  upper: 95.889,
  level: 0.95,
  standardDeviation: 3.0044,
  errors: [
    { part: 'equation', standardDeviation: 3, evidence: 'derived' },
    { part: 'retest', standardDeviation: 0.1634, evidence: 'published' },
  ],
  equation: 'made-up-1',
  evidence: 'secondary',
  ownEquation: { formula: 'a', symbols: { a: 'load' } },
  inputs: { load: 90 },
  rounding: { from: 90.4, to: 'nearest', available: [85, 90] },
  assumptions: [],
  cautions: [],
};
const bare: Answer = {
  kind: 'sessions',
  value: 3,
  unit: '{sessions}',
  equation: 'made-up-2',
  evidence: 'practice',
  ownEquation: { formula: '1 + 2', symbols: {} },
  inputs: { parts: [inner] },
  assumptions: [],
  cautions: [],
};
const whole: Answer = {
  ...inner,
  kind: 'training-load',
  value: 17.5,
  lower: 15,
  upper: 21,
  equation: 'made-up-3',
  evidence: 'unconfirmed',
  ownEquation: {
    formula: 'p / 100 * M - (q + x1) * exp(-s) + r',
    symbols: {
      p: 'percentOneRepMax',
      M: 'oneRepMax',
      q: 'shiftMmHg',
      x1: 'repetitionsPerSet',
      s: { field: 'sex', codes: { male: 1, female: 2 } },
      r: 'girth',
    },
  },
  inputs: {
    percentOneRepMax: 20,
    oneRepMax: inner,
    shiftMmHg: -2.5,
    repetitionsPerSet: '15 + 15',
    sex: 'female',
    girth: '3 × 4',
  },
  rounding: { from: 18, to: 'down', step: 2.5 },
  reached: { percentOneRepMax: 1750 / 90, lower: 18.25, upper: 20.806, occlusionChancePercent: 0.049, highestMmHg: 20 },
  assumptions: [
    { code: 'own-assumption' as AssumptionCode },
    { code: 'error-share', values: { percentOneRepMax: 10 } },
  ],
  cautions: [{ severity: 'caution', code: 'own-caution' as CautionCode, text: 'Look: {x}', values: { x: 1 } }],
};
const lines = (answer: Answer, options?: object) => explain(answer, options).split('\n');

describe('an answer explained', () => {
  // Sums, units and words were worked out by hand when the pages were written; a change of them is read there.
  it.each(['text', 'markdown', 'html', 'latex', 'mathml'] as const)('stands on golden pages: %s', async (format) => {
    const page = [whole, bare, { ...bare, inputs: {} }].map((answer) => explain(answer, { format })).join('\n\n\n');
    await expect(`${page}\n`).toMatchFileSnapshot(`pages/explained-${format}.txt`);
  });

  it('begins with its stops, and with those of what it was worked out from', () => {
    const text = 'Do not inflate to 320 mmHg.';
    const stop = { severity: 'stop', code: 'own-stop' as CautionCode, text } as const;
    const inside: Answer = { ...whole, inputs: { ...whole.inputs, oneRepMax: { ...inner, cautions: [stop] } } };
    for (const answer of [{ ...whole, cautions: [...whole.cautions, stop] }, inside]) {
      const page = explain(answer);
      expect(lines(answer).slice(0, 3)).toEqual([`stop: ${text}`, '', 'Training load: 17.5 kg']);
      expect(page.split(text)).toHaveLength(2);
      expect(lines(answer, { format: 'markdown' }).slice(0, 3)).toEqual([
        `- stop: ${text}`,
        '',
        '# Training load: 17.5 kg',
      ]);
      expect(lines(answer, { format: 'latex' })[1]).toContain(`[stop: ${text}]`);
      expect(explain(answer, { format: 'mathml' }).indexOf(text)).toBeLessThan(
        explain(answer, { format: 'mathml' }).indexOf('Training load'),
      );
    }
  });

  it('with no symbols, no interval and no rounding', () => {
    expect(lines(bare).slice(0, 5)).toEqual([
      'Sessions: 3 sessions',
      '  Ns = 1 + 2',
      '     = 3 sessions',
      `  equation made-up-2; evidence practice: ${grades.practice}`,
      '',
    ]);
    const { rounding: _, ...exact } = inner;
    const pounds: Answer = {
      ...exact,
      unit: '[lb_av]',
      ownEquation: { formula: 'a', symbols: { a: 'load', r: 'repetitions' } },
      inputs: { load: 90, repetitions: 5, unit: 'lb' },
    };
    expect(lines(pounds).slice(0, 4)).toEqual([
      'One-repetition maximum: 90 lb (95 % interval 84.1–95.9 lb)',
      '  1RM = a',
      // Numbers that are the result already are not printed twice.
      '      = 90 lb',
      '        with a load 90 lb, r repetitions 5 repetitions',
    ]);
    expect(lines(pounds, { format: 'latex' })).toHaveLength(2 + 6 + 3);
  });

  // One decimal is shown, so what is shown as 0.0 would be no chance at all.
  it.each([
    [{ percentLop: 50.05 }, ['that is 50.0 %']],
    [{ percentLop: 50, lower: 30 }, ['that is 50.0 %; 95 % interval 30.0 % and above']],
    [{ percentLop: 50, occlusionChancePercent: 0.05 }, ['the chance that it closes the artery fully is 0.1 %']],
    [{ percentLop: 50, occlusionChancePercent: 0 }, ['the chance that it closes the artery fully is less than 0.1 %']],
  ])('says of what is reached %j', (reached, expected) => {
    const message = lines({ ...bare, reached }).map((line) => line.trim());
    expect(message).toEqual(expect.arrayContaining(expected));
    expect(message.filter((line) => /that is|highest/.test(line))).toHaveLength(1);
  });

  it('has a heading lower for each part, of the six levels of Markdown', () => {
    const deep = [1, 2, 3, 4, 5, 6].reduce<Answer>((within) => ({ ...bare, inputs: { within } }), inner);
    const levels = lines(deep, { format: 'markdown' }).flatMap((line) => /^#+/.exec(line)?.[0].length ?? []);
    expect(levels).toEqual([1, 2, 3, 4, 5, 6, 6]);
  });

  it('in the words of the caller, every one of them', async () => {
    const slots = (text: string) => (text.match(/\{\w+\}/g) ?? []).map((slot) => ` ${slot}`).join('');
    const codes = Object.entries({ ...messages, ...words, 'number.decimal-mark': undefined }).flatMap(([code, text]) =>
      text === undefined ? [] : [[code, `<${code}${slots(text)}>`]],
    );
    const page = explain(whole, { locale: Object.fromEntries(codes) as object });
    await expect(`${page}\n`).toMatchFileSnapshot('pages/explained-codes.txt');
  });
});

describe('a formula', () => {
  const mn = (number: string) => `<mn>${number}</mn>`;
  const mi = (name: string) => `<mi>${name}</mi>`;
  const row = (...inside: string[]) => `<mrow>${inside.join('')}</mrow>`;
  const [plus, minus, times, open, close, comma] = ['+', '−', '×', '(', ')', ','].map((mark) => `<mo>${mark}</mo>`);
  const ten = (...power: string[]) => `${times}<msup><mn>10</mn>${row(...power)}</msup>`;
  const call = (name: string, ...of: string[]) => row(mi(name), '<mo>\u2061</mo>', row(open!, ...of, close!));

  // Source: the same written by hand, in LaTeX and by the elements of MathML Core.
  it.each([
    ['1.5e-7', '1.5 \\times 10^{-7}', mn('1.5') + ten(minus!, mn('7'))],
    ['2e+21', '2 \\times 10^{21}', mn('2') + ten(mn('21'))],
    ['2e10', '2 \\times 10^{10}', mn('2') + ten(mn('10'))],
    ['W1', 'W_{1}', `<msub>${mi('W') + mn('1')}</msub>`],
    ['LOP12', '\\mathrm{LOP}_{12}', `<msub>${mi('LOP') + mn('12')}</msub>`],
    ['VO2max', '\\mathrm{VO2max}', mi('VO2max')],
    ['a_b1', '\\mathrm{a\\_b1}', mi('a_b1')],
    ['_a', '\\mathrm{\\_a}', mi('_a')],
    ['  2 × w', '2 \\times w', mn('2') + times + mi('w')],
    ['a+b-c*d', 'a + b - c \\times d', mi('a') + plus + mi('b') + minus + mi('c') + times + mi('d')],
    ['a * b / c', '\\frac{a \\times b}{c}', `<mfrac>${row(mi('a'), times!, mi('b'))}${row(mi('c'))}</mfrac>`],
    ['(a) / ((b))', '\\frac{a}{b}', `<mfrac>${row(mi('a'))}${row(mi('b'))}</mfrac>`],
    [
      '(a - 1) ^ (-n)',
      '{\\left(a - 1\\right)}^{ - n}',
      `<msup>${row(row(open!, mi('a'), minus!, mn('1'), close!))}${row(minus!, mi('n'))}</msup>`,
    ],
    ['--a', ' -  - a', minus + minus! + mi('a')],
    ['sqrt(a)', '\\sqrt{a}', `<msqrt>${mi('a')}</msqrt>`],
    ['sqrt(a, b)', '\\operatorname{sqrt}\\left(a, b\\right)', call('sqrt', mi('a'), comma!, mi('b'))],
    ['ln(a)', '\\ln\\left(a\\right)', call('ln', mi('a'))],
    ['max(a, 0)', '\\max\\left(a, 0\\right)', call('max', mi('a'), comma!, mn('0'))],
    ['my_f(a)', '\\operatorname{my\\_f}\\left(a\\right)', call('my_f', mi('a'))],
  ])('%s', (formula, latex, mathml) => {
    expect(typesetIn(latexNotation, formula)).toBe(latex);
    expect(typesetIn(mathmlNotation, formula)).toBe(mathml);
  });

  it.each([
    ['', '\\text{}', ''],
    ['a b', '\\text{a b}', 'a b'],
    ['a) * b', '\\text{a) $\\times$ b}', 'a) × b'],
    ['(a, b)', '\\text{(a, b)}', '(a, b)'],
    ['f(a,)', '\\text{f(a,)}', 'f(a,)'],
    ['f(,)', '\\text{f(,)}', 'f(,)'],
    ['f(a', '\\text{f(a}', 'f(a'],
    ['a ^', '\\text{a \\textasciicircum{}}', 'a ^'],
    ['a - ', '\\text{a − }', 'a − '],
    ['- * 3', '\\text{- $\\times$ 3}', '- × 3'],
    ['/ 3', '\\text{/ 3}', '/ 3'],
    [' 3 < "4" & 5 > 2', '\\text{ 3 < "4" \\& 5 > 2}', '\u00a03 &lt; &quot;4&quot; &amp; 5 &gt; 2'],
    ['~ \\ {#_%$}', '\\text{\\textasciitilde{} \\textbackslash{} \\{\\#\\_\\%\\$\\}}', '~ \\ {#_%$}'],
    ['a\u0007b\u2028c', '\\text{a b c}', 'a b c'],
  ])('stands as text where it is none: %j', (formula, latex, mathml) => {
    expect(typesetIn(latexNotation, formula)).toBe(latex);
    expect(typesetIn(mathmlNotation, formula)).toBe(`<mtext>${mathml}</mtext>`);
  });

  it('has a thousand pieces at most', () => {
    const ones = (count: number) => Array<string>(count).fill('1').join('+');
    expect(typesetIn(mathmlNotation, `-${ones(500)}`)).toMatch(/^<mo>−<\/mo><mn>1/);
    expect(typesetIn(mathmlNotation, ones(501))).toMatch(/^<mtext>1\+1/);
  });
});

describe('text in Markdown', () => {
  const markdown = new MarkdownIt();
  it.each([
    '# not a heading',
    '- not a point',
    '+ nor this',
    '= nor that',
    '1. not counted',
    '12) nor this',
    '12.',
    'in week 3. or 4) there',
    '1x. plain, 3.5 kg - 2 + 1 = # 4 (5.)',
    '22.5 kg',
    '*stars* _lines_ `ticks` ~~struck~~ [a](b) <b> & | \\',
  ])('is shown as it stands: %s', (text) => {
    const [paragraph, { content, children }, ...more] = markdown.parse(markdownText(text), {}) as never as [
      { type: string },
      { content: string; children: { type: string; content: string }[] },
    ];
    expect([paragraph.type, ...(more as object[])].length).toBe(2);
    expect(paragraph.type).toBe('paragraph_open');
    expect(children.map((piece) => piece.content).join('')).toBe(text);
    // Nothing is escaped that needs none.
    expect(content.length - text.length).toBe((text.match(/[\\`*_[\]<>&~|]|^[#+=-]|^\d+[.)](?= |$)/g) ?? []).length);
  });
  it('is one line, its blanks one each', () => {
    expect(markdownText('a \n\t b\nc')).toBe('a b c');
  });
});
