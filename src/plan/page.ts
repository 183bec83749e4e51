import { Math } from '../quantity/maths.js';
import type { Answer, Caution } from '../answer/answer.js';
import { amount, assumedLine, cautionLine, sourceLines, workingOf, type Section } from '../answer/explain.js';
import { named, saying, sentence, type Say } from '../answer/words.js';
import {
  headingText,
  indent,
  markdownPoints,
  markdownText,
  sectionMarkdown,
  sectionText,
  type Group,
} from '../answer/write.js';
import { bloodPressureCautions } from '../pressure/blood-pressure.js';
import { clock, format } from '../quantity/format.js';
import type { ExerciseTotals } from '../session/account.js';
import { sidesOf, takesTurns, type Tempo } from '../session/prescription.js';
import type { SessionEvent, SessionTimeline } from '../session/timeline.js';
import { itemCautions } from './item-cautions.js';
import { pageWords, type Word } from './page-words.js';
import { isDoneBy, timesOf } from './places.js';
import type { LimbTotals, Plan, PlanItem } from './types.js';

/** How much of a page: all of it, or what to do and what to watch for. */
export type Detail = 'full' | 'brief';

/** One part of a page, whatever the page is written as. */
type Block =
  | { readonly heading: string; readonly level: 1 | 2 }
  | { readonly lines: readonly string[] }
  | { readonly points: readonly string[] }
  | { readonly fields: readonly (readonly [label: string, text: string])[] }
  | { readonly under: string; readonly rows: readonly (readonly [at: string, text: string])[] }
  | { readonly under: string; readonly lines: readonly string[] }
  | Required<Group>;

/** `49.9 % of LOP (may really be 32.7 to 106.1 %)` */
function reachedWords(word: Word, { reached }: Answer, of: 'page.of-occlusion' | 'page.of-maximum'): string {
  const { percent, lower, upper } = reached!;
  const range =
    lower === undefined
      ? word('page.no-range')
      : upper === undefined
        ? word('page.range-from', { lower: lower.toFixed(1) })
        : word('page.range', { lower: lower.toFixed(1), upper: upper.toFixed(1) });
  return word(of, { percent: percent.toFixed(1), range });
}

function tempoWords(word: Word, { eccentricS, bottomS, concentricS, topS }: Required<Tempo>): string {
  const pause = (seconds: number, where: 'page.at-top' | 'page.at-bottom'): string =>
    seconds > 0 ? word(where, { seconds: format(seconds) }) : '';
  return word('page.up-and-down', {
    up: format(concentricS),
    top: pause(topS, 'page.at-top'),
    down: format(eccentricS),
    bottom: pause(bottomS, 'page.at-bottom'),
  });
}

function setWords(word: Word, list: PlanItem['sets']): string {
  const counted = list.every(({ repetitions }) => repetitions !== undefined);
  const lengths = list.map(({ repetitions, durationS }) =>
    counted ? `${repetitions}` : setLength(word, repetitions, durationS),
  );
  const rests = new Set(list.slice(0, -1).map(({ restS }) => restS));
  if (rests.size > 1) {
    return list
      .map(({ restS }, index) =>
        index === list.length - 1
          ? lengths[index]!
          : word('page.then-rest', { set: lengths[index]!, rest: format(restS) }),
      )
      .join(' – ');
  }
  const chain = lengths.join(' – ');
  const sets = counted ? word('page.repetitions', { sets: chain }) : chain;
  return rests.size === 0 ? sets : word('page.then-between', { sets, rest: format([...rests][0]!) });
}

/** Each warm-up set with the rest after it. */
const warmUpWords = (word: Word, sets: PlanItem['sets']): string =>
  sets
    .map(({ repetitions, durationS, restS }) =>
      word('page.then-rest', { set: setLength(word, repetitions, durationS), rest: format(restS) }),
    )
    .join(' – ');

/** `30 repetitions`, or `2 min` or `45 s` where they are not counted. */
const setLength = (word: Word, repetitions: number | undefined, durationS: number | undefined): string =>
  repetitions === undefined
    ? durationS! % 60 === 0
      ? word('page.minutes', { minutes: format(durationS! / 60) })
      : word('page.seconds', { seconds: format(durationS!) })
    : word('page.repetitions', { sets: format(repetitions) });

function clockRows(
  { events, durationS }: SessionTimeline,
  word: Word,
  words: (event: SessionEvent, plain: string) => string,
): [string, string][] {
  const rows = events.map((event): [string, string] => {
    const { atS, event: name, set, repetitions, warmUp } = event;
    const plain =
      name === 'set'
        ? word(warmUp ? 'page.warm-up-set' : 'page.set', {
            set: set!,
            length: setLength(word, repetitions, event.durationS),
          })
        : word(`page.${name}`);
    return [clock(atS), words(event, plain)];
  });
  return [...rows, [clock(durationS), word('page.end')]];
}

/** The clock of a session of several exercises: which exercise, which limb, which pressure. */
function sessionRows(say: Say, word: Word, { session, request }: Plan): [string, string][] {
  const names = request.exercises.map(({ name }) => name);
  return clockRows(session.timeline, word, ({ event, exercise, limb, side, pressureMmHg }, plain) => {
    const words =
      event === 'set'
        ? word('page.of-exercise', { exercise: names[exercise! - 1]!, event: plain })
        : pressureMmHg === undefined
          ? plain
          : word('page.to-pressure', { event: plain, pressure: amount(say, pressureMmHg, 'mm[Hg]') });
    if (limb === undefined || side === undefined) return words;
    const where = side === 'left' || side === 'right' ? sideWords(say, side, limb) : word('page.both-sides');
    return word('page.with-side', { event: words, side: where });
  });
}

export const told = (say: Say, { value, unit }: Answer): string => amount(say, value, unit);

export const totalTime = (word: Word, { timeUnderTension, sessionTime }: ExerciseTotals): string =>
  word('page.total-time', { tension: clock(timeUnderTension.value), session: clock(sessionTime.value) });

/** The work that was or is to be done, where sets are counted. */
export function workLines(say: Say, word: Word, totals: ExerciseTotals): string[] {
  const { repetitions, volumeLoad, bodyMassVolumeLoad } = totals;
  if (repetitions.value === 0) return [];
  const count = format(repetitions.value);
  return [
    volumeLoad
      ? word('page.total-volume', { repetitions: count, volume: told(say, volumeLoad) })
      : word('page.total-repetitions', { repetitions: count }),
    ...(bodyMassVolumeLoad ? [word('page.total-body-volume', { volume: told(say, bodyMassVolumeLoad) })] : []),
  ];
}

/** What an exercise or a session adds up to. */
function totalLines(say: Say, word: Word, totals: ExerciseTotals): string[] {
  const { restrictionTime, longestRestriction } = totals;
  const { partialRestrictionTime, reperfusionTime, pressureTime, relativePressureTime } = totals;
  return [
    ...workLines(say, word, totals),
    totalTime(word, totals),
    word('page.total-restriction', {
      restriction: clock(restrictionTime.value),
      longest: clock(longestRestriction.value),
    }),
    ...(partialRestrictionTime ? [word('page.total-partial', { partial: clock(partialRestrictionTime.value) })] : []),
    ...(reperfusionTime ? [word('page.total-reperfusion', { reperfusion: clock(reperfusionTime.value) })] : []),
    ...(relativePressureTime
      ? [
          word('page.total-pressures', {
            pressure: told(say, pressureTime!),
            relative: told(say, relativePressureTime),
          }),
        ]
      : []),
  ];
}

/** What is lifted: a load, a share of body mass, both, or nothing. */
function loadWords(say: Say, word: Word, { load, bodyMassKg, bodyMassPercent }: PlanItem): string {
  const lifted =
    load &&
    amount(say, load.value, load.unit) + (load.reached ? `, ${reachedWords(word, load, 'page.of-maximum')}` : '');
  if (bodyMassPercent === undefined) return lifted ?? word('page.no-load');
  const body = word('page.body-mass', { percent: format(bodyMassPercent), mass: amount(say, bodyMassKg!, 'kg') });
  return lifted ? word('page.load-and-body', { load: lifted, body }) : body;
}

function cuffWords(say: Say, word: Word, { target, restTarget, restriction }: PlanItem): string {
  if (restriction === 'none') return word('page.no-cuff');
  const when = restTarget
    ? word('page.partial', {
        pressure: amount(say, restTarget.value, 'mm[Hg]'),
        percent: restTarget.reached!.percent.toFixed(1),
      })
    : word(`page.${restriction}`);
  return `${amount(say, target!.value, 'mm[Hg]')}, ${reachedWords(word, target!, 'page.of-occlusion')}; ${when}`;
}

/** What to do, but for the cuff. */
function doneFields(say: Say, word: Word, item: PlanItem): (readonly [string, string])[] {
  const { mode, tempo, intensityPercent, warmUp, sets, lastSetToFailure } = item;
  const fields: (readonly [string, string] | false)[] = [
    (mode === undefined || mode === 'resistance') && [word('page.load'), loadWords(say, word, item)],
    intensityPercent !== undefined && [
      word('page.intensity'),
      word('page.of-capacity', { percent: format(intensityPercent) }),
    ],
    warmUp !== undefined && [word('page.warm-up'), warmUpWords(word, warmUp)],
    [
      word('page.sets'),
      lastSetToFailure ? word('page.to-failure', { sets: setWords(word, sets) }) : setWords(word, sets),
    ],
    tempo !== undefined && [word('page.tempo'), tempoWords(word, tempo)],
  ];
  return fields.filter((field) => field !== false);
}

function itemBlocks(say: Say, word: Word, item: PlanItem): Block[] {
  const { timeline, totals } = item;
  return [
    { fields: [[word('page.cuff'), cuffWords(say, word, item)], ...doneFields(say, word, item)] },
    { under: word('page.clock'), rows: clockRows(timeline, word, (_, plain) => plain) },
    { under: word('page.totals'), lines: totalLines(say, word, totals) },
  ];
}

/** The exercises of a plan, each with its limbs together: its cuffs, what to do, and the pause before the next. */
function exerciseBlocks(say: Say, word: Word, { request, items, session }: Plan): Block[] {
  let from = 0;
  return request.exercises.flatMap((listed, index): Block[] => {
    const { name, limb, side } = listed;
    const sides = request.limbs.filter((worn) => isDoneBy(listed, worn));
    const own = items.slice(from, (from += sides.length));
    const [first, second] = own;
    if (!first) return [];
    const where = (item: PlanItem): string => sideWords(say, item.side, item.limb);
    const title = second ? word('page.both-sides') : where(first);
    const cuff = (item: PlanItem): string =>
      second ? word('page.with-side', { event: word('page.cuff'), side: where(item) }) : word('page.cuff');
    const turns = side && takesTurns(side) ? sidesOf(side)[0] : undefined;
    const pause = session.timeline.events.find(
      ({ event, exercise, set }) => exercise === index + 1 && (event === 'reperfuse' || (event === 'rest' && !set)),
    );
    const fields: (readonly [string, string] | false | undefined)[] = [
      ...own.map((item) => [cuff(item), cuffWords(say, word, item)] as const),
      second && [
        word('page.turns'),
        turns ? word('page.in-turn', { side: sideWords(say, turns, limb) }) : word('page.at-once'),
      ],
      ...doneFields(say, word, first),
      pause && [word('page.then'), `${clock(pause.durationS!)} ${word(`page.${pause.event}`)}`],
    ];
    return [
      { heading: word('page.item', { number: index + 1, exercise: name, side: title }), level: 2 },
      { fields: fields.filter((field) => !!field) },
    ];
  });
}

/** The totals of an exercise or a session, by name. */
const sumsOf = ({ cautions: _, ...sums }: ExerciseTotals) => Object.entries(sums) as [keyof typeof sums, Answer][];

/** Whether a session is more than one exercise on one limb. */
const several = ({ items }: Plan): boolean => items.length > 1;

const isSame = (a: unknown, b: unknown): boolean => JSON.stringify(a) === JSON.stringify(b);

/**
 * The working of every answer of a plan, in groups: of each limb its pressures, of each exercise what its limbs share,
 * then what is one limb’s own.
 */
export function planWorking(plan: Plan, say: Say): Required<Group>[] {
  const { items, session } = plan;
  const groups: Required<Group>[] = [];
  const add = (group: string, answers: readonly (Answer | undefined)[]): void => {
    const sections = answers.flatMap((answer): Section[] => (answer ? [workingOf(answer, say)] : []));
    if (sections.length > 0) groups.push({ group, sections });
  };
  const times = timesOf(items);
  const titles = items.map(({ exercise }, index) => (times[index]! > 1 ? `${exercise} (${times[index]!})` : exercise));
  const shown = new Map<string, Answer>();
  items.forEach(({ side, limb, occlusion, target, restTarget, oneRepMax, load, totals }, index) => {
    const title = titles[index]!;
    const where = sideWords(say, side, limb);
    const limbs = items.filter((_, at) => titles[at] === title);
    const isShared = ([name, answer]: ReturnType<typeof sumsOf>[number]): boolean =>
      limbs.every((other) => isSame(other.totals[name], answer));
    const sums = sumsOf(totals);
    if (target && !shown.has(where)) {
      shown.set(where, target);
      add(where, [occlusion, target]);
    }
    if (titles.indexOf(title) === index) {
      add(title, [oneRepMax, load, ...sums.filter(isShared).map(([, answer]) => answer)]);
    }
    const own = sums.filter((sum) => !isShared(sum)).map(([, answer]) => answer);
    add(`${title}, ${where}`, [isSame(shown.get(where), target) ? undefined : target, restTarget, ...own]);
  });
  if (several(plan)) {
    const whole = sumsOf(session.totals).map(([, answer]) => answer);
    add(say('page.session', pageWords['page.session']), whole);
  }
  return groups;
}

export const sideWords = (say: Say, side: string, limb: string): string =>
  say('page.side', pageWords['page.side'], { side: named(say, 'value', side), limb: named(say, 'value', limb) });

/** What a limb goes through in a session; `some` tells its restriction where there is any. */
export function limbLine(
  say: Say,
  word: Word,
  totals: LimbTotals,
  some: 'page.limb-time' | 'page.limb-one' | 'page.limb-many',
): string {
  const { limb, side, exercises, restrictionTime, partialRestrictionTime: lower, volumeLoad } = totals;
  const values = { side: sideWords(say, side, limb), restriction: clock(restrictionTime.value), exercises };
  return [
    word(exercises === 0 ? 'page.limb-none' : some, values),
    lower && word('page.total-partial', { partial: clock(lower.value) }),
    volumeLoad && word('page.limb-volume', { volume: told(say, volumeLoad) }),
  ]
    .filter(Boolean)
    .join(', ');
}

/** A plan as a page: in full with the working of every number below it, or in brief, to take to the gym floor. */
function planBlocks(plan: Plan, say: Say, detail: Detail): Block[] {
  const brief = detail === 'brief';
  const { request, items, limbs, session, assumptions, cautions, standing, stopSigns, sources } = plan;
  const word = saying(say, pageWords);
  const sentences = (list: Plan['standing']): string[] => list.map((said) => sentence(say, said));
  const { systolicMmHg, diastolicMmHg, ageYears, sex } = request;
  const person = [
    request.label ?? word('page.person'),
    ageYears !== undefined ? word('page.years', { age: format(ageYears) }) : undefined,
    sex && named(say, 'value', sex),
    word('page.blood-pressure', { systolic: format(systolicMmHg), diastolic: format(diastolicMmHg) }),
    named(say, 'value', request.posture),
    request.sessionsPerWeek !== undefined &&
      word('page.sessions-per-week', { sessions: format(request.sessionsPerWeek) }),
    request.weeks !== undefined && word('page.weeks', { weeks: format(request.weeks) }),
  ];
  const heading = (text: string): Block => ({ heading: text, level: 2 });
  const personal = bloodPressureCautions(systolicMmHg, diastolicMmHg).map(({ text }) => text);
  const warning = (said: Caution): string => {
    const { text } = said;
    const whose = personal.includes(text)
      ? items
      : items.filter((item) => itemCautions(item).some((own) => own.text === text));
    // Whose caution it is, where it is not the person’s or everyone’s.
    const worn = limbs.filter((limb) => limb.cautions.some((own) => own.text === text));
    const places =
      whose.length > 0 && whose.length < items.length
        ? whose.map(({ exercise, side, limb }) => `${exercise}, ${sideWords(say, side, limb)}`)
        : whose.length === 0 && worn.length < limbs.length
          ? worn.map(({ side, limb }) => sideWords(say, side, limb))
          : [];
    const plain = cautionLine(say, said);
    return places.length > 0 ? `${plain} (${places.join('; ')})` : plain;
  };
  const warnings = (which: (said: Caution) => boolean): string[] => cautions.filter(which).map(warning);
  const isNote = ({ severity }: Caution): boolean => severity === 'note';
  return [
    { heading: word('page.title'), level: 1 },
    {
      lines: [
        person.filter(Boolean).join(', '),
        ...warnings(({ severity }) => severity === 'stop'),
        ...sentences(standing.slice(0, 2)),
      ],
    },
    heading(word('page.stop')),
    { points: sentences(stopSigns) },
    ...(brief
      ? exerciseBlocks(say, word, plan)
      : items.flatMap((item, index) => {
          const side = sideWords(say, item.side, item.limb);
          return [
            heading(word('page.item', { number: index + 1, exercise: item.exercise, side })),
            ...itemBlocks(say, word, item),
          ];
        })),
    ...(!brief && several(plan)
      ? [
          heading(word('page.session')),
          { under: word('page.clock'), rows: sessionRows(say, word, plan) },
          { under: word('page.totals'), lines: totalLines(say, word, session.totals) },
        ]
      : []),
    heading(word('page.limbs')),
    {
      lines: [
        ...limbs.map((totals) =>
          limbLine(say, word, totals, totals.exercises === 1 ? 'page.limb-one' : 'page.limb-many'),
        ),
        ...(brief ? [totalTime(word, session.totals)] : []),
      ],
    },
    heading(word('page.watch')),
    {
      points: [
        ...warnings(({ severity }) => severity === 'caution'),
        // That a pressure is an estimate is said wherever it stands.
        ...warnings((said) => isNote(said) && (!brief || said.code === 'estimate-is-a-start')),
        ...assumptions.map((said) => assumedLine(say, said)),
      ],
    },
    heading(word('page.always')),
    { points: sentences(standing.slice(2)) },
    heading(word('page.working')),
    ...(brief
      ? [{ lines: [word('page.in-full', { notes: cautions.filter(isNote).length })] }]
      : [...planWorking(plan, say), heading(word('page.sources')), { points: sourceLines(sources) }]),
  ];
}

function blockText(block: Block): string[] {
  if ('heading' in block) return headingText(block.heading, block.level);
  if ('points' in block) return block.points.map((text) => `- ${text}`);
  if ('fields' in block) {
    const width = Math.max(...block.fields.map(([label]) => label.length)) + 2;
    return block.fields.map(([label, text]) => label.padEnd(width) + text);
  }
  if ('group' in block) {
    return [`[${block.group}]`, ...block.sections.flatMap((section) => indent([...sectionText(section), '']))];
  }
  if ('rows' in block) return [block.under, ...indent(block.rows.map(([at, text]) => `${at.padStart(6)}  ${text}`))];
  return 'under' in block ? [block.under, ...indent(block.lines)] : [...block.lines];
}

/** A plan as lines of text. */
export const planText = (plan: Plan, say: Say, detail: Detail): string[] =>
  planBlocks(plan, say, detail)
    .flatMap(blockText)
    // A group of workings ends in a blank line already.
    .filter((line, index, lines) => line !== '' || lines[index - 1] !== '');

function blockMarkdown(block: Block): string[] {
  if ('heading' in block)
    return [`${'#'.repeat(block.level)} ${markdownText(block.heading).replace(/^(\d+)\\/, '$1')}`];
  if ('points' in block) return markdownPoints(block.points);
  if ('fields' in block) {
    return block.fields.map(([label, text]) => `- **${markdownText(label)}** ${markdownText(text)}`);
  }
  if ('group' in block) {
    const sections = block.sections.flatMap((section) => [...sectionMarkdown(section, 4), '']);
    return [`### ${markdownText(block.group)}`, '', ...sections.slice(0, -1)];
  }
  if ('rows' in block) {
    const rows = block.rows.map(([at, text]) => `| ${at} | ${markdownText(text)} |`);
    return [`| ${markdownText(block.under)} | |`, '| ---: | --- |', ...rows];
  }
  return 'under' in block
    ? [`**${markdownText(block.under)}**`, '', ...markdownPoints(block.lines)]
    : block.lines.flatMap((line) => [markdownText(line), '']).slice(0, -1);
}

/** A plan as lines of Markdown. */
export const planMarkdown = (plan: Plan, say: Say, detail: Detail): string[] =>
  planBlocks(plan, say, detail)
    .flatMap((block) => [...blockMarkdown(block), ''])
    .slice(0, -1);
