import { Math } from '../quantity/maths.js';
import type { Answer } from '../answer/answer.js';
import { amount, sourceLines, workingOf, type Section } from '../answer/explain.js';
import type { Catalogue } from '../answer/messages.js';
import { named, saying, type Say } from '../answer/words.js';
import { indent, markdownPoints, markdownText, sectionMarkdown, sectionText, type Group } from '../answer/write.js';
import { clock, format } from '../quantity/format.js';
import type { Plan, PlanItem, StandingSentence } from './types.js';

/** What the page of a plan says around its numbers. */
export const pageWords = {
  'page.title': 'Session plan',
  'page.stop': 'Let the cuff down at once on',
  'page.limbs': 'Each limb in this session',
  'page.watch': 'Watch for',
  'page.always': 'Always',
  'page.working': 'Working',
  'page.sources': 'Sources',
  'page.person': 'One person',
  'page.years': '{age} years',
  'page.sessions-per-week': '{sessions} sessions a week',
  'page.weeks': 'for {weeks} weeks',
  'page.blood-pressure': 'blood pressure {systolic}/{diastolic} mmHg',
  'page.side': '{side} {limb}',
  'page.item': '{number}. {exercise}, {side}',
  'page.cuff': 'Cuff',
  'page.load': 'Load',
  'page.sets': 'Sets',
  'page.tempo': 'Tempo',
  'page.clock': 'Clock',
  'page.totals': 'Totals',
  'page.no-cuff': 'none',
  'page.continuous': 'cuff up from the first set to the last',
  'page.intermittent': 'cuff up in the sets, down in the rests',
  'page.none': 'no cuff',
  'page.of-occlusion': '{percent} % of LOP ({range})',
  'page.of-maximum': '{percent} % of the maximum ({range})',
  'page.no-range': 'no range can be given',
  'page.range-from': 'may really be {lower} % and above',
  'page.range': 'may really be {lower} to {upper} %',
  'page.up-and-down': '{up} s up{top}, {down} s down{bottom}',
  'page.at-top': ', {seconds} s at the top',
  'page.at-bottom': ', {seconds} s at the bottom',
  'page.repetitions': '{sets} repetitions',
  'page.repetitions-and-rest': '{sets} repetitions, {rest} s rest between sets',
  'page.then-rest': '{repetitions} (then {rest} s rest)',
  'page.inflate': 'cuff up',
  'page.lower': 'cuff at the lower pressure',
  'page.deflate': 'cuff down',
  'page.reperfuse': 'pause, cuff down',
  'page.rest': 'rest',
  'page.set': 'set {set}: {repetitions} repetitions',
  'page.end': 'end',
  'page.total-repetitions': 'repetitions {repetitions}',
  'page.total-volume': 'repetitions {repetitions}, volume load {volume}',
  'page.total-time': 'time under tension {tension}, session time {session}',
  'page.total-restriction': 'restriction {restriction}, longest unbroken {longest}',
  'page.limb-one': '{side}: {restriction} of restriction in 1 exercise',
  'page.limb-many': '{side}: {restriction} of restriction in {exercises} exercises',
} as const satisfies Catalogue;

type Word = ReturnType<typeof saying<typeof pageWords>>;

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

function tempoWords(word: Word, { eccentricS, bottomS, concentricS, topS }: PlanItem['tempo']): string {
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
  const rests = new Set(list.slice(0, -1).map(({ restS }) => restS));
  const sets = list.map(({ repetitions }) => repetitions).join(' – ');
  if (rests.size === 0) return word('page.repetitions', { sets });
  if (rests.size === 1) return word('page.repetitions-and-rest', { sets, rest: format([...rests][0]!) });
  return list
    .map(({ repetitions, restS }, index) =>
      index === list.length - 1 ? `${repetitions}` : word('page.then-rest', { repetitions, rest: format(restS) }),
    )
    .join(' – ');
}

function clockRows(word: Word, { events, durationS }: PlanItem['timeline']): [string, string][] {
  const rows = events.map(({ atS, event, set, repetitions }): [string, string] => [
    clock(atS),
    event === 'set' ? word('page.set', { set: set!, repetitions: repetitions! }) : word(`page.${event}`),
  ]);
  return [...rows, [clock(durationS), word('page.end')]];
}

function itemBlocks(say: Say, word: Word, { load, target, totals, ...item }: PlanItem): Block[] {
  const { volumeLoad, repetitions, timeUnderTension, restrictionTime, longestRestriction, sessionTime } = totals;
  const cuff =
    `${amount(say, target.value, 'mm[Hg]')}, ${reachedWords(word, target, 'page.of-occlusion')}; ` +
    word(`page.${item.restriction}`);
  const count = format(repetitions.value);
  return [
    {
      fields: [
        [word('page.cuff'), item.restriction === 'none' ? word('page.no-cuff') : cuff],
        [word('page.load'), `${amount(say, load.value, load.unit)}, ${reachedWords(word, load, 'page.of-maximum')}`],
        [word('page.sets'), setWords(word, item.sets)],
        [word('page.tempo'), tempoWords(word, item.tempo)],
      ],
    },
    { under: word('page.clock'), rows: clockRows(word, item.timeline) },
    {
      under: word('page.totals'),
      lines: [
        volumeLoad
          ? word('page.total-volume', {
              repetitions: count,
              volume: amount(say, volumeLoad.value, volumeLoad.unit),
            })
          : word('page.total-repetitions', { repetitions: count }),
        word('page.total-time', { tension: clock(timeUnderTension.value), session: clock(sessionTime.value) }),
        word('page.total-restriction', {
          restriction: clock(restrictionTime.value),
          longest: clock(longestRestriction.value),
        }),
      ],
    },
  ];
}

/** The working of every answer of a plan, in groups; answers that several items share are worked through once. */
export function planWorking({ items }: Plan, say: Say): Required<Group>[] {
  const groups = new Map<string, Section[]>();
  for (const { exercise, side, limb, occlusion, target, oneRepMax, load, totals } of items) {
    const { cautions: _, ...sums } = totals;
    const parts: [string, Answer[]][] = [
      [sideWords(say, side, limb), [occlusion, target]],
      [exercise, [oneRepMax, load, ...Object.values(sums)]],
    ];
    for (const [title, answers] of parts) {
      if (!groups.has(title))
        groups.set(
          title,
          answers.map((answer) => workingOf(answer, say)),
        );
    }
  }
  return [...groups].map(([group, sections]) => ({ group, sections }));
}

const sideWords = (say: Say, side: string, limb: string): string =>
  say('page.side', pageWords['page.side'], { side: named(say, 'value', side), limb: named(say, 'value', limb) });

/** A plan as a page to take to the gym floor, with the working of every number below it. */
function planBlocks(plan: Plan, say: Say): Block[] {
  const { request, items, limbs, cautions, standing, stopSigns, sources } = plan;
  const word = saying(say, pageWords);
  const sentence = ({ code, text }: StandingSentence): string => say(code, text);
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
  return [
    { heading: word('page.title'), level: 1 },
    { lines: [person.filter(Boolean).join(', '), ...standing.slice(0, 2).map(sentence)] },
    heading(word('page.stop')),
    { points: stopSigns.map(sentence) },
    ...items.flatMap((item, index) => {
      const side = sideWords(say, item.side, item.limb);
      return [
        heading(word('page.item', { number: index + 1, exercise: item.exercise, side })),
        ...itemBlocks(say, word, item),
      ];
    }),
    heading(word('page.limbs')),
    {
      lines: limbs.map(({ limb, side, exercises, restrictionTime }) =>
        word(exercises === 1 ? 'page.limb-one' : 'page.limb-many', {
          side: sideWords(say, side, limb),
          restriction: clock(restrictionTime.value),
          exercises,
        }),
      ),
    },
    heading(word('page.watch')),
    {
      points: cautions.map(
        ({ severity, code, text, values }) => `${named(say, 'severity', severity)}: ${say(code, text, values)}`,
      ),
    },
    heading(word('page.always')),
    { points: standing.slice(2).map(sentence) },
    heading(word('page.working')),
    ...planWorking(plan, say),
    heading(word('page.sources')),
    { points: sourceLines(sources) },
  ];
}

function blockText(block: Block): string[] {
  if ('heading' in block) {
    const { heading, level } = block;
    return [...(level === 1 ? [] : ['']), heading.toUpperCase(), (level === 1 ? '=' : '-').repeat(heading.length)];
  }
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
export const planText = (plan: Plan, say: Say): string[] =>
  planBlocks(plan, say)
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
export const planMarkdown = (plan: Plan, say: Say): string[] =>
  planBlocks(plan, say)
    .flatMap((block) => [...blockMarkdown(block), ''])
    .slice(0, -1);
