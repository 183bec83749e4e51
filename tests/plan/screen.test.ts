import fc from 'fast-check';
import { evaluate } from 'mathjs';
import { describe, expect, it } from 'vitest';
import { InputError } from '../../src/index.js';
import { explain, messages, working } from '../../src/text/index.js';
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
    expect(screening.disclaimers.map(({ code }) => code)).toContain('screening-clears-no-one');
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
          Object.entries(working(score)!.symbols).map(([symbol, use]) => {
            if (typeof use === 'string') throw new Error('every item is coded');
            return [symbol, use.codes[String(score.inputs[use.field])]];
          }),
        );
        expect(evaluate(working(score)!.formula, scope)).toBe(score.value);
        const open = Object.values(score.inputs).includes('unknown');
        expect(score.cautions.some(({ code }) => code === 'score-incomplete')).toBe(open);
      }),
    );
    const { thrombosisScore } = screen({ answers: { thrombophilia: 'yes', immobile: 'no' } });
    expect(thrombosisScore.cautions[0]!.values).toEqual({ possible: 11, most: 12 });
  });

  // Chest 2011;140:706–714: 4 and more is the highest of three steps; J Am Heart Assoc 2014;3(6):e001152: 3 and more of two.
  it('refers from the published cut-off of the thrombosis score on', () => {
    const at = (ageYears: number, ...yes: string[]) => {
      const answers = { ...everything('no'), ...Object.fromEntries(yes.map((code) => [code, 'yes'])) };
      const { outcome, findings, thrombosisScore } = screen({ ...readings, ageYears, answers });
      const high = findings.find(({ code }) => code === 'thrombosis-score-high');
      return [thrombosisScore.value, outcome, high?.severity, high?.source];
    };
    const source = 'thrombosis-score-2014';
    expect(at(30, 'intensive-care', 'immobile')).toEqual([2, 'caution', undefined, undefined]);
    expect(at(60, 'intensive-care', 'immobile')).toEqual([3, 'refer', 'stop', source]);
    expect(at(30, 'limb-paralysis', 'immobile')).toEqual([3, 'refer', 'stop', source]);
    expect(at(30, 'limb-paralysis', 'cancer-within-5-years')).toEqual([4, 'refer', 'stop', source]);
  });

  it('says beside the score what it was made for, and calls nobody low-risk after an operation', () => {
    const { thrombosisScore: plain } = screen({ ...readings, answers: everything('no') });
    expect(plain.assumptions.map(({ code }) => code)).toEqual([
      'score-for-inpatients',
      'score-cut-offs',
      'score-points-differ',
    ]);
    expect(plain.cautions).toEqual([]);
    for (const code of ['surgery-or-fracture', 'surgery-released']) {
      const { thrombosisScore } = screen({ ...readings, answers: { ...everything('no'), [code]: 'yes' } });
      expect(thrombosisScore.value).toBe(0);
      expect(thrombosisScore.cautions).toMatchObject([{ severity: 'caution', code: 'score-after-surgery' }]);
    }
    const message = Object.values(messages).filter((text) => /low(er)?[- ]risk/i.test(text));
    expect(message).toEqual([messages['score-after-surgery'], messages['score-for-inpatients']]);
  });

  it('asks in questions that end with a question mark, of 25 words at most', () => {
    for (const { question } of screen({ answers: {} }).unanswered) {
      expect(question).toMatch(/^[A-Z].*\?$/s);
      expect(question.split(' ').length, question).toBeLessThanOrEqual(25);
    }
  });
});
