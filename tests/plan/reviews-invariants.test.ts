import { describe, expect, it } from 'vitest';
import { messages } from '../../src/text/index.js';
import {
  guidelines,
  progression,
  measures,
  nextStage,
  planSession,
  reviewPlan,
  screen,
  screeningQuestions,
  type Plan,
  type PlanRequest,
  type SessionRecord,
} from '../../src/plan/index.js';
import { message, type Said } from '../support/invariants.js';
import { planOf, recordOf } from '../support/plans.js';

const plan = planOf({ percentOneRepMax: 20, step: 2.5 });
const all = [30, 15, 15, 15];

describe('a review', () => {
  // Every measure that a document can tell, with the range of the guideline that holds for its block.
  const found = (document: Plan | SessionRecord, guideline?: (typeof guidelines)[number]['id']) => {
    const { findings, inside } = reviewPlan(document, guideline && { guideline });
    return Object.fromEntries(
      [...findings, ...inside].map(({ measure, found: value, low, high, path }) => [
        measure,
        [value, low, high, path.join('.')],
      ]),
    );
  };
  it('reads every figure from where it stands', () => {
    expect(found(plan)).toEqual({
      'percent-of-occlusion': [50, 40, 80, 'items.0.target'],
      'cuff-width': [10, 5, 18, 'request.limbs.0.cuffWidthCm'],
      'restriction-time': [6.5, 5, 10, 'items.0.totals.restrictionTime'],
      sets: [4, 2, 4, 'items.0.sets'],
      'percent-of-maximum': [20, 20, 40, 'items.0.load'],
      repetitions: [75, 75, 75, 'items.0.totals.repetitions'],
      lifting: [2, 1, 2, 'items.0.tempo.concentricS'],
      lowering: [2, 1, 2, 'items.0.tempo.eccentricS'],
      rest: [30, 30, 60, 'items.0.sets.0.restS'],
    });
    // 110 of 200 mmHg; 25 of 100 kg.
    const record = recordOf(plan, [30, 15], {}, { heldMmHg: 110, load: 25 });
    expect(found(record)).toEqual({
      'percent-of-occlusion': [55, 40, 80, 'items.0.done.heldMmHg'],
      'cuff-width': [10, 5, 18, 'items.0.cuffWidthCm'],
      // 45 × 4 s and 30 s.
      'restriction-time': [3.5, 5, 10, 'items.0.totals.restrictionTime'],
      sets: [2, 2, 4, 'items.0.done.sets'],
      'percent-of-maximum': [25, 20, 40, 'items.0.done.load'],
      repetitions: [45, 75, 75, 'items.0.totals.repetitions'],
      lifting: [2, 1, 2, 'items.0.tempo.concentricS'],
      lowering: [2, 1, 2, 'items.0.tempo.eccentricS'],
      rest: [30, 30, 60, 'items.0.done.sets.0.restS'],
    });
  });

  it('judges each rest once, walking by its own rows, and the block by its weeks', () => {
    const rests = planOf({
      sets: [
        { repetitions: 10, restS: 20 },
        { repetitions: 10, restS: 40 },
        { repetitions: 10, restS: 20 },
        { repetitions: 10 },
      ],
    });
    const { findings, inside } = reviewPlan(rests);
    expect(
      [...findings, ...inside]
        .filter(({ measure }) => measure === 'rest')
        .map(({ found: value, path }) => [value, path[3]]),
    ).toEqual([
      [20, 0],
      [40, 1],
    ]);
    const often = (weeks: number | undefined, sessionsPerWeek: number) =>
      found(planOf({}, { sessionsPerWeek, ...(weeks !== undefined && { weeks }) }))['sessions-per-week']!.slice(0, 3);
    // 2 to 3 a week in a block of more than 3 weeks, 1 to 2 a day in a shorter one (reference C.2).
    expect(often(4, 8)).toEqual([8, 2, 3]);
    expect(often(3, 8)).toEqual([8, 7, 14]);
    expect(often(undefined, 8)).toEqual([8, 2, 3]);
    expect(found(planOf({}, { sessionsPerWeek: 3 }))['sessions-per-week']![3]).toBe('request.sessionsPerWeek');
  });

  it('is as grave as the guideline has it, at the ends of each range', () => {
    const grave = (limb: object, guideline?: (typeof guidelines)[number]['id']) =>
      reviewPlan(planOf({}, {}, limb), guideline && { guideline })
        .findings.filter(({ measure }) => measure === 'percent-of-occlusion')
        .map(({ severity, code, low, high }) => [severity, code, low, high]);
    // As printed, 80.4 is 80 and 39.5 is 40.
    expect(grave({ percentLop: 80.4, gaugeStepMmHg: 0.1 })).toEqual([]);
    expect(grave({ percentLop: 80.5, gaugeStepMmHg: 0.1 })).toEqual([['caution', 'review-above', 40, 80]]);
    expect(grave({ percentLop: 39.5, gaugeStepMmHg: 0.1 })).toEqual([]);
    expect(grave({ percentLop: 39.4, gaugeStepMmHg: 0.1 })).toEqual([['note', 'review-below', 40, 80]]);
    expect(grave({ percentLop: 55 }, 'lower-limb-protocols-2025')).toEqual([['note', 'review-below', 60, 80]]);
    const times = reviewPlan(planOf({ scheme: '4x30', restS: 60 }), { guideline: 'common-practice' });
    expect(times.findings.concat(times.inside as never).map(({ measure, path }) => [measure, path])).toEqual([
      ['limb-restriction-time', ['limbs', 0, 'restrictionTime']],
    ]);
    for (const { rows } of guidelines) for (const { measure } of rows) expect(measures).toHaveProperty(measure);
  });

  it('looks at nothing without a cuff, and at what a record lacks', () => {
    expect(found(planOf({ restriction: 'none' }))).toEqual({});
    expect(reviewPlan(planOf({ restriction: 'none' })).notAssessed).toEqual([]);
    expect(reviewPlan(recordOf(plan, all, {}, { heldMmHg: undefined })).notAssessed).toEqual([
      'percent-of-occlusion',
      'sessions-per-week',
    ]);
    const unloaded = planOf({ oneRepMax: undefined, percentOneRepMax: undefined, unloaded: true });
    expect(reviewPlan(unloaded).notAssessed).toEqual(['sessions-per-week', 'percent-of-maximum']);
    expect(reviewPlan(recordOf(unloaded, all)).notAssessed).toContain('percent-of-maximum');
    const timed = planOf({ sets: [{ durationS: 60 }], restS: undefined, tempo: undefined });
    expect(reviewPlan(timed).notAssessed).toEqual(['sessions-per-week', 'repetitions', 'rest', 'lifting', 'lowering']);
  });

  it('times the pause of each limb between two exercises, from cuff down to cuff up', () => {
    const [exercise] = plan.request.exercises;
    const [limb] = plan.request.limbs;
    const request = {
      ...plan.request,
      limbs: [limb, { ...limb, side: 'right' }],
      exercises: [
        { ...exercise, side: 'left', reperfusionS: 120 },
        { ...exercise, name: 'other', side: 'right', reperfusionS: 100 },
        { ...exercise, side: 'left', restriction: 'intermittent' },
      ],
    } as PlanRequest;
    const { findings, inside } = reviewPlan(planSession(request), { guideline: 'common-practice' });
    const pauses = [...findings, ...inside].filter(({ measure }) => measure === 'reperfusion');
    // 120 + 390 + 100 s; the rests of one exercise are no pauses.
    expect(pauses.map(({ found: value }) => value)).toEqual([610 / 60]);
  });
});

describe('a screening', () => {
  it('says of each finding what it leads to, why, and how well it is backed', () => {
    const of = (request: Parameters<typeof screen>[0]) =>
      screen(request).findings.map(({ outcome, code, severity, evidence, path, source, values }) => [
        outcome,
        code,
        severity,
        evidence,
        path?.join('.'),
        source,
        Object.keys(values ?? {}).join(),
      ]);
    const listed = 'risk-stratification-2022';
    expect(
      of({ ageYears: 61, systolicMmHg: 145, diastolicMmHg: 80, answers: { diabetes: 'yes', pregnancy: 'yes' } }),
    ).toEqual([
      ['refer', 'pregnancy', 'stop', 'published', 'answers.pregnancy', listed, ''],
      [
        'caution',
        'blood-pressure-high',
        'caution',
        'secondary',
        'systolicMmHg',
        'hypertension-classes-2018',
        'systolic,diastolic,high,systolicLine,diastolicLine',
      ],
      ['caution', 'diabetes', 'caution', 'published', 'answers.diabetes', listed, ''],
      ['caution', 'age-60-and-over', 'caution', 'published', 'ageYears', listed, 'age'],
    ]);
    expect(of({ ageYears: 17, diastolicMmHg: 110, answers: { 'first-session': 'yes', 'sickle-cell': 'yes' } })).toEqual(
      [
        [
          'refer',
          'blood-pressure-refer',
          'stop',
          'published',
          'diastolicMmHg',
          listed,
          'systolic,diastolic,high,systolicLine,diastolicLine',
        ],
        ['refer', 'sickle-cell', 'stop', 'unconfirmed', 'answers.sickle-cell', undefined, ''],
        ['caution', 'first-session', 'caution', 'published', 'answers.first-session', 'case-report-2016', ''],
        ['caution', 'age-under-18', 'caution', 'practice', 'ageYears', undefined, 'age'],
      ],
    );
  });

  // Front Physiol 2022;13:808622, Table 3: 3 for a clot, 2 for a clotting disorder, paralysis and cancer, 1 for the rest.
  it('adds up the thrombosis score', () => {
    const score = (request: Parameters<typeof screen>[0]) => {
      const { value, cautions, inputs } = screen(request).thrombosisScore;
      const open = cautions.find(({ code }) => code === 'score-incomplete');
      return [value, open?.values ?? {}, inputs['age-60-and-over']];
    };
    const none = Object.fromEntries(screeningQuestions().map(({ code }) => [code, 'no']));
    expect(score({ ageYears: 59, answers: none })).toEqual([0, {}, 'no']);
    expect(score({ ageYears: 60, answers: none })).toEqual([1, {}, 'yes']);
    expect(score({ answers: none })).toEqual([0, { possible: 1, most: 12 }, 'unknown']);
    expect(score({ ageYears: 60, answers: { ...none, 'venous-thromboembolism': 'yes', immobile: 'unknown' } })).toEqual(
      [4, { possible: 5, most: 12 }, 'yes'],
    );
    const points = {
      'venous-thromboembolism': 3,
      thrombophilia: 2,
      'limb-paralysis': 2,
      'cancer-within-5-years': 2,
      'intensive-care': 1,
      immobile: 1,
    };
    for (const [code, value] of Object.entries(points))
      expect(score({ ageYears: 30, answers: { ...none, [code]: 'yes' } })[0]).toBe(value);
    expect(screen({ answers: {} }).thrombosisScore).toMatchObject({ unit: '1', equation: 'thrombosis-score-2022' });
  });

  it('asks every question, and lists what is open', () => {
    const [question] = screeningQuestions();
    expect(question).toEqual({
      code: 'venous-thromboembolism',
      question: messages['ask-venous-thromboembolism'],
      outcome: 'refer',
      evidence: 'published',
      source: 'risk-stratification-2022',
    });
    expect(screen({ ageYears: 30, answers: {} }).unanswered.slice(0, 3)).toEqual([
      { code: 'systolicMmHg', question: messages['ask-systolicMmHg'] },
      { code: 'diastolicMmHg', question: messages['ask-diastolicMmHg'] },
      { code: 'venous-thromboembolism', question: messages['ask-venous-thromboembolism'] },
    ]);
    expect(screen({ answers: {} }).unanswered[0]).toEqual({ code: 'ageYears', question: messages['ask-ageYears'] });
  });
});

describe('the progression', () => {
  // Phys Ther 2021;101:1–9: at rest, with walking or cycling, with low load, with low beside high load; then high load alone.
  it('has the published order, and says what comes next', () => {
    const at = (stage: (typeof progression)[number]['id']) => {
      const { position, of, messages, next, stage: own } = nextStage({ stage });
      expect(own.id).toBe(stage);
      return [position, of, next?.id, ...message(messages)];
    };
    const last: Said = ['stage-not-permission'];
    expect(at('passive')).toEqual([
      1,
      5,
      'aerobic',
      ['stage-next', { values: { next: 'aerobic', stage: 'passive' } }],
      last,
    ]);
    expect(at('low-and-high-load')).toEqual([
      4,
      5,
      'high-load',
      ['stage-next-practice', { values: { next: 'high-load', stage: 'low-and-high-load' } }],
      last,
    ]);
    expect(at('high-load')).toEqual([5, 5, undefined, ['stage-top'], last]);
    expect(nextStage({ stage: 'passive' }).sources).toEqual(['clinical-stages-2021']);
  });
});
