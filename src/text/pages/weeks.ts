import type { Answer } from '../../answer/answer.js';
import { amount } from '../../answer/translate.js';
import type { WeekComparison, WeekRow } from '../../plan/compare-weeks.js';
import { isSameLimb, limbsIn } from '../../plan/limb-and-side.js';
import { sideWords } from '../../plan/measures.js';
import type { StageGoalResult } from '../../plan/stage-goals.js';
import type { WeekLimb, WeekSums } from '../../plan/week-types.js';
import { clock, format } from '../../quantity/format.js';
import { joined, part, type Block } from '../blocks.js';
import type { Translator } from '../translator.js';
import { answerAmount, isStopped, opening, pressure, watchParts } from './parts.js';

/** A week as planned or as done. */
interface WeekLine {
  readonly row: WeekRow;
  readonly way: 'planned' | 'done';
  readonly sums: WeekSums;
}

const cell = (translate: Translator, answer: Answer | undefined): string =>
  answer ? answerAmount(translate, answer) : '–';
const timeCell = (translate: Translator, { value }: Answer): string => translate('page.time', { time: clock(value) });

/** The first two cells of a row. */
const weekCells = (translate: Translator, { row, way }: WeekLine): string[] => [
  format(row.week),
  row.deload ? translate('page.week-deload', { way: translate(`page.week-${way}`) }) : translate(`page.week-${way}`),
];

/** The table of the weeks as a whole. */
const wholeTable = (translate: Translator, weeks: readonly WeekLine[]): Block => ({
  table: [
    [
      translate('page.week'),
      translate('page.week-way'),
      translate('page.sessions'),
      translate('page.with-cuff'),
      translate('page.week-session-load'),
    ],
    ...weeks.map((line) => [
      ...weekCells(translate, line),
      format(line.sums.sessions.value),
      format(line.sums.restrictedSessions.value),
      cell(translate, line.sums.sessionLoad),
    ]),
  ],
});

const occlusionWords = (translate: Translator, { valueMmHg, measured, date }: NonNullable<WeekLimb['occlusion']>) =>
  joined(pressure(translate, valueMmHg), translate(measured ? 'page.lop-measured' : 'page.lop-estimated'), date);

/** The tables of a limb: its exercises, then what it goes through in each week. */
function limbBlocks(
  translate: Translator,
  weeks: readonly WeekLine[],
  place: ReturnType<typeof limbsIn>[number],
): Block[] {
  const own = weeks.flatMap((line) => {
    const limb = line.sums.limbs.find((one) => isSameLimb(one, place));
    return limb ? [{ line, limb }] : [];
  });
  return [
    { heading: sideWords(translate, place.side, place.limb), level: 2 },
    {
      table: [
        [
          translate('page.week'),
          translate('page.week-way'),
          translate('page.week-exercise'),
          translate('page.heaviest'),
          translate('page.maximum'),
          translate('page.week-inflated'),
          translate('page.occlusion'),
        ],
        ...own.flatMap(({ line, limb }) =>
          limb.exercises.map((one) => [
            ...weekCells(translate, line),
            one.exercise,
            cell(translate, one.peakLoad),
            cell(translate, one.peakPercentOneRepMax),
            timeCell(translate, one.restrictionTime),
            cell(translate, one.percentLop),
          ]),
        ),
      ],
    },
    {
      table: [
        [
          translate('page.week'),
          translate('page.week-way'),
          translate('page.volume'),
          translate('page.week-inflated'),
          translate('page.week-lop'),
          translate('page.week-circumference'),
          translate('page.week-pain'),
        ],
        ...own.map(({ line, limb }) => [
          ...weekCells(translate, line),
          cell(translate, limb.volumeLoad),
          timeCell(translate, limb.restrictionTime),
          limb.occlusion ? occlusionWords(translate, limb.occlusion) : '–',
          limb.circumferenceCm === undefined ? '–' : amount(translate, limb.circumferenceCm, 'cm'),
          limb.worstPain ? `${format(limb.worstPain.value)}/10` : '–',
        ]),
      ],
    },
  ];
}

const goalLine = (translate: Translator, { name, outcome, found, atLeast, atMost }: StageGoalResult): string =>
  translate('page.goal', {
    name,
    outcome: translate(`page.goal-${outcome}`),
    found: found === undefined ? '–' : format(found),
    wanted: joined(
      atLeast !== undefined && translate('page.goal-at-least', { value: format(atLeast) }),
      atMost !== undefined && translate('page.goal-at-most', { value: format(atMost) }),
    ),
  });

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
          wholeTable(translate, weeks),
          ...limbs.flatMap((place) => limbBlocks(translate, weeks, place)),
          ...part(translate('page.goals'), { points: comparison.goals.map((goal) => goalLine(translate, goal)) }),
          ...watchParts(translate, comparison),
        ]),
  ];
}
