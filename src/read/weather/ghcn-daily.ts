import { civil, type Day, formatDay, parseDay } from '../../base/day.ts';
import { problem } from '../../base/problem.ts';
import { Collector, impossible } from './collector.ts';
import { type Name, type Reading, seriesFrom, toSi, type WeatherFormat } from './format.ts';

const ELEMENTS: Readonly<Record<string, Name>> = { TMIN: 'tmin', TMAX: 'tmax', PRCP: 'precip' };
const LINE = /^[A-Z]{2}[A-Z0-9_-]{9}(\d{4})(\d{2})([A-Z0-9]{4})/;
const MISSING = -9999;
/** Columns before the first day, and columns of a day: value 5, measurement, quality and source flag 1 each. */
const [HEAD, DAY] = [21, 8];

/**
 * GHCN-Daily fixed width (`.dly`): a line a month and element, 31 days of 8 columns, tenths of °C and of mm.
 * -9999 is missing; a value with a quality flag failed a check and counts as missing. Other elements are passed over.
 *
 * Source: NOAA NCEI, README FILE FOR DAILY GLOBAL HISTORICAL CLIMATOLOGY NETWORK (GHCN-DAILY), section III.
 * An accumulation over several days (measurement flag, or quality flag "L") is not spread over them.
 */
export const ghcnDaily: WeatherFormat = {
  name: 'GHCN-Daily',
  detect: (text) => LINE.test(text),
  parse(text, file) {
    const found = new Collector(file);
    const days = new Map<Day, Record<Name, number>>();
    const seen = new Set<string>();
    let station: string | undefined;
    for (const [i, raw] of text.split('\n').entries()) {
      const line = raw.trimEnd();
      if (line === '') continue;
      const at = (column: number, length: number) => ({ line: i + 1, column, length });
      const head = LINE.exec(line);
      if (!head) {
        const found_ = `"${line.slice(0, 24)}"`;
        found.add('weather-line', at(1, line.length), {
          format: 'GHCN-Daily',
          found: found_,
          expected: 'a station, year, month and element such as USC00305816194501TMAX',
        });
        continue;
      }
      const [, year = '', month = '', element = ''] = head;
      const id = line.slice(0, 11);
      station ??= id;
      if (id !== station) {
        found.add('weather-stations', at(1, 11), { first: station, found: id });
        break;
      }
      const name = ELEMENTS[element];
      if (!name) continue;
      const first = parseDay(`${year}-${month}-01`);
      if (first === null) {
        found.add('not-a-date', at(12, 6), { found: `${year}${month}`, expected: 'a year and month such as 194501' });
        continue;
      }
      const key = `${year}${month}${element}`;
      if (seen.has(key)) found.add('weather-twice', at(12, 10), { date: `${year}-${month} ${element}` });
      seen.add(key);
      const length = civil(Number(year), Number(month) + 1, 1) - first;
      for (let d = 0; d < length; d++) {
        const column = HEAD + d * DAY;
        const written = line.slice(column, column + 5).trim();
        const [value, quality = ' '] = [Number(written), line[column + 6]];
        if (!/^-?\d+$/.test(written)) {
          const shown = written === '' ? 'nothing' : `"${written}"`;
          found.add('weather-line', at(column + 1, 5), {
            format: 'GHCN-Daily',
            found: shown,
            expected: 'a whole number of tenths in 5 columns, or -9999',
          });
          break;
        }
        const values = days.get(first + d) ?? { tmin: Number.NaN, tmax: Number.NaN, precip: Number.NaN };
        days.set(first + d, values);
        if (value === MISSING || quality !== ' ') continue;
        const si = toSi['c/10'](value);
        if (impossible(name, si))
          found.add('weather-range', at(column + 1, 5), { date: formatDay(first + d), found: `${element} ${si}` });
        else values[name] = si;
      }
    }
    if (found.problems.length > 0) return { problems: found.problems };
    const readings: Reading[] = [...days].map(([day, values]) => ({ day, values: mended(values) }));
    if (readings.length === 0) return { problems: [problem('weather-none', { found: 'no element' }, { file })] };
    return { value: seriesFrom(readings, file), problems: [] };
  },
};

/** Extremes that cross come from two times of observation on one day; which of them is wrong cannot be told: both are missing. */
const mended = (values: Record<Name, number>): Record<Name, number> =>
  values.tmin > values.tmax ? { ...values, tmin: Number.NaN, tmax: Number.NaN } : values;
