import { erf, evaluate } from 'mathjs';
import { describe, expect, it } from 'vitest';
import {
  attempt,
  bodyMassLoad,
  estimateOneRepMax,
  measuredOcclusionPressure,
  repetitionsAtPercent,
  percentAtRepetitions,
  sessionTotals,
  targetCuffPressure,
  testedOneRepMax,
  trainingLoad,
  type Answer,
  type PercentInput,
  type RepetitionsInput,
} from '../../src/index.js';
import { expandDocument, planSession } from '../../src/plan/index.js';
import { oneRepMaxEquations } from '../../src/strength/equations.js';
import { kindWords } from '../../src/text/kinds.js';
import { explain } from '../../src/text/index.js';
import { publicCalls } from '../support/public-functions.js';
import { PERSON } from '../support/inputs.js';

// Every line of arithmetic that `explain` prints, worked out again from the digits that are printed, by mathjs. A
// student with a calculator does the same.

const isAnswer = (value: object): value is Answer => 'kind' in value && 'equation' in value && 'inputs' in value;

/** Every answer in a value, one of each kind, equation and way in which it is worked out. */
function gather(value: unknown, found: Map<string, Answer>): void {
  if (typeof value !== 'object' || value === null) return;
  // Answers of a stored document refer to each other.
  if ('document' in value && (value.document === 'plan' || value.document === 'record') && 'answers' in value) {
    return gather(expandDocument(value as never), found);
  }
  if (isAnswer(value)) {
    const inputs = Object.keys(value.inputs).sort().join();
    const key = [value.kind, value.equation, inputs, value.unit].join(' ');
    if (!found.has(key)) found.set(key, value);
  }
  for (const part of Object.values(value)) gather(part, found);
}

const answers = new Map<string, Answer>();
for (const { call, right } of Object.values(publicCalls)) gather([call(...(right as never[])), right], answers);

const tempo = { eccentricS: 2, concentricS: 2 };
const measured = measuredOcclusionPressure({ valueMmHg: 165, method: 'doppler', limb: 'leg' });
const pounds = estimateOneRepMax({ load: 185, repetitions: 8, unit: 'lb' });
gather(
  [
    targetCuffPressure({ occlusion: measured, percentLop: 90, gaugeStepMmHg: 5, occlusionChanceLimitPercent: 1 }),
    targetCuffPressure({ occlusion: 150, percentLop: 50, gaugeStepMmHg: 5 }),
    trainingLoad({ oneRepMax: pounds, percentOneRepMax: 30, unit: 'kg', step: 2.5 }),
    trainingLoad({ oneRepMax: testedOneRepMax({ load: 97.3 }), percentOneRepMax: 33 }),
    trainingLoad({
      oneRepMax: testedOneRepMax({ load: 140, unit: 'lb' }),
      bodyMassLoad: bodyMassLoad({ movement: 'push-up-top', sex: 'female', bodyMass: 60 }),
      percentOneRepMax: 70,
      unit: 'kg',
      step: 1,
    }),
    sessionTotals({ scheme: '5x10s', restS: 20, restriction: 'none' }),
    sessionTotals({
      sets: [
        { repetitions: 12, load: 41.275 },
        { repetitions: 10, load: 45 },
      ],
      tempo,
      restS: 61.5,
      restriction: 'continuous',
      pressureMmHg: 80,
      occlusionMmHg: 187,
      unit: 'kg',
    }),
    ...oneRepMaxEquations.flatMap(({ id: equation }) =>
      [
        attempt(percentAtRepetitions, { repetitions: 5, equation } as PercentInput),
        attempt(repetitionsAtPercent, { percentOneRepMax: 82, equation } as RepetitionsInput),
      ].map((result) => (result.ok ? result.value : [])),
    ),
    planSession({
      ...PERSON,
      limbs: [
        { limb: 'arm', side: 'left', circumferenceCm: 32.5, cuffWidthCm: 8, percentLop: 45, gaugeStepMmHg: 5 },
        {
          limb: 'arm',
          side: 'right',
          cuffWidthCm: 8,
          percentLop: 45,
          measured: { valueMmHg: 131, method: 'oximeter' },
        },
      ],
      exercises: [
        {
          name: 'curl',
          limb: 'arm',
          oneRepMax: { load: 22.5, repetitions: 6 },
          percentOneRepMax: 30,
          step: 1,
          scheme: '30-15-15-15',
          tempo,
          restS: 45,
          restriction: 'intermittent',
        },
      ],
    }),
  ],
  answers,
);

const Phi = (x: number): number => (1 + erf(x / Math.SQRT2)) / 2;

/** What a printed expression gives; nothing where it has symbols. */
function worth(printed: string): number | undefined {
  const sum = printed
    .replaceAll('×', '*')
    .replaceAll('−', '-')
    .replaceAll('√(', 'sqrt(')
    .replaceAll('Φ(', 'Phi(')
    .replace(/\bln\(/g, 'log(');
  // Values with the range that each holds in: 150 (51 ≤ 53 < 56).
  const cases = [...sum.matchAll(/([\d.]+) \((?:([\d.]+) ≤ )?([\d.]+)(?: < ([\d.]+))?\)/g)];
  if (cases.length > 1) {
    const holds = cases.filter(([, , from = '0', x, to = '1e9']) => +from <= +x! && +x! < +to);
    expect(holds).toHaveLength(1);
    return Number(holds[0]![1]);
  }
  if (/[A-Za-zΣ%]/.test(sum.replace(/\b(?:Phi|exp|sqrt|log|max)\(/g, '(').replace(/\d(e[+-]?\d+)/g, '1')))
    return undefined;
  return evaluate(sum, { Phi }) as number;
}

/** The result of a line: its number and how far it may be rounded. */
function resultOf(printed: string): { number: number; within: number } | undefined {
  const [, text] = /^(-?[\d.]+(?:e[+-]?\d+)?)(?: |$)/.exec(printed.replaceAll('−', '-')) ?? [];
  if (text === undefined) return undefined;
  const number = Number(text);
  // A percentage with its one decimal; else two decimals, or four digits below 1.
  if (/^[\d.]+\.\d %$/.test(printed)) return { number, within: 0.05 };
  return {
    number,
    within: Math.abs(number) < 1 ? 10 ** (Math.floor(Math.log10(Math.abs(number) || 1)) - 3) / 2 : 0.005,
  };
}

interface Chain {
  /** Expressions with the sign before each. */
  readonly parts: readonly { readonly sign: string; readonly text: string }[];
  readonly line: string;
}

/** Every chain of equal expressions: `label: a = b ≈ c`, or one expression a line below `symbol = a`. */
function chainsOf(text: string): Chain[] {
  const chains: { parts: { sign: string; text: string }[]; line: string }[] = [];
  for (const line of text.split('\n')) {
    const on = /^ +([=≈<]) (.*)$/.exec(line);
    if (on) chains.at(-1)!.parts.push({ sign: on[1]!, text: on[2]! });
    const begun = on ? undefined : /^ *[\w%]+ ([=≈]) (.*)$/.exec(line);
    if (begun) chains.push({ parts: [{ sign: begun[1]!, text: begun[2]! }], line });
    const whole = on || begun ? undefined : /^ *[^:]+: (.+ [=≈] .+)$/.exec(line);
    if (!whole || /^ *(?:source|assumption|note|caution|stop|equation)\b/.test(line)) continue;
    const pieces = whole[1]!.split(/ ([=≈<]) (?=[^<]*$|[^()]*$)/);
    const parts = [{ sign: '=', text: pieces[0]! }];
    for (let at = 1; at < pieces.length; at += 2) parts.push({ sign: pieces[at]!, text: pieces[at + 1]! });
    chains.push({ parts, line });
  }
  return chains;
}

describe('every kind of answer explained', () => {
  it('is looked at', () => {
    const kinds = new Set([...answers.values()].map(({ kind }) => kind));
    expect(Object.keys(kindWords).filter((kind) => !kinds.has(kind as Answer['kind']))).toEqual([]);
  });

  it.each([...answers])('%s: its printed numbers give its printed results', (_, answer) => {
    const text = explain(answer);
    const chains = chainsOf(text);
    expect(chains.length).toBeGreaterThan(0);
    for (const { parts, line } of chains) {
      let before: number | undefined;
      parts.forEach(({ sign, text: part }, index) => {
        const last = index === parts.length - 1;
        const result = last ? resultOf(part) : undefined;
        const number = result?.number ?? worth(part);
        if (number === undefined) return;
        if (before !== undefined) {
          const within =
            sign === '=' ? 1e-9 * Math.max(1, Math.abs(number)) : (result?.within ?? Infinity) * (1 + 1e-9);
          if (sign === '<') expect(before, line).toBeLessThan(number);
          else expect(Math.abs(before - number), `${line} … ${part}`).toBeLessThanOrEqual(within);
        }
        before = number;
      });
      // The last line of a calculation is a number.
      expect(before, line).toBeTypeOf('number');
    }
  });

  it.each([...answers])('%s: no symbol of its formula is the symbol of its result', (_, answer) => {
    const [first] = chainsOf(explain(answer));
    const [symbol] = first!.line.trim().split(' = ');
    const names = first!.parts[0]!.text.match(/[A-Za-z%][\w%]*/g) ?? [];
    expect(names).not.toContain(symbol);
  });

  it.each([...answers])('%s: an interval is worked out', (_, answer) => {
    if (answer.lower === undefined || answer.rounding) return;
    const text = explain(answer);
    expect(text).toContain('lower end: ');
    expect(text).toContain('upper end: ');
  });
});
