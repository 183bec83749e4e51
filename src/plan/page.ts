import { groundLines, headline, indent, kindWords, sourceLines, workingLines } from '../answer/explain.js';
import type { Answer } from '../answer/answer.js';
import { clock, format, formatUnit } from '../quantity/format.js';
import type { Plan, PlanItem } from './types.js';

/** A line of capitals with a rule below it. */
export const heading = (text: string): string[] => ['', text.toUpperCase(), '-'.repeat(text.length)];

const restrictionWords: Record<PlanItem['restriction'], string> = {
  continuous: 'cuff up from the first set to the last',
  intermittent: 'cuff up in the sets, down in the rests',
  none: 'no cuff',
};

/** `49.9 % of LOP (may really be 32.7 to 106.1 %)` */
function reachedWords({ reached }: Answer, of: string): string {
  const { percent, lower, upper } = reached!;
  const range =
    lower === undefined
      ? 'no range can be given'
      : upper === undefined
        ? `may really be ${lower.toFixed(1)} % and above`
        : `may really be ${lower.toFixed(1)} to ${upper.toFixed(1)} %`;
  return `${percent.toFixed(1)} % of ${of} (${range})`;
}

function tempoWords({ eccentricS, bottomS, concentricS, topS }: PlanItem['tempo']): string {
  const pause = (seconds: number, where: string): string => (seconds > 0 ? `, ${format(seconds)} s ${where}` : '');
  return `${format(concentricS)} s up${pause(topS, 'at the top')}, ${format(eccentricS)} s down${pause(bottomS, 'at the bottom')}`;
}

const setWord = ({ repetitions, durationS = 0 }: { repetitions?: number; durationS?: number }): string =>
  repetitions === undefined ? `${format(durationS)} s` : `${repetitions} repetitions`;

function setWords(sets: PlanItem['sets']): string {
  const rests = new Set(sets.slice(0, -1).map(({ restS }) => restS));
  const counted = sets.every(({ repetitions }) => repetitions !== undefined);
  const words = sets.map((set) => (counted ? String(set.repetitions) : setWord(set)));
  const counts = words.join(' – ') + (counted ? ' repetitions' : '');
  if (rests.size === 0) return counts;
  if (rests.size === 1) return `${counts}, ${format([...rests][0]!)} s rest between sets`;
  return words
    .map((word, index) => (index === sets.length - 1 ? word : `${word} (then ${format(sets[index]!.restS)} s rest)`))
    .join(' – ');
}

function clockLines({ events, durationS }: PlanItem['timeline']): string[] {
  const words = {
    inflate: 'cuff up',
    lower: 'cuff at the lower pressure',
    deflate: 'cuff down',
    rest: 'rest',
    reperfuse: 'pause, cuff down',
  };
  const lines = events.map(({ atS, event, ...set }) => {
    const what = event === 'set' ? `set ${set.set}: ${setWord(set)}` : words[event];
    return `${clock(atS).padStart(6)}  ${what}`;
  });
  return [...lines, `${clock(durationS).padStart(6)}  end`];
}

function floorLines({ load, target, totals, ...item }: PlanItem): string[] {
  const { volumeLoad, repetitions, timeUnderTension, restrictionTime, longestRestriction, sessionTime } = totals;
  const cuff = `Cuff   ${formatUnit(target.value, 'mm[Hg]')}, ${reachedWords(target, 'LOP')}; ${restrictionWords[item.restriction]}`;
  return [
    ...(item.restriction === 'none' ? ['Cuff   none'] : [cuff]),
    `Load   ${formatUnit(load.value, load.unit)}, ${reachedWords(load, 'the maximum')}`,
    `Sets   ${setWords(item.sets)}`,
    `Tempo  ${tempoWords(item.tempo)}`,
    'Clock',
    ...indent(clockLines(item.timeline)),
    'Totals',
    ...indent([
      `repetitions ${format(repetitions.value)}` +
        (volumeLoad ? `, volume load ${formatUnit(volumeLoad.value, volumeLoad.unit)}` : ''),
      `time under tension ${clock(timeUnderTension.value)}, session time ${clock(sessionTime.value)}`,
      `restriction ${clock(restrictionTime.value)}, longest unbroken ${clock(longestRestriction.value)}`,
    ]),
  ];
}

/** One answer of the working part: what it is, the sum, and what it rests on. */
const answerLines = (answer: Answer): string[] => [
  `${kindWords[answer.kind].name}: ${headline(answer)}`,
  ...indent([...workingLines(answer), ...groundLines(answer)]),
  '',
];

/** Answers that several items share are worked through once. */
function workingOf(items: readonly PlanItem[]): string[] {
  const lines: string[] = [];
  const seen = new Set<string>();
  for (const { exercise, side, limb, occlusion, target, oneRepMax, load, totals } of items) {
    const { cautions: _, ...sums } = totals;
    const parts: [string, Answer[]][] = [
      [`${side} ${limb}`, [occlusion, target]],
      [exercise, [oneRepMax, load, ...Object.values(sums)]],
    ];
    for (const [title, answers] of parts) {
      if (seen.has(title)) continue;
      seen.add(title);
      lines.push(`[${title}]`, ...answers.flatMap((answer) => indent(answerLines(answer))));
    }
  }
  return lines;
}

/** A plan as a page of text to take to the gym floor, with the working of every number below it. */
export function planPage(plan: Plan): string[] {
  const { request, items, limbs, cautions, standing, stopSigns, sources } = plan;
  const person = [
    request.label ?? 'One person',
    request.ageYears !== undefined ? `${format(request.ageYears)} years` : undefined,
    request.sex,
    `blood pressure ${format(request.systolicMmHg)}/${format(request.diastolicMmHg)} mmHg`,
    request.posture,
    request.sessionsPerWeek !== undefined ? `${format(request.sessionsPerWeek)} sessions a week` : undefined,
    request.weeks !== undefined ? `for ${format(request.weeks)} weeks` : undefined,
  ];
  return [
    'SESSION PLAN',
    '============',
    person.filter((part) => part !== undefined).join(', '),
    ...standing.slice(0, 2).map(({ text }) => text),
    ...heading('Let the cuff down at once on'),
    ...stopSigns.map(({ text }) => `- ${text}`),
    ...items.flatMap((item, index) => [
      ...heading(`${index + 1}. ${item.exercise}, ${item.side} ${item.limb}`),
      ...floorLines(item),
    ]),
    ...heading('Each limb in this session'),
    ...limbs.map(
      ({ limb, side, exercises, restrictionTime }) =>
        `${side} ${limb}: ${clock(restrictionTime.value)} of restriction in ${exercises} exercise${exercises === 1 ? '' : 's'}`,
    ),
    ...heading('Watch for'),
    ...cautions.map(({ severity, text }) => `- ${severity}: ${text}`),
    ...heading('Always'),
    ...standing.slice(2).map(({ text }) => `- ${text}`),
    ...heading('Working'),
    ...workingOf(items),
    'SOURCES',
    '-------',
    ...sourceLines(sources).map((line) => `- ${line}`),
  ];
}
