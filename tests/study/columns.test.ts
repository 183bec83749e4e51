import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { attempt, equations, estimateOcclusionPressure, estimateOneRepMax, trainingLoad } from '../../src/index.js';
import { columns, flagCodes, REFUSED, rowFlags, type ColumnAnswer, type ColumnsInput } from '../../src/study/index.js';
import { BLOCK } from '../../src/study/column-answer.js';
import { column, expectSame, scalarRow } from '../support/columns.js';

/** A value for a field: mostly possible, now and then missing, impossible or wrong. */
const field = (possible: fc.Arbitrary<number>) =>
  fc.oneof({ weight: 20, arbitrary: possible }, fc.constantFrom<unknown>(null, undefined, NaN, Infinity, -5, 0, 1e9));
const within = (min: number, max: number) =>
  fc.oneof(fc.double({ min, max, noNaN: true }), fc.integer({ min: Math.ceil(min), max: Math.floor(max) }));
const word = (...words: string[]) =>
  fc.oneof({ weight: 20, arbitrary: fc.constantFrom(...words) }, fc.constantFrom<unknown>(null, undefined, 'other'));

const WIDTHS = [5, 5.3, 6.4, 10, 11, 11.8, 12, 17.6, 18, 19, 20.5];

/** People who share a limb, a cuff and a posture, most of them with nothing to be said about. */
const peopleOfOnePlace = ({ limb, cuffWidthCm: width }: (typeof equations.occlusionPressure)[number]) =>
  fc
    .record({
      limb: fc.constantFrom(...(limb === 'any' ? ['arm', 'leg'] : [limb, limb, limb, 'arm', 'leg'])),
      cuffWidthCm:
        width === 'any'
          ? fc.constantFrom(...WIDTHS)
          : typeof width === 'number'
            ? fc.constantFrom(width, width - 0.5, width + 0.3, 10)
            : fc.constantFrom(width.low, width.low - 0.4, width.high - 1, width.high + 0.5, 10),
      posture: fc.constantFrom('supine', 'seated', 'standing'),
    })
    .chain((place) => {
      const usual = {
        circumferenceCm: within(25, 70),
        systolicMmHg: within(100, 179),
        diastolicMmHg: within(50, 99),
        ageYears: within(18, 35),
      };
      const most = (name: keyof typeof usual) =>
        fc.oneof({ weight: 60, arbitrary: usual[name] }, field(within(1, 300)));
      const one = fc.record({
        circumferenceCm: most('circumferenceCm'),
        systolicMmHg: most('systolicMmHg'),
        diastolicMmHg: most('diastolicMmHg'),
        ageYears: most('ageYears'),
        sex: word('male', 'female'),
        paddingCoefficient: fc.double({ min: 0.3, max: 0.9, noNaN: true }),
      });
      return fc.tuple(fc.constant(place), fc.array(one, { minLength: 1, maxLength: 20 }));
    });

const lopColumns = (rows: readonly Readonly<Record<string, unknown>>[], equation: unknown, place: object = {}) =>
  columns({
    answer: 'occlusion-pressure',
    equation,
    ...Object.fromEntries(Object.keys(rows[0]!).map((name) => [name, column(rows, name)])),
    ...place,
  } as unknown as Extract<ColumnsInput, { answer: 'occlusion-pressure' }>);

// The scalar functions are the judge: they are held to publications elsewhere.
describe('columns give the very answers of the scalar functions', () => {
  for (const equation of equations.occlusionPressure) {
    const { id } = equation;
    it(`occlusion pressure by ${id}, one limb, cuff and posture for all`, () => {
      fc.assert(
        fc.property(peopleOfOnePlace(equation), ([place, rows]) => {
          const scalar = rows.map((row) =>
            attempt(estimateOcclusionPressure, { ...place, ...scalarRow(row), equation: id } as never),
          );
          const asked = attempt((from: typeof rows) => lopColumns(from, id, place), rows);
          // A limb or cuff that the equation is not for refuses the call, as it refuses every row.
          if (asked.ok) scalar.forEach((expected, index) => expectSame(asked.value, index, expected));
          else expect(scalar.some(({ ok }) => ok)).toBe(false);
        }),
        { numRuns: 200 },
      );
    });
  }

  it('training loads from a rack, from a bar and plates, and as they are', () => {
    const ways = [
      {},
      { step: 2.5 },
      { available: [30, 2, 4, 6, 8, 10, 12.5, 15, 20] },
      { bar: 15, plates: [{ mass: 1.25, count: 2 }, { mass: 2.5, count: 4 }, { mass: 10 }] },
      { bar: 0, collars: 0.5, plates: [{ mass: 0.5 }] },
    ];
    const row = fc.record({
      load: within(1, 200),
      percentOneRepMax: field(fc.oneof(within(1, 100), fc.integer({ min: 20, max: 40 }))),
    });
    fc.assert(
      fc.property(
        fc.array(row, { minLength: 1, maxLength: 20 }),
        fc.constantFrom(...ways),
        fc.constantFrom('nearest' as const, 'down' as const),
        fc.constantFrom('kg' as const, 'lb' as const),
        (rows, way, rounding, unit) => {
          const maxima = columns({
            answer: 'one-repetition-maximum',
            equation: 'epley-1985',
            load: column(rows, 'load') as number[],
            repetitions: 5,
            unit,
          });
          const percentOneRepMax = column(rows, 'percentOneRepMax') as number[];
          const loads = columns({ answer: 'training-load', oneRepMax: maxima, percentOneRepMax, rounding, ...way });
          rows.forEach(({ load, percentOneRepMax: share }, index) => {
            const oneRepMax = estimateOneRepMax({ load, repetitions: 5, equation: 'epley-1985', unit });
            const asked = { oneRepMax, rounding, ...way, ...scalarRow({ percentOneRepMax: share }) };
            expectSame(loads, index, attempt(trainingLoad, asked as never));
          });
        },
      ),
      { numRuns: 200 },
    );
  });
});

describe('columns', () => {
  const right = {
    answer: 'occlusion-pressure',
    equation: 'width-ratio-1993',
    limb: 'leg',
    circumferenceCm: new Float64Array([54, 60, 66]),
    systolicMmHg: 120,
    diastolicMmHg: [70, 130, null],
    cuffWidthCm: 10,
    posture: 'supine',
  } as const;

  it('flags every reason of a row', () => {
    const got = columns({ ...right, limb: ['leg', 'torso' as never, null], systolicMmHg: [185, 120, 120] });
    expect(Array.from(got.flag, flagCodes)).toEqual([
      ['blood-pressure-refer'],
      ['impossible', 'relation'],
      ['missing'],
    ]);
    const cuffs = columns({ ...right, equation: 'thigh-2015', cuffWidthCm: [5, 10, 5] });
    expect(Array.from(cuffs.flag, flagCodes)).toEqual([[], ['relation'], ['missing']]);
    const wide = columns({ ...right, equation: 'thigh-2015', diastolicMmHg: 70, cuffWidthCm: [5, 10, 5] });
    expect(Array.from(wide.flag, flagCodes)).toEqual([[], ['does-not-apply'], []]);
    expect(REFUSED).toBe(
      Object.values(rowFlags)
        .filter(({ refused }) => refused)
        .reduce((sum, { bit }) => sum + bit, 0),
    );
  });

  it('refuses a row whose reading is missing, be it the first, and not the call', () => {
    const thigh = { ...right, equation: 'thigh-2019', cuffWidthCm: 18, diastolicMmHg: 70 } as const;
    const got = columns({ ...thigh, ageYears: [30, null, 30], sex: [null, 'male', 'female'] });
    expect(Array.from(got.flag, flagCodes)).toEqual([['missing'], ['missing'], []]);
    const wider = columns({ ...thigh, ageYears: [60, 0, 30], sex: 'male' });
    expect(Array.from(wider.flag, flagCodes)).toEqual([['outside-fitted-range'], ['impossible'], []]);
  });

  it('takes typed arrays, lists and single values alike, and changes none of them', () => {
    const list = [54.5, 60.25, 66];
    const frozen = Object.freeze([...list]);
    const answers = [list, frozen, Float64Array.from(list), Float32Array.from(list)].map((circumferenceCm) =>
      Array.from(columns({ ...right, circumferenceCm, diastolicMmHg: 70 }).value),
    );
    expect(new Set(answers.map(String)).size).toBe(1);
    const spread = columns({
      ...right,
      limb: ['leg', 'leg', 'leg'],
      systolicMmHg: [120, 120, 120],
      cuffWidthCm: [10, 10, 10],
    });
    expect(spread.value).toEqual(columns(right).value);
    expect(spread.flag).toEqual(columns(right).flag);
  });

  it('gives no rows for no people, and what a row is for one, whatever kind of column it comes in', () => {
    const group = { ...right, diastolicMmHg: 70 } as const;
    for (const none of [[], new Float64Array(0), new Uint8Array(0)]) {
      const { value, lower, upper, flag, about } = columns({ ...group, circumferenceCm: none });
      expect([value, lower, upper, flag].map(({ length }) => length)).toEqual([0, 0, 0, 0]);
      expect(about.equation).toBe('width-ratio-1993');
      const nobody = columns({ ...group, circumferenceCm: none });
      expect(columns({ answer: 'cuff-pressure', occlusion: nobody, percentLop: 50 }).value.length).toBe(0);
    }
    const { answer: _answer, ...person } = group;
    const scalar = estimateOcclusionPressure({ ...person, circumferenceCm: 54 });
    for (const Kind of [
      Float32Array,
      Int8Array,
      Uint8Array,
      Uint8ClampedArray,
      Int16Array,
      Uint16Array,
      Int32Array,
      Uint32Array,
    ]) {
      const { value, lower, flag } = columns({ ...group, circumferenceCm: Kind.of(54) });
      expect([value[0], lower[0], flag[0]]).toEqual([scalar.value, scalar.lower, 0]);
    }
    // A hole in a list is a missing value.
    const odd = columns({ ...group, circumferenceCm: [54, , NaN] as never });
    expect(Array.from(odd.flag, flagCodes)).toEqual([[], ['missing'], ['missing']]);
    expect(Array.from(odd.value.slice(1))).toEqual([NaN, NaN]);
  });

  it('writes into the columns of an earlier answer, and gives those back', () => {
    const first = columns(right);
    const { value, lower, upper, flag } = first;
    const before = Array.from(value);
    value.fill(7);
    flag.fill(255);
    const again = columns({ ...right, into: first });
    expect(
      [again.value, again.lower, again.upper, again.flag].map(
        (part, index) => part === [value, lower, upper, flag][index],
      ),
    ).toEqual([true, true, true, true]);
    expect(Array.from(again.value)).toEqual(before);
    expect(again.standardDeviation).toBe(first.standardDeviation);
    // In place: a target written over the pressures it comes from.
    const apart = columns({ answer: 'cuff-pressure', occlusion: columns(right), percentLop: 50 });
    const inPlace = columns({ answer: 'cuff-pressure', occlusion: first, percentLop: 50, into: first });
    expect(Array.from(inPlace.value)).toEqual(Array.from(apart.value));
    expect(Array.from(inPlace.lower)).toEqual(Array.from(apart.lower));
    expect(Array.from(inPlace.flag)).toEqual(Array.from(apart.flag));
  });

  it('refuses a cuff or lift that the equation is not for, and fields it does not have', () => {
    const lift = { answer: 'one-repetition-maximum', load: [100, 110], repetitions: 5 } as const;
    const squat = { ...lift, equation: 'squat-high-school-2003' } as const;
    expect(() => columns({ ...squat, lift: 'deadlift' })).toThrow(/lift must be squat for equation/);
    expect(Array.from(columns({ ...squat, lift: ['deadlift', 'squat'] }).flag, flagCodes)).toEqual([
      ['does-not-apply'],
      [],
    ]);
    const both = columns({ ...lift, equation: 'epley-1985', repetitionsInReserve: [1, null], reserveRpe: [9, 9] });
    expect(Array.from(both.flag, flagCodes)).toEqual([['relation'], []]);
    const occlusion = columns({ ...right, diastolicMmHg: 70 });
    const limited = { answer: 'cuff-pressure', occlusion, percentLop: 50, occlusionChanceLimitPercent: 1 } as never;
    expect(() => columns(limited)).toThrow(/occlusionChanceLimitPercent is not a field/);
  });

  it.each([
    ['width-ratio-1993', { cuffWidthCm: 10 }],
    ['thigh-2019', { cuffWidthCm: 18, sex: 'female' }],
    ['padding-2006', { cuffWidthCm: 10, paddingCoefficient: 0.7 }],
  ] as const)('gives the same across the blocks it works in: %s', (equation, place) => {
    const rows = 2 * BLOCK + 17;
    // The first block is clean, the second and the last, which is short, are not.
    const dirty = (row: number, every: number): boolean => row >= BLOCK && row % every === 5;
    const reading = (low: number, different: number, bad: number, every: number) =>
      Float64Array.from({ length: rows }, (_, row) => (dirty(row, every) ? bad : low + (row % different)));
    const readings = {
      circumferenceCm: reading(45, 25, 200, 911),
      systolicMmHg: reading(100, 71, NaN, 2731),
      diastolicMmHg: reading(60, 31, 190, 1999),
      ...(equation === 'thigh-2019' && { ageYears: reading(18, 18, 60, 1009) }),
    };
    const asked = { answer: 'occlusion-pressure', limb: 'leg', posture: 'supine', equation, ...place } as const;
    const got = columns({ ...asked, ...readings });
    const flags = new Set(got.flag);
    expect(flags.size).toBeGreaterThanOrEqual(4);
    for (let row = 0; row < rows; row += 1) {
      const alone = Object.entries(readings).map(([name, values]) => [name, values.subarray(row, row + 1)]);
      const one = columns({ ...asked, ...(Object.fromEntries(alone) as unknown as typeof readings) });
      const same =
        Object.is(one.value[0], got.value[row]) &&
        Object.is(one.lower[0], got.lower[row]) &&
        Object.is(one.upper[0], got.upper[row]) &&
        one.flag[0] === got.flag[row];
      if (!same) expect.unreachable(`row ${row}`);
    }
  });

  it('refuses a column of another type than its field, and names the first element that is', () => {
    const refused = (wrong: object) => attempt(columns as (input: object) => ColumnAnswer, { ...right, ...wrong });
    const paths = (wrong: object) => {
      const got = refused(wrong);
      return got.ok ? [] : got.issues.map(({ path, code }) => [path.join('.'), code]);
    };
    expect(paths({ circumferenceCm: ['54', '60', '66'] })).toEqual([['circumferenceCm.0', 'wrong-type']]);
    expect(paths({ circumferenceCm: [54, null, '66'] })).toEqual([['circumferenceCm.2', 'wrong-type']]);
    expect(paths({ circumferenceCm: BigInt64Array.of(54n, 60n, 66n) })).toEqual([['circumferenceCm.0', 'wrong-type']]);
    expect(paths({ systolicMmHg: [120, new Date(0), 120] })).toEqual([['systolicMmHg.1', 'wrong-type']]);
    expect(paths({ posture: ['supine', 2, 'supine'] })).toEqual([['posture.1', 'wrong-type']]);
    expect(paths({ posture: ['supine', 'lying', null] })).toEqual([]);
  });

  it('asks for no reading that the equation does not use', () => {
    const legs = { answer: 'occlusion-pressure', limb: 'leg', systolicMmHg: [120, 140, null] } as const;
    const index = { ...legs, equation: 'thigh-index-18', cuffWidthCm: 18 } as const;
    // Its error needs posture and diastolic pressure.
    const alone = columns(index);
    expect(Array.from(alone.value)).toEqual([132, 154, NaN]);
    expect(Array.from(alone.flag, flagCodes)).toEqual([['no-interval'], ['no-interval'], ['missing']]);
    const known = columns({ ...index, posture: 'supine', diastolicMmHg: 70 });
    const whole = columns({ ...index, posture: 'supine', diastolicMmHg: 70, circumferenceCm: 55 });
    expect([known.lower[0], known.upper[0], known.flag[0]]).toEqual([whole.lower[0], whole.upper[0], 0]);
    expect(known.lower[0]).toBeGreaterThan(0);
    // What is given has to be right, and what the formula or the cuff asks for has to be given.
    expect(columns({ ...index, circumferenceCm: [55, 500, 55] }).flag[1]).toBe(rowFlags.impossible.bit);
    expect(() => columns({ ...legs, equation: 'thigh-index-18' })).toThrow(/cuffWidthCm is missing/);
    expect(() => columns({ ...index, equation: 'width-ratio-1993' })).toThrow(/circumferenceCm is missing/);
    expect(() => columns({ ...index, equation: 'pooled-curve-thigh-2026' })).toThrow(/posture is missing/);
  });
});
