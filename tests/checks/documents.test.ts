import { describe, expect } from 'vitest';
import pressures from '../../src/checks/blood-pressure-thresholds.json' with { type: 'json' };
import guidelineRows from '../../src/checks/guideline-grades.json' with { type: 'json' };
import ranges from '../../src/checks/guideline-ranges.json' with { type: 'json' };
import rules from '../../src/checks/progression-rules.json' with { type: 'json' };
import list from '../../src/checks/screening-list.json' with { type: 'json' };
import score from '../../src/checks/thrombosis-score.json' with { type: 'json' };
import {
  guidelines,
  nextSession,
  reviewPlan,
  screen,
  screeningQuestions,
  type Guideline,
  type GuidelineId,
  type ProgressionRuleId,
} from '../../src/plan/index.js';
import { planOf, recordOf } from '../support/plans.js';
import { eachRow } from '../support/rows.js';

describe('blood-pressure thresholds', () => {
  eachRow(pressures, ({ systolicMmHg, diastolicMmHg, outcome, code }) => {
    // The rest is answered with no, so that only the pressure speaks.
    const answers = Object.fromEntries(screeningQuestions().map(({ code }) => [code, 'no']));
    const screening = screen({ ageYears: 30, systolicMmHg, diastolicMmHg, answers });
    expect(screening.outcome).toBe(outcome);
    expect(screening.findings[0]?.code ?? 'none').toBe(code);
  });
});

describe('thrombosis score', () => {
  eachRow(score, ({ points, ...row }) => {
    const given = 'ageYears' in row ? { ageYears: row.ageYears!, answers: {} } : { answers: { [row.answer!]: 'yes' } };
    expect(screen(given as Parameters<typeof screen>[0]).thrombosisScore.value).toBe(points);
  });
});

describe('screening list', () => {
  eachRow(list, ({ answer, source, grade }) => {
    const { outcome, findings } = screen({ answers: { [answer]: 'yes' } });
    const own = findings.filter(({ code }) => code !== 'thrombosis-score-high');
    expect(own).toMatchObject([{ code: answer, outcome, evidence: grade, path: ['answers', answer] }]);
    expect(findings[0]!.source ?? 'common practice, no source').toBe(source);
    expect(screen({ answers: { [answer]: 'no' } }).findings).toEqual([]);
  });
});

describe('rows of the 2019 guideline review', () => {
  const { source, rows }: Guideline = guidelines[0];
  eachRow(guidelineRows, ({ mode, measure, low, high, source: from, grade }) => {
    const row = rows.find((each) => each.mode === mode && each.measure === measure);
    expect(from).toBe(source);
    expect(row).toMatchObject({ low, high, evidence: grade });
  });
});

describe('guideline ranges', () => {
  eachRow(ranges, ({ guideline, inputs, outside }) => {
    const { percentLop, percentOneRepMax, cuffWidthCm, scheme, tempo, restS, ...rest } = inputs;
    const plan = planOf(
      { percentOneRepMax: percentOneRepMax, scheme, tempo, restS },
      {
        ...('sessionsPerWeek' in rest && { sessionsPerWeek: rest.sessionsPerWeek }),
        ...('weeks' in rest && { weeks: rest.weeks }),
      },
      { percentLop: percentLop, cuffWidthCm },
    );
    const { findings } = reviewPlan(plan, { guideline: guideline as GuidelineId });
    expect(findings.flatMap(({ measure }) => measure ?? []).sort()).toEqual([...outside].sort());
  });
});

describe('progression rules', () => {
  eachRow(rules, ({ rule, goal, done, load, to, ...row }) => {
    const step = 'step' in row ? { step: row.step! } : {};
    const plan = planOf({ percentOneRepMax: load, sets: goal.map((repetitions) => ({ repetitions })), ...step });
    const failure = 'lastSetToFailure' in row ? { lastSetToFailure: row.lastSetToFailure! } : {};
    const records = done.map((counts, index) => recordOf(plan, counts, { date: `2026-03-0${index + 2}` }, failure));
    const [item] = nextSession({ plan, records, rule: rule as ProgressionRuleId }).items;
    expect(item!.load).toEqual({ from: load, to, unit: 'kg' });
    // Where no load is near enough, repetitions come first.
    expect(item!.action === 'raise-load').toBe(to > load);
    expect(item!.percentLop).toEqual({ from: 50, to: 50 });
  });
});
