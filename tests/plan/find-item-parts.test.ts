import { describe, expect, it } from 'vitest';
import { attempt } from '../../src/index.js';
import { findItem, type ItemPlace } from '../../src/plan/find-item.js';

const item = (exercise = 'press', side: 'left' | 'right' = 'left', limb: 'leg' | 'arm' = 'leg') => ({
  exercise,
  limb,
  side,
});
/** What is wrong with a place, or a document, that no single item is found for. */
function wrong(document: unknown, which?: unknown): string[] {
  const found = attempt(() => findItem(document as never, which as ItemPlace), undefined);
  return found.ok
    ? []
    : found.issues.map(
        ({ path, code, expected, received }) => `${path.join('.')} ${code}: ${expected}, not ${received}`,
      );
}
const NO_ITEMS = 'which wrong-relation: a document with items, not 0';

describe('the one item of a document', () => {
  it.each([
    [{ exercise: 'row' }, 2],
    [{ side: 'right' }, 1],
    [{ limb: 'arm' }, 3],
    [{ exercise: 'press', side: 'left', limb: 'leg' }, 0],
  ] as const)('is found by %j', (which, index) => {
    const items = [item(), item('press', 'right'), item('row'), item('curl', 'left', 'arm')];
    expect(findItem({ items }, which)).toBe(items[index]);
  });

  it('is the only one there is, whatever else is in the list', () => {
    const only = item();
    expect(findItem({ items: ['text', null, only] as never[] })).toBe(only);
  });

  it('is refused where several fit, with what there is', () => {
    const items = [item(), item('press', 'right'), item()];
    const expected = 'which wrong-relation: one that fits a single item of "press" "leg" "left", "press" "leg" "right"';
    expect(wrong({ items })).toEqual([`${expected}, not 3`]);
    expect(wrong({ items }, { side: 'left' })).toEqual([`${expected}, not 2`]);
    expect(wrong({ items }, { exercise: 'row' })).toEqual([`${expected}, not 0`]);
  });

  it('is refused with no more than twenty of them', () => {
    const items = Array.from({ length: 22 }, (_, index) => item(`press ${index}`));
    const [message] = wrong({ items });
    expect(message).toContain('"press 19" "leg" "left"');
    expect(message).not.toContain('press 20');
  });

  it.each([[undefined], [null], [{}], [{ items: [] }], [{ items: 'text' }], [{ items: [7, null] }], ['text']])(
    'is refused where there is none: %j',
    (document) => {
      expect(wrong(document)).toEqual([NO_ITEMS]);
    },
  );

  it('is refused where the items cannot be read', () => {
    const document = {
      get items(): never {
        throw new Error('not readable');
      },
    };
    expect(wrong(document)).toEqual([NO_ITEMS]);
    // What is no list may never end.
    expect(wrong({ items: new Set([item()]) })).toEqual([NO_ITEMS]);
  });

  it('is looked for by names of up to 120 characters, by limbs and by sides', () => {
    const items = [item('x'.repeat(120))];
    expect(findItem({ items }, { exercise: 'x'.repeat(120) })).toBe(items[0]);
    expect(wrong({ items }, { exercise: 'x'.repeat(121) })).toMatchObject(
      [/^which\.exercise wrong-type: the name of an exercise, not/].map(
        (pattern) => expect.stringMatching(pattern) as string,
      ),
    );
    expect(
      wrong({ items }, { exercise: 7, limb: 'knee', side: 'up', place: 1 }).map((one) => one.split(':')[0]),
    ).toEqual([
      'which.exercise wrong-type',
      'which.limb not-one-of',
      'which.side not-one-of',
      'which.place unknown-field',
    ]);
    expect(wrong({ items }, null)).toEqual(['which wrong-type: a plain object, not null']);
  });
});
