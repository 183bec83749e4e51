import type { Answer } from '../answer/answer.js';
import { amount, amountToSet, named, rangeToSet, translating, type Translate } from '../answer/translate.js';
import { measurementOf } from '../plan/item-prescription.js';
import { sideWords } from '../plan/measures.js';
import { isSameLimb } from '../plan/limb-and-side.js';
import { perSet } from '../plan/set-counts.js';
import { inForce, type StopCode } from '../plan/stops.js';
import type { ExpandedPlan, ExpandedPlanItem } from '../plan/types.js';
import { Math } from '../quantity/maths.js';
import { loadUnitOf } from '../quantity/quantities.js';
import type { Block } from './blocks.js';
import { exercisesOf, loadWords, setWords, stopLines } from './page.js';
import { pageWords, type Word } from './page-words.js';

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

const whole = (translate: Translate, { value, unit }: Answer): string => amount(translate, Math.round(value), unit);

/** How an occlusion pressure is known: `measured seated`, `converted from 180 mmHg measured supine`, `estimated`. */
function knownWords(translate: Translate, word: Word, occlusion: Answer<'occlusion-pressure'>): string {
  const measured = measurementOf(occlusion);
  if (!measured) {
    const { equation } = occlusion;
    return word(`page.sentence-${equation === 'entered' || equation === 'calibrated' ? equation : 'estimated'}`);
  }
  const { posture } = measured.inputs;
  const how = [word('page.lop-measured'), ...(posture ? [named(translate, 'value', posture)] : [])].join(' ');
  return measured === occlusion ? how : word('page.sentence-converted', { measured: whole(translate, measured), how });
}

/** `85 mmHg (49.4 % of 172 mmHg, measured seated)` */
function pressureWords(translate: Translate, word: Word, { occlusion, target }: ExpandedPlanItem): string {
  return word('page.sentence-pressure', {
    pressure: amount(translate, target!.value, 'mm[Hg]'),
    percent: target!.reached!.percentLop.toFixed(1),
    occlusion: whole(translate, occlusion!),
    known: knownWords(translate, word, occlusion!),
  });
}

/** `Left leg, cuff 10 cm wide: 85 mmHg (…)`; of both sides one after the other, and the side alone without a cuff. */
function limbWords(
  translate: Translate,
  word: Word,
  { request }: ExpandedPlan,
  own: readonly ExpandedPlanItem[],
): string {
  const limbs = own.map((item) => {
    const side = sideWords(translate, item.side, item.limb);
    if (item.restriction === 'none') return side;
    const width = request.limbs.find((limb) => isSameLimb(limb, item))?.cuffWidthCm;
    const place =
      width === undefined ? [side] : [side, word('page.cuff-width', { width: amountToSet(translate, width, 'cm') })];
    return word('page.sentence-limb', { place: place.join(', '), pressure: pressureWords(translate, word, item) });
  });
  return capital(limbs.join('; '));
}

/** `15 kg (25 % of 1RM)`, the loads of sets that differ, or what is lifted otherwise. */
function loadBriefly(translate: Translate, word: Word, item: ExpandedPlanItem): string {
  const { load, upperLoad, sets } = item;
  const loads = load && perSet(sets, (set) => set.load);
  if (loads !== undefined) return word('page.sentence-loads', { loads, unit: loadUnitOf(load!.unit) });
  if (!load?.reached || item.bodyMassPercent !== undefined) return loadWords(translate, word, item);
  return word('page.share-of-maximum', {
    load: rangeToSet(translate, load, upperLoad),
    percent: [load, upperLoad].flatMap((one) => one?.reached?.percentOneRepMax.toFixed(1) ?? []).join('–'),
  });
}

/** What is done: load, sets, rests, and what the cuff does in them. */
function workWords(translate: Translate, word: Word, item: ExpandedPlanItem, rests: readonly number[]): string {
  const { mode = 'resistance', sets, restTarget, restriction, lastSetToFailure } = item;
  const done = setWords(word, sets, rests);
  const cuff = restTarget
    ? word('page.sentence-partial', { pressure: amount(translate, restTarget.value, 'mm[Hg]') })
    : word(`page.sentence-${restriction as 'continuous' | 'intermittent' | 'none'}`);
  return [
    ...(mode === 'resistance' && (item.load || item.bodyMassPercent !== undefined)
      ? [loadBriefly(translate, word, item)]
      : []),
    lastSetToFailure ? word('page.to-failure', { sets: done }) : done,
    cuff,
  ].join(', ');
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
export function prescriptionBlocks(plan: ExpandedPlan, translate: Translate): Block[] {
  const word = translating(translate, pageWords);
  const stops = inForce(plan.stops);
  if (stops.length > 0) {
    const isSaid = stops.some(({ code }) => SAYS_NOT_TO_TRAIN.includes(code));
    const first = isSaid ? [] : [`${word('page.do-not-train')}.`];
    return [{ lines: [[...first, ...stopLines(translate, stops)].join(' ')] }];
  }
  const lines = exercisesOf(plan).map(({ listed, own, rests }) => {
    const [first] = own;
    const work = word('page.sentence-exercise', {
      exercise: capital(listed.name),
      posture: named(translate, 'value', first.posture ?? plan.request.posture),
      work: workWords(translate, word, first, rests),
    });
    return `${limbWords(translate, word, plan, own)}. ${work}.`;
  });
  return [{ lines }];
}
