import type { Source } from '../source.js';

/** Publications on guidance and safety. */
export const guidanceSources = {
  'guideline-review-2019': {
    title: 'Blood flow restriction exercise: considerations of methodology, application, and safety',
    container: 'Front Physiol',
    year: 2019,
    volume: '10',
    pages: '533',
    doi: '10.3389/fphys.2019.00533',
    note: 'record read; its prescription table is quoted from memory',
  },
  'risk-stratification-2022': {
    title: 'A useful blood flow restriction training risk stratification for exercise and rehabilitation',
    container: 'Front Physiol',
    year: 2022,
    volume: '13',
    pages: '808622',
    doi: '10.3389/fphys.2022.808622',
  },
  'hypertension-classes-2018': {
    about: 'blood-pressure classes of the European hypertension guidelines',
    container: 'ESC/ESH guidelines',
    year: 2018,
    note: 'classes read in a later text that reprints them; unchanged in the 2023 ESH guidelines',
  },
  'exercise-shift-2018': {
    title:
      'Moderately heavy exercise produces lower cardiovascular, RPE, and discomfort compared to lower load exercise with and without blood flow restriction',
    container: 'Eur J Appl Physiol',
    year: 2018,
    doi: '10.1007/s00421-018-3877-0',
  },
  'case-report-2016': {
    title: 'Rhabdomyolysis after performing blood flow restriction training: a case report',
    container: 'J Strength Cond Res',
    year: 2016,
    volume: '30(7)',
    pages: '2064–2068',
  },
  'practitioner-survey-2018': {
    title: 'The role of blood flow restriction training for applied practitioners: a questionnaire-based survey',
    container: 'J Sports Sci',
    year: 2018,
    volume: '36(2)',
    pages: '123–130',
    doi: '10.1080/02640414.2017.1284341',
  },
} as const satisfies Record<string, Source>;
