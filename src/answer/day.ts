const DAY_MS = 86_400_000;

/** Whether a text is a day of the calendar, `YYYY-MM-DD`. */
export function isCalendarDay(text: string): boolean {
  if (!/^\d{4}-\d{2}-\d{2}$/.test(text)) return false;
  const [year, month, day] = [Number(text.slice(0, 4)), Number(text.slice(5, 7)), Number(text.slice(8))];
  const leap = year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0);
  const longest = month === 2 ? (leap ? 29 : 28) : [4, 6, 9, 11].includes(month) ? 30 : 31;
  return month >= 1 && month <= 12 && day >= 1 && day <= longest;
}

/** Days from one day to another; they have no clock and no summer time. */
export const daysBetween = (from: string, to: string): number => (Date.parse(to) - Date.parse(from)) / DAY_MS;
