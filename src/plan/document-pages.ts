import type { Answer } from '../answer/answer.js';
import { sourceLines, workingOf } from '../answer/explain.js';
import { english } from '../answer/words.js';
import { aligned, indent, sectionText } from '../answer/write.js';
import { clock, format, formatUnit } from '../quantity/format.js';
import { loadUnitCode } from '../quantity/quantities.js';
import type { WeekComparison, WeekRow } from './compare-weeks.js';
import { measures, rangeWords } from './guidelines.js';
import { planMessages } from './messages.js';
import type { Proposal, ProposalItem } from './next-session.js';
import type { Detail } from './page.js';
import type { RecordItem, SessionRecord } from './record-session.js';
import type { Judgement, Review } from './review-plan.js';
import type { Screening } from './screen.js';
import { setCounts } from './set-counts.js';
import type { StandingSentence } from './types.js';

/** An answer with its working, and no more. */
const worked = (answer: Answer): string[] => sectionText({ ...workingOf(answer, english), grounds: [] });
/** A line of capitals with a rule below it. */
const heading = (text: string): string[] => ['', text.toUpperCase(), '-'.repeat(text.length)];
const title = (text: string): string[] => [text, '='.repeat(text.length)];
const sentences = (standing: readonly StandingSentence[]): string[] => standing.map(({ text }) => text);
const points = (lines: readonly string[]): string[] => lines.map((line) => `- ${line}`);
const listed = (lines: readonly string[], otherwise = 'none'): string[] =>
  lines.length > 0 ? points(lines) : [otherwise];
const part = (name: string, lines: readonly string[]): string[] =>
  lines.length > 0 ? [...heading(name), ...lines] : [];

/** A screening as a page of text. */
export function screeningPage(screening: Screening): string[] {
  const { request, outcome, complete, findings, unanswered, thrombosisScore, standing, sources } = screening;
  const words = { refer: 'refer', caution: 'take care', 'nothing-found': 'nothing found in the answers given' };
  return [
    ...title('SCREENING'),
    ...(request.label === undefined ? [] : [request.label]),
    `Outcome: ${words[outcome]}${complete ? '' : `; ${unanswered.length} questions are not answered`}`,
    ...sentences(standing),
    ...heading('Found'),
    ...listed(
      findings.map(
        ({ outcome: leads, text, evidence, source }) => `${leads}: ${text} [${evidence}${source ? `, ${source}` : ''}]`,
      ),
      'nothing in the answers given',
    ),
    ...part('Not answered', points(unanswered.map(({ question }) => question))),
    ...heading('Thrombosis score'),
    ...worked(thrombosisScore),
    ...[...thrombosisScore.assumptions, ...thrombosisScore.cautions].map(({ text }) => text),
    ...part('Sources', listed(sourceLines(sources))),
  ];
}

const judgementLine = (judged: Judgement): string => {
  const { measure, found, unit, evidence } = judged;
  return `${measures[measure].name} ${formatUnit(found, unit)}${measures[measure].of} [${rangeWords(judged)}; ${evidence}]`;
};

/** A review as a page of text. */
export function reviewPage({ of, guideline, findings, inside, notJudged, standing, sources }: Review): string[] {
  return [
    ...title(`REVIEW OF A ${of.toUpperCase()}`),
    `Held against ${guideline.name}.`,
    ...sentences(standing),
    ...heading('Outside the range'),
    ...listed(
      findings.map(({ severity, text, evidence }) => `${severity}: ${text} [${evidence}]`),
      'nothing that was judged',
    ),
    ...heading('Inside the range'),
    ...listed([...new Set(inside.map(judgementLine))], 'nothing that was judged'),
    ...part(
      'Not judged, not in the document',
      points(notJudged.map((measure) => measures[measure].name.replace(/,$/, '') + measures[measure].of)),
    ),
    ...part('Sources', listed(sourceLines(sources))),
  ];
}

function doneLines({
  target,
  restTarget,
  load,
  sets,
  lastSetToFailure,
  restriction,
  done,
  totals,
}: RecordItem): string[] {
  const { restrictionTime, partialRestrictionTime, timeUnderTension, sessionTime, volumeLoad, repetitions } = totals;
  const { pressureTime } = totals;
  const held = (pressure: number | undefined): string =>
    pressure === undefined ? 'pressure held not recorded' : `${formatUnit(pressure, 'mm[Hg]')} held`;
  return [
    `Sets   ${setCounts(done.sets)} done, ${setCounts(sets)} planned${lastSetToFailure ? ', the last to failure' : ''}`,
    load
      ? `Load   ${formatUnit(done.load!, loadUnitCode(done.unit!))} done, ${formatUnit(load.value, load.unit)} planned`
      : 'Load   none',
    restriction === 'none'
      ? 'Cuff   none'
      : `Cuff   ${held(done.heldMmHg)}, ${formatUnit(target.value, target.unit)} planned; restriction ${restriction}`,
    ...(restTarget
      ? [`Rests  ${held(done.restHeldMmHg)}, ${formatUnit(restTarget.value, restTarget.unit)} planned`]
      : []),
    ...(done.reperfusedBeforeS === undefined ? [] : [`Before ${clock(done.reperfusedBeforeS)} with the cuff down`]),
    ...(done.stoppedEarly ? ['Stopped early'] : []),
    ...(done.lastSetToFailure ? ['Last set to failure'] : []),
    'Totals',
    ...indent([
      ...(repetitions.value > 0
        ? [
            `repetitions ${format(repetitions.value)}` +
              (volumeLoad ? `, volume load ${formatUnit(volumeLoad.value, volumeLoad.unit)}` : ''),
          ]
        : []),
      `time under tension ${clock(timeUnderTension.value)}, session time ${clock(sessionTime.value)}`,
      `restriction ${clock(restrictionTime.value)}` +
        (partialRestrictionTime ? `, at the lower pressure ${clock(partialRestrictionTime.value)}` : '') +
        (pressureTime ? `, pressure × time ${formatUnit(pressureTime.value, pressureTime.unit)}` : ''),
    ]),
  ];
}

/** A record as a page of text; in full with the working of its totals. */
export function recordPage(record: SessionRecord, detail: Detail): string[] {
  const { date, label, posture, items, limbs, symptoms, cautions, standing, assumptions, sources } = record;
  const { painBefore, painDuring, painAfter, sessionRpe, sessionS, sessionLoad, notes } = record;
  const scale = (value: number | undefined): string => (value === undefined ? 'not recorded' : `${format(value)}/10`);
  const assumed = assumptions.map(({ text }) => `taken for granted: ${text}`);
  const working = [
    ...items.flatMap(({ exercise, side, limb, totals: { cautions: _, ...sums } }) => [
      `[${exercise}, ${side} ${limb}]`,
      ...Object.values(sums).flatMap((answer) => indent(worked(answer))),
    ]),
    ...(sessionLoad ? worked(sessionLoad) : []),
  ];
  return [
    ...title('SESSION RECORD'),
    [date, label, posture].filter((word) => word !== undefined).join(', '),
    ...sentences(standing.slice(0, 2)),
    ...items.flatMap((item, index) => [
      ...heading(`${index + 1}. ${item.exercise}, ${item.side} ${item.limb}`),
      ...doneLines(item),
    ]),
    ...heading('How it felt'),
    `pain before ${scale(painBefore)}, during ${scale(painDuring)}, after ${scale(painAfter)}`,
    `effort of the session ${scale(sessionRpe)}`,
    `time it took ${sessionS === undefined ? 'not recorded' : clock(sessionS)}` +
      (sessionLoad ? `, session load ${formatUnit(sessionLoad.value, sessionLoad.unit)}` : ''),
    `symptoms: ${symptoms.map((code) => planMessages[code]).join('; ') || 'none recorded'}`,
    ...(notes === undefined ? [] : [`notes: ${notes}`]),
    ...heading('Each limb in this session'),
    ...limbs.map(
      ({ limb, side, exercises, restrictionTime, partialRestrictionTime: lower, volumeLoad }) =>
        `${side} ${limb}: ${exercises === 0 ? 'no' : `${clock(restrictionTime.value)} of`} restriction` +
        (lower ? `, at the lower pressure ${clock(lower.value)}` : '') +
        (volumeLoad ? `, volume load ${formatUnit(volumeLoad.value, volumeLoad.unit)}` : ''),
    ),
    ...heading('Watch for'),
    ...listed([...cautions.map(({ severity, text }) => `${severity}: ${text}`), ...sentences(standing.slice(2))]),
    ...(detail === 'brief' ? assumed : [...heading('Working'), ...working, ...assumed]),
    ...(detail === 'brief' ? [] : part('Sources', listed(sourceLines(sources)))),
  ];
}

const actionWords: Record<ProposalItem['action'], string> = {
  'raise-load': 'raise the load',
  'raise-pressure': 'raise the pressure',
  repeat: 'repeat',
  'back-off': 'back off',
  stop: 'stop',
};

function proposalLines({
  action,
  load,
  percentOfMaximum,
  percentOfOcclusion,
  cuffMmHg,
  reasons,
}: ProposalItem): string[] {
  const words = (kg: number | undefined): string =>
    kg === undefined ? 'no number is proposed' : formatUnit(kg, loadUnitCode(load!.unit));
  const percent = (share: number | undefined): string =>
    share === undefined ? '' : ` (${format(share)} % of the maximum)`;
  const pressure = (mmHg: number | undefined, share: number | undefined): string =>
    mmHg === undefined
      ? 'no number is proposed'
      : `${formatUnit(mmHg, 'mm[Hg]')} (${format(share!)} % of LOP asked for)`;
  return [
    `Proposed: ${actionWords[action]}`,
    load
      ? `Load   ${words(load.from)}${percent(percentOfMaximum?.from)} → ${words(load.to)}${percent(percentOfMaximum?.to)}`
      : 'Load   none',
    cuffMmHg
      ? `Cuff   ${pressure(cuffMmHg.from, percentOfOcclusion!.from)} → ${pressure(cuffMmHg.to, percentOfOcclusion!.to)}`
      : 'Cuff   none',
    ...reasons.map(({ text }) => `- ${text}`),
  ];
}

/** A proposal as a page of text. */
export function proposalPage({ rule, items, measureAgain, cautions, standing, sources }: Proposal): string[] {
  return [
    ...title('PROPOSAL FOR THE NEXT SESSION'),
    `Rule ${rule.id} [${rule.evidence}]: ${rule.text}`,
    ...sentences(standing),
    ...items.flatMap((item, index) => [
      ...heading(`${index + 1}. ${item.exercise}, ${item.side} ${item.limb}`),
      ...proposalLines(item),
    ]),
    ...heading('Measure again'),
    ...listed(measureAgain.map(({ due, text, evidence }) => `${due ? 'due: ' : ''}${text} [${evidence}]`)),
    ...part('Watch for', points(cautions.map(({ severity, text }) => `${severity}: ${text}`))),
    ...part('Sources', listed(sourceLines(sources))),
  ];
}

/** Weeks as a table of plain text: what is lifted, then what is restricted. */
export function weeksPage({ weeks, cautions, standing }: WeekComparison): string[] {
  const places = new Map(
    weeks.flatMap(({ limbs }) => limbs.map(({ limb, side }) => [`${side} ${limb}`, { limb, side }])),
  );
  const told = (answer: Answer | undefined): string => (answer ? formatUnit(answer.value, answer.unit) : '–');
  const cells = (row: WeekRow): string[] => [
    format(row.week),
    format(row.sessions.value),
    format(row.restrictedSessions.value),
    told(row.peakLoad),
    told(row.peakPercent),
    told(row.volumeLoad),
    row.percentOfOcclusion === undefined ? '–' : formatUnit(row.percentOfOcclusion, '%'),
    ...[...places.values()].map(({ limb, side }) => {
      const own = row.limbs.find((one) => one.limb === limb && one.side === side);
      return own ? clock(own.restrictionTime.value) : '–';
    }),
  ];
  const heads = ['week', 'sessions', 'with cuff', 'heaviest', 'of maximum', 'volume load', 'of LOP'];
  const restricted = [...places.keys()].map((place) => `${place} restricted`);
  return [
    ...title('WEEK BY WEEK'),
    ...sentences(standing),
    '',
    ...aligned([[...heads, ...restricted], ...weeks.map(cells)]),
    ...part(
      'Watch for',
      cautions.length > 0 ? listed(cautions.map(({ severity, text }) => `${severity}: ${text}`)) : [],
    ),
  ];
}
