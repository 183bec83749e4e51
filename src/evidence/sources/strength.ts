import type { Source } from '../source.js';

/** Publications on strength. */
export const strengthSources = {
  'brzycki-1993': {
    title: 'Strength testing – predicting a one-rep max from reps-to-fatigue',
    container: 'J Phys Educ Recreat Dance',
    year: 1993,
    volume: '64(1)',
    pages: '88–90',
    note: 'record read; the equation was read in a secondary text only',
  },
  'epley-1985': {
    title: 'Poundage chart',
    container: 'workout booklet, Lincoln NE',
    year: 1985,
    pages: '86',
    note: 'record from memory; the constant 1/30 was read in a secondary text',
  },
  'equation-provenance-2014': {
    title:
      'The relationship between the number of repetitions performed at given intensities is different in endurance and strength trained athletes',
    container: 'Biol Sport',
    year: 2014,
    volume: '31(2)',
    pages: '157–161',
    doi: '10.5604/20831862.1099047',
    pmid: '24899782',
  },
  'bench-press-men-1995': {
    title: 'Muscular endurance repetitions to predict bench press strength in men of different training levels',
    container: 'J Sports Med Phys Fitness',
    year: 1995,
    volume: '35(2)',
    pages: '108–113',
    pmid: '7500624',
  },
  'bench-and-curl-2010': {
    title: 'Accuracy of 1-RM prediction equations for the bench press and biceps curl',
    container: 'JEPonline',
    year: 2010,
    volume: '13(3)',
    pages: '32–39',
  },
  'reserve-accuracy-2017': {
    title: 'Accuracy in estimating repetitions to failure during resistance exercise',
    container: 'J Strength Cond Res',
    year: 2017,
    volume: '31(8)',
    pages: '2162–2168',
    doi: '10.1519/JSC.0000000000001683',
  },
  'reserve-accuracy-2022': {
    title:
      'Accuracy in predicting repetitions to task failure in resistance exercise: a scoping review and exploratory meta-analysis',
    container: 'Sports Med',
    year: 2022,
    volume: '52(2)',
    pages: '377–390',
    doi: '10.1007/s40279-021-01559-x',
    pmid: '34542869',
  },
  'one-rep-max-reliability-2020': {
    title: 'Test–retest reliability of the one-repetition maximum (1RM) strength assessment: a systematic review',
    container: 'Sports Med Open',
    year: 2020,
    volume: '6',
    pages: '31',
    doi: '10.1186/s40798-020-00260-z',
    pmid: '32681399',
  },
  'training-load-chart': {
    title: 'Training load chart (stand-alone handout of a strength and conditioning association)',
    note: 'read in a copy of the handout; year not at hand',
  },
} as const satisfies Record<string, Source>;
