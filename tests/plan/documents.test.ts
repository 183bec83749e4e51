import { readFileSync } from 'node:fs';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { InputError, isInputError } from '../../src/index.js';
import { explain, messages } from '../../src/text/index.js';
import {
  expandDocument,
  nextSession,
  readDocument,
  reviewPlan,
  screen,
  type Plan,
  type Stated,
} from '../../src/plan/index.js';
import { upgraded } from '../../src/plan/stored.js';
import { planOf, recordOf } from '../support/plans.js';

const plan = planOf();
const record = recordOf(plan, [30, 15, 15, 15], {
  symptoms: ['symptom-numbness-stays'],
  pain: [{ site: 'joint', before: 1, after: 3 }],
});
const documents = {
  plan,
  record,
  screening: screen({ ageYears: 61, systolicMmHg: 182, answers: { pregnancy: 'yes', diabetes: 'yes' } }),
  review: reviewPlan(plan),
  proposal: nextSession({ plan, records: [record], rule: 'two-for-two' }),
};

describe('readDocument', () => {
  // An invented history of an invented document.
  it('steps an older document up, one version at a time', () => {
    const upgrades = {
      0: ({ name, ...rest }: Readonly<Record<string, unknown>>) => ({ ...rest, title: name }),
      1: (older: Readonly<Record<string, unknown>>) => ({ ...older, tags: [] }),
    };
    const old = { schemaVersion: 0, name: 'a', extra: 1 };
    expect(upgraded(old, 2, upgrades)).toEqual({ schemaVersion: 2, title: 'a', tags: [], extra: 1 });
    expect(upgraded({ schemaVersion: 1, title: 'a' }, 2, upgrades)).toEqual({ schemaVersion: 2, title: 'a', tags: [] });
    expect(old).toEqual({ schemaVersion: 0, name: 'a', extra: 1 });
    expect(() => upgraded({ schemaVersion: -1 }, 2, upgrades)).toThrow(InputError);
    expect(() => upgraded({ schemaVersion: 3 }, 2, upgrades)).toThrow(/newer version/);
  });
});

describe('a document of schema version 1', () => {
  // Frozen as they were made then: do not make them anew.
  const older = JSON.parse(readFileSync('tests/plan/fixtures/version-1.json', 'utf8')) as Record<string, Older>;
  interface Older {
    readonly schemaVersion: number;
    readonly stops: readonly { readonly code: string }[];
    readonly cautions: readonly object[];
    readonly items: readonly {
      readonly target?: Stated & { readonly reached: { readonly occlusionChancePercent: number } };
      readonly load?: Stated;
      readonly totals: Readonly<Record<string, Stated>>;
    }[];
  }

  /** The chance of full occlusion has since digits that subtraction from ½ had taken. */
  const toDigits = ({ reached, ...target }: NonNullable<Older['items'][number]['target']>): object => ({
    ...target,
    reached: { ...reached, occlusionChancePercent: expect.closeTo(reached.occlusionChancePercent, 12) as number },
  });

  it.each(Object.keys(older))('is brought up to this one with every number, stop and caution: %s', (name) => {
    const old = older[name]!;
    const read = readDocument(old) as Plan;
    expect([old.schemaVersion, read.schemaVersion]).toEqual([1, 2]);
    expect(read.stops).toEqual(old.stops);
    // Codes and numbers are those of then; the sentence of a code is today’s.
    const facts = (cautions: readonly object[]) => cautions.map((caution) => ({ ...caution, text: undefined }));
    expect(facts(read.cautions)).toEqual(facts(old.cautions));
    expect(readDocument(JSON.parse(JSON.stringify(read)))).toEqual(read);
    expect(explain(read).length).toBeGreaterThan(1000);
    const { items } = expandDocument(read);
    for (const [index, { target, load, totals }] of old.items.entries()) {
      expect(items[index]).toMatchObject({ ...(target && { target: toDigits(target) }), ...(load && { load }) });
      for (const [total, { value, unit }] of Object.entries(totals))
        if (total !== 'cautions') expect(read.items[index]!.totals).toMatchObject({ [total]: { value, unit } });
    }
    expect(JSON.stringify(read).length).toBeLessThan(JSON.stringify(old).length / 2);
  });

  it('keeps what an app wrote into its totals, and never looks at it', () => {
    const [item] = (older as { record: Older }).record.items;
    const totals = { ...item!.totals, mine: null, ours: { value: 'x' } };
    const read = readDocument({ ...older['record']!, items: [{ ...item!, totals }], limbs: [] }, 'record');
    expect(read.items[0]!.totals).toMatchObject({ mine: null, ours: { value: 'x' } });
    expect(Object.keys(expandDocument(read).items[0]!.totals)).not.toContain('mine');
  });

  it('keeps its stops when they were taken out, and is refused where it was changed', () => {
    const { stopped, record } = older as { stopped: Older; record: Older };
    for (const old of [stopped, record]) {
      expect(old.stops.length).toBeGreaterThan(0);
      expect((readDocument({ ...old, stops: [], cautions: [] }) as Plan).stops).toEqual(old.stops);
    }
    const [item] = stopped.items;
    const changed = { ...stopped, items: [{ ...item!, target: { ...item!.target!, value: 90 } }] };
    expect(() => readDocument(changed)).toThrow(InputError);
    for (const broken of [
      { ...stopped, items: 7 },
      { ...stopped, items: [7] },
      { ...stopped, session: null },
    ])
      expect(() => readDocument(broken)).toThrow(InputError);
  });
});

describe('every document', () => {
  it.each(Object.entries(documents))('%s never says that anyone is safe or cleared', (_name, document) => {
    const text = (JSON.stringify(document) + explain(document))
      .replaceAll('does not clear anyone', '')
      .replaceAll('not-cleared', '');
    expect(text).not.toMatch(/\bsafe(ly)?\b|\bcleared\b/i);
  });

  it('is backed by a catalogue that never says so either', () => {
    expect(Object.values(messages).join(' ')).not.toMatch(/\bsafe(ly)?\b|\bcleared\b/i);
  });

  it.each(Object.entries(documents))('%s that was changed by hand is explained or refused', (_name, document) => {
    const names = Object.keys(document);
    const tampered = fc
      .tuple(fc.constantFrom(...names), fc.jsonValue())
      .map(([name, value]) => ({ ...document, [name]: value }));
    fc.assert(
      fc.property(tampered, (given) => {
        try {
          expect(typeof explain(given as unknown as Plan)).toBe('string');
        } catch (error) {
          if (!isInputError(error)) throw error;
        }
      }),
    );
  });
});
