import * as root from '../../src/index.js';
import { planSession } from '../../src/plan/index.js';
import * as study from '../../src/study/index.js';
import { fitInput } from './fitted.js';

const tempo = { eccentricS: 2, concentricS: 2 };
const prescription = { scheme: '30-15-15-15', tempo, restS: 30, restriction: 'continuous', load: 20 };
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
  fitOcclusionEquation: { call: study.fitOcclusionEquation, right: { ...fitInput, terms: [...fitInput.terms] } },
  explain: { call: root.explain, right: root.testedOneRepMax({ load: 100 }) },
  cite: { call: root.cite, right: root.testedOneRepMax({ load: 100 }) },
};
