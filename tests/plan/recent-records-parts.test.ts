import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import type { InputIssue } from '../../src/answer/issues.js';
import { ownDocument } from '../../src/answer/own.js';
import { recentRecords, repeatedRecords } from '../../src/plan/recent-records.js';

type Json = Readonly<Record<string, unknown>>;

const item = (exercise = 'press', side = 'left', more: Json = {}): Json => ({ exercise, limb: 'leg', side, ...more });
const fields = (date: string, more: Json = {}): Json => ({
  document: 'record',
  schemaVersion: 2,
  date,
  items: [item()],
  stops: [],
  symptoms: [],
  ...more,
});
/** A record as the library hands it out: nobody can change it, so it is taken as it is. */
const record = (date: string, more: Json = {}): Json => ownDocument(fields(date, more));
/** The record of a day of March that did something of its own. */
const onDay = (day: number, more: Json = {}): Json =>
  record(`2026-03-${String(day).padStart(2, '0')}`, {
    items: [item('press', 'left', { done: { load: day } })],
    ...more,
  });

interface Asked {
  readonly items?: readonly Json[];
  readonly label?: string;
  readonly sessions?: number;
}

/** Which of the records given are read wholly, in order, and what is wrong with them. */
function read(given: readonly unknown[], { items = [item()], label, sessions = 2 }: Asked = {}) {
  const issues: InputIssue[] = [];
  const plan = { request: { label }, items } as never;
  const records = recentRecords(issues, given, plan, sessions) as readonly unknown[];
  return {
    used: records.map((one) => given.indexOf(one)),
    issues: issues.map(
      ({ path, code, expected, received }) => `${path.join('.')} ${code}: ${expected}, not ${received}`,
    ),
    at: [...new Set(issues.map(({ path }) => path.slice(0, 2).join('.')))],
  };
}
const used = (given: readonly unknown[], asked?: Asked) => read(given, asked).used;

describe('the records that a proposal is made from', () => {
  it('come in the order of their days, then of their numbers, then as they were given', () => {
    expect(used([onDay(9), onDay(2), onDay(5)], { sessions: 3 })).toEqual([1, 2, 0]);
    expect(used([onDay(2, { sessionOfDay: 2 }), onDay(2, { sessionOfDay: 1, items: [item('row')] })])).toEqual([1, 0]);
    // One without a number comes before the numbered ones of its day.
    const unnumbered = onDay(2, { items: [item('row')] });
    expect(used([onDay(2, { sessionOfDay: 1 }), unnumbered])).toEqual([1, 0]);
    expect(used([onDay(2), onDay(2, { items: [item('row')] }), onDay(2, { items: [item('curl')] })])).toEqual([
      0, 1, 2,
    ]);
  });

  it('come in the order they were given in, where they are alike and not of the last day', () => {
    const both = [item(), item('row')];
    expect(used([onDay(2), onDay(2, { items: [item('row')] }), onDay(3)], { items: both })).toEqual([0, 1, 2]);
  });

  it('are the last sessions of each item that are asked for', () => {
    const days = [1, 2, 3, 4, 5].map((day) => onDay(day));
    expect(used(days, { sessions: 1 })).toEqual([4]);
    expect(used(days, { sessions: 2 })).toEqual([3, 4]);
    expect(used(days, { sessions: 3 })).toEqual([2, 3, 4]);
    expect(used(days, { sessions: 9 })).toEqual([0, 1, 2, 3, 4]);
  });

  it('go back for an item until it has its sessions, past those of other items', () => {
    const row = (day: number) => onDay(day, { items: [item('row')] });
    const given = [onDay(1), onDay(2), onDay(3), row(4), row(5), row(6)];
    expect(used(given)).toEqual([1, 2, 5]);
    expect(used(given, { items: [item(), item('row')] })).toEqual([1, 2, 4, 5]);
    expect(used(given, { items: [item('row')] })).toEqual([4, 5]);
  });

  it('hold the last session of each limb, whatever it trained', () => {
    const given = [
      onDay(1, { items: [item('row')] }),
      onDay(2, { items: [item('row')] }),
      onDay(3, { items: [item('row', 'right')] }),
    ];
    expect(used(given)).toEqual([1, 2]);
    expect(used(given, { items: [item('press', 'right')] })).toEqual([2]);
    expect(used([onDay(1, { items: [{ ...item(), limb: 'arm' }] }), onDay(2, { items: [item('row')] })])).toEqual([1]);
  });

  it('tell an exercise that is listed again from the first', () => {
    const twice = [item(), item()];
    const given = [onDay(1, { items: twice }), onDay(2), onDay(3), onDay(4)];
    expect(used(given, { items: twice, sessions: 1 })).toEqual([0, 3]);
    expect(used(given, { sessions: 1 })).toEqual([3]);
  });

  it('are all those of the last day, whatever they trained', () => {
    const given = [onDay(1), onDay(2), onDay(3), onDay(4, { items: [item('row', 'right')] }), onDay(4)];
    expect(used(given, { sessions: 1 })).toEqual([3, 4]);
  });

  // Stops, symptoms and severe pain (8 of 10 and above, practice) stay in force however old they are.
  it.each([
    ['nothing', {}, false],
    ['a stop', { stops: [{ code: 'symptom-chest-pain' }] }, true],
    ['a symptom', { symptoms: ['symptom-chest-pain'] }, true],
    ['no list of stops', { stops: undefined }, true],
    ['no list of symptoms', { symptoms: undefined }, true],
    ['no pain', { pain: [] }, false],
    ['pain of 7', { pain: [{ site: 'joint', before: 7, during: 7 }] }, false],
    ['pain of 8 at one moment', { pain: [{ site: 'joint', before: 0, after: 8 }] }, true],
    [
      'pain of 8 in a second report',
      {
        pain: [
          { site: 'joint', before: 0 },
          { site: 'tendon', during: 8 },
        ],
      },
      true,
    ],
    ['text of 9 for a rating', { pain: [{ site: 'joint', before: '9' }] }, false],
    ['a pain that is no report', { pain: ['severe'] }, true],
    ['an empty report', { pain: [null] }, true],
  ] as const)('hold an old one that reports %s: %j', (_, more, isHeld) => {
    expect(used([onDay(1, more), onDay(2), onDay(3), onDay(4)])).toEqual(isHeld ? [0, 2, 3] : [2, 3]);
  });

  it('are known again at another place of a list', () => {
    const [first, second, third] = [onDay(1), onDay(2), onDay(3)];
    expect(used([first, second])).toEqual([0, 1]);
    expect(used([third, second])).toEqual([1, 0]);
    const other = onDay(3, { label: 'P-2' });
    expect(read([other], { label: 'P-1' }).at).toEqual(['records.0']);
    expect(read([second, other], { label: 'P-1' }).at).toEqual(['records.1']);
  });

  it('are looked at anew where someone may have changed them', () => {
    const mine = { ...onDay(1) };
    const days = [onDay(2), onDay(3), onDay(4)];
    expect(read([mine, ...days]).at).toEqual([]);
    expect(read([Object.assign(mine, { symptoms: ['symptom-chest-pain'] }), ...days]).at).toEqual(['records.0']);
  });

  it('are brought up to this version, where they are of an older one', () => {
    const text = readFileSync(new URL('fixtures/version-1.json', import.meta.url), 'utf8');
    const { record: old } = JSON.parse(text) as { record: unknown };
    const issues: InputIssue[] = [];
    const records = recentRecords(issues, [old, old], undefined, 1);
    expect(records.map(({ schemaVersion }) => schemaVersion)).toEqual([2, 2]);
    expect(issues.map(({ path }) => path.join('.'))).toEqual(['records.1']);
  });

  it('need no plan', () => {
    const issues: InputIssue[] = [];
    const days = [onDay(1), onDay(2)];
    expect(recentRecords(issues, days, undefined, 2)).toEqual([days[1]]);
    expect(recentRecords(issues, [], undefined, 2)).toEqual([]);
    expect(issues).toEqual([]);
  });
});

describe('a record that is looked at', () => {
  // What nobody checked lacks nearly every field of a record, so reading it wholly finds something wrong.
  it('is read wholly where it is needed', () => {
    const given = [1, 2, 3, 4].map((day) => ({ ...onDay(day) }));
    expect(read(given).at).toEqual(['records.2', 'records.3']);
    expect(read(given).used).toEqual([]);
    expect(read(given, { sessions: 3 }).at).toEqual(['records.1', 'records.2', 'records.3']);
  });

  it.each([
    ['another document', { document: 'plan' }],
    ['another version', { schemaVersion: 1 }],
    ['no day', { date: undefined }],
    ['a day that is a list', { date: ['2026-03-01'] }],
    ['a day that is none', { date: '2026-02-30' }],
    ['no items', { items: undefined }],
    ['items that are no list', { items: {} }],
    ['a number of the day that is text', { sessionOfDay: '1' }],
    ['pain that is no list', { pain: {} }],
  ] as const)('is read wholly, however old, where it has %s', (_, more) => {
    const old = { ...onDay(1), ...more };
    expect(read([old, onDay(2), onDay(3), onDay(4)]).at).toEqual(['records.0']);
  });

  it('is read wholly where its exercises cannot be told, while sessions are looked for', () => {
    const old = { ...onDay(1), items: [null] };
    expect(read([old, onDay(2), onDay(3), onDay(4)], { sessions: 3 }).at).toEqual([]);
    expect(read([old, onDay(2), onDay(3), onDay(4)], { sessions: 4 }).at).toEqual(['records.0']);
  });

  it.each([[null], ['text'], [7], [undefined]])('is refused where it is no record: %j', (given) => {
    expect(read([onDay(2), given]).at).toEqual(['records.1']);
  });

  it('is refused by the documents that it may be', () => {
    const [first] = read([{ ...onDay(1), document: 'plan' }]).issues;
    expect(first).toMatch(/^records\.0\.document not-one-of: .*record.*, not .*plan/);
  });

  it('is refused where it cannot be looked at', () => {
    const { proxy, revoke } = Proxy.revocable({}, {});
    revoke();
    const throwing = Object.defineProperty({ ...onDay(1) }, 'date', {
      get: () => {
        throw new Error('not readable');
      },
    });
    expect(read([proxy, throwing, onDay(2)]).at).toEqual(['records.0', 'records.1']);
  });

  it('is not looked for where more is wrong than an error lists', () => {
    const wrong = { path: [], code: 'missing' } as unknown as InputIssue;
    const count = (before: number): number => {
      const issues = Array.from({ length: before }, () => wrong);
      recentRecords(issues, [null], undefined, 2);
      return issues.length - before;
    };
    expect([99, 100].map(count)).toEqual([1, 0]);
  });

  it('is of the person of the plan, where both say who that is', () => {
    const of = (label?: unknown) => onDay(2, { label });
    expect(read([of('P-1')], { label: 'P-1' }).issues).toEqual([]);
    expect(read([of()], { label: 'P-1' }).issues).toEqual([]);
    expect(read([of('P-2')]).issues).toEqual([]);
    expect(read([of('P-1'), onDay(3, { label: 'P-2' })], { label: 'P-1' }).issues).toEqual([
      'records.1.label wrong-relation: that of the plan, P-1, not P-2',
    ]);
    // A text, and nothing that is missing.
    expect(read([of('undefined')], { label: 'P-1' }).issues).toEqual([
      'records.0.label wrong-relation: that of the plan, P-1, not undefined',
    ]);
    // A label that is no text is never run: it may have no way to be written as text.
    const nothing = Object.create(null) as object;
    const [none, list] = [nothing, [nothing]].map((label) => ({ ...onDay(1), label }));
    const days = [onDay(2), onDay(3), onDay(4)];
    const shown = 'wrong-relation: that of the plan, P-1, not';
    expect(read([none, ...days], { label: 'P-1' }).issues).toEqual([`records.0.label ${shown} an object`]);
    expect(read([list, ...days], { label: 'P-1' }).issues).toEqual([`records.0.label ${shown} a list of 1`]);
    // However old, and whatever it trained.
    const old = onDay(1, { label: 'P-2', items: [item('row', 'right')] });
    expect(read([old, of(), onDay(3)], { label: 'P-1' }).at).toEqual(['records.0']);
  });
});

describe('records that are given twice', () => {
  const sets = (...repetitions: number[]): Json => ({ done: { sets: repetitions } });
  const done = (repetitions: number[], more: Json = {}, day = 2): Json =>
    onDay(day, { items: [item('press', 'left', sets(...repetitions))], ...more });
  const twice = (index: number) =>
    `wrong-relation: another session than records[${index}]: number two like sessions of one day with sessionOfDay`;
  const number = (index: number) => `wrong-relation: another number than that of records[${index}], of the same day`;

  it.each([
    ['like ones of one day', [done([9]), done([9])], [`records.1 ${twice(0)}, not 2026-03-02`]],
    ['like ones of two days', [done([9], {}, 1), done([9], {}, 2)], []],
    ['others of one day', [done([9]), done([8])], []],
    [
      'three like ones',
      [done([9]), done([9]), done([9])],
      [`records.1 ${twice(0)}, not 2026-03-02`, `records.2 ${twice(1)}, not 2026-03-02`],
    ],
    [
      'like ones with other notes',
      [done([9]), done([9], { notes: 'again' })],
      [`records.1 ${twice(0)}, not 2026-03-02`],
    ],
    ['like ones with numbers', [done([9], { sessionOfDay: 1 }), done([9], { sessionOfDay: 2 })], []],
    [
      'like ones, one with a number',
      [done([9]), done([9], { sessionOfDay: 2 })],
      [`records.1 ${twice(0)}, not 2026-03-02`],
    ],
    [
      'like ones, the first with a number',
      [done([9], { sessionOfDay: 1 }), done([9])],
      [`records.1 ${twice(0)}, not 2026-03-02`],
    ],
    [
      'like ones of one number',
      [done([9], { sessionOfDay: 1 }), done([9], { sessionOfDay: 1 })],
      [`records.1 ${twice(0)}, not 2026-03-02`],
    ],
    [
      'others of one number',
      [done([9], { sessionOfDay: 1 }), done([8], { sessionOfDay: 1 })],
      [`records.1.sessionOfDay ${number(0)}, not 1`],
    ],
    ['a number of two days', [done([9], { sessionOfDay: 1 }, 1), done([8], { sessionOfDay: 1 }, 2)], []],
    // Like the first, but with the number of the second: its number is wrong.
    [
      'a number of another one',
      [done([9], { sessionOfDay: 1 }), done([8], { sessionOfDay: 2 }), done([9], { sessionOfDay: 2 })],
      [`records.2.sessionOfDay ${number(1)}, not 2`],
    ],
    ['a like one after another one', [done([9]), done([8]), done([9])], [`records.2 ${twice(0)}, not 2026-03-02`]],
    [
      'with a day between them in the list',
      [done([9]), done([9], {}, 3), done([9])],
      [`records.2 ${twice(0)}, not 2026-03-02`],
    ],
    [
      'of two days',
      [done([9], {}, 3), done([9]), done([9]), done([9], {}, 3)],
      [`records.2 ${twice(1)}, not 2026-03-02`, `records.3 ${twice(0)}, not 2026-03-03`],
    ],
    ['another exercise', [done([9]), onDay(2, { items: [item('row', 'left', sets(9))] })], []],
    ['the other side', [done([9]), onDay(2, { items: [item('press', 'right', sets(9))] })], []],
    ['another limb', [done([9]), onDay(2, { items: [{ ...item('press', 'left', sets(9)), limb: 'arm' }] })], []],
  ] as const)('%s', (_, given, expected) => {
    expect(read(given).issues).toEqual(expected);
  });

  it('are found among whole records too', () => {
    const found = (given: readonly unknown[]) =>
      repeatedRecords(given as never).map(({ path, received }) => `${path.join('.')} ${received}`);
    expect(found([])).toEqual([]);
    expect(found([done([9]), done([8])])).toEqual([]);
    expect(found([done([9]), undefined, done([9])])).toEqual(['records.2 2026-03-02']);
    expect(found([done([9], {}, 3), done([9]), done([8], {}, 3), done([9])])).toEqual(['records.3 2026-03-02']);
  });

  it('are not told apart where what was done cannot be read', () => {
    expect(repeatedRecords([onDay(2, { items: [null] }), onDay(2, { items: [null] })] as never)).toEqual([]);
    const numbered = [1, 1].map(() => onDay(2, { items: [null], sessionOfDay: 1 }));
    expect(repeatedRecords(numbered as never).map(({ path }) => path.join('.'))).toEqual(['records.1.sessionOfDay']);
  });
});
