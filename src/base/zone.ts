import { TZDate } from '@date-fns/tz';
import tzlookup from 'tz-lookup';
import { type Day, partsOf } from './day.ts';

/** An instant in milliseconds since 1970-01-01T00:00:00Z. */
export type Instant = number;

/** Whether a time zone of that IANA name is known. */
export function isZone(name: string): boolean {
  try {
    new Intl.DateTimeFormat('en', { timeZone: name });
    return true;
  } catch {
    return false;
  }
}

/**
 * The instant of a wall-clock time on a civil day in a zone.
 *
 * @param minutes Minutes after midnight on the wall clock.
 * @returns In a spring gap the time after it, in an autumn overlap the first of the two.
 * @example instantAt(civil(2027, 7, 1), 8 * 60, 'America/New_York') //=> Date.UTC(2027, 6, 1, 12)
 */
export function instantAt(day: Day, minutes: number, zone: string): Instant {
  const { year, month, day: dayOfMonth } = partsOf(day);
  return new TZDate(year, month - 1, dayOfMonth, Math.floor(minutes / 60), minutes % 60, zone).getTime();
}

/** The civil day that the clock shows in a zone at an instant. */
export function dayAt(instant: Instant, zone: string): Day {
  const local = new TZDate(instant, zone);
  return Date.UTC(local.getFullYear(), local.getMonth(), local.getDate()) / 86_400_000;
}

/** An instant as `YYYY-MM-DDTHH:MM:SSZ`. */
export const formatInstant = (instant: Instant): string => `${new Date(instant).toISOString().slice(0, 19)}Z`;

/** The IANA time zone at a place. Source of the shapes: the npm package tz-lookup (timezone-boundary-builder). */
export const zoneAt = (latitude: number, longitude: number): string => tzlookup(latitude, longitude);
