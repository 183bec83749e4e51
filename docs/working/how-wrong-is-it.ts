/*
 * Writes docs/how-wrong-is-it.md: published figures beside what the library gives, misses included. A test holds the
 * page to this script; `npx vitest run --config tests/vitest.config.ts tests/docs/how-wrong-is-it.test.ts -u`
 * writes it anew.
 */
import errors from '../../src/checks/occlusion-errors.json' with { type: 'json' };
import {
  correctForCuffWidth,
  correctForPosture,
  estimateOcclusionPressure,
  knownEquations,
  sources,
  type OcclusionPressure,
  type Posture,
  type Source,
  type SourceId,
} from '../../src/index.js';
import {
  allMeans,
  cells,
  corrections,
  errorsOnSameMeans,
  NOMINAL,
  postures,
  sameMeans,
  type GroupMean,
} from './carrying-error.js';

const { systolicMmHg, diastolicMmHg, girthCm } = NOMINAL;

const table = (head: readonly string[], rows: readonly (readonly (string | number)[])[]): string =>
  [head, head.map(() => '---'), ...rows].map((row) => `| ${row.join(' | ')} |`).join('\n');
const mmHg = (value: number): string => value.toFixed(value < 1000 && !Number.isInteger(value) ? 1 : 0);
const percent = (share: number): string => `${share < 0 ? '−' : '+'}${Math.abs(100 * share).toFixed(0)} %`;
const size = (share: number): string => `${(100 * share).toFixed(0)} %`;
/** A publication in short. */
const paper = (id: string): string => {
  const { container, about, title, year }: Source = sources[id as SourceId];
  return [container ?? about ?? title, year].filter((part) => part !== undefined).join(' ');
};
const words = (text: string): string => text.replaceAll('not-stated', 'not stated').replaceAll('leg', 'thigh');
const between = ({ lower, upper }: OcclusionPressure): string => `${lower!.toFixed(0)} to ${upper!.toFixed(0)}`;
const holds = ({ lower, upper }: OcclusionPressure, mean: number): boolean => mean >= lower! && mean <= upper!;
const verdict = (held: boolean): string => (held ? 'yes' : '**no**');

/** The cuff that stands in for a sample whose abstract says narrow or wide but gives no width. */
const STAND_IN = { narrow: 5, wide: 13.5 } as const;

/** A miss: further from the mean than its sample’s own standard deviation, or than 15 % where none was published. */
const misses = (value: number, { mean, standardDeviation = 0.15 * mean }: GroupMean): boolean =>
  Math.abs(value - mean) > standardDeviation;

/** Every published mean beside the automatic estimate for the nominal person. */
export const besideMeans = allMeans.map((row: GroupMean) => {
  const cuffWidthCm = row.cuffWidthCm ?? STAND_IN[row.cuff as keyof typeof STAND_IN];
  if (cuffWidthCm === undefined) return { row, ours: undefined, missed: undefined };
  const limb = row.limb as 'leg' | 'arm';
  const ours = estimateOcclusionPressure({
    limb,
    circumferenceCm: girthCm[limb],
    systolicMmHg,
    diastolicMmHg,
    cuffWidthCm,
    posture: (row.posture === 'not-stated' ? 'supine' : row.posture) as Posture,
  });
  return { row, ours, missed: misses(ours.value, row) };
});

const meansTable = table(
  [
    'limb',
    'cuff [cm]',
    'posture',
    'published',
    'n',
    'here',
    '95 % interval',
    'off by',
    'miss',
    'equation',
    'publication',
  ],
  besideMeans.map(({ row, ours, missed }) => [
    words(row.limb),
    row.cuffWidthCm ?? words(row.cuff),
    words(row.posture),
    `${mmHg(row.mean)}${row.standardDeviation === undefined ? '' : ` (${row.standardDeviation})`}${row.grade === 'unconfirmed' ? ' †' : ''}`,
    row.n ?? '',
    ours ? mmHg(ours.value) : '–',
    ours ? between(ours) : 'no cuff, nothing to compare',
    ours ? percent((ours.value - row.mean) / row.mean) : '',
    missed === undefined ? '' : missed ? '**miss**' : 'no',
    ours?.equation ?? '',
    [paper(row.source), row.note].filter(Boolean).join('; '),
  ]),
);

const sameTable = table(
  [
    'limb',
    'cuff [cm]',
    'posture',
    'published',
    'pooled, this laboratory left out',
    'off by',
    'other equations',
    'publication',
  ],
  sameMeans.map(({ row, pooled, offByShare, others }) => [
    words(row.limb),
    row.cuffWidthCm!,
    words(row.posture),
    mmHg(row.mean),
    mmHg(Math.round(pooled)),
    percent(-offByShare / (1 + offByShare)),
    others
      .map(({ equation, answer, offByShare: off }) => `${equation} ${answer.toFixed(0)} (${percent(-off / (1 + off))})`)
      .join(', '),
    paper(row.source),
  ]),
);

const leftOutTable = table(
  ['cell', 'laboratories', 'means', 'pooled mean', 'between laboratories', 'error left out'],
  cells.map(({ cell, studies, rows, mean, between: spread, leftOut }) => [
    words(cell),
    studies.length,
    rows.length,
    mean.toFixed(0),
    size(spread),
    size(Math.hypot(...leftOut.map(({ offByShare }) => offByShare)) / Math.sqrt(leftOut.length)),
  ]),
);

const rankTable = table(
  ['cuff', 'equation', 'means', 'its error', 'pooled means, left out', 'smaller'],
  errorsOnSameMeans.map(({ kind, equation, means, own, pooled }) => [
    kind,
    equation,
    means,
    `${(100 * own).toFixed(1)} %`,
    `${(100 * pooled).toFixed(1)} %`,
    pooled < own ? 'pooled means' : equation,
  ]),
);

const widthTable = table(
  ['limb', 'from', 'to', 'published', 'here', '95 % interval', 'off by', 'inside', 'publication'],
  corrections.map(({ limb, source, fromCm, from, toCm, measured }) => {
    const ours = correctForCuffWidth({ occlusionMmHg: from, diastolicMmHg, fromWidthCm: fromCm, toWidthCm: toCm });
    return [
      limb,
      `${from} at ${fromCm} cm`,
      `${toCm} cm`,
      measured,
      mmHg(ours.value),
      between(ours),
      percent((ours.value - measured) / measured),
      verdict(holds(ours, measured)),
      paper(source),
    ];
  }),
);

const postureTable = table(
  ['cuff', 'from', 'to', 'published', 'shift', 'here', '95 % interval', 'inside', 'publication'],
  Object.values(postures)
    .flat()
    .map(({ low, high, shift }) => {
      const wide = low.cuff !== 'narrow';
      const ours = wide
        ? correctForPosture({
            occlusionMmHg: low.mean,
            limb: 'leg',
            cuffWidthCm: STAND_IN.wide,
            fromPosture: low.posture as Posture,
            toPosture: high.posture as Posture,
          })
        : undefined;
      return [
        words(low.cuff),
        `${low.mean} ${low.posture}`,
        high.posture,
        high.mean,
        `+${mmHg(shift)}`,
        ours ? mmHg(ours.value) : 'refused',
        ours ? between(ours) : '',
        ours ? verdict(holds(ours, high.mean)) : '',
        paper(low.source),
      ];
    }),
);

const errorTable = table(
  ['published', 'comes to', 'note', 'publication'],
  errors.rows.map(({ figure, kind, expected, source, ...row }) => [
    figure,
    `${expected}${kind === 'ratio' ? '' : kind === 'percent-of' ? ' %' : ` ${('unit' in row && row.unit) || 'mmHg'}`}`,
    ('note' in row && row.note) || '',
    paper(source),
  ]),
);

const knownTable = table(
  ['what', 'draws on', 'published error', 'why it is not here', 'publication'],
  knownEquations.map(({ about, predictors, error, reason, source }) => [
    about,
    predictors.join(', '),
    error,
    reason,
    paper(source),
  ]),
);

/** Published figures that nothing here predicts, and why. */
const ASIDE: readonly (readonly [string, string])[] = [
  ['116 ankles, mean 192.73 ± 31.73 mmHg (Rev Esp Podol 2024;35(1))', 'an ankle cuff'],
  [
    'tourniquet pressures 168.4 ± 14.5 and 173.3 ± 15.6 mmHg (Acta Orthop Traumatol Turc 2016;50)',
    'set from an estimate plus 20 mmHg, not measured',
  ],
  [
    'tourniquet pressures 182.44 ± 14.59 (estimated) and 200.69 ± 15.55 mmHg (measured) (Acta Orthop Traumatol Turc 2018;52(4):256–260)',
    'set pressures in surgery, with a margin',
  ],
  ['mean surgical pressures arm 183.7, leg 208 mmHg (Clin Orthop 1993;(287):237–44)', 'set pressures in surgery'],
  [
    'measured plus margin by thigh circumference: 223.8 ± 19.8 (40 to 50 cm), 240.07 ± 20.1 (51 to 60 cm), 296 ± 15.3 mmHg (above 60 cm); systolic plus 150: 262.1 ± 15.9, 264.5 ± 17.4, 267.3 ± 19.2 mmHg (doi 10.1007/s43465-024-01177-5)',
    'set pressures in surgery; they show that a systolic-only rule is almost flat in circumference',
  ],
  [
    'systolic plus 100 mmHg: a bloodless field in 119 of 120 arms (PMID 22894765); systolic plus 120 and plus 150 mmHg: in 99 and 100 % of 160 knees (doi 10.1186/s12891-019-2636-7)',
    'surgical margins; not for training',
  ],
  [
    'pressure for 60 % less flow: leg 111 ± 12, arm 101 ± 12 mmHg (Eur J Appl Physiol 2016;116(7))',
    'not an occlusion pressure; limb order uncertain in the abstract',
  ],
  [
    'systolic-only and padding-coefficient rules below the measured pressure in 41 % and 62 % of 143 patients; a fixed pressure above it by 121 mmHg on average (CMBES proceedings)',
    'the readings of the patients were not published',
  ],
  [
    'after exercise +27 (20 to 33) mmHg in the arm that worked, +24 (18 to 31) in the other (Biomed Phys Eng Express 2018;4:065034); +44 and +34 mmHg (Eur J Appl Physiol 2018)',
    'said in a caution; no estimate is made of pressures during exercise',
  ],
  [
    'repeats r > .96, mean difference below 1.5 mmHg; retest after 5 min 4.8 mmHg lower, ICC .72 to .79 (Int J Sports Phys Ther 2020;15(5)); arm posture ICC .894, .973, .984',
    'agreement coefficients, which carry no error in mmHg',
  ],
];

export const page = `# How wrong is it?

Published figures of limb occlusion pressure beside what this library gives, misses included. The page is written by [a committed script](working/how-wrong-is-it.ts) and held to it by a test; the derivations are in [another](working/carrying-error.ts).

No publication that was read prints the circumference and blood pressure of its sample beside its mean. So a nominal person stands in for every sample: ${systolicMmHg}/${diastolicMmHg} mmHg, thigh ${girthCm.leg} cm, arm ${girthCm.arm} cm. Part of each miss is the distance of the sample from that person. No equation has been validated in another laboratory, as far as was found.

## Published means beside the automatic estimate

Means and intervals in mmHg; † means a figure from memory, which nothing is derived from. A sample that calls its cuff narrow or wide without a width is set beside ${STAND_IN.narrow} or ${STAND_IN.wide} cm. A posture that was not stated counts as supine. A **miss** lies further from the mean than the sample’s own standard deviation, or than 15 % of the mean where none was published; that a mean lies inside the interval says little, as the interval is that of one person. Where the equation is one of the pooled means, the sample itself is in it: the next table leaves it out.

${meansTable}

## Pooled means: the project’s own working

A random-effects mean over laboratories, for each limb, kind of cuff and posture with two laboratories or more. It is **not a published equation**. Each laboratory is left out in turn, and its means are predicted from the others:

${leftOutTable}

The same means by every other equation that applies, for the nominal person. Only samples of known cuff width can be set beside an equation:

${sameTable}

Root-mean-square errors on the same means. The pooled means become the automatic choice only where theirs is smaller: with a wide cuff on the thigh, but not for 18 cm with age and sex given, lying down; and on the arm beside a 5 cm cuff, where two means decide by a hair. With a 5 cm cuff on the thigh they do not.

${rankTable}

## Another cuff width

Pairs of widths measured in the same people, carried both ways by \`correctForCuffWidth\`. From 5 cm up it changes the pressure too much: narrower overshoots, wider undershoots. Between 3 and 5 cm it changes it too little.

${widthTable}

## Another posture

The same people in two postures, thigh. \`correctForPosture\` adds 25 mmHg seated and 55 mmHg standing to supine, for wide cuffs only. With a narrow cuff the postures hang together too loosely (R² 0.50 against 0.81), and for the arm only the order is known (highest seated, lowest standing): both are refused. Samples that say nothing of their cuff are counted as wide, as the group shift was.

${postureTable}

## Published errors

${errorTable}

## Known, but not available

Equations whose coefficients are not in any text that was read. None is made up; they are exported as \`knownEquations\`.

${knownTable}

## Published, with nothing here to set beside them

${table(['figure', 'why'], ASIDE)}
`;
