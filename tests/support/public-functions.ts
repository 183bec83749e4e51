import * as root from '../../src/index.js';
import {
  findItem,
  nextStage,
  compareSessions,
  compareWeeks,
  lightenExercise,
  nextRequest,
  nextSession,
  planSession,
  expandDocument,
  readAnswer,
  readDocument,
  recordSession,
  reviewPlan,
  checkDay,
  screen,
  dayQuestions,
  screeningQuestions,
  stopsInForce,
  trainingDays,
  type ComparisonInput,
} from '../../src/plan/index.js';
import * as study from '../../src/study/index.js';
import * as text from '../../src/text/index.js';
import { fitInput, fittedExample, recalibrateInput } from './fitted.js';

const tempo = { eccentricS: 2, concentricS: 2 };
const prescription = { scheme: '30-15-15-15', tempo, restS: 30, restriction: 'continuous', load: 20 };
const leftLeg = { limb: 'leg', side: 'left', cuffWidthCm: 12, posture: 'supine' } as const;
const readings = { circumferenceCm: 55, systolicMmHg: 120, diastolicMmHg: 70 } as const;
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
const occlusionMmHg = { limb: 'leg', ...readings, occlusionMmHg: 160, fromWidthCm: 10, toWidthCm: 15 };

const planRequest = {
  systolicMmHg: 118,
  diastolicMmHg: 74,
  posture: 'seated',
  limbs: [{ limb: 'leg', side: 'left', circumferenceCm: 56, cuffWidthCm: 10, percentLop: 50, gaugeStepMmHg: 5 }],
  exercises: [
    {
      name: 'leg extension',
      limb: 'leg',
      oneRepMax: { load: 60, repetitions: 8 },
      percentOneRepMax: 25,
      step: 2.5,
      scheme: '30-15-15-15',
      tempo,
      restS: 30,
      restriction: 'continuous',
    },
  ],
} as const;
const everyKind = {
  ...planRequest,
  bodyMassKg: 70,
  reperfusionS: 200,
  limbs: [planRequest.limbs[0], { ...planRequest.limbs[0], side: 'right' }],
  exercises: [
    {
      ...planRequest.exercises[0],
      oneRepMax: { load: 110, repetitions: 5, reserveRpe: 8, lift: 'squat', training: 'trained' },
      step: undefined,
      bar: 20,
      collars: 0,
      plates: [{ mass: 1.25, count: 4 }, { mass: 5 }],
      maximumOf: 'this-limb',
      side: 'left-then-right',
      changeS: 5,
      restriction: 'partial',
      warmUp: [{ repetitions: 10, restS: 60 }],
      percentLop: 60,
      restPercentLop: 20,
      reperfusionS: 240,
    },
    { name: 'squat', limb: 'leg', bodyMassPercent: 64, scheme: '3x10', tempo, restS: 30, restriction: 'none' },
    { name: 'quad set', limb: 'leg', unloaded: true, scheme: '5x10s', restS: 20, restriction: 'continuous' },
    {
      name: 'walk',
      mode: 'aerobic',
      limb: 'leg',
      sets: [{ durationS: 120, restS: 60 }, { durationS: 120 }],
      restriction: 'intermittent',
      intensityPercent: 40,
    },
  ],
} as const;
const plan = planSession(planRequest);
const recordRequest = {
  plan,
  date: '2026-03-02',
  items: [{ exercise: 'leg extension', limb: 'leg', side: 'left', sets: [{ repetitions: 30 }, { repetitions: 12 }] }],
  symptoms: [],
  pain: [{ site: 'joint', before: 1, after: 1 }],
  sessionRpe: 6,
  sessionS: 1500,
} as const;

/** Every public function that takes one input object, with an input that is right. Documents are open: fields unknown are kept. */
export const publicFunctions: Readonly<
  Record<string, { readonly call: (input: never) => unknown; readonly right: object; readonly open?: true }>
> = {
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
    right: {
      occlusionMmHg: 160,
      diastolicMmHg: 70,
      limb: 'leg',
      cuffWidthCm: 12,
      fromPosture: 'supine',
      toPosture: 'seated',
    },
  },
  correctForBladderWidth: {
    call: root.correctForBladderWidth,
    right: { systolicMmHg: 140, diastolicMmHg: 85, circumferenceCm: 42, bladderWidthCm: 12 },
  },
  circumferenceBandPressure: { call: root.circumferenceBandPressure, right: { circumferenceCm: 58 } },
  systolicSharePressure: { call: root.systolicSharePressure, right: { systolicMmHg: 120 } },
  withinFittedRange: { call: root.withinFittedRange, right: { equation: 'thigh-2019', ageYears: 24 } },
  correctForCuffWidth: { call: root.correctForCuffWidth, right: occlusionMmHg },
  targetCuffPressureRange: {
    call: root.targetCuffPressureRange,
    right: { occlusion: 170, percentLop: { from: 40, to: 80 }, gaugeStepMmHg: 5 },
  },
  trainingLoadRange: {
    call: root.trainingLoadRange,
    right: { oneRepMax: 45, percentOneRepMax: { from: 20, to: 30 }, step: 0.5 },
  },
  targetCuffPressure: {
    call: root.targetCuffPressure,
    right: {
      occlusion: root.measuredOcclusionPressure({ valueMmHg: 170, method: 'doppler', limb: 'leg' }),
      percentLop: 50,
    },
  },
  testedOneRepMax: { call: root.testedOneRepMax, right: { load: 100 } },
  compareOneRepMaxEquations: {
    call: root.compareOneRepMaxEquations,
    right: { load: 80, repetitions: 8, reserveRpe: 8 },
  },
  repetitionsInReserveFromRpe: { call: root.repetitionsInReserveFromRpe, right: { reserveRpe: 8 } },
  percentAtRepetitions: { call: root.percentAtRepetitions, right: { repetitions: 8, chart: 'textbook-table' } },
  repetitionsAtPercent: { call: root.repetitionsAtPercent, right: { percentOneRepMax: 75, equation: 'brzycki-1993' } },
  estimateRelativeLoad: {
    call: root.estimateRelativeLoad,
    right: { equation: 'bench-press-velocity-2010', velocityMPerS: 0.6 },
  },
  bodyMassLoad: { call: root.bodyMassLoad, right: { movement: 'pull-up', sex: 'male', bodyMass: 80 } },
  loadPlates: {
    call: root.loadPlates,
    right: { target: 60, bar: 20, collars: 5, unit: 'kg', rounding: 'nearest', plates: [{ mass: 10, count: 4 }] },
  },
  trainingLoadWithBar: {
    call: root.trainingLoad,
    right: {
      oneRepMax: root.testedOneRepMax({ load: 200 }),
      percentOneRepMax: 70,
      bar: 20,
      collars: 0,
      plates: [{ mass: 10 }],
      maximumOf: 'this-limb',
      bodyMassLoad: root.bodyMassLoad({ movement: 'pull-up', sex: 'male', bodyMass: 80 }),
    },
  },
  estimateOneRepMax: { call: root.estimateOneRepMax, right: { load: 80, repetitions: 8 } },
  trainingLoad: {
    call: root.trainingLoad,
    right: { oneRepMax: root.testedOneRepMax({ load: 100 }), percentOneRepMax: 20, step: 2.5 },
  },
  sessionTimeline: { call: root.sessionTimeline, right: prescription },
  sessionTotals: { call: root.sessionTotals, right: prescription },
  planSession: { call: planSession, right: planRequest },
  planSessionOfEveryKind: { call: planSession, right: everyKind },
  trainingDays: {
    call: trainingDays,
    right: { records: [recordSession(recordRequest)], from: '2026-03-02' },
    open: true,
  },
  screen: {
    call: screen,
    right: { ageYears: 40, systolicMmHg: 120, diastolicMmHg: 80, answers: { pregnancy: 'no', diabetes: 'yes' } },
  },
  checkDay: {
    call: checkDay,
    right: { date: '2026-03-02', systolicMmHg: 120, painNow: 2, answers: { 'today-skin': 'no', 'today-chest': 'yes' } },
  },
  expandDocument: { call: expandDocument, right: plan, open: true },
  readAnswer: { call: readAnswer, right: root.testedOneRepMax({ load: 60 }), open: true },
  readDocument: { call: readDocument, right: plan, open: true },
  reviewPlan: { call: reviewPlan, right: plan, open: true },
  recordSession: { call: recordSession, right: recordRequest },
  nextSession: {
    call: nextSession,
    right: { plan, records: [recordSession(recordRequest)], rule: 'all-repetitions', date: '2026-03-05' },
  },
  nextRequest: {
    call: nextRequest,
    right: {
      plan,
      proposal: nextSession({ plan, records: [recordSession(recordRequest)], rule: 'all-repetitions' }),
    },
  },
  lightenExercise: { call: lightenExercise, right: { plan, exercise: 'leg extension', lighterPercent: 20 } },
  compareWeeks: {
    call: compareWeeks,
    right: {
      weeks: [{ sessions: [{ plan, times: 3 }, { plan }] }, { records: [recordSession(recordRequest)], deload: true }],
      goals: [{ name: 'a quarter', measure: 'peakPercentOneRepMax', limb: 'leg', side: 'left', atLeast: 25 }],
    },
  },
  nextStage: { call: nextStage, right: { stage: 'passive' } },
  explain: { call: text.explain, right: root.testedOneRepMax({ load: 100 }), open: true },
  cite: { call: text.cite, right: root.testedOneRepMax({ load: 100 }), open: true },
  'sessionTimeline, several exercises': { call: root.sessionTimeline, right: session },
  'sessionTimeline, everything given': { call: root.sessionTimeline, right: one },
  'sessionTotals, several exercises': { call: root.sessionTotals, right: session },
  'sessionTotals, everything given': { call: root.sessionTotals, right: one },
  limbSymmetry: { call: root.limbSymmetry, right: { left: 45, right: 50, involved: 'left', errorPercent: 4.2 } },
  weekTotals: {
    call: root.weekTotals,
    right: { days, deviation: 'sample', ratio: 'coupled', earlierWeeksAu: [1000, 900, 1100] },
  },
  compareSessions: { call: compareSessions, right: { from: prescription, to: session } },
  'compareSessions, of documents': {
    call: compareSessions,
    right: { from: plan, to: recordSession(recordRequest) },
    open: true,
  },
  'explain, a comparison': {
    call: text.explain,
    right: compareSessions({ from: prescription, to: prescription } as ComparisonInput),
    open: true,
  },
  'explain, its options': {
    // Options may be left out; anything else that is no object is refused.
    call: (options) => text.explain(root.testedOneRepMax({ load: 100 }), options ?? (null as never)),
    right: { format: 'markdown', locale: { 'page.title': 'Plan' } },
  },
  fitOcclusionEquation: {
    call: study.fitOcclusionEquation,
    right: { ...fitInput, terms: [...fitInput.terms], diagnostics: true },
  },
  recalibrateOcclusionEquation: {
    call: study.recalibrateOcclusionEquation,
    right: { ...recalibrateInput, rows: [...recalibrateInput.rows] },
  },
};

const rows = {
  answer: 'occlusion-pressure',
  equation: 'width-ratio-1993',
  ...leftLeg,
  ...readings,
  circumferenceCm: [54, 60],
};
const measuredMmHg = [150, 160, 170, 180, 190, 165];

/** A public function with arguments that are right; a name may have a comma and what is particular about the call. */
export interface PublicCall {
  readonly call: (...given: never[]) => unknown;
  readonly right: readonly unknown[];
}

/** Every public function, by its name: those above, and those that take more than one input object, or none. */
export const publicCalls: Readonly<Record<string, PublicCall>> = {
  ...Object.fromEntries(
    Object.entries(publicFunctions).map(([name, { call, right }]): [string, PublicCall] => [
      name,
      { call, right: [right] },
    ]),
  ),
  centimetresToInches: { call: root.centimetresToInches, right: [30] },
  inchesToCentimetres: { call: root.inchesToCentimetres, right: [12] },
  kilogramsToPounds: { call: root.kilogramsToPounds, right: [30] },
  poundsToKilograms: { call: root.poundsToKilograms, right: [45] },
  kilopascalsToMmHg: { call: root.kilopascalsToMmHg, right: [16] },
  mmHgToKilopascals: { call: root.mmHgToKilopascals, right: [120] },
  roundToStep: { call: root.roundToStep, right: [80.9, 2, 'down'] },
  fill: { call: text.fill, right: ['{percent} % of {name}', { percent: 50, name: 'LOP' }] },
  show: { call: text.show, right: [plan] },
  toRows: { call: text.toRows, right: [plan] },
  findItem: { call: findItem as never, right: [plan, { exercise: 'leg extension', limb: 'leg', side: 'left' }] },
  attemptForm: {
    call: root.attemptForm,
    right: [root.testedOneRepMax, { load: '220,5' }, { units: { load: 'lb' }, given: { lift: 'squat' } }],
  },
  inputFields: { call: root.inputFields, right: [root.testedOneRepMax, { lift: 'squat' }, []] },
  labelFields: { call: text.labelFields as never, right: [root.inputFields(root.testedOneRepMax)] },
  checkAnswer: { call: text.checkAnswer, right: [root.testedOneRepMax({ load: 100 }), 100] },
  attempt: { call: root.attempt, right: [root.testedOneRepMax, { load: 100 }] },
  isInputError: { call: root.isInputError, right: [new Error('other')] },
  'explain, with options': {
    call: text.explain,
    right: [root.testedOneRepMax({ load: 100 }), { format: 'markdown', locale: { 'page.title': 'Plan' } }],
  },
  'reviewPlan, with options': { call: reviewPlan, right: [plan, { guideline: 'guideline-review-2019' }] },
  screeningQuestions: { call: screeningQuestions, right: [] },
  dayQuestions: { call: dayQuestions, right: [] },
  stopsInForce: { call: stopsInForce as never, right: [{ stops: [{ code: 'screened-refer', text: 'A stop.' }] }] },
  columns: { call: study.columns, right: [rows] },
  compareColumns: { call: study.compareColumns, right: [{ ...leftLeg, ...readings, circumferenceCm: [54, 60] }] },
  reachedColumns: { call: study.reachedColumns, right: [{ of: study.columns(rows as never), setting: 80 }] },
  eachRow: {
    call: study.eachRow as never,
    right: [root.measuredOcclusionPressure, { valueMmHg: [160, 170], method: 'doppler', limb: 'leg' }],
  },
  agreement: {
    call: study.agreement,
    right: [measuredMmHg, measuredMmHg.map((value) => value + 3), { acceptable: 10 }],
  },
  'agreement, by person': {
    call: study.agreement,
    right: [
      measuredMmHg,
      measuredMmHg.map((value, row) => value + (row % 3)),
      { person: measuredMmHg.map((_, row) => row >> 1), scale: 'log' },
    ],
  },
  pairsForLimits: { call: study.pairsForLimits, right: [{ standardDeviation: 10, halfWidth: 4 }] },
  reliability: {
    call: study.reliability,
    right: [[measuredMmHg, measuredMmHg.map((value, row) => value + (row % 3))], { scale: 'log' }],
  },
  bootstrap: {
    call: study.bootstrap as never,
    right: [{ rows: measuredMmHg, statistic: (rows: readonly number[]) => (rows[0] === rows[1] ? 1 : 2), draws: 200 }],
  },
  crossValidate: {
    call: study.crossValidate as never,
    right: [{ rows: measuredMmHg, fit: () => () => 160, measured: (row: number) => row, folds: 3 }],
  },
  conformal: {
    call: study.conformal,
    right: [
      Array.from({ length: 20 }, (_, i) => 150 + i),
      Array.from({ length: 20 }, (_, i) => 150 + 2 * i),
      { scale: 'log' },
    ],
  },
  bibliography: { call: text.bibliography, right: [root.testedOneRepMax({ load: 100 }), { format: 'csl-json' }] },
  working: { call: text.working, right: [root.testedOneRepMax({ load: 100 })] },
  methods: { call: text.methods, right: [root.testedOneRepMax({ load: 100 })] },
  flagCodes: { call: study.flagCodes, right: [5] },
  estimateWith: {
    call: study.estimateWith,
    right: [fittedExample, { ...leftLeg, ...readings, cuffWidthCm: 11, posture: 'seated', ageYears: 30, sex: 'male' }],
  },
  equationFromFit: { call: study.equationFromFit, right: [fittedExample] },
  propagate: {
    call: study.propagate,
    right: [
      {
        inputs: {
          load: { value: 80, standardDeviation: 2 },
          share: { distribution: 'triangular', low: 1, mode: 2, high: 2.5 },
        },
        pipeline: ({ load, share }: { load: number; share: number }) => load * share,
        draws: 100,
        keepDraws: true,
        correlations: [{ between: ['load', 'share'], value: 0.5 }],
      },
    ],
  },
};
