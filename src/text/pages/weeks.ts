import type { Answer } from '../../answer/answer.js';
import { amount, amountToSet } from '../../answer/translate.js';
import type { WeekComparison } from '../../plan/compare-weeks.js';
import { isSameLimb, limbsIn } from '../../plan/limb-and-side.js';
import { sideWords } from '../../plan/measures.js';
import type { GoalMeasure, StageGoalResult } from '../../plan/stage-goals.js';
import type { WeekLimb, WeekRow, WeekSums } from '../../plan/week-rows.js';
import { clock, format } from '../../quantity/format.js';
import type { Unit } from '../../quantity/quantities.js';
import { inflatedS } from '../../session/exposure.js';
import { joined, part, present, table, type Block, type Column } from '../blocks.js';
import type { Translator } from '../translator.js';
import { answerAmount, isStopped, opening, watchParts } from './parts.js';

/** A week as planned or as done. */
interface WeekLine {
  readonly row: WeekRow;
  readonly way: 'planned' | 'done';
  readonly sums: WeekSums;
}

const NONE = '–';
const cell = (translate: Translator, answer: Answer | undefined): string =>
  answer ? answerAmount(translate, answer) : NONE;
const timeCell = (translate: Translator, limb: Parameters<typeof inflatedS>[0]): string =>
  translate('page.time', { time: clock(inflatedS(limb)) });

/** A table with a row for each week; narrow enough for a phone, without the columns that no week has anything in. */
function weekTable<W extends WeekLine>(
  translate: Translator,
  weeks: readonly W[],
  columns: readonly Column<W>[],
  under?: string,
): Block {
  const weekWords = ({ row: { week, deload }, way }: W): string => {
    const words = translate('page.week-of', { week, way: translate(`page.week-${way}`) });
    return deload ? translate('page.week-deload', { way: words }) : words;
  };
  const known = columns.filter(([, words]) => weeks.some((line) => words(line) !== NONE));
  return { ...table(weeks, [translate('page.week'), weekWords], ...known), ...(under !== undefined && { under }) };
}

const occlusionWords = (translate: Translator, { valueMmHg, measured, date }: NonNullable<WeekLimb['occlusion']>) =>
  joined(
    amount(translate, valueMmHg, 'mm[Hg]'),
    translate(measured ? 'page.lop-measured' : 'page.sentence-estimated'),
    date,
  );

/** The tables of a limb: each of its exercises, what they add up to, then the limb itself. */
function limbBlocks(
  translate: Translator,
  weeks: readonly WeekLine[],
  place: ReturnType<typeof limbsIn>[number],
): Block[] {
  const own = weeks.flatMap((line) => {
    const limb = line.sums.limbs.find((one) => isSameLimb(one, place));
    return limb ? [{ ...line, limb }] : [];
  });
  const done = own.flatMap((line) => line.limb.exercises.map((one) => ({ ...line, one })));
  const exercises = [...new Set(done.map(({ one }) => one.exercise))];
  return [
    { heading: sideWords(translate, place.side, place.limb), level: 2 },
    ...exercises.map((exercise) =>
      weekTable(
        translate,
        done.filter(({ one }) => one.exercise === exercise),
        [
          [translate('page.heaviest'), ({ one }) => cell(translate, one.peakLoad)],
          [translate('page.maximum'), ({ one }) => cell(translate, one.peakPercentOneRepMax)],
          [translate('page.week-inflated'), ({ one }) => timeCell(translate, one)],
          [translate('page.occlusion'), ({ one }) => cell(translate, one.percentLop)],
        ],
        exercise,
      ),
    ),
    weekTable(
      translate,
      own,
      [
        [translate('page.volume'), ({ limb }) => cell(translate, limb.volumeLoad)],
        [translate('page.week-inflated'), ({ limb }) => timeCell(translate, limb)],
        [
          translate('page.week-pain'),
          ({ limb: { worstPain } }) => (worstPain ? `${format(worstPain.value)}/10` : NONE),
        ],
      ],
      translate('page.week-together'),
    ),
    weekTable(
      translate,
      own.filter(({ limb }) => limb.occlusion ?? limb.circumferenceCm),
      [
        [translate('page.week-lop'), ({ limb }) => (limb.occlusion ? occlusionWords(translate, limb.occlusion) : NONE)],
        [
          translate('page.week-circumference'),
          ({ limb: { circumferenceCm: cm } }) => (cm === undefined ? NONE : amount(translate, cm, 'cm')),
        ],
      ],
      translate('page.week-measured'),
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
    found: found === undefined ? NONE : amount(translate, found, unit, present(atLeast, atMost)),
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
    ...opening(translate, 'page.week-comparison', comparison),
    ...(isStopped(comparison)
      ? []
      : [
          weekTable(translate, weeks, [
            [translate('page.sessions'), ({ sums }) => format(sums.sessions.value)],
            [translate('page.with-cuff'), ({ sums }) => format(sums.restrictedSessions.value)],
            [translate('page.week-session-load'), ({ sums }) => cell(translate, sums.sessionLoad)],
          ]),
          ...limbs.flatMap((place) => limbBlocks(translate, weeks, place)),
          ...part(translate('page.goals'), { points: comparison.goals.map((goal) => goalLine(translate, goal)) }),
          ...watchParts(translate, comparison),
        ]),
  ];
}
