import { describe } from '../answer/issues.js';
import { A_FUNCTION } from '../answer/needs.js';
import type { Reader } from '../answer/reader.js';
import type { Quantity } from '../quantity/quantities.js';

/** Options that several functions of a study take. */
const SCALES = ['difference', 'log'] as const;
const SEED: Quantity = { name: 'seed', unit: '1', min: 0, max: 0xffffffff, whole: true };

export const readScale = (reader: Reader): (typeof SCALES)[number] =>
  reader.optionalChoice('scale', SCALES) ?? 'difference';

/** Seed of the random numbers; 1 where it is left out. */
export const readSeed = (reader: Reader): number => reader.optionalNumber('seed', SEED) ?? 1;

/** How many times to draw. */
export const readDraws = (reader: Reader, min: number, max: number, otherwise: number): number =>
  reader.optionalNumber('draws', { name: 'draws', unit: '1', min, max, whole: true }) ?? otherwise;

/** What your own function gave; nothing of it is missing from your input. */
export const describeResult = (result: unknown): string => describe(result) ?? 'nothing';

/** Your own function, of which only its kind is looked at. */
export function readFunction<F extends (...given: never[]) => unknown>(reader: Reader, name: string): F {
  const given = reader.raw(name);
  if (typeof given !== 'function') reader.report('wrong-type', name, A_FUNCTION, describe(given));
  return given as F;
}
