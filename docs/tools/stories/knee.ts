import { explain } from '../../../src/text/index.js';
import {
  compareSessions,
  compareWeeks,
  planSession,
  recordSession,
  type PlanExercise,
  type PlanExerciseFields,
  type Plan,
  type WeekInput,
} from '../../../src/plan/index.js';
import { page, type Story } from './story.js';

type Exercise = PlanExercise;

const MEASURED = [
  // The occlusion pressure of the leg, measured again as it regains muscle: week, mmHg, circumference in cm.
  [2, 164, 51],
  [5, 172, 52.5],
  [9, 178, 54],
] as const;

/** Monday of a week after surgery; invented. */
const monday = (week: number): string => new Date(Date.UTC(2026, 0, 5 + 7 * (week - 1))).toISOString().slice(0, 10);

function planOf(week: number, percentLop: number, ...exercises: Exercise[]): Plan {
  const [since, valueMmHg, circumferenceCm] = MEASURED.filter(([from]) => from <= week).at(-1)!;
  return planSession({
    label: 'Athlete K',
    date: monday(week),
    ageYears: 24,
    systolicMmHg: 118,
    diastolicMmHg: 74,
    posture: 'seated',
    reperfusionS: 180,
    limbs: [
      {
        limb: 'leg',
        side: 'right',
        circumferenceCm,
        cuffWidthCm: 12,
        percentLop,
        gaugeStepMmHg: 5,
        measured: { valueMmHg, method: 'doppler', posture: 'seated', cuffWidthCm: 12, date: monday(since) },
      },
    ],
    exercises,
  });
}

const atRest: Exercise = {
  name: 'at rest',
  mode: 'passive',
  limb: 'leg',
  scheme: '5x5min',
  restS: 180,
  restriction: 'intermittent',
};
const walk: Exercise = {
  name: 'walk',
  mode: 'aerobic',
  limb: 'leg',
  scheme: '5x2min',
  restS: 60,
  restriction: 'continuous',
};
const press = (percentOneRepMax: number, more: Partial<PlanExerciseFields> = {}): Exercise =>
  ({
    name: 'leg press',
    limb: 'leg',
    oneRepMax: { load: 120 },
    maximumOf: 'other-limb',
    percentOneRepMax,
    step: 2.5,
    scheme: '30-15-15-15',
    tempo: '2-0-2-0',
    restS: 30,
    restriction: 'continuous',
    ...more,
  }) as Exercise;
const heavy = (percent: number): Exercise =>
  press(percent, { name: 'leg press, heavy', scheme: '3x8', restS: 120, restriction: 'none', maximumOf: 'this-limb' });

/** What each week plans: sessions, and how often. */
const weeks = new Map<number, readonly (readonly [plan: Plan, times: number])[]>([
  [2, [[planOf(2, 80, atRest), 7]]],
  [3, [[planOf(3, 60, walk), 3]]],
  [4, [[planOf(4, 60, press(20)), 3]]],
  [5, [[planOf(5, 60, press(20)), 3]]],
  [6, [[planOf(6, 60, press(25)), 3]]],
  [7, [[planOf(7, 50, press(30)), 3]]],
  [8, [[planOf(8, 50, press(20)), 2]]],
  [
    9,
    [
      [planOf(9, 50, press(30)), 2],
      [planOf(9, 50, heavy(60)), 1],
    ],
  ],
  [
    10,
    [
      [planOf(10, 40, press(30)), 1],
      [planOf(10, 40, heavy(65)), 2],
    ],
  ],
  [11, [[planOf(11, 40, heavy(70)), 2]]],
  [12, [[planOf(12, 40, heavy(75)), 2]]],
]);

const first = (week: number): Plan => weeks.get(week)![0]![0];

/** A session as planned, with pain in the joint and its effort. */
const doneIn = (week: number, before: number, after: number, sessionRpe: number) => {
  const plan = first(week);
  return recordSession({
    plan,
    date: monday(week),
    items: plan.items.map(({ exercise, limb, side, sets, target, restriction }) => ({
      exercise,
      limb,
      side,
      sets: sets.map(({ repetitions, durationS }) => ({ repetitions, durationS })),
      ...(restriction !== 'none' && { heldMmHg: target!.value }),
    })),
    pain: [{ site: 'joint', before, during: after, after, nextMorning: before }],
    sessionRpe,
    sessionS: 1500,
  });
};

const RECORDS = new Map([
  [4, doneIn(4, 2, 2, 6)],
  [7, doneIn(7, 1, 1, 6)],
  [12, doneIn(12, 0, 1, 7)],
]);

/** Weeks 2 to 12, planned and, where it is recorded, done. */
export const kneeWeeks: readonly WeekInput[] = [...weeks].map(([week, sessions]) => ({
  sessions: sessions.map(([plan, times]) => ({ plan, times })),
  ...(RECORDS.has(week) && { records: [RECORDS.get(week)!] }),
  ...(week === 8 && { deload: true }),
}));

/** Week after surgery that the first row of {@link kneeWeeks} is. */
export const KNEE_FROM = 2;

/** A knee from week 2 to week 12: load rises, the cuff falls. */
export const knee = (): Story => ({
  title: 'A knee, from week 2 to week 12',
  intro: [
    'Athlete K is invented. The knee was repaired in January. The surgeon released the leg for restriction in week 2.',
    'The tables count weeks after surgery. The percentages and weeks are an example, not advice.',
    'You read three pages: the session of week 4, what you trade from week 4 to week 12, and all the weeks.',
  ],
  pages: [
    page('The session of week 4, for the gym floor', explain(first(4), { format: 'markdown', detail: 'brief' })),
    page(
      'What you trade from week 4 to week 12',
      explain(compareSessions({ from: first(4), to: first(12) }), { format: 'markdown' }),
    ),
    page(
      'The weeks',
      explain(
        compareWeeks({
          weeks: kneeWeeks,
          firstWeek: KNEE_FROM,
          goals: [
            {
              name: '75 % of 1RM with this leg',
              measure: 'peakPercentOneRepMax',
              limb: 'leg',
              side: 'right',
              atLeast: 75,
            },
            { name: 'joint pain at most 2 of 10', measure: 'worstPain', limb: 'leg', side: 'right', atMost: 2 },
            { name: 'thigh at least 56 cm', measure: 'circumferenceCm', limb: 'leg', side: 'right', atLeast: 56 },
            { name: 'single-leg hop, 90 % of the other side', atLeast: 90 },
          ],
        }),
        { format: 'markdown' },
      ),
    ),
  ],
});
