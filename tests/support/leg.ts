import type { Prescription } from '../../src/index.js';

/** Two sets of 40 s and a rest of 30 s: 110 s. */
export const TEN = { scheme: '2x10', tempo: '2-0-2-0', restS: 30, restriction: 'continuous' } as const;

/** These sets of the left leg, with what a test changes. */
export const leg = (more: object = {}) => ({ ...TEN, limb: 'leg', side: 'left', ...more }) as Prescription;
