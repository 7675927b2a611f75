import Papa from 'papaparse';
import * as v from 'valibot';
import { type Day, formatDay, parseDay } from '../../base/day.ts';
import { problem } from '../../base/problem.ts';
import { dailySummaries } from '../weather/daily-summaries.ts';
import { empty, jsonAs, nonsense } from './json.ts';
import { type Answer, address, degrees, type Range, type Service, type Site } from './service.ts';

const TITLE = 'NOAA NCEI daily summaries';
/** Half the side of the square in which stations are looked for [°], and about what that is [km]. */
const REACH = { degrees: 0.5, km: 55 } as const;
/** A station's record may begin this much later than asked, and end this much earlier [d]. */
const LATE = { start: 3 * 365, end: 45 } as const;

const point = v.pipe(v.array(v.number()), v.minLength(2));
const SearchSchema = v.object({
  results: v.array(
    v.object({
      stations: v.array(v.object({ id: v.string(), name: v.optional(v.string(), '') })),
      centroid: v.optional(v.object({ point: v.optional(point) })),
      location: v.optional(v.object({ coordinates: v.optional(point) })),
      startDate: v.optional(v.string()),
      endDate: v.optional(v.string()),
    }),
  ),
});
const RowsSchema = v.array(v.record(v.string(), v.union([v.string(), v.number(), v.null()])));

/**
 * Measured days of the nearest station of GHCN-Daily that has both ends of the range, or of the one the lawn names.
 * The station is asked for first, then its days, in one request, metric.
 *
 * Source: NOAA NCEI, Data Service API and Search Service API user documentation, ncei.noaa.gov/support. The box is
 * written north, west, south, east. A station's height is not looked at.
 */
export const nceiDaily: Service = {
  title: TITLE,
  base: 'https://www.ncei.noaa.gov',
  url: (site, range, base) => (site.station ? dataUrl(site.station, range, base) : searchUrl(site, base)),
  parse: (text, site, range, base) => {
    if (/^\s*\{/.test(text)) return stationIn(text, site, range, base);
    if (/^\s*\[/.test(text)) return rowsIn(text);
    return csvIn(text);
  },
};

const searchUrl = ({ latitude, longitude }: Site, base: string): string =>
  address(base, '/access/services/search/v1/data', {
    dataset: 'daily-summaries',
    bbox: [latitude + REACH.degrees, longitude - REACH.degrees, latitude - REACH.degrees, longitude + REACH.degrees]
      .map(degrees)
      .join(','),
    dataTypes: 'TMAX,TMIN',
    limit: 500,
  });

const dataUrl = (station: string, { from, to }: Range, base: string): string =>
  address(base, '/access/services/data/v1', {
    dataset: 'daily-summaries',
    stations: station,
    dataTypes: 'TMAX,TMIN,PRCP',
    units: 'metric',
    format: 'csv',
    includeAttributes: 'true',
    startDate: formatDay(from),
    endDate: formatDay(to),
  });

/** The nearest station that a search found, as the next address. */
function stationIn(text: string, site: Site, range: Range, base: string): Answer {
  const json = jsonAs(SearchSchema, text, TITLE);
  if ('problem' in json) return json;
  const wanted = (written: string | undefined, holds: (day: Day) => boolean): boolean => {
    const day = written === undefined ? null : parseDay(written.slice(0, 10));
    return day === null || holds(day);
  };
  // History and this year come from one station: the difference between two would look like an early or a late spring.
  const { from, to } = range.whole ?? range;
  const usable = json.value.results.flatMap(({ stations, centroid, location, startDate, endDate }) => {
    const [station] = stations;
    const [longitude, latitude] = centroid?.point ?? location?.coordinates ?? [];
    if (!station || longitude === undefined || latitude === undefined) return [];
    if (!wanted(startDate, (day) => day <= from + LATE.start)) return [];
    if (!wanted(endDate, (day) => day >= to - LATE.end)) return [];
    const east = (longitude - site.longitude) * Math.cos((site.latitude * Math.PI) / 180);
    return [{ id: station.id.replace(/^.*:/, ''), distance: Math.hypot(latitude - site.latitude, east) }];
  });
  const [nearest] = usable.sort((a, b) => a.distance - b.distance || (a.id < b.id ? -1 : 1));
  if (!nearest) return { problem: problem('service-no-station', { service: TITLE, km: REACH.km }, null) };
  if (!/^[A-Z0-9_-]{1,20}$/.test(nearest.id)) return nonsense(TITLE, 'a station without a proper name');
  return { next: dataUrl(nearest.id, range, base) };
}

/** Days as CSV. */
function csvIn(answer: string): Answer {
  const text = answer.replace(/\r\n?/g, '\n');
  if (text.trim() === '') return empty(TITLE);
  if (!dailySummaries.detect(text)) {
    const start = text.slice(0, 40).replace(/\s+/g, ' ').trim();
    return nonsense(TITLE, `neither CSV with STATION and DATE nor JSON ("${start}")`);
  }
  const { value, problems } = dailySummaries.parse(text, TITLE, 'metric');
  const [first] = problems;
  if (!value) return first?.code === 'weather-none' ? empty(TITLE) : nonsense(TITLE, first?.message ?? 'no days');
  const [header = '', row = ''] = text.split('\n');
  const cell = header.replaceAll('"', '').split(',').indexOf('STATION');
  const station = row.replaceAll('"', '').split(',')[cell]?.trim() ?? '';
  const source = /^[A-Z0-9_-]{1,20}$/.test(station) ? `${TITLE}, station ${station}` : TITLE;
  return value.tmin.some((low) => !Number.isNaN(low)) ? { weather: { ...value, source } } : empty(TITLE);
}

/** Days as JSON: a list of rows whose values are text; read as the CSV they stand for. */
function rowsIn(text: string): Answer {
  const json = jsonAs(RowsSchema, text, TITLE);
  if ('problem' in json) return json;
  if (json.value.length === 0) return empty(TITLE);
  const columns = [...new Set(json.value.flatMap((row) => Object.keys(row)))];
  const rows = json.value.map((row) => columns.map((name) => String(row[name] ?? '').trim()));
  return csvIn(Papa.unparse([columns, ...rows]));
}
