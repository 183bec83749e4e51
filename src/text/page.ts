import type { Full } from '../answer/defined.js';
import { percentReached, type Answer, type Caution, type Reached } from '../answer/answer.js';
import { assumedLine, cautionLine, sourceLines, workingOf, type Section } from './section.js';
import type { Catalogue } from '../answer/messages.js';
import {
  amount,
  amountToSet,
  named,
  numeral,
  rangeToSet,
  translating,
  sentence,
  type Translate,
} from '../answer/translate.js';
import type { Group } from './write.js';
import { bloodPressureCautions } from '../pressure/blood-pressure.js';
import { clock, format } from '../quantity/format.js';
import { convertLoad } from '../quantity/convert.js';
import { loadUnitCode, loadUnitOf, type LoadUnit, type Unit } from '../quantity/quantities.js';
import { inSystem } from '../quantity/unit-system.js';
import type { ExerciseTotals } from '../session/totals.js';
import type { Tempo } from '../session/notation.js';
import type { SessionEvent } from '../session/timeline.js';
import { sidesOf, takesTurns } from '../session/prescription.js';
import { byAudience } from '../plan/audience.js';
import { idsIn } from './cite.js';
import { namedPart, part, title, type Block } from './blocks.js';
import { messageKey } from '../plan/severity.js';
import { itemCautions } from '../plan/item-cautions.js';
import { placeWords, sideWords } from '../plan/measures.js';
import { documentMessages } from '../plan/document-messages.js';
import { pageWords, type Word } from './page-words.js';
import { usesLimb, isSameLimb, timesOf } from '../plan/limb-and-side.js';
import { questionMessages } from '../plan/screening-messages.js';
import { inForce, type Stop } from '../plan/stops.js';
import type { Disclaimer } from '../plan/disclaimers.js';
import type { ExpandedLimbTotals, ExpandedPlan, PlanExercise, ExpandedPlanItem, PlanSet } from '../plan/types.js';
import { perSet } from '../plan/set-counts.js';

/** How much of a page: all of it, what to do and what to watch for, or a sentence for each exercise of a plan. */
export type Detail = 'full' | 'brief' | 'sentence';

/** As many cautions a person reads in the gym. */
const MOST_FOR_PERSON = 3;

/** Sentences for everyone, below the numbers; all else that every document says is above them. */
const ALWAYS = [
  'screen-first',
  'supervise-first-sessions',
  'reperfuse-between-exercises',
  'side-effects-usual',
  'burn-usual',
  'watch-afterwards',
];
/** What is usual, so that an ordinary set does not look like a reason to stop: next to the stop criteria. */
const USUAL = 'burn-usual';

export const disclaimerLines = (translate: Translate, disclaimers: readonly Disclaimer[]): string[] =>
  disclaimers.filter(({ code }) => !ALWAYS.includes(code)).map((printed) => sentence(translate, printed));

/** Sentences of every page; in brief what to watch for after the session. */
export const always = (translate: Translate, disclaimers: readonly Disclaimer[], detail: Detail = 'full'): string[] =>
  disclaimers
    .filter(({ code }) => (detail === 'brief' ? code === 'watch-afterwards' : ALWAYS.includes(code) && code !== USUAL))
    .map((printed) => sentence(translate, printed));

/** The stops of a document, before anything else: those in force, then those that a practitioner lifted. */
export function stopBlocks(
  translate: Translate,
  stops: readonly Stop[],
  noSettings: 'page.no-settings' | 'page.no-settings-record' = 'page.no-settings',
): Block[] {
  const word = translating(translate, pageWords);
  const lifted = stops.flatMap((stop) => {
    if (!stop.lifted) return [];
    const { by, on, why } = stop.lifted;
    return [word('page.lifted-by', { stop: stopName(translate, stop), role: word(`page.role-${by}`), date: on, why })];
  });
  const disclaimers = stopLines(translate, inForce(stops));
  return [
    ...(disclaimers.length > 0
      ? namedPart(
          'do-not-train',
          part(word('page.do-not-train'), { points: disclaimers }, { lines: [word(noSettings)] }),
        )
      : []),
    ...part(word('page.lifted'), { points: lifted }),
  ];
}

/** What stops say, each sentence once, with the days since when. */
export function stopLines(translate: Translate, stops: readonly Stop[]): string[] {
  const days = new Map<string, string[]>();
  for (const { code, text: english, values = {}, since } of stops) {
    const text = sentence(translate, { code, text: english, values });
    days.set(text, [...(days.get(text) ?? []), ...(since === undefined ? [] : [since])]);
  }
  return [...days].map(([text, since]) =>
    since.length === 0 ? text : translating(translate, pageWords)('page.dated', { text, date: since.join(', ') }),
  );
}

/** What a stop is about, without what it asks for: its symptom, its question, or its figure. */
function stopName(translate: Translate, { code, about, text, values = {} }: Stop): string {
  const named = (name: string | undefined, table: Catalogue): string | undefined =>
    name !== undefined && Object.hasOwn(table, name) ? translate(name, table[name]!, values) : undefined;
  const question = named(`ask-${code}`, questionMessages);
  return (
    named(about, documentMessages) ??
    (question === undefined ? undefined : translating(translate, pageWords)('page.answered-yes', { question })) ??
    named(`stop.${code}`, pageWords) ??
    sentence(translate, { code, text, values })
  );
}

/** `49.9 % of LOP (95 % interval 32.7–106.1 %)` */
function reachedWords(word: Word, reached: Reached, of: 'page.of-occlusion' | 'page.of-maximum'): string {
  const { lower, upper } = reached;
  const range =
    lower === undefined
      ? word('page.no-range')
      : upper === undefined
        ? word('page.range-from', { lower: lower.toFixed(1) })
        : word('page.range', { lower: lower.toFixed(1), upper: upper.toFixed(1) });
  return word(of, { percent: percentReached(reached).toFixed(1), range });
}

function tempoWords(word: Word, { eccentricS, bottomS, concentricS, topS }: Full<Tempo>): string {
  const pause = (seconds: number, where: 'page.at-top' | 'page.at-bottom'): string =>
    seconds > 0 ? word(where, { seconds: format(seconds) }) : '';
  return word('page.up-and-down', {
    up: format(concentricS),
    top: pause(topS, 'page.at-top'),
    down: format(eccentricS),
    bottom: pause(bottomS, 'page.at-bottom'),
  });
}

/** `30 s` or `2 min` */
const lengthWords = (word: Word, seconds: number): string =>
  seconds >= 60 && seconds % 60 === 0
    ? word('page.minutes', { minutes: format(seconds / 60) })
    : word('page.seconds', { seconds: format(seconds) });

/** `30 repetitions`, or `2 min` or `45 s` where they are not counted. */
const setLength = (word: Word, repetitions: number | undefined, durationS: number | undefined): string =>
  repetitions === undefined ? lengthWords(word, durationS!) : word('page.repetitions', { sets: format(repetitions) });

/** `30 – 15 – 15 – 15 repetitions, 30 s rest between sets`, `5 × 5 min, 3 min rest between sets` */
export function setWords(word: Word, sets: ExpandedPlanItem['sets'], rests: readonly number[]): string {
  const counted = sets.every(({ repetitions }) => repetitions !== undefined);
  const lengths = sets.map(({ repetitions, durationS }) =>
    counted ? format(repetitions!) : setLength(word, repetitions, durationS),
  );
  if (new Set(rests).size > 1) {
    return lengths
      .map((set, index) =>
        index < rests.length ? word('page.then-rest', { set, rest: lengthWords(word, rests[index]!) }) : set,
      )
      .join(' – ');
  }
  const alike = lengths.length > 1 && new Set(lengths).size === 1;
  const chain = alike ? word('page.times', { count: lengths.length, set: lengths[0]! }) : lengths.join(' – ');
  const all = counted ? word('page.repetitions', { sets: chain }) : chain;
  return rests.length === 0 ? all : word('page.then-between', { sets: all, rest: lengthWords(word, rests[0]!) });
}

/** Each warm-up set with its load and the rest after it. */
const warmUpWords = (translate: Translate, word: Word, sets: ExpandedPlanItem['sets'], unit: Unit): string =>
  sets
    .map(({ repetitions, durationS, restS, load }) =>
      word('page.then-rest', {
        set:
          load === undefined
            ? setLength(word, repetitions, durationS)
            : word('page.set-with-load', {
                set: setLength(word, repetitions, durationS),
                load: amountToSet(translate, load, unit),
              }),
        rest: lengthWords(word, restS),
      }),
    )
    .join(' – ');

/** The clock of the session: which exercise, which limb and which pressure, where there is more than one. */
function clockRows(translate: Translate, word: Word, { session, request, limbs }: ExpandedPlan): [string, string][] {
  const { events, durationS } = session.timeline;
  const names = request.exercises.map(({ name }) => name);
  const rows = events.map(({ atS, event, exercise, limb, side, pressureMmHg, ...more }): [string, string] => {
    const { set, repetitions, warmUp, durationS: lastsS } = more;
    const length = event === 'set' ? setLength(word, repetitions, lastsS) : '';
    const plain =
      event === 'set' ? word(warmUp ? 'page.warm-up-set' : 'page.set', { set: set!, length }) : word(`page.${event}`);
    const words =
      event === 'set' && exercise !== undefined
        ? word('page.of-exercise', { exercise: names[exercise - 1]!, event: plain })
        : pressureMmHg === undefined
          ? plain
          : word('page.to-pressure', { event: plain, pressure: amount(translate, pressureMmHg, 'mm[Hg]') });
    if (limbs.length < 2 || limb === undefined || side === undefined) return [clock(atS), words];
    const one = side === 'left' || side === 'right';
    const where = one ? sideWords(translate, side, limb) : word('page.both-sides');
    return [clock(atS), word('page.with-side', { event: words, side: where })];
  });
  return [...rows, [clock(durationS), word('page.end')]];
}

export const told = (translate: Translate, { value, unit }: Answer): string => amount(translate, value, unit);

export const totalTime = (word: Word, { timeUnderTension: tension, sessionTime }: ExerciseTotals): string =>
  [
    ...(tension.value > 0 ? [word('page.total-tension', { tension: clock(tension.value) })] : []),
    word('page.total-time', { session: clock(sessionTime.value) }),
  ].join(', ');

/** The work that was or is to be done, where sets are counted. */
export function workLines(translate: Translate, word: Word, totals: ExerciseTotals): string[] {
  const { repetitions, volumeLoad, bodyMassVolumeLoad } = totals;
  if (repetitions.value === 0) return [];
  const count = format(repetitions.value);
  return [
    volumeLoad
      ? word('page.total-volume', { repetitions: count, volume: told(translate, volumeLoad) })
      : word('page.total-repetitions', { repetitions: count }),
    ...(bodyMassVolumeLoad ? [word('page.total-body-volume', { volume: told(translate, bodyMassVolumeLoad) })] : []),
  ];
}

/** What an exercise on one limb or a session of several adds up to. */
function totalLines(translate: Translate, word: Word, totals: ExerciseTotals, cuffedLimbs = 1): string[] {
  const { restrictionTime, longestRestriction } = totals;
  const { partialRestrictionTime, reperfusionTime, pressureTime, relativePressureTime } = totals;
  return [
    ...workLines(translate, word, totals),
    totalTime(word, totals),
    ...(longestRestriction.value > 0
      ? [
          word('page.total-restriction', {
            restriction: clock(restrictionTime.value),
            longest: clock(longestRestriction.value),
          }),
        ]
      : []),
    ...(partialRestrictionTime ? [word('page.total-partial', { partial: clock(partialRestrictionTime.value) })] : []),
    ...(reperfusionTime ? [word('page.total-reperfusion', { reperfusion: clock(reperfusionTime.value) })] : []),
    ...(relativePressureTime
      ? [
          word(cuffedLimbs > 1 ? 'page.total-pressures-limbs' : 'page.total-pressures', {
            limbs: cuffedLimbs,
            pressure: told(translate, pressureTime!),
            relative: told(translate, relativePressureTime),
          }),
        ]
      : []),
  ];
}

/** What is lifted: a load, a share of body mass, both, or nothing. */
export function loadWords(
  translate: Translate,
  word: Word,
  { load, upperLoad, bodyMassKg, bodyMassPercent }: ExpandedPlanItem,
): string {
  const shares = [load, upperLoad].flatMap((one) =>
    one?.reached ? [reachedWords(word, one.reached, 'page.of-maximum')] : [],
  );
  const loads = load && rangeToSet(translate, load, upperLoad);
  const [from, to] = shares;
  const lifted =
    loads && to !== undefined
      ? word('page.load-ends', { loads, from: from!, to })
      : loads && [loads, ...shares].join(', ');
  if (bodyMassPercent === undefined) return lifted ?? word('page.no-load');
  const body = word('page.body-mass', { percent: format(bodyMassPercent), mass: amount(translate, bodyMassKg!, 'kg') });
  return lifted ? word('page.load-and-body', { load: lifted, body }) : body;
}

/** `90 mmHg, 48.1 % of LOP (95 % interval 44.1–52.9 %), cuff 10 cm wide; inflated from the first set to the last` */
function cuffWords(translate: Translate, word: Word, { request }: ExpandedPlan, item: ExpandedPlanItem): string {
  const { target, restTarget, restriction } = item;
  if (restriction === 'none') return word('page.no-cuff');
  const when = restTarget
    ? word('page.partial', {
        pressure: amount(translate, restTarget.value, 'mm[Hg]'),
        percent: restTarget.reached!.percentLop.toFixed(1),
      })
    : word(`page.${restriction}`);
  const width = request.limbs.find((limb) => isSameLimb(limb, item))?.cuffWidthCm;
  const limbCuff = width === undefined ? [] : [word('page.cuff-width', { width: amountToSet(translate, width, 'cm') })];
  const pressure = [
    amount(translate, target!.value, 'mm[Hg]'),
    reachedWords(word, target!.reached!, 'page.of-occlusion'),
    ...limbCuff,
  ];
  return `${pressure.join(', ')}; ${when}`;
}

type Field = readonly [label: string, text: string];

/** What each set has of its own: load, repetitions in reserve, effort. */
export function setFields(translate: Translate, word: Word, sets: readonly PlanSet[], own: LoadUnit): Field[] {
  const write = (value: number): string => numeral(translate, value);
  const code = loadUnitCode(own);
  // In the unit that you ask for, and in the one that is set.
  const units = [...new Set([inSystem(0, code, translate.units).unit as Unit, code])];
  const fields: (readonly [string, string | undefined])[] = [
    ...units.map((unit): [string, string | undefined] => [
      word('page.set-loads', { unit: loadUnitOf(unit) }),
      perSet(sets, ({ load }) => load && convertLoad(load, own, loadUnitOf(unit)), write),
    ]),
    [word('page.set-reserve'), perSet(sets, ({ repetitionsInReserve }) => repetitionsInReserve, write)],
    [word('page.set-effort'), perSet(sets, ({ reserveRpe }) => reserveRpe, write)],
  ];
  return fields.flatMap(([label, text]) => (text === undefined ? [] : [[label, text]]));
}

/** What to do, but for the cuff. */
function doneFields(translate: Translate, word: Word, item: ExpandedPlanItem, rests: readonly number[]): Field[] {
  const { mode, tempo, intensityPercent, warmUp, sets, lastSetToFailure, load } = item;
  const done = setWords(word, sets, rests);
  const fields: (Field | false)[] = [
    (mode === undefined || mode === 'resistance') && [word('page.load'), loadWords(translate, word, item)],
    intensityPercent !== undefined && [
      word('page.intensity'),
      word('page.of-capacity', { percent: format(intensityPercent) }),
    ],
    warmUp !== undefined && [word('page.warm-up'), warmUpWords(translate, word, warmUp, load?.unit ?? 'kg')],
    [word('page.sets'), lastSetToFailure ? word('page.to-failure', { sets: done }) : done],
    ...setFields(translate, word, sets, load ? loadUnitOf(load.unit) : 'kg'),
    tempo !== undefined && [word('page.tempo'), tempoWords(word, tempo)],
  ];
  return fields.filter((field) => field !== false);
}

/** How the sides of an exercise share its sets. */
function turnWords(translate: Translate, word: Word, { side, limb, changeS = 0 }: PlanExercise): string {
  if (!side || !takesTurns(side)) return word('page.at-once');
  const first = { side: sideWords(translate, sidesOf(side)[0]!, limb) };
  return changeS > 0 ? word('page.in-turn-change', { ...first, change: format(changeS) }) : word('page.in-turn', first);
}

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
    const [first, ...others] = items.slice(from, (from += sides.length));
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

/** A box for each set, with what is in it: `☐ 30  ☐ 15`, `☐ 3 × 87.5 kg`, `☐ 5 min`. */
const boxes = (translate: Translate, word: Word, { sets, load: one }: ExpandedPlanItem): string =>
  sets
    .map(({ repetitions, durationS, load }) => {
      const set = repetitions === undefined ? lengthWords(word, durationS!) : format(repetitions);
      return `☐ ${load === undefined ? set : `${set} × ${amount(translate, load, one!.unit)}`}`;
    })
    .join('  ');

/** The exercises of a plan as parts of its page. */
function exerciseBlocks(translate: Translate, word: Word, plan: ExpandedPlan, detail: Detail): Block[] {
  return exercisesOf(plan).flatMap(({ listed, number, own, rests, pause }): Block[] => {
    const [first, second] = own;
    const where = ({ side, limb }: ExpandedPlanItem): string => sideWords(translate, side, limb);
    const ofSide = (label: string, item: ExpandedPlanItem): string =>
      second ? word('page.with-side', { event: label, side: where(item) }) : label;
    const bare = first.restriction === 'none';
    const inTurn = second && listed.side !== undefined && takesTurns(listed.side);
    const fields: (Field | false | undefined)[] = [
      ...(bare ? [first] : own).map((item): Field => [
        bare ? word('page.cuff') : ofSide(word('page.cuff'), item),
        cuffWords(translate, word, plan, item),
      ]),
      [word('page.posture'), named(translate, 'value', first.posture ?? plan.request.posture)],
      second && [word('page.turns'), turnWords(translate, word, listed)],
      ...doneFields(translate, word, first, rests),
      ...(detail === 'brief'
        ? (inTurn ? own : [first]).map((item): Field => [
            inTurn ? ofSide(word('page.tick'), item) : word('page.tick'),
            boxes(translate, word, item),
          ])
        : []),
      pause && [word('page.then'), `${clock(pause.durationS!)} min ${word(`page.${pause.event as 'rest'}`)}`],
    ];
    const title = second ? word('page.both-sides') : where(first);
    const blocks: Block[] = [
      { heading: word('page.item', { number, exercise: listed.name, side: title }), level: 2 },
      { fields: fields.filter((field) => !!field) },
      ...(detail === 'full' && !second && !several(plan)
        ? [{ under: word('page.clock'), rows: clockRows(translate, word, plan) }]
        : []),
      ...(detail === 'full'
        ? own.map((item) => ({
            under: ofSide(word('page.totals'), item),
            lines: totalLines(translate, word, item.totals),
          }))
        : []),
    ];
    return namedPart('exercise', blocks);
  });
}

/** The totals of an exercise or a session, by name. */
const sumsOf = ({ cautions: _, ...sums }: ExerciseTotals) => Object.entries(sums) as [keyof typeof sums, Answer][];

/** An answer and those that it was worked out from. */
const answersIn = (answer: Answer | undefined): Answer[] =>
  answer === undefined
    ? []
    : [answer, ...Object.values(answer.inputs).flatMap((input) => (isAnswer(input) ? answersIn(input) : []))];
const isAnswer = (input: unknown): input is Answer =>
  typeof input === 'object' && input !== null && Array.isArray((input as Answer).assumptions);

/** Whether a session is more than one exercise on one limb. */
const several = ({ items }: ExpandedPlan): boolean => items.length > 1;

const isSame = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

/**
 * The working of every answer of a plan, in groups: of each limb its pressures, of each exercise what its limbs share,
 * then what is one limb’s own. Lines that are `above` are left out.
 */
export function planWorking(
  plan: ExpandedPlan,
  translate: Translate,
  above: readonly string[] = [],
): Required<Group>[] {
  const { items, session } = plan;
  const groups: Required<Group>[] = [];
  const disclaimers = stopLines(translate, inForce(plan.stops));
  if (disclaimers.length > 0) {
    const word = translating(translate, pageWords);
    return [word('page.do-not-train'), ...disclaimers, word('page.no-settings')].map((group) => ({
      group,
      sections: [],
    }));
  }
  // What several answers rest on is printed once.
  const printed = new Set(above);
  const add = (group: string, answers: readonly (Answer | undefined)[]): void => {
    const sections = answers.flatMap((answer): Section[] => (answer ? [workingOf(answer, translate, printed)] : []));
    if (sections.length > 0) groups.push({ group, sections });
  };
  const times = timesOf(items);
  const titles = items.map(({ exercise }, index) => (times[index]! > 1 ? `${exercise} (${times[index]!})` : exercise));
  const shown = new Map<string, Answer>();
  items.forEach(({ side, limb, occlusion, target, restTarget, oneRepMax, load, upperLoad, totals }, index) => {
    const title = titles[index]!;
    const where = sideWords(translate, side, limb);
    const limbs = items.filter((_, at) => titles[at] === title);
    const isShared = ([name, answer]: ReturnType<typeof sumsOf>[number]): boolean =>
      limbs.every((other) => isSame(other.totals[name], answer));
    const sums = sumsOf(totals);
    if (target && !shown.has(where)) {
      shown.set(where, target);
      add(where, [occlusion, target]);
    }
    if (titles.indexOf(title) === index) {
      add(title, [oneRepMax, load, upperLoad, ...sums.filter(isShared).map(([, answer]) => answer)]);
    }
    const own = sums.filter((sum) => !isShared(sum)).map(([, answer]) => answer);
    add(`${title}, ${where}`, [isSame(shown.get(where), target) ? undefined : target, restTarget, ...own]);
  });
  if (several(plan)) {
    const whole = sumsOf(session.totals).map(([, answer]) => answer);
    add(translate('page.session', pageWords['page.session']), whole);
  }
  return groups;
}

/** What a limb goes through in a session; `some` tells its restriction where there is any. */
export function limbLine(
  translate: Translate,
  word: Word,
  totals: ExpandedLimbTotals,
  some: 'page.limb-time' | 'page.limb-one' | 'page.limb-many',
): string {
  const { limb, side, exercises, restrictionTime, partialRestrictionTime: lower, volumeLoad } = totals;
  const values = { side: sideWords(translate, side, limb), restriction: clock(restrictionTime.value), exercises };
  return [
    word(exercises === 0 ? 'page.limb-none' : some, values),
    lower && word('page.total-partial', { partial: clock(lower.value) }),
    volumeLoad && word('page.limb-volume', { volume: told(translate, volumeLoad) }),
  ]
    .filter(Boolean)
    .join(', ');
}

/** A line with the exercises or limbs that it is about. */
export const withPlaces = (line: string, places: readonly string[]): string =>
  places.length > 0 ? `${line} (${[...new Set(places)].join('; ')})` : line;

/** Cautions as lines, each with the exercises or limbs it is about, where it is not the person’s or everyone’s. */
function warnings(
  translate: Translate,
  { request, items, limbs }: ExpandedPlan,
  cautions: readonly Caution[],
): string[] {
  const personal = bloodPressureCautions(request.systolicMmHg, request.diastolicMmHg).map(messageKey);
  return cautions.map((printed) => {
    const key = messageKey(printed);
    const isSaid = (own: readonly Caution[]): boolean => own.some((other) => messageKey(other) === key);
    const whose = personal.includes(key) ? items : items.filter((item) => isSaid(itemCautions(item)));
    const limbCuff = limbs.filter((limb) => isSaid(limb.cautions));
    const places =
      whose.length > 0 && whose.length < items.length
        ? whose.map((item) => placeWords(translate, item))
        : whose.length === 0 && limbCuff.length < limbs.length
          ? limbCuff.map(({ side, limb }) => sideWords(translate, side, limb))
          : [];
    return withPlaces(cautionLine(translate, printed), places);
  });
}

/** What was assumed of a measured pressure: the practitioner knows better. */
const OF_MEASUREMENT = ['measured-posture-as-planned', 'measured-cuff-as-planned'];

/** What was assumed of the measured pressures of a plan, each once. */
const measuredAs = (translate: Translate, { items }: ExpandedPlan): string[] => [
  ...new Set(
    items
      .flatMap(({ occlusion }) => answersIn(occlusion))
      .flatMap(({ assumptions }) => assumptions.filter(({ code }) => OF_MEASUREMENT.includes(code)))
      .map((assumed) => assumedLine(translate, assumed)),
  ),
];

/** Who trains, in one line. */
function personLine(translate: Translate, word: Word, request: ExpandedPlan['request']): string {
  const { label, date, ageYears, sex, systolicMmHg, diastolicMmHg, sessionsPerWeek, weeks } = request;
  const parts = [
    date,
    label ?? word('page.person'),
    ageYears !== undefined && word('page.years', { age: format(ageYears) }),
    sex && named(translate, 'value', sex),
    word('page.blood-pressure', { systolic: format(systolicMmHg), diastolic: format(diastolicMmHg) }),
    sessionsPerWeek !== undefined && word('page.sessions-per-week', { sessions: format(sessionsPerWeek) }),
    weeks !== undefined && word('page.weeks', { weeks: format(weeks) }),
  ];
  return parts.filter(Boolean).join(', ');
}

/** A plan as a page: in full with the working of every number below it, or in brief, for the gym. */
export function planBlocks(plan: ExpandedPlan, translate: Translate, detail: Detail): Block[] {
  const { request, limbs, session, assumptions, cautions, disclaimers, stopCriteria, stops } = plan;
  const word = translating(translate, pageWords);
  const brief = detail === 'brief';
  const top: Block[] = [
    title(word('page.title')),
    ...stopBlocks(translate, stops),
    {
      lines: [
        personLine(translate, word, request),
        ...(request.notes === undefined ? [] : [word('page.notes', { notes: request.notes })]),
        ...disclaimerLines(translate, disclaimers),
      ],
    },
  ];
  const cuffed = plan.items.some(({ restriction }) => restriction !== 'none');
  const usual = disclaimers.filter(({ code }) => code === USUAL);
  const criteria = namedPart(
    'stop-criteria',
    part(
      word(cuffed ? 'page.stop' : 'page.stop-no-cuff'),
      { points: stopCriteria.map((printed) => sentence(translate, printed)) },
      { lines: usual.map((printed) => sentence(translate, printed)) },
    ),
  );
  const below = part(word(brief ? 'page.afterwards' : 'page.always'), {
    points: always(translate, disclaimers, detail),
  });
  if (inForce(plan.stops).length > 0) return [...top, ...criteria, ...below];

  // A stop that was lifted is shown with its decision, and not as a caution again.
  const left = cautions.filter(({ code }) => !stops.some((stop) => stop.code === code));
  const { person, practitioner, method } = byAudience(left);
  const shown = brief ? person.slice(0, MOST_FOR_PERSON) : person;
  const rest = left.length - shown.length;
  const more = rest === 0 ? [] : [word(rest === 1 ? 'page.more-one' : 'page.more', { count: rest })];
  const limbLines = limbs.map((totals) =>
    limbLine(translate, word, totals, totals.exercises === 1 ? 'page.limb-one' : 'page.limb-many'),
  );
  const watch = { points: warnings(translate, plan, shown) };
  const exercises = exerciseBlocks(translate, word, plan, detail);
  if (brief) {
    return [
      ...top,
      ...(shown.length > 0 ? part(word('page.watch'), watch, { lines: more }) : []),
      ...criteria,
      ...exercises,
      ...part(word('page.limbs'), { lines: [...limbLines, totalTime(word, session.totals)] }),
      ...namedPart(
        'write-down',
        part(word('page.write-down'), {
          lines: [
            ...limbs.flatMap(({ side, limb, exercises }) =>
              exercises > 0 ? [word('page.write-held', { side: sideWords(translate, side, limb) })] : [],
            ),
            word('page.write-pain'),
            word('page.write-effort'),
          ],
        }),
      ),
      ...below,
      ...part(word('page.full'), { lines: [...(shown.length > 0 ? [] : more), word('page.in-full')] }),
    ];
  }
  const assumed = measuredAs(translate, plan);
  const cuffedLimbs = limbs.filter(({ exercises }) => exercises > 0).length;
  const clockAndTotals: Block[] = [
    { under: word('page.clock'), rows: clockRows(translate, word, plan) },
    { under: word('page.totals'), lines: totalLines(translate, word, session.totals, cuffedLimbs) },
  ];
  return [
    ...top,
    ...criteria,
    ...exercises,
    ...(several(plan) ? part(word('page.session'), ...clockAndTotals) : []),
    ...part(word('page.limbs'), { lines: limbLines }),
    ...part(word('page.watch'), watch),
    ...part(word('page.practitioner'), { points: [...warnings(translate, plan, practitioner), ...assumed] }),
    ...below,
    ...part(word('page.method'), {
      points: [...warnings(translate, plan, method), ...assumptions.map((printed) => assumedLine(translate, printed))],
    }),
    ...part(word('page.working'), ...planWorking(plan, translate, assumed)),
    ...part(word('page.sources'), { points: sourceLines(idsIn(plan)) }),
  ];
}
