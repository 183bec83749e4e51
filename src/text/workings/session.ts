import type { Answer, AnswerKind, Symbols } from '../../answer/answer.js';
import type { SourceId } from '../../evidence/sources.js';
import { loadUnitOf, type LoadUnit } from '../../quantity/quantities.js';
import { conversion } from './strength.js';
import type { ErrorWorking, FullWorking, Lookup, Worked, Working, Workings } from './working.js';

type Formula = Pick<Working, 'formula' | 'symbols'>;
type Inputs = NonNullable<Worked['inputs']>;

/** Terms of a total, in the order in which they are added, by the input that holds their values. */
const TERMS: readonly (readonly [symbol: string, field: string])[] = [
  ['warm', 'warmUp'],
  ['before', 'inflatedBeforeS'],
  ['n', 'longestSet'],
  ['R', 'repetitionsPerSet'],
  ['S', 'timedSets'],
  ['S', 'setTimes'],
  ['rest', 'rests'],
  ['after', 'deflatedAfterS'],
  ['up', 'cuffIntervals'],
  ['up', 'longestInterval'],
  ['down', 'gaps'],
  ['clock', 'sessionS'],
  ['E', 'exercises'],
  ['E', 'limbs'],
  ['p', 'pauses'],
];
const TEMPO: Symbols = { e: 'eccentricS', b: 'bottomS', c: 'concentricS', t: 'topS' };

/** Several values stand for their sum. */
const listed = (symbol: string, value: unknown): string => (String(value).includes(' + ') ? `sum(${symbol})` : symbol);

/** Repetitions take their tempo, where it is there. */
const isPaced = (symbol: string, inputs: Inputs): boolean =>
  (symbol === 'R' || symbol === 'n') && inputs['eccentricS'] !== undefined;

/** A sum of what was given; 0 where nothing was. */
function sumOf({ inputs = {} }: Worked): Formula {
  const there = TERMS.filter(([, field]) => inputs[field] !== undefined);
  const terms = there.map(([symbol, field]) => {
    const times = listed(symbol, inputs[field]);
    return isPaced(symbol, inputs) ? `${times} * (e + b + c + t)` : times;
  });
  return {
    formula: terms.join(' + ') || '0',
    symbols: Object.assign(
      {},
      ...there.map(([symbol, field]) => ({ [symbol]: field, ...(isPaced(symbol, inputs) && TEMPO) })),
    ) as Symbols,
  };
}

/** Sessions of a week, one by one. */
const overWeek = (inputs: Inputs): Formula => ({
  formula: listed('E', inputs['weekSessions']),
  symbols: { E: 'weekSessions' },
});

const R = { R: 'repetitionsPerSet' };

/** The load of all repetitions: one load for all sets, or set by set. */
const lifted = (inputs: Inputs): Formula =>
  inputs['setLoads'] === undefined
    ? { formula: `${listed('R', inputs['repetitionsPerSet'])} * w`, symbols: { ...R, w: 'load' } }
    : { formula: listed('RW', inputs['setLoads']), symbols: { RW: 'setLoads' } };

/** A mass over the maximum. */
function overMaximum({ inputs = {} }: Worked, { formula, symbols }: Formula, scale = ''): Formula {
  const { unit } = inputs['oneRepMax'] as Answer;
  const to = conversion((inputs['unit'] as LoadUnit | undefined) ?? 'kg', loadUnitOf(unit));
  return { formula: `${scale}${formula}${to} / M`, symbols: { ...symbols, M: 'oneRepMax' } };
}

/** The error of a mass over the maximum: that of the maximum. */
function maximumError({ inputs = {} }: Worked): ErrorWorking | undefined {
  const { value, standardDeviation } = (inputs['oneRepMax'] ?? {}) as Partial<Answer>;
  return value === undefined || standardDeviation === undefined
    ? undefined
    : { part: 'maximum', formula: 'V * S / W', values: { S: standardDeviation, W: value } };
}

/** How each kind of total follows from its inputs, where it is no plain sum. */
const FORMULAS: Partial<Record<AnswerKind, (answer: Worked, inputs: Inputs) => Formula | undefined>> = {
  'volume-load': (_, inputs) =>
    inputs['load'] === undefined && inputs['setLoads'] === undefined ? undefined : lifted(inputs),
  'body-mass-volume-load': (_, inputs) =>
    inputs['bodyMassKg'] === undefined
      ? undefined
      : {
          formula: `${listed('R', inputs['repetitionsPerSet'])} * m * s / 100`,
          symbols: { ...R, m: 'bodyMassKg', s: 'bodyMassPercent' },
        },
  'relative-volume-load': (answer, inputs) =>
    inputs['oneRepMax'] !== undefined
      ? overMaximum(answer, lifted(inputs))
      : inputs['percentOneRepMax'] === undefined
        ? undefined
        : {
            formula: `${listed('R', inputs['repetitionsPerSet'])} * p / 100`,
            symbols: { ...R, p: 'percentOneRepMax' },
          },
  'peak-load': () => ({ formula: 'w', symbols: { w: 'load' } }),
  'peak-percent-of-maximum': (answer, inputs) =>
    inputs['oneRepMax'] === undefined
      ? { formula: 'p', symbols: { p: 'percentOneRepMax' } }
      : overMaximum(answer, { formula: 'w', symbols: { w: 'load' } }, '100 * '),
  'pressure-time': (_, inputs) =>
    inputs['pressureSeconds'] === undefined ? undefined : { formula: 'Pt / 60', symbols: { Pt: 'pressureSeconds' } },
  'relative-pressure-time': (_, inputs) =>
    inputs['pressureSeconds'] === undefined
      ? undefined
      : { formula: '100 * Pt / LOP / 60', symbols: { Pt: 'pressureSeconds', LOP: 'occlusionMmHg' } },
  'session-load': () => ({ formula: 'RPE * Ts / 60', symbols: { RPE: 'sessionRpe', Ts: 'sessionS' } }),
};

/** A time by the watch, and not by the clock of the session. */
const isGiven = ({ kind, inputs = {} }: Worked): boolean => kind === 'session-time' && inputs['sessionS'] !== undefined;

const SOURCES: Partial<Record<AnswerKind, readonly SourceId[]>> = {
  'volume-load': ['volume-methods-2009'],
  'body-mass-volume-load': ['volume-methods-2009'],
  'relative-volume-load': ['monitoring-2016'],
  'time-under-tension': ['volume-methods-2009'],
  'session-time': ['knee-repair-2022'],
  'session-load': ['session-rpe-2001', 'athlete-dataset-2024'],
};

/** A total of a session: its `equation` is its kind. */
const total: Lookup = (answer) => {
  const { kind, inputs = {} } = answer;
  const formula =
    Object.keys(inputs).length === 0
      ? undefined
      : (FORMULAS[kind]?.(answer, inputs) ?? (inputs['weekSessions'] === undefined ? undefined : overWeek(inputs)));
  const errors = maximumError(answer);
  return {
    ...(formula ?? sumOf(answer)),
    sources: (!isGiven(answer) && SOURCES[kind]) || [],
    ...(kind !== 'session-load' && { arithmetic: true }),
    ...(errors && { errors: [errors] }),
  };
};

const DAYS = [1, 2, 3, 4, 5, 6, 7];
const overDays = (...sources: readonly SourceId[]): FullWorking => ({
  formula: DAYS.map((day) => `d${day}`).join(' + '),
  symbols: Object.fromEntries(DAYS.map((day) => [`d${day}`, `day${day}`])),
  sources,
  arithmetic: true,
});

const MONOTONY: Omit<Working, 'formula'> = {
  symbols: { L: 'weekLoad', s: 'standardDeviationAu' },
  sources: ['overtraining-1998', 'athlete-dataset-2024'],
};
const RATIO: Omit<Working, 'formula'> = {
  symbols: { A: 'weekLoad', W: 'earlierWeeks' },
  sources: ['ratio-coupling-2019', 'ratio-pitfalls-2020'],
};

const TOTALS = [
  'repetitions',
  'volume-load',
  'body-mass-volume-load',
  'relative-volume-load',
  'peak-load',
  'peak-percent-of-maximum',
  'time-under-tension',
  'restriction-time',
  'partial-restriction-time',
  'longest-restriction',
  'reperfusion-time',
  'pressure-time',
  'relative-pressure-time',
  'session-time',
  'session-load',
  'sessions',
] as const satisfies AnswerKind[];

export const sessionWorkings: Workings = {
  ...Object.fromEntries(TOTALS.map((kind) => [kind, total])),
  'week-load-of-days': overDays('athlete-dataset-2024', 'session-rpe-2001'),
  'sessions-of-days': overDays(),
  'restriction-time-of-days': overDays(),
  'volume-load-of-days': overDays('volume-methods-2009'),
  ...Object.fromEntries(
    (['sample', 'population'] as const).flatMap((deviation): [string, Working][] => [
      [`monotony-${deviation}`, { formula: 'L / 7 / s', ...MONOTONY }],
      [`strain-${deviation}`, { formula: 'L * (L / 7 / s)', ...MONOTONY }],
    ]),
  ),
  'limb-symmetry': {
    formula: '100 * a / b',
    symbols: { a: 'involvedValue', b: 'otherValue' },
    sources: [],
    arithmetic: true,
  },
  coupled: { formula: 'A / ((A + sum(W)) / 4)', ...RATIO },
  uncoupled: { formula: 'A / (sum(W) / 3)', ...RATIO },
};
