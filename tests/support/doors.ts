import * as root from '../../src/index.js';
import { planSession } from '../../src/plan/index.js';

const tempo = { eccentricS: 2, concentricS: 2 };
const prescription = { scheme: '30-15-15-15', tempo, restS: 30, restriction: 'continuous', load: 20 };
const leftLeg = { limb: 'leg', side: 'left', cuffWidthCm: 12, posture: 'supine' } as const;
const readings = { circumferenceCm: 55, systolicMmHg: 120, diastolicMmHg: 70 } as const;
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
  compareOcclusionEquations: { call: root.compareOcclusionEquations, right: { ...leftLeg, ...readings } },
  calibrateOcclusionPressure: {
    call: root.calibrateOcclusionPressure,
    right: {
      estimate: root.estimateOcclusionPressure({ ...leftLeg, ...readings }),
      measurements: [root.measuredOcclusionPressure({ ...leftLeg, valueMmHg: 170, method: 'doppler' })],
    },
  },
  correctForPosture: {
    call: root.correctForPosture,
    right: { occlusionMmHg: 160, limb: 'leg', cuffWidthCm: 12, fromPosture: 'supine', toPosture: 'seated' },
  },
  correctForBladderWidth: {
    call: root.correctForBladderWidth,
    right: { systolicMmHg: 140, diastolicMmHg: 85, circumferenceCm: 42, bladderWidthCm: 12 },
  },
  circumferenceBandPressure: { call: root.circumferenceBandPressure, right: { circumferenceCm: 58 } },
  systolicSharePressure: { call: root.systolicSharePressure, right: { systolicMmHg: 120 } },
  withinFittedRange: { call: root.withinFittedRange, right: { equation: 'thigh-2019', ageYears: 24 } },
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
  explain: { call: root.explain, right: root.testedOneRepMax({ load: 100 }) },
  cite: { call: root.cite, right: root.testedOneRepMax({ load: 100 }) },
};
