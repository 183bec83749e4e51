import { scoredItems } from '../../plan/screening-items.js';
import type { Workings } from './working.js';

const codes = { yes: 1, no: 0, unknown: 0 };

export const planWorkings: Workings = /* @__PURE__ */ (() => ({
  'thrombosis-score-2022': {
    formula: scoredItems.map(({ points }, index) => `${points} * q${index + 1}`).join(' + '),
    symbols: Object.fromEntries(scoredItems.map(({ code }, index) => [`q${index + 1}`, { field: code, codes }])),
    sources: ['risk-stratification-2022', 'thrombosis-score-2011', 'thrombosis-score-2014'],
  },
}))();
