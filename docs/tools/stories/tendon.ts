import { explain } from '../../../src/text/index.js';
import { nextSession, planSession, recordSession, screen, type RecordRequest } from '../../../src/plan/index.js';
import { page, type Story } from './story.js';

/** A 62-year-old with high blood pressure and a sore tendon. */
export const tendon = (): Story => {
  const screening = screen({
    label: 'Person T',
    date: '2026-04-06',
    ageYears: 62,
    systolicMmHg: 148,
    diastolicMmHg: 88,
    answers: { hypertension: 'yes', 'first-session': 'yes' },
  });
  const plan = planSession({
    label: 'Person T',
    date: '2026-04-06',
    screening,
    ageYears: 62,
    systolicMmHg: 148,
    diastolicMmHg: 88,
    posture: 'seated',
    sessionsPerWeek: 2,
    limbs: [
      {
        limb: 'leg',
        side: 'left',
        circumferenceCm: 52,
        cuffWidthCm: 12,
        percentLop: 40,
        gaugeStepMmHg: 5,
        ceilingMmHg: 120,
        measured: { valueMmHg: 190, method: 'doppler', posture: 'seated', cuffWidthCm: 12, date: '2026-04-06' },
      },
    ],
    exercises: [
      {
        name: 'leg extension',
        limb: 'leg',
        oneRepMax: { load: 40 },
        percentOneRepMax: 25,
        step: 2.5,
        scheme: '3x15',
        tempo: '3-0-3-0',
        restS: 60,
        restriction: 'intermittent',
      },
    ],
  });
  const done = (date: string, pain: number, more: Partial<RecordRequest> = {}) =>
    recordSession({
      plan,
      date,
      items: [
        {
          exercise: 'leg extension',
          limb: 'leg',
          side: 'left',
          sets: [{ repetitions: 15 }, { repetitions: 15 }, { repetitions: 15 }],
          heldMmHg: 75,
          lastSetToFailure: false,
        },
      ],
      pain: [{ site: 'tendon', before: pain, during: pain + 1, after: pain, nextMorning: pain }],
      sessionRpe: 4,
      sessionS: 900,
      ...more,
    });
  const usual = [
    done('2026-04-08', 3, { systolicMmHg: 146, diastolicMmHg: 86 }),
    done('2026-04-11', 2, { systolicMmHg: 144, diastolicMmHg: 86 }),
  ];
  const high = done('2026-04-15', 2, { systolicMmHg: 184, diastolicMmHg: 108 });
  const proposal = (records: readonly ReturnType<typeof done>[], date: string) =>
    nextSession({ plan, records, rule: 'all-repetitions', painRule: 'tendon-monitoring', date });
  return {
    title: 'Age 62, high blood pressure and a sore tendon',
    intro: [
      'Person T is invented. Blood pressure is high, and the patellar tendon hurts under heavy load.',
      'You screen first, start low with the cuff deflated between sets, and measure blood pressure before each session.',
      'You read four pages: the screening, the session, what comes next after two sessions, and a day with too high a pressure.',
    ],
    pages: [
      page('The screening', explain(screening, { format: 'markdown' })),
      page('The session, for the gym floor', explain(plan, { format: 'markdown', detail: 'brief' })),
      page('After two sessions', explain(proposal(usual, '2026-04-15'), { format: 'markdown' })),
      page(
        'A day with too high a blood pressure',
        explain(proposal([...usual, high], '2026-04-18'), { format: 'markdown' }),
      ),
    ],
  };
};
