import { describe, expect, it } from 'vitest';
import { Reader } from '../../src/answer/reader.js';
import type { InputIssue } from '../../src/index.js';
import { goalResults, readGoals, type StageGoal } from '../../src/plan/stage-goals.js';
import type { WeekExercise, WeekLimb, WeekSums } from '../../src/plan/week-rows.js';
import { total } from '../../src/session/working.js';

const load = (value: number, unit: 'kg' | '[lb_av]' = 'kg') => total('peak-load', value, unit, {} as never);
const share = (value: number) => total('peak-percent-of-maximum', value, '%', {} as never);
const lop = (value: number) => total('percent-of-occlusion', value, '%', {} as never);
const minutes = (value: number) => total('restriction-time', 60 * value, 's', {} as never);
const sessions = (value: number) => total('sessions', value, '{sessions}', {} as never);

const squat: WeekExercise = {
  exercise: 'squat',
  peakLoad: load(100, '[lb_av]'),
  peakPercentOneRepMax: share(30),
  percentLop: lop(60),
  restrictionTime: minutes(4),
};
const press: WeekExercise = { exercise: 'press', percentLop: lop(50), restrictionTime: minutes(2) };
const plank: WeekExercise = { exercise: 'plank', restrictionTime: minutes(0) };
const leg: WeekLimb = {
  limb: 'leg',
  side: 'left',
  peakLoad: load(50),
  peakPercentOneRepMax: share(35),
  restrictionTime: minutes(6),
  volumeLoad: total('volume-load', 1000, '[lb_av]', {} as never),
  circumferenceCm: 55,
  worstPain: { value: 2, site: 'joint' },
  exercises: [press, squat, plank],
};
const bare: WeekLimb = { limb: 'arm', side: 'left', restrictionTime: minutes(0), exercises: [] };
const week: WeekSums = {
  sessions: sessions(4),
  restrictedSessions: sessions(3),
  sessionLoad: total('session-load', 900, '1', {} as never),
  limbs: [
    { ...bare, side: 'right', restrictionTime: minutes(1) },
    bare,
    { ...leg, side: 'right', circumferenceCm: 54 },
    leg,
  ],
};
const found = (goal: Partial<StageGoal>, of: WeekSums | undefined = week) =>
  goalResults([{ name: 'goal', atLeast: 1, ...goal }], of)[0]!;
const leftLeg = { limb: 'leg', side: 'left' } as const;

describe('what a goal finds in a week', () => {
  // A pound is 0.45359237 kg (definition).
  it.each<[Partial<StageGoal>, number | undefined]>([
    [{ found: 7 }, 7],
    [{}, undefined],
    [{ measure: 'sessions' }, 4],
    [{ measure: 'restrictedSessions' }, 3],
    [{ measure: 'sessionLoad' }, 900],
    [{ measure: 'peakLoadKg', ...leftLeg }, 50],
    [{ measure: 'peakPercentOneRepMax', ...leftLeg }, 35],
    // The highest of those exercises that have a cuff.
    [{ measure: 'percentLop', ...leftLeg }, 60],
    [{ measure: 'restrictionMin', ...leftLeg }, 6],
    [{ measure: 'volumeLoadKg', ...leftLeg }, 453.59237],
    [{ measure: 'circumferenceCm', ...leftLeg }, 55],
    [{ measure: 'circumferenceCm', limb: 'leg', side: 'right' }, 54],
    [{ measure: 'worstPain', ...leftLeg }, 2],
    [{ measure: 'peakLoadKg', ...leftLeg, exercise: 'squat' }, 45.359237],
    [{ measure: 'peakPercentOneRepMax', ...leftLeg, exercise: 'squat' }, 30],
    [{ measure: 'percentLop', ...leftLeg, exercise: 'press' }, 50],
    [{ measure: 'restrictionMin', ...leftLeg, exercise: 'squat' }, 4],
    [{ measure: 'restrictionMin', ...leftLeg, exercise: 'row' }, undefined],
    [{ measure: 'peakLoadKg', ...leftLeg, exercise: 'press' }, undefined],
    [{ measure: 'peakPercentOneRepMax', ...leftLeg, exercise: 'press' }, undefined],
    [{ measure: 'percentLop', ...leftLeg, exercise: 'plank' }, undefined],
    [{ measure: 'restrictionMin', limb: 'arm', side: 'left' }, 0],
    [{ measure: 'restrictionMin', limb: 'arm', side: 'right' }, 1],
    ...(
      ['peakLoadKg', 'peakPercentOneRepMax', 'percentLop', 'volumeLoadKg', 'circumferenceCm', 'worstPain'] as const
    ).map((measure): [Partial<StageGoal>, undefined] => [{ measure, limb: 'arm', side: 'left' }, undefined]),
  ])('%j: %s', (goal, expected) => {
    const result = found(goal);
    expect(result.found).toBe(expected);
    expect(result.outcome === 'not-measured').toBe(expected === undefined);
  });

  it('of a limb, an exercise or a week that is not there is nothing', () => {
    const nowhere = { ...week, limbs: [] };
    for (const exercise of [undefined, 'squat'])
      expect(found({ measure: 'percentLop', ...leftLeg, exercise }, nowhere)).not.toHaveProperty('found');
    expect(goalResults([{ name: 'a', measure: 'sessions', atLeast: 1 }], undefined)).toStrictEqual([
      { name: 'a', measure: 'sessions', atLeast: 1, outcome: 'not-measured' },
    ]);
    expect(
      found({ measure: 'sessionLoad' }, { sessions: week.sessions, restrictedSessions: week.sessions, limbs: [] }),
    ).not.toHaveProperty('found');
    expect(goalResults([{ name: 'a', measure: 'percentLop', ...leftLeg, atLeast: 1 }], undefined)[0]!.outcome).toBe(
      'not-measured',
    );
  });
});

describe('a goal', () => {
  it.each<[Partial<StageGoal>, string]>([
    [{ atLeast: 5 }, 'met'],
    [{ atLeast: 5.1 }, 'not-met'],
    [{ atMost: 5 }, 'met'],
    [{ atMost: 4.9 }, 'not-met'],
    [{ atLeast: 4, atMost: 6 }, 'met'],
    [{ atLeast: 6, atMost: 7 }, 'not-met'],
    [{ atLeast: 3, atMost: 4 }, 'not-met'],
  ])('of %j with 5 found is %s', (bounds, outcome) => {
    const goal = { name: 'goal', found: 5, ...bounds };
    expect(goalResults([goal], undefined)).toStrictEqual([{ ...goal, outcome }]);
  });
});

describe('readGoals', () => {
  const read = (...goals: object[]) => {
    const issues: InputIssue[] = [];
    const read = readGoals(new Reader({ goals }, [], issues));
    return { read, issues: issues.map(({ message }) => message), received: issues.map(({ received }) => received) };
  };

  it('takes what goes together', () => {
    const goals = [
      { name: 'hop', found: 90, atLeast: 85, atMost: 110 },
      { name: 'load', measure: 'peakLoadKg', limb: 'leg', side: 'left', exercise: 'squat', atLeast: 0 },
      { name: 'size', measure: 'circumferenceCm', limb: 'leg', side: 'left', atLeast: 50 },
      { name: 'days', measure: 'sessions', atMost: 1_000_000 },
    ];
    expect(read(...goals)).toStrictEqual({ read: goals, issues: [], received: [] });
    const none: InputIssue[] = [];
    expect([readGoals(new Reader({}, [], none)), none]).toEqual([[], []]);
  });

  const of = (measures: string) => `left out unless the measure is one of ${measures}`;
  const measures = 'peakLoadKg, peakPercentOneRepMax, percentLop, restrictionMin';
  it.each<[string, object, string[]]>([
    ['no name', { name: '', atLeast: 1 }, ['goals[0].name must be a name of 1 to 120 characters; received "".']],
    ['no bound', { name: 'a' }, ['goals[0].atLeast is missing: it must be given, or atMost, or both.']],
    [
      'a finding next to a measure',
      { name: 'a', measure: 'sessions', found: 1, atLeast: 1 },
      ['goals[0].found must be left out where a measure is given; received 1.'],
    ],
    [
      'no limb',
      { name: 'a', measure: 'worstPain', atMost: 1 },
      [
        'goals[0].limb is missing: it must be given with worstPain.',
        'goals[0].side is missing: it must be given with worstPain.',
      ],
    ],
    [
      'a limb of a week',
      { name: 'a', measure: 'sessions', ...leftLeg, atMost: 1 },
      [
        'goals[0].limb must be left out unless the measure is of a limb; received "leg".',
        'goals[0].side must be left out unless the measure is of a limb; received "left".',
      ],
    ],
    [
      'a limb without a measure',
      { name: 'a', limb: 'leg', found: 1, atMost: 1 },
      ['goals[0].limb must be left out unless the measure is of a limb; received "leg".'],
    ],
    [
      'an exercise of a limb',
      { name: 'a', measure: 'worstPain', ...leftLeg, exercise: 'squat', atMost: 1 },
      [`goals[0].exercise must be ${of(measures)}; received "squat".`],
    ],
    [
      'bounds the wrong way round',
      { name: 'a', atLeast: 10, atMost: 5 },
      ['goals[0].atMost must be at least 10; received 5.'],
    ],
    [
      'bounds that are too large or too small',
      { name: 'a', atLeast: -1, atMost: 1_000_001 },
      [
        'goals[0].atLeast must be a number from 0 to 1000000; received -1.',
        'goals[0].atMost must be a number from 0 to 1000000; received 1000001.',
      ],
    ],
  ])('refuses %s', (_, goal, messages) => {
    const { issues, received } = read(goal);
    expect(issues).toEqual(messages);
    const shown = messages.map((message) => /received (.*)\.$/.exec(message)?.[1] ?? 'undefined');
    expect(received).toEqual(shown);
  });
});
