import { DAY_EXPECTED } from '../answer/needs.js';
import { InputError, issue, type InputIssue } from '../answer/issues.js';
import { Reader } from '../answer/reader.js';
import { sum } from '../quantity/exact.js';
import { inflatedS, isAtRest } from '../session/exposure.js';
import type { LimbKilograms, LimbSeconds, TrainingDay } from '../session/week.js';
import { inKilograms } from '../session/working.js';
import { expandedInto } from './read-document.js';
import type { ExpandedRecord, SessionRecord } from './record.js';
import { daysBetween, isCalendarDay } from '../answer/day.js';
import { withInput } from '../answer/with-input.js';
import { repeatedRecords } from './recent-records.js';
import { OUR_RECORDS, SESSION_LOAD } from './needs.js';

/** What {@link trainingDays} takes. */
export interface TrainingDaysInput {
  /** Records, in any order; those of other weeks are passed over. */
  readonly records: readonly SessionRecord[];
  /** First of the seven days, `YYYY-MM-DD`. */
  readonly from: string;
}

const FIELDS = {
  'left arm': 'leftArm',
  'right arm': 'rightArm',
  'left leg': 'leftLeg',
  'right leg': 'rightLeg',
} as const satisfies Record<string, keyof LimbSeconds>;

/** What the records of one day add up to. */
function dayOf(records: readonly ExpandedRecord[]): TrainingDay {
  const limbs = records.flatMap((record) => record.limbs);
  const restrictedS: { -readonly [Field in keyof LimbSeconds]: number } = {};
  const volumeKg: { -readonly [Field in keyof LimbKilograms]: number } = {};
  for (const [place, field] of Object.entries(FIELDS)) {
    const own = limbs.filter(({ limb, side }) => `${side} ${limb}` === place);
    const cuffed = own.filter(({ exercises }) => exercises > 0);
    if (cuffed.length > 0) restrictedS[field] = sum(cuffed.map(inflatedS));
    const lifted = own.flatMap(({ volumeLoad }) => volumeLoad ?? []);
    if (lifted.length > 0) volumeKg[field] = sum(lifted.map(inKilograms));
  }
  const atRest = records.filter(({ items }) => isAtRest(items)).length;
  return {
    loadAu: sum(records.map(({ sessionLoad }) => sessionLoad!.value)),
    sessions: records.length,
    restrictedSessions: records.filter((record) => record.limbs.some(({ exercises }) => exercises > 0)).length,
    ...(atRest > 0 && { restrictedAtRest: atRest }),
    restrictedS,
    volumeKg,
  };
}

/**
 * Seven days of records as `weekTotals` takes them: for each day the session-RPE loads added up, the number of
 * sessions and of those with restriction, and the time with the cuff inflated, at either pressure,
 * and the volume load of each limb. Days without a record are days of rest.
 *
 * - Evidence: sums of what was recorded; the session load is `published` (J Strength Cond Res 2001;15(1):109–115).
 *
 * @function
 * @param input - `records` of `recordSession`; `from`, the first day (`YYYY-MM-DD`)
 * @returns seven days: `loadAu` [AU], `sessions`, `restrictedS` [s] and `volumeKg` [kg] of each limb.
 * @throws InputError naming every wrong field; also where a record is given twice, and where one of the week has no
 *   session load, which takes `sessionRpe` and `sessionS`.
 *
 * @example
 * ```ts
 * import { weekTotals } from 'cuffwork';
 * import { planSession, recordSession, trainingDays } from 'cuffwork/plan';
 * const plan = planSession({
 *   systolicMmHg: 118, diastolicMmHg: 74, posture: 'seated',
 *   limbs: [{ limb: 'leg', side: 'left', circumferenceCm: 56, cuffWidthCm: 10, percentLop: 50, gaugeStepMmHg: 5 }],
 *   exercises: [{ name: 'cycling', mode: 'aerobic', limb: 'leg', scheme: '15min', restriction: 'continuous' }],
 * });
 * const items = [{ exercise: 'cycling', limb: 'leg', side: 'left', sets: [{ durationS: 900 }] }] as const;
 * const done = (date: string) => recordSession({ plan, date, items, sessionRpe: 4, sessionS: 1500 });
 * const days = trainingDays({ records: [done('2026-03-02'), done('2026-03-05')], from: '2026-03-02' });
 * days.map(({ loadAu }) => loadAu); // => [100, 0, 0, 100, 0, 0, 0]
 * weekTotals({ days }).limbs.map(({ restrictionTime }) => restrictionTime.value); // => [1800]
 * ```
 */
export const trainingDays = withInput(function trainingDays(input: TrainingDaysInput): TrainingDay[] {
  const reader = new Reader(input);
  const given = reader.values('records', OUR_RECORDS);
  const from = reader.text('from', DAY_EXPECTED, isCalendarDay);
  reader.done();
  const week: ExpandedRecord[][] = Array.from({ length: 7 }, () => []);
  const issues: InputIssue[] = [];
  const records = given.map((part, index) => expandedInto(issues, 'record', part, ['records', index]));
  issues.push(...repeatedRecords(records));
  records.forEach((record, index) => {
    const place = ['records', index];
    const day = record && week[daysBetween(from, record.date)];
    if (!day) return;
    day.push(record);
    if (!record.sessionLoad) {
      issues.push(issue('missing', [...place, 'sessionLoad'], SESSION_LOAD, undefined));
    }
  });
  if (issues.length > 0) throw new InputError(issues);
  return week.map(dayOf);
});
