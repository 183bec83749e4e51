/*
 * Writes docs/how-wrong-is-it.md and its appendix: published figures compared with what the library gives, misses
 * included. A test compares the pages with this script; `npx vitest run --config tests/vitest.config.ts tests/docs/how-wrong-is-it.test.ts -u`
 * writes them anew.
 */
import errors from '../../src/checks/occlusion-errors.json' with { type: 'json' };
import {
  attempt,
  correctForCuffWidth,
  correctForPosture,
  estimateOcclusionPressure,
  type OcclusionPressure,
  type Posture,
  type SourceId,
} from '../../src/index.js';
import { knownEquations, sources, type Source } from '../../src/text/index.js';
import { table } from '../tools/markdown-table.js';
import found from './pooled-curve.json' with { type: 'json' };
import survey from './survey-figures.json' with { type: 'json' };
import groupMeans from '../../src/checks/group-means.json' with { type: 'json' };
import { errorsOnSameMeans, posturePairs, sameMeans, widthPairs } from './equation-errors.js';
import { capped, NOMINAL, type GroupMean, type Mean } from './pooled-curve.js';

const { systolicMmHg, diastolicMmHg, circumferenceCm } = NOMINAL;

const mmHg = (value: number): string => value.toFixed(value < 1000 && !Number.isInteger(value) ? 1 : 0);
const percent = (share: number): string => `${share < 0 ? '−' : '+'}${Math.abs(100 * share).toFixed(0)} %`;
const size = (share: number): string => `${(100 * share).toFixed(0)} %`;
const tenths = (share: number): string => `${(100 * share).toFixed(1)} %`;
/** A publication in short. */
const paper = (id: string): string => {
  const { container, about, title, year }: Source = sources[id as SourceId];
  return [container ?? about ?? title, year].filter((part) => part !== undefined).join(' ');
};
const words = (text: string): string => text.replaceAll('not-stated', 'not stated').replaceAll('leg', 'thigh');
const between = ({ lower, upper }: OcclusionPressure): string => `${lower!.toFixed(0)}–${upper!.toFixed(0)}`;
const holds = ({ lower, upper }: OcclusionPressure, mean: number): boolean => mean >= lower! && mean <= upper!;
const verdict = (held: boolean): string => (held ? 'yes' : '**no**');

/** The cuff that replaces that of a sample whose abstract says narrow or wide but gives no width. */
const STAND_IN = { narrow: 5, wide: 13.5 } as const;

/** A miss: further from the mean than its sample’s own standard deviation, or than 15 % where none was published. */
const misses = (value: number, { mean, standardDeviation = 0.15 * mean }: GroupMean): boolean =>
  Math.abs(value - mean) > standardDeviation;

/** The estimate for the nominal person. */
const estimated = (limb: 'leg' | 'arm', cuffWidthCm: number, posture: Posture): OcclusionPressure =>
  estimateOcclusionPressure({
    limb,
    circumferenceCm: circumferenceCm[limb],
    circumferenceSite: 'mid-limb',
    systolicMmHg,
    diastolicMmHg,
    cuffWidthCm,
    posture,
  });

/** Every published mean compared with the estimate for the nominal person. */
export const besideMeans = (groupMeans.rows as readonly GroupMean[]).map((row) => {
  const cuffWidthCm = row.cuffWidthCm ?? STAND_IN[row.cuff as keyof typeof STAND_IN];
  if (cuffWidthCm === undefined) return { row, ours: undefined, missed: undefined };
  const posture = (row.posture === 'not-stated' ? 'supine' : row.posture) as Posture;
  const ours = estimated(row.limb as 'leg' | 'arm', cuffWidthCm, posture);
  return { row, ours, missed: misses(ours.value, row) };
});

/** `170 (22) †`: the dagger marks a figure from memory. */
const published = ({ mean, standardDeviation, grade }: GroupMean): string =>
  `${mmHg(mean)}${standardDeviation === undefined ? '' : ` (${standardDeviation})`}${grade === 'unconfirmed' ? ' †' : ''}`;

const meansTable = table(
  ['limb', 'cuff [cm]', 'posture', 'published', 'n', 'here', '95 % interval', 'off by', 'miss', 'publication'],
  besideMeans.map(({ row, ours, missed }) => [
    words(row.limb),
    row.cuffWidthCm ?? words(row.cuff),
    words(row.posture),
    published(row),
    row.n ?? '',
    ours ? mmHg(ours.value) : '–',
    ours ? between(ours) : 'no cuff, nothing to compare',
    ours ? percent((ours.value - row.mean) / row.mean) : '',
    missed === undefined ? '' : missed ? '**miss**' : 'no',
    [paper(row.source), row.note].filter(Boolean).join('; '),
  ]),
);

const log = (error: number): string => percent(1 / Math.exp(error) - 1);

/** What the left-out error should not exceed. */
const MOST_LEFT_OUT = { leg: 0.18, arm: 0.13 } as const;
const limitsMissed = (() => {
  const over = found.sensitivity.flatMap(({ choice, leftOut }) =>
    (['leg', 'arm'] as const)
      .filter((limb) => leftOut[limb] > MOST_LEFT_OUT[limb])
      .map((limb) => `${choice} (${words(limb)} ${tenths(leftOut[limb])})`),
  );
  return over.length === 0
    ? 'Every choice keeps them.'
    : `The shipped curve keeps them. These choices do not: ${over.join('; ')}.`;
})();
const cappedError = sameMeans.find(({ mean }) => capped(mean))!.error;

/** One line a mean: where it lies against the curve that has not seen its laboratory, from −60 to +60 %. */
const bar = (error: number): string => {
  const at = Math.round(((Math.min(0.6, Math.max(-0.6, 1 / Math.exp(error) - 1)) + 0.6) / 1.2) * 24);
  return `\`${Array.from({ length: 25 }, (_, i) => (i === at ? '●' : i === 12 ? '│' : '·')).join('')}\``;
};

const width = ({ widthCm, assumed }: Mean): string => `${widthCm}${assumed ? ' (assumed)' : ''}`;

const forestTable = table(
  [
    'limb',
    'cuff [cm]',
    'posture',
    'published',
    'curve, this laboratory left out',
    'off by',
    '−60 % … +60 %',
    'other equations',
    'publication',
  ],
  sameMeans.map(({ mean, predicted, error, others }) => [
    words(mean.limb),
    width(mean),
    words(mean.posture),
    `${mmHg(mean.mean)}${mean.grade === 'unconfirmed' ? ' †' : ''}`,
    predicted.toFixed(0),
    log(error),
    bar(error),
    others.map(({ equation, answer, error: off }) => `${equation} ${answer.toFixed(0)} (${log(off)})`).join(', '),
    paper(mean.source),
  ]),
);

const rivalTable = table(
  ['cuff', 'equation', 'means', 'its error', 'the curve, left out'],
  errorsOnSameMeans.map(({ kind, equation, means, own, curve }) => [kind, equation, means, size(own), size(curve)]),
);

const formTable = table(
  ['form', 'thigh 5, 10, 12, 13.5, 18 cm', 'arm 5, 10, 12 cm', 'left-out error, thigh', 'arm'],
  found.forms.map(({ form, thigh, arm, leftOut, standardErrors, coefficients }) => [
    `${form}${standardErrors.a ? `: a = ${coefficients.a.toFixed(2)} ± ${standardErrors.a.toFixed(2)}` : ''}${standardErrors.p ? `: p = ${coefficients.p.toFixed(2)} ± ${standardErrors.p.toFixed(2)}` : ''}`,
    thigh.map((value) => value.toFixed(0)).join(', '),
    arm.map((value) => value.toFixed(0)).join(', '),
    tenths(leftOut.leg),
    tenths(leftOut.arm),
  ]),
);

const sensitivityTable = table(
  [
    'choice',
    'b thigh',
    'b arm',
    'thigh, 10 cm',
    'arm, 5 cm',
    'left-out error, thigh',
    'capped mean not counted',
    'arm',
  ],
  [
    ...found.sensitivity.map(({ choice, b, thigh10, arm5, leftOut }) => [
      choice,
      b.leg.toFixed(1),
      b.arm.toFixed(1),
      thigh10.toFixed(0),
      arm5.toFixed(0),
      tenths(leftOut.leg),
      tenths(leftOut.legUncapped),
      tenths(leftOut.arm),
    ]),
    ...found.otherNominal.map((other) => [
      `nominal person of ${other.circumferenceCm} cm and ${other.systolicMmHg} mmHg systolic`,
      other.b.toFixed(1),
      '',
      other.thigh10.toFixed(0),
      '',
      '',
      '',
      '',
    ]),
  ],
);

const coverageTable = table(
  ['laboratories', 'true standard deviation between laboratories', 'new people inside the 95 % interval'],
  found.coverage.map(({ laboratories, laboratoryShare, coverage }) => [
    laboratories,
    typeof laboratoryShare === 'number' ? `${100 * laboratoryShare} % of the pressure` : laboratoryShare,
    tenths(coverage),
  ]),
);

const surveyTable = table(
  [
    'limb',
    'cuff [cm]',
    'posture',
    'estimates, all adults',
    'ages 18–39',
    'measured means (SD)',
    'at or below diastolic',
  ],
  survey.estimates.map(({ limb, cuffWidthCm, posture, mean, standardDeviation, young, atOrBelowDiastolic }) => [
    words(limb),
    cuffWidthCm,
    posture,
    `${mean} ± ${standardDeviation}`,
    `${young.mean} ± ${young.standardDeviation}`,
    sameMeans
      .filter(({ mean: row }) => row.limb === limb && row.widthCm === cuffWidthCm && row.at === posture)
      .map(({ mean: row }) => published(row))
      .join(', '),
    atOrBelowDiastolic,
  ]),
);

const widthTable = table(
  ['limb', 'posture', 'from', 'to', 'published', 'here', '95 % interval', 'off by', 'inside', 'publication'],
  widthPairs.flatMap(([p, q]) =>
    [
      [p, q],
      [q, p],
    ].map(([from, to]) => {
      const converted = attempt(correctForCuffWidth, {
        limb: from!.limb,
        circumferenceCm: circumferenceCm[from!.limb],
        systolicMmHg,
        diastolicMmHg,
        occlusionMmHg: from!.mean,
        fromWidthCm: from!.widthCm,
        toWidthCm: to!.widthCm,
      });
      const ours = converted.ok ? converted.value : undefined;
      return [
        words(from!.limb),
        from!.at,
        `${from!.mean} at ${width(from!)} cm`,
        `${width(to!)} cm`,
        to!.mean,
        ours ? ours.value.toFixed(0) : 'refused',
        ours ? between(ours) : '',
        ours ? percent(ours.value / to!.mean - 1) : '',
        ours ? verdict(holds(ours, to!.mean)) : '',
        paper(from!.source),
      ];
    }),
  ),
);

const postureTable = table(
  ['cuff [cm]', 'from', 'to', 'published', 'here', '95 % interval', 'off by', 'inside', 'publication'],
  posturePairs.map(([low, high]) => {
    const ours = correctForPosture({
      occlusionMmHg: low.mean,
      diastolicMmHg,
      limb: 'leg',
      cuffWidthCm: low.widthCm,
      fromPosture: low.at,
      toPosture: high.at,
    });
    return [
      width(low),
      `${low.mean} ${low.at}`,
      high.at,
      high.mean,
      ours.value.toFixed(0),
      between(ours),
      percent(ours.value / high.mean - 1),
      verdict(holds(ours, high.mean)),
      paper(low.source),
    ];
  }),
);

/** What a coach with a cuff gets, for the nominal person. */
const coachTable = table(
  ['limb and cuff', 'supine', 'seated', 'standing'],
  (
    [
      ['leg', 5],
      ['leg', 10],
      ['leg', 13.5],
      ['leg', 18],
      ['arm', 5],
      ['arm', 10],
    ] as const
  ).map(([limb, cuffWidthCm]) => [
    `${words(limb)}, ${cuffWidthCm} cm`,
    ...(['supine', 'seated', 'standing'] as const).map((posture) => {
      if (limb === 'arm' && posture !== 'supine') return 'not known';
      const ours = estimated(limb, cuffWidthCm, posture);
      return `${ours.value.toFixed(0)} (${between(ours)})`;
    }),
  ]),
);

const errorTable = table(
  ['published', 'value', 'note', 'publication'],
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
  [
    'emergency straps, seated: thigh 347 mmHg (284–536), arm of 30 cm and more 285 mmHg (211–372); r² with circumference .24 and .027 (J Spec Oper Med 2020;20(3):56 and 61)',
    'no pneumatic cuff',
  ],
  [
    'very proximal placement on the thigh needs less pressure although the circumference is larger (J Spec Oper Med 2017;17(4):42)',
    'no figure was read; a reason to measure at mid-thigh',
  ],
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
    'stated in a caution; the library does not estimate pressures during exercise',
  ],
  [
    'repeats r > .96, mean difference below 1.5 mmHg; retest after 5 min 4.8 mmHg lower, ICC .72 to .79 (Int J Sports Phys Ther 2020;15(5)); arm posture ICC .894, .973, .984',
    'agreement coefficients, which carry no error in mmHg',
  ],
];

const coach = estimated('leg', 10, 'supine');
const missed = besideMeans.filter((one) => one.missed);
const compared = besideMeans.filter(({ ours }) => ours !== undefined);
const { components, coefficients } = found.fit;
const error = (name: string): number => {
  const at = found.fit.names.indexOf(name);
  return Math.sqrt(found.fit.covariance[at]![at]!);
};

const missWords = missed.map(
  ({ row, ours }) =>
    `${words(row.limb)} ${row.cuffWidthCm === undefined ? row.cuff : `${row.cuffWidthCm} cm`} ${row.posture === 'not-stated' ? '' : `${row.posture} `}${mmHg(row.mean)}${row.grade === 'unconfirmed' ? ' †' : ''} (estimate ${ours!.value.toFixed(0)})`,
);
const people = (count: number): string => count.toLocaleString('en').replace(',', ' ');

/** The one screen that answers the question. */
export const page = `# How wrong is it?

Measure where you can. An estimate from a tape measure and a blood-pressure reading is a starting point. This page shows you how wrong it is.

Take a person of ${systolicMmHg}/${diastolicMmHg} mmHg with a thigh of ${circumferenceCm.leg} cm or an arm of ${circumferenceCm.arm} cm. You get this estimate, with its 95 % interval, in mmHg:

${coachTable}

- **The interval** is for one new person, measured in a new laboratory. With a 10 cm thigh cuff it is × / ÷ ${(coach.upper! / coach.value).toFixed(2)}.
- **If you set 50 % of that estimate**, the true share is ${((50 * coach.value) / coach.upper!).toFixed(0)}–${((50 * coach.value) / coach.lower!).toFixed(0)} % (95 % interval).
- **In a new laboratory** the curve was off by ${size(found.leftOutError.leg)} on the thigh and ${size(found.leftOutError.arm)} on the arm (root mean square, cuffs of known width).
- **It misses** ${missed.length} of ${compared.length} published means by more than one standard deviation of their sample. ${missed.filter(({ row, ours }) => row.mean < ours!.value).length} of them are lower than the estimate.
- **With a 5 cm cuff on the arm** the estimate is probably too high: 169 mmHg. Two laboratories measured 139 and 145 mmHg (the second from memory).
- **Its grade** is \`derived\`: we worked it out from published means. No publication reports the circumference and blood pressure of its sample.

So what do you do with an estimate?

1. Start low in the range you want.
2. Watch for the signs of full occlusion: no pulse below the cuff, or a limb that turns white or cold. Deflate at once.
3. Measure as soon as you can. One measurement narrows the interval: see [narrow it](pressure.md#narrow-it-with-one-measurement).

[The appendix](how-wrong-appendix.md) has every published mean, the fit and the equations we left out.
`;

/** All that the one screen rests on. */
export const appendix = `# How wrong is it: the appendix

You find here what [the one screen](how-wrong-is-it.md) rests on: the fit, every published mean, and what we left out.

A [committed script](working/how-wrong-is-it.ts) writes both pages, and a test compares them with it. The fit is in [another script](working/pooled-curve.ts) with [its results as data](working/pooled-curve.json). [R agrees](../tests/pressure/pooled-curve.R).

## The curve

Formula: LOP = DBP + h × ((SBP − DBP) / 2 + b × C / W)

LOP is the limb occlusion pressure [mmHg]. SBP and DBP are the blood pressures [mmHg], C is the limb circumference [cm] and W the cuff width [cm]. Lying down, that is the middle of the two blood pressures plus b × C / W.

- b = ${coefficients.leg.toFixed(1)} mmHg on the thigh (standard error ${error('leg').toFixed(1)}) and ${coefficients.arm.toFixed(1)} mmHg on the arm (${error('arm').toFixed(1)}).
- h = ${Math.exp(coefficients.seated).toFixed(2)} seated and ${Math.exp(coefficients.standing).toFixed(2)} standing on the thigh. On the arm it is 1: only the order of the postures is known.
- Errors are shares of the pressure above diastolic. Their standard deviations are below.
- Few cuffs widen the last three by Student’s t (${found.fit.degrees} degrees of freedom).
- The errors of the coefficients are in the interval too. For them the ½ for the pulse pressure counts as unknown.
- I² = ${size(found.fit.iSquared)}: nearly all of the spread of the means is real.

${table(
  ['between', 'standard deviation'],
  [
    ['people of one circumference and blood pressure', size(found.fit.people)],
    ['laboratories', `${size(components.laboratory)} (95 % interval 0–${size(components.laboratoryInterval.upper)})`],
    ['cuffs of one laboratory', size(components.cuff)],
    ['what is left over', size(components.rest)],
  ],
)}

The spread of whole samples is ${size(found.fit.wholeSpread)} of the pressure above diastolic. Circumference and blood pressure explain at least 40 % of its variance (R² 0.397 is the smallest one published). We take that off.

The slope of ½ with systolic pressure is a choice. Published slopes run from 0.18 (thigh, 18 cm) to about 0.46 and 0.98 (2015, worked out from standardised slopes). The circumference slope at 18 cm is ${(coefficients.leg / 18).toFixed(2)} mmHg/cm; the published one is 1.11.

The curve misses two outside checks. The thigh index is 1.2–1.4 times systolic with a 12 cm cuff, and 1.0–1.2 times with 18–20 cm. The curve is up to 5 % above both.

We tried five forms. The first has the smallest left-out error on the thigh and the fewest coefficients. The free exponent and the free share agree with it within one standard error:

${formTable}

What the fit rests on, for the nominal person supine:

${sensitivityTable}

Our limits for the left-out error are ${100 * MOST_LEFT_OUT.leg} % on the thigh and ${100 * MOST_LEFT_OUT.arm} % on the arm. ${limitsMissed}

- Seven of the eighteen means have a cuff width that we assume. Without them, few laboratories are left on the thigh, and none has a standing mean. So the standing mean is not predicted there.
- The mean of the sample capped at 300 mmHg is an underestimate. It has the largest error of all: ${log(cappedError)}.
- Only four published means of the arm have a known width.

We simulated the fit, 400 draws a row. Each draws laboratories, cuffs and people from the model and fits the curve anew. Then it measures a new person in a new laboratory:

${coverageTable}

## Every published mean

Means and intervals are in mmHg. † marks a figure from memory, from which we derive nothing. Where the abstract gives no width, we compare “narrow” with ${STAND_IN.narrow} cm and “wide” with ${STAND_IN.wide} cm. A posture that was not reported counts as supine.

A **miss** lies further from the mean than the sample’s own standard deviation. Where none was published, we take 15 % of the mean. The misses:

${missWords.map((miss) => `- ${miss}`).join('\n')}

${meansTable}

## Each laboratory left out

The curve is fitted without a laboratory and predicts its means. “Off by” is the prediction against the mean. Other equations are for the same nominal person:

${forestTable}

Root-mean-square errors on the same means of known width:

${rivalTable}

## People of a national survey

The US National Health and Nutrition Examination Survey 1999–2006 is public domain: ${people(survey.people)} adults, ${people(survey.usable)} with a usable reading. No estimate is at or below the diastolic pressure. The table has estimates in mmHg, weighted mean ± standard deviation; [the figures](working/survey-figures.json) are \`derived\`.

In ages 18–39 the thigh is ${survey.young.thigh.mean} ± ${survey.young.thigh.standardDeviation} cm and the arm ${survey.young.arm.mean} ± ${survey.young.arm.standardDeviation} cm. The blood pressure is ${survey.young.systolic.mean.toFixed(0)}/${survey.young.diastolic.mean.toFixed(0)} mmHg.

${surveyTable}

Estimates spread no wider than measured pressures, within the sampling error of their standard deviations. With a 5 cm cuff on the arm they spread more than in the one published sample (14 mmHg, 15 people).

Under the cuff a thigh is 7–8 cm bigger than at its middle. Soldiers were measured just below the buttock: 62.5 ± 5.8 cm (4082 men) and 61.6 ± 5.6 cm (1986 women; US Army anthropometric survey 2012). In this survey the mid-thigh is 54.8 ± 6.5 and 53.7 ± 7.8 cm. If you measure there, your estimate is 7–45 mmHg too high.

## Another cuff width

Pairs of widths measured in the same people, converted both ways by \`correctForCuffWidth\`. It refuses a conversion whose 95 % interval spans more than a factor of 2.5. A published conversion from 12 to 5 cm spans as much, and is not valid by its own publication (Physiol Meas 2024).

${widthTable}

## Another posture

The same people in two postures, thigh, converted by \`correctForPosture\`. For the arm only the order is known (highest seated, lowest standing), so it is refused.

${postureTable}

## Published errors

${errorTable}

## Known, but not available

We did not find the coefficients of these equations in any text. We invented none. You get the list as \`knownEquations\`.

${knownTable}

## Published, but not comparable

${table(['figure', 'why'], ASIDE)}
`;
