import type { Day } from '../../base/day.ts';
import { dayAt, type Instant } from '../../base/zone.ts';

const HOUR = 3_600_000;
/** A day's extremes and sums count where this many of its hours are known: one with a change of clocks has 23. */
const NEEDED_HOURS = 20;

/** What the hours of a day add up to: NaN where too few are known. */
export interface DayOfHours {
  readonly min: number;
  readonly max: number;
  readonly mean: number;
  readonly sum: number;
}

/**
 * Hourly values gathered by civil day of a zone.
 *
 * @param hours Instants with a value each; null or NaN is missing.
 * @param zone IANA name of the zone whose days are meant; the hours may come stamped in any other.
 */
export function byDay(hours: Iterable<readonly [Instant, number | null]>, zone: string): ReadonlyMap<Day, DayOfHours> {
  const days = new Map<Day, { min: number; max: number; sum: number; count: number }>();
  for (const [instant, value] of hours) {
    const day = dayAt(instant, zone);
    const known = days.get(day) ?? { min: Infinity, max: -Infinity, sum: 0, count: 0 };
    days.set(day, known);
    if (value === null || Number.isNaN(value)) continue;
    known.min = Math.min(known.min, value);
    known.max = Math.max(known.max, value);
    known.sum += value;
    known.count++;
  }
  return new Map(
    [...days].map(([day, { min, max, sum, count }]) => [
      day,
      count < NEEDED_HOURS
        ? { min: Number.NaN, max: Number.NaN, mean: Number.NaN, sum: Number.NaN }
        : { min, max, mean: sum / count, sum },
    ]),
  );
}

/** Whether an instant lies between 1850 and 2200: no weather is told of others. */
export const plausible = (instant: Instant): boolean =>
  instant > Date.UTC(1850, 0, 1) && instant < Date.UTC(2200, 0, 1);

/** The beginnings of the whole hours of a span. @param hours Its length. */
export const hoursFrom = (start: Instant, hours: number): Instant[] =>
  Array.from({ length: Math.max(1, Math.round(hours)) }, (_, i) => start + i * HOUR);

/**
 * Hours of an ISO 8601 duration such as `PT3H`, `P1DT6H`; null for anything else, and for months and years, whose length
 * is not told.
 */
export function durationHours(text: string): number | null {
  const match = /^P(?:(\d+)D)?(?:T(?:(\d+)H)?(?:(\d+)M)?)?$/.exec(text);
  if (!match || /[PT]$/.test(text)) return null;
  return Number(match[1] ?? 0) * 24 + Number(match[2] ?? 0) + Number(match[3] ?? 0) / 60;
}
