import Papa from 'papaparse';
import { parseDay } from '../../base/day.ts';
import { type Place, problem } from '../../base/problem.ts';
import { Collector, cellSpot, impossible, numberIn } from './collector.ts';
import {
  type FileUnit,
  type FileUnits,
  type Name,
  type Reading,
  seriesFrom,
  toSi,
  type WeatherFormat,
} from './format.ts';
import { suspectUnits } from './suspect.ts';

const ELEMENTS = { TMIN: 'tmin', TMAX: 'tmax', PRCP: 'precip' } as const;

const namesOf = (header: readonly string[]): string[] => header.map((cell) => cell.trim());

/**
 * NOAA "daily-summaries" CSV: `STATION,DATE,…,PRCP,TMAX,TMIN` in any order, one station, as NCEI's access service and its
 * order form give it (metric: °C, mm; standard: °F, in) and as its archive by station does (tenths of °C and of mm).
 * A value whose `…_ATTRIBUTES` name a quality flag (the second of its parts) counts as missing; other columns are passed over.
 *
 * The file does not say its units: the lawn's `weather.units` does (`us` is standard). Whole numbers that reach beyond 134,
 * which neither °C nor °F ever did, are tenths.
 *
 * Source: NOAA NCEI, Daily Summaries (GHCN-Daily) CSV documentation, ncei.noaa.gov/data/daily-summaries/doc; record high
 * 134 °F: WMO archive.
 */
export const dailySummaries: WeatherFormat = {
  name: 'daily-summaries',
  detect: (text) => {
    const { data } = Papa.parse<string[]>(text.slice(0, text.search(/[\r\n]|$/)), { delimitersToGuess: [','] });
    const names = namesOf(data[0] ?? []);
    return names.includes('STATION') && names.includes('DATE');
  },
  parse(text, file, units) {
    const { data: rows } = Papa.parse<string[]>(text.trimEnd(), { delimiter: ',', newline: '\n' });
    const raw = text.split('\n');
    const [header = [], ...lines] = rows;
    const names = namesOf(header);
    const first: Place = { file, line: 1, column: 1, length: Math.max(1, header.join(',').length) };
    const column = (name: string) => names.indexOf(name);
    const missing = ['TMIN', 'TMAX'].filter((name) => column(name) < 0);
    if (missing.length > 0)
      return {
        problems: [
          problem('weather-header', { missing: missing.join(', '), found: names.join(', ').slice(0, 80) }, first),
        ],
      };
    if (lines.length === 0) return { problems: [problem('weather-none', { found: 'no row' }, first)] };
    const scale = unitsOf(lines, [column('TMIN'), column('TMAX')], units);
    if (!scale) return { problems: [problem('weather-units', { found: 'TMIN, TMAX' }, first)] };

    const found = new Collector(file);
    const days: Reading[] = [];
    const seen = new Set<number>();
    const [stationAt, dateAt] = [column('STATION'), column('DATE')];
    const station = lines[0]?.[stationAt]?.trim() ?? '';
    for (const [i, cells] of lines.entries()) {
      const spot = (cell: number) => cellSpot(raw[i + 1] ?? '', ',', i + 2, cell);
      if (cells.length !== header.length) {
        found.add('weather-cells', spot(0), { found: cells.length, expected: header.length });
        continue;
      }
      const here = (cells[stationAt] ?? '').trim();
      if (here !== station) {
        found.add('weather-stations', spot(stationAt), { first: station, found: here });
        break;
      }
      const written = (cells[dateAt] ?? '').trim();
      const day = parseDay(written.slice(0, 10));
      if (day === null) {
        found.add('not-a-date', spot(dateAt), { found: written, expected: 'a day such as 2027-04-03' });
        continue;
      }
      if (seen.has(day)) found.add('weather-twice', spot(dateAt), { date: written });
      seen.add(day);
      const values: Record<Name, number> = { tmin: Number.NaN, tmax: Number.NaN, precip: Number.NaN };
      for (const [element, name] of Object.entries(ELEMENTS)) {
        const index = column(element);
        const cell = (cells[index] ?? '').trim();
        const quality = (cells[column(`${element}_ATTRIBUTES`)] ?? '').split(',')[1]?.trim() ?? '';
        if (cell === '' || quality !== '') continue;
        const number = numberIn(cell);
        const si = number === null ? Number.NaN : toSi[name === 'precip' ? scale.rain : scale.heat](number);
        if (number === null) found.add('weather-value', spot(index), { found: cell, expected: 'a number' });
        else if (number === -9999) continue;
        else if (impossible(name, si))
          found.add('weather-range', spot(index), { date: written, found: `${element} ${cell}` });
        else values[name] = si;
      }
      // Two times of observation on one day; which extreme is wrong cannot be told.
      if (values.tmin > values.tmax) values.tmin = values.tmax = Number.NaN;
      days.push({ day, line: spot(0).line, values });
    }
    if (found.problems.length > 0) return { problems: found.problems };
    const series = seriesFrom(days, file);
    const suspect = suspectUnits(series, scale.heat === 'f' ? '°F' : '°C', first);
    return suspect ? { problems: [suspect] } : { value: series, problems: [] };
  },
};

/** What the figures are in; null where neither they nor the lawn tell. */
function unitsOf(
  lines: readonly (readonly string[])[],
  columns: readonly number[],
  units: FileUnits | undefined,
): { readonly heat: FileUnit; readonly rain: FileUnit } | null {
  let [whole, beyond] = [true, false];
  for (const cells of lines) {
    for (const index of columns) {
      const value = Number((cells[index] ?? '').trim());
      if (!Number.isInteger(value)) whole = false;
      if (Math.abs(value) > 134 && Math.abs(value) < 9999) beyond = true;
    }
  }
  if (whole && beyond) return { heat: 'c/10', rain: 'mm/10' };
  if (units === undefined) return null;
  return units === 'us' ? { heat: 'f', rain: 'in' } : { heat: 'c', rain: 'mm' };
}
