import { DOMParser, type Element, type Node } from '@xmldom/xmldom';
import fc from 'fast-check';
import katex from 'katex';
import markdownIt from 'markdown-it';
import { evaluate } from 'mathjs';
import { describe, expect, it } from 'vitest';
import {
  sessionTotals,
  attempt,
  correctForCuffWidth,
  estimateOcclusionPressure,
  estimateOneRepMax,
  InputError,
  measuredOcclusionPressure,
  targetCuffPressure,
  testedOneRepMax,
  trainingLoad,
  type Answer,
} from '../../src/index.js';
import { explain, type ExplainFormat } from '../../src/text/index.js';
import { latexNotation, mathmlNotation, typesetIn } from '../../src/text/formula.js';
import { expandDocument, planSession, type PlanRequest } from '../../src/plan/index.js';
import { occlusionEquations } from '../../src/pressure/equations.js';
import { oneRepMaxEquations } from '../../src/strength/equations.js';
import { CHAIN, EXTENSION } from '../support/inputs.js';

const tempo = { eccentricS: 2, bottomS: 0.5, concentricS: 2 };
const readings = { systolicMmHg: 124, diastolicMmHg: 76, posture: 'supine', ageYears: 31, sex: 'female' } as const;
const estimates = occlusionEquations.map(({ id, limb, cuffWidthCm }) =>
  estimateOcclusionPressure({
    ...readings,
    limb: limb === 'any' ? 'leg' : limb,
    circumferenceCm: 40,
    cuffWidthCm: cuffWidthCm === 'any' ? 10 : typeof cuffWidthCm === 'number' ? cuffWidthCm : cuffWidthCm.low,
    paddingCoefficient: 0.8,
    equation: id,
  }),
);
/** Each equation with a set it takes: some know five repetitions only, some a heavier load. */
const maxima = oneRepMaxEquations.map(({ id }) => {
  const sets = [6, 5, 8, 12].flatMap((repetitions) => [62.5, 120].map((load) => ({ load, repetitions, equation: id })));
  const found = sets.map((set) => attempt(estimateOneRepMax, set)).find(({ ok }) => ok);
  if (!found?.ok) throw new Error(`no set suits ${id}`);
  return found.value;
});
const occlusion = measuredOcclusionPressure({ valueMmHg: 165, method: 'doppler', limb: 'leg' });
const totals = ['continuous', 'intermittent', 'none'].flatMap((restriction) => {
  const {
    cautions: _,
    limbs: _limbs,
    exercises: _exercises,
    ...sums
  } = sessionTotals({ ...CHAIN, tempo, restriction: restriction as 'none', load: 20 });
  return Object.values<Answer | undefined>(sums).filter((sum) => sum !== undefined);
});
const answers: readonly Answer[] = [
  ...estimates,
  ...maxima,
  ...totals,
  occlusion,
  correctForCuffWidth({
    limb: 'leg',
    circumferenceCm: 55,
    systolicMmHg: 120,
    diastolicMmHg: 70,
    occlusionMmHg: 160,
    fromWidthCm: 10,
    toWidthCm: 15,
  }),
  targetCuffPressure({ occlusion, percentLop: 50, gaugeStepMmHg: 5 }),
  testedOneRepMax({ load: 100 }),
  estimateOneRepMax({ load: 80, repetitions: 1 }),
  trainingLoad({
    oneRepMax: estimateOneRepMax({ load: 80, repetitions: 8, unit: 'lb' }),
    percentOneRepMax: 30,
    unit: 'kg',
  }),
];
const cases = answers.map((answer, index) => ({ index, kind: answer.kind, equation: answer.equation, answer }));

const request = {
  label: 'Athlete B',
  ...readings,
  limbs: [
    { limb: 'leg', side: 'left', circumferenceCm: 60, cuffWidthCm: 18, percentLop: 60, gaugeStepMmHg: 2 },
    { limb: 'leg', side: 'right', cuffWidthCm: 10, percentLop: 60, measured: { valueMmHg: 170, method: 'doppler' } },
  ],
  exercises: [
    {
      ...EXTENSION,
      oneRepMax: { load: 50, repetitions: 10 },
      percentOneRepMax: 30,
      tempo,
      restS: 60,
    },
  ],
} as const satisfies PlanRequest;

/** Parses XML with a general-purpose parser, which refuses what is not well formed. */
const xml = (text: string): Element =>
  new DOMParser({
    onError: (level, message) => {
      throw new Error(`${level}: ${message}`);
    },
  }).parseFromString(text, 'text/xml').documentElement!;

/** Presentation MathML read as people read it: a bar divides, what stands raised is a power. Text stands in quotes. */
function read(node: Node): string {
  const children = Array.from(node.childNodes).filter(({ nodeName }) => nodeName !== 'annotation');
  const parts = children.map(read);
  // The typesetter writes the dot of a unit as the dot of a product.
  const own = (node.textContent ?? '').replace(/[\s\u00a0]+/g, ' ').replaceAll('⋅', '·');
  switch (node.nodeName) {
    case 'mn':
    case 'mi':
      return own.trim() === 'ln' ? 'log' : own.trim();
    case 'mo':
      return { '×': '*', '−': '-', '\u2061': '', '(': '(', ')': ')' }[own.trim()] ?? own.trim();
    case 'mtext':
      return JSON.stringify(own.trim());
    case 'mfrac':
      return `((${parts[0]})/(${parts[1]}))`;
    case 'msup':
      return `((${parts[0]})^(${parts[1]}))`;
    case 'msub':
      return `${parts[0]}${parts[1]}`;
    case 'msqrt':
      return `sqrt(${parts.join('')})`;
    case '#text':
    case 'mspace':
      return '';
    default:
      return parts.join('');
  }
}

const rowsOf = (math: Element): string[] => Array.from(math.getElementsByTagName('mtr')).map(read);

/** The rows of LaTeX as an independent implementation typesets them; it throws on what it cannot read. */
const latexRows = (tex: string, strict: 'error' | 'ignore' = 'error'): string[] =>
  rowsOf(xml(katex.renderToString(tex, { displayMode: true, output: 'mathml', throwOnError: true, strict })));

/** The sums of the plain text: each formula or number that follows a sign of equality. */
const textSums = (text: string): string[] =>
  text
    .split('\n')
    .flatMap((line) => {
      const labelled = /^ *[^=:]+: (.+) [=≈] (.+) [=≈<] (.+)$/.exec(line);
      if (labelled) return /^ *assumption/.test(line) ? [] : labelled.slice(1);
      return /^ *(?:[\w%]+ )?[=≈] (.*)$/.exec(line)?.[1] ?? [];
    })
    .map((sum) => sum.replaceAll('×', '*').replaceAll('−', '-').replaceAll('√', 'sqrt'));

const asSums = (rows: readonly string[]): string[] =>
  rows
    .flatMap((row) => {
      const labelled = /^".*?:"(.+)[=≈](.+)[=≈<]"(.+)"$/.exec(row);
      return labelled ? labelled.slice(1) : (/^[\w%]*[=≈](.*)$/.exec(row)?.[1] ?? []);
    })
    .map((sum) => sum.replace(/"(.*)"$/, ' $1'));

/**
 * What a sum comes to, its symbols standing for numbers of no meaning, and Φ for any function; nothing for one that ends
 * in a unit.
 */
function worth(printed: string): number | undefined {
  if (/^ *-?[\d.]+ (%|[a-z])/i.test(printed)) return undefined;
  const sum = printed
    .replace(/[Σ∑]/g, '')
    .replaceAll('Φ(', 'cos(')
    .replaceAll('σ', 'sigma')
    .replace(/\bln\(/g, 'log(');
  const symbols = new Set(sum.match(/[A-Za-z]\w*(?!\w*\()/g));
  const scope = Object.fromEntries([...symbols].map((name, index) => [name, 3.7 + index * 1.3]));
  return evaluate(sum, scope) as number;
}

function expectSameSums(found: readonly string[], expected: readonly string[]): void {
  expect(found).toHaveLength(expected.length);
  found.forEach((sum, index) => {
    const value = worth(expected[index]!);
    if (value === undefined) expect(sum.trim()).toBe(expected[index]!.trim());
    else expect(worth(sum)! / (value || 1), `${sum} for ${expected[index]}`).toBeCloseTo(value ? 1 : 0, 12);
    expect(sum.match(/[\d.]+/g)).toEqual(expected[index]!.match(/[\d.]+/g));
  });
}

describe.each(cases)('explain, answer $index ($kind by $equation)', ({ answer }) => {
  const text = explain(answer);
  it('says the same sums in LaTeX', () => {
    expectSameSums(asSums(latexRows(explain(answer, { format: 'latex' }))), textSums(text));
  });
  it('says the same sums in MathML', () => {
    expectSameSums(asSums(rowsOf(xml(explain(answer, { format: 'mathml' })))), textSums(text));
  });
  it('says the same in Markdown', () => {
    const html = markdownIt({ html: true }).render(explain(answer, { format: 'markdown' }));
    const message = xml(`<page>${html}</page>`).textContent!.replace(/\s+/g, ' ');
    for (const line of text.split('\n')) expect(message).toContain(line.trim().replace(/\s+/g, ' '));
  });
  it('says the same in HTML, its sums as MathML', () => {
    const page = xml(explain(answer, { format: 'html' }));
    const sums = Array.from(page.getElementsByTagName('math')).flatMap((one) => rowsOf(one));
    expectSameSums(asSums(sums), textSums(text));
    const message = page.textContent!.replace(/\s+/g, ' ');
    const others = text.split('\n').filter((line) => !/^ *(?:[\w%]+ )?[=≈] |: .* [=≈] .* [=≈<] /.test(line));
    for (const line of others) expect(message).toContain(line.trim().replace(/\s+/g, ' '));
  });
});

describe('explain, a plan', () => {
  const plan = planSession(request);
  const text = explain(plan);

  it('says the same sums in LaTeX and MathML, under the limb and the exercise they belong to', () => {
    for (const rows of [
      latexRows(explain(plan, { format: 'latex' })),
      rowsOf(xml(explain(plan, { format: 'mathml' }))),
    ]) {
      expectSameSums(asSums(rows), textSums(text));
      // Pressure × time is each leg’s own, everything else is the same for both.
      const [left, right] = ['"[leg extension, left leg]"', '"[leg extension, right leg]"'];
      const titles = ['"[left leg]"', '"[leg extension]"', left, '"[right leg]"', right, '"[The whole session]"'];
      expect(rows.filter((row) => row.startsWith('"['))).toEqual(titles);
    }
  });

  it('says the same in Markdown, with headings, lists and a table for the clock', () => {
    const html = markdownIt({ html: true }).render(explain(plan, { format: 'markdown' }));
    const page = xml(`<page>${html}</page>`);
    const texts = (name: string) => Array.from(page.getElementsByTagName(name)).map((found) => found.textContent);
    expect(texts('h1')).toEqual(['Session plan']);
    expect(texts('h2')).toContain('1. leg extension, both sides');
    const own = ['leg extension, left leg', 'leg extension, right leg'];
    expect(texts('h3')).toEqual(['left leg', 'leg extension', own[0], 'right leg', own[1], 'The whole session']);
    // Of the session: the seven sums the legs share, pressure × time twice, the peak load and its share.
    expect(texts('h4')).toHaveLength(2 + 9 + 2 + 2 + 2 + 11);
    expect(texts('td')).toEqual(
      expect.arrayContaining(['0:00', 'deflate (left leg)', 'set 1: 30 repetitions (both sides)']),
    );
    const points = texts('li');
    for (const { severity, text } of plan.cautions) {
      expect(points.filter((point) => point!.startsWith(`${severity}: ${text}`))).toHaveLength(1);
    }
    const whose = points.find((point) => point!.includes('An estimated occlusion pressure'));
    expect(whose).toMatch(/\(leg extension, left leg\)$/);
    for (const { text } of expandDocument(plan).stopCriteria) expect(points).toContain(text);
    const message = page.textContent!.replace(/\s+/g, ' ');
    for (const { text } of expandDocument(plan).disclaimers) expect(message).toContain(text);
    for (const sum of text.split('\n').filter((line) => line.includes(' = '))) {
      expect(message).toContain(sum.trim().replace(/\s+/g, ' '));
    }
  });

  it('says the same in HTML, in parts of which those that matter have a name', () => {
    const page = xml(explain(plan, { format: 'html' }));
    const parts = Array.from(page.getElementsByTagName('section'));
    expect(parts.flatMap((one) => one.getAttribute('class') ?? [])).toEqual(['stop-criteria', 'exercise']);
    const message = page.textContent!.replace(/\s+/g, ' ');
    const pageLines = text
      .slice(0, text.indexOf('\nWORKING'))
      .split('\n')
      .filter((line) => !/^[-=]*$/.test(line) && line !== line.toUpperCase());
    for (const line of pageLines.flatMap((one) => one.split(/^- | {2,}/)))
      expect(message).toContain(line.trim().replace(/\s+/g, ' '));
    const brief = xml(explain(plan, { format: 'html', detail: 'brief' }));
    const inBrief = Array.from(brief.getElementsByTagName('section')).flatMap((one) => one.getAttribute('class') ?? []);
    expect(inBrief).toEqual(['stop-criteria', 'exercise', 'write-down']);
  });

  // What somebody may type into a form.
  const typed = [
    '<img src=x onerror=alert(1)> & <b>bold</b>',
    '[a link](javascript:alert(1)) ![picture](x) <https://example.org>',
    '# *stars* _lines_ `ticks` ~~struck~~ | pipe | $x$',
    '\\input{x} \\\\ \\end{aligned} % $a^2$ #1 {~}',
    'Knie 🦵🏽 עברית \u202e \u0007 \ud800 end',
    '1. first',
    '- point',
    '&lt; ]]> <!--',
  ];
  it.each(typed)('shows what was typed as it was typed: %j', (name) => {
    const own = planSession({ ...request, label: name, exercises: [{ ...request.exercises[0], name }] });
    const render = (text: string) => markdownIt({ html: true }).render(text);
    const html = render(explain(own, { format: 'markdown' }));
    const plain = render(explain(plan, { format: 'markdown' }));
    const tags = (page: string) => page.match(/<[a-z]\w*/g);
    expect(tags(html)).toEqual(tags(plain));
    const written = explain(own, { format: 'html' });
    expect(tags(written)).toEqual(tags(explain(plan, { format: 'html' })));
    if (!/[\p{Cc}\p{Cs}\u202e]/u.test(name)) expect(xml(written).textContent).toContain(`1. ${name}, both sides`);
    const tex = explain(own, { format: 'latex' });
    expect(latexRows(tex, 'ignore')).toHaveLength(rowsOf(xml(explain(plan, { format: 'mathml' }))).length);
    expect(rowsOf(xml(explain(own, { format: 'mathml' }))).some((row) => row.startsWith('"['))).toBe(true);
    if (!/[\p{Cc}\p{Cs}]/u.test(name)) {
      expect(xml(explain(own, { format: 'mathml' })).textContent).toContain(`[${name}]`);
    }
  });
  it('refuses a name of two lines', () => {
    const own = { ...request, exercises: [{ ...request.exercises[0], name: 'two\u2028lines' }] };
    const attempted = attempt(planSession, own);
    expect(attempted.ok ? [] : attempted.issues.map(({ path }) => path)).toEqual([['exercises', 0, 'name']]);
  });
});

describe('explain, any formula', () => {
  const leaf = fc.oneof(
    fc.integer({ min: 0, max: 99 }).map(String),
    fc.double({ min: 0.001, max: 50, noNaN: true }).map((value) => value.toFixed(3)),
    fc.constantFrom('a', 'LOP', 'W1', 'sex', '1e-7', '2.5e+21'),
  );
  const { formula } = fc.letrec<{ formula: string; part: string }>((tie) => ({
    part: fc.oneof(
      { maxDepth: 5 },
      leaf,
      tie('formula').map((inside) => `(${inside})`),
      tie('formula').map((inside) => `exp(-(${inside}) / 1000)`),
      tie('formula').map((inside) => `sqrt(1 + (${inside})^2)`),
      tie('formula').map((inside) => `ln(2 + (${inside})^2)`),
    ),
    formula: fc.oneof(
      { maxDepth: 5 },
      tie('part'),
      fc.tuple(tie('formula'), fc.constantFrom(' + ', ' - '), tie('part')).map((parts) => parts.join('')),
      fc.tuple(tie('part'), fc.constantFrom(' * ', ' / '), tie('part')).map((parts) => parts.join('')),
      tie('part').map((part) => `-${part}`),
      fc.tuple(fc.constantFrom('a', 'LOP', '3'), tie('part')).map(([base, part]) => `${base}^(${part} / 1000)`),
    ),
  }));
  const scope = { a: 1.7, LOP: 160.2, W1: 11.3, sex: 1 };
  const value = (sum: string): unknown => evaluate(sum.replace(/\bln\(/g, 'log('), scope);
  const close = (found: unknown, expected: unknown): boolean =>
    typeof expected !== 'number' || !Number.isFinite(expected)
      ? String(found) === String(expected)
      : Math.abs((found as number) - expected) <= 1e-9 * Math.abs(expected);

  it('comes to the same in either notation as in one line, by independent readers', () => {
    fc.assert(
      fc.property(formula, (sum) => {
        const expected = value(sum);
        const table = (rows: string) => `<math><mtable><mtr><mtd>${rows}</mtd></mtr></mtable></math>`;
        const [mathml] = rowsOf(xml(table(typesetIn(mathmlNotation, sum))));
        const [latex] = latexRows(`\\begin{aligned}${typesetIn(latexNotation, sum)}\\end{aligned}`);
        expect(mathml).not.toContain('"');
        // What overflows or is not real is compared by its words only.
        expect(close(value(mathml!), expected), `${mathml} for ${sum}`).toBe(true);
        expect(close(value(latex!), expected), `${latex} for ${sum}`).toBe(true);
      }),
      { numRuns: 250 },
    );
  });

  it.each([
    '',
    'measured at the thigh',
    'a b',
    '(a',
    'a)',
    'a +',
    'f(',
    '3 < 4',
    'Σ w',
    '('.repeat(5000),
    'x'.repeat(9) + '^',
  ])('stands as it is where it cannot be taken apart: %j', (sum) => {
    expect(latexRows(`\\begin{aligned}${typesetIn(latexNotation, sum)}\\end{aligned}`, 'ignore')).toHaveLength(1);
    expect(xml(typesetIn(mathmlNotation, sum)).nodeName).toBe('mtext');
    expect(xml(typesetIn(mathmlNotation, sum)).textContent).toBe(sum);
  });
});

describe('explain, its options', () => {
  const answer = testedOneRepMax({ load: 100 });
  it('writes text when nothing is asked for', () => {
    expect(explain(answer, {})).toBe(explain(answer));
    expect(explain(answer, { format: 'text', locale: {} })).toBe(explain(answer));
    expect(explain(answer, { format: undefined, locale: undefined })).toBe(explain(answer));
  });
  it('refuses a format it does not have, an option it does not have, and texts that are no texts', () => {
    const paths = (options: unknown): unknown => {
      try {
        return explain(answer, options as never);
      } catch (error) {
        expect(error).toBeInstanceOf(InputError);
        return (error as InputError).issues.map(({ path }) => path.join('.'));
      }
    };
    expect(paths({ format: 'rtf' })).toEqual(['format']);
    expect(paths({ fromat: 'text' })).toEqual(['fromat']);
    expect(paths({ locale: { 'normal-interval': 1 } })).toEqual(['locale']);
    expect(paths({ locale: 'de' })).toEqual(['locale']);
    expect(paths({ locale: null })).toEqual(['locale']);
    expect(paths({ detail: 'short' })).toEqual(['detail']);
    expect(paths({ detail: 'brief' })).toEqual(['detail']);
    expect(paths({ detail: 'sentence' })).toEqual(['detail']);
    expect(paths(null)).toEqual(['']);
    expect(paths(0)).toEqual(['']);
  });

  it('names every option where one is not known', () => {
    const result = attempt((options: object) => explain(answer, options), { texts: {} });
    expect(result.ok ? [] : result.issues.map(({ expected }) => expected)).toEqual([
      'one of format, detail, locale, units',
    ]);
  });

  it('works on an answer that was stored and read back, in every format', () => {
    const stored = JSON.parse(JSON.stringify(answer)) as Answer;
    for (const format of ['text', 'markdown', 'html', 'latex', 'mathml'] satisfies ExplainFormat[]) {
      expect(explain(stored, { format })).toBe(explain(answer, { format }));
    }
  });
  it('ends in text or an InputError whatever was done to a stored answer, in every format', () => {
    const stored = answers.map((one) => JSON.parse(JSON.stringify(one)) as Answer);
    const tampered = fc
      .constantFrom(...stored)
      .chain((one) =>
        fc.record({ one: fc.constant(one), field: fc.constantFrom(...Object.keys(one)), value: fc.jsonValue() }),
      );
    const outcomes = new Set<string>();
    fc.assert(
      fc.property(
        tampered,
        fc.constantFrom('text', 'markdown', 'html', 'latex', 'mathml'),
        ({ one, field, value }, format) => {
          try {
            const written = explain({ ...one, [field]: value } as Answer, { format: format as ExplainFormat });
            outcomes.add(typeof written);
          } catch (error) {
            if (!(error instanceof InputError)) throw error;
            outcomes.add(error.name);
          }
        },
      ),
      { numRuns: 600 },
    );
    expect([...outcomes].sort()).toEqual(['InputError', 'string']);
  });
});
