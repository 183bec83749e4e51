/** A part of an input, an answer or a document whose shape is not known yet. */
export type Part = Record<string, unknown>;

/** Whether it is an object, and no list. */
export const isPart = (value: unknown): value is Part =>
  typeof value === 'object' && value !== null && !Array.isArray(value);

/** Whether an object is plain, of another realm too: its prototype is the last of the chain. */
export function isPlain(part: object): boolean {
  const prototype: unknown = Object.getPrototypeOf(part);
  return prototype === Object.prototype || prototype === null || Object.getPrototypeOf(prototype) === null;
}
