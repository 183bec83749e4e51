import { Math } from '../quantity/maths.js';
import type { Caution } from '../answer/answer.js';
import { daysBetween } from '../answer/day.js';
import { guardCautions } from '../answer/guards.js';
import { bloodPressureCautions } from '../pressure/blood-pressure.js';
import { inflatedS, isAtRest, sessionCountCautions } from '../session/exposure.js';
import { isCuffed } from '../session/prescription.js';
import { ageCautions } from './age-cautions.js';
import { itemCautions } from './item-cautions.js';
import { isSameLimb } from './limb-and-side.js';
import { measuredAt, measuredDay } from './measured-limb.js';
import { caution } from './messages.js';
import { screeningCaution } from './screening-messages.js';
import type { ExpandedLimbTotals, ExpandedPlan, ExpandedPlanItem, PlanRequest } from './types.js';

/** The cautions about a measurement some weeks ago. */
const measuredAgo = ({ date, limbs }: PlanRequest): Caution[] =>
  limbs.flatMap((cuff, index) => {
    const { limb, side } = cuff;
    const measuredOn = measuredDay(cuff);
    if (date === undefined || measuredOn === undefined) return [];
    return guardCautions('days-since-measured', daysBetween(measuredOn, date), {
      values: { limb, side },
      path: measuredAt(cuff, index),
    });
  });

/** What the guards say of a week of this session, where the request says how often it is done. */
function weekCautions(
  { sessionsPerWeek }: PlanRequest,
  items: readonly ExpandedPlanItem[],
  limbs: readonly ExpandedLimbTotals[],
): Caution[] {
  const cuffed = limbs.filter(({ exercises }) => exercises > 0);
  if (sessionsPerWeek === undefined || cuffed.length === 0) return [];
  const atRest = isAtRest(items) ? sessionsPerWeek : 0;
  return [
    ...sessionCountCautions(sessionsPerWeek, atRest, ['sessionsPerWeek']),
    ...cuffed.flatMap(({ limb, side, ...times }) =>
      guardCautions('limb-restriction-week', (sessionsPerWeek * inflatedS(times)) / 60, {
        values: { limb, side },
        path: ['sessionsPerWeek'],
      }),
    ),
  ];
}

/** The usual scheme has so many sets. */
const USUAL_SETS = 4;

/** A first session with more than one exercise under the cuff, as many sets as usual, or a set to failure. */
function firstSessionCautions({ screening, exercises }: PlanRequest, items: readonly ExpandedPlanItem[]): Caution[] {
  if (screening?.request.answers['first-session'] !== 'yes') return [];
  const cuffed = exercises.filter(isCuffed);
  const under = items.filter(isCuffed);
  const sets = Math.max(0, ...under.map((item) => item.sets.length));
  if (cuffed.length <= 1 && sets < USUAL_SETS && !under.some(({ lastSetToFailure }) => lastSetToFailure)) return [];
  const values = { exercises: cuffed.length, sets, usual: USUAL_SETS };
  const more = { path: ['exercises'], source: 'case-report-2016' } as const;
  return [screeningCaution('caution', 'first-session-volume', values, more)];
}

/**
 * The cautions of a session. What changes the session on the spot comes before its week and the age: a short page shows
 * the first of them.
 */
export function sessionCautions(
  request: PlanRequest,
  { items, limbs, session }: Pick<ExpandedPlan, 'items' | 'limbs' | 'session'>,
): Caution[] {
  const spare = request.limbs.flatMap(({ limb, side }, index) =>
    limbs.some((trained) => isSameLimb(trained, { limb, side }))
      ? []
      : [caution('note', 'limb-not-trained', { side, limb }, { path: ['limbs', index] })],
  );
  return [
    ...bloodPressureCautions(request.systolicMmHg, request.diastolicMmHg),
    ...firstSessionCautions(request, items),
    ...items.flatMap(itemCautions),
    ...limbs.flatMap(({ cautions }) => cautions),
    ...session.totals.cautions,
    ...weekCautions(request, items, limbs),
    ...measuredAgo(request),
    ...ageCautions(request.ageYears),
    ...spare,
  ];
}
