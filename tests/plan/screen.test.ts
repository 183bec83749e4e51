import fc from 'fast-check';
import { evaluate } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { cite, explain, InputError, messages } from '../../src/index.js';
import { screen, screeningQuestions, type ScreeningRequest } from '../../src/plan/index.js';
import { expectPlainJson } from '../support/answers.js';

const codes = screeningQuestions().map(({ code }) => code);
const everything = (reply: 'yes' | 'no' | 'unknown') => Object.fromEntries(codes.map((code) => [code, reply]));
const readings = { ageYears: 30, systolicMmHg: 120, diastolicMmHg: 80 };

const request = fc.record(
  {
    ageYears: fc.integer({ min: 1, max: 120 }),
    systolicMmHg: fc.integer({ min: 121, max: 300 }),
    diastolicMmHg: fc.integer({ min: 30, max: 120 }),
    answers: fc.dictionary(fc.constantFrom(...codes), fc.constantFrom('yes', 'no', 'unknown'), { maxKeys: 40 }),
  },
  { requiredKeys: ['answers'] },
) as fc.Arbitrary<ScreeningRequest>;

const RANK = { 'nothing-found': 0, incomplete: 1, caution: 2, refer: 3 };

describe('screen', () => {
  it('finds nothing where all is answered and nothing applies, and says that this clears no one', () => {
    const screening = screen({ ...readings, answers: everything('no') });
    expect(screening).toMatchObject({ outcome: 'nothing-found', complete: true, findings: [], unanswered: [] });
    expect(screening.standing.map(({ code }) => code)).toContain('screening-clears-no-one');
    expect(explain(screening)).toContain(messages['screening-clears-no-one']);
  });

  it('leaves what is unanswered unanswered, whether it is left out or not known', () => {
    const { length } = codes;
    expect(screen({ answers: {} })).toMatchObject({ outcome: 'incomplete', complete: false });
    expect(screen({ answers: {} }).unanswered).toHaveLength(length + 3);
    expect(screen({ ...readings, answers: everything('unknown') }).unanswered).toHaveLength(length);
    const { pregnancy: _, ...rest } = everything('no');
    expect(screen({ ...readings, answers: rest })).toMatchObject({
      complete: false,
      outcome: 'incomplete',
      unanswered: [{ code: 'pregnancy', question: messages['ask-pregnancy'] }],
    });
  });

  it('judges one pressure alone, and says that the other is not known', () => {
    const { outcome, findings, unanswered } = screen({ diastolicMmHg: 112, answers: {} });
    expect(outcome).toBe('refer');
    expect(findings[0]).toMatchObject({ code: 'blood-pressure-refer', path: ['diastolicMmHg'] });
    expect(findings[0]!.text).toContain('unknown/112');
    expect(unanswered.map(({ code }) => code)).toContain('systolicMmHg');
  });

  it('leaves the decision under 18 to the practitioner, and takes care from 60', () => {
    const at = (ageYears: number) => screen({ ageYears, answers: {} }).findings.map(({ code }) => code);
    expect([17, 18, 59, 60].map(at)).toEqual([['age-under-18'], [], [], ['age-60-and-over']]);
  });

  it('refuses swapped pressures, conditions it does not know and other replies', () => {
    expect(() => screen({ systolicMmHg: 80, diastolicMmHg: 120, answers: {} })).toThrow(/swapped/);
    expect(() => screen({ answers: { gout: 'yes' } } as never)).toThrow(/answers\.gout/);
    expect(() => screen({ answers: { pregnancy: true } } as never)).toThrow(InputError);
    expect(() => screen({} as never)).toThrow(/answers is missing/);
  });

  it('refers as soon as one finding refers, and one more yes never makes it milder', () => {
    fc.assert(
      fc.property(request, fc.constantFrom(...codes), (given, code) => {
        const before = screen(given);
        expectPlainJson(before);
        const open = before.complete ? 0 : RANK.incomplete;
        const worst = Math.max(open, ...before.findings.map(({ outcome }) => RANK[outcome]));
        expect(RANK[before.outcome]).toBe(worst);
        expect(before.complete).toBe(before.unanswered.length === 0);
        const after = screen({ ...given, answers: { ...given.answers, [code]: 'yes' } });
        expect(RANK[after.outcome]).toBeGreaterThanOrEqual(RANK[before.outcome]);
        expect(after.findings.map((finding) => finding.code)).toContain(code);
      }),
    );
  });

  // Source of the expected value: the formula text, evaluated by mathjs.
  it('adds the thrombosis score up by its formula, and says what open answers could add', () => {
    fc.assert(
      fc.property(request, (given) => {
        const { thrombosisScore: score } = screen(given);
        const scope = Object.fromEntries(
          Object.entries(score.symbols).map(([symbol, use]) => {
            if (typeof use === 'string') throw new Error('every item is coded');
            return [symbol, use.codes[String(score.inputs[use.field])]];
          }),
        );
        expect(evaluate(score.formula, scope)).toBe(score.value);
        const open = Object.values(score.inputs).includes('unknown');
        expect(score.cautions.some(({ code }) => code === 'score-incomplete')).toBe(open);
      }),
    );
    const { thrombosisScore } = screen({ answers: { thrombophilia: 'yes', immobile: 'no' } });
    expect(thrombosisScore.cautions[0]!.values).toEqual({ possible: 11, most: 12 });
  });

  it('prints a page that a stored screening prints too', () => {
    const screening = screen({ label: 'Athlete B', ...readings, answers: { ...everything('no'), diabetes: 'yes' } });
    const page = explain(screening);
    for (const { text } of [...screening.findings, ...screening.standing]) expect(page).toContain(text);
    for (const { text } of cite(screening)) expect(page).toContain(text);
    expect(page).toContain('Athlete B');
    expect(page).not.toMatch(/undefined|NaN|\[object|\{\w+\}/);
    expect(explain(JSON.parse(JSON.stringify(screening)))).toBe(page);
  });
});
