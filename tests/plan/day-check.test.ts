import { describe, expect, it } from 'vitest';
import { InputError } from '../../src/index.js';
import { messages } from '../../src/text/index.js';
import { checkDay, dayQuestions, type DayCheckRequest } from '../../src/plan/index.js';
import { expectPlainJson } from '../support/answers.js';
import { planOf } from '../support/plans.js';

const no = Object.fromEntries(dayQuestions().map(({ code }) => [code, 'no']));
const well: DayCheckRequest = { date: '2026-03-02', systolicMmHg: 120, diastolicMmHg: 80, painNow: 0, answers: no };
const found = (request: Partial<DayCheckRequest>) =>
  checkDay({ ...well, ...request }).findings.map(({ severity, code }) => [severity, code]);

describe('checkDay', () => {
  it('finds nothing where all is answered and nothing is wrong, and is incomplete where something is open', () => {
    expect(checkDay(well)).toMatchObject({ outcome: 'nothing-found', complete: true, findings: [], unanswered: [] });
    expect(checkDay({ date: '2026-03-02', answers: {} })).toMatchObject({ outcome: 'incomplete', complete: false });
    expect(checkDay({ ...well, painNow: undefined })).toMatchObject({
      outcome: 'incomplete',
      unanswered: [{ code: 'painNow', question: messages['ask-painNow'] }],
    });
    expect(checkDay({ date: '2026-03-02', answers: {} }).unanswered).toHaveLength(dayQuestions().length + 3);
    expectPlainJson(checkDay(well));
  });

  it('stops for what its source lists, and asks for care after bruises', () => {
    for (const { code, outcome, evidence } of dayQuestions()) {
      const check = checkDay({ ...well, answers: { ...no, [code]: 'yes' } });
      expect(check).toMatchObject({ outcome, findings: [{ code, evidence, path: ['answers', code] }] });
      expect(check.findings[0]!.severity).toBe(code === 'today-bruises' ? 'caution' : 'stop');
    }
    // J Spec Oper Med 2018;18(2): dark urine, pain out of proportion and weakness; Front Physiol 2022;13:808622, Table 5: acute illness.
    const sourced = dayQuestions().flatMap(({ code, source }) => (source ? [[code, source]] : []));
    expect(sourced).toEqual([
      ['today-dark-urine', 'case-report-2018'],
      ['today-illness', 'risk-stratification-2022'],
    ]);
  });

  it('judges pain now and the blood pressure of the day', () => {
    // `practice`: do less above 3, stop from 8.
    expect([3, 3.5, 7.9, 8, 10].map((painNow) => found({ painNow })[0])).toEqual([
      undefined,
      ['caution', 'today-pain'],
      ['caution', 'today-pain'],
      ['stop', 'today-pain-severe'],
      ['stop', 'today-pain-severe'],
    ]);
    expect(found({ systolicMmHg: 180 })).toEqual([['stop', 'blood-pressure-refer']]);
    expect(found({ diastolicMmHg: 100 })).toEqual([['stop', 'blood-pressure-very-high']]);
    expect(() => checkDay({ ...well, systolicMmHg: 70 })).toThrow(/swapped/);
  });

  it('refuses other questions, other replies and a day that is none', () => {
    expect(() => checkDay({ ...well, answers: { gout: 'yes' } } as never)).toThrow(/answers\.gout/);
    expect(() => checkDay({ ...well, answers: { 'today-chest': true } } as never)).toThrow(InputError);
    expect(() => checkDay({ ...well, date: '2026-02-30' })).toThrow(/date/);
    expect(() => checkDay({ answers: no } as never)).toThrow(/date is missing/);
    expect(() => checkDay({ ...well, painNow: 11 })).toThrow(/painNow/);
  });

  it('goes into a plan of its day, and says so where it is of another', () => {
    const codesOf = (date?: string) =>
      planOf({}, { dayCheck: checkDay({ ...well, painNow: 5 }), ...(date && { date }) })
        .cautions.filter(({ path }) => path?.[0] === 'dayCheck')
        .map(({ code }) => code);
    expect(codesOf('2026-03-02')).toEqual(['today-pain']);
    expect(codesOf()).toEqual(['today-pain']);
    expect(codesOf('2026-03-03')).toEqual(['day-check-other-day', 'today-pain']);
    const check = checkDay(well);
    expect(() => planOf({}, { dayCheck: { ...check, outcome: 'refer' } })).toThrow(/dayCheck\.outcome/);
  });
});
