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
    note: 'record read; most of its prescription table was read in a Danish teaching article of 2021, from a writer with a commercial interest; tempo, frequency above 3 a week, passive rows and cuff widths are from memory; a later record, 2019;10:1332, was not read',
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
  'resistance-update-2015': {
    title: 'Exercise with blood flow restriction: an updated evidence-based approach for enhanced muscular development',
    container: 'Sports Med',
    year: 2015,
    volume: '45(3)',
    pages: '313–325',
    doi: '10.1007/s40279-014-0288-1',
    note: 'record and abstract read; the abstract gives no ranges, which are quoted from memory',
  },
  'lower-limb-protocols-2025': {
    about: 'ten protocols of restriction training in lower-limb rehabilitation, side by side',
    container: 'World J Orthop',
    year: 2025,
    volume: '16(6)',
    pages: '106804',
    doi: '10.5312/wjo.v16.i6.106804',
    note: 'Table 4 read',
  },
  'rehabilitation-trial-protocol': {
    about: 'an eight-week clinical trial with restriction, its protocol in every number',
    url: 'https://pmc.ncbi.nlm.nih.gov/articles/PMC7534706/',
    note: 'Table 3 read; it shows no title; journal and year not checked',
  },
  'clinical-ladder-2021': {
    about: 'a perspective article on restriction training in rehabilitation, with four phases',
    container: 'Phys Ther',
    year: 2021,
    volume: '101',
    pages: '1–9',
    doi: '10.1093/ptj/pzab172',
  },
  'two-for-two-rule': {
    about: 'the two-for-two rule of a strength-training textbook',
    note: 'read on general pages that repeat it',
  },
  'progression-models-2009': {
    title: 'Progression models in resistance training for healthy adults',
    container: 'Med Sci Sports Exerc',
    year: 2009,
    volume: '41(3)',
    pages: '687–708',
    doi: '10.1249/MSS.0b013e3181915670',
  },
  'retest-schedule': {
    about: 'a trial that tests strength again about every four weeks',
    container: 'trial registration NCT05241197',
  },
  'compartment-exclusion': {
    about: 'a trial protocol that excludes suspected exertional compartment syndrome',
    doi: '10.1186/s40814-017-0216-x',
    note: 'Table 1 read',
  },
} as const satisfies Record<string, Source>;
