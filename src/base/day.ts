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

// Days of every record are asked for their parts, so the calendar is reckoned without a Date. Years begin in March here, so
// that 29 February comes last, and eras of 400 years have the same number of days.
// Source: Hinnant (2013), chrono-Compatible Low-Level Date Algorithms, days_from_civil and civil_from_days (from memory; tested
// against Date).
const ERA = 146_097;
const MARCH_1_OF_YEAR_0 = -719_468;

/**
 * The civil day of a year, a month (1 to 12) and a day of the month; those beyond count on into the next or last. Years 1000 to
 * 9999.
 *
 * @example civil(1970, 1, 2) //=> 1
 */
export function civil(year: number, month: number, day: number): Day {
  const fromMarch = month - 3;
  const marchYear = year + Math.floor(fromMarch / 12);
  const inYear = Math.floor((153 * (fromMarch - 12 * Math.floor(fromMarch / 12)) + 2) / 5) + day - 1;
  const leaps = Math.floor(marchYear / 4) - Math.floor(marchYear / 100) + Math.floor(marchYear / 400);
  return 365 * marchYear + leaps + inYear + MARCH_1_OF_YEAR_0;
}

/** The year that began in March, and how many of its days had passed. */
function marchYearOf(day: Day): { readonly year: number; readonly passed: number } {
  const since = day - MARCH_1_OF_YEAR_0;
  const era = Math.floor(since / ERA);
  const inEra = since - era * ERA;
  const year = Math.floor(
    (inEra - Math.floor(inEra / 1460) + Math.floor(inEra / 36_524) - Math.floor(inEra / (ERA - 1))) / 365,
  );
  return {
    year: era * 400 + year,
    passed: inEra - (365 * year + Math.floor(year / 4) - Math.floor(year / 100)),
  };
}

/** Days from 1 March to 1 January. */
const MARCH_TO_JANUARY = 306;

/** Year, month (1 to 12) and day of the month of a civil day. */
export function partsOf(day: Day): { year: number; month: number; day: number } {
  const { year, passed } = marchYearOf(day);
  const months = Math.floor((5 * passed + 2) / 153);
  return {
    year: passed >= MARCH_TO_JANUARY ? year + 1 : year,
    month: months < 10 ? months + 3 : months - 9,
    day: passed - Math.floor((153 * months + 2) / 5) + 1,
  };
}

/** The year of a civil day. */
export function yearOf(day: Day): number {
  const { year, passed } = marchYearOf(day);
  return passed >= MARCH_TO_JANUARY ? year + 1 : year;
}

/** Day of the year, 1 to 366. @example dayOfYear(civil(2027, 2, 1)) //=> 32 */
export function dayOfYear(day: Day): number {
  const { year, passed } = marchYearOf(day);
  if (passed >= MARCH_TO_JANUARY) return passed - MARCH_TO_JANUARY + 1;
  return passed + (year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 61 : 60);
}

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
