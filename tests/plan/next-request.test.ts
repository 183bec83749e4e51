import { describe, expect, it } from 'vitest';
import { InputError } from '../../src/index.js';
import {
  nextRequest,
  nextSession,
  planSession,
  readDocument,
  type Plan,
  type Proposal,
  type ProposalItem,
} from '../../src/plan/index.js';
import { bothSides, measuredAt } from '../support/inputs.js';
import { jointPain, planOf, recordOf } from '../support/plans.js';
import { issuesOf } from '../support/refused.js';

const AS_PLANNED = [30, 15, 15, 15];

/** What the rule of the smallest step proposes once every repetition was done. */
const proposalFor = (plan: Plan, more: object = {}, feelings: object = {}): Proposal =>
  nextSession({ plan, records: [recordOf(plan, AS_PLANNED, feelings)], rule: 'all-repetitions', ...more });
const withItem = (proposal: Proposal, item: Partial<ProposalItem>): Proposal => ({
  ...proposal,
  items: [{ ...proposal.items[0]!, ...item }],
});
const planned = (plan: Plan, proposal: Proposal): Plan => planSession(nextRequest({ plan, proposal }).request);
const issues = (plan: Plan, proposal: Proposal) => issuesOf(nextRequest, { plan, proposal });

// Loads and pressures are sums by hand: 20 % of 100 kg, the next step or weight up, its share of 100 kg.
describe('a request for the next plan', () => {
  it.each([
    ['a step', { step: 2.5 }, 22.5, 22.5],
    ['a step, rounded down', { step: 5, rounding: 'down' }, 25, 25],
    ['a rack', { available: [12, 20, 23.4, 30] }, 23.4, 23.4],
    ['a bar and plates', { bar: 10, plates: [{ mass: 1.25 }, { mass: 5 }] }, 22.5, 22.5],
    ['a maximum in pounds', { oneRepMax: { load: 100, unit: 'lb' }, unit: 'lb', step: 5 }, 25, 25],
    ['the other limb', { step: 2, maximumOf: 'other-limb' }, 22, 22],
  ] as const)('lifts the load of the proposal by a percentage of the maximum: %s', (_, exercise, load, percent) => {
    const plan = planOf(exercise as object);
    const proposal = proposalFor(plan);
    expect(proposal.items[0]!.load!.to).toBe(load);
    const { request } = nextRequest({ plan, proposal });
    expect(request.exercises[0]!.percentOneRepMax).toBe(percent);
    expect(planSession(request).items[0]!.load!.value).toBe(load);
  });

  it('takes the next percentage up where the load is rounded down', () => {
    // A third of 120 kg is 33.33… %, and 33.3 % of it is 39.96 kg, which a step of 5 brings down to 35 kg.
    const plan = planOf({ oneRepMax: { load: 120 }, percentOneRepMax: 30, step: 5, rounding: 'down' });
    const { request } = nextRequest({ plan, proposal: proposalFor(plan) });
    expect(request.exercises[0]!.percentOneRepMax).toBe(33.4);
    expect(planSession(request).items[0]!.load!.value).toBe(40);
  });

  it('states the load where no percentage of the maximum comes to it', () => {
    const plan = planOf({ step: 2.5 });
    // The practitioner’s own number, which no step reaches.
    const proposal = withItem(proposalFor(plan), { load: { from: 20, to: 21.3, unit: 'kg' } });
    const { request } = nextRequest({ plan, proposal });
    const { oneRepMax, percentOneRepMax, step, load, unit } = request.exercises[0]!;
    expect([oneRepMax, percentOneRepMax, step, load, unit]).toEqual([undefined, undefined, 2.5, 21.3, 'kg']);
    expect(planSession(request).items[0]!.load!.value).toBe(21.3);
  });

  it('raises a load of one’s own', () => {
    const plan = planOf({ oneRepMax: undefined, percentOneRepMax: undefined, load: 20 });
    const proposal = withItem(proposalFor(plan), { action: 'raise-load', load: { from: 20, to: 22, unit: 'kg' } });
    expect(nextRequest({ plan, proposal }).request.exercises[0]!.load).toBe(22);
  });

  it('raises the pressure and leaves the load', () => {
    // 60 % of the 200 mmHg that were measured.
    const plan = planOf({ step: 2.5 });
    const next = planned(plan, proposalFor(plan, { nextPercentLop: 60 }));
    expect([next.items[0]!.target!.value, next.items[0]!.load!.value]).toEqual([120, 20]);
  });

  it('changes nothing where everything is to be repeated, and says what it carried over', () => {
    const plan = planOf({ step: 2.5 });
    const proposal = nextSession({ plan, records: [recordOf(plan, [30, 12, 10, 9])], rule: 'all-repetitions' });
    const { request, assumptions } = nextRequest({ plan, proposal });
    expect(request).toEqual(plan.request);
    expect(assumptions.map(({ code }) => code)).toEqual(['readings-carried']);
  });

  it('lowers the pressure of both sides as soon as one asks for it', () => {
    const limbs = bothSides({ limb: 'leg', cuffWidthCm: 10, percentLop: 50, measured: measuredAt(200) });
    const plan = planOf({ step: 2.5 }, { limbs });
    const pain = [{ site: 'under-cuff', limb: 'leg', side: 'left', during: 8 }] as const;
    const proposal = proposalFor(plan, {}, { pain });
    expect(proposal.items.map(({ percentLop }) => percentLop)).toEqual([
      { from: 50, to: 40 },
      { from: 50, to: 50 },
    ]);
    expect(planned(plan, proposal).items.map(({ target }) => target!.value)).toEqual([80, 80]);
    const { assumptions } = nextRequest({ plan, proposal });
    expect(assumptions.map(({ code }) => code)).toContain('lower-of-two-sides');
  });

  it('backs off by the load of the proposal', () => {
    const plan = planOf({ step: 2.5 });
    const proposal = proposalFor(plan, {}, jointPain(1, 1, 3));
    expect(proposal.items[0]!.action).toBe('back-off');
    expect(planned(plan, proposal).items[0]!.load!.value).toBe(17.5);
  });

  it('takes the lower of two proposals where both sides share an exercise', () => {
    const limb = {
      limb: 'leg',
      cuffWidthCm: 10,
      percentLop: 50,
      measured: { valueMmHg: 200, method: 'doppler' },
    } as const;
    const plan = planOf(
      { step: 2.5 },
      {
        limbs: [
          { ...limb, side: 'left' },
          { ...limb, side: 'right' },
        ],
      },
    );
    // Only the left side is on record: the right one repeats, and so the shared exercise does.
    const proposed = nextSession({ plan, records: [recordOf(plan, AS_PLANNED)], rule: 'all-repetitions' });
    expect(proposed.items.map(({ action }) => action)).toEqual(['repeat', 'repeat']);
    // Where the practitioner raises the left side all the same, the lower one is taken.
    const [left, right] = proposed.items;
    const both = {
      ...proposed,
      items: [{ ...left!, action: 'raise-load' as const, load: { ...left!.load!, to: 22.5 } }, right!],
    };
    const { request, assumptions } = nextRequest({ plan, proposal: both });
    expect(request).toEqual(plan.request);
    expect(assumptions.map(({ code }) => code)).toEqual(['readings-carried', 'lower-of-two-sides']);
    const pressed = nextSession({
      plan,
      records: [recordOf(plan, AS_PLANNED)],
      rule: 'all-repetitions',
      nextPercentLop: 60,
    });
    expect(nextRequest({ plan, proposal: pressed }).request).toEqual(plan.request);
    const agreed = { ...pressed, items: [pressed.items[0]!, { ...pressed.items[0]!, side: 'right' as const }] };
    expect(nextRequest({ plan, proposal: agreed }).request.exercises[0]!.percentLop).toBe(60);
  });

  it('refuses to go on after a sign to stop, and what is left open', () => {
    const plan = planOf({ step: 2.5 });
    const stopped = proposalFor(plan, {}, { symptoms: ['symptom-chest-pain'] });
    expect(issues(plan, stopped)).toEqual(['proposal.stops wrong-relation']);
    expect(() => nextRequest({ plan, proposal: stopped })).toThrow(/lifted by a decision of a practitioner/);
    const noStep = planOf({ oneRepMax: undefined, percentOneRepMax: undefined, load: 20 });
    expect(issues(noStep, proposalFor(noStep))).toEqual(['proposal.items.0.load.to missing']);
    // One set, and nothing to take off it.
    const unloaded = planOf({ oneRepMax: undefined, percentOneRepMax: undefined, unloaded: true, scheme: '30' });
    const painful = nextSession({
      plan: unloaded,
      records: [recordOf(unloaded, [30], jointPain(1, 1, 3))],
      rule: 'all-repetitions',
    });
    expect(painful.items[0]!.reasons.at(-1)!.code).toBe('back-off-by-hand');
    expect(issues(unloaded, painful)).toEqual(['proposal.items.0.action wrong-relation']);
  });

  it('refuses a proposal for another plan, and what is no proposal', () => {
    const plan = planOf({ step: 2.5 });
    const proposal = proposalFor(plan);
    const items = ['proposal.items wrong-relation'];
    expect(issues(planOf({ step: 2.5, name: 'squat' }), proposal)).toEqual(items);
    expect(issues(planOf({ step: 2.5, percentOneRepMax: 30 }), proposal)).toEqual(items);
    expect(issues(plan, { ...proposal, items: [] })).toEqual(items);
    expect(() => nextRequest({ plan, proposal: plan as never })).toThrow(InputError);
    expect(() => nextRequest({ plan: proposal as never, proposal })).toThrow(/plan\.document/);
  });

  it('reads a proposal back that was stored', () => {
    const proposal = proposalFor(planOf({ step: 2.5 }));
    expect(readDocument(JSON.parse(JSON.stringify(proposal)) as object)).toEqual(proposal);
  });
});
