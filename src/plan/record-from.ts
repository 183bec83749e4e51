import { defined } from '../answer/defined.js';
import { refuse } from '../answer/issues.js';
import { need } from '../answer/needs.js';
import { formatUnit } from '../quantity/format.js';
import { isCuffed, type FullPrescription } from '../session/prescription.js';
import { fullPrescription } from '../session/read-session.js';
import { sessionLoadOf, totalsOfExercise } from '../session/totals.js';
import { assumption } from './assumptions.js';
import { answersAgain, answersCautions } from './checks.js';
import { documentDisclaimers } from './disclaimers.js';
import { head } from './document-parts.js';
import { totalsOfLimbs } from './limb-totals.js';
import { ABOVE_RESTS, BELOW_SETS } from './needs.js';
import { doneCautions, lengthCautions, readingCautions, reportedCautions } from './record-cautions.js';
import type { ExpandedRecord, ExpandedRecordItem, RecordRequest } from './record.js';
import { uniqueCautions } from './severity.js';
import { asOfDay, mergeStops, stopsOf } from './stops.js';

/** One exercise on one limb as it was done, before it is added up. */
export type ItemFacts = Omit<ExpandedRecordItem, 'totals'>;

/** The cuff as it was held, and as planned where that is not known. */
function cuffed(full: FullPrescription, { target, restTarget, done }: ItemFacts): FullPrescription {
  if (!isCuffed(full)) return full;
  const pressureMmHg = done.heldMmHg ?? target!.value;
  const rest = restTarget && (done.restHeldMmHg ?? restTarget.value);
  if (rest !== undefined && rest >= pressureMmHg) {
    // Whichever of the two was recorded is the one to look at.
    const [field, asked, own, other] =
      done.restHeldMmHg === undefined
        ? (['heldMmHg', ABOVE_RESTS, pressureMmHg, rest] as const)
        : (['restHeldMmHg', BELOW_SETS, rest, pressureMmHg] as const);
    refuse('wrong-relation', [field], need(asked, { value: other, unit: 'mm[Hg]' }), formatUnit(own, 'mm[Hg]'));
  }
  const { occlusion } = target!.inputs;
  return {
    ...full,
    sets: full.sets.map((set) => ({ ...set, pressureMmHg })),
    occlusionMmHg: done.occlusionMmHg ?? occlusion.value,
    ...(rest !== undefined && { restPressureMmHg: rest }),
  };
}

/** What was done of an item as a prescription: from what the record holds, and nothing else. */
export function prescriptionDone(item: ItemFacts): FullPrescription {
  const { exercise, limb, side, mode, restriction, tempo, bodyMassKg, bodyMassPercent, done } = item;
  const { load, unit, inflatedBeforeS, deflatedAfterS, instead, unloaded } = done;
  const sets = done.sets.map(({ repetitions, durationS, restS, load: own }) =>
    defined({ repetitions, durationS, restS, load: unloaded ? undefined : own }),
  );
  // The maximum and the share of body mass are those of the exercise that was planned.
  const ofPlanned = instead === undefined && { oneRepMax: item.load?.inputs.oneRepMax, bodyMassKg, bodyMassPercent };
  const lifted = unloaded ? {} : { load, unit, ...ofPlanned };
  const asked = { mode, limb, side, sets, tempo, restS: 0, restriction, inflatedBeforeS, deflatedAfterS, ...lifted };
  return { ...cuffed(fullPrescription(asked), item), name: instead ?? exercise };
}

/** What was done of an item adds up to. */
export const totalsDone = (item: ItemFacts): ExpandedRecordItem['totals'] => totalsOfExercise(prescriptionDone(item));

/** The cautions of a record that only its plan tells; the others come of what the record holds. */
const OF_PLAN = ['item-not-recorded', 'document-unverified'];

/** What was done in a session and is not worked out. */
type SessionFacts = Omit<RecordRequest, 'plan' | 'asPlanned' | 'items'> &
  Pick<ExpandedRecord, 'posture' | 'items' | 'stops' | 'cautions'> & { readonly label?: string | undefined };

/** A record from what it holds: what was done and reported, with the stops and the cautions that come from its plan. */
export function recordFrom(facts: SessionFacts): ExpandedRecord {
  const { date, sessionOfDay, label, posture, items, symptoms, pain, sessionRpe, sessionS, notes } = facts;
  const { systolicMmHg, diastolicMmHg } = facts;
  const dayCheck = facts.dayCheck && answersAgain(facts.dayCheck, ['dayCheck']);
  const ofDay = dayCheck ? answersCautions(dayCheck, date) : [];
  const limbs = totalsOfLimbs(items);
  const asPlanned = items.some((item) => isCuffed(item) && item.done.heldMmHg === undefined);
  const lowerLoad = items.some(({ load, upperLoad, done }) => upperLoad && done.load === load?.value && !done.instead);
  const cautions = uniqueCautions([
    ...readingCautions(facts),
    ...reportedCautions(facts),
    ...items.flatMap(doneCautions),
    ...limbs.flatMap((limb) => limb.cautions),
    ...lengthCautions(sessionS, items),
    ...facts.cautions.filter(({ code }) => OF_PLAN.includes(code)),
  ]);
  return defined({
    ...head('record', 2),
    date,
    sessionOfDay,
    label,
    systolicMmHg,
    diastolicMmHg,
    posture,
    items,
    limbs,
    sessionLoad: sessionRpe !== undefined && sessionS !== undefined ? sessionLoadOf(sessionRpe, sessionS) : undefined,
    symptoms: [...new Set(symptoms)],
    dayCheck,
    pain,
    sessionRpe,
    sessionS,
    notes,
    assumptions: [
      assumption('tempo-not-recorded'),
      ...(asPlanned ? [assumption('pressure-as-planned')] : []),
      ...(lowerLoad ? [assumption('lower-load-lifted')] : []),
    ],
    stops: mergeStops(asOfDay(facts.stops, date), stopsOf(ofDay, dayCheck?.request.date), stopsOf(cautions, date)),
    cautions: uniqueCautions([...ofDay, ...cautions]),
    disclaimers: documentDisclaimers('record-clears-no-one', 'local-codes-decide', 'watch-afterwards'),
  }) as ExpandedRecord;
}
