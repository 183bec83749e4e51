import { evaluate, parse, type MathNode } from 'mathjs';
import { expect } from 'vitest';
import german from '../../src/text/locales/de.json' with { type: 'json' };
import { grades } from '../../src/evidence/grades.js';
import { sources } from '../../src/evidence/sources.js';
import { english } from '../../src/answer/translate.js';
import { attempt, type Answer, type Assumption, type InputIssue } from '../../src/index.js';
import { assumptionText } from '../../src/text/section.js';
import { expandDocument, type Plan } from '../../src/plan/index.js';
import { working } from '../../src/text/index.js';

/** Quantile of the standard normal distribution at 97.5 %, as jstat and tables have it. */
export const Z = 1.9599639845400545;
/** Sums and products in another order, and masses that were taken in at 12 digits. */
const CLOSE = 1e-9;

export const expectClose = (received: number, expected: number, what = ''): void =>
  expect(Math.abs(received - expected), `${what} ${received} against ${expected}`).toBeLessThanOrEqual(
    CLOSE * Math.max(1, Math.abs(expected)),
  );

const number = (given: unknown): number =>
  typeof given === 'number'
    ? given
    : typeof given === 'string'
      ? (evaluate(given.replaceAll('×', '*')) as number)
      : (given as Answer).value;

/** An answer with its formula, symbols and sources. */
export const withWorking = <T extends Answer>(answer: T | undefined) => ({ ...answer!, ...working(answer!) });

/** What an answer’s own formula gives for its own inputs, by an independent evaluator (mathjs). */
function evaluated(answer: Answer): number {
  const { formula, symbols } = working(answer)!;
  const { inputs } = answer;
  const scope: Record<string, number> = {};
  for (const [symbol, of] of Object.entries(symbols)) {
    const field = typeof of === 'string' ? of : of.field;
    expect(Object.keys(inputs), `${symbol} of ${formula}`).toContain(field);
    const given = inputs[field]!;
    scope[symbol] = typeof of === 'string' ? number(given) : of.codes[given as string]!;
  }
  const used = new Set<string>();
  parse(formula).traverse((node: MathNode, path) => {
    if (node.type === 'SymbolNode' && path !== 'fn') used.add((node as MathNode & { name: string }).name);
  });
  expect([...used].sort(), formula).toEqual(Object.keys(symbols).sort());
  return evaluate(formula, scope) as number;
}

function answerHolds(answer: Answer): void {
  const { kind, value, rounding, errors, evidence, assumptions } = answer;
  expect(Object.keys(grades)).toContain(evidence);
  expectClose(rounding ? rounding.from : value, evaluated(answer), working(answer)!.formula);
  const log = answer.scale === 'log';
  const normal = assumptions.some(({ code }) => code === (log ? 'log-normal-interval' : 'normal-interval'));
  if (!errors) {
    for (const field of ['lower', 'upper', 'level', 'standardDeviation', 'scale'])
      expect(answer).not.toHaveProperty(field);
    expect(normal).toBe(false);
    return;
  }
  expect(errors.length).toBeGreaterThan(0);
  for (const error of errors) expect(Object.keys(grades)).toContain(error.evidence);
  const deviation = Math.hypot(...errors.map(({ standardDeviation }) => standardDeviation));
  expectClose(answer.standardDeviation!, deviation);
  const middle = rounding?.from ?? value;
  expectClose(answer.lower!, log ? middle * Math.exp(-Z * deviation) : middle - Z * deviation);
  expectClose(answer.upper!, log ? middle * Math.exp(Z * deviation) : middle + Z * deviation);
  // A cuff pressure carries the interval of its occlusion pressure, which says it.
  expect([answer.level, normal || kind === 'cuff-pressure']).toEqual([0.95, true]);
}

/** An assumption is a code with codes and numbers; its sentence is whole and known to a translator. */
function assumptionHolds(assumption: Assumption, at: string): void {
  expect(Object.keys(german), at).toContain(assumption.code);
  expect(assumption, at).not.toHaveProperty('text');
  expectSentence(assumptionText(english, assumption));
}

/** A sentence with its slots filled. */
function expectFilled(text: unknown): void {
  expect(text).toMatch(/^\S.*[.?]$/s);
  expect(text).not.toMatch(/\{\w+\}/);
}

/** One that says what it means to: an error alone may have received what is undefined. */
function expectSentence(text: unknown): void {
  expectFilled(text);
  expect(text).not.toMatch(/\bundefined\b(?!\.)|\bNaN\b|Infinity| {2}| [,.;]|\(\)/);
}

const isObject = (value: unknown): value is Record<string, unknown> => typeof value === 'object' && value !== null;

/**
 * All that holds of every answer, wherever in it: formulas give values, intervals come of the errors, sentences are whole and
 * their codes known to a translator, sources and grades exist, and nothing is empty that says something.
 */
export function expectHoldsTogether(part: unknown, at = 'answer'): void {
  expect(part, at).not.toBe(undefined);
  if (typeof part === 'string') expect(part.trim(), at).not.toBe('');
  if (typeof part === 'number') expect(Number.isFinite(part), at).toBe(true);
  if (!isObject(part)) return;
  // A document that states its numbers holds as the answers that it states.
  if ('document' in part && 'answers' in part) return expectHoldsTogether(expandDocument(part as unknown as Plan), at);
  if (!Array.isArray(part)) {
    if ('equation' in part && 'inputs' in part) answerHolds(part as unknown as Answer);
    if ('code' in part && 'text' in part) {
      expect(Object.keys(german), at).toContain(part['code']);
      // A sign to stop at is a point of a list.
      expectSentence(
        /^symptom-(?!emergency|clinician-first|lower$)/.test(String(part['code']))
          ? `${String(part['text'])}.`
          : part['text'],
      );
      if ('severity' in part) expect(['note', 'caution', 'stop'], at).toContain(part['severity']);
      if ('values' in part) expect(Object.keys(part['values'] as object).length, at).toBeGreaterThan(0);
    }
    if (typeof part['source'] === 'string') expect(Object.keys(sources), at).toContain(part['source']);
  }
  for (const [name, inner] of Object.entries(part)) {
    const here = `${at}.${name}`;
    if (name === 'sources')
      for (const source of inner as string[]) expect(Object.keys(sources), here).toContain(source);
    if (name === 'cautions') for (const item of inner as unknown[]) expect(item, here).toHaveProperty('code');
    if (name === 'assumptions') for (const item of inner as Assumption[]) assumptionHolds(item, here);
    if (name === 'path') {
      expect((inner as unknown[]).length, here).toBeGreaterThan(0);
      for (const step of inner as unknown[]) expect(String(step), here).toMatch(/^\S+$/);
    }
    expectHoldsTogether(inner, here);
  }
}

/** What was said, without its English: severity of a caution, code, values, path, source. */
export type Said = readonly [code: string, more?: object];
export const message = (list: readonly { readonly code: string; readonly text?: string }[]): Said[] =>
  list.map(({ code, text: _text, ...more }) => (Object.keys(more).length > 0 ? [code, more] : [code]));

export const withCode = (list: readonly Said[], code: string): Said[] => list.filter(([each]) => each === code);

export const codesOf = (list: readonly { readonly code: string }[]): string[] => list.map(({ code }) => code);

/** What is refused: each issue’s place and code, with what was expected and received where those are asked for. */
export function refusal<I>(call: (input: I) => unknown, input: unknown): (readonly [string, string, string, string])[] {
  const result = attempt(call as (input: unknown) => unknown, input);
  if (result.ok) return [];
  return result.issues.map(({ path, code, expected, received, message }: InputIssue) => {
    expectFilled(message);
    return [path.join('.'), code, expected, received] as const;
  });
}

/**
 * A golden page of what is refused: each case by its name, and under it each issue: place, code, what was expected and
 * received, and what was probably meant.
 */
export const refusalPage = <I>(call: (input: I) => unknown, cases: Readonly<Record<string, unknown>>): string =>
  Object.entries(cases)
    .flatMap(([name, input]) => {
      const meant = attempt(call as (input: unknown) => unknown, input);
      return [
        name,
        ...refusal(call, input).map((issue, at) => {
          const { suggestions = [] } = meant.ok ? {} : meant.issues[at]!;
          return `  ${issue.join(' | ')}${suggestions.length > 0 ? ` | perhaps ${suggestions.join(', ')}` : ''}`;
        }),
      ];
    })
    .map((line) => `${line}\n`)
    .join('');

const shown = (value: unknown): string =>
  JSON.stringify(value, (_, part: unknown) =>
    typeof part === 'number'
      ? Number(part.toPrecision(9))
      : isObject(part) && 'equation' in part && 'inputs' in part
        ? `<${(part as unknown as Answer).kind}>`
        : part,
  );

/** A golden page of answers, each by its name: every fact of them but interval and working. */
export const factsPage = (answers: Readonly<Record<string, Answer>>): string =>
  Object.entries(answers)
    .flatMap(([name, answer]) => {
      const { kind, value, unit, equation, evidence, inputs, errors = [], assumptions, cautions } = answer;
      return [
        `${name}: ${kind} ${shown(value)} ${unit}, ${equation}, ${evidence}`,
        `  of ${shown({ ...inputs })}`,
        ...errors.map((error) => `  error ${error.part} ${shown(error.standardDeviation)}, ${error.evidence}`),
        ...message(assumptions).map(([code, more]) => `  assumption ${code} ${more ? shown(more) : ''}`.trimEnd()),
        ...message(cautions).map(([code, more]) => `  ${code} ${shown(more)}`),
        `  sources ${working(answer)!.sources.join(', ')}`.trimEnd(),
      ];
    })
    .map((line) => `${line}\n`)
    .join('');

/** What an answer’s error is made of: parts with their grades, and how large each is. */
export const parts = ({ errors = [] }: Pick<Answer, 'errors'>) =>
  errors.map(({ part, evidence }) => [part, evidence] as const);
export const deviations = ({ errors = [] }: Pick<Answer, 'errors'>): Record<string, number> =>
  Object.fromEntries(errors.map(({ part, standardDeviation }) => [part, standardDeviation]));

/** Kind, value, unit, grade and sources of every total. */
export const told = (totals: object) =>
  Object.fromEntries(
    Object.entries(totals)
      .filter(([, part]) => isObject(part) && 'kind' in part)
      .map(([name, part]) => {
        const { kind, value, unit, evidence, equation } = part as Answer;
        const { sources } = working(part as Answer)!;
        expect(equation).toBe(kind);
        return [name, [kind, value, unit, evidence, ...sources]];
      }),
  );
