import { describe, expect, it } from 'vitest';
import { measureAgain } from '../../src/plan/measure-again.js';

type Json = Readonly<Record<string, unknown>>;

const left = { limb: 'leg', side: 'left' };
const right = { limb: 'leg', side: 'right' };
const cuff = { ...left, cuffWidthCm: 10, circumferenceCm: 56, measured: { valueMmHg: 172 } };
const item = (more: Json = {}): Json => ({
  ...left,
  restriction: 'continuous',
  occlusion: { evidence: 'published' },
  ...more,
});
const recorded = (more: Json = {}): Json => ({
  ...left,
  restriction: 'continuous',
  cuffWidthCm: 10,
  circumferenceCm: 56,
  ...more,
});
const record = (items: readonly Json[] = [recorded()], more: Json = {}): Json => ({
  date: '2026-03-02',
  posture: 'seated',
  items,
  ...more,
});

interface Given {
  readonly limbs?: readonly Json[];
  readonly items?: readonly Json[];
  readonly records?: readonly Json[];
  readonly date?: string;
  readonly testedOn?: string;
}

/** What is to be measured again, and what of it is due. */
const again = ({ limbs = [cuff], items = [item()], records = [record()], date, testedOn }: Given = {}) =>
  measureAgain({ request: { posture: 'seated', limbs }, items } as never, records as never, date, testedOn);
const due = (given: Given): string[] =>
  again(given)
    .filter((one) => one.due)
    .map(({ code, values }) =>
      [code, ...Object.entries(values ?? {}).map(([name, value]) => `${name} ${String(value)}`)].join(', '),
    );
const changed = (what: string, side = 'left') => `measure-occlusion-changed, side ${side}, limb leg, what ${what}`;

describe('what to measure again', () => {
  it('is reminded of the weeks where a cuff is inflated, and of a maximum where there is one', () => {
    const weeks = {
      what: 'occlusion-pressure',
      due: false,
      code: 'measure-occlusion-weeks',
      text: 'Measure occlusion pressure again every few weeks. We found no published number of weeks.',
      evidence: 'practice',
      source: 'time-of-day-2017',
    };
    const maximum = {
      what: 'one-repetition-maximum',
      due: false,
      code: 'test-maximum-weeks',
      text: 'Test the maximum again about every 4 weeks.',
      evidence: 'published',
      source: 'retest-schedule',
    };
    expect(again()).toStrictEqual([weeks]);
    expect(again({ items: [item(), item({ oneRepMax: {} })] })).toStrictEqual([weeks, maximum]);
    expect(again({ items: [item({ restriction: 'none' })] })).toEqual([]);
    expect(again({ items: [item({ restriction: 'none' }), item()] })).toStrictEqual([weeks]);
    expect(again({ items: [item({ restriction: 'none', oneRepMax: {} })] })).toStrictEqual([maximum]);
  });

  it.each([
    ['nothing', {}, []],
    ['a narrower cuff', { records: [record([recorded({ cuffWidthCm: 7 })])] }, [changed('cuff')]],
    ['a cuff that was not known', { records: [record([recorded({ cuffWidthCm: undefined })])] }, [changed('cuff')]],
    ['another size', { records: [record([recorded({ circumferenceCm: 58 })])] }, [changed('limb-size')]],
    ['a size that was not known', { records: [record([recorded({ circumferenceCm: undefined })])] }, []],
    ['a size that is not known', { limbs: [{ ...cuff, circumferenceCm: undefined }] }, []],
    ['the posture of the session', { records: [record(undefined, { posture: 'supine' })] }, [changed('posture')]],
    ['the posture of the item', { items: [item({ posture: 'supine' })] }, [changed('posture')]],
    ['the posture of what was done', { records: [record([recorded({ posture: 'supine' })])] }, [changed('posture')]],
    // A session may have several postures: one of them is enough.
    ['one posture of several', { records: [record([recorded({ posture: 'supine' }), recorded()])] }, []],
    [
      'a posture that both have',
      { items: [item({ posture: 'supine' })], records: [record([recorded({ posture: 'supine' })])] },
      [],
    ],
    [
      'everything',
      { records: [record([recorded({ cuffWidthCm: 7, circumferenceCm: 58, posture: 'supine' })])] },
      [changed('posture'), changed('cuff'), changed('limb-size')],
    ],
    ['the other limb', { records: [record([recorded({ ...right, cuffWidthCm: 7 })])] }, []],
    ['a session without the cuff', { records: [record([recorded({ restriction: 'none', cuffWidthCm: 7 })])] }, []],
    [
      'the same twice',
      { items: [item(), item()], records: [record([recorded({ cuffWidthCm: 7 })])] },
      [changed('cuff')],
    ],
    [
      'each limb',
      {
        limbs: [cuff, { ...cuff, ...right, cuffWidthCm: 12 }],
        items: [item(), item(right)],
        records: [record([recorded(), recorded(right)])],
      },
      [changed('cuff', 'right')],
    ],
    ['a session before the last', { records: [record([recorded({ cuffWidthCm: 7 })]), record()] }, []],
    [
      'the last session with the cuff',
      { records: [record(), record([recorded({ cuffWidthCm: 7 })]), record([recorded(right)])] },
      [changed('cuff')],
    ],
  ] as readonly (readonly [string, Given, readonly string[]])[])(
    'is a pressure after a change of %s',
    (_, given, expected) => {
      expect(due(given)).toEqual(expected);
    },
  );

  it('is told with what changed', () => {
    expect(again({ records: [record([recorded({ cuffWidthCm: 7 })])] })[0]).toStrictEqual({
      what: 'occlusion-pressure',
      due: true,
      code: 'measure-occlusion-changed',
      text: 'Measure the occlusion pressure of the left leg again: the cuff changed since the last session on record.',
      values: { side: 'left', limb: 'leg', what: 'cuff' },
      evidence: 'practice',
    });
    // As a plan of another version may have it.
    expect(due({ limbs: [] })).toEqual([changed('cuff')]);
  });

  it('is a pressure that was estimated, by the evidence of its equation', () => {
    const estimated = { ...cuff, measured: undefined };
    const [found, ...others] = again({ limbs: [estimated] }).filter((one) => one.due);
    expect(found).toStrictEqual({
      what: 'occlusion-pressure',
      due: true,
      code: 'measure-occlusion-estimated',
      text: 'The occlusion pressure of the left leg is an estimate: measure it.',
      values: { side: 'left', limb: 'leg' },
      evidence: 'published',
    });
    expect(others).toEqual([]);
    expect(due({ limbs: [{ ...cuff, ...right }, estimated] })).toEqual([
      'measure-occlusion-estimated, side left, limb leg',
    ]);
    expect(due({ limbs: [cuff, { ...estimated, ...right }] })).toEqual([]);
    expect(due({ limbs: [estimated], items: [item({ restriction: 'none' })] })).toEqual([]);
  });

  // Every few weeks: 28 days, `practice`.
  it.each([
    ['2026-02-02', undefined, [28]],
    ['2026-02-03', undefined, []],
    ['2026-02-03', '2026-03-03', [28]],
    ['2026-02-03', '2026-03-05', [30]],
    [undefined, '2026-03-05', []],
  ] as const)('is a pressure of %s for a session on %s after the last of 2 March', (measuredOn, date, days) => {
    const found = again({
      limbs: [{ ...cuff, measured: { valueMmHg: 172, date: measuredOn } }],
      records: [record(undefined, { date: '2026-01-01' }), record()],
      ...(date && { date }),
    }).filter((one) => one.due);
    expect(found).toStrictEqual(
      days.map((value) => ({
        what: 'occlusion-pressure',
        due: true,
        code: 'measured-long-ago',
        text: `The occlusion pressure of the left leg was measured ${value} days ago. Measure again at least every 28 days.`,
        values: { value, limit: 28, limb: 'leg', side: 'left' },
        evidence: 'practice',
      })),
    );
  });

  // A trial that tested strength every four weeks.
  it.each([
    ['2026-02-03', '2026-03-03', 28],
    ['2026-02-02', undefined, 28],
    ['2026-02-04', '2026-03-03', undefined],
    ['2026-02-03', undefined, undefined],
    [undefined, '2026-12-31', undefined],
  ] as const)('is a maximum of %s for a session on %s', (testedOn, date, days) => {
    const given = { items: [item({ oneRepMax: {} })], ...(testedOn && { testedOn }), ...(date && { date }) };
    expect(again(given).at(-1)).toMatchObject(
      days === undefined
        ? { code: 'test-maximum-weeks', due: false }
        : { code: 'test-maximum-due', due: true, values: { days }, evidence: 'published', source: 'retest-schedule' },
    );
  });
});
