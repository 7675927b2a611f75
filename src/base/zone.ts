import { TZDate, tzOffset } from '@date-fns/tz';
import tzlookup from 'tz-lookup';
import type { Day } from './day.ts';

/** An instant in milliseconds since 1970-01-01T00:00:00Z. */
export type Instant = number;

const MS_PER_DAY = 86_400_000;

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
  const clock = day * MS_PER_DAY + minutes * 60_000;
  // The offsets on both sides of whatever change there is. The one before holds in an overlap the first time, and carries
  // a time in a gap past it.
  const [before, after] = [clock - MS_PER_DAY, clock + MS_PER_DAY].map((at) => tzOffset(zone, new Date(at)) * 60_000);
  const [first, second] = [clock - (before ?? 0), clock - (after ?? 0)];
  const shows = (instant: Instant) => instant + tzOffset(zone, new Date(instant)) * 60_000 === clock;
  return !shows(first) && shows(second) ? second : first;
}

/** The civil day that the clock shows in a zone at an instant. */
export function dayAt(instant: Instant, zone: string): Day {
  const local = new TZDate(instant, zone);
  return Date.UTC(local.getFullYear(), local.getMonth(), local.getDate()) / MS_PER_DAY;
}

/** An instant as `YYYY-MM-DDTHH:MM:SSZ`. */
export const formatInstant = (instant: Instant): string => `${new Date(instant).toISOString().slice(0, 19)}Z`;

/** The IANA time zone at a place. Source of the shapes: the npm package tz-lookup (timezone-boundary-builder). */
export const zoneAt = (latitude: number, longitude: number): string => tzlookup(latitude, longitude);
