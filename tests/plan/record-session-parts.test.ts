// What was done of a small plan: one exercise on one leg, by hand.
import { describe, expect, it } from 'vitest';
import { attempt } from '../../src/answer/issues.js';
import { recordSession, type DoneItem, type Plan, type RecordRequest } from '../../src/plan/index.js';
import { planOf } from '../support/plans.js';

const place = { exercise: 'leg extension', limb: 'leg', side: 'left' } as const;
const own = { oneRepMax: undefined, percentOneRepMax: undefined, load: 20 };
const two = { repetitions: 10 };
const sets = [{ ...two, restS: 30 }, { ...two, load: 30, restS: 40 }, two] as const;
/** Three sets; the second has a load of its own. */
const planned = (more: object = {}) => planOf({ ...own, restS: undefined, sets, ...more });

const recordOf = (plan: Plan, done: Partial<DoneItem>, more: Partial<RecordRequest> = {}) =>
  recordSession({ plan, date: '2026-03-02', items: [{ ...place, ...done }], ...more }).items[0]!.done;
/** What is refused: code, place, and what is asked for. */
const refused = (plan: Plan, done: Partial<DoneItem>) => {
  const request = { plan, date: '2026-03-02', items: [{ ...place, ...done }] };
  const answer = attempt(recordSession, request as RecordRequest);
  return answer.ok
    ? []
    : answer.issues.map(({ code, path, requirement, received }) => [
        code,
        path.slice(2).join('.'),
        requirement?.code,
        ...(code === 'missing' ? [received] : []),
      ]);
};
const wrong = (path: string, asked: string) => [['wrong-relation', path, asked]];

describe('the sets that were done', () => {
  const loads = (done: Partial<DoneItem>) => recordOf(planned(), done).sets.map(({ load }) => load);

  it('have the rests of the plan, and none after the last', () => {
    const rests = (done: Partial<DoneItem>) => recordOf(planned(), done).sets.map(({ restS }) => restS);
    expect(rests({ sets: [10, 9, 8] })).toEqual([30, 40, 0]);
    expect(rests({ sets: [10, 9] })).toEqual([30, 0]);
    expect(rests({ sets: [{ repetitions: 10, restS: 20 }, 9, { repetitions: 8, restS: 50 }] })).toEqual([20, 40, 0]);
    expect(refused(planned(), { sets: [10, 9, 8, 7] })).toEqual([['missing', 'sets.2.restS', 'no-rest', 'undefined']]);
    const more = [10, 9, 8, { repetitions: 7, restS: 10 }, 6];
    expect(refused(planned(), { sets: more })).toEqual([['missing', 'sets.2.restS', 'no-rest', 'undefined']]);
  });

  it('keep the load that was planned for them, unless one is recorded for all', () => {
    expect(loads({ sets: [10, 9, 8] })).toEqual([20, 30, 20]);
    expect(loads({ sets: [10, 9, 8], load: 25 })).toEqual([undefined, undefined, undefined]);
    expect(loads({ sets: [10, { repetitions: 9, load: 35 }, 8], load: 25 })).toEqual([25, 35, 25]);
    expect(loads({ sets: [10, 9, 8], instead: 'squat', load: 25 })).toEqual([undefined, undefined, undefined]);
    expect(loads({ sets: [10] })).toEqual([20]);
  });

  it('say repetitions or a time; repetitions need a tempo', () => {
    const open = { sets: [{}, 9, { durationS: 30 }] } as Partial<DoneItem>;
    expect(refused(planned(), open)).toMatchObject([['missing', 'sets.0.repetitions', expect.anything(), 'undefined']]);
    const timed = planOf({ ...own, tempo: undefined, sets: [{ durationS: 30 }], restS: undefined });
    expect(refused(timed, { sets: [9] })).toEqual([['missing', 'sets.0.durationS', 'no-tempo', 'undefined']]);
    expect(recordOf(timed, { sets: [{ durationS: 25 }] }).sets).toEqual([{ durationS: 25, restS: 0 }]);
  });
});

describe('what cannot be', () => {
  it('a pressure without a cuff, or without a lower one in the rests', () => {
    const free = planned({ restriction: 'none' });
    const done = { sets: [10, 9, 8] };
    expect(refused(free, { ...done, heldMmHg: 100 })).toEqual(wrong('heldMmHg', 'left-out-no-cuff'));
    expect(refused(free, { ...done, occlusionMmHg: 200 })).toEqual(wrong('occlusionMmHg', 'left-out-no-cuff'));
    expect(refused(free, { ...done, reperfusedBeforeS: 60 })).toEqual(wrong('reperfusedBeforeS', 'left-out-no-cuff'));
    expect(refused(planned(), { ...done, heldMmHg: 100, occlusionMmHg: 200, reperfusedBeforeS: 60 })).toEqual([]);
    expect(refused(planned(), { ...done, restHeldMmHg: 60 })).toEqual(wrong('restHeldMmHg', 'left-out-no-rest'));
    const partial = planned({ restriction: 'partial', restPercentLop: 30 });
    expect(refused(partial, { ...done, restHeldMmHg: 60 })).toEqual([]);
  });

  it('a load where nothing is lifted', () => {
    const bare = planOf({ ...own, load: undefined, unloaded: true, sets: [two], restS: undefined } as object);
    expect(refused(bare, { sets: [10], load: 20 })).toEqual(wrong('load', 'left-out-no-load'));
    expect(refused(bare, { sets: [{ repetitions: 10, load: 20 }] })).toEqual(wrong('sets.0.load', 'left-out-no-load'));
    expect(recordOf(bare, { sets: [10] })).not.toHaveProperty('unit');
    expect(recordOf(bare, { sets: [10], instead: 'squat' })).not.toHaveProperty('load');
  });

  it('another exercise without its load; nothing lifted in the one that was planned', () => {
    const done = { sets: [10] };
    expect(refused(planned(), { ...done, instead: 'squat' })).toEqual([
      ['missing', 'load', 'other-exercise', 'undefined'],
    ]);
    expect(refused(planned(), { ...done, unloaded: true })).toEqual(wrong('unloaded', 'left-out-without'));
    const other = { ...done, instead: 'squat', unloaded: true } as const;
    expect(recordOf(planned(), other)).not.toHaveProperty('load');
    expect(refused(planned(), { ...other, load: 20 })).toEqual(wrong('load', 'left-out-unlifted'));
    expect(refused(planned(), { ...other, sets: [{ repetitions: 9, load: 20 }] })).toEqual(
      wrong('sets.0.load', 'left-out-unlifted'),
    );
    expect(recordOf(planned(), { ...done, instead: 'squat', load: 25 })).toMatchObject({ load: 25, unit: 'kg' });
  });
});

describe('what is not listed', () => {
  const both = () =>
    planOf(own, {
      limbs: [
        { limb: 'leg', side: 'left', cuffWidthCm: 10, percentLop: 50, occlusion: 200 },
        { limb: 'leg', side: 'right', cuffWidthCm: 10, percentLop: 50, occlusion: 200 },
      ],
    });
  const missing = (request: object) => {
    const answer = attempt(recordSession, request as RecordRequest);
    return (
      answer.ok ||
      answer.issues.map(({ code, path, requirement, received }) => [code, path.join('.'), requirement?.code, received])
    );
  };
  const asked = (path: string) => ['missing', path, 'unless-planned', 'undefined'];

  it('is asked for, or taken as planned', () => {
    const plan = both();
    const date = '2026-03-02';
    expect(missing({ plan, date })).toEqual([asked('items')]);
    expect(missing({ plan, date, items: [] })).toEqual([asked('items')]);
    expect(
      missing({
        plan,
        date,
        items: [
          { ...place, sets: [10] },
          { ...place, side: 'right' },
        ],
      }),
    ).toEqual([asked('items.1.sets')]);
    const record = recordSession({ plan, date, asPlanned: true, items: [{ ...place, side: 'right', sets: [10] }] });
    expect(record.items.map(({ side, done }) => [side, done.sets.length])).toEqual([
      ['right', 1],
      ['left', 4],
    ]);
    expect(record.cautions.map(({ code }) => code)).not.toContain('item-not-recorded');
    expect(recordSession({ plan, date, asPlanned: true }).items).toHaveLength(2);
  });

  it('is named in a caution', () => {
    const record = recordSession({ plan: both(), date: '2026-03-02', items: [{ ...place, sets: [10] }] });
    const left = record.cautions.filter(({ code }) => code === 'item-not-recorded');
    expect(left.map(({ values }) => values)).toEqual([{ ...place, side: 'right' }]);
  });
});
