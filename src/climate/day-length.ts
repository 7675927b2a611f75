import { getTimes } from 'suncalc';
import type { Day } from '../base/day.ts';
import { type Instant, instantAt } from '../base/zone.ts';

const MS_PER_HOUR = 3_600_000;
const MS_PER_DAY = 24 * MS_PER_HOUR;

/**
 * Hours of a day with the sun's upper edge above the horizon.
 *
 * @param latitude [°], north positive.
 * @returns Sunrise to sunset [h]; 24 in the polar day, 0 in the polar night. The longitude, left out, would change it by
 *   less than two minutes up to 50° of latitude.
 * Source: suncalc 2, getTimes: Meeus (1998), Astronomical Algorithms, chapters 15 and 25, altitude -0.833° for refraction
 * and the disc's radius.
 * @example dayLengthOn(civil(2027, 6, 21), 45) //=> 15.62
 */
export function dayLengthOn(day: Day, latitude: number): number {
  const { sunrise, sunset, alwaysUp } = getTimes(new Date((day + 0.5) * MS_PER_DAY), latitude, 0);
  if (sunrise && sunset) return (sunset.getTime() - sunrise.getTime()) / MS_PER_HOUR;
  return alwaysUp ? 24 : 0;
}

/** When the sun rises and sets on a day, and when civil twilight begins and ends; null for what does not happen that day. */
export interface SunTimes {
  readonly dawn: Instant | null;
  readonly sunrise: Instant | null;
  readonly sunset: Instant | null;
  readonly dusk: Instant | null;
}

/**
 * The sun's times on a civil day.
 *
 * @param place Latitude and longitude [°], north and east positive.
 * @param zone IANA name; it says which of the sun's days is meant, also where zone and longitude lie a day apart.
 * Source: suncalc 2, getTimes; dawn and dusk with the sun 6° below the horizon.
 * @example sunTimes(civil(2027, 6, 21), { latitude: 43.1, longitude: -89.4 }, 'America/Chicago').sunrise
 */
export function sunTimes(
  day: Day,
  { latitude, longitude }: { readonly latitude: number; readonly longitude: number },
  zone: string,
): SunTimes {
  const times = getTimes(new Date(instantAt(day, 12 * 60, zone)), latitude, longitude);
  const instant = (time: Date | null): Instant | null => time?.getTime() ?? null;
  return {
    dawn: instant(times.dawn),
    sunrise: instant(times.sunrise),
    sunset: instant(times.sunset),
    dusk: instant(times.dusk),
  };
}
