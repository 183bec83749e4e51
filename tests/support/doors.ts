import * as root from '../../src/index.js';
import { planSession } from '../../src/plan/index.js';

const tempo = { eccentricS: 2, concentricS: 2 };
const prescription = { scheme: '30-15-15-15', tempo, restS: 30, restriction: 'continuous', load: 20 };
const session = {
  exercises: [
    {
      name: 'leg press',
      sets: [{ repetitions: 15, load: 40, pressureMmHg: { left: 80, right: 85 } }, { repetitions: 12 }],
      warmUp: [{ repetitions: 10 }],
      tempo: '2-0-2-0',
      restS: 30,
      restriction: 'partial',
      limb: 'leg',
      side: 'left-then-right',
      changeS: 5,
      load: 38,
      oneRepMax: root.testedOneRepMax({ load: 100 }),
      pressureMmHg: 80,
      restPressureMmHg: 30,
      occlusionMmHg: 160,
      inflatedBeforeS: 10,
      deflatedAfterS: 5,
      reperfusionS: 200,
    },
    { scheme: '2x5min', restS: 60, restriction: 'intermittent', mode: 'passive', limb: 'leg', side: 'left' },
  ],
  sessionRpe: 6,
  sessionS: 1800,
};
const { name: _name, reperfusionS: _pause, ...one } = session.exercises[0]!;
const days = [300, 0, 450, 0, 500, 600, 0].map((loadAu) => ({ loadAu, restrictedS: { leftLeg: loadAu } }));
const occlusionMmHg = { occlusionMmHg: 160, diastolicMmHg: 70, fromWidthCm: 10, toWidthCm: 15 };

/** Every public function that takes one input object, with an input that is right. */
export const doors: Readonly<Record<string, { readonly call: (input: never) => unknown; readonly right: object }>> = {
  estimateOcclusionPressure: {
    call: root.estimateOcclusionPressure,
    right: {
      limb: 'leg',
      circumferenceCm: 55,
      systolicMmHg: 120,
      diastolicMmHg: 70,
      cuffWidthCm: 10,
      posture: 'supine',
    },
  },
  measuredOcclusionPressure: {
    call: root.measuredOcclusionPressure,
    right: { valueMmHg: 170, method: 'doppler', limb: 'leg' },
  },
  correctForCuffWidth: { call: root.correctForCuffWidth, right: occlusionMmHg },
  targetCuffPressure: {
    call: root.targetCuffPressure,
    right: {
      occlusion: root.measuredOcclusionPressure({ valueMmHg: 170, method: 'doppler', limb: 'leg' }),
      percent: 50,
    },
  },
  testedOneRepMax: { call: root.testedOneRepMax, right: { load: 100 } },
  estimateOneRepMax: { call: root.estimateOneRepMax, right: { load: 80, repetitions: 8 } },
  trainingLoad: {
    call: root.trainingLoad,
    right: { oneRepMax: root.testedOneRepMax({ load: 100 }), percent: 20, step: 2.5 },
  },
  sessionTimeline: { call: root.sessionTimeline, right: prescription },
  accountSession: { call: root.accountSession, right: prescription },
  'sessionTimeline, several exercises': { call: root.sessionTimeline, right: session },
  'sessionTimeline, everything given': { call: root.sessionTimeline, right: one },
  'accountSession, several exercises': { call: root.accountSession, right: session },
  'accountSession, everything given': { call: root.accountSession, right: one },
  weekTotals: {
    call: root.weekTotals,
    right: { days, deviation: 'sample', ratio: 'coupled', earlierWeeksAu: [1000, 900, 1100] },
  },
  compareSessions: { call: root.compareSessions, right: { from: prescription, to: session, aim: 'transition' } },
  planSession: {
    call: planSession,
    right: {
      systolicMmHg: 118,
      diastolicMmHg: 74,
      posture: 'seated',
      limbs: [{ limb: 'leg', side: 'left', circumferenceCm: 56, cuffWidthCm: 10, percent: 50, gaugeStepMmHg: 5 }],
      exercises: [
        {
          name: 'leg extension',
          limb: 'leg',
          oneRepMax: { load: 60, repetitions: 8 },
          percent: 25,
          step: 2.5,
          scheme: '30-15-15-15',
          tempo,
          restS: 30,
          restriction: 'continuous',
        },
      ],
    },
  },
  explain: { call: root.explain, right: root.testedOneRepMax({ load: 100 }) },
  'explain, a comparison': {
    call: root.explain,
    right: root.compareSessions({ from: prescription, to: prescription } as root.ComparisonInput),
  },
  cite: { call: root.cite, right: root.testedOneRepMax({ load: 100 }) },
};
