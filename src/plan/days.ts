import * as z from 'zod/mini';

/** Days of the calendar; they have no clock and no summer time. */
export const DAY_MS = 86_400_000;
export const DAY_WORDS = 'a date such as 2026-03-02';
/** A day of the calendar, leap years and all. */
export const day = z.string().check(z.regex(z.regexes.date, DAY_WORDS));
export const isDay = (text: string): boolean => z.regexes.date.test(text);
