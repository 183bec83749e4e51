import type { Sentence } from '../answer/answer.js';
import { daysBetween } from '../answer/day.js';
import { guardCautions } from '../answer/guards.js';
import type { Grade } from '../evidence/grades.js';
import type { SourceId } from '../evidence/sources.js';
import { coded } from './coded.js';
import { isEstimated, measuredDay } from './measured-limb.js';
import { isSameLimb } from './limb-and-side.js';
import type { MeasureAgain } from './proposal.js';
import type { ExpandedRecord } from './record.js';
import { uniqueMessages } from './severity.js';
import type { ExpandedPlan, ExpandedPlanItem } from './types.js';

/** Days after which strength is tested again, in the trial whose schedule is taken. */
const RETEST_DAYS = 28;

const isCuffed = ({ restriction }: Pick<ExpandedPlanItem, 'restriction'>): boolean => restriction !== 'none';

/** What changed between the last session with the cuff on a limb and the plan; a session may have several postures. */
function changes({ request }: ExpandedPlan, item: ExpandedPlanItem, { posture, items }: ExpandedRecord): string[] {
  const cuff = request.limbs.find((one) => isSameLimb(one, item));
  const last = cuffedOn(items, item);
  const differs = (now: unknown, before: unknown): boolean =>
    now !== undefined && before !== undefined && now !== before;
  return [
    ...(last.some((one) => (one.posture ?? posture) === (item.posture ?? request.posture)) ? [] : ['posture']),
    ...(cuff?.cuffWidthCm === last[0]!.cuffWidthCm ? [] : ['cuff']),
    ...(differs(cuff?.circumferenceCm, last[0]!.circumferenceCm) ? ['limb-size'] : []),
  ];
}

/** What of a record had the cuff inflated on the limb of an item. */
const cuffedOn = (items: ExpandedRecord['items'], item: ExpandedPlanItem) =>
  items.filter((one) => isCuffed(one) && isSameLimb(one, item));

/** What to measure or test again, each thing once. */
export function measureAgain(
  plan: ExpandedPlan,
  records: readonly ExpandedRecord[],
  date: string | undefined,
  testedOn: string | undefined,
): MeasureAgain[] {
  const found: MeasureAgain[] = [];
  const add = (
    what: MeasureAgain['what'],
    due: boolean,
    message: Sentence,
    evidence: Grade,
    source?: SourceId,
  ): void => {
    found.push({ what, due, ...message, evidence, ...(source && { source }) });
  };
  for (const item of plan.items.filter(isCuffed)) {
    const { limb, side, occlusion } = item;
    const session = [...records].reverse().find(({ items }) => cuffedOn(items, item).length > 0);
    for (const what of session ? changes(plan, item, session) : []) {
      add('occlusion-pressure', true, coded('measure-occlusion-changed', { side, limb, what }), 'practice');
    }
    if (plan.request.limbs.some((cuff) => isSameLimb(cuff, item) && isEstimated(cuff))) {
      const message = coded('measure-occlusion-estimated', { side, limb });
      add('occlusion-pressure', true, message, occlusion!.evidence);
    }
  }
  const next = date ?? records.at(-1)!.date;
  for (const cuff of plan.request.limbs) {
    const { limb, side } = cuff;
    const since = daysBetween(measuredDay(cuff) ?? next, next);
    const values = { limb, side };
    for (const { code, text, values: shown } of guardCautions('days-since-measured', since, { values })) {
      add('occlusion-pressure', true, { code, text, values: shown! }, 'practice');
    }
  }
  if (plan.items.some(isCuffed)) {
    add('occlusion-pressure', false, coded('measure-occlusion-weeks'), 'practice', 'time-of-day-2017');
  }
  const days = daysBetween(testedOn ?? next, next);
  const due = days >= RETEST_DAYS;
  const message = due ? coded('test-maximum-due', { days }) : coded('test-maximum-weeks');
  if (plan.items.some(({ oneRepMax }) => oneRepMax)) {
    add('one-repetition-maximum', due, message, 'published', 'retest-schedule');
  }
  return uniqueMessages(found);
}
