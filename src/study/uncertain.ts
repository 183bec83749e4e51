import { Math, square } from '../quantity/maths.js';
import type { Reader } from '../answer/reader.js';
import type { Quantity } from '../quantity/quantities.js';
import { normalChance } from '../statistics/normal.js';
import { chiSquareDeviate, type Random32 } from '../statistics/random.js';
import { mean, quantile, squaresAbout } from '../statistics/sums.js';
import { AT_LEAST, BETWEEN, need } from '../answer/needs.js';
import { LEAST_NUMBERS } from './needs.js';

/** A reading that is not exact: normal around `value`, or with `scale: 'log'` log-normal around it. */
export interface NormalUncertain {
  /** Names the distribution; `normal` when left out. */
  readonly distribution?: 'normal';
  /** Centre of the distribution, in the unit of the reading. */
  readonly value: number;
  /** Standard deviation, in the unit of the reading; with `scale: 'log'` that of ln(value). */
  readonly standardDeviation: number;
  /** `log` makes the distribution log-normal around `value`; normal when left out. */
  readonly scale?: 'log';
}

/** Anywhere between two ends, such as a reading rounded to its step. */
export interface UniformUncertain {
  /** Names the distribution: every value between the ends is equally likely. */
  readonly distribution: 'uniform';
  /** Lower end, in the unit of the reading. */
  readonly low: number;
  /** Upper end, in the unit of the reading. */
  readonly high: number;
}

/** Between two ends, most likely at `mode`. */
export interface TriangularUncertain {
  /** Names the distribution: triangular between the ends. */
  readonly distribution: 'triangular';
  /** Lower end, in the unit of the reading. */
  readonly low: number;
  /** Most likely value, in the unit of the reading. */
  readonly mode: number;
  /** Upper end, in the unit of the reading. */
  readonly high: number;
}

/** A mean of few readings: Student’s t around `value`, with its standard error and degrees of freedom (from 3 on). */
export interface StudentUncertain {
  /** Names the distribution: Student’s t. */
  readonly distribution: 't';
  /** Mean of your readings, in their unit. */
  readonly value: number;
  /** Standard error of that mean, in the unit of the reading. */
  readonly standardError: number;
  /** Degrees of freedom of the standard error; at least 3. */
  readonly degreesOfFreedom: number;
}

/** Any distribution that you have a sample of: between its values, as quantiles are. */
export interface SampleUncertain {
  /** Names the distribution: your own sample. */
  readonly distribution: 'sample';
  /** Values of your sample, in the unit of the reading. */
  readonly values: readonly number[];
}

/** A reading that is not exact. */
export type Uncertain = NormalUncertain | UniformUncertain | TriangularUncertain | StudentUncertain | SampleUncertain;

/** A reading as it is drawn. */
export interface Drawn {
  /** The value at the centre, and a standard deviation; on a log scale the geometric mean and that of the logarithm. */
  readonly value: number;
  readonly deviation: number;
  readonly log: boolean;
  /** A draw from a standard normal deviate: the deviates of two readings may be correlated. */
  readonly at: (deviate: number, random: Random32, normal: () => number) => number;
}

const VALUE: Quantity = { name: 'value', unit: '1', min: -1e9, max: 1e9 };
const DEVIATION: Quantity = { name: 'standard deviation', unit: '1', min: 0, max: 1e9 };
const POSITIVE: Quantity = { name: 'value on a log scale', unit: '1', min: 1e-6, max: 1e9 };
const SHARE: Quantity = { name: 'standard deviation of the logarithm', unit: '1', min: 0, max: 5 };
const DEGREES: Quantity = { name: 'degrees of freedom', unit: '1', min: 3, max: 1e6 };
const DISTRIBUTIONS = ['normal', 'uniform', 'triangular', 't', 'sample'] as const;
const SCALES = ['log'] as const;
const LEAST_SAMPLE = 2;

/** A value one deviate away, on its scale. */
export const away = (value: number, deviation: number, log: boolean, deviate: number): number =>
  log ? value * Math.exp(deviation * deviate) : value + deviation * deviate;

const readers: Readonly<Record<(typeof DISTRIBUTIONS)[number], (part: Reader) => Drawn>> = {
  normal: (part) => {
    const log = part.optionalChoice('scale', SCALES) === 'log';
    const value = part.number('value', log ? POSITIVE : VALUE);
    const deviation = part.number('standardDeviation', log ? SHARE : DEVIATION);
    return { value, deviation, log, at: (deviate) => away(value, deviation, log, deviate) };
  },

  t: (part) => {
    const value = part.number('value', VALUE);
    const error = part.number('standardError', DEVIATION);
    const degrees = part.number('degreesOfFreedom', DEGREES);
    return {
      value,
      deviation: error * Math.sqrt(degrees / (degrees - 2)),
      log: false,
      at: (deviate, random, normal) =>
        value + (error * deviate) / Math.sqrt(chiSquareDeviate(random, normal, degrees) / degrees),
    };
  },

  sample: (part) => {
    const values = Float64Array.from(part.optionalNumbers('values', VALUE) ?? []).sort();
    if (part.fine && values.length < LEAST_SAMPLE) {
      part.refuse('values', need(LEAST_NUMBERS, { least: LEAST_SAMPLE }), `${values.length}`);
    }
    const middle = mean(values);
    return {
      value: middle,
      deviation: Math.sqrt(squaresAbout(values, middle) / (values.length - 1)),
      log: false,
      at: (deviate) => quantile(values, normalChance(deviate)),
    };
  },

  uniform: (part) => {
    const { low, high, width } = readEnds(part);
    return {
      value: (low + high) / 2,
      deviation: width / Math.sqrt(12),
      log: false,
      at: (deviate) => low + width * normalChance(deviate),
    };
  },

  triangular: (part) => {
    const { low, high, width } = readEnds(part);
    const mode = part.number('mode', VALUE);
    if (part.fine && !(mode >= low && mode <= high)) {
      part.refuse('mode', need(BETWEEN, { low, high }), `${mode}`);
    }
    const rise = mode - low;
    return {
      value: (low + mode + high) / 3,
      deviation: Math.sqrt((square(width) - rise * (high - mode)) / 18),
      log: false,
      at: (deviate) => {
        const chance = normalChance(deviate);
        return width * chance < rise
          ? low + Math.sqrt(chance * width * rise)
          : high - Math.sqrt((1 - chance) * width * (high - mode));
      },
    };
  },
};

function readEnds(part: Reader) {
  const low = part.number('low', VALUE);
  const high = part.number('high', VALUE);
  if (part.fine && high < low) part.refuse('high', need(AT_LEAST, { least: low }), `${high}`);
  return { low, high, width: high - low };
}

/** A reading by its distribution; `normal` where none is named. */
export const readUncertain = (part: Reader): Drawn =>
  readers[part.optionalChoice('distribution', DISTRIBUTIONS) ?? 'normal'](part);
