import { civil, type Day, firstOnOrAfter, type MonthDay, partsOf, yearOf } from '../base/day.ts';
import { quantile } from '../base/quantile.ts';
import { at, type DailySeries, endOf, seriesOf } from '../base/series.ts';
import type { Celsius } from '../base/units.ts';

/** Cold seasons below this number say too little. NCEI asked ten years of a normal (1961-90). */
const NEEDED = 10;
/** With so many days missing before a frost is met, the season does not count. Source: Moller & Gillies (2007), Utah Climate, by climate.usu.edu. */
const MISSING = 10;
/** Room for a temperature that took another way from °F than the threshold [°C]. */
const HAIR = 1e-9;
/** A year whose cold season, north and south, has no 29 February. */
const COMMON_YEAR = 2001;

/**
 * Daily minima by cold season: from 15 July to 14 July in the north, from 15 January to 14 January in the south.
 *
 * @param minima A whole record. @returns One series a season that the record touches, NaN where it says nothing.
 */
export function coldSeasons(minima: DailySeries, southern: boolean): DailySeries[] {
  const split: MonthDay = { month: southern ? 1 : 7, day: 15 };
  const starts: Day[] = [];
  const first = civil(yearOf(minima.start) - 1, split.month, split.day);
  for (let start = first; start < endOf(minima); start = firstOnOrAfter(split, start + 1)) starts.push(start);
  return starts
    .map((start) => seriesOf(start, firstOnOrAfter(split, start + 1), (day) => at(minima, day)))
    .filter(({ values }) => values.some((value) => !Number.isNaN(value)));
}

/** The first or last day of a cold season at or below a threshold; `none`, or `unknown` where too much is missing. */
function frostIn(season: DailySeries, threshold: Celsius, which: 'first' | 'last'): Day | 'none' | 'unknown' {
  const { start, values } = season;
  let missing = 0;
  for (let i = 0; i < values.length; i++) {
    const day = which === 'first' ? start + i : start + values.length - 1 - i;
    const value = at(season, day);
    if (value <= threshold + HAIR) return day;
    if (Number.isNaN(value) && ++missing >= MISSING) return 'unknown';
  }
  return 'none';
}

/**
 * The day of the first frost in fall or of the last one in spring that goes with a chance, in the sense of NCEI.
 *
 * First: the day by which that share of years have had a frost; 0.1 is an early day. Last: the day after which that share
 * of years still have one; 0.1 is a late day, the safe one. Years without a frost are members of the sample that lie beyond
 * all others (later for the first, earlier for the last): NCEI's mix of a chance of no frost with a distribution of days.
 * NCEI fits that distribution, this is the sample's quantile by Hyndman & Fan's type 7, to the nearest day. 29 February
 * counts as 28 February.
 *
 * @param seasons Daily minima of past years, one whole cold season each, as `coldSeasons` cuts them.
 * @param threshold A day at or below it is a frost [°C].
 * @param chance 0 to 1, exclusive.
 * @returns Null where fewer than 10 seasons can be judged, or so few have a frost that the chance is never reached.
 * @throws RangeError where the chance is not between 0 and 1.
 * Source: NCEI, freeze/frost probabilities of the U.S. Climate Normals; Hyndman & Fan (1996), Am. Stat. 50:361-365.
 * @example frostDay(coldSeasons(record, false), 0, 'last', 0.1) //=> { month: 5, day: 24 }
 */
export function frostDay(
  seasons: readonly DailySeries[],
  threshold: Celsius,
  which: 'first' | 'last',
  chance: number,
): MonthDay | null {
  if (!(chance > 0 && chance < 1)) throw new RangeError(`a chance of ${chance} is not between 0 and 1`);
  const known = seasons.map((season) => frostIn(season, threshold, which)).filter((frost) => frost !== 'unknown');
  const [season] = seasons;
  if (!season || known.length < NEEDED) return null;
  const { month, day } = partsOf(season.start);
  const reference = civil(COMMON_YEAR, month, day);
  // A frost that never came lies beyond the latest first one, and beyond the earliest last one: time runs backwards there.
  const sign = which === 'first' ? 1 : -1;
  const days = known
    .filter((frost) => frost !== 'none')
    .map((frost) => sign * firstOnOrAfter(partsOf(frost), reference));
  const level = quantile(days, known.length, chance);
  if (level === null) return null;
  const found = partsOf(Math.round(sign * level));
  return { month: found.month, day: found.day };
}
