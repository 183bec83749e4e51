const DAY_MS = 86_400_000;

/** A day of the calendar, `YYYY-MM-DD`: 29 February in leap years only. A JSON Schema takes it as its pattern. */
export const DAY =
  /^(?:(?:\d\d[2468][048]|\d\d[13579][26]|\d\d0[48]|[02468][048]00|[13579][26]00)-02-29|\d{4}-(?:(?:0[13578]|1[02])-(?:0[1-9]|[12]\d|3[01])|(?:0[469]|11)-(?:0[1-9]|[12]\d|30)|(?:02)-(?:0[1-9]|1\d|2[0-8])))$/;

/** Whether a text is a day of the calendar, `YYYY-MM-DD`. */
export const isCalendarDay = (text: string): boolean => DAY.test(text);

/** Days from one day to another; they have no clock and no summer time. */
export const daysBetween = (from: string, to: string): number => (Date.parse(to) - Date.parse(from)) / DAY_MS;
