import { describe, expect, it } from 'vitest';
import { attempt } from '../../src/index.js';
import type { InputIssue } from '../../src/answer/issues.js';
import { ownDocument } from '../../src/answer/own.js';
import { textByCode } from '../../src/plan/catalogue.js';
import { finder } from '../../src/plan/consistency.js';
import { compact } from '../../src/plan/expanded.js';
import {
  asItIs,
  documentOf,
  expandDocument,
  expandedInto,
  expandedOf,
  kinds,
  printable,
  withAnswers,
} from '../../src/plan/read-document.js';

type Json = Readonly<Record<string, unknown>>;
type Way = readonly [from: number, to?: number];

const shown = ({ path, code, expected, received }: InputIssue): string =>
  `${path.join('.')} ${code}: ${expected}, not ${received}`;
const wrong = (call: () => unknown): string[] => {
  const result = attempt(call, undefined);
  return result.ok ? [] : result.issues.map(shown);
};

const way = (change: Way | undefined) =>
  change && { from: change[0], ...(change[1] !== undefined && { to: change[1] }) };
/** An item of a proposal by the ways its numbers go. */
const item = (load?: Way, cuffMmHg?: Way, percentLop?: Way, more: Json = {}): Json => ({
  limb: 'leg',
  side: 'left',
  action: 'repeat',
  ...(load && { load: way(load) }),
  ...(cuffMmHg && { cuffMmHg: way(cuffMmHg) }),
  ...(percentLop && { percentLop: way(percentLop) }),
  ...more,
});
/** What does not hold of a proposal. */
function checked(items: readonly Json[], stops: readonly Json[] = []): string[] {
  const issues: InputIssue[] = [];
  kinds.proposal.check!({ items, stops } as never, finder(issues));
  return issues.map((one) => shown(one).replace(' changed-document', ''));
}

describe('a cuff pressure of a proposal', () => {
  const notRaised = (most: number, to: number) =>
    `items.0.cuffMmHg.to: at most ${most}, since its percentage is not raised, not ${to}`;
  const raised = (least: number, to: number) =>
    `items.0.cuffMmHg.to: at least ${least}, since its percentage is raised, not ${to}`;
  it.each([
    ['that stays open', [100], [50, 60], []],
    ['and percentage that stay', [100, 100], [50, 50], []],
    ['that stays with its percentage left open', [100, 100], [50], []],
    ['that goes up with its percentage', [100, 120], [50, 60], []],
    ['that goes down with its percentage', [100, 80], [50, 40], []],
    ['that goes down alone', [100, 80], [50, 50], []],
    ['that goes down with its percentage left open', [100, 80], [50], []],
    ['that stays as its percentage goes up', [100, 100], [50, 60], []],
    ['that stays as its percentage goes down', [100, 100], [50, 40], []],
    ['that goes up alone', [100, 120], [50, 50], [notRaised(100, 120)]],
    ['that goes up far and alone', [100, 200], [50, 50], [notRaised(100, 200)]],
    ['that goes up with its percentage left open', [100, 120], [50], [notRaised(100, 120)]],
    ['that goes up as its percentage goes down', [100, 120], [50, 40], [notRaised(100, 120)]],
    ['that goes down as its percentage goes up', [100, 80], [50, 60], [raised(100, 80)]],
    // The old one is rounded down by less than 50 mmHg, the widest step of a gauge: (100 + 50) × 60 / 50 = 180.
    ['that goes up as far as its percentage may take it', [100, 180], [50, 60], []],
    [
      'that goes up further than its percentage',
      [100, 181],
      [50, 60],
      ['items.0.cuffMmHg.to: at most 180, by its percentage, not 181'],
    ],
    ['without a percentage', [100, 300], undefined, []],
    // The highest cuff pressure found in a training trial.
    ['above 300 mmHg', [280, 301], undefined, ['items.0.cuffMmHg.to: at most 300 mmHg, not 301']],
    ['above 300 mmHg, with its percentage', [280, 301], [50, 60], ['items.0.cuffMmHg.to: at most 300 mmHg, not 301']],
    ['that goes down to one above 300 mmHg', [350, 320], [50, 40], []],
    ['that stays above 300 mmHg', [350, 350], undefined, []],
  ] as readonly (readonly [string, Way, Way | undefined, readonly string[]])[])('%s', (_, cuff, percent, expected) => {
    expect(checked([item(undefined, cuff, percent)])).toEqual(expected);
  });
});

describe('a load of a proposal', () => {
  const held = (index: number, from: number, to: number) =>
    `items.${index}.load.to: at most ${from}, since the cuff pressure of this limb is raised, not ${to}`;
  const up: Way = [100, 120];
  const percentUp: Way = [50, 60];
  const right = { side: 'right' };

  it.each([
    ['goes up alone', [item([20, 22.5], [100, 100], [50, 50])], []],
    ['goes up as the pressure goes down', [item([20, 22.5], [100, 80], [50, 40])], []],
    ['stays as the pressure goes up', [item([20, 20], up, percentUp)], []],
    ['goes down as the pressure goes up', [item([20, 17.5], up, percentUp)], []],
    ['is left open as the pressure goes up', [item([20], up, percentUp)], []],
    ['goes up with the pressure', [item([20, 22.5], up, percentUp)], [held(0, 20, 22.5)]],
    [
      'goes up with a percentage whose pressure is left open',
      [item([20, 22.5], [100], percentUp)],
      [held(0, 20, 22.5)],
    ],
    ['goes up with a pressure that has no percentage', [item([20, 22.5], up)], [held(0, 20, 22.5)]],
    [
      'goes up on a limb whose pressure goes up elsewhere',
      [item([20, 22.5]), item([20, 20], up, percentUp)],
      [held(0, 20, 22.5)],
    ],
    ['goes up on the other side', [item([20, 22.5]), item([20, 20], up, percentUp, right)], []],
    [
      'goes up on another limb',
      [item([20, 22.5], undefined, undefined, { limb: 'arm' }), item([20, 20], up, percentUp)],
      [],
    ],
    [
      'goes up after one whose pressure goes up',
      [item(undefined, up, percentUp), item([30, 32.5])],
      [held(1, 30, 32.5)],
    ],
  ] as const)('%s', (_, items, expected) => {
    expect(checked(items)).toEqual(expected);
  });
});

describe('a proposal while a stop is in force', () => {
  const stop = { code: 'symptom-chest-pain', text: 'chest pain' };
  const lifted = { ...stop, lifted: { stop: stop.code, by: 'physician', on: '2026-03-02', why: 'seen' } };
  const stopped = { action: 'stop' };

  it('stops in every item', () => {
    expect(checked([item([20])], [])).toEqual([]);
    expect(checked([item([20])], [lifted])).toEqual([]);
    expect(checked([item([20], undefined, undefined, stopped)], [stop])).toEqual([]);
    const expected = 'action: stop while a stop is in force, not "repeat"';
    expect(
      checked(
        [item([20]), item([20], undefined, undefined, stopped), item()],
        [lifted, { ...stop, since: '2026-03-01' }],
      ),
    ).toEqual([`items.0.${expected}`, `items.2.${expected}`]);
  });

  it('gives no number to go to', () => {
    expect(checked([item([20], [100], [50], stopped)], [stop])).toEqual([]);
    expect(checked([item([20, 20], [100, 100], [50, 50], stopped)], [stop])).toEqual([
      'items.0.load.to: left out where the action is stop, not 20',
      'items.0.cuffMmHg.to: left out where the action is stop, not 100',
      'items.0.percentLop.to: left out where the action is stop, not 50',
    ]);
    // Also where the stop itself was taken out.
    expect(checked([item([20, 20], undefined, undefined, stopped)])).toHaveLength(1);
  });
});

/** A plan that the library made, and what it was made of. */
function ownPlan() {
  const whole = { document: 'plan', items: [] };
  return { whole, document: ownDocument(compact(whole as never, textByCode) as object) as Json };
}

describe('a document that is read', () => {
  it('is one of those that may stand there', () => {
    const { whole, document } = ownPlan();
    expect(documentOf(['plan'], document)).toBe(document);
    expect(expandedOf(['plan', 'record'], document)).toBe(whole);
    expect(wrong(() => documentOf(['record', 'proposal'], document))).toEqual([
      `document not-one-of: one of 'record', 'proposal', not "plan"`,
    ]);
    expect(wrong(() => expandedOf(['record'], document, ['records', 3]))).toEqual([
      `records.3.document not-one-of: 'record', not "plan"`,
    ]);
    expect(wrong(() => documentOf(['plan'], {}))).toEqual([`document missing: 'plan', not undefined`]);
  });

  it('is handed out whole, and nobody can change it', () => {
    const { whole, document } = ownPlan();
    expect(expandDocument(document as never)).toBe(whole);
    expect(Object.isFrozen(whole)).toBe(true);
    const proposal = ownDocument({ document: 'proposal' });
    expect(wrong(() => expandDocument(proposal as never))).toEqual([
      `document not-one-of: one of 'plan', 'record', not "proposal"`,
    ]);
    const record = ownDocument({ document: 'record' });
    expect(expandDocument(record as never)).toBe(record);
  });

  it('adds what is wrong to what was found before', () => {
    const { whole, document } = ownPlan();
    const issues: InputIssue[] = [];
    expect(expandedInto(issues, 'plan', document, ['plan'])).toBe(whole);
    expect(issues).toEqual([]);
    expect(expandedInto(issues, 'record', document, ['records', 1])).toBeUndefined();
    expect(issues.map(shown)).toEqual([`records.1.document not-one-of: 'record', not "plan"`]);
  });

  it('needs no other answers where it has none', () => {
    const document = {};
    expect(asItIs(document)).toEqual({ document, expanded: document });
    expect(asItIs(document).expanded).toBe(document);
  });

  it('has the plans and records in it whole', () => {
    const { whole, document } = ownPlan();
    expect(withAnswers(document)).toBe(whole);
    const record = ownDocument(compact({ document: 'record', items: [] } as never, textByCode) as object);
    const answer = { kind: 'one-repetition-maximum', value: 60 };
    const list = withAnswers([document, [document, record], answer, 'text', 7, null]) as readonly unknown[];
    expect(list).toEqual([whole, [whole, { document: 'record', items: [] }], answer, 'text', 7, null]);
    expect(list[0]).toBe(whole);
    expect(list[2]).toBe(answer);
    const proposal = { document: 'proposal', plan: document };
    expect(withAnswers(proposal)).toBe(proposal);
  });
});

describe('what is to be printed', () => {
  const answer = (more: Json = {}): Json => ({
    kind: 'occlusion-pressure',
    value: 172,
    unit: 'mm[Hg]',
    inputs: {},
    cautions: [],
    ...more,
  });
  const wrongToPrint = (given: Json): string[] => wrong(() => printable(given));

  it('is a document as it is read back', () => {
    const { whole, document } = ownPlan();
    expect(printable(document)).toBe(whole);
    expect(wrongToPrint({ document: 'plan' })).not.toEqual([]);
  });

  it('is an answer or a comparison that holds in itself', () => {
    const right = answer({ lower: 160, upper: 184 });
    expect(printable(right)).toBe(right);
    const compared = { document: 'comparison', stops: [], cautions: [], from: right };
    expect(printable(compared)).toBe(compared);
    expect(wrongToPrint(answer({ lower: 180, upper: 184 }))).toEqual(['lower changed-document: at most 172, not 180']);
    expect(wrongToPrint({ ...compared, from: answer({ lower: 180, upper: 184 }) })).toEqual([
      'from.lower changed-document: at most 172, not 180',
    ]);
  });

  it('has each caution to stop among its stops', () => {
    const cautions = [
      { severity: 'stop', code: 'cuff-pressure-stop', values: { value: 320, limit: 300 }, text: 'stop' },
    ];
    expect(wrongToPrint({ document: 'review', cautions, stops: [] })).toEqual([
      'cautions.0.severity changed-document: other than stop, or one of the stops, not "stop"',
    ]);
    expect(wrongToPrint({ document: 'review', cautions, stops: [{ code: 'cuff-pressure-stop' }] })).toEqual([]);
  });

  it('has the words of the catalogue, and of an own equation its own', () => {
    const cautions = () => [{ severity: 'note', code: 'own-remark', text: 'own words' }];
    expect(printable(answer({ cautions: cautions() }))).toMatchObject({ cautions: [{ text: 'own words' }] });
    expect(printable({ document: 'review', cautions: cautions(), stops: [] } as never)).toMatchObject({
      cautions: [{ text: textByCode('code-unknown') }],
    });
  });
});
