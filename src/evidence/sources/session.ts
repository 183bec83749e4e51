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
} as const satisfies Record<string, Source>;
