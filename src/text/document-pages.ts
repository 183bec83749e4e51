import { Math } from '../quantity/maths.js';
import type { Answer } from '../answer/answer.js';
import { fill } from '../answer/messages.js';
import { amount, amountToSet, named, rangeToSet, translating, sentence, type Translate } from '../answer/translate.js';
import { byAudience } from '../plan/audience.js';
import type { SessionComparison } from '../plan/compare-sessions.js';
import type { WeekComparison } from '../plan/compare-weeks.js';
import type { LighterOptions } from '../plan/lighten.js';
import type { StageGoalResult } from '../plan/stage-goals.js';
import type { WeekLimb, WeekRow, WeekSums } from '../plan/week-types.js';
import { messageKey } from '../plan/severity.js';
import { findingValues, guidelineNames, assessedWords, measureWords, placeWords, sideWords } from '../plan/measures.js';
import { documentMessages, type PlanCode } from '../plan/document-messages.js';
import type { Proposal, ProposalItem } from '../plan/proposal.js';
import { clock, format } from '../quantity/format.js';
import { loadUnitCode, type Unit } from '../quantity/quantities.js';
import type { ComparedQuantity, ComparisonRow } from '../session/compare.js';
import { assumptionText } from './assumptions.js';
import { part, title, type Block } from './blocks.js';
import { idsIn } from './cite.js';
import { assumedLine, cautionLine, kindName, sourceLines, sumOf } from './section.js';
import { pageWords, type Word } from './page-words.js';
import {
  always,
  disclaimerLines,
  limbLine,
  setFields,
  stopBlocks,
  told,
  totalTime,
  withPlaces,
  workLines,
  type Detail,
} from './page.js';
import { isSameLimb, limbsIn } from '../plan/limb-and-side.js';
import type { ScreeningFinding } from '../plan/questions.js';
import type { ExpandedRecord, ExpandedRecordItem } from '../plan/record.js';
import type { Assessment, Review, ReviewFinding, StopFinding } from '../plan/review-plan.js';
import type { DayCheck, Screening } from '../plan/questions.js';
import { setCounts } from '../plan/set-counts.js';
import { inForce, type Stop } from '../plan/stops.js';

const isStopped = (document: { readonly stops: readonly Stop[] }): boolean => inForce(document.stops).length > 0;
const sourcesPart = (word: Word, document: object): Block[] =>
  part(word('page.sources'), { points: sourceLines(idsIn(document)) });
/** Where there is nothing to list, a page says so. */
const listed = (lines: readonly string[], otherwise: string): Block =>
  lines.length > 0 ? { points: lines } : { lines: [otherwise] };
const itemHeading = (
  translate: Translate,
  word: Word,
  item: ExpandedRecordItem | ProposalItem,
  index: number,
): Block => ({
  heading: word('page.item', {
    number: index + 1,
    exercise: ('done' in item ? item.done.instead : undefined) ?? item.exercise,
    side: sideWords(translate, item.side, item.limb),
  }),
  level: 2,
});

/** Cautions that are no stop of the document, by whom they are for; remarks on the method last. */
function watchParts(
  translate: Translate,
  word: Word,
  { cautions, stops }: Pick<ExpandedRecord, 'cautions' | 'stops'>,
  between: readonly Block[] = [],
  more: readonly string[] = [],
): Block[] {
  const left = cautions.filter(({ code }) => !stops.some((stop) => stop.code === code));
  const { person, practitioner, method } = byAudience(left);
  const lines = (own: typeof left): string[] => own.map((message) => cautionLine(translate, message));
  return [
    ...part(word('page.watch'), { points: lines(person) }),
    ...part(word('page.practitioner'), { points: lines(practitioner) }),
    ...between,
    ...part(word('page.method'), { points: [...lines(method), ...more] }),
  ];
}

/** A finding of a screening, with how well it is backed. */
function foundLine(translate: Translate, word: Word, finding: ScreeningFinding): string {
  const { outcome, evidence, source } = finding;
  const leads = outcome === 'refer' ? word('page.refer') : named(translate, 'severity', outcome);
  const grade = named(translate, 'grade', evidence);
  return `${cautionLine(translate, finding, leads)} [${grade}${source ? `, ${source}` : ''}]`;
}

/** What answers lead to: the outcome, its findings and what is open. */
function answeredBlocks(translate: Translate, word: Word, document: Screening | DayCheck): Block[] {
  const { request, outcome: found, complete, findings, unanswered, disclaimers } = document;
  const outcome = word(`page.${found}`);
  const dated = [request.date, request.label].filter((text) => text !== undefined).join(', ');
  return [
    {
      lines: [
        ...(dated ? [dated] : []),
        complete ? word('page.outcome', { outcome }) : word('page.outcome-open', { outcome, count: unanswered.length }),
        ...disclaimerLines(translate, disclaimers),
      ],
    },
    ...part(
      word('page.found'),
      listed(
        findings.map((finding) => foundLine(translate, word, finding)),
        word('page.nothing-in-answers'),
      ),
    ),
    ...part(word('page.not-answered'), {
      points: unanswered.map(({ code, question }) => translate(`ask-${code}`, question)),
    }),
  ];
}

/** A screening as a page. */
export function screeningBlocks(screening: Screening, translate: Translate): Block[] {
  const { thrombosisScore } = screening;
  const word = translating(translate, pageWords);
  return [
    title(word('page.screening')),
    ...answeredBlocks(translate, word, screening),
    { heading: word('page.score'), level: 2 },
    { section: sumOf(thrombosisScore, translate) },
    {
      lines: [
        ...thrombosisScore.assumptions.map((one) => assumptionText(translate, one)),
        ...thrombosisScore.cautions.map((one) => sentence(translate, one)),
      ],
    },
    ...sourcesPart(word, screening),
  ];
}

/** A check of the day as a page. */
export function dayCheckBlocks(check: DayCheck, translate: Translate): Block[] {
  const word = translating(translate, pageWords);
  return [title(word('page.day-check')), ...answeredBlocks(translate, word, check), ...sourcesPart(word, check)];
}

/** A figure outside a range, with how well the range is backed. */
function outsideLine(translate: Translate, finding: ReviewFinding, guideline: string): string {
  const values = findingValues(translate, finding, guideline);
  const text = fill(documentMessages[finding.code as PlanCode], values);
  return `${cautionLine(translate, { ...finding, values, text })} [${named(translate, 'grade', finding.evidence)}]`;
}

/** A review as a page; of a document with a stop in force, the stop and nothing that could be set. */
export function reviewBlocks(review: Review, translate: Translate): Block[] {
  const { of, guideline, findings, inside, notAssessed, stops, disclaimers } = review;
  const word = translating(translate, pageWords);
  const name = translate(`guideline.${guideline.id}`, guidelineNames[guideline.id]);
  const grade = ({ evidence }: Assessment): string => named(translate, 'grade', evidence);
  const outside = (finding: ReviewFinding | StopFinding): string =>
    finding.measure === undefined ? cautionLine(translate, finding) : outsideLine(translate, finding, name);
  const within = (assessed: Assessment): string => {
    const { asked } = assessed;
    const values = { ...assessedWords(translate, assessed), grade: grade(assessed) };
    if (asked === undefined) return word('page.judged', values);
    return word('page.judged-asked', { ...values, asked: amount(translate, asked, assessed.unit) });
  };
  /** What is alike on every limb once; where a measure differs, each line names its place. */
  const insideLines = (): string[] => {
    const lines = new Map<Assessment['measure'], Map<string, string[]>>();
    for (const assessed of inside) {
      const own = lines.get(assessed.measure) ?? new Map<string, string[]>();
      const text = within(assessed);
      lines.set(assessed.measure, own.set(text, [...(own.get(text) ?? []), placeWords(translate, assessed)]));
    }
    return [...lines.values()].flatMap((own) =>
      [...own].map(([text, places]) =>
        own.size === 1 ? text : word('page.judged-where', { where: [...new Set(places)].join('; '), text }),
      ),
    );
  };
  const missing = (measure: Assessment['measure']): string => {
    const { name, of } = measureWords(translate, measure);
    return name + of;
  };
  return [
    title(word(`page.review-${of}`)),
    ...stopBlocks(translate, stops),
    { lines: [word('page.held-against', { guideline: name }), ...disclaimerLines(translate, disclaimers)] },
    ...(isStopped(review)
      ? []
      : [
          ...part(word('page.outside'), listed(findings.map(outside), word('page.nothing-judged'))),
          ...part(word('page.inside'), listed(insideLines(), word('page.nothing-judged'))),
          ...part(word('page.not-judged'), { points: notAssessed.map(missing) }),
        ]),
    ...sourcesPart(word, review),
  ];
}

/** What was done; with what was planned, unless a stop is in force. */
function doneFields(
  translate: Translate,
  word: Word,
  item: ExpandedRecordItem,
  stopped: boolean,
): (readonly [string, string])[] {
  const { mode, target, restTarget, load, upperLoad, sets, lastSetToFailure, restriction, done } = item;
  const beside = (done: string, planned: string): string =>
    stopped ? onlyDone(done) : word('page.done', { done, planned });
  const onlyDone = (done: string): string => word('page.only-done', { done });
  const held = (pressure: number | undefined, planned: Answer): string => {
    const held =
      pressure === undefined
        ? word('page.held-not-recorded')
        : word('page.held', { pressure: amount(translate, pressure, 'mm[Hg]') });
    return stopped ? held : word('page.held-and-planned', { held, planned: told(translate, planned) });
  };
  const counts = { done: setCounts(done.sets), planned: setCounts(sets) };
  const fields: (readonly [string, string] | false | undefined)[] = [
    done.instead !== undefined && [word('page.instead'), item.exercise],
    [
      word('page.sets'),
      lastSetToFailure && !stopped ? word('page.done-to-failure', counts) : beside(counts.done, counts.planned),
    ],
    (load !== undefined || mode === undefined || mode === 'resistance') && [
      word('page.load'),
      load && !done.unloaded
        ? // The planned load is that of another exercise.
          (done.instead === undefined ? beside : onlyDone)(
            amountToSet(translate, done.load!, loadUnitCode(done.unit!)),
            rangeToSet(translate, load, upperLoad),
          )
        : word('page.no-load'),
    ],
    ...setFields(translate, word, done.sets, done.unit ?? 'kg'),
    done.occlusionMmHg !== undefined && [word('page.measured-day'), amount(translate, done.occlusionMmHg, 'mm[Hg]')],
    [
      word('page.cuff'),
      restriction === 'none'
        ? word('page.no-cuff')
        : [held(done.heldMmHg, target!), named(translate, 'value', restriction)].join('; '),
    ],
    restTarget && [word('page.rests'), held(done.restHeldMmHg, restTarget)],
    done.reperfusedBeforeS !== undefined && [
      word('page.before'),
      word('page.cuff-down', { time: clock(done.reperfusedBeforeS) }),
    ],
  ];
  return fields.filter((field) => !!field);
}

function doneBlocks(translate: Translate, word: Word, item: ExpandedRecordItem, stopped: boolean): Block[] {
  const { done, totals } = item;
  const { restrictionTime, partialRestrictionTime, pressureTime } = totals;
  return [
    { fields: doneFields(translate, word, item, stopped) },
    {
      lines: [
        ...(done.stoppedEarly ? [word('page.stopped-early')] : []),
        ...(done.lastSetToFailure ? [word('page.last-to-failure')] : []),
      ],
    },
    {
      under: word('page.totals'),
      lines: [
        ...workLines(translate, word, totals),
        totalTime(word, totals),
        ...(item.restriction === 'none'
          ? []
          : [
              [
                word('page.restriction', { restriction: clock(restrictionTime.value) }),
                ...(partialRestrictionTime
                  ? [word('page.total-partial', { partial: clock(partialRestrictionTime.value) })]
                  : []),
                ...(pressureTime ? [word('page.pressure-time', { pressure: told(translate, pressureTime) })] : []),
              ].join(', '),
            ]),
      ],
    },
  ];
}

/** Pain, a line a site. */
function painLines(
  translate: Translate,
  word: Word,
  scale: (value: number | undefined) => string,
  pain: ExpandedRecord['pain'],
): string[] {
  if (!pain) return [word('page.pain-not-recorded')];
  if (pain.length === 0) return [word('page.pain-none')];
  return pain.map(({ site, limb, side, before, during, after, nextMorning }) =>
    word('page.pain', {
      place: [
        named(translate, 'value', site),
        ...(side ? [named(translate, 'value', side)] : []),
        ...(limb ? [named(translate, 'value', limb)] : []),
      ].join(', '),
      before: scale(before),
      during: scale(during),
      after: scale(after),
      next: scale(nextMorning),
    }),
  );
}

/** A record as a page; in full with the working of its totals. */
export function recordBlocks(record: ExpandedRecord, translate: Translate, detail: Detail): Block[] {
  const { date, label, posture, items, limbs, symptoms, stops, disclaimers, assumptions } = record;
  const { pain, sessionRpe, sessionS, sessionLoad, notes } = record;
  const word = translating(translate, pageWords);
  const full = detail === 'full';
  const stopped = isStopped(record);
  const scale = (value: number | undefined): string =>
    value === undefined ? word('page.not-recorded') : `${format(value)}/10`;
  const time = sessionS === undefined ? word('page.not-recorded') : word('page.time', { time: clock(sessionS) });
  const assumed = assumptions.map((message) => assumedLine(translate, message));
  const afterwards = part(word('page.afterwards'), { points: always(translate, disclaimers) });
  const working: Block[] = items.map(({ exercise, side, limb, totals: { cautions: _, ...sums } }) => ({
    group: placeWords(translate, { exercise, side, limb }),
    sections: Object.values(sums).map((answer) => sumOf(answer, translate)),
  }));
  const load: Block[] = sessionLoad ? [{ section: sumOf(sessionLoad, translate) }] : [];
  return [
    title(word('page.record')),
    ...stopBlocks(translate, stops, 'page.no-settings-record'),
    {
      lines: [
        [date, label, named(translate, 'value', posture)].filter((text) => text !== undefined).join(', '),
        ...(record.systolicMmHg === undefined
          ? []
          : [
              word('page.blood-pressure-day', {
                systolic: format(record.systolicMmHg),
                diastolic: format(record.diastolicMmHg!),
              }),
            ]),
        ...disclaimerLines(translate, disclaimers),
      ],
    },
    ...items.flatMap((item, index) => [
      itemHeading(translate, word, item, index),
      ...doneBlocks(translate, word, item, stopped),
    ]),
    ...part(word('page.felt'), {
      lines: [
        ...painLines(translate, word, scale, pain),
        word('page.effort', { effort: scale(sessionRpe) }),
        [
          word('page.took', { time }),
          ...(sessionLoad ? [word('page.session-load', { load: told(translate, sessionLoad) })] : []),
        ].join(', '),
        word('page.symptoms', {
          symptoms:
            symptoms.map((code) => translate(code, documentMessages[code])).join('; ') || word('page.none-recorded'),
        }),
        ...(notes === undefined ? [] : [word('page.notes', { notes })]),
      ],
    }),
    ...part(word('page.limbs'), { lines: limbs.map((totals) => limbLine(translate, word, totals, 'page.limb-time')) }),
    ...(stopped ? afterwards : watchParts(translate, word, record, afterwards, full ? assumed : [])),
    ...(full && !stopped ? part(word('page.working'), ...working, ...load) : []),
    ...(full ? sourcesPart(word, record) : []),
  ];
}

/** What is proposed for an exercise: what changes, from what to what. */
function proposalBlocksOf(translate: Translate, word: Word, item: ProposalItem, stopped: boolean): Block[] {
  const { action, load, percentOneRepMax, percentLop, cuffMmHg, sets } = item;
  const lifted = (weight: number | undefined): string | undefined => {
    if (weight === undefined) return undefined;
    const words = amountToSet(translate, weight, loadUnitCode(load!.unit));
    if (!percentOneRepMax) return words;
    // Of the load in the proposal: a practitioner may have changed it.
    const share = (percentOneRepMax.from * weight) / load!.from;
    return word('page.share-of-maximum', { load: words, percent: format(share) });
  };
  const pressed = (mmHg: number | undefined, share: number | undefined): string | undefined =>
    mmHg === undefined
      ? undefined
      : word('page.share-asked', { pressure: amount(translate, mmHg, 'mm[Hg]'), percent: format(share!) });
  const moved = (from: string | undefined, to: string | undefined): string =>
    from === to
      ? word('page.kept', { value: from! })
      : word('page.from-to', { from: from!, to: to ?? word('page.no-number') });
  const fields: Block = {
    fields: [
      [word('page.load'), load ? moved(lifted(load.from), lifted(load.to)) : word('page.no-load')],
      [
        word('page.cuff'),
        cuffMmHg
          ? moved(pressed(cuffMmHg.from, percentLop!.from), pressed(cuffMmHg.to, percentLop!.to))
          : word('page.no-cuff'),
      ],
      ...(sets ? [[word('page.sets'), moved(setCounts(sets.from), setCounts(sets.to))] as const] : []),
    ],
  };
  return [{ lines: [word(`page.propose-${action}`)] }, ...(stopped ? [] : [fields])];
}

/** Why, each reason once; with the exercises it is about, where it is not every one. */
function reasonLines(translate: Translate, items: readonly ProposalItem[]): string[] {
  const reasons = new Map(items.flatMap((item) => item.reasons.map((reason) => [messageKey(reason), reason])));
  return [...reasons].map(([key, reason]) => {
    const own = items.filter((item) => item.reasons.some((other) => messageKey(other) === key));
    return withPlaces(
      sentence(translate, reason),
      own.length < items.length ? own.map((item) => placeWords(translate, item)) : [],
    );
  });
}

/** A proposal as a page; while a stop is in force, the stop and no number. */
export function proposalBlocks(proposal: Proposal, translate: Translate): Block[] {
  const { rule, painRule, items, measureAgain, stops, disclaimers } = proposal;
  const word = translating(translate, pageWords);
  const stopped = isStopped(proposal);
  // What is a reason already is no caution again.
  const reasons = new Set(items.flatMap((item) => item.reasons.map(messageKey)));
  const left = proposal.cautions.filter((message) => !reasons.has(messageKey(message)));
  const ruleText = sentence(translate, { code: `rule-${rule.id}`, text: rule.text });
  const ruled = word('page.rule', { rule: rule.id, grade: named(translate, 'grade', rule.evidence), text: ruleText });
  const painRuled = word('page.pain-rule', {
    rule: named(translate, 'value', painRule.id),
    grade: named(translate, 'grade', painRule.evidence),
  });
  return [
    title(word('page.proposal')),
    ...stopBlocks(translate, stops),
    { lines: [...(stopped ? [] : [ruled, painRuled]), ...disclaimerLines(translate, disclaimers)] },
    ...items.flatMap((item, index) => [
      itemHeading(translate, word, item, index),
      ...proposalBlocksOf(translate, word, item, stopped),
    ]),
    ...(stopped ? [] : part(word('page.why'), { points: reasonLines(translate, items) })),
    ...part(
      word('page.measure-again'),
      listed(
        measureAgain.map((again) => {
          const text = sentence(translate, again);
          return `${again.due ? word('page.due', { text }) : text} [${named(translate, 'grade', again.evidence)}]`;
        }),
        word('page.nothing'),
      ),
    ),
    ...(stopped ? [] : watchParts(translate, word, { stops, cautions: left })),
    ...sourcesPart(word, proposal),
  ];
}

/** A row of the table of a limb: an exercise in a week, as planned or as done. */
interface WeekCells {
  readonly row: WeekRow;
  readonly way: 'planned' | 'done';
  readonly sums: WeekSums;
}

/** Weeks as tables: the week, then each limb, exercise by exercise. */
export function weeksBlocks(comparison: WeekComparison, translate: Translate): Block[] {
  const { weeks, goals, stops, disclaimers } = comparison;
  const word = translating(translate, pageWords);
  const lines = weeks.flatMap((row) =>
    (['planned', 'done'] as const).flatMap((way): WeekCells[] => (row[way] ? [{ row, way, sums: row[way] }] : [])),
  );
  const places = limbsIn(lines.flatMap(({ sums }) => sums.limbs));
  const cell = (answer: Answer | undefined): string => (answer ? told(translate, answer) : '–');
  const time = (answer: Answer): string => word('page.time', { time: clock(answer.value) });
  const weekCells = ({ row, way }: WeekCells): string[] => [
    format(row.week),
    row.deload ? word('page.week-deload', { way: word(`page.week-${way}`) }) : word(`page.week-${way}`),
  ];
  const whole = lines.map((line) => [
    ...weekCells(line),
    format(line.sums.sessions.value),
    format(line.sums.restrictedSessions.value),
    cell(line.sums.sessionLoad),
  ]);
  const occlusionWords = ({ valueMmHg, measured, date }: NonNullable<WeekLimb['occlusion']>): string =>
    [
      amount(translate, valueMmHg, 'mm[Hg]'),
      word(measured ? 'page.lop-measured' : 'page.lop-estimated'),
      ...(date === undefined ? [] : [date]),
    ].join(', ');
  const limbTables = (place: (typeof places)[number]): Block[] => {
    const own = lines.flatMap((line) => {
      const limb = line.sums.limbs.find((one) => isSameLimb(one, place));
      return limb ? [{ line, limb }] : [];
    });
    return [
      { heading: sideWords(translate, place.side, place.limb), level: 2 },
      {
        table: [
          [
            word('page.week'),
            word('page.week-way'),
            word('page.week-exercise'),
            word('page.heaviest'),
            word('page.maximum'),
            word('page.week-inflated'),
            word('page.occlusion'),
          ],
          ...own.flatMap(({ line, limb }) =>
            limb.exercises.map((one) => [
              ...weekCells(line),
              one.exercise,
              cell(one.peakLoad),
              cell(one.peakPercentOneRepMax),
              time(one.restrictionTime),
              cell(one.percentLop),
            ]),
          ),
        ],
      },
      {
        table: [
          [
            word('page.week'),
            word('page.week-way'),
            word('page.volume'),
            word('page.week-inflated'),
            word('page.week-lop'),
            word('page.week-circumference'),
            word('page.week-pain'),
          ],
          ...own.map(({ line, limb }) => [
            ...weekCells(line),
            cell(limb.volumeLoad),
            time(limb.restrictionTime),
            limb.occlusion ? occlusionWords(limb.occlusion) : '–',
            limb.circumferenceCm === undefined ? '–' : amount(translate, limb.circumferenceCm, 'cm'),
            limb.worstPain ? `${format(limb.worstPain.value)}/10` : '–',
          ]),
        ],
      },
    ];
  };
  const goalLine = ({ name, outcome, found, atLeast, atMost }: StageGoalResult): string =>
    word('page.goal', {
      name,
      outcome: word(`page.goal-${outcome}`),
      found: found === undefined ? '–' : format(found),
      wanted: [
        ...(atLeast === undefined ? [] : [word('page.goal-at-least', { value: format(atLeast) })]),
        ...(atMost === undefined ? [] : [word('page.goal-at-most', { value: format(atMost) })]),
      ].join(', '),
    });
  const heads = [
    word('page.week'),
    word('page.week-way'),
    word('page.sessions'),
    word('page.with-cuff'),
    word('page.week-session-load'),
  ];
  return [
    title(word('page.by-week')),
    ...stopBlocks(translate, stops),
    { lines: disclaimerLines(translate, disclaimers) },
    ...(isStopped(comparison)
      ? []
      : [
          { table: [heads, ...whole] },
          ...places.flatMap(limbTables),
          ...part(word('page.goals'), { points: goals.map(goalLine) }),
          ...watchParts(translate, word, comparison),
        ]),
  ];
}

const signed = (value: number, text: string): string => (value > 0 ? `+${text}` : text);

/** What each of the four lines says of a comparison; the table has the rest. */
const SHORT = {
  joint: ['peakLoad', 'peakPercentOneRepMax'],
  work: ['repetitions', 'volumeLoad'],
  cuff: ['restrictionTime', 'percentLop', 'longestRestriction'],
} as const satisfies Partial<Record<ComparisonRow['line'], readonly ComparedQuantity[]>>;

/** How a number of a comparison is written, and how it changes. */
function comparisonWriter(translate: Translate, word: Word) {
  const words = (value: number, unit: Unit): string =>
    unit === 's'
      ? word('page.time', { time: `${value < 0 ? '−' : ''}${clock(Math.abs(value))}` })
      : amount(translate, value, unit).replace(/^-/, '−');
  /** `−45 kg (−60 %)`; a change of a percentage is written in points. */
  const change = ({ change, changePercent, unit }: ComparisonRow): string => {
    if (change === undefined) return word('page.not-known');
    if (change === 0) return word('page.same');
    const share = changePercent === undefined ? '' : ` (${signed(changePercent, words(changePercent, '%'))})`;
    const moved = unit === '%' ? word('page.points', { change: words(change, '1') }) : words(change, unit);
    return signed(change, moved) + share;
  };
  const cell = (answer: Answer | undefined): string =>
    answer ? words(answer.value, answer.unit) : word('page.not-given');
  /** `75 kg → 30 kg`, or the one number where nothing changes. */
  const fromTo = ({ from, to, change }: ComparisonRow): string =>
    change === 0 ? cell(from) : word('page.from-to', { from: cell(from), to: cell(to) });
  return { change, cell, fromTo };
}

/** The four lines of a comparison: on the joint, work, under the cuff, not known. */
export function comparedLines(
  { rows, notKnown }: Pick<SessionComparison, 'rows' | 'notKnown'>,
  translate: Translate,
): (readonly [string, string])[] {
  const word = translating(translate, pageWords);
  const { fromTo } = comparisonWriter(translate, word);
  const lines = (['joint', 'work', 'cuff'] as const).map((line) => {
    const own = SHORT[line].flatMap((quantity) => {
      const row = rows.find((one) => one.quantity === quantity);
      return row ? [word(`page.short-${quantity}`, { value: fromTo(row) })] : [];
    });
    const none = word(line === 'cuff' ? 'page.no-cuff' : 'page.nothing-given');
    return [word(`page.line-${line}`), own.join('; ') || none] as const;
  });
  const open = notKnown.map((code) => {
    const { from, to } = rows.find(({ quantity }) => quantity === code) ?? {};
    return code === 'equal-effect' ? word('page.equal-effect') : kindName(translate, (from ?? to)!.kind);
  });
  return [...lines, [word('page.line-not-known'), open.join('; ')] as const];
}

/** A comparison of sessions in four lines, then as a table. */
export function comparisonBlocks(comparison: SessionComparison, translate: Translate): Block[] {
  const { rows, cautions, stops } = comparison;
  const word = translating(translate, pageWords);
  const { change, cell } = comparisonWriter(translate, word);
  const heads = [word('page.measured'), word('page.from'), word('page.to'), word('page.change')];
  return [
    title(word('page.compared')),
    ...stopBlocks(translate, stops),
    ...(isStopped(comparison)
      ? []
      : [
          { fields: comparedLines(comparison, translate) },
          {
            table: [
              heads,
              ...rows.map((row) => [
                kindName(translate, (row.from ?? row.to)!.kind),
                cell(row.from),
                cell(row.to),
                change(row),
              ]),
            ],
          },
          ...part(word('page.method'), { points: cautions.map((message) => cautionLine(translate, message)) }),
        ]),
  ];
}

/** Ways to do an exercise with less load, each in four lines with its cautions; while a stop is in force, the stop. */
export function lighterBlocks(document: LighterOptions, translate: Translate): Block[] {
  const { exercise, lighterPercent, options, notOffered, stops, cautions, disclaimers } = document;
  const word = translating(translate, pageWords);
  const guideline = translate('guideline.guideline-review-2019', guidelineNames['guideline-review-2019']);
  return [
    title(word('page.lighter')),
    ...stopBlocks(translate, stops),
    {
      lines: [
        word('page.lighter-asked', { exercise, percent: format(lighterPercent) }),
        ...disclaimerLines(translate, disclaimers),
        ...cautions.map((message) => cautionLine(translate, message)),
      ],
    },
    ...options.flatMap(
      ({ keeps, load, sets, restriction, comparison, assumptions, findings, cautions: own }): Block[] => [
        { heading: word(`page.keeps-${keeps}`), level: 2 },
        {
          fields: [
            [word('page.load'), amountToSet(translate, load.value, load.unit)],
            [word('page.sets'), setCounts(sets)],
            [word('page.cuff'), named(translate, 'value', restriction)],
            ...comparedLines(comparison, translate),
          ],
        },
        {
          points: [
            ...findings.map((finding) => outsideLine(translate, finding, guideline)),
            // Remarks on the method are in the data; on this page they would hide the others.
            ...own
              .filter((message) => byAudience([message]).method.length === 0)
              .map((message) => cautionLine(translate, message)),
            ...assumptions.map((message) => assumedLine(translate, message)),
          ],
        },
      ],
    ),
    ...part(word('page.not-offered'), {
      points: notOffered.map((message) => `${word(`page.keeps-${message.keeps}`)}: ${sentence(translate, message)}`),
    }),
  ];
}
