import { Math } from '../quantity/maths.js';
import type { Answer, Caution } from '../answer/answer.js';
import { amount, assumedLine, cautionLine, kindName, sourceLines, workingOf } from '../answer/explain.js';
import { named, saying, sentence, type Say } from '../answer/words.js';
import { aligned, headingText, indent, sectionText } from '../answer/write.js';
import { clock, format } from '../quantity/format.js';
import { loadUnitCode, type Unit } from '../quantity/quantities.js';
import type { ComparisonRow, SessionComparison } from '../session/compare.js';
import type { WeekComparison, WeekRow } from './compare-weeks.js';
import type { DayCheck } from './day-check.js';
import { findingValues, judgedWords, measureWords } from './measures.js';
import { planMessages } from './messages.js';
import type { Proposal, ProposalItem } from './proposal.js';
import { pageWords, type Word } from './page-words.js';
import { limbLine, sideWords, told, totalTime, workLines, type Detail } from './page.js';
import { isSameLimb, limbsIn } from './places.js';
import type { ScreeningFinding } from './questions.js';
import type { RecordItem, SessionRecord } from './record.js';
import type { Judgement, Review, ReviewFinding, StopFinding } from './review-plan.js';
import type { Screening } from './screen.js';
import { setCounts } from './set-counts.js';
import type { StandingSentence } from './types.js';

/** An answer with its working, and no more. */
const worked = (say: Say, answer: Answer): string[] => sectionText({ ...workingOf(answer, say), grounds: [] });
const title = (text: string): string[] => headingText(text, 1);
const sentences = (say: Say, said: readonly StandingSentence[]): string[] => said.map((one) => sentence(say, one));
const points = (lines: readonly string[]): string[] => lines.map((line) => `- ${line}`);
const listed = (lines: readonly string[], otherwise: string): string[] =>
  lines.length > 0 ? points(lines) : [otherwise];
const part = (name: string, lines: readonly string[]): string[] =>
  lines.length > 0 ? [...headingText(name), ...lines] : [];
const sourcesPart = (word: Word, { sources }: Pick<Review, 'sources'>): string[] => [
  ...headingText(word('page.sources')),
  ...listed(sourceLines(sources), word('page.nothing')),
];
const watchPart = (say: Say, word: Word, cautions: readonly Caution[]): string[] =>
  part(word('page.watch'), points(cautions.map((said) => cautionLine(say, said))));
/** A label that lines stand behind. */
const field = (label: string, text: string): string => `${label.padEnd(6)} ${text}`;
const itemHeading = (say: Say, word: Word, item: RecordItem | ProposalItem, index: number): string[] =>
  headingText(
    word('page.item', { number: index + 1, exercise: item.exercise, side: sideWords(say, item.side, item.limb) }),
  );

/** A finding of a screening, with how well it is backed. */
function foundLine(say: Say, word: Word, finding: ScreeningFinding): string {
  const { outcome, evidence, source } = finding;
  const leads = outcome === 'refer' ? word('page.refer') : named(say, 'severity', outcome);
  const grade = named(say, 'grade', evidence);
  return `${cautionLine(say, finding, leads)} [${grade}${source ? `, ${source}` : ''}]`;
}

/** What answers lead to: the outcome, its findings and what is open. */
function answeredLines(say: Say, word: Word, document: Screening | DayCheck): string[] {
  const { request, outcome: found, complete, findings, unanswered, standing } = document;
  const outcome = word(`page.${found}`);
  const dated = [request.date, request.label].filter((text) => text !== undefined).join(', ');
  return [
    ...(dated ? [dated] : []),
    complete ? word('page.outcome', { outcome }) : word('page.outcome-open', { outcome, count: unanswered.length }),
    ...sentences(say, standing),
    ...headingText(word('page.found')),
    ...listed(
      findings.map((finding) => foundLine(say, word, finding)),
      word('page.nothing-in-answers'),
    ),
    ...part(word('page.not-answered'), points(unanswered.map(({ code, question }) => say(`ask-${code}`, question)))),
  ];
}

/** A screening as a page of text. */
export function screeningPage(screening: Screening, say: Say): string[] {
  const { thrombosisScore } = screening;
  const word = saying(say, pageWords);
  return [
    ...title(word('page.screening')),
    ...answeredLines(say, word, screening),
    ...headingText(word('page.score')),
    ...worked(say, thrombosisScore),
    ...[...thrombosisScore.assumptions, ...thrombosisScore.cautions].map((said) => sentence(say, said)),
    ...sourcesPart(word, screening),
  ];
}

/** A check of the day as a page of text. */
export function dayCheckPage(check: DayCheck, say: Say): string[] {
  const word = saying(say, pageWords);
  return [...title(word('page.day-check')), ...answeredLines(say, word, check), ...sourcesPart(word, check)];
}

/** A review as a page of text. */
export function reviewPage(review: Review, say: Say): string[] {
  const { of, guideline, findings, inside, notJudged, standing } = review;
  const word = saying(say, pageWords);
  const name = say(`guideline.${guideline.id}`, guideline.name);
  const grade = ({ evidence }: Judgement): string => named(say, 'grade', evidence);
  /** Whose figure it is: an exercise on a limb, a limb, or the plan. */
  const placed = (where: string): string => {
    const [, exercise = '', side, limb] = /^(.*, )?(left|right) (arm|leg)$/s.exec(where) ?? [];
    return side ? exercise + sideWords(say, side, limb!) : word('page.plan');
  };
  const outside = (finding: ReviewFinding | StopFinding): string => {
    if (finding.measure === undefined) return cautionLine(say, finding);
    const values = findingValues(say, finding, placed(String(finding.values?.['where'])), name);
    return `${cautionLine(say, { ...finding, values })} [${grade(finding)}]`;
  };
  return [
    ...title(word(`page.review-${of}`)),
    word('page.held-against', { guideline: name }),
    ...sentences(say, standing),
    ...headingText(word('page.outside')),
    ...listed(findings.map(outside), word('page.nothing-judged')),
    ...headingText(word('page.inside')),
    ...listed(
      [...new Set(inside.map((judged) => word('page.judged', { ...judgedWords(say, judged), grade: grade(judged) })))],
      word('page.nothing-judged'),
    ),
    ...part(
      word('page.not-judged'),
      points(
        notJudged.map((measure) => {
          const { name, of } = measureWords(say, measure);
          return name.replace(/,$/, '') + of;
        }),
      ),
    ),
    ...sourcesPart(word, review),
  ];
}

function doneLines(say: Say, word: Word, item: RecordItem): string[] {
  const { target, restTarget, load, sets, lastSetToFailure, restriction, done, totals } = item;
  const { restrictionTime, partialRestrictionTime, pressureTime } = totals;
  const held = (pressure: number | undefined): string =>
    pressure === undefined
      ? word('page.held-not-recorded')
      : word('page.held', { pressure: amount(say, pressure, 'mm[Hg]') });
  return [
    field(
      word('page.sets'),
      word(lastSetToFailure ? 'page.done-to-failure' : 'page.done', {
        done: setCounts(done.sets),
        planned: setCounts(sets),
      }),
    ),
    field(
      word('page.load'),
      load
        ? word('page.done', { done: amount(say, done.load!, loadUnitCode(done.unit!)), planned: told(say, load) })
        : word('page.no-load'),
    ),
    field(
      word('page.cuff'),
      restriction === 'none'
        ? word('page.no-cuff')
        : word('page.held-in-sets', {
            held: held(done.heldMmHg),
            planned: told(say, target!),
            restriction: named(say, 'value', restriction),
          }),
    ),
    ...(restTarget
      ? [
          field(
            word('page.rests'),
            word('page.held-in-rests', { held: held(done.restHeldMmHg), planned: told(say, restTarget) }),
          ),
        ]
      : []),
    ...(done.reperfusedBeforeS === undefined
      ? []
      : [field(word('page.before'), word('page.cuff-down', { time: clock(done.reperfusedBeforeS) }))]),
    ...(done.stoppedEarly ? [word('page.stopped-early')] : []),
    ...(done.lastSetToFailure ? [word('page.last-to-failure')] : []),
    word('page.totals'),
    ...indent([
      ...workLines(say, word, totals),
      totalTime(word, totals),
      [
        word('page.restriction', { restriction: clock(restrictionTime.value) }),
        ...(partialRestrictionTime
          ? [word('page.total-partial', { partial: clock(partialRestrictionTime.value) })]
          : []),
        ...(pressureTime ? [word('page.pressure-time', { pressure: told(say, pressureTime) })] : []),
      ].join(', '),
    ]),
  ];
}

/** Pain, a line a site. */
function painLines(
  say: Say,
  word: Word,
  scale: (value: number | undefined) => string,
  pain: SessionRecord['pain'],
): string[] {
  if (!pain) return [word('page.pain-not-recorded')];
  if (pain.length === 0) return [word('page.pain-none')];
  return pain.map(({ site, limb, side, before, during, after, nextMorning }) =>
    word('page.pain', {
      place: [
        named(say, 'value', site),
        ...(side ? [named(say, 'value', side)] : []),
        ...(limb ? [named(say, 'value', limb)] : []),
      ].join(', '),
      before: scale(before),
      during: scale(during),
      after: scale(after),
      next: scale(nextMorning),
    }),
  );
}

/** A record as a page of text; in full with the working of its totals. */
export function recordPage(record: SessionRecord, say: Say, detail: Detail): string[] {
  const { date, label, posture, items, limbs, symptoms, cautions, standing, assumptions } = record;
  const { pain, sessionRpe, sessionS, sessionLoad, notes } = record;
  const word = saying(say, pageWords);
  const scale = (value: number | undefined): string =>
    value === undefined ? word('page.not-recorded') : `${format(value)}/10`;
  const assumed = assumptions.map((said) => assumedLine(say, said));
  const working = [
    ...items.flatMap(({ exercise, side, limb, totals: { cautions: _, ...sums } }) => [
      `[${exercise}, ${sideWords(say, side, limb)}]`,
      ...Object.values(sums).flatMap((answer) => indent(worked(say, answer))),
    ]),
    ...(sessionLoad ? worked(say, sessionLoad) : []),
  ];
  return [
    ...title(word('page.record')),
    [date, label, named(say, 'value', posture)].filter((text) => text !== undefined).join(', '),
    ...sentences(say, standing.slice(0, 2)),
    ...items.flatMap((item, index) => [...itemHeading(say, word, item, index), ...doneLines(say, word, item)]),
    ...headingText(word('page.felt')),
    ...painLines(say, word, scale, pain),
    word('page.effort', { effort: scale(sessionRpe) }),
    [
      word('page.took', { time: sessionS === undefined ? word('page.not-recorded') : clock(sessionS) }),
      ...(sessionLoad ? [word('page.session-load', { load: told(say, sessionLoad) })] : []),
    ].join(', '),
    word('page.symptoms', {
      symptoms: symptoms.map((code) => say(code, planMessages[code])).join('; ') || word('page.none-recorded'),
    }),
    ...(notes === undefined ? [] : [word('page.notes', { notes })]),
    ...headingText(word('page.limbs')),
    ...limbs.map((totals) => limbLine(say, word, totals, 'page.limb-time')),
    ...headingText(word('page.watch')),
    ...listed(
      [...cautions.map((said) => cautionLine(say, said)), ...sentences(say, standing.slice(2))],
      word('page.nothing'),
    ),
    ...(detail === 'brief' ? assumed : [...headingText(word('page.working')), ...working, ...assumed]),
    ...(detail === 'brief' ? [] : sourcesPart(word, record)),
  ];
}

function proposalLines(say: Say, word: Word, item: ProposalItem): string[] {
  const { action, load, percentOfMaximum, percentOfOcclusion, cuffMmHg, sets, reasons } = item;
  const words = (weight: number | undefined, share: number | undefined): string => {
    if (weight === undefined) return word('page.no-number');
    const lifted = amount(say, weight, loadUnitCode(load!.unit));
    return share === undefined ? lifted : word('page.share-of-maximum', { load: lifted, percent: format(share) });
  };
  const pressed = (mmHg: number | undefined, share: number | undefined): string =>
    mmHg === undefined
      ? word('page.no-number')
      : word('page.share-asked', { pressure: amount(say, mmHg, 'mm[Hg]'), percent: format(share!) });
  return [
    word(`page.propose-${action}`),
    field(
      word('page.load'),
      load
        ? `${words(load.from, percentOfMaximum?.from)} → ${words(load.to, percentOfMaximum?.to)}`
        : word('page.no-load'),
    ),
    field(
      word('page.cuff'),
      cuffMmHg
        ? `${pressed(cuffMmHg.from, percentOfOcclusion!.from)} → ${pressed(cuffMmHg.to, percentOfOcclusion!.to)}`
        : word('page.no-cuff'),
    ),
    ...(sets ? [field(word('page.sets'), `${setCounts(sets.from)} → ${setCounts(sets.to)}`)] : []),
    ...points(reasons.map((said) => sentence(say, said))),
  ];
}

/** A proposal as a page of text. */
export function proposalPage(proposal: Proposal, say: Say): string[] {
  const { rule, painRule, items, measureAgain, cautions, standing } = proposal;
  const word = saying(say, pageWords);
  const ruleText = sentence(say, { code: `rule-${rule.id}`, text: rule.text });
  return [
    ...title(word('page.proposal')),
    word('page.rule', { rule: rule.id, grade: named(say, 'grade', rule.evidence), text: ruleText }),
    word('page.pain-rule', { rule: named(say, 'value', painRule.id), grade: named(say, 'grade', painRule.evidence) }),
    ...sentences(say, standing),
    ...items.flatMap((item, index) => [...itemHeading(say, word, item, index), ...proposalLines(say, word, item)]),
    ...headingText(word('page.measure-again')),
    ...listed(
      measureAgain.map((again) => {
        const text = sentence(say, again);
        return `${again.due ? word('page.due', { text }) : text} [${named(say, 'grade', again.evidence)}]`;
      }),
      word('page.nothing'),
    ),
    ...watchPart(say, word, cautions),
    ...sourcesPart(word, proposal),
  ];
}

/** Weeks as a table of plain text: what is lifted, then what is restricted. */
export function weeksPage({ weeks, cautions, standing }: WeekComparison, say: Say): string[] {
  const word = saying(say, pageWords);
  const places = limbsIn(weeks.flatMap(({ limbs }) => limbs));
  const cell = (answer: Answer | undefined): string => (answer ? told(say, answer) : '–');
  const cells = (row: WeekRow): string[] => [
    format(row.week),
    format(row.sessions.value),
    format(row.restrictedSessions.value),
    cell(row.peakLoad),
    cell(row.peakPercent),
    cell(row.volumeLoad),
    row.percentOfOcclusion === undefined ? '–' : amount(say, row.percentOfOcclusion, '%'),
    ...places.map((place) => {
      const own = row.limbs.find((one) => isSameLimb(one, place));
      return own ? clock(own.restrictionTime.value) : '–';
    }),
  ];
  const heads = [
    word('page.week'),
    word('page.sessions'),
    word('page.with-cuff'),
    word('page.heaviest'),
    word('page.maximum'),
    word('page.volume'),
    word('page.occlusion'),
    ...places.map(({ limb, side }) => word('page.restricted', { side: sideWords(say, side, limb) })),
  ];
  return [
    ...title(word('page.by-week')),
    ...sentences(say, standing),
    '',
    ...aligned([heads, ...weeks.map(cells)]),
    ...watchPart(say, word, cautions),
  ];
}

const signed = (value: number, text: string): string => (value > 0 ? `+${text}` : text);

/** A comparison of sessions as a table of plain text. */
export function comparisonPage({ aim, rows, cautions }: SessionComparison, say: Say): string[] {
  const word = saying(say, pageWords);
  const words = (value: number, unit: Unit): string =>
    unit === 's' ? `${value < 0 ? '−' : ''}${clock(Math.abs(value))}` : amount(say, value, unit).replace(/^-/, '−');
  /** `−45 kg (−60 %)`; a change of a percentage is told in points. */
  const changeWords = ({ change, percent, unit }: ComparisonRow): string => {
    if (change === undefined) return word('page.not-known');
    if (change === 0) return word('page.same');
    const share = percent === undefined ? '' : ` (${signed(percent, words(percent, '%'))})`;
    const moved = unit === '%' ? word('page.points', { change: words(change, '1') }) : words(change, unit);
    return signed(change, moved) + share;
  };
  const cell = (answer: Answer | undefined): string =>
    answer ? words(answer.value, answer.unit) : word('page.not-given');
  return [
    ...title(word(aim ? `page.compared-${aim}` : 'page.compared')),
    ...aligned([
      ['', word('page.from'), word('page.to'), word('page.change'), ''],
      ...rows.map((row) => [
        kindName(say, (row.from ?? row.to)!.kind),
        cell(row.from),
        cell(row.to),
        changeWords(row),
        named(say, 'value', row.stress),
      ]),
    ]),
    ...cautions.map((said) => cautionLine(say, said)),
  ];
}
