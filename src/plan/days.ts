import { day } from './schema.js';

/** Days of the calendar; they have no clock and no summer time. */
export const DAY_MS = 86_400_000;
export const DAY_WORDS = 'a date such as 2026-03-02';
export const isDay = (text: string): boolean => day.safeParse(text).success;
