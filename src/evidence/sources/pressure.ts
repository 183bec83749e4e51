import type { Source } from '../source.js';

/** Publications on occlusion pressure. */
export const pressureSources = {
  'thigh-equation-2019': {
    title: 'Predictive equation for blood flow restriction training',
    container: 'Rev Bras Med Esporte',
    year: 2019,
    volume: '25(6)',
    pages: '494 ff.',
    note: 'PII S1517-86922019000600494; volume and pages from memory',
  },
  'limb-circumference-2015': {
    title:
      'Blood flow restriction in the upper and lower limbs is predicted by limb circumference and systolic blood pressure',
    container: 'Eur J Appl Physiol',
    year: 2015,
    volume: '115(2)',
    pages: '397–405',
    doi: '10.1007/s00421-014-3030-7',
    note: 'DOI from memory',
  },
  'wide-cuffs-1993': {
    title:
      'Occlusion of arterial flow in the extremities at subsystolic pressures through the use of wide tourniquet cuffs',
    container: 'Clin Orthop Relat Res',
    year: 1993,
    volume: '(286)',
    pages: '257–261',
    note: 'citation from memory',
  },
  'cuff-width-2012': {
    title: 'Effects of cuff width on arterial occlusion: implications for blood flow restricted exercise',
    container: 'Eur J Appl Physiol',
    year: 2012,
    volume: '112(8)',
    pages: '2903–2912',
    doi: '10.1007/s00421-011-2266-8',
    pmid: '22143843',
  },
  'narrow-cuffs-2024': {
    title: 'Blood flow restriction pressure for narrow cuffs (5 cm) cannot be estimated with precision',
    container: 'Physiol Meas',
    year: 2024,
    volume: '45(2)',
    note: 'volume from memory',
  },
  'athletes-2018': {
    title: 'Factors affecting occlusion pressure and ischemic preconditioning',
    container: 'Eur J Sport Sci',
    year: 2018,
    doi: '10.1080/17461391.2017.1421712',
  },
  'cuff-materials-2017': {
    about: 'arm occlusion pressures with a 5 cm nylon and a 3 cm elastic cuff',
    container: 'J Physiol Sci',
    year: 2017,
    volume: '67(2)',
    pages: '207–215',
    doi: '10.1007/s12576-016-0457-0',
  },
  'posture-2018': {
    about: 'thigh occlusion pressure supine, seated and standing',
    container: 'PeerJ',
    year: 2018,
    volume: '6',
    pages: 'e4697',
  },
  'posture-widths-2018': {
    about: 'thigh occlusion pressure supine and seated with a wide and a narrow cuff',
    container: 'Eur J Appl Physiol',
    year: 2018,
    volume: '118(2)',
    pages: '303–312',
    pmid: '29196847',
  },
  'retest-2020': {
    about: 'retest of thigh occlusion pressure by Doppler and by oximeter, 20 cm cuff',
    container: 'Int J Sports Phys Ther',
    year: 2020,
    volume: '15(5)',
    pages: '783–791',
  },
  'automated-2016': {
    about: 'automated and Doppler limb occlusion pressure in 143 patients',
    container: 'J Med Biol Eng',
    year: 2016,
    volume: '36',
    pages: '644–650',
  },
  'femoral-repeat': {
    about: 'repeat measurement of femoral occlusion pressure under two inflation protocols, 40 people',
    note: 'figures read in the abstract; journal and year not at hand',
  },
} as const satisfies Record<string, Source>;
