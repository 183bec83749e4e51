import { quantities, type QuantityName } from './quantities.js';

/** Fields that take an answer, and what they are as a number. */
const AS_NUMBERS: Readonly<Record<string, QuantityName>> = {
  occlusion: 'occlusionMmHg',
  oneRepMax: 'load',
  available: 'load',
  bodyMassLoad: 'bodyMass',
};

/** The quantity that a field is as a number; nothing for a field that is none. */
export function quantityName(field: unknown): QuantityName | undefined {
  const name = String(field);
  if (Object.hasOwn(AS_NUMBERS, name)) return AS_NUMBERS[name];
  return Object.hasOwn(quantities, name) ? (name as QuantityName) : undefined;
}
