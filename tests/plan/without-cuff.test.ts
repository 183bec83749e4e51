import { describe, expect, it } from 'vitest';
import { explain } from '../../src/text/index.js';
import {
  compareWeeks,
  nextRequest,
  nextSession,
  planSession,
  readDocument,
  recordSession,
  reviewPlan,
  type PlanRequest,
} from '../../src/plan/index.js';
import { issuesOf } from '../support/refused.js';
import { EXTENSION, PERSON } from '../support/inputs.js';

const leg = { limb: 'leg', side: 'left' } as const;
const heavy = { percentOneRepMax: 80, step: 5, scheme: '3x8', restS: 120, restriction: 'none' } as const;
const press = { ...EXTENSION, ...heavy, name: 'leg press', oneRepMax: { load: 200 } } as const;
const extension = { ...press, name: 'leg extension', oneRepMax: { load: 60 }, percentOneRepMax: 25, step: 5 } as const;
const request: PlanRequest = {
  ...PERSON,
  limbs: [leg],
  exercises: [press],
};
const issues = (more: Partial<PlanRequest>) => issuesOf(planSession, { ...request, ...more });

// The last stage of the progression: high load alone. By hand: 80 % of 200 kg; 3 × 8 × 160 kg.
describe('a session without a cuff', () => {
  const plan = () => planSession(request);
  const record = () =>
    recordSession({
      plan: plan(),
      date: '2026-03-02',
      items: [{ exercise: 'leg press', ...leg, sets: [{ repetitions: 8 }, { repetitions: 8 }, { repetitions: 8 }] }],
    });

  it('needs no cuff, no girth and no percentage, and has no cuff pressure', () => {
    const [item] = plan().items;
    expect(item).not.toHaveProperty('occlusion');
    expect(item).not.toHaveProperty('target');
    expect([item!.load!.value, item!.totals.volumeLoad!.value]).toEqual([160, 3840]);
    expect(plan().limbs[0]!.restrictionTime.value).toBe(0);
    expect(explain(plan())).toMatch(/^Cuff +none$/m);
    expect(explain(plan(), { detail: 'brief' })).toMatch(/^Cuff +none$/m);
  });

  it('is recorded, progressed, reviewed, read back and set beside other weeks', () => {
    expect(record().items[0]).not.toHaveProperty('cuffWidthCm');
    expect(explain(record())).toMatch(/^Cuff +none$/m);
    expect(readDocument(JSON.parse(JSON.stringify(record())) as object)).toEqual(record());
    expect(readDocument(JSON.parse(JSON.stringify(plan())) as object)).toEqual(plan());
    expect(reviewPlan(plan()).findings.map(({ code, severity }) => [code, severity])).toEqual([
      ['review-heavy', 'note'],
    ]);
    const proposal = nextSession({ plan: plan(), records: [record()], rule: 'all-repetitions' });
    expect(proposal.items[0]).toMatchObject({ action: 'raise-load', load: { from: 160, to: 165, unit: 'kg' } });
    expect(proposal.measureAgain.map(({ what }) => what)).not.toContain('occlusion-pressure');
    expect(planSession(nextRequest({ plan: plan(), proposal }).request).items[0]!.load!.value).toBe(165);
    const [week] = compareWeeks({ weeks: [{ sessions: [{ plan: plan() }] }] }).weeks;
    expect(week!.planned!.restrictedSessions.value).toBe(0);
    expect(week!.planned!.limbs[0]!.exercises[0]).not.toHaveProperty('percentLop');
  });

  it('asks for the cuff where an exercise has it up, and for a percentage where none is given', () => {
    const light = { ...extension, restriction: 'continuous' } as const;
    expect(issues({ exercises: [press, light] })).toEqual(['limbs.0.cuffWidthCm missing']);
    const limbCuff = { ...leg, cuffWidthCm: 10, circumferenceCm: 56 };
    expect(issues({ limbs: [limbCuff], exercises: [press, light] })).toEqual(['exercises.1.percentLop missing']);
    expect(issues({ limbs: [limbCuff], exercises: [press, { ...light, percentLop: 50 }] })).toEqual([]);
    // The other leg has no cuff up, so nothing of it is asked for.
    const limbs = [limbCuff, { ...leg, side: 'right' as const }];
    const sides = [
      { ...light, side: 'left' as const, percentLop: 50 },
      { ...press, side: 'right' as const },
    ];
    expect(issues({ limbs, exercises: sides })).toEqual([]);
  });

  it('still looks at readings of a cuff that are all there', () => {
    // Inches: 22 in are 56 cm.
    expect(issues({ limbs: [{ ...leg, cuffWidthCm: 10, circumferenceCm: 22 }] })).toEqual([
      'limbs.0.circumferenceCm unit-slip',
    ]);
  });
});
