import type { Day } from '../base/day.ts';
import type { DailySeries } from '../base/series.ts';
import type { Metres } from '../base/units.ts';
import { type WeatherSeries, weatherEnd } from '../model/weather.ts';
import { NODES } from './conduction.ts';
import type { Ground } from './ground.ts';
import { columnsOf, depthSeries, run } from './soil.ts';
import { type ErrorRun, errorPath } from './soil-error.ts';

/** One possible run of weather: observed as far as that goes, then a past year. Days count as in the season it stands for. */
export interface Trace {
  readonly label: string;
  readonly tmin: DailySeries;
  readonly tmax: DailySeries;
  /** Rain and melted snow [mm]. */
  readonly precip: DailySeries;
  /** Daily mean soil temperature at a depth of 0.05 to 0.5 m [°C]. */
  soil(depth: Metres): DailySeries;
}

/** What a trace is cut from: days `[from, to)` of its season. */
export interface TraceCut {
  readonly label: string;
  readonly from: Day;
  readonly to: Day;
  /** The record is moved on by this many days. */
  readonly moved: number;
  /** Beyond the record's end stands the record this many days earlier. */
  readonly back: number;
  /** How much warmer the record's last days were than those this much earlier [°C]; null where nothing goes on. */
  readonly ahead: Difference | null;
  /** Which run of the model's error its soil has; null for none. */
  readonly error: ErrorRun | null;
}

/** A difference of air temperature between two years over the last days and the last month before one day [°C]. */
export interface Difference {
  readonly days: number;
  readonly month: number;
}

/** Days of the two means. */
const RECENT = { days: 3, month: 30 } as const;
/**
 * How a past year takes over from this one: it begins as warm as the last three days were, and goes its own way within days;
 * a quarter of the month's difference goes on for weeks. Fitted to daily mid-range temperatures at four stations (NOAA
 * GHCN-Daily, 1961 on); without one of them in turn the fit gives 2.3 to 2.6 d, 0.20 to 0.25 and 45 d.
 */
const CARRIED = { days: 2.6, share: 0.25, weeks: 45 } as const;

/** How much warmer the last days of a record are than the same days `back` earlier. */
export function differenceTo({ tmin, tmax }: WeatherSeries, back: number): Difference {
  const mean = (days: number) => {
    let sum = 0;
    for (let i = tmin.length - days; i < tmin.length; i++) {
      const middle = (at: number) => ((tmin[at] as number) + (tmax[at] as number)) / 2;
      sum += middle(i) - middle(i - back);
    }
    return sum / days;
  };
  return { days: mean(RECENT.days), month: mean(RECENT.month) };
}

/** What of a difference is left after so many days [°C]. */
function carriedOn({ days, month }: Difference, after: number): number {
  const own = Math.exp(-after / CARRIED.days);
  return own * days + CARRIED.share * (1 - own) * Math.exp(-after / CARRIED.weeks) * month;
}

/** A trace from a record: before its beginning nothing is known, beyond its end an earlier year goes on. */
export function traceFrom(
  ground: Ground,
  { label, from: asked, to, moved, back, ahead: difference, error: errorRun }: TraceCut,
): Trace {
  const { record, soil, run: past, offset, offsetSd } = ground;
  const end = weatherEnd(record);
  // A record that ended long before goes on from its end all the same: the soil is known there.
  const from = Math.min(asked, end + moved);
  const weather = { source: label, start: from, tmin: column(), tmax: column(), precip: column() };
  function column() {
    return new Float64Array(to - from).fill(Number.NaN);
  }
  for (let day = from; day < to; day++) {
    let there = day - moved;
    while (there >= end) there -= back;
    if (there < record.start) continue;
    const carried = day - moved < end || difference === null ? 0 : carriedOn(difference, day - moved - end + 1);
    const source = there - record.start;
    weather.tmin[day - from] = (record.tmin[source] as number) + carried;
    weather.tmax[day - from] = (record.tmax[source] as number) + carried;
    weather.precip[day - from] = record.precip[source] as number;
  }
  // The soil of the record's days is known; it runs on from the record's last evening.
  const seenTo = Math.min(to, end + moved);
  const ahead = {
    ...weather,
    start: seenTo,
    tmin: weather.tmin.subarray(seenTo - from),
    tmax: weather.tmax.subarray(seenTo - from),
    precip: weather.precip.subarray(seenTo - from),
  };
  const size = NODES.length;
  const columns = new Float64Array((to - from) * size).fill(Number.NaN);
  const first = Math.max(from, record.start + moved);
  columns.set(columnsOf(past, first - moved, seenTo - moved), (first - from) * size);
  const later = run(soil, past.end, ahead);
  columns.set(later.columns, (seenTo - from) * size);
  const error = errorRun && errorPath(errorRun, offsetSd, from, to);
  const shift = new Float64Array(to - from).fill(offset);
  if (error) for (let i = 0; i < shift.length; i++) shift[i] = offset + (error[i] as number);
  const soils = new Map<Metres, DailySeries>();
  return {
    label,
    tmin: { start: from, values: weather.tmin },
    tmax: { start: from, values: weather.tmax },
    precip: { start: from, values: weather.precip },
    soil: (depth) => {
      const known = soils.get(depth) ?? depthSeries({ start: from, columns, end: later.end }, depth, soil, shift);
      soils.set(depth, known);
      return known;
    },
  };
}

/** The mid-range air temperature of a trace [°C]. */
export const airMean = (trace: Trace): DailySeries => ({
  start: trace.tmin.start,
  values: trace.tmin.values.map((low, i) => (low + (trace.tmax.values[i] as number)) / 2),
});
