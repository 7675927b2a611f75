import { type Day, firstOnOrAfter, latestOnOrBefore, type MonthDay } from '../base/day.ts';
import { type DailySeries, endOf, seriesOf } from '../base/series.ts';
import type { FrostRule } from '../model/frost.ts';
import type { WeatherSeries } from '../model/weather.ts';
import { dayLengthOn } from './day-length.ts';
import { coldSeasons, frostDay } from './frost.ts';

/** Signals of a place that are the same in every run of weather. */
export interface SiteDays {
  /** Hours with the sun above the horizon. */
  readonly dayLength: DailySeries;
  /** The day of a frost rule in the season that begins on `seasonStart`; null where too few past years have one. */
  frost(rule: FrostRule, seasonStart: Day): Day | null;
}

/** A season is planned from this many days before it on: what past years say of it may not change after that. */
const KNOWN_BEFORE = 60;
/** As many cold seasons as climate normals have years; the latest ones. */
const MOST_SEASONS = 30;
/** The longest season. */
const YEAR = 366;
const THIRD_OF_A_YEAR = 122;

/**
 * What a place's latitude and its past years say of a season's days.
 *
 * @param record Past weather without holes. @param filled Its days that were not observed: they are no frosts.
 * @param from @param to The days `[from, to)` that day lengths are wanted for.
 */
export function siteDays(
  record: WeatherSeries,
  filled: ReadonlySet<Day>,
  latitude: number,
  { from, to }: { readonly from: Day; readonly to: Day },
): SiteDays {
  const southern = latitude < 0;
  const minima = seriesOf(record.start, record.start + record.tmin.length, (day) =>
    filled.has(day) ? Number.NaN : (record.tmin[day - record.start] as number),
  );
  const seasons = coldSeasons(minima, southern);
  let dayLength: DailySeries | null = null;
  const found = new Map<string, Day | null>();
  return {
    get dayLength() {
      dayLength ??= seriesOf(from, to, (day) => dayLengthOn(day, latitude));
      return dayLength;
    },
    frost(rule, seasonStart) {
      const key = `${rule.which} ${rule.threshold} ${rule.chance} ${rule.shift} ${seasonStart}`;
      if (!found.has(key)) {
        const past = seasons.filter((one) => endOf(one) <= seasonStart - KNOWN_BEFORE).slice(-MOST_SEASONS);
        const monthDay = frostDay(past, rule.threshold, rule.which, rule.chance);
        found.set(key, monthDay && inSeason(monthDay, rule.which, seasonStart, southern) + rule.shift);
      }
      return found.get(key) ?? null;
    },
  };
}

/**
 * The season's own frost. Of last frosts: that of the first cold season whose last one does not lie before the season; where
 * mild winters have it just before the season begins, that one. Of first frosts: that of the first cold season of which two
 * thirds still lie ahead as the season begins, since the first frost is what ends a season's growth.
 */
function inSeason(monthDay: MonthDay, which: FrostRule['which'], seasonStart: Day, southern: boolean): Day {
  const begins: MonthDay = { month: southern ? 1 : 7, day: 15 };
  if (which === 'first') return firstOnOrAfter(monthDay, firstOnOrAfter(begins, seasonStart - THIRD_OF_A_YEAR));
  const split = latestOnOrBefore(begins, seasonStart);
  const frost = firstOnOrAfter(monthDay, split);
  return frost >= seasonStart - KNOWN_BEFORE ? frost : firstOnOrAfter(monthDay, split + YEAR);
}
