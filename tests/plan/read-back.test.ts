import { describe, expect, it } from 'vitest';
import {
  attempt,
  calibrateOcclusionPressure,
  estimateOcclusionPressure,
  measuredOcclusionPressure,
  targetCuffPressure,
  testedOneRepMax,
  trainingLoad,
} from '../../src/index.js';
import { compareSessions, compareWeeks, readAnswer, readDocument, reviewPlan } from '../../src/plan/index.js';
import { planOf, recordOf } from '../support/plans.js';
import { refusedAt } from '../support/refused.js';
import { edited, stored, type Path } from '../support/stored.js';

const changedAt = (...given: Parameters<typeof readDocument>) => refusedAt(() => readDocument(...given));

const plan = planOf({ restS: 90, step: 2.5 }, { systolicMmHg: 185, date: '2026-03-01' });
const record = recordOf(plan, [30, 15, 15, 12], { sessionRpe: 6, sessionS: 1200 });
const comparisons = {
  review: reviewPlan(plan),
  'session-comparison': compareSessions({ from: plan, to: record }),
  'week-comparison': compareWeeks({
    weeks: [{ sessions: [{ plan }], records: [record] }],
    goals: [{ name: 'hop', found: 80, atLeast: 90 }],
  }),
};

it('reads a plan back with a cuff outside the fitted range, its caution with the name of the field', () => {
  const arm = { limb: 'arm', measured: undefined, circumferenceCm: 30, cuffWidthCm: 14 } as const;
  const wide = planOf({ limb: 'arm' }, {}, arm);
  expect(wide.cautions.map(({ code }) => code)).toContain('outside-fitted-range');
  expect(readDocument(stored(wide))).toEqual(wide);
});

describe('a review or a comparison that was stored', () => {
  it.each(Object.entries(comparisons))('is read back as it was, and as nothing else: %s', (kind, document) => {
    expect(document).toMatchObject({ document: kind, schemaVersion: 1 });
    expect(readDocument(stored(document))).toEqual(document);
    expect(readDocument(stored(document), kind as 'review')).toEqual(document);
    expect(changedAt(document, 'plan')).toEqual(['document']);
  });

  it.each(Object.entries(comparisons))('is refused where it was changed: %s', (_, document) => {
    expect(document.stops.length).toBeGreaterThan(0);
    expect(changedAt(edited(document, ['stops', 0, 'code'], 7))).toEqual(['stops.0.code']);
    expect(changedAt(edited(document, ['schemaVersion'], 2))).toEqual(['schemaVersion']);
    expect(changedAt(edited(document, ['stops'], undefined))).toEqual(['stops']);
    const { libraryVersion: _v, ...bare } = document;
    expect(changedAt(bare)).toEqual(['libraryVersion']);
  });

  it('has its stops in its list, and no number that does not fit', () => {
    const { review, 'session-comparison': sessions, 'week-comparison': weeks } = comparisons;
    expect(changedAt(edited(review, ['stops'], []))).toEqual(['findings.0.severity']);
    expect(changedAt(edited(review, ['inside', 0, 'found'], 'much'))).toEqual(['inside.0.found']);
    expect(changedAt(edited(sessions, ['rows', 0, 'from', 'value'], -1))).toContain('rows.0.from.value');
    expect(changedAt(edited(sessions, ['rows', 0, 'quantity'], 'effect'))).toEqual(['rows.0.quantity']);
    expect(changedAt(edited(weeks, ['weeks', 0, 'done', 'sessions', 'kind'], 'strain'))).toEqual([
      'weeks.0.done.sessions.kind',
    ]);
  });
});

describe('an answer that was stored', () => {
  const place = { limb: 'leg', side: 'left', cuffWidthCm: 10, posture: 'seated' } as const;
  const measured = measuredOcclusionPressure({ ...place, valueMmHg: 168, method: 'doppler' });
  const estimate = estimateOcclusionPressure({ ...place, circumferenceCm: 56, systolicMmHg: 118, diastolicMmHg: 74 });
  const target = targetCuffPressure({ occlusion: measured, percentLop: 50, gaugeStepMmHg: 5 });
  const answers = {
    measured,
    estimate,
    target,
    calibrated: calibrateOcclusionPressure({ estimate, measurements: [measured] }),
    load: trainingLoad({ oneRepMax: testedOneRepMax({ load: 60 }), percentOneRepMax: 25, step: 2.5 }),
  };

  it.each(Object.entries(answers))('is read back as it was, of its kind alone: %s', (_, answer) => {
    expect(readAnswer(stored(answer))).toEqual(answer);
    expect(readAnswer(stored(answer), answer.kind)).toEqual(answer);
    const other = attempt(readAnswer, answer, 'strain' as never);
    expect(other).toMatchObject({ ok: false, issues: [{ path: ['kind'], code: 'not-one-of' }] });
  });

  it('is refused where it was changed, in the answers behind it too', () => {
    const at = (path: Path, to: unknown) => refusedAt(readAnswer, edited(target, path, to));
    expect(at(['value'], 700)).toContain('reached.percentLop');
    expect(at(['lower'], 500)).toContain('lower');
    expect(at(['inputs', 'occlusion', 'value'], 300)).toContain('rounding.from');
    expect(at(['inputs', 'occlusion', 'cautions'], 'none')).toEqual(['inputs.occlusion.cautions']);
    expect(at(['evidence'], 'certain')).toEqual(['evidence']);
    const forged = edited(target, ['cautions', 0, 'text'], 'CLEARED');
    expect(readAnswer(forged)).toEqual(target);
    for (const none of [undefined, 7, [], {}, planOf()]) expect(attempt(readAnswer, none).ok).toBe(false);
  });
});
