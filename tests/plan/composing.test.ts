import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import {
  attempt,
  calibrateOcclusionPressure,
  correctForCuffWidth,
  correctForPosture,
  estimateOcclusionPressure,
  estimateOneRepMax,
  measuredOcclusionPressure,
  targetCuffPressure,
  testedOneRepMax,
  trainingLoad,
} from '../../src/index.js';
import {
  nextRequest,
  nextSession,
  expandDocument,
  planSession,
  readDocument,
  recordSession,
  screen,
  type PlanExercise,
  type PlanExerciseFields,
  type PlanLimb,
  type PlanRequest,
} from '../../src/plan/index.js';
import { explain } from '../../src/text/index.js';
import { codesOf, expectClose } from '../support/invariants.js';
import { issuesOf } from '../support/refused.js';
import { EXTENSION, LEG } from '../support/inputs.js';

const readings = { ...LEG, cuffWidthCm: 10 } as const;
const estimated = estimateOcclusionPressure({ ...readings, side: 'right' });
const measured = measuredOcclusionPressure({
  valueMmHg: 168,
  method: 'doppler',
  limb: 'leg',
  side: 'left',
  cuffWidthCm: 10,
  posture: 'supine',
  date: '2026-03-02',
});
const maximum = estimateOneRepMax({ load: 60, repetitions: 8 });
const { oneRepMax: _, ...exercise } = EXTENSION;
const plan = (limb: Partial<PlanLimb>, lifted: Partial<PlanExerciseFields> = { oneRepMax: 60 }, more: object = {}) =>
  planSession({
    systolicMmHg: 120,
    diastolicMmHg: 70,
    posture: 'supine',
    limbs: [{ limb: 'leg', side: 'left', percentLop: 50, ...limb }],
    exercises: [{ ...exercise, ...lifted }],
    ...more,
  } as PlanRequest);
const issues = (...given: Parameters<typeof plan>) => issuesOf(() => plan(...given));

// Two legs, cuffs of 10 cm, one pressure measured and one estimated, 50 %, 30-15-15-15 at 20–30 % of an estimated maximum.
const itemOf = (...given: Parameters<typeof plan>) => expandDocument(plan(...given)).items[0];

describe('the whole job', () => {
  it('takes twelve lines, without a cast', () => {
    const job = () => {
      const person = { systolicMmHg: 120, diastolicMmHg: 70, posture: 'supine' } as const;
      const cuff = { limb: 'leg', cuffWidthCm: 10, posture: 'supine' } as const;
      const left = measuredOcclusionPressure({ ...cuff, side: 'left', valueMmHg: 168, method: 'doppler' });
      const right = estimateOcclusionPressure({ ...cuff, ...person, side: 'right', circumferenceCm: 55 });
      const oneRepMax = estimateOneRepMax({ load: 60, repetitions: 8 });
      const sets = { scheme: '30-15-15-15', tempo: '2-0-2-0', restS: 30, restriction: 'continuous' } as const;
      const leftLeg = { limb: 'leg', side: 'left', percentLop: 50, occlusion: left } as const;
      const rightLeg = { limb: 'leg', side: 'right', percentLop: 50, occlusion: right } as const;
      const load = { oneRepMax, percentOneRepMax: { from: 20, to: 30 }, step: 2.5 } as const;
      const exercise = { name: 'leg extension', limb: 'leg', ...load, ...sets } as const;
      return planSession({ ...person, limbs: [leftLeg, rightLeg], exercises: [exercise] });
    };
    const written = readFileSync(import.meta.filename, 'utf8').match(
      /const job = \(\) => \{\n([\s\S]*?)\n {4}\};/,
    )?.[1];
    expect(written).toContain('planSession');
    expect(written?.split('\n').length).toBeLessThanOrEqual(12);
    expect(written?.replaceAll(' as const', '')).not.toMatch(/ as |[\w)\]]!|prettier-ignore|@ts-|\bany\b/);
    const { items } = expandDocument(job());
    const right = estimateOcclusionPressure({ ...readings, side: 'right' });
    expect(items.map(({ occlusion }) => occlusion?.value)).toEqual([168, right.value]);
    expect(items.map(({ target }) => target?.value)).toEqual([84, Math.floor(right.value / 2)]);
    expectClose(items[1]!.target!.upper!, right.upper! / 2);
    for (const { load, upperLoad } of items) expect([load?.value, upperLoad?.value]).toEqual([15, 22.5]);
  });
});

describe('an occlusion pressure that you hold', () => {
  const calibrated = calibrateOcclusionPressure({
    estimate: estimateOcclusionPressure({ ...readings, side: 'left' }),
    measurements: [measured],
  });
  const { cuffWidthCm: _, posture: __, ...place } = readings;
  const converted = correctForCuffWidth({ ...place, occlusionMmHg: 160, fromWidthCm: 15, toWidthCm: 10 });
  const shifted = correctForPosture({
    occlusionMmHg: 160,
    diastolicMmHg: 70,
    limb: 'leg',
    cuffWidthCm: 10,
    fromPosture: 'seated',
    toPosture: 'supine',
  });

  it.each([
    ['estimated', { ...estimated, inputs: { ...estimated.inputs, side: 'left' } }],
    ['measured', measured],
    ['calibrated', calibrated],
    ['converted to another cuff', converted],
    ['converted to another posture', shifted],
  ] as const)('goes into a plan with its error: %s', (_name, occlusion) => {
    const document = plan({ occlusion, cuffWidthCm: 10 });
    const [item] = expandDocument(document).items;
    expect(item?.occlusion).toMatchObject({ value: occlusion.value, standardDeviation: occlusion.standardDeviation });
    expect(item?.target?.value).toBe(Math.floor(occlusion.value / 2));
    expectClose(item!.target!.upper!, occlusion.upper! / 2);
    expect(item?.target?.reached?.occlusionChancePercent).toBeTypeOf('number');
    expect(readDocument(JSON.parse(JSON.stringify(document)))).toEqual(document);
    expect(explain(document).length).toBeGreaterThan(1000);
  });

  it('says which cuff it is for', () => {
    expect(plan({ occlusion: measured }).request.limbs[0]?.cuffWidthCm).toBe(10);
    expect(issues({ occlusion: 170 })).toEqual(['limbs.0.cuffWidthCm missing']);
  });

  it('is converted to the cuff and posture of the exercise, with the error of that', () => {
    const item = itemOf({ occlusion: measured, cuffWidthCm: 18, circumferenceCm: 55 }, { oneRepMax: 60 });
    expect(item!.occlusion!.value).toBeLessThan(168);
    expect(item!.occlusion!.standardDeviation! * item!.occlusion!.value).toBeGreaterThan(measured.standardDeviation!);
    const upright = itemOf({ occlusion: measured }, { oneRepMax: 60, posture: 'standing' });
    expect(upright!.occlusion!.value).toBeGreaterThan(168);
    expect(codesOf(upright!.occlusion!.cautions)).toContain('posture-shifted');
    expect(issues({ occlusion: measured, cuffWidthCm: 18 })[0]).toMatch(/^limbs\.0\.circumferenceCm /);
  });

  it('as a plain number is exact by assumption, and says so', () => {
    const item = itemOf({ occlusion: 172, cuffWidthCm: 10 });
    expect(codesOf(item!.occlusion!.assumptions)).toContain('occlusion-exact');
    expect(codesOf(item!.target!.assumptions)).toEqual(['occlusion-exact']);
    expect(item!.target!.value).toBe(86);
    expect(item!.target!.lower).toBeUndefined();
    const target = targetCuffPressure({ occlusion: 172, percentLop: 50 });
    expect(target).toMatchObject({ value: 86, evidence: 'definition' });
    expect(codesOf(target.assumptions)).toEqual(['occlusion-exact']);
    expect(codesOf(target.cautions)).toContain('true-percent-not-known');
    expect(attempt(targetCuffPressure, { occlusion: 5, percentLop: 50 })).toMatchObject({
      issues: [{ min: 50, unit: 'mm[Hg]' }],
    });
  });

  it('gains no interval by a conversion, where its error is not known', () => {
    const { lower: _l, upper: _u, level: _v, standardDeviation: _s, errors: _e, ...bare } = measured;
    const item = itemOf({ occlusion: bare, cuffWidthCm: 18, circumferenceCm: 55 });
    expect(item!.occlusion!.standardDeviation).toBeUndefined();
    expect(item!.occlusion!.lower).toBeUndefined();
  });

  it('is refused for another limb, below the diastolic pressure, or beside another source', () => {
    const arm = measuredOcclusionPressure({ valueMmHg: 140, method: 'doppler', limb: 'arm' });
    expect(issues({ occlusion: arm, cuffWidthCm: 10 })).toEqual(['limbs.0.occlusion wrong-relation']);
    expect(issues({ occlusion: 65, cuffWidthCm: 10 })).toEqual(['limbs.0.occlusion wrong-relation']);
    expect(issues({ occlusion: 20, cuffWidthCm: 10 })).toEqual(['limbs.0.occlusion unit-slip']);
    expect(issues({ occlusion: measured, measured: { valueMmHg: 160, method: 'doppler' } })).toEqual([
      'limbs.0.measured wrong-relation',
    ]);
    expect(issues({ occlusion: maximum as never, cuffWidthCm: 10 })[0]).toMatch(/^limbs\.0\.occlusion/);
  });

  it('that was measured falls due after four weeks, and is no estimate', () => {
    const due = codesOf(plan({ occlusion: measured }, { oneRepMax: 60 }, { date: '2026-03-30' }).cautions);
    expect(due).toContain('measured-long-ago');
    const document = plan({ occlusion: measured }, { oneRepMax: 60 }, { date: '2026-03-09' });
    const record = recordSession({
      plan: document,
      date: '2026-03-09',
      items: [{ exercise: 'leg extension', limb: 'leg', side: 'left', sets: [{ repetitions: 30 }] }],
    });
    const proposal = nextSession({ plan: document, records: [record], rule: 'all-repetitions' });
    expect(codesOf(proposal.measureAgain)).not.toContain('measure-occlusion-estimated');
  });
});

describe('a maximum that you hold', () => {
  it('is an estimate, a tested one, a set or a number', () => {
    const of = (oneRepMax: PlanExercise['oneRepMax']) => itemOf({ occlusion: measured }, { oneRepMax });
    expect(of(maximum)?.oneRepMax).toEqual(maximum);
    expectClose(of(maximum)!.load!.rounding!.from, maximum.value / 4);
    expect(of(testedOneRepMax({ load: 60 }))?.oneRepMax?.equation).toBe('tested');
    expect(of({ load: 60, repetitions: 8 })?.oneRepMax?.value).toBe(maximum.value);
    const exact = of(60);
    expect(exact?.load?.value).toBe(15);
    expect(codesOf(exact!.load!.assumptions)).toContain('one-rep-max-exact');
  });

  it('in pounds keeps its unit', () => {
    const [item] = plan({ occlusion: measured }, { oneRepMax: 200, unit: 'lb', step: 5 }).items;
    expect(item?.load).toMatchObject({ value: 50, unit: '[lb_av]' });
  });

  it('is named where it is wrong', () => {
    expect(issues({ occlusion: measured }, { oneRepMax: 5000 })).toEqual(['exercises.0.oneRepMax unit-slip']);
    expect(issues({ occlusion: measured }, { oneRepMax: { load: 60, reps: 8 } as never })).toEqual([
      'exercises.0.oneRepMax.reps unknown-field',
    ]);
    expect(issues({ occlusion: measured }, { oneRepMax: { ...maximum, value: -1 } })[0]).toMatch(
      /^exercises\.0\.oneRepMax\.value /,
    );
    expect(issues({ occlusion: measured }, { oneRepMax: measured as never })[0]).toMatch(/^exercises\.0\.oneRepMax/);
  });
});

describe('a load that you hold', () => {
  const load = trainingLoad({ oneRepMax: maximum, percentOneRepMax: 30, step: 2.5 });
  const lifted = { load, percentOneRepMax: undefined, step: undefined } as const;
  it('is an answer, with the maximum behind it', () => {
    const document = plan({ occlusion: measured }, lifted);
    const [item] = expandDocument(document).items;
    expect(item?.load).toEqual(load);
    expect(item?.oneRepMax).toEqual(maximum);
    expect(document.items[0]?.totals.relativeVolumeLoad).toBeDefined();
    expect(readDocument(JSON.parse(JSON.stringify(document)))).toEqual(document);
  });
  it('goes on to the next request as a number', () => {
    const document = plan({ occlusion: measured }, { ...lifted, step: 2.5 });
    const done = { exercise: 'leg extension', limb: 'leg', side: 'left' } as const;
    const sets = [{ repetitions: 30 }, { repetitions: 15 }, { repetitions: 15 }, { repetitions: 15 }];
    const records = ['2026-03-02', '2026-03-04'].map((date) =>
      recordSession({ plan: document, date, items: [{ ...done, sets }], pain: [] }),
    );
    const proposal = nextSession({ plan: document, records, rule: 'all-repetitions' });
    const { request } = nextRequest({ plan: document, proposal });
    expect(request.exercises[0]).toMatchObject({ load: proposal.items[0]?.load?.to });
  });
  it('takes no percentage', () => {
    expect(issues({ occlusion: measured }, { ...lifted, percentOneRepMax: 20 })).toEqual([
      'exercises.0.percentOneRepMax wrong-relation',
    ]);
  });
});

describe('a screening', () => {
  it('goes into the plan as the document it is', () => {
    const screening = screen({ answers: { pregnancy: 'no' } });
    expect(plan({ occlusion: measured }, { oneRepMax: 60 }, { screening }).request.screening).toEqual(screening);
  });
});
