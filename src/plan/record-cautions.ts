import type { Caution, Severity } from '../answer/answer.js';
import { refuse, type Path } from '../answer/issues.js';
import { GIVEN_WITH, need } from '../answer/needs.js';
import { passedStep } from '../evidence/guards.js';
import { bloodPressureCautions, checkBloodPressure } from '../pressure/blood-pressure.js';
import { sum } from '../quantity/exact.js';
import { Math } from '../quantity/maths.js';
import { loadUnitOf } from '../quantity/quantities.js';
import { isOfLimb } from '../session/exposure.js';
import { reperfusionCautions } from '../session/limbs.js';
import { codedCaution } from './coded.js';
import type { ExerciseOnLimb } from './document-parts.js';
import { comparedHeld, type Held } from './held.js';
import { isSameLimb, limbsIn } from './limb-and-side.js';
import { CAUTIOUS_PAIN_RULE, assessPain, painSentence } from './pain.js';
import type { ExpandedRecordItem, RecordRequest } from './record.js';
import { heaviestLoad } from './set-counts.js';
import { symptomOf } from './symptoms.js';

/** What a held pressure leads to below those above every trial, and the figures in its sentence. */
const HELD = {
  occludes: ['caution', 'held-occludes', ['held', 'occlusion']],
  above: ['caution', 'held-above-target', ['held', 'target']],
  below: ['note', 'held-below-target', ['held', 'target']],
  'share-above': ['caution', 'held-share-above', ['held', 'heldPercent', 'occlusion', 'percentLop']],
  'share-below': ['note', 'held-share-below', ['held', 'heldPercent', 'occlusion', 'percentLop']],
} as const;

function heldCautions(compared: Held | undefined, who: ExerciseOnLimb, path: Path): Caution[] {
  if (!compared || compared.as === 'as-planned') return [];
  if (compared.as === 'above-tried') {
    const { held } = compared;
    const { above: most, source } = passedStep('cuff-pressure', held)!;
    return [codedCaution('stop', 'held-above-tried', { ...who, held, most: most! }, { path, source: source! })];
  }
  const [severity, code, figures] = HELD[compared.as];
  const values = Object.fromEntries(figures.map((name) => [name, compared[name]]));
  return [codedCaution(severity, code, { ...who, ...values }, { path })];
}

/** The cautions of an item: its cuff, the pause before it, its load, an early end; then those of its totals. */
export function doneCautions(item: ExpandedRecordItem, index: number): Caution[] {
  const { exercise, limb, side, load, upperLoad = load, done, totals } = item;
  const who = { exercise, limb, side };
  const at = (field: keyof typeof done) => ({ path: ['items', index, 'done', field] });
  const compared = comparedHeld(item);
  const found = heldCautions(compared, who, at('heldMmHg').path);
  if (done.reperfusedBeforeS !== undefined) {
    found.push(
      ...reperfusionCautions(done.reperfusedBeforeS).map((message) => ({ ...message, ...at('reperfusedBeforeS') })),
    );
  }
  if (load && upperLoad && done.load !== undefined && done.instead === undefined) {
    const [lifted, planned] = [heaviestLoad(done.sets, done.load), heaviestLoad(item.sets, upperLoad.value)];
    const values = { ...who, lifted, planned, unit: loadUnitOf(load.unit) };
    if (lifted > planned) found.push(codedCaution('caution', 'lifted-above-plan', values, at('load')));
  }
  if (done.stoppedEarly) found.push(codedCaution('note', 'stopped-early', who, at('stoppedEarly')));
  // The caution for a cuff above the occlusion pressure comes above, with its limb; restriction belongs to the limb.
  const above = ['pressure-above-occlusion', ...(compared?.as === 'above-tried' ? ['cuff-pressure-stop'] : [])];
  return [...found, ...totals.cautions.filter((caution) => !above.includes(caution.code) && !isOfLimb(caution))];
}

const SEVERITY = { stop: 'stop', 'back-off': 'caution', hold: 'note' } as const satisfies Record<string, Severity>;

/** What was reported of symptoms and pain; pain by a rule, the default one for a record alone. */
export function reportedCautions(
  { symptoms = [], pain = [] }: Pick<RecordRequest, 'symptoms' | 'pain'>,
  painRule = CAUTIOUS_PAIN_RULE,
): Caution[] {
  const ofSymptoms = [...new Set(symptoms)].map((symptom, index) => {
    const { grade, lower, source } = symptomOf(symptom);
    const more = { path: ['symptoms', index], ...(source && { source }) };
    return grade === 'lower'
      ? codedCaution('caution', 'symptom-lower', { symptom, lower: `lower-${lower!}` }, more)
      : codedCaution('stop', `symptom-${grade}`, { symptom }, more);
  });
  const ofPain = assessPain(pain, painRule).flatMap((assessed) => {
    const { verdict, report, moment, rule } = assessed;
    if (verdict === 'go-on') return [];
    const more = { path: ['pain', pain.indexOf(report), moment!], ...(rule.source && { source: rule.source }) };
    return [codedCaution(SEVERITY[verdict], ...painSentence(assessed)!, more)];
  });
  return [...ofSymptoms, ...ofPain];
}

/** A session that took less time than its sets do: one of the two is wrong. */
export function lengthCautions(sessionS: number | undefined, items: readonly ExpandedRecordItem[]): Caution[] {
  // Both sides of an exercise may be done at once: the longest limb is the least time it took.
  const ofLimbs = limbsIn(items).map((place) =>
    sum(items.filter((item) => isSameLimb(item, place)).map(({ totals }) => totals.timeUnderTension.value)),
  );
  const sets = Math.max(...ofLimbs);
  if (sessionS === undefined || sessionS >= sets) return [];
  return [codedCaution('caution', 'session-shorter-than-sets', { session: sessionS, sets }, { path: ['sessionS'] })];
}

/** What the blood pressure of the day leads to; both readings go together. */
export function readingCautions({
  systolicMmHg,
  diastolicMmHg,
}: Pick<RecordRequest, 'systolicMmHg' | 'diastolicMmHg'>): Caution[] {
  if (systolicMmHg === undefined && diastolicMmHg === undefined) return [];
  const alone = (missing: string, field: string): never =>
    refuse('missing', [missing], need(GIVEN_WITH, { field }), undefined);
  if (systolicMmHg === undefined) return alone('systolicMmHg', 'diastolicMmHg');
  if (diastolicMmHg === undefined) return alone('diastolicMmHg', 'systolicMmHg');
  checkBloodPressure({ systolicMmHg, diastolicMmHg });
  return bloodPressureCautions(systolicMmHg, diastolicMmHg);
}
