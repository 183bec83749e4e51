import type { Answer } from '../../answer/answer.js';
import type { SourceId } from '../../evidence/sources.js';
import { KILOGRAMS_PER_POUND } from '../../quantity/conversion-factors.js';
import { inFull } from '../../quantity/format.js';
import { loadUnitOf, type LoadUnit } from '../../quantity/quantities.js';
import { bodyMassShares } from '../../strength/body-mass.js';
import type { OneRepMaxEquation } from '../../strength/equation.js';
import { oneRepMaxEquations, relativeLoadEquations } from '../../strength/equations.js';
import type { LiftFacts } from '../../strength/read-set.js';
import { charts } from '../../strength/repetitions.js';
import { retestOf } from '../../strength/retest.js';
import { assumes, type FullWorking, type Worked, type Working, type Workings } from './working.js';

/** What a formula appends to a mass to convert it to another unit. */
export const conversion = (from: LoadUnit, to: LoadUnit): string =>
  from === to ? '' : to === 'kg' ? ` * ${KILOGRAMS_PER_POUND}` : ` / ${KILOGRAMS_PER_POUND}`;

/** The formula of an equation for a load in `unit`: a regression converts the load to its own unit, and the answer back. */
function formulaIn({ unit: own, formula }: OneRepMaxEquation, unit: LoadUnit): string {
  if (own === undefined || own === unit) return formula;
  return `(${formula.replace(/\bw\b/g, `(w${conversion(unit, own)})`)})${conversion(own, unit)}`;
}

const reserveScale: readonly SourceId[] = ['reserve-scale-2016', 'reserve-application-2016'];
const reserveAccuracy: readonly SourceId[] = ['reserve-accuracy-2017', 'reserve-accuracy-2022'];

/** An equation from a load and repetitions to the maximum, turned to the percentage, or solved for the repetitions. */
const ofRepetitions =
  (equation: OneRepMaxEquation) =>
  (answer: Worked): FullWorking | undefined => {
    const { formula, symbols, inverse, sources } = equation;
    switch (answer.kind) {
      case 'percent-of-maximum':
        return { formula: `100 / (${formula.replace(/\bw\b/g, '1')})`, symbols: { r: 'repetitions' }, sources };
      case 'repetitions-to-failure':
        return (
          inverse && {
            formula: inverse.formula.replace(/\bp\b/g, '(P / 100)'),
            symbols: { P: 'percentOneRepMax' },
            sources,
          }
        );
      case 'one-repetition-maximum':
        return {
          formula: formulaIn(equation, loadUnitOf(answer.unit)),
          symbols,
          sources: [
            ...sources,
            ...(assumes(answer, 'error-share') ? (['bench-and-curl-2010'] as const) : []),
            ...(assumes(answer, 'reserve-of-rating') ? reserveScale : []),
            ...(assumes(answer, 'reserve-added') ? reserveAccuracy : []),
          ],
          errors: answer.assumptions.flatMap(({ code, values }) =>
            code === 'error-share'
              ? [{ part: 'equation', formula: `${String(values?.['percentOneRepMax'])} / 100 * V` } as const]
              : [],
          ),
        };
      default:
        return undefined;
    }
  };

function tested({ inputs }: Worked): FullWorking {
  const { share, source } = retestOf((inputs ?? {}) as LiftFacts);
  const error = { part: 'retest', formula: `${inFull(100 * share)} / 100 * V` } as const;
  return { formula: 'w', symbols: { w: 'load' }, sources: [source], errors: [error] };
}

/** One repetition is the maximum, whatever the equation. */
function once(answer: Worked): FullWorking | undefined {
  const { kind, inputs } = answer;
  if (kind === 'one-repetition-maximum') return tested(answer);
  const { sources = [] } = oneRepMaxEquations.find(({ id }) => id === inputs?.['equation']) ?? {};
  return { formula: kind === 'percent-of-maximum' ? '100' : '1', symbols: {}, sources };
}

function percentOfMaximum({ unit, inputs = {} }: Worked): FullWorking {
  const own = loadUnitOf(unit);
  const from = (mass: unknown): string => conversion(loadUnitOf((mass as Answer | undefined)?.unit ?? unit), own);
  const { oneRepMax, bodyMassLoad } = inputs;
  const less = bodyMassLoad === undefined ? '' : ` - b${from(bodyMassLoad)}`;
  return {
    formula: `p / 100 * M${from(oneRepMax)}${less}`,
    symbols: { p: 'percentOneRepMax', M: 'oneRepMax', ...(less && { b: 'bodyMassLoad' }) },
    sources: ['guideline-review-2019'],
    arithmetic: true,
    errors: [{ part: 'maximum', formula: `p / 100 * S${from(oneRepMax)}` }],
  };
}

const ofLoad: Working = { formula: 'w', symbols: { w: 'load' }, sources: [] };
const ofPressure: Working = { formula: 'x', symbols: { x: 'valueMmHg' }, sources: [] };

export const strengthWorkings: Workings = {
  ...Object.fromEntries(oneRepMaxEquations.map((equation) => [equation.id, ofRepetitions(equation)])),
  ...Object.fromEntries(relativeLoadEquations.map((equation) => [equation.id, equation])),
  ...Object.fromEntries(
    (Object.keys(charts) as (keyof typeof charts)[]).map((chart) => [
      chart,
      { formula: 'p', symbols: { p: 'printed' }, sources: [chart] },
    ]),
  ),
  ...Object.fromEntries(
    bodyMassShares.map(({ movement, source }) => [
      `${movement}-share`,
      { formula: 'f * m', symbols: { f: 'fraction', m: 'bodyMass' }, sources: [source] },
    ]),
  ),
  tested,
  'lifted-once': once,
  'percent-of-maximum': percentOfMaximum,
  entered: ({ kind }: Worked) => (kind === 'occlusion-pressure' ? ofPressure : ofLoad),
  'stated-load': ofLoad,
  'reserve-scale-2016': {
    formula: '(a + b) / 2',
    symbols: { a: 'from', b: 'to' },
    sources: [...reserveScale, ...reserveAccuracy],
  },
  'bar-and-plates': { formula: 'b + c + 2 * s', symbols: { b: 'bar', c: 'collars', s: 'perSide' }, sources: [] },
};
