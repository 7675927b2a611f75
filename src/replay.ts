/** A past season lived day by day: the weather observed up to each day, other years beyond it. */

import { civil, type Day, formatDay } from './base/day.ts';
import { hasErrors, type Problem } from './base/problem.ts';
import { merge } from './climate/record.ts';
import { planLinked } from './compile.ts';
import { calendarOf } from './emit/calendar.ts';
import type { Journal } from './model/journal.ts';
import { emptyLedger, type Ledger } from './model/ledger.ts';
import type { Detail } from './model/reader.ts';
import type { Season } from './model/season.ts';
import { cut, type WeatherSeries, weatherEnd } from './model/weather.ts';
import type { Linked } from './read/link.ts';
import { seasonsOf } from './schedule/season-year.ts';

/** Four years always have one leap day (1901 to 2099), so that a move by them keeps every calendar day. */
const FOUR_YEARS = 1461;
/** Thirty-two years: the season's own and as many others as a plan takes. */
const MOST_DAYS = 8 * FOUR_YEARS;

/**
 * The years around a season, those after it before all others: the days that follow the season are put there once more, moved
 * back by a multiple of four years. To a plan, which looks at nothing after its as-of day, later years are then past years.
 *
 * @param end The season's last day.
 */
export function othersBefore(record: WeatherSeries, end: Day): WeatherSeries {
  const days = weatherEnd(record) - record.start;
  const span = Math.min(MOST_DAYS, days - (days % FOUR_YEARS));
  const first = Math.max(record.start, Math.min(end - span / 2, weatherEnd(record) - span));
  const later = cut(record, end + 1, first + span);
  return merge([{ ...later, start: later.start - span }, cut(record, first, weatherEnd(record))]) ?? record;
}

/** The season of a program that begins in a year. */
export const seasonIn = (program: Linked['program'], southern: boolean, year: number) =>
  seasonsOf(program, southern, civil(year, 12, 31))[0];

/** A plan as it would have been on a day. */
export interface LivedDay {
  readonly asOf: Day;
  /** Null where the weather cannot carry a plan. */
  readonly season: Season | null;
  readonly problems: readonly Problem[];
  /** What the lawn's feed has published by the end of the day. */
  readonly ledger: Ledger;
}

/** How the days are lived. */
export interface LivedAs {
  /** Plans every day as if nothing had been published. */
  readonly free?: boolean;
  /** What the lawn's feed carries; `normal` where left out. */
  readonly detail?: Detail;
  /** What is written in the journal in the evening, for plans of later days; nothing where left out. */
  readonly does?: (season: Season) => Journal;
}

/**
 * Plans a past season again on each of some days: the weather observed up to the day, the other years of the record
 * beyond, later ones too; what earlier days have published goes on as in a feed. Days after an as-of day change nothing.
 *
 * @param linked The lawn, with journal and thermometer; its weather and forecast are not looked at.
 * @param record The whole weather, the season's own and other years.
 * @param year The year in which the season begins.
 * @param days The as-of days, in order.
 * @example replay(linked, record, 2019, [civil(2019, 3, 1), civil(2019, 3, 8)])
 */
export function replay(
  linked: Linked,
  record: WeatherSeries,
  year: number,
  days: readonly Day[],
  { free = false, detail = 'normal', does }: LivedAs = {},
): LivedDay[] {
  const { end } = seasonIn(linked.program, linked.lawn.location.latitude < 0, year);
  const lived = { ...linked, weather: [othersBefore(record, end)], forecast: null };
  let ledger: Ledger = emptyLedger;
  let journal: Journal = linked.journal;
  return days.map((asOf) => {
    const { season, problems } = planLinked({ ...lived, journal }, { asOf, ledger: free ? emptyLedger : ledger });
    if (season === null || hasErrors(problems)) return { asOf, season: null, problems, ledger };
    ledger = calendarOf(season, { ledger, revisedAt: `${formatDay(asOf)}T00:00:00Z`, detail }).ledger;
    if (does) journal = [...journal, ...does(season)];
    return { asOf, season, problems, ledger };
  });
}
