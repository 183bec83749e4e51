import { percentReached, type Answer, type Reached } from '../../answer/answer.js';
import type { Full } from '../../answer/defined.js';
import { amount, amountToSet, bareAmount, named, rangeToSet } from '../../answer/translate.js';
import { measurementOf } from '../../plan/item-prescription.js';
import { isSameLimb, usesLimb } from '../../plan/limb-and-side.js';
import { sideWords } from '../../plan/measures.js';
import { perSet, setCounts } from '../../plan/set-counts.js';
import { inForce, type StopCode } from '../../plan/stops.js';
import type { ExpandedPlan, ExpandedPlanItem, PlanExercise } from '../../plan/types.js';
import { clock, format } from '../../quantity/format.js';
import { loadUnitOf, type Unit } from '../../quantity/quantities.js';
import type { Tempo } from '../../session/notation.js';
import { sidesOf, takesTurns } from '../../session/prescription.js';
import type { SessionEvent } from '../../session/timeline.js';
import { joined, lines, present, type Block } from '../blocks.js';
import type { Translator } from '../translator.js';
import { answerAmount, pressure, stopLines } from './parts.js';

type Sets = ExpandedPlanItem['sets'];

/** An exercise of a plan: its items limb by limb, the rests between its sets, and the pause before the next. */
interface ListedExercise {
  readonly listed: PlanExercise;
  /** From 1. */
  readonly number: number;
  readonly own: readonly [ExpandedPlanItem, ...ExpandedPlanItem[]];
  readonly rests: readonly number[];
  readonly pause: SessionEvent | undefined;
}

/** The exercises of a plan in their order, each with its limbs together. */
export function exercisesOf({ request, items, session }: ExpandedPlan): ListedExercise[] {
  let from = 0;
  return request.exercises.flatMap((listed, index): ListedExercise[] => {
    const sides = request.limbs.filter((limb) => usesLimb(listed, limb));
    const order = sidesOf(listed.side ?? 'both');
    const [first, ...others] = items
      .slice(from, (from += sides.length))
      .sort((a, b) => order.indexOf(a.side) - order.indexOf(b.side));
    if (!first) return [];
    const events = session.timeline.events.filter(({ exercise = 1 }) => exercise === index + 1);
    // Where sides take turns, a side’s own rests hold the sets of the other: the clock tells the rest after both.
    const after = new Map<number, number>();
    for (const { event, set, warmUp, durationS } of events) {
      if (event === 'rest' && set !== undefined && set < first.sets.length && !warmUp) after.set(set, durationS!);
    }
    const pause = events.find(({ event, set }) => event === 'reperfuse' || (event === 'rest' && set === undefined));
    return [{ listed, number: index + 1, own: [first, ...others], rests: [...after.values()], pause }];
  });
}

const percentText = (translate: Translator, percent: number): string => bareAmount(translate, percent, '%');

/** `50 % of LOP (95 % interval 33–106 %)` */
function reachedWords(translate: Translator, reached: Reached, of: 'page.of-occlusion' | 'page.of-maximum'): string {
  const [lower, upper] = [reached.lower, reached.upper].map((end) => end && percentText(translate, end));
  const range =
    lower === undefined
      ? translate('page.no-range')
      : upper === undefined
        ? translate('page.range-from', { lower })
        : translate('page.range', { lower, upper });
  return translate(of, { percent: percentText(translate, percentReached(reached)), range });
}

export function tempoWords(translate: Translator, { eccentricS, bottomS, concentricS, topS }: Full<Tempo>): string {
  const pause = (seconds: number, where: 'page.at-top' | 'page.at-bottom'): string =>
    seconds > 0 ? translate(where, { seconds: format(seconds) }) : '';
  return translate('page.up-and-down', {
    up: format(concentricS),
    top: pause(topS, 'page.at-top'),
    down: format(eccentricS),
    bottom: pause(bottomS, 'page.at-bottom'),
  });
}

/** `90 s`, `2 min` or `2:30 min` */
export const lengthWords = (translate: Translator, seconds: number): string =>
  seconds >= 60 && seconds % 60 === 0
    ? translate('page.minutes', { minutes: format(seconds / 60) })
    : seconds > 120 && Number.isInteger(seconds)
      ? translate('page.time', { time: clock(seconds) })
      : translate('page.seconds', { seconds: format(seconds) });

/** `30 repetitions`, or `2 min` or `45 s` where they are not counted. */
export const setLength = (
  translate: Translator,
  { repetitions, durationS }: { readonly repetitions?: number | undefined; readonly durationS?: number | undefined },
): string =>
  repetitions === undefined
    ? lengthWords(translate, durationS!)
    : translate('page.repetitions', { sets: format(repetitions) });

/** `30-15-15-15`, and by time `3 min – 2 min`. */
export const setsBriefly = (translate: Translator, sets: Parameters<typeof setCounts>[0]): string =>
  sets.some(({ durationS }) => durationS !== undefined)
    ? sets.map((set) => ((set.repetitions ?? set.durationS) ? setLength(translate, set) : '–')).join(' – ')
    : setCounts(sets);

/** `30 – 15 – 15 – 15 repetitions, 30 s rest between sets`, `5 × 5 min, 3 min rest between sets` */
function setChain(translate: Translator, sets: Sets, rests: readonly number[]): string {
  const counted = sets.every(({ repetitions }) => repetitions !== undefined);
  const lengths = sets.map((set) => (counted ? format(set.repetitions!) : setLength(translate, set)));
  if (new Set(rests).size > 1) {
    return lengths
      .map((set, index) =>
        index < rests.length ? translate('page.then-rest', { set, rest: lengthWords(translate, rests[index]!) }) : set,
      )
      .join(' – ');
  }
  const alike = lengths.length > 1 && new Set(lengths).size === 1;
  const chain = alike ? translate('page.times', { count: lengths.length, set: lengths[0]! }) : lengths.join(' – ');
  const all = counted ? translate('page.repetitions', { sets: chain }) : chain;
  return rests.length === 0
    ? all
    : translate('page.then-between', { sets: all, rest: lengthWords(translate, rests[0]!) });
}

/** The sets with the rests between them, and how the last one ends. */
export function setWords(
  translate: Translator,
  { sets, lastSetToFailure }: Pick<ExpandedPlanItem, 'sets' | 'lastSetToFailure'>,
  rests: readonly number[],
): string {
  const chain = setChain(translate, sets, rests);
  return lastSetToFailure ? translate('page.to-failure', { sets: chain }) : chain;
}

/** Each warm-up set with its load and the rest after it. */
export const warmUpWords = (translate: Translator, sets: Sets, unit: Unit): string =>
  sets
    .map((one) => {
      const set = setLength(translate, one);
      const { load, restS } = one;
      return translate('page.then-rest', {
        set:
          load === undefined ? set : translate('page.set-with-load', { set, load: amountToSet(translate, load, unit) }),
        rest: lengthWords(translate, restS),
      });
    })
    .join(' – ');

/** What is lifted: a load, a share of body mass, both, or nothing. */
export function loadWords(
  translate: Translator,
  { load, upperLoad, bodyMassKg, bodyMassPercent }: ExpandedPlanItem,
): string {
  const [from, to] = present(load?.reached, upperLoad?.reached).map((reached) =>
    reachedWords(translate, reached, 'page.of-maximum'),
  );
  const loads = load && rangeToSet(translate, load, upperLoad);
  const lifted =
    loads && to !== undefined
      ? translate('page.load-ends', { loads, from: from!, to })
      : loads && present(loads, from).join(', ');
  if (bodyMassPercent === undefined) return lifted ?? translate('page.no-load');
  const mass = amount(translate, bodyMassKg!, 'kg');
  const body = translate('page.body-mass', { percent: format(bodyMassPercent), mass });
  return lifted ? translate('page.load-and-body', { load: lifted, body }) : body;
}

/** `cuff 10 cm wide`, where the width is known. */
function widthWords(translate: Translator, { request }: ExpandedPlan, item: ExpandedPlanItem): string | undefined {
  const width = request.limbs.find((limb) => isSameLimb(limb, item))?.cuffWidthCm;
  return width === undefined ? undefined : translate('page.cuff-width', { width: amountToSet(translate, width, 'cm') });
}

/** `90 mmHg, 48 % of LOP (95 % interval 44–53 %), cuff 10 cm wide; inflated from the first set to the last` */
export function cuffWords(translate: Translator, plan: ExpandedPlan, item: ExpandedPlanItem): string {
  const { target, restTarget, restriction } = item;
  if (restriction === 'none') return translate('page.no-cuff');
  const when = restTarget
    ? translate('page.partial', {
        pressure: pressure(translate, restTarget.value),
        percent: percentText(translate, restTarget.reached!.percentLop),
      })
    : translate(`page.${restriction}`);
  const set = present(
    pressure(translate, target!.value),
    reachedWords(translate, target!.reached!, 'page.of-occlusion'),
    widthWords(translate, plan, item),
  );
  return `${set.join(', ')}; ${when}`;
}

const capital = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);

/** How an occlusion pressure is known: `measured seated`, `converted from 180 mmHg measured supine`, `estimated`. */
function knownWords(translate: Translator, occlusion: Answer<'occlusion-pressure'>): string {
  const measured = measurementOf(occlusion);
  if (!measured) {
    const { equation } = occlusion;
    return translate(`page.sentence-${equation === 'entered' || equation === 'calibrated' ? equation : 'estimated'}`);
  }
  const { posture } = measured.inputs;
  const how = present(translate('page.lop-measured'), posture && named(translate, 'value', posture)).join(' ');
  return measured === occlusion
    ? how
    : translate('page.sentence-converted', { measured: answerAmount(translate, measured), how });
}

/** `85 mmHg (49 % of 172 mmHg, measured seated)` */
const pressureWords = (translate: Translator, { occlusion, target }: ExpandedPlanItem): string =>
  translate('page.sentence-pressure', {
    pressure: pressure(translate, target!.value),
    percent: percentText(translate, target!.reached!.percentLop),
    occlusion: answerAmount(translate, occlusion!),
    known: knownWords(translate, occlusion!),
  });

/** `Left leg, cuff 10 cm wide: 85 mmHg (…)`; of both sides one after the other, and the side alone without a cuff. */
function limbWords(translate: Translator, plan: ExpandedPlan, own: readonly ExpandedPlanItem[]): string {
  const limbs = own.map((item) => {
    const side = sideWords(translate, item.side, item.limb);
    if (item.restriction === 'none') return side;
    const place = joined(side, widthWords(translate, plan, item));
    return translate('page.assessed-where', { where: place, text: pressureWords(translate, item) });
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
    percent: present(load.reached, upperLoad?.reached)
      .map(({ percentOneRepMax }) => percentText(translate, percentOneRepMax))
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

/** How the sides of an exercise share its sets. */
export function turnWords(translate: Translator, { side, limb, changeS = 0 }: PlanExercise): string {
  if (!side || !takesTurns(side)) return translate('page.at-once');
  const first = { side: sideWords(translate, sidesOf(side)[0]!, limb) };
  return changeS > 0
    ? translate('page.in-turn-change', { ...first, change: format(changeS) })
    : translate('page.in-turn', first);
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
    return [lines(present(!isSaid && `${translate('page.do-not-train')}.`, ...stops).join(' '))];
  }
  const exercises = exercisesOf(plan).map(({ listed, own, rests }) => {
    const [first] = own;
    const work = translate('page.sentence-exercise', {
      exercise: capital(listed.name),
      posture: joined(
        named(translate, 'value', first.posture ?? plan.request.posture),
        own.length > 1 && takesTurns(listed.side) && turnWords(translate, listed),
      ),
      work: workWords(translate, first, rests),
    });
    return `${limbWords(translate, plan, own)}. ${work}.`;
  });
  return [lines(...exercises)];
}
