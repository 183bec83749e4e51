import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { attempt, InputError } from '../../src/index.js';
import { explain, messages } from '../../src/text/index.js';
import {
  checkDay,
  compareSessions,
  compareWeeks,
  expandDocument,
  lightenExercise,
  nextSession,
  readDocument,
  reviewPlan,
  screen,
  stopsInForce,
  type Plan,
  type Proposal,
  type SessionRecord,
} from '../../src/plan/index.js';
import { planOf, recordOf } from '../support/plans.js';
import { issuesOf, refusedAt } from '../support/refused.js';
import { edited, stored, type Path } from '../support/stored.js';

// High blood pressure, so that the plan has a caution of its own; a ceiling, a gauge step, a tested maximum.
const plan = stored(planOf({ step: 2.5 }, { systolicMmHg: 150 }, { gaugeStepMmHg: 5 }));
const record = stored(
  recordOf(plan, [30, 15, 15, 12], { symptoms: ['symptom-numbness-stays'], sessionRpe: 6, sessionS: 1200 }),
);
const proposal = stored(
  nextSession({ plan, records: [recordOf(plan, [30, 15, 15, 17])], rule: 'two-for-two', date: '2026-03-05' }),
);

const issuesIn = (document: object) => issuesOf(readDocument, document);
const changedAt = (document: object) => refusedAt(readDocument, document);

const leaves = (part: unknown, path: Path = []): [Path, unknown][] =>
  typeof part === 'object' && part !== null
    ? Object.entries(part).flatMap(([name, item]) => leaves(item, [...path, Array.isArray(part) ? Number(name) : name]))
    : [[path, part]];

describe('a document that nobody changed', () => {
  it.each(Object.entries({ plan, record, proposal }))('is read back as it was, once and again: %s', (_, document) => {
    expect(readDocument(document)).toEqual(document);
    expect(readDocument(stored(readDocument(document)))).toEqual(document);
  });

  it('may come from a database that sorts fields', () => {
    const sorted = (part: unknown): unknown =>
      Array.isArray(part)
        ? part.map(sorted)
        : typeof part === 'object' && part !== null
          ? Object.fromEntries(
              Object.entries(part)
                .sort(([a], [b]) => (a < b ? -1 : 1))
                .map(([name, item]) => [name, sorted(item)]),
            )
          : part;
    for (const document of [plan, record, proposal]) {
      expect(readDocument(sorted(document) as object)).toEqual(document);
    }
  });

  it('keeps what an app wrote beside it', () => {
    const kept = edited(edited(plan, ['app'], { id: 7 }), ['items', 0, 'colour'], 'blue');
    expect(readDocument(kept)).toEqual(kept);
    // What reads like a field that is not there is none of an app’s own: it would be lost in silence.
    const slips: [object, (string | number)[], string][] = [
      [record, ['note'], 'note'],
      [record, ['items', 0, 'done', 'insted'], 'items.0.done.insted'],
      [plan, ['items', 0, 'warmup'], 'items.0.warmup'],
    ];
    for (const [document, path, at] of slips)
      expect(issuesIn(edited(document, path, [1]))).toEqual([`${at} unknown-field`]);
    const later = edited(edited(record, ['note'], [1]), ['libraryVersion'], '0.0.1');
    expect(readDocument(later)).toMatchObject({ note: [1] });
    expect(issuesIn(edited(plan, ['request', 'ceilingMmhg'], 150))).toEqual(['request.ceilingMmhg unknown-field']);
  });
});

const screening = stored(
  screen({ date: '2026-03-01', ageYears: 66, systolicMmHg: 150, answers: { pregnancy: 'yes', diabetes: 'no' } }),
);
const dayCheck = stored(checkDay({ date: '2026-03-02', painNow: 5, answers: { 'today-illness': 'yes' } }));

describe('a field of a record that was edited', () => {
  const indexOf = (kind: string): number => record.answers.findIndex((answer) => answer.kind === kind);
  const [lop, cuff, maximum] = (['occlusion-pressure', 'cuff-pressure', 'one-repetition-maximum'] as const).map(
    indexOf,
  );
  it.each<[Path, unknown, string]>([
    [['answers', lop!, 'kind'], 'occlusion-presure', `answers.${lop}.kind`],
    [['answers', lop!, 'unit'], 'kPa', `answers.${lop}.unit`],
    [['answers', cuff!, 'kind'], 'occlusion-pressure', `answers.${cuff}.kind`],
    [['answers', cuff!, 'inputs', 'percentLop'], '50', `answers.${cuff}.inputs.percentLop`],
    [['answers', cuff!, 'inputs', 'occlusion'], undefined, `answers.${cuff}.inputs.occlusion`],
    [['answers', cuff!, 'reached', 'percentLop'], '50', `answers.${cuff}.reached.percentLop`],
    [['answers', maximum!, 'lower'], undefined, `answers.${maximum}.lower`],
    [['items', 0, 'done', 'sets', 1], { restS: 30 }, 'items.0.done.sets.1.repetitions'],
    [['items', 0, 'done', 'sets', 1, 'repetitions'], 1.5, 'items.0.done.sets.1.repetitions'],
  ])('is named: %j', (path, value, named) => {
    expect(changedAt(edited(record, path, value))).toContain(named);
  });

  it('says how long a list was and must be, and what is wrong with a code', () => {
    const messagesOf = (document: object) => {
      const result = attempt(readDocument, document);
      return result.ok ? [] : result.issues.map(({ message }) => message).join();
    };
    const { cautions } = record;
    expect(messagesOf(edited(record, ['cautions'], [...cautions, ...cautions]))).toMatch(
      `cautions must be a list of ${cautions.length}, as the rest of the document has it; received a list of ${2 * cautions.length}.`,
    );
    const index = plan.cautions.findIndex(({ values }) => values !== undefined);
    expect(messagesOf(edited(plan, ['cautions', index, 'values'], undefined))).toMatch(
      `cautions[${index}].code must be a code of this version with all its values`,
    );
  });
});

describe('a screening and a check of the day', () => {
  it.each(Object.entries({ screening, dayCheck }))('are read back as they were, and printed: %s', (_, document) => {
    expect(readDocument(document)).toEqual(document);
    expect(readDocument(edited(document, ['app'], { id: 7 }))).toEqual({ ...document, app: { id: 7 } });
    expect(explain(document)).toContain('refer');
  });

  it.each(Object.entries({ screening, dayCheck }))('are refused where they were changed: %s', (_, document) => {
    for (const path of [['findings'], ['unanswered'], ['disclaimers']]) {
      const emptied = edited(document, path, []);
      expect(changedAt(emptied)).toEqual(path);
      expect(() => explain(emptied)).toThrow(InputError);
    }
    expect(changedAt(edited(document, ['outcome'], 'nothing-found'))).toEqual(['outcome']);
    expect(changedAt(edited(document, ['complete'], true))).toEqual(['complete']);
    expect(changedAt(edited(document, ['findings', 0, 'severity'], 'note'))).toEqual(['findings.0.severity']);
    expect(changedAt(edited(document, ['request', 'answers'], {}))[0]).toMatch(/^(findings|outcome)/);
    const forged = edited(document, ['findings', 0, 'text'], 'CLEARED');
    expect(readDocument(forged)).toEqual(document);
    expect(explain(forged)).toBe(explain(document));
  });

  it('of another version are worked out again from their answers', () => {
    const older = edited(screening, ['libraryVersion'], '0.0.9');
    expect(readDocument(older)).toEqual(older);
    expect(readDocument(edited(older, ['findings'], []))).toEqual(older);
    expect(changedAt(edited(older, ['outcome'], 'nothing-found'))).toEqual(['outcome']);
  });
});

describe('what explain prints', () => {
  const stopped = stored(planOf({ step: 2.5 }, { systolicMmHg: 185, date: '2026-03-02' }));
  const decision = { stop: 'blood-pressure-refer', by: 'physician', on: '2026-03-03', why: 'seen' };

  it.each([
    ['a plan without its stops', edited(stopped, ['stops'], [])],
    ['a plan whose stop was lifted by hand', edited(stopped, ['stops', 0, 'lifted'], decision)],
    ['a plan whose clock was changed', edited(plan, ['session', 'timeline', 'events', 0, 'pressureMmHg'], 700)],
    ['a plan that is cut short', { document: 'plan', schemaVersion: 1 }],
    ['a record without its stops', edited(record, ['stops'], [])],
    ['a proposal with a pressure above those of trials', edited(proposal, ['items', 0, 'cuffMmHg', 'to'], 700)],
    ['a proposal that opens the cuff and raises its share', edited(proposal, ['items', 0, 'cuffMmHg', 'to'], 110)],
  ])('is not %s', (_, document) => {
    const read = attempt(readDocument, document);
    const printed = attempt(explain, document as Plan);
    expect(printed.ok).toBe(false);
    expect(printed.ok || read.ok ? [] : printed.issues).toEqual(read.ok ? [] : read.issues);
  });

  it('is of an answer the catalogue’s words, and no number that does not fit', () => {
    const { target } = expandDocument(plan).items[0]!;
    const answer = edited(target!, ['cautions'], [{ severity: 'note', code: 'percent-not-flow', text: 'CLEARED' }]);
    expect(explain(answer)).toContain(messages['percent-not-flow']);
    expect(explain(answer)).not.toContain('CLEARED');
    expect(() => explain(edited(target!, ['value'], 700))).toThrow(/reached\.percentLop must be/);
  });

  it('is of a review what its figures say', () => {
    const review = stored(reviewPlan(planOf({ restS: 90 })));
    const forged = edited(edited(review, ['findings', 0, 'text'], 'CLEARED'), ['guideline', 'name'], 'CLEARED');
    expect(review.findings).not.toEqual([]);
    expect(explain(forged)).toBe(explain(review));
    // A stop that is found is one of its stops.
    expect(() => explain(edited(stored(reviewPlan(stopped)), ['stops'], []))).toThrow(
      /^findings\[0\]\.severity must be/,
    );
  });

  it('is of a proposal the share of the load that stands in it', () => {
    expect(proposal.items[0]!.load!.from).toBe(20);
    expect(explain(edited(proposal, ['items', 0, 'load', 'to'], 30))).toContain(
      '20 kg (20 % of 1RM) → 30 kg (30 % of 1RM)',
    );
  });

  it('is one line of a name: a second could pass for one of the library', () => {
    for (const name of ['press\nCLEARED', 'press\u2028CLEARED', ' ', '']) {
      expect(() => planOf({ name })).toThrow(/^exercises\[0\]\.name must be one line of 1 to 120 characters/);
    }
    expect(() => planOf({}, { label: 'Athlete\nCLEARED' })).toThrow(/^label must be one line/);
  });
});

/** Where the cuff pressure of a plan or a record, and the occlusion pressure that it is of, are in it. */
const target = ['answers', 1] as const;
const occlusion = ['answers', 0] as const;

describe('a plan that was changed', () => {
  it('is refused where a pressure is not the percentage that it says', () => {
    expect(issuesIn(edited(plan, [...target, 'value'], 700))).toContain(
      'answers.1.reached.percentLop changed-document',
    );
    expect(changedAt(edited(plan, [...target, 'reached', 'percentLop'], 48))).toContain('answers.1.reached.percentLop');
  });

  it('is refused where a number is not that of its answer', () => {
    expect(plan.items[0]!.target).toMatchObject({ value: 100, ref: '/answers/1' });
    const at = ['items', 0, 'target'];
    expect(changedAt(edited(plan, [...at, 'value'], 90))).toContain('items.0.target.value');
    expect(changedAt(edited(plan, [...at, 'unit'], 'kg'))).toContain('items.0.target.unit');
    expect(changedAt(edited(plan, [...at, 'lower'], undefined))).toContain('items.0.target.lower');
    for (const ref of ['/answers/0', '/answers/9', '/answers/01', '/request', 'answers/1', ''])
      expect(changedAt(edited(plan, [...at, 'ref'], ref)).join(' '), ref).toContain('items.0.target.');
    // No answer is worked out from itself, or from one that comes after it.
    for (const ref of ['/answers/1', '/answers/3', '/answers/99']) {
      const turned = edited(plan, [...target, 'inputs', 'occlusion', 'ref'], ref);
      expect(changedAt(turned).join(' '), ref).toContain('answers.1.');
      expect(changedAt(edited(turned, ['libraryVersion'], '0.0.9')).length, ref).toBeGreaterThan(0);
    }
  });

  it('is not printed where it does not fit itself, and prints no words of its own', () => {
    expect(() => explain(edited(plan, [...target, 'value'], 700))).toThrow(/^items\[0\]\.target\.value must be/);
    expect(() => explain(edited(plan, ['session', 'timeline', 'events', 1, 'atS'], -10))).toThrow(/atS must be/);
    const forged = plan.cautions.reduce((part, _, index) => edited(part, ['cautions', index, 'text'], 'CLEARED'), plan);
    expect(explain(forged)).toBe(explain(plan));
  });

  it('is refused where everything around the pressure was changed with it', () => {
    const percents = { percentLop: 140, lower: 140, upper: 140, occlusionChancePercent: 0 };
    const forged = [
      [[...target, 'value'], 280],
      [[...target, 'lower'], undefined],
      [[...target, 'upper'], undefined],
      [[...target, 'rounding', 'from'], 280],
      [[...target, 'reached'], percents],
      [[...occlusion, 'value'], 560],
      [[...occlusion, 'lower'], undefined],
      [[...occlusion, 'upper'], undefined],
      [[...target, 'reached', 'percentLop'], 50],
      [['items', 0, 'target', 'value'], 280],
      [['items', 0, 'target', 'lower'], undefined],
      [['items', 0, 'target', 'upper'], undefined],
    ] as const;
    const document = forged.reduce((part, [path, to]) => edited(part, path, to), plan);
    expect(changedAt(document)).toContain('items.0.target.value');
  });

  it('is refused where its request was changed and the rest was not', () => {
    expect(changedAt(edited(plan, ['request', 'limbs', 0, 'percentLop'], 60))).toContain('items.0.target.value');
  });

  it('says what its sentences are, whatever was written under their codes', () => {
    const forged = plan.cautions.reduce((part, _, index) => edited(part, ['cautions', index, 'text'], 'CLEARED'), plan);
    expect(readDocument(forged)).toEqual(plan);
    expect(explain(edited(plan, ['disclaimers', 0, 'text'], 'CLEARED'))).toBe(explain(plan));
  });

  it.each(['cautions', 'stops', 'disclaimers', 'stopCriteria', 'limbs', 'assumptions'] as const)(
    'is refused where %s were emptied or added to',
    (name) => {
      if (plan[name].length > 0) expect(changedAt(edited(plan, [name], []))).toContain(name);
      const more = [...plan[name], plan[name][0] ?? { code: 'not-cleared', text: 'CLEARED' }];
      expect(changedAt(edited(plan, [name], more))[0]).toMatch(new RegExp(`^${name}`));
    },
  );

  it('is refused where a sentence has a code that there is not', () => {
    const caution = { severity: 'note', code: 'cleared', text: 'CLEARED' };
    expect(changedAt(edited(plan, ['cautions'], [...plan.cautions, caution]))).toContain(
      `cautions.${plan.cautions.length}.code`,
    );
  });

  it('is refused where an interval does not hold its value, or a time is below 0 or out of order', () => {
    const { value, lower, upper } = plan.answers[0]!;
    expect(lower).toBeLessThan(value);
    for (const document of [
      edited(plan, [...occlusion, 'lower'], upper! + 1),
      edited(plan, [...occlusion, 'upper'], lower! - 1),
    ]) {
      expect(issuesIn(document).filter((issue) => issue.endsWith(' changed-document'))).not.toEqual([]);
    }
    const { events } = plan.session.timeline;
    expect(changedAt(edited(plan, ['session', 'timeline', 'events', 1, 'atS'], -10))).toContain(
      'session.timeline.events.1.atS',
    );
    expect(changedAt(edited(plan, ['session', 'timeline', 'events', events.length - 1, 'atS'], 0))).toContain(
      `session.timeline.events.${events.length - 1}.atS`,
    );
    expect(changedAt(edited(plan, ['items', 0, 'totals', 'restrictionTime', 'value'], -60))).toContain(
      'items.0.totals.restrictionTime.value',
    );
  });

  it('is refused where a field has another shape', () => {
    expect(issuesIn(edited(plan, ['session', 'totals', 'peakLoad'], 'heavy'))).toEqual([
      'session.totals.peakLoad wrong-type',
    ]);
    expect(issuesIn(edited(plan, ['libraryVersion'], undefined))).toEqual(['libraryVersion missing']);
  });

  it('is refused where any number of it is another, or any word that is not a sentence', () => {
    const places = leaves(plan).filter(([path]) => !['schemaVersion', 'libraryVersion'].includes(String(path[0])));
    expect(places.length).toBeGreaterThan(250);
    fc.assert(
      fc.property(fc.constantFrom(...places), ([path, value]) => {
        const changed =
          typeof value === 'number' ? value * 1.001 + 0.001 : typeof value === 'string' ? `${value}x` : !value;
        const result = attempt(readDocument, edited(plan, path, changed));
        // A sentence is written anew; the name of an exercise is the user’s, and stands in the request too.
        if (path.at(-1) === 'text') expect(result).toEqual({ ok: true, value: plan });
        else expect(result.ok, path.join('.')).toBe(false);
      }),
      { numRuns: 300 },
    );
  });
});

describe('a record that was changed', () => {
  it('is refused where its totals are not those of what was done', () => {
    expect(changedAt(edited(record, ['items', 0, 'done', 'sets', 3, 'repetitions'], 15))).toContain(
      'items.0.totals.repetitions.value',
    );
    expect(changedAt(edited(record, ['items', 0, 'totals', 'volumeLoad', 'value'], 5000))).toContain(
      'items.0.totals.volumeLoad.value',
    );
    expect(changedAt(edited(record, ['limbs', 0, 'restrictionTime', 'value'], 1))).toContain(
      'limbs.0.restrictionTime.value',
    );
    expect(changedAt(edited(record, ['sessionRpe'], 2))).toContain('sessionLoad.value');
  });

  it('is refused where the stop or the caution of a reported symptom was taken out', () => {
    expect(record.stops.length).toBeGreaterThan(0);
    expect(changedAt(edited(record, ['stops'], []))).toEqual(['stops']);
    expect(changedAt(edited(record, ['cautions'], []))).toContain('cautions');
  });

  it('is refused where its pressure is not the percentage that it says', () => {
    expect(changedAt(edited(record, ['items', 0, 'target', 'value'], 700))).toContain('items.0.target.value');
    expect(changedAt(edited(record, [...target, 'value'], 700))).toContain('answers.1.reached.percentLop');
  });
});

describe('a proposal that was changed', () => {
  const [item] = proposal.items;

  it('may have the practitioner’s own numbers', () => {
    expect(item!.load).toBeDefined();
    const own = edited(proposal, ['items', 0, 'load', 'to'], item!.load!.from);
    expect(readDocument(own)).toEqual(own);
  });

  it('never raises load and pressure of a limb at once', () => {
    const pressed = edited(proposal, ['items', 0, 'cuffMmHg', 'to'], item!.cuffMmHg!.from + 10);
    expect(changedAt(edited(pressed, ['items', 0, 'load', 'to'], item!.load!.from + 5))).toContain('items.0.load.to');
  });

  it('never goes on while a stop is in force', () => {
    const stopped = nextSession({ plan, records: [record], rule: 'two-for-two', date: '2026-03-05' });
    expect(stopped.items.map(({ action }) => action)).toEqual(['stop']);
    expect(changedAt(edited(stopped, ['items', 0, 'action'], 'repeat'))).toContain('items.0.action');
    expect(changedAt(edited(stopped, ['items', 0, 'load', 'to'], 20))).toContain('items.0.load.to');
  });

  it('has the words of its rule', () => {
    expect(changedAt(edited(proposal, ['rule', 'text'], 'CLEARED'))).toEqual(['rule.text']);
    expect(changedAt(edited(proposal, ['disclaimers'], []))).toEqual(['disclaimers']);
  });
});

describe('a document of another version', () => {
  const older = <T extends Plan | SessionRecord | Proposal>(document: T): T =>
    edited(document, ['libraryVersion'], '0.0.9');
  const unverified = (document: ReturnType<typeof readDocument>): unknown[] =>
    ('cautions' in document ? document.cautions : [])
      .filter(({ code }) => code === 'document-unverified')
      .map(({ values }) => values);

  it('is verified where this version makes the same numbers', () => {
    for (const document of [plan, record]) expect(unverified(readDocument(older(document)))).toEqual([]);
  });

  it('has the stop criteria of this version, and those it had besides', () => {
    const [first, ...rest] = plan.stopCriteria;
    const read = readDocument(edited(older(plan), ['stopCriteria'], [...rest, { code: 'another' }])) as Plan;
    expect(read.stopCriteria.map(({ code }) => code)).toEqual(
      [first, ...rest, { code: 'another' }].map((one) => one!.code),
    );
    expect(unverified(readDocument(edited(older(plan), ['stopCriteria'], rest)))).toEqual([]);
  });

  it('is said to be unverified where it does not, once', () => {
    const path = ['session', 'totals', 'sessionTime', 'value'];
    const other = edited(older(plan), path, plan.session.totals.sessionTime.value + 1);
    const read = readDocument(other);
    expect(unverified(read)).toEqual([{ version: '0.0.9' }]);
    expect(readDocument(stored(read))).toEqual(read);
    expect(explain(read)).toContain('Another version of the library (0.0.9) made this document');
    expect(unverified(readDocument(older(proposal)))).toEqual([{ version: '0.0.9' }]);
  });

  it('keeps its stops, which are derived from its request, and its cautions', () => {
    const request = { systolicMmHg: 185, date: '2026-03-02' };
    const stopped = older(stored(planOf({ step: 2.5 }, request, { percentLop: 80 })));
    const emptied = edited(edited(stopped, ['stops'], []), ['cautions'], []);
    const read = readDocument(emptied) as Plan;
    expect(unverified(read)).toHaveLength(1);
    expect(stopsInForce(read)).toEqual(stopped.stops);
    expect(read.cautions.map(({ code }) => code)).toEqual(
      expect.arrayContaining(stopped.cautions.map(({ code }) => code)),
    );
    expect(readDocument(stored(read))).toEqual(read);
    const page = explain(emptied, { detail: 'brief' });
    expect(page).toMatch(/DO NOT TRAIN/);
    expect(page).not.toMatch(/\d % of LOP/);
    const lifted = { stop: 'blood-pressure-refer', by: 'physician', on: '2026-03-03', why: 'seen' };
    expect(stopsInForce(readDocument(edited(stopped, ['stops', 0, 'lifted'], lifted)) as Plan)).toHaveLength(1);
    // What a stop says is in its answers too.
    const high = older(stored(planOf({}, {}, { percentLop: 100, ceilingMmHg: 200 })));
    const codes = high.stops.map(({ code }) => code);
    expect(codes).not.toEqual([]);
    const other = edited(edited(high, ['stops'], []), ['request', 'limbs', 0, 'percentLop'], 50);
    expect(stopsInForce(readDocument(other) as Plan).map(({ code }) => code)).toEqual(codes);
    // A pressure above those of trials comes with its stop, whatever was written around it.
    const bare = { value: 700, lower: undefined, upper: undefined };
    const { answers } = plan;
    const forged = [
      [['items', 0, 'target'], { ...plan.items[0]!.target!, ...bare }],
      [target, { ...answers[1]!, ...bare, reached: { percentLop: 50 }, rounding: undefined }],
      [occlusion, { ...answers[0]!, value: 1400, lower: 1400, upper: 1400 }],
    ] as const;
    const high700 = forged.reduce((part, [path, to]) => edited(part, path, to), plan);
    expect(changedAt(older(high700))).toEqual(['answers.1.cautions']);
    // A record derives those of what was reported.
    const reported = edited(edited(older(record), ['stops'], []), ['cautions'], []);
    expect(stopsInForce(readDocument(reported) as SessionRecord)).toEqual(record.stops);
  });

  it('is refused where this version cannot make it again', () => {
    expect(changedAt(edited(older(plan), ['request', 'exercises', 0, 'restriction'], 'partial'))).toEqual([
      'request.exercises.0.restPercentLop',
    ]);
  });

  it('says on the page that it was not verified, in brief too', () => {
    const path = ['session', 'totals', 'sessionTime', 'value'];
    const other = edited(older(plan), path, plan.session.totals.sessionTime.value + 1);
    for (const detail of ['full', 'brief'] as const) {
      expect(explain(other, { detail })).toContain('Another version of the library (0.0.9) made this document');
    }
  });

  it('is refused where it does not fit itself', () => {
    expect(changedAt(edited(older(plan), ['items', 0, 'target', 'value'], 700))).toContain('items.0.target.value');
    expect(changedAt(edited(older(plan), [...target, 'value'], 700))).toContain('answers.1.reached.percentLop');
    expect(issuesIn(edited(plan, ['libraryVersion'], 'CLEARED'))).toEqual(['libraryVersion wrong-type']);
  });

  it('does not say what a sentence says whose code this version does not know', () => {
    const caution = { severity: 'note', code: 'of-another-version', text: 'CLEARED' };
    const read = readDocument(edited(older(plan), ['cautions'], [...plan.cautions, caution]));
    expect(unverified(read)).toHaveLength(1);
    expect(JSON.stringify(read)).not.toContain('CLEARED');
  });
});

describe('a page that nothing can be made again from', () => {
  const bad = planOf({}, { systolicMmHg: 185, diastolicMmHg: 112, date: '2026-03-01' });
  const documents = {
    review: reviewPlan(bad),
    weeks: compareWeeks({ weeks: [{ sessions: [{ plan: bad }] }, { sessions: [{ plan: bad }] }] }),
    sessions: compareSessions({ from: bad, to: bad }),
    lighter: lightenExercise({ plan: bad, exercise: 'leg extension', lighterPercent: 20 }),
  };
  const WARNING = /stored, or changed\. We cannot check it/;

  it.each(Object.entries(documents))('says so once it was stored, or emptied of its stops: %s', (_, document) => {
    expect(explain(document)).not.toMatch(WARNING);
    const emptied = { ...stored(document), stops: [], ...('findings' in document && { findings: [] }) };
    for (const copy of [stored(document), emptied]) {
      for (const format of ['text', 'markdown', 'html'] as const) expect(explain(copy, { format })).toMatch(WARNING);
    }
  });
});
