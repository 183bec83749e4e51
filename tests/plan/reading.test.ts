import { describe, expect, expectTypeOf, it } from 'vitest';
import { attempt, measuredOcclusionPressure, testedOneRepMax, weekTotals } from '../../src/index.js';
import { show, toRows } from '../../src/text/index.js';
import {
  findItem,
  nextSession,
  planSession,
  readDocument,
  recordSession,
  screen,
  type Plan,
  type PlanRequest,
  type RecordRequest,
} from '../../src/plan/index.js';
import { publicFunctions } from '../support/public-functions.js';
import { issuesOf } from '../support/refused.js';

const plan = planSession(publicFunctions['planSessionOfEveryKind']!.right as PlanRequest);
const one = planSession(publicFunctions['planSession']!.right as PlanRequest);
const place = { exercise: 'leg extension', limb: 'leg', side: 'left' } as const;
const record = (request: Partial<RecordRequest>) => recordSession({ plan: one, date: '2026-03-02', ...request });
const issues = (request: Partial<RecordRequest>) => issuesOf(() => record(request));

describe('the item of an exercise on a limb', () => {
  it('is found by what tells it apart', () => {
    expect(findItem(plan, { exercise: 'leg extension', side: 'right' })).toBe(
      plan.items.find(({ exercise, side }) => exercise === 'leg extension' && side === 'right'),
    );
    expect(findItem(one).exercise).toBe('leg extension');
    expect(findItem(record({ items: [{ ...place, sets: [30] }] }), place).done.sets).toHaveLength(1);
  });
  it('is refused where there is none, or more than one', () => {
    expect(() => findItem(plan, { exercise: 'walk' })).toThrow(/single item of .*; received 2/);
    expect(() => findItem(plan, { exercise: 'curl' })).toThrow(/received 0/);
    expect(() => findItem(plan, { side: 'Left' as never })).toThrow(/Did you mean 'left'\?/);
  });
});

describe('a record', () => {
  it('takes a number of repetitions for each set', () => {
    const short = record({ items: [{ ...place, sets: [30, 15, 15, 17] }] });
    const long = record({
      items: [{ ...place, sets: [30, 15, 15, 17].map((repetitions) => ({ repetitions })) }],
    });
    expect(short).toEqual(long);
    expect(findItem(short).totals.repetitions.value).toBe(77);
    expect(issues({ items: [{ ...place, sets: [30, 1.5] }] })).toEqual(['items.0.sets.1 wrong-type']);
  });
  it('of everything as planned has the sets, loads and rests of the plan', () => {
    const document = recordSession({ plan, date: '2026-03-02', asPlanned: true });
    expect(document.items.map(({ exercise, side }) => [exercise, side])).toEqual(
      plan.items.map(({ exercise, side }) => [exercise, side]),
    );
    for (const [index, { done, sets, totals }] of document.items.entries()) {
      expect(done.sets.map(({ repetitions, durationS }) => [repetitions, durationS])).toEqual(
        sets.map(({ repetitions, durationS }) => [repetitions, durationS]),
      );
      expect(totals.repetitions.value).toBe(plan.items[index]!.totals.repetitions.value);
      // What nobody looked at is not known.
      expect(done.heldMmHg).toBeUndefined();
      expect(done.lastSetToFailure).toBeUndefined();
    }
  });
  it('as planned, except what is listed', () => {
    const document = recordSession({
      plan,
      date: '2026-03-02',
      asPlanned: true,
      items: [{ ...place, load: 20, stoppedEarly: true }],
    });
    expect(document.items).toHaveLength(plan.items.length);
    expect(findItem(document, place).done).toMatchObject({ load: 20, stoppedEarly: true });
    expect(findItem(document, { ...place, side: 'right' }).done.stoppedEarly).toBe(false);
  });
  it('asks for the items, and their sets, where it does not say so', () => {
    expect(issues({})).toEqual(['items missing']);
    expect(issues({ items: [] })).toEqual(['items missing']);
    expect(issues({ items: [place] })).toEqual(['items.0.sets missing']);
  });
});

describe('a document read back', () => {
  it('is of the kind that you expect, by its type too', () => {
    const stored: object = JSON.parse(JSON.stringify(one)) as object;
    expectTypeOf(readDocument(stored, 'plan')).toEqualTypeOf<Plan>();
    expect(readDocument(stored, 'plan')).toEqual(one);
    expect(attempt(readDocument, stored, 'record')).toMatchObject({ issues: [{ path: ['document'] }] });
    expect(attempt(readDocument, stored, 'plans' as never)).toMatchObject({
      issues: [{ path: ['kind'], suggestions: ['plan'] }],
    });
  });
});

describe('show', () => {
  it('is one line for an answer, with interval, equation and grade', () => {
    const lop = measuredOcclusionPressure({ valueMmHg: 168, method: 'doppler', limb: 'leg' });
    expect(show(lop)).toBe(
      'Limb occlusion pressure 168 mmHg (95 % interval 152–186 mmHg) · measured-doppler · derived',
    );
    expect(show({ ...lop, cautions: [{ severity: 'caution', code: 'x', text: 'x' }] })).toMatch(/ · read 1 caution$/);
  });
  it('is a line for each item of a document', () => {
    const [head, item, ...rest] = show(one).split('\n');
    expect(head).toMatch(/^Session plan/);
    const { target, load } = findItem(one);
    expect(item).toBe(
      `left leg · leg extension · cuff ${target!.value} mmHg · load ${load!.value} kg · 30-15-15-15 · restriction 390 s`,
    );
    expect(rest).toEqual([]);
    expect(show(record({ asPlanned: true }))).toContain('2026-03-02');
  });
  it('shows stops and no setting while one is in force', () => {
    const request = publicFunctions['planSession']!.right as PlanRequest;
    const stopped = planSession({ ...request, screening: screen({ answers: { 'sickle-cell': 'yes' } }) });
    expect(stopped.stops.length).toBeGreaterThan(0);
    expect(show(stopped)).toContain('stop: ');
    expect(show(stopped)).not.toMatch(/cuff \d|load \d/);
    // Nor can they be taken out by hand.
    expect(() => show({ ...stopped, stops: [] })).toThrow(/was changed or cut short/);
    // A table without its heading keeps it too.
    const severities = new Set(toRows(stopped).map(({ severity }) => severity));
    expect([...severities]).toEqual(['stop']);
  });
  it('refuses what is neither an answer nor a document', () => {
    expect(() => show({})).toThrow(/an answer, a document/);
    expect(() => show({ kind: 'occlusion-pressure', value: 5 })).toThrow(/an answer, a document/);
  });
});

describe('toRows', () => {
  it('has a row for every number of a plan, all with the same cells', () => {
    const rows = toRows(plan);
    const cells = Object.keys(rows[0]!);
    for (const row of rows) {
      expect(Object.keys(row)).toEqual(cells);
      for (const value of Object.values(row))
        expect(value === null || ['string', 'number'].includes(typeof value)).toBe(true);
    }
    const targets = rows.filter(({ kind, place: at }) => kind === 'cuff-pressure' && at.endsWith('.target'));
    expect(targets.map(({ value }) => value)).toEqual(
      plan.items.flatMap(({ target }) => (target ? [target.value] : [])),
    );
    expect(targets[0]).toMatchObject({ exercise: 'leg extension', limb: 'leg', side: 'left', unit: 'mm[Hg]' });
  });
  it('takes an answer, a list and totals', () => {
    const maximum = testedOneRepMax({ load: 100 });
    expect(toRows(maximum)).toMatchObject([{ place: '', value: 100, exercise: null, lower: maximum.lower }]);
    expect(toRows([maximum, maximum]).map(({ place: at }) => at)).toEqual(['0', '1']);
    const week = weekTotals(publicFunctions['weekTotals']!.right as never);
    expect(toRows(week).length).toBeGreaterThan(2);
    const proposal = nextSession({ plan: one, records: [record({ asPlanned: true })], rule: 'all-repetitions' });
    expect(toRows(proposal)).toEqual([]);
  });
});
