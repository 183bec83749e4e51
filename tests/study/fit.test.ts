import { compile } from 'mathjs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { explain } from '../../src/text/index.js';
import { columns, equationFromFit, estimateWith, fitOcclusionEquation, type FitRow } from '../../src/study/index.js';
import { expectPlainJson, frozen } from '../support/answers.js';
import { readings } from '../support/arbitraries.js';
import { expectDigits } from '../support/digits.js';
import { fitInput, fittedExample } from '../support/fitted.js';
import { codesOf, expectClose, expectHoldsTogether, refusal, refusalPage } from '../support/invariants.js';
import judge from './judge.json' with { type: 'json' };
import own from './own-equation.json' with { type: 'json' };

const place = { limb: 'leg', posture: 'seated', cuffWidthCm: 11 } as const;
const people = [
  { circumferenceCm: 55, systolicMmHg: 120, diastolicMmHg: 72, ageYears: 30, sex: 'female' },
  { circumferenceCm: 44, systolicMmHg: 104, diastolicMmHg: 62, ageYears: 20, sex: 'male' },
  { circumferenceCm: 70, systolicMmHg: 160, diastolicMmHg: 88, ageYears: 65, sex: 'female' },
] as const;
const person = { ...place, ...people[0] };
const { rows } = fitInput;
/** Of one term that adds nothing to the error. */
const leverage = { means: [0], factor: [[0]] };

const fitted = () => fitOcclusionEquation({ ...fitInput, diagnostics: true });

describe('an equation of your own', () => {
  // Source: R, lm(); tests/study/judge.R. Coefficients are rounded to eight digits.
  it('gives what R gives', () => {
    const { fit: expected } = judge;
    const { intercept, terms, residualMmHg, leaveOneOutMmHg, rSquared, people, degreesOfFreedom } =
      fitOcclusionEquation(fitInput);
    const all = [intercept, ...terms];
    const near = (got: number, want: number, share: number) =>
      expect(Math.abs(got - want), `${got} against ${want}`).toBeLessThanOrEqual(share * Math.abs(want));
    all.forEach(({ coefficient, standardError, lower, upper }, index) => {
      near(coefficient, expected.coefficients[index]!, 5e-8);
      near(standardError, expected.standardErrors[index]!, 1e-10);
      near(lower, expected.lower[index]!, 1e-9);
      near(upper, expected.upper[index]!, 1e-9);
    });
    near(residualMmHg, expected.residual, 1e-11);
    near(leaveOneOutMmHg, expected.leaveOneOut, 1e-11);
    near(rSquared, expected.rSquared, 1e-11);
    terms.forEach(({ inflation }, index) => near(inflation, expected.inflation[index]!, 1e-10));
    expect([people, degreesOfFreedom]).toEqual([60, 54]);
  });

  it('has the diagnostics of R', () => {
    const fit = fitted();
    const { diagnostics } = fit;
    expectDigits(diagnostics!.residualsMmHg, own.residuals, 9);
    expectDigits(diagnostics!.leverages, own.leverages, 11);
    expectDigits(diagnostics!.studentized, own.studentized, 9);
    expectDigits(diagnostics!.cooksDistances, own.cooksDistances, 9);
    expectDigits(diagnostics!.covariance.flat(), own.covariance, 9);
    expectDigits(
      diagnostics!.robust.map(({ standardError }) => standardError),
      own.robustErrors,
      10,
    );
    expectDigits(
      diagnostics!.robust.flatMap(({ lower, upper }) => [lower, upper]),
      own.robustLower.flatMap((lower, term) => [lower, own.robustUpper[term]!]),
      8,
    );
    expectDigits([fit.adjustedRSquared], own.adjustedRSquared, 11);
    expect(fitOcclusionEquation(fitInput)).not.toHaveProperty('diagnostics');
    expectPlainJson(fit);
  });

  it('has the prediction intervals of R, for one person and in columns, bit for bit', () => {
    const fit = fitted();
    const one = people.map((person) => estimateWith(fit, { ...place, ...person }));
    expectDigits(
      one.map(({ value }) => value),
      own.predicted,
      6,
    );
    expectDigits(
      one.map(({ value, lower }) => value - lower!),
      own.predicted.map((p, i) => p - own.lower[i]!),
      11,
    );
    expectDigits(
      one.map(({ value, upper }) => upper! - value),
      own.upper.map((u, i) => u - own.predicted[i]!),
      11,
    );
    const many = columns({
      answer: 'occlusion-pressure',
      equation: JSON.parse(JSON.stringify(fit)) as typeof fit,
      ...place,
      circumferenceCm: people.map((person) => person.circumferenceCm),
      systolicMmHg: people.map((person) => person.systolicMmHg),
      diastolicMmHg: people.map((person) => person.diastolicMmHg),
      ageYears: people.map((person) => person.ageYears),
      sex: people.map((person) => person.sex),
    });
    expect([...many.value, ...many.lower, ...many.upper]).toEqual([
      ...one.map(({ value }) => value),
      ...one.map(({ lower }) => lower),
      ...one.map(({ upper }) => upper),
    ]);
    expect(many.about).not.toHaveProperty('scale');
  });

  it('names what its rows do not meet', () => {
    const of = (more: (row: FitRow, at: number) => object) =>
      codesOf(
        fitOcclusionEquation({ ...fitInput, rows: rows.map((row, at) => ({ ...row, ...more(row, at) })) }).cautions,
      );
    // The invented residuals are uniform.
    expect(of(() => ({}))).toEqual(['residuals-not-normal']);
    expect(of((row, at) => ({ ageYears: row.circumferenceCm! + (at % 3) }))).toContain('collinear-term');
    expect(of((_, at) => (at === 7 ? { valueMmHg: 900, circumferenceCm: 90 } : {}))).toEqual(
      expect.arrayContaining(['influential-row', 'residuals-not-normal']),
    );
    const fanned = fitOcclusionEquation({
      ...fitInput,
      terms: ['circumferenceCm'],
      rows: rows.map((_, at) => ({ circumferenceCm: 40 + at / 2, valueMmHg: 150 + at + (at % 2 ? 0.4 : -0.4) * at })),
    });
    expect(codesOf(fanned.cautions)).toContain('residual-spread-changes');
  });

  // Source: the formula text, parsed and evaluated by mathjs.
  it('has a formula text that is the equation', () => {
    const { formula, symbols } = fittedExample;
    const evaluate = compile(formula);
    const { apply } = equationFromFit(fittedExample);
    fc.assert(
      fc.property(readings, (given) => {
        const scope = Object.fromEntries(
          Object.entries(symbols).map(([symbol, use]) => [
            symbol,
            typeof use === 'string' ? given[use as 'ageYears'] : use.codes[given.sex],
          ]),
        );
        expect(
          Math.abs(
            apply({ ...given, side: 'left', circumferenceSite: 'mid-limb' }) - (evaluate.evaluate(scope) as number),
          ),
        ).toBeLessThan(1e-9);
      }),
    );
  });

  it('is fitted to its rows, and says so', () => {
    const fit = fitOcclusionEquation(fitInput);
    const { formula, symbols, terms, intercept, evidence, people, cuffWidthCm, limb, posture } = fit;
    expect([evidence, people, cuffWidthCm, limb, posture]).toEqual(['derived', 60, 11, 'leg', 'seated']);
    expect(terms.map(({ field }) => field)).toEqual(fitInput.terms);
    const sign = (value: number) => (value < 0 ? '-' : '+');
    const parts = ['C', 'SBP', 'DBP', 'age', 'sex'].map(
      (symbol, at) => `${sign(terms[at]!.coefficient)} ${Math.abs(terms[at]!.coefficient)} * ${symbol}`,
    );
    expect(formula).toBe(`${intercept.coefficient} ${parts.join(' ')}`);
    expect(symbols).toEqual({
      C: 'circumferenceCm',
      SBP: 'systolicMmHg',
      DBP: 'diastolicMmHg',
      age: 'ageYears',
      sex: { field: 'sex', codes: { male: 1, female: 2 } },
    });
    for (const [at, field] of (['circumferenceCm', 'systolicMmHg', 'diastolicMmHg', 'ageYears'] as const).entries()) {
      const values = rows.map((row) => row[field]!);
      expect([terms[at]!.low, terms[at]!.high]).toEqual([Math.min(...values), Math.max(...values)]);
    }
    expect([fit.document, fit.schemaVersion, fit.id]).toEqual(['fitted-occlusion-equation', 1, 'lab-thigh']);
    const answer = estimateWith(fittedExample, person);
    expectHoldsTogether(answer);
    expect(answer.errors!.map(({ part, evidence: grade }) => [part, grade])).toEqual([['equation', 'derived']]);
    expect(codesOf(answer.assumptions)).toEqual(expect.arrayContaining(['error-of-prediction', 'own-laboratory']));
    expectPlainJson(fitOcclusionEquation(frozen(structuredClone(fitInput))));
    // Terms are in the order of the formula, whatever order they are given in.
    expect(fitOcclusionEquation({ ...fitInput, terms: [...fitInput.terms].reverse() })).toEqual(fittedExample);
    expect(estimateWith(JSON.parse(JSON.stringify(fittedExample)) as object, person)).toEqual(answer);
    expect(explain(answer)).toContain('lab-thigh');
  });

  it('fits a width as a term, for any cuff', () => {
    const wide = fitOcclusionEquation({
      id: 'any-cuff',
      limb: 'leg',
      posture: 'supine',
      terms: ['cuffWidthCm'],
      rows: Array.from({ length: 12 }, (_, row) => ({
        valueMmHg: 250 - 6 * (5 + row) + (row % 3),
        cuffWidthCm: 5 + row,
      })),
    });
    expect(wide.cuffWidthCm).toBe('any');
    expect(estimateWith(wide, { ...person, cuffWidthCm: 7 }).value).toBeCloseTo(209, -1);
  });

  it('is refused where it cannot be fitted, as the golden page says', async () => {
    const fitted = (more: object) => ({ ...fitInput, ...more });
    const first = (more: object) => fitted({ rows: [{ ...rows[0]!, ...more }, ...rows.slice(1)] });
    // A reading that is no term may be left out, but not be wrong; a girth is held to the limb.
    const one = (more: object) => ({ ...first(more), terms: ['systolicMmHg'] });
    const all = (more: (row: (typeof rows)[number], at: number) => object) =>
      fitted({ rows: rows.map((row, at) => ({ ...row, ...more(row, at) })) });
    const ids = [
      'Lab',
      '1lab',
      'lab thigh',
      '',
      'thigh-2019',
      'x'.repeat(61),
      'x'.repeat(60),
      'calibrated',
      'measured-doppler',
      undefined,
    ];
    const terms = [[], ['height'], ['sex', 'sex'], 'sex', undefined];
    const cases = {
      ...Object.fromEntries(ids.map((id) => [`id ${id}`, fitted({ id })])),
      ...Object.fromEntries(terms.map((of) => [`terms ${JSON.stringify(of)}`, fitted({ terms: of })])),
      'no width': fitted({ cuffWidthCm: undefined }),
      'a width that is a term': { ...all((_, at) => ({ cuffWidthCm: 5 + at / 10 })), terms: ['cuffWidthCm'] },
      'rows left out': fitted({ rows: undefined }),
      'no rows': fitted({ rows: [] }),
      '49 rows': fitted({ rows: rows.slice(0, 49) }),
      '50 rows': fitted({ rows: rows.slice(0, 50) }),
      'pressures that are one': first({ systolicMmHg: 80, diastolicMmHg: 80 }),
      'pressures a mmHg apart': first({ systolicMmHg: 81, diastolicMmHg: 80 }),
      'what is no term left out': one({ ageYears: undefined, sex: undefined, cuffWidthCm: 11 }),
      'what is no term wrong': one({ ageYears: 0, sex: 'x', circumferenceCm: 130 }),
      'a term left out': one({ systolicMmHg: undefined }),
      'girth in inches': first({ circumferenceCm: 21.5 }),
      'one age': all(() => ({ ageYears: 30 })),
      'an age that follows from the girth': all((row) => ({ ageYears: row.circumferenceCm! - 20 })),
      'one pressure': all(() => ({ valueMmHg: 150 })),
      'coefficients that no document takes': {
        ...all((_, at) => ({ circumferenceCm: 50 + 1e-7 * at, valueMmHg: 100 + 10 * at })),
        terms: ['circumferenceCm'],
      },
      'diagnostics in words': fitted({ diagnostics: 'yes' }),
      'one man': all((_, at) => ({ sex: at === 0 ? 'male' : 'female' })),
    };
    await expect(refusalPage(fitOcclusionEquation as never, cases)).toMatchFileSnapshot('refused/fits.txt');
  });

  // 100 + 2 × 50 − 3 × 10 and so on, one term after another.
  it.each([
    ['circumferenceCm', 2, 100 + 2 * 55],
    ['systolicMmHg', 0.5, 160],
    ['diastolicMmHg', 0.1, 107.2],
    ['cuffWidthCm', -3, 67],
    ['ageYears', 1, 130],
    ['sex', 10, 120],
    ['heightCm', 0.5, 185],
    ['bodyMassIndex', 2, 150],
    ['skinfoldMm', -1, 88],
  ] as const)('draws on %s alone where it is the only term', (field, coefficient, expected) => {
    const fit = {
      ...fittedExample,
      cuffWidthCm: field === 'cuffWidthCm' ? 'any' : 11,
      intercept: { coefficient: 100 },
      terms: [{ field, coefficient, low: 1, high: 200 }],
      leverage,
    };
    const { ageYears, sex, ...bare } = person;
    const own = { heightCm: 170, bodyMassIndex: 25, skinfoldMm: 12 };
    const needed = {
      ...(field === 'ageYears' && { ageYears }),
      ...(field === 'sex' && { sex }),
      ...(field in own && { [field]: own[field as 'heightCm'] }),
    };
    expectClose(estimateWith(fit, { ...bare, ...needed }).value, expected);
    const { limb, cuffWidthCm, posture, ...others } = { ...bare, ...needed };
    const many = columns({
      answer: 'occlusion-pressure',
      equation: fit as never,
      limb,
      cuffWidthCm,
      posture,
      ...others,
      circumferenceCm: [person.circumferenceCm],
    } as never);
    expectClose(many.value[0]!, expected);
    expect(equationFromFit(fit).needs).toEqual(Object.keys(needed).filter((name) => !(name in own)));
    expect(Object.keys(equationFromFit(fit).fitted)).toEqual(field === 'sex' || field in own ? [] : [field]);
    if (!(field in own)) return;
    // Without it, and outside its range.
    expect(refusal(() => estimateWith(fit, bare) as never, {})).toEqual([
      [field, 'missing', expect.any(String), 'undefined'],
    ]);
    expect(
      estimateWith({ ...fit, terms: [{ ...fit.terms[0]!, high: 5 }] }, { ...bare, ...needed }).cautions.map(
        ({ code, path }) => [code, path],
      ),
    ).toContainEqual(['outside-fitted-range', [field]]);
    const outside = columns({
      answer: 'occlusion-pressure',
      equation: { ...fit, terms: [{ ...fit.terms[0]!, high: 20 }] } as never,
      ...bare,
      [field]: [own[field as 'heightCm'], 15, NaN, -5],
    } as never);
    expect([...outside.flag].map((bits) => bits & 19)).toEqual(
      field === 'heightCm' ? [16, 2, 1, 2] : field === 'skinfoldMm' ? [0, 0, 1, 2] : [16, 0, 1, 2],
    );
  });

  it('is read back whole, or not at all, as the golden page says', async () => {
    const of = (more: object) => ({ ...fittedExample, ...more });
    const [term] = fittedExample.terms;
    const { means, factor } = fittedExample.leverage;
    const cases = {
      whole: of({}),
      'a number': 5,
      'another document': of({ document: 'plan' }),
      'the id of a published one': of({ id: 'thigh-2019' }),
      'no id': of({ id: undefined }),
      'any cuff': of({ cuffWidthCm: 'any' }),
      'all cuffs': of({ cuffWidthCm: 'all' }),
      'two people': of({ people: 2 }),
      'no error': of({ residualMmHg: undefined }),
      'a large coefficient': of({ intercept: { coefficient: 1.1e6 } }),
      'another term': of({ terms: [{ ...term, field: 'height' }] }),
      'an end in words': of({ terms: [{ ...term, low: 'x' }] }),
      'no leverage': of({ leverage: undefined }),
      'an empty leverage': of({ leverage: {} }),
      'one mean': of({ leverage: { means: [1], factor } }),
      'a factor of ones': of({ leverage: { means, factor: [[1], [1], [1], [1], [1]] } }),
      'a large factor': of({ leverage: { means, factor: [[1], [1, 2], [1, 2, 3], [1, 2, 3, 4], [1, 2, 3, 4, 1e13]] } }),
      'no terms': of({ terms: undefined }),
      'a term twice': of({ terms: [term, term] }),
    };
    await expect(refusalPage(equationFromFit as never, cases)).toMatchFileSnapshot('refused/fitted-equations.txt');
    expect(equationFromFit(fittedExample)).toMatchObject({
      name: 'lab-thigh, fitted to 60 people',
      sample: '60 people of yours',
      evidence: 'derived',
      error: { evidence: 'derived', assumption: 'error-of-prediction' },
      sources: [],
    });
  });

  it('is for its own limb and cuff, and for readings that it gives a pressure for', () => {
    const of = (fit: object, more: object) =>
      refusal((given: object) => estimateWith(fit, given as never), { ...person, ...more });
    expect(of(fittedExample, { limb: 'arm', circumferenceCm: 30 })[0]!.slice(0, 2)).toEqual(['limb', 'wrong-relation']);
    expect(of(fittedExample, { cuffWidthCm: 11.6 })).toEqual([
      ['cuffWidthCm', 'wrong-relation', expect.stringMatching(/^11 cm/), '11.6'],
    ]);
    expect(of(fittedExample, { cuffWidthCm: 11.4 })).toEqual([]);
    expect(of({ ...fittedExample, intercept: { coefficient: -5000 } }, {})).toEqual([
      [
        'circumferenceCm',
        'wrong-relation',
        'readings for which lab-thigh gives a pressure',
        expect.stringMatching(/^-\d+(\.\d+)? mmHg$/),
      ],
    ]);
    expect(of(fittedExample, { sex: undefined })[0]!.slice(0, 2)).toEqual(['sex', 'missing']);
    const metres = { ...fittedExample, terms: [{ field: 'heightCm', coefficient: 1, low: 150, high: 200 }], leverage };
    expect(of(metres, { heightCm: 1.65 })[0]).toEqual(['heightCm', 'unit-slip', 'a number from 60 to 260 cm', '1.65']);
    // In another posture its error has a second part; that of other laboratories is not its own.
    const supine = estimateWith(fittedExample, { ...person, posture: 'supine' });
    expect(supine.errors!.map(({ part }) => part)).toEqual(['equation', 'posture']);
    expect(codesOf(supine.cautions)).not.toContain('laboratory');
  });
});
