import * as v from 'valibot';
import { type Day, formatDay, parseDay } from '../../base/day.ts';
import { at, type DailySeries, seriesOf } from '../../base/series.ts';
import type { Instant } from '../../base/zone.ts';
import type { WeatherSeries } from '../../model/weather.ts';
import { impossible } from '../weather/collector.ts';
import { byDay, type DayOfHours, plausible } from './hours.ts';
import { empty, jsonAs, nonsense } from './json.ts';
import { type Answer, address, degrees, type Service, type ServiceSoil, type Site } from './service.ts';

const column = v.array(v.nullable(v.number()));
const block = v.objectWithRest({ time: v.array(v.union([v.string(), v.number()])) }, column);
const unitsBlock = v.optional(v.record(v.string(), v.string()), {});
const AnswerSchema = v.object({
  utc_offset_seconds: v.optional(v.number(), 0),
  hourly_units: unitsBlock,
  daily_units: unitsBlock,
  hourly: v.optional(block),
  daily: v.optional(block),
});
type Block = v.InferOutput<typeof block>;
type Units = Readonly<Record<string, string>>;

const MIN = 'temperature_2m_min';
const MAX = 'temperature_2m_max';
const RAIN = 'precipitation_sum';
const DAILY = `${MAX},${MIN},${RAIN}`;
const CREDIT = 'CC BY 4.0';

/** What a unit of an answer turns into °C or mm; absent means that it is not known. Without a unit the service's default holds. */
const TO_SI: Readonly<Record<string, (value: number) => number>> = {
  '°C': (value) => value,
  '°F': (value) => (value - 32) / 1.8,
  mm: (value) => value,
  inch: (value) => value * 25.4,
};

/**
 * Past weather of any place, a reanalysis on a grid of about 10 km; the last days may be null.
 * Source: Open-Meteo, Historical Weather API documentation, open-meteo.com/en/docs/historical-weather-api.
 */
export const openMeteoArchive: Service = {
  title: `Open-Meteo archive (${CREDIT})`,
  base: 'https://archive-api.open-meteo.com',
  url: (site, { from, to }, base) =>
    address(base, '/v1/archive', {
      ...whereAndWhen(site),
      daily: DAILY,
      start_date: formatDay(from),
      end_date: formatDay(to),
    }),
  parse: (text, site) => parse(text, site, openMeteoArchive.title),
};

/**
 * Forecast of 16 days with the 10 days before it, which the archive may not hold yet, and the service's own soil
 * temperature at 6 and 18 cm as a cross-check.
 * Source: Open-Meteo, Weather Forecast API documentation, open-meteo.com/en/docs.
 */
export const openMeteoForecast: Service = {
  title: `Open-Meteo forecast (${CREDIT})`,
  base: 'https://api.open-meteo.com',
  url: (site, _range, base) =>
    address(base, '/v1/forecast', {
      ...whereAndWhen(site),
      daily: DAILY,
      hourly: 'soil_temperature_6cm,soil_temperature_18cm',
      past_days: 10,
      forecast_days: 16,
    }),
  parse: (text, site) => parse(text, site, openMeteoForecast.title),
};

const whereAndWhen = ({ latitude, longitude, zone }: Site) => ({
  latitude: degrees(latitude),
  longitude: degrees(longitude),
  timezone: zone,
});

/**
 * An answer of either service, with daily or hourly blocks, ISO or unix time. Times are local by the one
 * `utc_offset_seconds` of the whole answer, unix times too once it is added. An hour's rain is that of the hour before its
 * stamp; as in the service's own sums it counts on the day of the stamp.
 */
function parse(text: string, site: Site, title: string): Answer {
  const json = jsonAs(AnswerSchema, text, title);
  if ('problem' in json) return json;
  const { daily, hourly, utc_offset_seconds: offset, daily_units, hourly_units } = json.value;
  const uneven = [daily, hourly].some(
    (one) => one && Object.values(one).some((values) => values.length !== one.time.length),
  );
  if (uneven) return nonsense(title, 'its columns are not of one length');
  const days = daily && dailyWeather(daily, daily_units, offset);
  const hours = hourly && hourlyWeather(hourly, hourly_units, offset, site.zone);
  if (days === null || hours === null) return nonsense(title, 'a time or a unit in it is not known');
  const signals = days?.has(MIN) && days.has(MAX) ? days : hours?.signals;
  if (!signals) return nonsense(title, 'neither daily nor hourly temperatures are in it');
  const weather = weatherOf(signals, title);
  return weather ? { weather, soil: hours?.soil ?? [] } : empty(title);
}

type Signals = ReadonlyMap<string, ReadonlyMap<Day, number>>;

/** Daily columns by civil day; null where a time or a unit is not known. */
function dailyWeather(daily: Block, units: Units, offset: number): Signals | null {
  const days = daily.time.map((time) =>
    typeof time === 'number' ? Math.floor((time + offset) / 86_400) : parseDay(time.slice(0, 10)),
  );
  if (!days.every((day) => day !== null && plausible(day * 86_400_000))) return null;
  const signals = new Map<string, Map<Day, number>>();
  for (const name of [MIN, MAX, RAIN]) {
    const values = daily[name] as readonly (number | null)[] | undefined;
    const convert = TO_SI[units[name] ?? (name === RAIN ? 'mm' : '°C')];
    if (!values) continue;
    if (!convert) return null;
    signals.set(name, new Map(days.map((day, i) => [day as Day, orNaN(values[i], convert)])));
  }
  return signals;
}

/** Hourly columns as days of the site's zone; null where a time or a unit is not known. */
function hourlyWeather(hourly: Block, units: Units, offset: number, zone: string) {
  const instants = hourly.time.map(
    (time): Instant =>
      typeof time === 'number' ? time * 1000 : Date.parse(`${time.replace(/Z$/, '')}Z`) - offset * 1000,
  );
  if (!instants.every(plausible)) return null;
  const daysOf = (name: string, standard: string): ReadonlyMap<Day, DayOfHours> | null | undefined => {
    const values = hourly[name] as readonly (number | null)[] | undefined;
    const convert = TO_SI[units[name] ?? standard];
    if (!values) return undefined;
    return convert
      ? byDay(
          instants.map((instant, i) => [instant, orNaN(values[i], convert)] as const),
          zone,
        )
      : null;
  };
  const [heat, rain] = [daysOf('temperature_2m', '°C'), daysOf('precipitation', 'mm')];
  if (heat === null || rain === null) return null;
  const soil: ServiceSoil[] = [];
  for (const name of Object.keys(hourly)) {
    const depth = /^soil_temperature_(\d+)cm$/.exec(name)?.[1];
    const days = depth === undefined ? undefined : daysOf(name, '°C');
    if (days === null) return null;
    if (days) soil.push({ depthCm: Number(depth), daily: dailySeries(pick(days, 'mean')) });
  }
  const signals =
    heat &&
    new Map([
      [MIN, pick(heat, 'min')],
      [MAX, pick(heat, 'max')],
      [RAIN, rain ? pick(rain, 'sum') : new Map<Day, number>()],
    ]);
  return { signals, soil };
}

const orNaN = (value: number | null | undefined, convert: (value: number) => number): number =>
  value === null || value === undefined ? Number.NaN : convert(value);

const pick = (days: ReadonlyMap<Day, DayOfHours>, what: keyof DayOfHours): ReadonlyMap<Day, number> =>
  new Map([...days].map(([day, values]) => [day, values[what]]));

function dailySeries(values: ReadonlyMap<Day, number>): DailySeries {
  const days = [...values.keys()];
  if (days.length === 0) return { start: 0, values: new Float64Array() };
  const [from, to] = [Math.min(...days), Math.max(...days)];
  return seriesOf(from, to + 1, (day) => values.get(day) ?? Number.NaN);
}

/** Days of signals as weather; null where no day has both extremes. Extremes that cross, or never were, are no extremes. */
function weatherOf(signals: Signals, source: string): WeatherSeries | null {
  const [low, high, rain] = [MIN, MAX, RAIN].map((name) => dailySeries(signals.get(name) ?? new Map()));
  if (!low || !high || !rain) return null;
  const sound = (day: Day) =>
    at(low, day) <= at(high, day) && !impossible('tmin', at(low, day)) && !impossible('tmax', at(high, day));
  const { start } = low;
  const end = start + low.values.length;
  const column_ = (series: DailySeries) =>
    seriesOf(start, end, (day) => (sound(day) ? at(series, day) : Number.NaN)).values;
  const weather = {
    source,
    start,
    tmin: column_(low),
    tmax: column_(high),
    precip: seriesOf(start, end, (day) => at(rain, day)).values,
  };
  return weather.tmin.some((value) => !Number.isNaN(value)) ? weather : null;
}
