import { KILOGRAMS_PER_POUND } from './conversion-factors.js';
import { scaled } from './decimal.js';
import type { LoadUnit } from './quantities.js';

/** A load converted from one unit to another. */
export const convertLoad = (load: number, from: LoadUnit, to: LoadUnit): number =>
  from === to ? load : to === 'kg' ? scaled(load, KILOGRAMS_PER_POUND, 1) : scaled(load, 1, KILOGRAMS_PER_POUND);
