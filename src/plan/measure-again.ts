import { daysBetween } from '../answer/day.js';
import { guardCautions } from '../answer/guards.js';
import { isCuffed } from '../session/prescription.js';
import { coded } from './coded.js';
import { isEstimated, measuredDay } from './measured-limb.js';
import { isSameLimb } from './limb-and-side.js';
import type { MeasureAgain } from './proposal.js';
import type { ExpandedRecord } from './record.js';
import { uniqueMessages } from './severity.js';
import type { ExpandedPlan, ExpandedPlanItem } from './types.js';

/** Days after which strength is tested again, in the trial whose schedule is taken. */
const RETEST_DAYS = 28;

/** What of a record had the cuff inflated on the limb of an item. */
const cuffedOn = ({ items }: ExpandedRecord, item: ExpandedPlanItem) =>
  items.filter((one) => isCuffed(one) && isSameLimb(one, item));

/** What changed between the last session with the cuff on a limb and the plan; a session may have several postures. */
function changes({ request }: ExpandedPlan, item: ExpandedPlanItem, record: ExpandedRecord): string[] {
  const { cuffWidthCm, circumferenceCm } = request.limbs.find((one) => isSameLimb(one, item)) ?? {};
  const last = cuffedOn(record, item);
  const before = last[0]!;
  const postures = last.map(({ posture = record.posture }) => posture);
  const measuredBoth = circumferenceCm !== undefined && before.circumferenceCm !== undefined;
  return [
    ...(postures.includes(item.posture ?? request.posture) ? [] : ['posture']),
    ...(cuffWidthCm === before.cuffWidthCm ? [] : ['cuff']),
    ...(measuredBoth && circumferenceCm !== before.circumferenceCm ? ['limb-size'] : []),
  ];
}

/** What to measure or test again, each thing once. */
export function measureAgain(
  plan: ExpandedPlan,
  records: readonly ExpandedRecord[],
  date: string | undefined,
  testedOn: string | undefined,
): MeasureAgain[] {
  const found: MeasureAgain[] = [];
  const what = 'occlusion-pressure';
  const cuffed = plan.items.filter(isCuffed);
  for (const item of cuffed) {
    const { limb, side, occlusion } = item;
    const session = [...records].reverse().find((record) => cuffedOn(record, item).length > 0);
    for (const changed of session ? changes(plan, item, session) : []) {
      const message = coded('measure-occlusion-changed', { side, limb, what: changed });
      found.push({ what, due: true, ...message, evidence: 'practice' });
    }
    if (plan.request.limbs.some((cuff) => isSameLimb(cuff, item) && isEstimated(cuff))) {
      const message = coded('measure-occlusion-estimated', { side, limb });
      found.push({ what, due: true, ...message, evidence: occlusion!.evidence });
    }
  }
  const next = date ?? records.at(-1)!.date;
  for (const cuff of plan.request.limbs) {
    const { limb, side } = cuff;
    const since = daysBetween(measuredDay(cuff) ?? next, next);
    for (const { code, text, values } of guardCautions('days-since-measured', since, { values: { limb, side } })) {
      found.push({ what, due: true, code, text, values: values!, evidence: 'practice' });
    }
  }
  if (cuffed.length > 0) {
    const message = coded('measure-occlusion-weeks');
    found.push({ what, due: false, ...message, evidence: 'practice', source: 'time-of-day-2017' });
  }
  if (plan.items.some(({ oneRepMax }) => oneRepMax)) {
    const days = daysBetween(testedOn ?? next, next);
    const due = days >= RETEST_DAYS;
    const message = due ? coded('test-maximum-due', { days }) : coded('test-maximum-weeks');
    const backed = { evidence: 'published', source: 'retest-schedule' } as const;
    found.push({ what: 'one-repetition-maximum', due, ...message, ...backed });
  }
  return uniqueMessages(found);
}
