/**
 * Civil days as whole numbers: days since 1970-01-01 in the proleptic Gregorian calendar.
 * A civil day has no time and no zone; zones are met only at the edge (`zone.ts`).
 */

/** Days since 1970-01-01. */
export type Day = number;

/** A day of any year, such as 15 February. */
export interface MonthDay {
  readonly month: number;
  readonly day: number;
}

const MS_PER_DAY = 86_400_000;

/** The civil day of a year, a month (1 to 12) and a day of the month. Years 1000 to 9999. @example civil(1970, 1, 2) //=> 1 */
export const civil = (year: number, month: number, day: number): Day => Date.UTC(year, month - 1, day) / MS_PER_DAY;

/** Year, month (1 to 12) and day of the month of a civil day. */
export function partsOf(day: Day): { year: number; month: number; day: number } {
  const date = new Date(day * MS_PER_DAY);
  return { year: date.getUTCFullYear(), month: date.getUTCMonth() + 1, day: date.getUTCDate() };
}

/** Days of 400 years, and of the years from March on in which 29 February comes last. */
const ERA = 146_097;
const MARCH_1_OF_YEAR_0 = -719_468;

/**
 * The year of a civil day, without a Date: it is asked for every day of every record.
 * Source: Hinnant (2013), chrono-Compatible Low-Level Date Algorithms, civil_from_days (from memory; tested against Date).
 */
export function yearOf(day: Day): number {
  const since = day - MARCH_1_OF_YEAR_0;
  const era = Math.floor(since / ERA);
  const inEra = since - era * ERA;
  const year = Math.floor(
    (inEra - Math.floor(inEra / 1460) + Math.floor(inEra / 36_524) - Math.floor(inEra / (ERA - 1))) / 365,
  );
  const inYear = inEra - (365 * year + Math.floor(year / 4) - Math.floor(year / 100));
  // January and February are the last two months of a year that begins in March.
  return era * 400 + year + (inYear >= 306 ? 1 : 0);
}

/** Day of the year, 1 to 366. @example dayOfYear(civil(2027, 2, 1)) //=> 32 */
export const dayOfYear = (day: Day): number => day - civil(yearOf(day), 1, 1) + 1;

/** Day of the week, 0 = Sunday. 1970-01-01 was a Thursday. */
export const weekday = (day: Day): number => (((day + 4) % 7) + 7) % 7;

const daysInMonth = (year: number, month: number): number => civil(year, month + 1, 1) - civil(year, month, 1);

/** Reads `YYYY-MM-DD`; null for anything else, and for days that do not exist. @example parseDay('2027-02-29') //=> null */
export function parseDay(text: string): Day | null {
  const match = /^([1-9]\d{3})-(\d\d)-(\d\d)$/.exec(text);
  if (!match) return null;
  const [year, month, day] = [Number(match[1]), Number(match[2]), Number(match[3])];
  if (month < 1 || month > 12 || day < 1 || day > daysInMonth(year, month)) return null;
  return civil(year, month, day);
}

/** Writes `YYYY-MM-DD`. @example formatDay(0) //=> '1970-01-01' */
export const formatDay = (day: Day): string => new Date(day * MS_PER_DAY).toISOString().slice(0, 10);

/** Reads `MM-DD`; 02-29 is allowed and means 02-28 in years without it. Null for anything else. */
export function parseMonthDay(text: string): MonthDay | null {
  const match = /^(\d\d)-(\d\d)$/.exec(text);
  if (!match) return null;
  const [month, day] = [Number(match[1]), Number(match[2])];
  return month >= 1 && month <= 12 && day >= 1 && day <= daysInMonth(2024, month) ? { month, day } : null;
}

/** A month-day in a given year; 02-29 is 02-28 in other years. */
export const monthDayIn = ({ month, day }: MonthDay, year: number): Day =>
  civil(year, month, Math.min(day, daysInMonth(year, month)));

/** The first such month-day on or after a day. */
export function firstOnOrAfter(monthDay: MonthDay, day: Day): Day {
  const year = yearOf(day);
  const here = monthDayIn(monthDay, year);
  return here >= day ? here : monthDayIn(monthDay, year + 1);
}

/** The latest such month-day on or before a day. */
export function latestOnOrBefore(monthDay: MonthDay, day: Day): Day {
  const year = yearOf(day);
  const here = monthDayIn(monthDay, year);
  return here <= day ? here : monthDayIn(monthDay, year - 1);
}

/** The same month-day some months away, clipped to the month's end. @example addMonths({ month: 8, day: 31 }, 6) //=> { month: 2, day: 29 } */
export function addMonths({ month, day }: MonthDay, months: number): MonthDay {
  const moved = ((((month - 1 + months) % 12) + 12) % 12) + 1;
  return { month: moved, day: Math.min(day, daysInMonth(2024, moved)) };
}

/** The same month and day in another year; 29 February becomes 28 February where there is none. */
export function inYear(day: Day, year: number): Day {
  const { month, day: dayOfMonth } = partsOf(day);
  return monthDayIn({ month, day: dayOfMonth }, year);
}
