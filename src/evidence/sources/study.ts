import type { Source } from '../source.js';

/** Publications on statistics. */
export const studySources = {
  'agreement-1986': {
    title: 'Statistical methods for assessing agreement between two methods of clinical measurement',
    container: 'Lancet',
    year: 1986,
    volume: '327(8476)',
    pages: '307–310',
    note: 'citation and figures from memory',
  },
  'agreement-1999': {
    title: 'Measuring agreement in method comparison studies',
    container: 'Stat Methods Med Res',
    year: 1999,
    volume: '8(2)',
    pages: '135–160',
    note: 'citation from memory',
  },
  'concordance-1989': {
    title: 'A concordance correlation coefficient to evaluate reproducibility',
    container: 'Biometrics',
    year: 1989,
    volume: '45(1)',
    pages: '255–268',
    note: 'citation from memory; variance as corrected in 2000',
  },
  'repeated-agreement-2013': {
    title: 'Confidence interval estimation for the … limits of agreement with multiple observations per individual',
    container: 'Stat Methods Med Res',
    year: 2013,
    volume: '22(6)',
    pages: '630–642',
    note: 'citation and formulas from memory; two names are left out of the title',
  },
  'intraclass-1979': {
    title: 'Intraclass correlations: uses in assessing rater reliability',
    container: 'Psychol Bull',
    year: 1979,
    volume: '86(2)',
    pages: '420–428',
    note: 'citation, formulas and table from memory',
  },
  'normality-1990': {
    title: 'A suggestion for using powerful and informative tests of normality',
    container: 'Am Stat',
    year: 1990,
    volume: '44(4)',
    pages: '316–321',
    note: 'citation and formulas from memory; two names are left out of the title',
  },
  'nist-strd': {
    title: 'Statistical Reference Datasets: linear least squares regression',
    container: 'National Institute of Standards and Technology',
    url: 'https://www.itl.nist.gov/div898/strd/',
    note: 'Norris read in the institute’s file as a library ships it, Longley as reprinted by another; Pontius from memory; that data and values fit each other to all digits is tested',
  },
  'handbook-functions-1964': {
    title: 'Handbook of Mathematical Functions',
    container: 'National Bureau of Standards Applied Mathematics Series 55',
    year: 1964,
    note: 'formulas 26.7.3 to 26.7.5 from memory',
  },
  'mersenne-twister-1998': {
    title: 'Mersenne Twister: a 623-dimensionally equidistributed uniform pseudo-random number generator',
    container: 'ACM Trans Model Comput Simul',
    year: 1998,
    volume: '8(1)',
    pages: '3–30',
    note: 'citation from memory',
  },
  'iso-cpp-random': {
    title: 'ISO/IEC 14882 Programming languages: C++, engines with predefined parameters',
    note: 'the 10 000th number of mt19937, from memory',
  },
  'guide-uncertainty-2008': {
    title: 'Evaluation of measurement data: Guide to the expression of uncertainty in measurement, JCGM 100 and 101',
    container: 'JCGM',
    year: 2008,
    note: 'citation from memory',
  },
} as const satisfies Record<string, Source>;
