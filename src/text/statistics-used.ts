import type { SourceId } from '../evidence/sources.js';
import type { Part } from '../answer/part.js';
import { formatUnit } from '../quantity/format.js';

/** A statistic that was used, as a methods section reports it. */
export interface StatisticUsed {
  readonly sentence: string;
  readonly sources: readonly SourceId[];
}

/** A result of `cuffwork/study`: the fields that tell it from all others, and what is reported of it. */
interface Reported {
  readonly fields: readonly string[];
  readonly report: (part: Part) => StatisticUsed;
}

const is = (part: unknown): part is Part => typeof part === 'object' && part !== null;
const count = (value: unknown): string => (typeof value === 'number' ? String(value) : 'an unknown number of');
const total = (missing: unknown): number =>
  typeof missing === 'number'
    ? missing
    : is(missing)
      ? Object.values(missing).reduce<number>((sum, each) => sum + (typeof each === 'number' ? each : 0), 0)
      : 0;
const leftOut = (missing: unknown): string =>
  `${total(missing)} ${total(missing) === 1 ? 'row' : 'rows'} left out for missing values`;
const people = (part: Part): string => ('people' in part ? ` of ${count(part['people'])} people` : '');
const onLog = ({ scale }: Part): string => (scale === 'log' ? ' on the logarithms' : '');
const list = (parts: readonly (string | false)[]): string => parts.filter((part) => part !== false).join('; ');
const drawn = ({ draws, seed, refused }: Part): string =>
  `${count(draws)} draws of the Mersenne Twister MT19937, seed ${count(seed)}, ${count(refused)} refused`;

const GENERATOR = ['mersenne-twister-1998', 'iso-cpp-random'] as const satisfies readonly SourceId[];

function agreementReport(part: Part): StatisticUsed {
  const has = (name: string): boolean => part[name] !== undefined;
  const sources: SourceId[] = ['agreement-1986', 'agreement-1999'];
  if (has('components')) sources.push('repeated-agreement-2013');
  if (has('concordance')) sources.push('concordance-1989');
  if (has('normality')) sources.push('normality-1990');
  if (has('within') || has('coverage')) sources.push('share-interval-1927');
  if (has('equivalence')) sources.push('equivalence-1987');
  const { within, equivalence } = part;
  const parts = list([
    `bias${is(within) && 'acceptable' in within ? `, the share of differences within ± ${count(within['acceptable'])}` : ''} and 95 % limits of agreement with exact 95 % confidence intervals`,
    has('predictionLimits') && '95 % prediction limits for a new person',
    has('components') && 'variance components between and within people',
    has('percentiles') && 'percentiles with order-statistic intervals',
    has('calibration') && 'calibration intercept and slope by least squares',
    has('proportionalBias') && 'proportional bias as the slope of the difference on size',
    has('bySize') && 'limits regressed on size',
    has('concordance') && 'concordance correlation coefficient',
    has('coverage') && 'coverage of the intervals of the estimates (score intervals)',
    is(equivalence) && `equivalence by two one-sided tests at 5 % with margin ± ${count(equivalence['margin'])}`,
    has('normality') && 'normality of the differences by the omnibus test of skewness and kurtosis',
  ]);
  return {
    sentence: `Agreement${onLog(part)} (n = ${count(part['pairs'])} pairs${people(part)}; ${leftOut(part['missing'])}; difference = estimated − measured): ${parts}.`,
    sources,
  };
}

function fitReport(part: Part): StatisticUsed {
  const { id, residualMmHg, degreesOfFreedom, rSquared, leaveOneOutMmHg, base, diagnostics } = part;
  const mmHg = (value: unknown): string => (typeof value === 'number' ? formatUnit(value, 'mm[Hg]') : 'not reported');
  const how =
    typeof base === 'string'
      ? `was recalibrated from ${base}, with shrinkage of intercept and slope`
      : `was fitted by ordinary least squares${typeof rSquared === 'number' ? `, R² ${rSquared.toFixed(3)}` : ''}`;
  const robust = is(diagnostics) ? '; robust standard errors are HC3, influence is Cook’s distance' : '';
  const sources: SourceId[] = typeof base === 'string' ? ['shrinkage-1990', 'updating-2004'] : [];
  if (is(diagnostics)) sources.push('robust-errors-1985', 'influence-1977');
  return {
    sentence: `The equation ${String(id)} ${how} (n = ${count(part['people'])}; residual standard deviation ${mmHg(residualMmHg)} on ${count(degreesOfFreedom)} degrees of freedom; leave-one-out error ${mmHg(leaveOneOutMmHg)}); prediction intervals are ± t s √(1 + h), with s the residual standard deviation, h the leverage and t Student’s${robust}.`,
    sources,
  };
}

const REPORTED: readonly Reported[] = [
  { fields: ['pairs', 'bias', 'limits', 'rootMeanSquareError'], report: agreementReport },
  {
    fields: ['people', 'tests', 'typicalError', 'meanSquares'],
    report: (part) => ({
      sentence: `Reliability${onLog(part)} (n = ${count(part['people'])} people with ${count(part['tests'])} tests; ${count(part['missing'])} people left out for a missing test): ${list(
        [
          'intraclass' in part && 'intraclass correlations (1,1), (2,1), (3,1) and those of the mean',
          'typical error with a chi-square interval, standard error of measurement, minimal detectable change (1.96 √2 typical error)',
          'change of the mean between tests with paired t intervals',
        ],
      )}.`,
      sources: [
        ...('intraclass' in part ? (['intraclass-1979', 'intraclass-1996'] as const) : []),
        'reliability-2000',
        'reliability-2005',
      ],
    }),
  },
  {
    fields: ['seed', 'draws', 'monteCarlo'],
    report: (part) => ({
      sentence: `Errors were propagated by Monte Carlo (${drawn(part)}; 2.5 and 97.5 % quantiles)${'closedForm' in part ? ' and to first order' : ''}.`,
      sources: [...GENERATOR, 'guide-uncertainty-2008'],
    }),
  },
  {
    fields: ['seed', 'draws', 'percentile', 'standardError'],
    report: (part) => ({
      sentence: `Intervals of ${count(part['rows'])} rows${people(part)} are bias-corrected and accelerated bootstrap intervals (${drawn(part)}${'people' in part ? '; people drawn whole' : ''}).`,
      sources: ['bootstrap-1987', ...GENERATOR],
    }),
  },
  {
    fields: ['folds', 'predicted', 'measured', 'seed'],
    report: (part) => ({
      sentence: `Predictions were cross-validated (n = ${Array.isArray(part['predicted']) ? part['predicted'].length : 0} rows; ${count(part['folds'])} folds; seed ${count(part['seed'])}).`,
      sources: GENERATOR,
    }),
  },
  {
    fields: ['halfWidth', 'level', 'people', 'missing'],
    report: (part) => ({
      sentence: `Split conformal prediction intervals${onLog(part)} (n = ${count(part['people'])} people; ${leftOut(part['missing'])}) hold a new person with a chance of at least 95 %, if these people took no part in the fit.`,
      sources: ['conformal-2018'],
    }),
  },
  { fields: ['document', 'residualMmHg', 'leverage', 'leaveOneOutMmHg'], report: fitReport },
];

/** Every statistic in a document, each sentence once, outermost first. */
export function statisticsUsed(document: unknown, found = new Map<string, StatisticUsed>()): StatisticUsed[] {
  if (is(document)) {
    const reported = REPORTED.find(({ fields }) => fields.every((field) => Object.hasOwn(document, field)));
    if (reported) {
      const used = reported.report(document);
      found.set(used.sentence, used);
    } else for (const part of Object.values(document)) statisticsUsed(part, found);
  }
  return [...found.values()];
}
