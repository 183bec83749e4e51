import type { Source } from '../source.js';

/** Publications on units and codes. */
export const standardsSources = {
  ucum: {
    title: 'The Unified Code for Units of Measure, ucum-essence 2.2',
    container: 'UCUM',
    year: 2024,
    url: 'https://ucum.org',
  },
  'conventional-mmhg': {
    title: 'Conventional millimetre of mercury: 13 595.1 kg/m³ × 9.80665 m/s² × 1 mm = 133.322387415 Pa',
    note: 'value read in secondary texts; the product is exact',
  },
} as const satisfies Record<string, Source>;
