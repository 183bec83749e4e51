/** How a day of the calendar is written. */
export const DAY_EXPECTED = 'a date such as 2026-03-02';

const DAY_MS = 86_400_000;

/** Whether a text is a day of the calendar, `YYYY-MM-DD`. */
export function isCalendarDay(text: string): boolean {
  const time = /^\d{4}-\d{2}-\d{2}$/.test(text) ? Date.parse(text) : NaN;
  return Number.isFinite(time) && new Date(time).toISOString().startsWith(text);
}

/** Days from one day to another; they have no clock and no summer time. */
export const daysBetween = (from: string, to: string): number => (Date.parse(to) - Date.parse(from)) / DAY_MS;
