import { explain } from '../../../src/text/index.js';
import {
  compareSessions,
  lightenExercise,
  planSession,
  recordSession,
  type PlanExercise,
  type PlanExerciseFields,
} from '../../../src/plan/index.js';
import { page, type Story } from './story.js';

type Exercise = PlanExercise;

const bench = (more: Partial<PlanExerciseFields>): Exercise =>
  ({
    name: 'bench press',
    limb: 'arm',
    side: 'both',
    oneRepMax: { load: 120 },
    percentOneRepMax: 85,
    step: 2.5,
    sets: [3, 3, 2, 2, 2].map((repetitions) => ({ repetitions, repetitionsInReserve: 2 })),
    warmUp: [
      { repetitions: 8, load: 40, restS: 60 },
      { repetitions: 4, load: 70, restS: 90 },
    ],
    tempo: '2-0-1-0',
    restS: 150,
    restriction: 'none',
    ...more,
  }) as Exercise;

const planOf = (exercise: Exercise, notes: string) =>
  planSession({
    label: 'Player S',
    date: '2026-09-14',
    notes,
    ageYears: 27,
    systolicMmHg: 124,
    diastolicMmHg: 78,
    posture: 'supine',
    sessionsPerWeek: 1,
    limbs: (['left', 'right'] as const).map((side) => ({
      limb: 'arm',
      side,
      cuffWidthCm: 7,
      percentLop: 50,
      gaugeStepMmHg: 5,
      measured: {
        valueMmHg: side === 'left' ? 142 : 146,
        method: 'doppler',
        posture: 'supine',
        cuffWidthCm: 7,
        date: '2026-09-07',
      },
    })),
    exercises: [exercise],
  });

/** A contact-sport player with sore shoulders, once a week. */
export const shoulder = (): Story => {
  const usual = planOf(bench({}), 'The usual weekly session.');
  const lighter = planOf(
    bench({
      percentOneRepMax: 72.5,
      sets: [
        { repetitions: 3, repetitionsInReserve: 4 },
        { repetitions: 3, repetitionsInReserve: 4 },
        { repetitions: 2, percentOneRepMax: 75 },
        { repetitions: 2, percentOneRepMax: 75 },
        { repetitions: 2 },
      ],
      restriction: 'intermittent',
    }),
    'Shoulders sore after Saturday: less load, cuffs inflated in the sets only.',
  );
  const record = recordSession({
    plan: lighter,
    date: '2026-09-14',
    items: (['left', 'right'] as const).map((side) => ({
      exercise: 'bench press',
      limb: 'arm',
      side,
      sets: [
        { repetitions: 3, repetitionsInReserve: 4 },
        { repetitions: 3, repetitionsInReserve: 3 },
        { repetitions: 2, load: 90, repetitionsInReserve: 3 },
        { repetitions: 1, load: 90, repetitionsInReserve: 2 },
        { repetitions: 2, load: 80, repetitionsInReserve: 5 },
      ],
      heldMmHg: 70,
    })),
    systolicMmHg: 126,
    diastolicMmHg: 80,
    pain: [{ site: 'joint', limb: 'arm', side: 'right', before: 2, during: 3, after: 2, nextMorning: 2 }],
    sessionRpe: 5,
    sessionS: 1800,
    notes: 'Set 4 stopped at one repetition: right shoulder. Load dropped for set 5.',
  });
  return {
    title: 'Sore shoulders, once a week in season',
    intro: [
      'Player S is invented, plays a contact sport, and lifts once a week. After a hard game both shoulders are sore.',
      'You take load off the shoulders and see what it costs. The percentages are an example, not advice.',
      'You read four pages: ways to do it with less load, the session you chose, what it trades, and what was done.',
    ],
    pages: [
      page(
        'Ways to press with 15 % less load',
        explain(lightenExercise({ plan: usual, exercise: 'bench press', lighterPercent: 15 }), { format: 'markdown' }),
      ),
      page('The session you chose, for the gym floor', explain(lighter, { format: 'markdown', detail: 'brief' })),
      page('What you trade', explain(compareSessions({ from: usual, to: lighter }), { format: 'markdown' })),
      page('What was done', explain(record, { format: 'markdown', detail: 'brief' })),
    ],
  };
};
