import * as v from 'valibot';
import type { Day } from '../../base/day.ts';
import { dayAt, type Instant } from '../../base/zone.ts';
import { seriesFrom } from '../weather/format.ts';
import { byDay, durationHours, hoursFrom, plausible } from './hours.ts';
import { empty, jsonAs, nonsense } from './json.ts';
import { type Answer, degrees, type Service, type Site } from './service.ts';

const TITLE = 'U.S. National Weather Service';
const HOUR = 3_600_000;

const layer = v.object({
  uom: v.optional(v.string()),
  values: v.array(v.object({ validTime: v.string(), value: v.nullable(v.number()) })),
});
const AnswerSchema = v.object({
  properties: v.object({
    gridId: v.optional(v.string()),
    gridX: v.optional(v.union([v.string(), v.number()])),
    gridY: v.optional(v.union([v.string(), v.number()])),
    temperature: v.optional(layer),
    maxTemperature: v.optional(layer),
    minTemperature: v.optional(layer),
    quantitativePrecipitation: v.optional(layer),
  }),
});
type Layer = v.InferOutput<typeof layer>;

/** What a unit turns into °C or mm; older answers write `unit:` for `wmoUnit:`. */
const TO_SI: Readonly<Record<string, (value: number) => number>> = {
  degC: (value) => value,
  degF: (value) => (value - 32) / 1.8,
  mm: (value) => value,
};

/**
 * Forecast of about 7 days for a place in the United States: first the grid square of the place, then its raw layers,
 * values with ISO 8601 intervals.
 *
 * Source: National Weather Service, API documentation, weather.gov/documentation/services-web-api (points, gridpoints).
 */
export const nwsForecast: Service = {
  title: TITLE,
  base: 'https://api.weather.gov',
  url: ({ latitude, longitude }, _range, base) => `${base}/points/${degrees(latitude)},${degrees(longitude)}`,
  parse(text, site, _range, base) {
    const json = jsonAs(AnswerSchema, text, TITLE);
    if ('problem' in json) return json;
    const { gridId, gridX, gridY, ...layers } = json.value.properties;
    if (layers.temperature || layers.maxTemperature) return forecastOf(layers, site);
    // Put together anew rather than followed, so that an answer cannot lead elsewhere.
    if (!gridId || !/^[A-Z]{2,4}$/.test(gridId) || !/^\d+$/.test(String(gridX)) || !/^\d+$/.test(String(gridY)))
      return nonsense(TITLE, 'neither a grid square nor a forecast is in it');
    return { next: `${base}/gridpoints/${gridId}/${gridX},${gridY}` };
  },
};

interface Interval {
  readonly start: Instant;
  readonly hours: number;
  readonly value: number | null;
}

/** A layer in SI; null where a time or the unit is not known. */
function intervalsOf(one: Layer | undefined, standard: string): readonly Interval[] | null {
  if (!one) return [];
  const convert = TO_SI[(one.uom ?? standard).replace(/^.*:/, '')];
  if (!convert) return null;
  const intervals: Interval[] = [];
  for (const { validTime, value } of one.values) {
    const [from = '', length = ''] = validTime.split('/');
    const [start, hours] = [Date.parse(from), durationHours(length)];
    if (!plausible(start) || hours === null || hours > 24 * 14) return null;
    intervals.push({ start, hours, value: value === null ? null : convert(value) });
  }
  return intervals;
}

/**
 * Days of the site's zone. Extremes are those of the hours of a day, widened by the forecast's own daytime maximum (of the
 * day in its middle) and night minimum (of the day it ends on), which catch what lies between the hours; a day of which
 * less than 20 hours are told is left out. Rain of an interval is spread evenly over its hours.
 */
function forecastOf(
  layers: Readonly<{
    [K in 'temperature' | 'maxTemperature' | 'minTemperature' | 'quantitativePrecipitation']?: Layer | undefined;
  }>,
  { zone }: Site,
): Answer {
  const hourly = intervalsOf(layers.temperature, 'degC');
  const maxima = intervalsOf(layers.maxTemperature, 'degC');
  const minima = intervalsOf(layers.minTemperature, 'degC');
  const rain = intervalsOf(layers.quantitativePrecipitation, 'mm');
  if (!hourly || !maxima || !minima || !rain) return nonsense(TITLE, 'a time or a unit in it is not known');
  const heat = byDay(
    hourly.flatMap(({ start, hours, value }) => hoursFrom(start, hours).map((hour) => [hour, value] as const)),
    zone,
  );
  const wet = byDay(
    rain.flatMap(({ start, hours, value }) =>
      hoursFrom(start, hours).map((hour) => [hour, value === null ? null : value / Math.max(hours, 1)] as const),
    ),
    zone,
  );
  const [highs, lows] = [new Map<Day, number>(), new Map<Day, number>()];
  for (const { start, hours, value } of maxima)
    if (value !== null) highs.set(dayAt(start + (hours / 2) * HOUR, zone), value);
  for (const { start, hours, value } of minima)
    if (value !== null) lows.set(dayAt(start + hours * HOUR - 1, zone), value);
  const readings = [...heat]
    .filter(([, { min }]) => !Number.isNaN(min))
    .map(([day, { min, max }]) => ({
      day,
      values: {
        tmin: Math.min(min, lows.get(day) ?? min),
        tmax: Math.max(max, highs.get(day) ?? max),
        precip: wet.get(day)?.sum ?? Number.NaN,
      },
    }));
  return readings.length === 0 ? empty(TITLE) : { weather: seriesFrom(readings, TITLE) };
}
