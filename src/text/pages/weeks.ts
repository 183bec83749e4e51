import type { Answer } from '../../answer/answer.js';
import { amount, amountToSet } from '../../answer/translate.js';
import type { WeekComparison } from '../../plan/compare-weeks.js';
import { isSameLimb, limbsIn } from '../../plan/limb-and-side.js';
import { sideWords } from '../../plan/measures.js';
import type { GoalMeasure, StageGoalResult } from '../../plan/stage-goals.js';
import type { WeekLimb, WeekRow, WeekSums } from '../../plan/week-rows.js';
import { clock, format } from '../../quantity/format.js';
import type { Unit } from '../../quantity/quantities.js';
import { joined, part, present, table, type Block, type Column } from '../blocks.js';
import type { Translator } from '../translator.js';
import { answerAmount, isStopped, opening, watchParts } from './parts.js';

/** A week as planned or as done. */
interface WeekLine {
  readonly row: WeekRow;
  readonly way: 'planned' | 'done';
  readonly sums: WeekSums;
}

const cell = (translate: Translator, answer: Answer | undefined): string =>
  answer ? answerAmount(translate, answer) : '–';
const timeCell = (translate: Translator, { value }: Answer): string => translate('page.time', { time: clock(value) });

/** The first two columns of every table. */
const weekColumns = (translate: Translator): Column<WeekLine>[] => [
  [translate('page.week'), ({ row }) => format(row.week)],
  [
    translate('page.week-way'),
    ({ row, way }) => {
      const name = translate(`page.week-${way}`);
      return row.deload ? translate('page.week-deload', { way: name }) : name;
    },
  ],
];

const occlusionWords = (translate: Translator, { valueMmHg, measured, date }: NonNullable<WeekLimb['occlusion']>) =>
  joined(
    amount(translate, valueMmHg, 'mm[Hg]'),
    translate(measured ? 'page.lop-measured' : 'page.lop-estimated'),
    date,
  );

/** The tables of a limb: its exercises, then what it goes through in each week. */
function limbBlocks(
  translate: Translator,
  weeks: readonly WeekLine[],
  place: ReturnType<typeof limbsIn>[number],
): Block[] {
  const own = weeks.flatMap((line) => {
    const limb = line.sums.limbs.find((one) => isSameLimb(one, place));
    return limb ? [{ ...line, limb }] : [];
  });
  return [
    { heading: sideWords(translate, place.side, place.limb), level: 2 },
    table(
      own.flatMap((line) => line.limb.exercises.map((one) => ({ ...line, one }))),
      ...weekColumns(translate),
      [translate('page.week-exercise'), ({ one }) => one.exercise],
      [translate('page.heaviest'), ({ one }) => cell(translate, one.peakLoad)],
      [translate('page.maximum'), ({ one }) => cell(translate, one.peakPercentOneRepMax)],
      [translate('page.week-inflated'), ({ one }) => timeCell(translate, one.restrictionTime)],
      [translate('page.occlusion'), ({ one }) => cell(translate, one.percentLop)],
    ),
    table(
      own,
      ...weekColumns(translate),
      [translate('page.volume'), ({ limb }) => cell(translate, limb.volumeLoad)],
      [translate('page.week-inflated'), ({ limb }) => timeCell(translate, limb.restrictionTime)],
      [translate('page.week-lop'), ({ limb }) => (limb.occlusion ? occlusionWords(translate, limb.occlusion) : '–')],
      [
        translate('page.week-circumference'),
        ({ limb: { circumferenceCm: cm } }) => (cm === undefined ? '–' : amount(translate, cm, 'cm')),
      ],
      [translate('page.week-pain'), ({ limb: { worstPain } }) => (worstPain ? `${format(worstPain.value)}/10` : '–')],
    ),
  ];
}

/** Units of what a goal is about; your own measure has your own. */
const GOAL_UNITS: Partial<Record<GoalMeasure, Unit>> = {
  peakLoadKg: 'kg',
  peakPercentOneRepMax: '%',
  percentLop: '%',
  restrictionMin: 'min',
  volumeLoadKg: 'kg',
  circumferenceCm: 'cm',
  sessionLoad: '{AU}',
};

function goalLine(translate: Translator, { name, outcome, measure, found, atLeast, atMost }: StageGoalResult): string {
  const unit = (measure && GOAL_UNITS[measure]) ?? '1';
  const wanted = (value: number): string => amountToSet(translate, value, unit);
  return translate('page.goal', {
    name,
    outcome: translate(`page.goal-${outcome}`),
    found: found === undefined ? '–' : amount(translate, found, unit, present(atLeast, atMost)),
    wanted: joined(
      atLeast !== undefined && translate('page.goal-at-least', { value: wanted(atLeast) }),
      atMost !== undefined && translate('page.goal-at-most', { value: wanted(atMost) }),
    ),
  });
}

/** Weeks as tables: the week, then each limb, exercise by exercise. */
export function weeksBlocks(comparison: WeekComparison, translate: Translator): Block[] {
  const weeks = comparison.weeks.flatMap((row) =>
    (['planned', 'done'] as const).flatMap((way): WeekLine[] => (row[way] ? [{ row, way, sums: row[way] }] : [])),
  );
  const limbs = limbsIn(weeks.flatMap(({ sums }) => sums.limbs));
  return [
    ...opening(translate, 'page.by-week', comparison),
    ...(isStopped(comparison)
      ? []
      : [
          table(
            weeks,
            ...weekColumns(translate),
            [translate('page.sessions'), ({ sums }) => format(sums.sessions.value)],
            [translate('page.with-cuff'), ({ sums }) => format(sums.restrictedSessions.value)],
            [translate('page.week-session-load'), ({ sums }) => cell(translate, sums.sessionLoad)],
          ),
          ...limbs.flatMap((place) => limbBlocks(translate, weeks, place)),
          ...part(translate('page.goals'), { points: comparison.goals.map((goal) => goalLine(translate, goal)) }),
          ...watchParts(translate, comparison),
        ]),
  ];
}
