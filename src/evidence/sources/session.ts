import type { Source } from '../source.js';

/** Publications on sessions. */
export const sessionSources = {
  'volume-methods-2009': {
    title: 'Comparison of methods to quantify volume during resistance exercise',
    container: 'J Strength Cond Res',
    year: 2009,
    volume: '23(1)',
    pages: '106–110',
  },
  'knee-repair-2022': {
    title:
      'Blood flow restriction added to usual care exercise in patients with early weight bearing restrictions after cartilage or meniscus repair in the knee joint: a feasibility study',
    container: 'J Exp Orthop',
    year: 2022,
    doi: '10.1186/s40634-022-00533-4',
  },
  'monitoring-2016': {
    title: 'Training monitoring for resistance exercise: theory and applications',
    container: 'Sports Med',
    year: 2016,
    volume: '46',
    pages: '687–698',
    note: 'record and definition from memory',
  },
  'session-rpe-2001': {
    title: 'A new approach to monitoring exercise training',
    container: 'J Strength Cond Res',
    year: 2001,
    volume: '15(1)',
    pages: '109–115',
  },
  'session-rpe-scale-2006': {
    about: 'session-RPE scale from 0, rest, to 10, maximal, asked 30 minutes after the session',
    container: 'J Sports Sci Med',
    year: 2006,
    volume: '5',
    pages: '289–',
    note: 'scale read in its table 1',
  },
  'overtraining-1998': {
    title: 'Monitoring training in athletes with reference to overtraining syndrome',
    container: 'Med Sci Sports Exerc',
    year: 1998,
    volume: '30(7)',
    pages: '1164–1168',
    note: 'read in the abstract, which does not say which standard deviation is meant',
  },
  'athlete-dataset-2024': {
    title: 'A large-scale multivariate soccer athlete health, performance, and position monitoring dataset',
    container: 'Sci Data',
    year: 2024,
    doi: '10.1038/s41597-024-03386-x',
    note: 'table 2; its sums are printed with eight days and the divisor 7, seven days are used here',
  },
  'ratio-coupling-2019': {
    title:
      'Mathematical coupling causes spurious correlation within the conventional acute-to-chronic workload ratio calculations',
    container: 'Br J Sports Med',
    year: 2019,
    volume: '53(15)',
    pages: '921–922',
  },
  'ratio-pitfalls-2020': {
    title: 'Training load and its role in injury prevention, part 2: conceptual and methodologic pitfalls',
    container: 'J Athl Train',
    year: 2020,
    volume: '55(9)',
    pages: '893–901',
    doi: '10.4085/1062-6050-501-19',
    pmid: '32991699',
  },
  'heavy-or-restricted-2018': {
    title:
      'Magnitude of muscle strength and mass adaptations between high-load resistance training versus low-load resistance training associated with blood-flow restriction',
    container: 'Sports Med',
    year: 2018,
    volume: '48(2)',
    pages: '361–378',
    doi: '10.1007/s40279-017-0795-y',
  },
  'load-and-pressure-2015': {
    title:
      'Effects of exercise intensity and occlusion pressure after 12 weeks of resistance training with blood-flow restriction',
    container: 'Eur J Appl Physiol',
    year: 2015,
    volume: '115(12)',
    pages: '2471–2480',
    doi: '10.1007/s00421-015-3253-2',
  },
  'bout-walking-2011': {
    title: 'Legs and trunk muscle hypertrophy following walk training with restricted leg muscle blood flow',
    container: 'J Sports Sci Med',
    year: 2011,
    volume: '10',
    pages: '338–340',
  },
  'cycling-2010': {
    title:
      'Effects of low-intensity cycle training with restricted leg blood flow on thigh muscle volume and VO2max in young men',
    container: 'J Sports Sci Med',
    year: 2010,
    volume: '9',
    pages: '452–458',
  },
  'older-walking-2010': {
    title:
      'Effects of low-intensity walk training with restricted leg blood flow on muscle strength and aerobic capacity in older adults',
    container: 'J Geriatr Phys Ther',
    year: 2010,
    volume: '33(1)',
    doi: '10.1097/JPT.0b013e3181d07a73',
  },
  'complete-restriction-2007': {
    title: 'Effects of exercise load and blood-flow restriction on skeletal muscle function',
    container: 'Med Sci Sports Exerc',
    year: 2007,
    volume: '39(10)',
    pages: '1708–1713',
  },
  'unbroken-cycling-2021': {
    about: 'cycling for 20 min without a break at 80 % of limb occlusion pressure',
    container: 'J Appl Physiol',
    year: 2021,
    volume: '131',
    pages: '1460–1468',
  },
  'emergency-straps-2020': {
    about: 'occlusion pressures of emergency straps on seated people: thighs 284 to 536 mmHg',
    container: 'J Spec Oper Med',
    year: 2020,
    volume: '20(3)',
    pages: '56, 61',
  },
  'passive-2008': {
    title: 'Prevention of disuse muscular weakness by restriction of blood flow',
    container: 'Med Sci Sports Exerc',
    year: 2008,
    volume: '40(3)',
    pages: '529–534',
  },
  'knee-osteoarthritis-2022': {
    title:
      'Blood flow restriction with different load levels in patients with knee osteoarthritis: protocol of a randomized controlled trial',
    container: 'Trials',
    year: 2022,
    doi: '10.1186/s13063-022-05998-3',
  },
  'collegiate-2014': {
    title: 'The effects of a 7-week practical blood flow restriction program on well-trained collegiate athletes',
    container: 'J Strength Cond Res',
    year: 2014,
    volume: '28(8)',
    pages: '2270–2280',
  },
  'rugby-2014': {
    title: 'Improving strength and power in trained athletes with 3 weeks of occlusion training',
    container: 'Int J Sports Physiol Perform',
    year: 2014,
    volume: '9(1)',
    pages: '166–172',
    doi: '10.1123/ijspp.2013-0018',
  },
} as const satisfies Record<string, Source>;
