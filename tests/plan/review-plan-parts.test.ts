import { describe, expect, it } from 'vitest';
import { attempt } from '../../src/index.js';
import { reviewPlan, type PlanExercise, type PlanExerciseFields, type PlanRequest } from '../../src/plan/index.js';
import { bothSides, measuredAt } from '../support/inputs.js';
import { planOf, recordOf } from '../support/plans.js';

type Options = Parameters<typeof reviewPlan>[1];
/** 75 repetitions of 4 s in 4 sets with rests of 30 s, 20 % of 1RM, 50 % of LOP: nothing is outside. */
const plan = (more: Partial<PlanExerciseFields> = {}, request: Partial<PlanRequest> = {}, limb: object = {}) =>
  planOf(more, request, limb);
const found = (document: ReturnType<typeof plan>, options?: Options) =>
  reviewPlan(document, options).findings.map(({ severity, code, measure, found, low, high }) => [
    severity,
    code,
    measure,
    found,
    low,
    high,
  ]);
const inside = (document: ReturnType<typeof plan>, measure: string) =>
  reviewPlan(document).inside.filter((one) => one.measure === measure);
const squats = (count: number) => Array.from({ length: count }, () => ({ repetitions: 25 }));

// Front Physiol 2019;10:533: 40–80 % of LOP, 20–40 % of 1RM, 75 repetitions in 2–4 sets, rests of 30–60 s, 5–10 min;
// 2–3 sessions a week for more than three weeks, once or twice a day for up to three.
describe('what is outside its range', () => {
  it.each<[string, Partial<PlanExerciseFields>, unknown[]]>([
    ['nothing', {}, []],
    ['a long rest', { restS: 61 }, [['note', 'review-above', 'rest', 61, 30, 60]]],
    ['a short rest', { restS: 29 }, [['note', 'review-below', 'rest', 29, 30, 60]]],
    ['a rest that is a little long', { restS: 60.4 }, [['note', 'review-above', 'rest', 60.4, 30, 60]]],
    ['rests at the ends of the range', { restS: 60 }, []],
    ['few repetitions', { scheme: '4x18' }, [['note', 'review-below', 'repetitions', 72, 75, 75]]],
    ['few repetitions to failure', { scheme: '4x18', lastSetToFailure: true }, []],
    ['many repetitions', { sets: squats(4) }, [['note', 'review-above', 'repetitions', 100, 75, 75]]],
    ['much pressure', { percentLop: 81 }, [['caution', 'review-above', 'percent-of-occlusion', 81, 40, 80]]],
    ['little pressure', { percentLop: 39 }, [['note', 'review-below', 'percent-of-occlusion', 39, 40, 80]]],
  ])('%s', (_, more, expected) => {
    expect(found(plan(more))).toEqual(expected);
  });

  it.each<[number | undefined, number | undefined, unknown[]]>([
    [1, undefined, [['note', 'review-below', 'sessions-per-week', 1, 2, 3]]],
    [4, undefined, [['note', 'review-above', 'sessions-per-week', 4, 2, 3]]],
    [3, 4, []],
    [4, 4, [['note', 'review-above', 'sessions-per-week', 4, 2, 3]]],
    [7, 3, []],
    [6, 3, [['note', 'review-below', 'sessions-per-week', 6, 7, 14]]],
    [undefined, 4, []],
  ])('%s sessions a week over %s weeks', (sessionsPerWeek, weeks, expected) => {
    expect(found(plan({}, { sessionsPerWeek, weeks }))).toEqual(expected);
  });

  it('has its values, sentence, unit, source and place', () => {
    const [finding] = reviewPlan(plan({ restS: 90 })).findings;
    const own = {
      measure: 'rest',
      found: 90,
      unit: 's',
      low: 30,
      high: 60,
      exercise: 'leg extension',
      limb: 'leg',
      side: 'left',
    };
    expect(finding).toEqual({
      ...own,
      severity: 'note',
      code: 'review-above',
      values: { ...own, guideline: 'guideline-review-2019' },
      text: expect.stringMatching(/90 s.*30–60 s|90.*30.*60/),
      evidence: 'secondary',
      source: 'guideline-review-2019',
      path: ['items', 0, 'sets', 0, 'restS'],
    });
  });

  it('comes after the stops, the most severe first', () => {
    const stopped = plan({ restS: 90, percentLop: 90 }, { systolicMmHg: 190, diastolicMmHg: 100 });
    const { findings, stops, of } = reviewPlan(stopped);
    expect(findings.map(({ severity, measure }) => [severity, measure])).toEqual([
      ['stop', undefined],
      ['caution', 'percent-of-occlusion'],
      ['note', 'rest'],
    ]);
    expect(findings[0]).toStrictEqual({
      severity: 'stop',
      code: 'blood-pressure-refer',
      text: stops[0]!.text,
      values: stops[0]!.values,
      source: stops[0]!.source,
      path: ['stops', 0],
    });
    expect(of).toBe('plan');
  });
});

describe('rounding alone', () => {
  // 40 % of 198 mmHg are 79.2 mmHg; a gauge of 5 mmHg reaches 75, which are 38 %.
  it('is no finding, and what was asked for is said', () => {
    const rounded = plan({}, {}, { percentLop: 40, gaugeStepMmHg: 5, measured: measuredAt(198) });
    expect(found(rounded)).toEqual([]);
    expect(inside(rounded, 'percent-of-occlusion')).toMatchObject([{ asked: 40, low: 40 }]);
    expect(inside(plan(), 'percent-of-occlusion')[0]).not.toHaveProperty('asked');
    // At both ends of the range itself: 40 % and 80 % of 200 mmHg.
    for (const percentLop of [40, 80])
      expect(inside(plan({ percentLop }), 'percent-of-occlusion')[0]).not.toHaveProperty('asked');
  });

  // 82 % of 200 mmHg are 164; a gauge of 5 mmHg reaches 160, which are 80 %. 80.4 % are 80 in whole percents.
  it('counts for what is reached, in whole percents', () => {
    expect(found(plan({}, {}, { percentLop: 82, gaugeStepMmHg: 5 }))).toEqual([]);
    expect(found(plan({}, {}, { percentLop: 80.4, gaugeStepMmHg: 0.1 }))).toEqual([]);
  });

  // 40 % of 100 kg, up to a step of 7 kg: 42 kg.
  it('of a load up is no finding either', () => {
    const rounded = plan({ percentOneRepMax: 40, step: 7, rounding: 'nearest' });
    expect(inside(rounded, 'percent-of-maximum')).toMatchObject([{ found: 42, asked: 40 }]);
  });
});

describe('both sides', () => {
  const legs = (left: object = {}, right: object = {}) => {
    const [one, two] = bothSides({ limb: 'leg', cuffWidthCm: 10, percentLop: 50, measured: measuredAt(200) } as const);
    return [
      { ...one, ...left },
      { ...two, ...right },
    ];
  };
  const sidesOf = (limbs: PlanRequest['limbs'], more: Partial<PlanExerciseFields>, measure: string) =>
    reviewPlan(plan(more, { limbs })).findings.flatMap((one) =>
      one.measure === measure ? [[one.side, one.found]] : [],
    );

  it('that are alike are one finding without a side; others are two', () => {
    expect(sidesOf(legs(), { restS: 90 }, 'rest')).toEqual([[undefined, 90]]);
    expect(sidesOf(legs({ percentLop: 90 }, { percentLop: 85 }), {}, 'percent-of-occlusion')).toEqual([
      ['left', 90],
      ['right', 85],
    ]);
    expect(sidesOf(legs({ percentLop: 90 }), {}, 'percent-of-occlusion')).toEqual([['left', 90]]);
  });
  // 75 repetitions of 18 s and rests of 90 s in all: 24 min on each leg, above the usual 20.
  it('are two findings of what is about a limb itself', () => {
    const { findings } = reviewPlan(plan({ tempo: '9-0-9-0' }, { limbs: legs() }), { guideline: 'common-practice' });
    expect(findings.map(({ measure, side, found, path }) => [measure, side, found, path])).toEqual([
      ['limb-restriction-time', 'left', 24, ['limbs', 0, 'restrictionTime']],
      ['limb-restriction-time', 'right', 24, ['limbs', 1, 'restrictionTime']],
    ]);
  });
  it('of one exercise that is listed twice keep their side', () => {
    const [own] = plan({ restS: 90 }).request.exercises;
    const { findings } = reviewPlan(plan({}, { exercises: [own!, own!] }));
    expect(findings.filter(({ measure }) => measure === 'rest').map(({ side }) => side)).toEqual(['left']);
  });
});

// From 65 % of 1RM on a load is heavy (J Appl Physiol 2009;106(4):1119–1124).
describe('a heavy exercise', () => {
  const heavy = (percentOneRepMax: number, more: Partial<PlanExerciseFields> = {}) =>
    plan({ percentOneRepMax, scheme: '3x5', restS: 120, ...more });

  it.each([
    [64, 'continuous', ['review-above', 'review-below', 'review-above']],
    [65, 'continuous', ['review-heavy']],
    [64, 'none', []],
  ] as const)('of %i %% with the cuff %s', (percent, restriction, codes) => {
    const given = reviewPlan(heavy(percent, { restriction })).findings.map(({ code }) => code);
    expect([...given].sort()).toEqual([...codes].sort());
  });

  it('has one finding, of the heaviest', () => {
    const [own] = heavy(80).request.exercises;
    const other = { ...own!, name: 'press', percentOneRepMax: 90, restriction: 'none' } as PlanExercise;
    const { findings, disclaimers } = reviewPlan(plan({}, { exercises: [own!, other] }));
    expect(findings).toMatchObject([
      {
        severity: 'caution',
        code: 'review-heavy',
        measure: 'percent-of-maximum',
        found: 90,
        exercise: 'press',
        limb: 'leg',
        side: 'left',
        path: ['items', 1, 'load'],
      },
    ]);
    expect(disclaimers.at(-1)!.code).toBe('review-no-cuff');
    expect(reviewPlan(heavy(80, { restriction: 'none' })).findings.map(({ severity }) => severity)).toEqual(['note']);
  });

  it('in a record is the load that was lifted', () => {
    const record = recordOf(heavy(80), [5, 5, 5]);
    expect(reviewPlan(record).findings).toMatchObject([{ code: 'review-heavy', path: ['items', 0, 'done', 'load'] }]);
    expect(reviewPlan(record).of).toBe('record');
  });

  it('is as any other for a guideline without a range for loads', () => {
    expect(found(heavy(80), { guideline: 'common-practice' }).map(([, code]) => code)).not.toContain('review-heavy');
  });
});

describe('a review', () => {
  it('says what it could not compare, and by which guideline', () => {
    const { notAssessed, guideline, disclaimers, document, schemaVersion } = reviewPlan(plan());
    expect(notAssessed).toEqual(['sessions-per-week']);
    expect(guideline).toMatchObject({ id: 'guideline-review-2019', source: 'guideline-review-2019' });
    expect(disclaimers.map(({ code }) => code)).toEqual([
      'review-clears-no-one',
      'local-codes-decide',
      'review-partial',
    ]);
    expect([document, schemaVersion]).toEqual(['review', 1]);
    expect(reviewPlan(plan(), { guideline: 'common-practice' }).guideline).not.toHaveProperty('source');
    expect(reviewPlan(plan({ restriction: 'none' })).notAssessed).toEqual([]);
  });
  it('refuses a guideline it does not know', () => {
    const result = attempt((guideline: string) => reviewPlan(plan(), { guideline } as never), 'x');
    expect(result.ok ? [] : result.issues.map(({ path, code }) => [path, code])).toEqual([
      [['guideline'], 'not-one-of'],
    ]);
  });
});
