/** A part of an input, an answer or a document whose shape is not known yet. */
export type Part = Record<string, unknown>;

/** Whether it is an object, and no list. */
export const isPart = (value: unknown): value is Part =>
  typeof value === 'object' && value !== null && !Array.isArray(value);
