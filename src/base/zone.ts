import { tzOffset } from '@date-fns/tz';
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

/** A law that changed a zone's clock, which the zone data of a Node may not know yet. */
interface NewRule {
  /** From this instant on; by the day, since the hour of the night matters to no work. */
  readonly since: Instant;
  readonly offsetMin: number;
}

/**
 * Zones whose clock has stood still since, all year round, by IANA's tz database 2026f. The data in Node 22.23 (2026a) has
 * it not, and is an hour wrong there for half of the year or all of it; that in Node 26.10 (2026c) has.
 */
const NEW_RULES: Readonly<Record<string, NewRule>> = {
  'America/Vancouver': { since: Date.UTC(2026, 2, 8, 10), offsetMin: -7 * 60 },
  'Africa/Casablanca': { since: Date.UTC(2026, 8, 20, 2), offsetMin: 0 },
  // Keeps the time of Casablanca; read in Node's own 2026c.
  'Africa/El_Aaiun': { since: Date.UTC(2026, 8, 20, 2), offsetMin: 0 },
};
/** In the first December after all of them, old data still has the old clock. */
const AFTER_ALL = Date.UTC(2026, 11, 15);

/**
 * The new rule of a zone that the zone data of this Node does not know; null where the data is right, as far as is known.
 *
 * Source: IANA, tz database 2026f.
 */
export function unknownRule(zone: string): NewRule | null {
  const known = unknownRules.get(zone);
  if (known !== undefined) return known;
  const rule = NEW_RULES[new Intl.DateTimeFormat('en', { timeZone: zone }).resolvedOptions().timeZone];
  const unknown = rule === undefined || tzOffset(zone, new Date(AFTER_ALL)) === rule.offsetMin ? null : rule;
  unknownRules.set(zone, unknown);
  return unknown;
}
/** Asked for with every hour of weather, and the same as long as Node runs. */
const unknownRules = new Map<string, NewRule | null>();

/** How far the clock of a zone is ahead of UTC at an instant [ms]. */
function offsetAt(instant: Instant, zone: string): number {
  const rule = unknownRule(zone);
  const minutes = rule !== null && instant >= rule.since ? rule.offsetMin : tzOffset(zone, new Date(instant));
  return minutes * 60_000;
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
  const [before, after] = [clock - MS_PER_DAY, clock + MS_PER_DAY].map((at) => offsetAt(at, zone));
  const [first, second] = [clock - (before ?? 0), clock - (after ?? 0)];
  const shows = (instant: Instant) => instant + offsetAt(instant, zone) === clock;
  return !shows(first) && shows(second) ? second : first;
}

/** The civil day that the clock shows in a zone at an instant. */
export const dayAt = (instant: Instant, zone: string): Day => Math.floor(clockAt(instant, zone) / MS_PER_DAY);

/** What the clock shows in a zone at an instant, as the instant at which a clock of UTC shows it. */
export const clockAt = (instant: Instant, zone: string): Instant => instant + offsetAt(instant, zone);

/** An instant as `YYYY-MM-DDTHH:MM:SSZ`. */
export const formatInstant = (instant: Instant): string => `${new Date(instant).toISOString().slice(0, 19)}Z`;

/** The IANA time zone at a place. Source of the shapes: the npm package tz-lookup (timezone-boundary-builder). */
export const zoneAt = (latitude: number, longitude: number): string => tzlookup(latitude, longitude);
