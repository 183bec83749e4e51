import { describe, expect, it } from 'vitest';
import { attempt } from '../../src/index.js';
import { compareWeeks } from '../../src/plan/index.js';
import { planOf, recordOf } from '../support/plans.js';

const plan = (load = 20, more: object = {}) =>
  planOf({ load, oneRepMax: undefined, percentOneRepMax: undefined, sets: [{ repetitions: 10 }] }, more);
const refused = (input: unknown) => {
  const result = attempt(compareWeeks as (input: unknown) => unknown, input);
  return result.ok ? [] : result.issues.map(({ message }) => message);
};
const need = 'a list of weeks, each with its sessions or records';

describe('compareWeeks', () => {
  it('numbers the weeks, and compares goals with the last, as done before as planned', () => {
    const goal = { name: 'load', measure: 'peakLoadKg', limb: 'leg', side: 'left', atLeast: 1 } as const;
    const week = { sessions: [{ plan: plan() }] };
    const foundIn = (...weeks: object[]) => {
      const found = compareWeeks({ weeks, firstWeek: 5, goals: [goal] } as never);
      return [found.weeks.map((one) => one.week), found.goals[0]!.found];
    };
    expect(foundIn({ sessions: [{ plan: plan(30) }] }, week)).toEqual([[5, 6], 20]);
    const records = [recordOf(plan(), [10], {}, { load: 18 })];
    expect(foundIn({ ...week, records })).toEqual([[5], 18]);
    expect(compareWeeks({ weeks: [week] }).weeks[0]!.week).toBe(1);
  });

  it('keeps the stops of its documents and of the weeks, and says what no comparison says', () => {
    const stopped = plan(20, { systolicMmHg: 190, diastolicMmHg: 100 });
    const { stops, disclaimers, document, schemaVersion, cautions } = compareWeeks({
      weeks: [{ sessions: [{ plan: stopped, times: 20 }], deload: true }],
    });
    expect(stops.map(({ code }) => code)).toEqual(['blood-pressure-refer', 'sessions-week-stop']);
    expect(cautions.map(({ code }) => code)).toContain('sessions-week-stop');
    expect([document, schemaVersion]).toEqual(['week-comparison', 1]);
    expect(disclaimers.map(({ code }) => code)).toEqual([
      'weeks-clear-no-one',
      'weeks-no-one-road',
      'one-thing-at-a-time',
    ]);
  });

  it('marks a deload', () => {
    const sessions = [{ plan: plan() }];
    expect(compareWeeks({ weeks: [{ sessions, deload: true }] }).weeks[0]!.deload).toBe(true);
    expect(compareWeeks({ weeks: [{ sessions, deload: false }] }).weeks[0]).not.toHaveProperty('deload');
  });

  it.each<[unknown, string[]]>([
    [{}, [`weeks is missing: it must be ${need}.`]],
    [{ weeks: 1 }, [`weeks must be ${need}; received 1.`]],
    [{ weeks: [{}] }, ['weeks[0].sessions is missing: it must be planned sessions, or records, or both.']],
    [{ weeks: [{ records: [] }] }, ['weeks[0].sessions is missing: it must be planned sessions, or records, or both.']],
    [{ weeks: [{ records: 1 }] }, ['weeks[0].records must be a list of records of this library; received 1.']],
    [{ weeks: [{ sessions: 1 }] }, ['weeks[0].sessions must be a list of sessions, each a plan; received 1.']],
  ])('refuses %j', (input, messages) => {
    expect(refused(input)).toEqual(messages);
  });

  it('names the place of what is no document, and of a number out of range', () => {
    const at = (input: unknown) => {
      const result = attempt(compareWeeks as (input: unknown) => unknown, input);
      return result.ok ? [] : result.issues.map(({ path, code }) => `${path.join('.')} ${code}`);
    };
    const sessions = [{ plan: plan() }];
    expect(at({ weeks: [{ sessions }, { sessions: [{ plan: plan() }, { plan: {} }] }] })).toEqual([
      'weeks.1.sessions.1.plan.document missing',
    ]);
    expect(at({ weeks: [{ records: [{}] }] })).toEqual(['weeks.0.records.0.document missing']);
    expect(at({ weeks: [{ records: [plan()] }] })).toEqual(['weeks.0.records.0.document not-one-of']);
    expect(at({ weeks: [{ sessions: [{ times: 1 }] }] })).toEqual(['weeks.0.sessions.0.plan missing']);
    expect(at({ weeks: [{ sessions: [{ plan: plan(), times: 0.5 }] }] })).toEqual([
      'weeks.0.sessions.0.times out-of-range',
    ]);
    expect(at({ weeks: [{ sessions }], firstWeek: 1.5 })).toEqual(['firstWeek not-whole']);
  });
});
