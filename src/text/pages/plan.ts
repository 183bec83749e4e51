import type { Answer, Caution } from '../../answer/answer.js';
import { amount, named, sentence } from '../../answer/translate.js';
import { itemCautions } from '../../plan/item-cautions.js';
import { sideWords } from '../../plan/measures.js';
import { messageKey } from '../../plan/severity.js';
import type { Disclaimer } from '../../plan/disclaimers.js';
import { SYMPTOM_GRADES, symptoms, type SymptomGrade } from '../../plan/symptoms.js';
import type { ExpandedPlan, ExpandedPlanItem } from '../../plan/types.js';
import { bloodPressureCautions } from '../../pressure/blood-pressure.js';
import { clock, format } from '../../quantity/format.js';
import { loadUnitOf } from '../../quantity/quantities.js';
import { isCuffed, takesTurns } from '../../session/prescription.js';
import { fields, joined, lines, namedPart, part, present, type Block, type Field } from '../blocks.js';
import { assumedLine, cautionLine, partsOf } from '../section.js';
import type { Translator } from '../translator.js';
import {
  cuffWords,
  exercisesOf,
  lengthWords,
  loadWords,
  setLength,
  setWords,
  tempoWords,
  turnWords,
  warmUpWords,
} from './exercises.js';
import {
  always,
  bloodPressure,
  cautionsLeft,
  isStopped,
  limbLines,
  opening,
  placedLine,
  pressure,
  setFields,
  sourcesPart,
  totalLines,
  totalTime,
  USUAL,
  type Detail,
} from './parts.js';
import { planWorking } from './plan-working.js';

/** As many cautions a person reads in the gym. */
const MOST_FOR_PERSON = 3;

/** The clock of the session: which exercise, which limb and which pressure, where there is more than one. */
function clockRows(translate: Translator, { session, request, limbs }: ExpandedPlan): [string, string][] {
  const { events, durationS } = session.timeline;
  const names = request.exercises.map(({ name }) => name);
  const rows = events.map((happens): [string, string] => {
    const { atS, event, exercise, limb, side, pressureMmHg, set, warmUp } = happens;
    const plain =
      event === 'set'
        ? translate(warmUp ? 'page.warm-up-set' : 'page.set', { set: set!, length: setLength(translate, happens) })
        : translate(`page.${event}`);
    const words =
      event === 'set' && exercise !== undefined
        ? translate('page.of-place', { exercise: names[exercise - 1]!, side: plain })
        : pressureMmHg === undefined
          ? plain
          : translate('page.to-pressure', { event: plain, pressure: pressure(translate, pressureMmHg) });
    if (limbs.length < 2 || limb === undefined || side === undefined) return [clock(atS), words];
    const one = side === 'left' || side === 'right';
    const where = one ? sideWords(translate, side, limb) : translate('page.both-sides');
    return [clock(atS), translate('page.with-side', { event: words, side: where })];
  });
  return [...rows, [clock(durationS), translate('page.end')]];
}

/** A box for each set, with what is in it: `☐ 30  ☐ 15`, `☐ 3 × 87.5 kg`, `☐ 5 min`. */
const boxes = (translate: Translator, { sets, load: one }: ExpandedPlanItem): string =>
  sets
    .map(({ repetitions, durationS, load }) => {
      const set = repetitions === undefined ? lengthWords(translate, durationS!) : format(repetitions);
      return `☐ ${load === undefined ? set : `${set} × ${amount(translate, load, one!.unit)}`}`;
    })
    .join('  ');

type Listed = ReturnType<typeof exercisesOf>[number];

const ofSide = (translate: Translator, label: string, { own }: Listed, { side, limb }: ExpandedPlanItem): string =>
  own.length > 1 ? translate('page.with-side', { event: label, side: sideWords(translate, side, limb) }) : label;

/** What to do in an exercise: with the cuffs, then the work; in brief with a box for each set. */
function exerciseFields(translate: Translator, plan: ExpandedPlan, exercise: Listed, brief: boolean): Block {
  const { listed, own, rests, pause } = exercise;
  const [first, second] = own;
  const { restriction, mode, tempo, intensityPercent, warmUp, sets, load } = first;
  const inTurn = second && listed.side !== undefined && takesTurns(listed.side);
  const each = (items: readonly ExpandedPlanItem[], label: string, words: (item: ExpandedPlanItem) => string) =>
    items.map((item): Field => [items.length > 1 ? ofSide(translate, label, exercise, item) : label, words(item)]);
  return fields(
    ...each(restriction === 'none' ? [first] : own, translate('page.cuff'), (item) => cuffWords(translate, plan, item)),
    [translate('page.posture'), named(translate, 'value', first.posture ?? plan.request.posture)],
    second && [translate('page.turns'), turnWords(translate, listed)],
    (mode === undefined || mode === 'resistance') && [translate('page.load'), loadWords(translate, first)],
    intensityPercent !== undefined && [
      translate('page.intensity'),
      translate('page.of-capacity', { percent: format(intensityPercent) }),
    ],
    warmUp && [translate('page.warm-up'), warmUpWords(translate, warmUp, load?.unit ?? 'kg')],
    [translate('page.sets'), setWords(translate, first, rests)],
    ...setFields(translate, sets, load ? loadUnitOf(load.unit) : 'kg'),
    tempo && [translate('page.tempo'), tempoWords(translate, tempo)],
    ...(brief ? each(inTurn ? own : [first], translate('page.tick'), (item) => boxes(translate, item)) : []),
    pause && [
      translate('page.then'),
      `${lengthWords(translate, pause.durationS!)} ${translate(`page.${pause.event as 'rest'}`)}`,
    ],
  );
}

/** The exercises of a plan as parts of its page. */
const exerciseBlocks = (translate: Translator, plan: ExpandedPlan, brief: boolean): Block[] =>
  exercisesOf(plan).flatMap((exercise): Block[] => {
    const { listed, number, own } = exercise;
    const [{ side, limb }, second] = own;
    const where = second ? translate('page.both-sides') : sideWords(translate, side, limb);
    return namedPart('exercise', [
      { heading: translate('page.item', { number, exercise: listed.name, side: where }), level: 2 },
      exerciseFields(translate, plan, exercise, brief),
      ...(brief || isSeveral(plan) ? [] : [{ under: translate('page.clock'), rows: clockRows(translate, plan) }]),
      ...(brief ? [] : own).map((item) => ({
        under: ofSide(translate, translate('page.totals'), exercise, item),
        lines: totalLines(translate, item.totals),
      })),
    ]);
  });

/** Whether a session is more than one exercise on one limb. */
const isSeveral = ({ items }: ExpandedPlan): boolean => items.length > 1;

/** Cautions as lines, each with the exercises or limbs it is about, where it is not the person’s. */
function warnings(translate: Translator, plan: ExpandedPlan, cautions: readonly Caution[]): string[] {
  const { systolicMmHg, diastolicMmHg } = plan.request;
  const personal = bloodPressureCautions(systolicMmHg, diastolicMmHg).map(messageKey);
  const line = placedLine(translate, plan, itemCautions);
  return cautions.map((printed) =>
    personal.includes(messageKey(printed)) ? cautionLine(translate, printed) : line(printed),
  );
}

/** What was assumed of a measured pressure: the practitioner knows better. */
const OF_MEASUREMENT = ['measured-posture-as-planned', 'measured-cuff-as-planned'];

/** An answer and those that it was worked out from. */
const withParts = (answer: Answer): Answer[] => [answer, ...partsOf(answer).flatMap(withParts)];

/** What was assumed of the measured pressures of a plan, each once. */
const measuredAs = (translate: Translator, { items }: ExpandedPlan): string[] => [
  ...new Set(
    present(...items.map(({ occlusion }) => occlusion))
      .flatMap(withParts)
      .flatMap(({ assumptions }) => assumptions.filter(({ code }) => OF_MEASUREMENT.includes(code)))
      .map((assumed) => assumedLine(translate, assumed)),
  ),
];

/** Who trains, in one line. */
function personLine(translate: Translator, request: ExpandedPlan['request']): string {
  const { label, date, ageYears, sex, systolicMmHg, diastolicMmHg, sessionsPerWeek, weeks } = request;
  return joined(
    date,
    label ?? translate('page.person'),
    ageYears !== undefined && translate('page.years', { age: format(ageYears) }),
    sex && named(translate, 'value', sex),
    bloodPressure(translate, 'page.blood-pressure', systolicMmHg, diastolicMmHg),
    sessionsPerWeek !== undefined && translate('page.sessions-per-week', { sessions: format(sessionsPerWeek) }),
    weeks !== undefined && translate('page.weeks', { weeks: format(weeks) }),
  );
}

/** What to deflate at, and what is usual. */
function criteriaBlocks(translate: Translator, { items, stopCriteria, disclaimers }: ExpandedPlan): Block[] {
  const usual = disclaimers.filter(({ code }) => code === USUAL);
  // A criterion that only another version knows has no grade here: it is shown with the most severe.
  const gradeOf = ({ code }: Disclaimer): SymptomGrade =>
    symptoms.find((symptom) => symptom.code === code)?.grade ?? 'emergency';
  const criteria = part(
    translate(items.some(isCuffed) ? 'page.stop' : 'page.stop-no-cuff'),
    ...SYMPTOM_GRADES.map((grade) => ({
      under: translate(`page.then-${grade}`),
      lines: stopCriteria.flatMap((printed) => (gradeOf(printed) === grade ? [sentence(translate, printed)] : [])),
    })),
    lines(...usual.map((printed) => sentence(translate, printed))),
  );
  return namedPart('stop-criteria', criteria);
}

/** What a person notes after the session. */
const writeDown = (translate: Translator, { limbs }: ExpandedPlan): Block[] =>
  namedPart(
    'write-down',
    part(
      translate('page.write-down'),
      lines(
        ...limbs.map(
          ({ side, limb, exercises }) =>
            exercises > 0 && translate('page.write-held', { side: sideWords(translate, side, limb) }),
        ),
        translate('page.write-pain'),
        translate('page.write-effort'),
      ),
    ),
  );

/** A plan as a page: in full with the working of every number below it, or in brief, for the gym. */
export function planBlocks(plan: ExpandedPlan, translate: Translator, detail: Detail): Block[] {
  const { request, limbs, session, assumptions } = plan;
  const { notes } = request;
  const brief = detail === 'brief';
  const top: Block[] = [
    ...opening(translate, 'page.title', plan, [
      personLine(translate, request),
      notes !== undefined && translate('page.notes', { notes }),
    ]),
  ];
  const criteria = criteriaBlocks(translate, plan);
  const below = part(translate(brief ? 'page.afterwards' : 'page.always'), {
    points: always(translate, plan, detail),
  });
  if (isStopped(plan)) return [...top, ...criteria, ...below];

  const { person, practitioner, method } = cautionsLeft(plan);
  const exercises = exerciseBlocks(translate, plan, brief);
  const restrictions = limbLines(translate, limbs);
  const shown = brief ? person.slice(0, MOST_FOR_PERSON) : person;
  const count = brief ? person.length + practitioner.length + method.length - shown.length : 0;
  const more = count > 0 && translate('page.more', { count });
  const watch = [{ points: warnings(translate, plan, shown) }, lines(shown.length > 0 && more)];
  const start = [...top, ...part(translate('page.watch'), ...watch), ...criteria, ...exercises];
  if (brief) {
    return [
      ...start,
      ...part(translate('page.limbs'), lines(...restrictions, totalTime(translate, session.totals))),
      ...writeDown(translate, plan),
      ...below,
      ...part(translate('page.full'), lines(shown.length === 0 && more, translate('page.in-full'))),
    ];
  }
  const assumed = measuredAs(translate, plan);
  const cuffedLimbs = limbs.filter(({ exercises: count }) => count > 0).length;
  const clockAndTotals: Block[] = [
    { under: translate('page.clock'), rows: clockRows(translate, plan) },
    { under: translate('page.totals'), lines: totalLines(translate, session.totals, cuffedLimbs) },
  ];
  return [
    ...start,
    ...(isSeveral(plan) ? part(translate('page.session'), ...clockAndTotals) : []),
    ...part(translate('page.limbs'), lines(...restrictions)),
    ...part(translate('page.practitioner'), { points: [...warnings(translate, plan, practitioner), ...assumed] }),
    ...below,
    ...part(translate('page.method'), {
      points: [...warnings(translate, plan, method), ...assumptions.map((printed) => assumedLine(translate, printed))],
    }),
    ...part(translate('page.working'), ...planWorking(plan, translate, assumed)),
    ...sourcesPart(translate, plan),
  ];
}
