/*
 * Exercises of the course. A seed draws the numbers, the library gives the answers, and the working is written out with
 * the same numbers; tests/docs/exercises.test.ts works every line out again.
 */
import {
  sessionTotals,
  estimateOcclusionPressure,
  estimateOneRepMax,
  measuredOcclusionPressure,
  targetCuffPressure,
  testedOneRepMax,
  trainingLoad,
  type Answer,
} from '../../src/index.js';
import { percentReached } from '../../src/answer/answer.js';
import { unitWords } from '../../src/quantity/format.js';
import { mersenneTwister } from '../../src/statistics/random.js';

/** A question with its answer. */
export interface Exercise {
  /** Stays the same from seed to seed. */
  readonly id: string;
  readonly topic: 'pressure' | 'load' | 'session';
  readonly question: string;
  /** How the library is asked. */
  readonly code: string;
  readonly answer: Answer;
  /** Steps by hand, each an equation; the last one ends in the answer before it is rounded. */
  readonly working: readonly string[];
}

/** A draw from whole steps between two ends, or from a list. */
interface Draw {
  readonly between: (low: number, high: number, step?: number) => number;
  readonly oneOf: <T>(items: readonly T[]) => T;
}

function drawing(seed: number): Draw {
  const random = mersenneTwister(seed);
  const below = (count: number): number => Math.floor((random() / 2 ** 32) * count);
  return {
    between: (low, high, step = 1) => Number((low + step * below(Math.round((high - low) / step) + 1)).toFixed(6)),
    oneOf: (items) => items[below(items.length)]!,
  };
}

const plain = (value: number): string => String(Number(value.toFixed(2)));
const tempo = { eccentricS: 2, concentricS: 2 } as const;
const SCHEMES = {
  '30-15-15-15': [30, 15, 15, 15],
  '3x10': [10, 10, 10],
  '4x15': [15, 15, 15, 15],
  '3x12': [12, 12, 12],
} as const;
const schemeNames = Object.keys(SCHEMES) as (keyof typeof SCHEMES)[];

/** Text of a call, as a student types it. */
const call = (name: string, input: object): string =>
  `${name}(${JSON.stringify(input, undefined, 1)
    .replaceAll(/"(\w+)":/g, '$1:')
    .replaceAll('"', "'")
    .replaceAll(/\n\s*/g, ' ')})`;

type Maker = (draw: Draw) => Omit<Exercise, 'id'>;

const target: Maker = ({ between, oneOf }) => {
  const [valueMmHg, percentLop, step] = [between(120, 220), oneOf([40, 50, 60, 70, 80]), oneOf([2, 5, 10])];
  const occlusion = measuredOcclusionPressure({ valueMmHg, method: 'doppler', limb: 'leg' });
  return {
    topic: 'pressure',
    question: `You measured a LOP of ${valueMmHg} mmHg. You want ${percentLop} % of it. Your gauge has steps of ${step} mmHg. What do you set?`,
    code: call('targetCuffPressure', { occlusion: { valueMmHg }, percentLop, gaugeStepMmHg: step }).replace(
      `{ valueMmHg: ${valueMmHg} }`,
      `measuredOcclusionPressure({ valueMmHg: ${valueMmHg}, method: 'doppler', limb: 'leg' })`,
    ),
    answer: targetCuffPressure({ occlusion, percentLop, gaugeStepMmHg: step }),
    working: [`${percentLop} / 100 × ${valueMmHg} = ${plain((percentLop / 100) * valueMmHg)} mmHg`],
  };
};

const readings = ({ between }: Draw) => ({
  circumferenceCm: between(46, 64),
  systolicMmHg: between(108, 136),
  diastolicMmHg: between(60, 84),
  cuffWidthCm: between(8, 16),
});

const estimate =
  (posture: 'supine' | 'seated', factor: number): Maker =>
  (draw) => {
    const given = readings(draw);
    const { circumferenceCm: C, systolicMmHg: S, diastolicMmHg: D, cuffWidthCm: W } = given;
    const input = { limb: 'leg', ...given, posture } as const;
    const above = (S - D) / 2 + (17.9 * C) / W;
    return {
      topic: 'pressure',
      question: `You cannot measure. Thigh ${C} cm, ${S}/${D} mmHg, cuff ${W} cm, ${posture}. Estimate the LOP with the pooled curve.`,
      code: call('estimateOcclusionPressure', input),
      answer: estimateOcclusionPressure(input),
      working: [
        `(${S} − ${D}) / 2 + 17.9 × ${C} / ${W} = ${plain(above)} mmHg`,
        `${D} + ${factor} × ${plain(above)} = ${plain(D + factor * above)} mmHg`,
      ],
    };
  };

const load: Maker = ({ between, oneOf }) => {
  const [maximum, percentOneRepMax] = [between(30, 120), oneOf([20, 25, 30, 35, 40])];
  const [step, rounding] = [oneOf([1, 2.5, 5]), oneOf(['nearest', 'down'] as const)];
  const oneRepMax = testedOneRepMax({ load: maximum });
  return {
    topic: 'load',
    question: `A tested 1RM is ${maximum} kg. You want ${percentOneRepMax} % of it. Loads have steps of ${step} kg; round ${rounding === 'down' ? 'down' : 'to the nearest'}. Which load do you take?`,
    code: `trainingLoad({ oneRepMax: testedOneRepMax({ load: ${maximum} }), percentOneRepMax: ${percentOneRepMax}, step: ${step}, rounding: '${rounding}' })`,
    answer: trainingLoad({ oneRepMax, percentOneRepMax, step, rounding }),
    working: [`${percentOneRepMax} / 100 × ${maximum} = ${plain((percentOneRepMax / 100) * maximum)} kg`],
  };
};

const epley: Maker = ({ between }) => {
  const [lifted, repetitions, repetitionsInReserve] = [between(20, 90), between(4, 8), between(0, 2)];
  const input = { load: lifted, repetitions, repetitionsInReserve, equation: 'epley-1985' } as const;
  const r = repetitions + repetitionsInReserve;
  return {
    topic: 'load',
    question: `Someone lifts ${lifted} kg for ${repetitions} repetitions, with ${repetitionsInReserve} in reserve. Estimate the 1RM with Epley.`,
    code: call('estimateOneRepMax', input),
    answer: estimateOneRepMax(input),
    working: [
      `${repetitions} + ${repetitionsInReserve} = ${r} repetitions to failure`,
      `${lifted} × (1 + ${r} / 30) = ${plain(lifted * (1 + r / 30))} kg`,
    ],
  };
};

const brzycki: Maker = ({ between, oneOf }) => {
  const [lifted, repetitions, percentOneRepMax] = [between(20, 90), between(3, 10), oneOf([20, 30, 40])];
  const input = { load: lifted, repetitions, equation: 'brzycki-1993' } as const;
  const maximum = (lifted * 36) / (37 - repetitions);
  return {
    topic: 'load',
    question: `Someone lifts ${lifted} kg for ${repetitions} repetitions and could do no more. What is ${percentOneRepMax} % of the 1RM that Brzycki estimates? Do not round.`,
    code: `trainingLoad({ oneRepMax: ${call('estimateOneRepMax', input)}, percentOneRepMax: ${percentOneRepMax} })`,
    answer: trainingLoad({ oneRepMax: estimateOneRepMax(input), percentOneRepMax }),
    working: [
      `${lifted} × 36 / (37 − ${repetitions}) = ${plain(maximum)} kg`,
      `${percentOneRepMax} / 100 × ${plain(maximum)} = ${plain((percentOneRepMax / 100) * maximum)} kg`,
    ],
  };
};

function prescribed({ between, oneOf }: Draw) {
  const scheme = oneOf(schemeNames);
  const restS = oneOf([30, 45, 60]);
  const counts = SCHEMES[scheme];
  return { scheme, restS, counts, load: between(10, 40, 2.5), repetitions: counts.reduce<number>((a, b) => a + b, 0) };
}

const volume: Maker = (draw) => {
  const { scheme, restS, counts, load: kg, repetitions } = prescribed(draw);
  const input = { scheme, tempo, restS, restriction: 'continuous', load: kg } as const;
  return {
    topic: 'session',
    question: `You plan ${scheme} with ${kg} kg. What is the volume load?`,
    code: `${call('sessionTotals', input)}.volumeLoad`,
    answer: sessionTotals(input).volumeLoad!,
    working: [
      `${counts.join(' + ')} = ${repetitions} repetitions`,
      `${repetitions} × ${kg} = ${plain(repetitions * kg)} kg`,
    ],
  };
};

const restricted =
  (restriction: 'continuous' | 'intermittent'): Maker =>
  (draw) => {
    const { scheme, restS, counts, repetitions } = prescribed(draw);
    const input = { scheme, tempo, restS, restriction } as const;
    const lifting = `${repetitions} × 4 = ${repetitions * 4} s`;
    const rests = counts.length - 1;
    return {
      topic: 'session',
      question: `You plan ${scheme}, 2 s down and 2 s up, rests of ${restS} s. The cuff stays inflated ${restriction === 'continuous' ? 'from the first repetition to the last' : 'in the sets only'}. What is the restriction time in seconds?`,
      code: `${call('sessionTotals', input)}.restrictionTime`,
      answer: sessionTotals(input).restrictionTime,
      working:
        restriction === 'continuous'
          ? [lifting, `${repetitions * 4} + ${rests} × ${restS} = ${repetitions * 4 + rests * restS} s`]
          : [lifting],
    };
  };

const makers: Readonly<Record<string, Maker>> = {
  'set the cuff': target,
  'set another cuff': target,
  'estimate lying down': estimate('supine', 1),
  'estimate seated': estimate('seated', 1.25),
  'choose a load': load,
  'choose another load': load,
  'estimate a maximum': epley,
  'from a set to a load': brzycki,
  'count the volume': volume,
  'count continuous restriction': restricted('continuous'),
  'count intermittent restriction': restricted('intermittent'),
};

/** A sheet of exercises: the same for the same seed. */
export function exercises(seed: number): Exercise[] {
  const draw = drawing(seed);
  return Object.entries(makers).map(([id, make]) => ({ id, ...make(draw) }));
}

/** An answer as it is read: its number, its unit, and its interval or that of the share it really is. */
export function answerWords({ value, unit, lower, upper, kind, rounding, reached }: Answer): string {
  const in95 = (low: number, high: number, of: string): string =>
    `95 % interval ${Math.round(low)}–${Math.round(high)}${of}`;
  const words = [plain(value) + unitWords[unit]];
  if (rounding) words.push(`rounded from ${plain(rounding.from)}${unitWords[unit]}`);
  if (reached?.lower !== undefined && reached.upper !== undefined) {
    words.push(`${plain(percentReached(reached))} % (${in95(reached.lower, reached.upper, ' %')})`);
  } else if (lower !== undefined && kind !== 'training-load') {
    words.push(in95(lower, upper!, unitWords[unit]));
  }
  return words.join('; ');
}

/** A sheet as Markdown, the answers folded. */
export const sheet = (seed: number): string =>
  exercises(seed)
    .map(({ id, question, code, answer, working }, index) =>
      [
        `### ${index + 1}. ${id[0]!.toUpperCase()}${id.slice(1)}`,
        question,
        '<details>',
        '<summary>Worked answer</summary>',
        working.map((line) => `- ${line}`).join('\n'),
        `Answer: **${answerWords(answer)}**. In code: \`${code}\`.`,
        '</details>',
      ].join('\n\n'),
    )
    .join('\n\n');
