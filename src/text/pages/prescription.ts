import type { Answer } from '../../answer/answer.js';
import { amount, named, rangeToSet } from '../../answer/translate.js';
import { measurementOf } from '../../plan/item-prescription.js';
import { sideWords } from '../../plan/measures.js';
import { perSet } from '../../plan/set-counts.js';
import { inForce, type StopCode } from '../../plan/stops.js';
import type { ExpandedPlan, ExpandedPlanItem } from '../../plan/types.js';
import { Math } from '../../quantity/maths.js';
import { loadUnitOf } from '../../quantity/quantities.js';
import { joined, lines, there, type Block } from '../blocks.js';
import type { Translator } from '../translator.js';
import { exercisesOf, loadWords, setWords, widthWords } from './exercise-words.js';
import { pressure, stopLines } from './parts.js';

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

const whole = (translate: Translator, { value, unit }: Answer): string => amount(translate, Math.round(value), unit);

/** How an occlusion pressure is known: `measured seated`, `converted from 180 mmHg measured supine`, `estimated`. */
function knownWords(translate: Translator, occlusion: Answer<'occlusion-pressure'>): string {
  const measured = measurementOf(occlusion);
  if (!measured) {
    const { equation } = occlusion;
    return translate(`page.sentence-${equation === 'entered' || equation === 'calibrated' ? equation : 'estimated'}`);
  }
  const { posture } = measured.inputs;
  const how = there(translate('page.lop-measured'), posture && named(translate, 'value', posture)).join(' ');
  return measured === occlusion
    ? how
    : translate('page.sentence-converted', { measured: whole(translate, measured), how });
}

/** `85 mmHg (49.4 % of 172 mmHg, measured seated)` */
const pressureWords = (translate: Translator, { occlusion, target }: ExpandedPlanItem): string =>
  translate('page.sentence-pressure', {
    pressure: pressure(translate, target!.value),
    percent: target!.reached!.percentLop.toFixed(1),
    occlusion: whole(translate, occlusion!),
    known: knownWords(translate, occlusion!),
  });

/** `Left leg, cuff 10 cm wide: 85 mmHg (…)`; of both sides one after the other, and the side alone without a cuff. */
function limbWords(translate: Translator, plan: ExpandedPlan, own: readonly ExpandedPlanItem[]): string {
  const limbs = own.map((item) => {
    const side = sideWords(translate, item.side, item.limb);
    if (item.restriction === 'none') return side;
    const place = joined(side, widthWords(translate, plan, item));
    return translate('page.sentence-limb', { place, pressure: pressureWords(translate, item) });
  });
  return capital(limbs.join('; '));
}

/** `15 kg (25 % of 1RM)`, the loads of sets that differ, or what is lifted otherwise. */
function loadBriefly(translate: Translator, item: ExpandedPlanItem): string {
  const { load, upperLoad, sets } = item;
  const loads = load && perSet(sets, (set) => set.load);
  if (loads !== undefined) return translate('page.sentence-loads', { loads, unit: loadUnitOf(load!.unit) });
  if (!load?.reached || item.bodyMassPercent !== undefined) return loadWords(translate, item);
  return translate('page.share-of-maximum', {
    load: rangeToSet(translate, load, upperLoad),
    percent: there(load.reached, upperLoad?.reached)
      .map(({ percentOneRepMax }) => percentOneRepMax.toFixed(1))
      .join('–'),
  });
}

/** What is done: load, sets, rests, and what the cuff does in them. */
function workWords(translate: Translator, item: ExpandedPlanItem, rests: readonly number[]): string {
  const { mode = 'resistance', restTarget, restriction } = item;
  return joined(
    mode === 'resistance' && (item.load || item.bodyMassPercent !== undefined) && loadBriefly(translate, item),
    setWords(translate, item, rests),
    restTarget
      ? translate('page.sentence-partial', { pressure: pressure(translate, restTarget.value) })
      : translate(`page.sentence-${restriction as 'continuous' | 'intermittent' | 'none'}`),
  );
}

/** Stops whose own sentence says that nobody trains. */
const SAYS_NOT_TO_TRAIN: readonly StopCode[] = [
  'blood-pressure-refer',
  'today-pain-severe',
  'today-new-condition',
  'today-chest',
  'today-dark-urine',
  'today-swelling',
  'today-illness',
];

/** A plan as one line for each exercise, for a note or a message; while a stop is in force, the stop and no setting. */
export function prescriptionBlocks(plan: ExpandedPlan, translate: Translator): Block[] {
  const stops = stopLines(translate, plan.stops);
  if (stops.length > 0) {
    const isSaid = inForce(plan.stops).some(({ code }) => SAYS_NOT_TO_TRAIN.includes(code));
    return [lines(there(!isSaid && `${translate('page.do-not-train')}.`, ...stops).join(' '))];
  }
  const exercises = exercisesOf(plan).map(({ listed, own, rests }) => {
    const [first] = own;
    const work = translate('page.sentence-exercise', {
      exercise: capital(listed.name),
      posture: named(translate, 'value', first.posture ?? plan.request.posture),
      work: workWords(translate, first, rests),
    });
    return `${limbWords(translate, plan, own)}. ${work}.`;
  });
  return [lines(...exercises)];
}
