import { formatDay, monthDayIn, parseDay } from '../base/day.ts';
import type { Celsius } from '../base/units.ts';
import { dayLengthOn } from './day-length.ts';
import { coldSeasons, frostDay } from './frost.ts';

/** The day that a text names; a RangeError for one that is none. */
function dayOf(text: string): number {
  const day = parseDay(text);
  if (day === null) throw new RangeError(`"${text}" is not a day`);
  return day;
}

/**
 * Hours of a day with the sun above the horizon.
 *
 * @param date `YYYY-MM-DD`. @param latitude [°], north positive.
 * @returns Sunrise to sunset [h]; 24 in the polar day, 0 in the polar night.
 * @throws RangeError for a date that is no day.
 * Source: suncalc 2, after Meeus (1998), Astronomical Algorithms.
 * @example dayLength('2027-06-21', 45) //=> 15.62
 */
export const dayLength = (date: string, latitude: number): number => dayLengthOn(dayOf(date), latitude);

/**
 * The day of the first frost in fall or of the last one in spring that goes with a chance, in the sense of NCEI.
 *
 * @param weather Daily minima [°C], NaN where missing. @param rule.threshold A day at or below it is a frost [°C].
 * @param rule.which `first`: the day by which that share of years have had one. `last`: the day after which that share of
 *   years still have one, so that 0.1 is the late, safe day.
 * @param rule.chance 0 to 1, exclusive. @param rule.latitude [°]; the southern cold season begins in January.
 * @returns `MM-DD`; null where fewer than 10 cold seasons can be judged or too few of them have a frost.
 * @throws RangeError for a start that is no day or a chance that is not between 0 and 1.
 * Source: NCEI, freeze/frost probabilities of the U.S. Climate Normals; quantile as stated at `frostDay`.
 * @example frostDate({ start: '1991-01-01', tmin }, { threshold: 0, which: 'last', chance: 0.1, latitude: 43.6 }) //=> '05-24'
 */
export function frostDate(
  weather: { readonly start: string; readonly tmin: readonly number[] },
  rule: {
    readonly threshold: Celsius;
    readonly which: 'first' | 'last';
    readonly chance: number;
    readonly latitude: number;
  },
): string | null {
  const minima = { start: dayOf(weather.start), values: Float64Array.from(weather.tmin) };
  const found = frostDay(coldSeasons(minima, rule.latitude < 0), rule.threshold, rule.which, rule.chance);
  return found && formatDay(monthDayIn(found, 2001)).slice(5);
}
