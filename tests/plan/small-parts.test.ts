import { describe, expect, it } from 'vitest';
import { estimateOcclusionPressure, measuredOcclusionPressure } from '../../src/index.js';
import { expandDocument, recordSession } from '../../src/plan/index.js';
import { byAudience } from '../../src/plan/audience.js';
import { planTextByCode, textByCode } from '../../src/plan/catalogue.js';
import { coded, codedCaution, filled } from '../../src/plan/coded.js';
import { measuredAt as placeOfMeasurement, isEstimated, measuredDay } from '../../src/plan/measured-limb.js';
import { messageKey, mostSevereFirst, uniqueMessages } from '../../src/plan/severity.js';
import { kindOfTotal } from '../../src/plan/stated.js';
import { withLoad } from '../../src/plan/next-exercise.js';
import { wholeExercises } from '../../src/plan/week-rows.js';
import { codesOf } from '../support/invariants.js';
import { planOf } from '../support/plans.js';

describe('the kind of a total', () => {
  it('is that of the answer it states', () => {
    const { items } = expandDocument(planOf());
    const { cautions: _, ...totals } = items[0]!.totals;
    const kinds = Object.entries(totals).map(([name, answer]) => [name, (answer as { kind: string }).kind]);
    expect(kinds.length).toBeGreaterThan(8);
    expect(kinds.map(([name]) => [name, kindOfTotal(name!)])).toEqual(kinds);
    expect(kindOfTotal('peakPercentOneRepMax')).toBe('peak-percent-of-maximum');
  });
});

describe('sentences', () => {
  it('say the same where code and values are the same, in whatever order', () => {
    const [first, second, other] = [
      { code: 'a', values: { x: 1, y: 'b' }, n: 1 },
      { code: 'a', values: { y: 'b', x: 1 }, n: 2 },
      { code: 'a', values: { x: 2, y: 'b' }, n: 3 },
    ];
    expect(messageKey(first)).toBe(messageKey(second));
    expect(messageKey(first)).not.toBe(messageKey(other));
    expect(messageKey({ code: 'a' })).toBe(messageKey({ code: 'a', values: {} }));
    expect(uniqueMessages([first, second, other]).map(({ n }) => n)).toEqual([2, 3]);
  });

  it('are in order of severity, and for whom the table says', () => {
    const of = (severity: 'note' | 'caution' | 'stop', code: string) => ({ severity, code });
    const given = [of('note', 'a'), of('caution', 'b'), of('stop', 'c'), of('note', 'd'), of('caution', 'e')];
    expect(codesOf(mostSevereFirst(given))).toEqual(['c', 'b', 'e', 'a', 'd']);
    // An app’s own codes: a note is for the practitioner, what is graver for the person.
    const groups = byAudience([...given, of('note', 'percent-not-flow'), of('note', 'restriction-long-limb')]);
    expect(Object.fromEntries(Object.entries(groups).map(([who, list]) => [who, codesOf(list)]))).toEqual({
      person: ['c', 'b', 'e', 'restriction-long-limb'],
      practitioner: ['a', 'd'],
      method: ['percent-not-flow'],
    });
    expect(codesOf(byAudience([of('caution', 'toString')]).person)).toEqual(['toString']);
  });

  it('are kept as they were given only where they are those of the catalogue', () => {
    const values = { value: 400, limit: 300 };
    const [text] = [planTextByCode('cuff-pressure-stop', values)!];
    expect(text).toMatch(/^Do not inflate to 400 mmHg\. That is above 300 mmHg/);
    expect(planTextByCode('cuff-pressure-stop', values, text)).toBe(text);
    expect(planTextByCode('cuff-pressure-stop', values, 'You are fine.')).toBe(text);
    expect([planTextByCode('cuff-pressure-stop'), planTextByCode('no-such-code'), planTextByCode('toString')]).toEqual([
      undefined,
      undefined,
      undefined,
    ]);
    expect([planTextByCode('load-jump'), textByCode('load-jump') === undefined]).toEqual([undefined, true]);
    const jump = { exercise: 'arm', side: 'left', limb: 'leg', from: 1, to: 2, points: 12.345, largest: 10 };
    expect(textByCode('load-jump', jump)).toBe(codedCaution('caution', 'load-jump', jump).text);
  });

  it('have codes in words and numbers as people read them; the name of an exercise is yours', () => {
    const jump = { exercise: 'left', side: 'left', limb: 'leg', from: 1, to: 2, points: 12.3456, largest: 10 };
    const { text, values } = coded('load-jump', jump);
    expect(values).toEqual({ ...jump, points: 12.35 });
    expect(text).toContain('12.35');
    expect(text).not.toMatch(/\{|undefined/);
    const list = filled('{symptoms} at {field}', { symptoms: ['symptom-chest-pain', 'mine'], field: 'systolicMmHg' });
    expect(list).toMatch(/^\S.*, mine at systolic/);
    expect(list).not.toContain('symptom-chest-pain');
    expect(coded('weeks-no-one-road' as never)).not.toHaveProperty('values');
  });
});

describe('the pressure of a limb', () => {
  const reading = {
    limb: 'leg',
    circumferenceCm: 56,
    systolicMmHg: 118,
    diastolicMmHg: 74,
    cuffWidthCm: 10,
    posture: 'supine',
  } as const;
  const measured = { valueMmHg: 180, method: 'doppler', date: '2026-03-02' } as const;
  it('is measured, stated or estimated', () => {
    const estimate = estimateOcclusionPressure(reading);
    const given = measuredOcclusionPressure({
      ...measured,
      limb: 'leg',
      side: 'left',
      posture: 'supine',
      cuffWidthCm: 10,
    });
    const of = (more: object) => ({ limb: 'leg', side: 'left', ...more }) as never;
    const cases = [{ measured }, { occlusion: given }, { occlusion: estimate }, { occlusion: 180 }, {}].map(of);
    expect(cases.map(isEstimated)).toEqual([false, false, true, false, true]);
    expect(cases.map(measuredDay)).toEqual(['2026-03-02', '2026-03-02', undefined, undefined, undefined]);
    expect(placeOfMeasurement(of({ measured }), 1)).toEqual(['limbs', 1, 'measured', 'date']);
    expect(placeOfMeasurement(of({ occlusion: given }), 0)).toEqual(['limbs', 0, 'occlusion']);
  });
});

describe('the exercises of a week', () => {
  it('are each one, with the cuff and without together', () => {
    const answer = (kind: string, value: number, unit: string) => ({ kind, value, unit, inputs: {} });
    const row = (exercise: string, load: number | undefined, seconds: number, lop?: number) => ({
      exercise,
      ...(load !== undefined && { peakLoad: answer('peak-load', load, 'kg') }),
      ...(lop !== undefined && { percentLop: answer('percent-of-occlusion', lop, '%') }),
      restrictionTime: answer('restriction-time', seconds, 's'),
    });
    const rows = [
      row('press', 20, 390, 50),
      row('curl', 8, 200, 60),
      row('press', 60, 0),
      row('walk', undefined, 600, 40),
    ];
    const whole = wholeExercises(rows as never).map(({ exercise, peakLoad, percentLop, restrictionTime }) => [
      exercise,
      peakLoad?.value,
      percentLop?.value,
      restrictionTime.value,
    ]);
    expect(whole).toEqual([
      ['press', 60, 50, 390],
      ['curl', 8, 60, 200],
      ['walk', undefined, 40, 600],
    ]);
  });
});

describe('an exercise at another load', () => {
  const of = (exercise: object) => {
    const plan = expandDocument(planOf(exercise));
    return (to: number) =>
      withLoad(plan.request.exercises[0]! as never, plan.items[0]!, to) as unknown as Record<string, unknown>;
  };
  it('has a percentage of the same maximum where one gives it', () => {
    expect(of({ step: 2.5 })(25)).toMatchObject({ percentOneRepMax: 25 });
    // 22.5 of 100 needs a digit; without a step a whole percentage gives any whole load.
    expect(of({ step: 2.5 })(22.5).percentOneRepMax).toBeCloseTo(22.5, 0);
    expect(of({ oneRepMax: undefined, percentOneRepMax: undefined, load: 20 })(22.5)).toMatchObject({ load: 22.5 });
  });

  it('keeps the upper end of a range while it is inside', () => {
    const at = of({ percentOneRepMax: { from: 20, to: 30 }, step: 2.5 });
    expect(at(25)).toMatchObject({ percentOneRepMax: { from: 25, to: 30 } });
    expect(at(30)).toMatchObject({ percentOneRepMax: 30 });
    expect(at(35)).toMatchObject({ percentOneRepMax: 35 });
    expect(at(20)).toMatchObject({ percentOneRepMax: 20 });
    expect(at(15)).toMatchObject({ percentOneRepMax: 15 });
  });

  // A set without a load of its own has that of the exercise.
  it('moves the loads of single sets by as much', () => {
    const sets = [{ repetitions: 15, load: 20 }, { repetitions: 15, load: 25 }, { repetitions: 15 }];
    const next = of({ sets, step: 2.5 })(25) as unknown as { sets: readonly { load?: number }[] };
    expect(next.sets.map(({ load }) => load)).toEqual([25, 30, 25]);
    const plain = of({ sets: [{ repetitions: 15 }, { repetitions: 15 }] })(25) as typeof next;
    expect(plain.sets).toEqual([{ repetitions: 15 }, { repetitions: 15 }]);
  });
});

describe('a record of a range of loads', () => {
  it('says that the lower load is taken, where it is', () => {
    const plan = () => planOf({ percentOneRepMax: { from: 20, to: 30 }, step: 2.5 });
    const recorded = (more: object) => {
      const { exercise, limb, side } = plan().items[0]!;
      const record = recordSession({
        plan: plan(),
        date: '2026-03-02',
        items: [{ exercise, limb, side, sets: [30, 15, 15, 15].map((repetitions) => ({ repetitions })), ...more }],
      });
      return codesOf(record.assumptions);
    };
    expect(recorded({})).toContain('lower-load-lifted');
    expect(recorded({ load: 25 })).not.toContain('lower-load-lifted');
    expect(recorded({ instead: 'squat', load: 20 })).not.toContain('lower-load-lifted');
    const single = planOf({ percentOneRepMax: 20 });
    expect(codesOf(recordSession({ plan: single, date: '2026-03-02', asPlanned: true }).assumptions)).not.toContain(
      'lower-load-lifted',
    );
  });
});
