import { type Day, formatDay, parseDay } from '../../base/day.ts';
import { problem } from '../../base/problem.ts';
import { Collector, impossible, numberIn } from './collector.ts';
import { type Name, type Reading, seriesFrom, type WeatherFormat } from './format.ts';

const WIDTH = 28;
/** Fields counted from 0: WBANNO, LST_DATE, CRX_VN, LONGITUDE, LATITUDE, T_DAILY_MAX, T_DAILY_MIN, …, P_DAILY_CALC (10th). */
const FIELD = { station: 0, date: 1, tmax: 5, tmin: 6, precip: 9 } as const;

const fieldsOf = (line: string) => [...line.matchAll(/\S+/g)].map((match) => ({ text: match[0], at: match.index }));

/**
 * U.S. Climate Reference Network `daily01` text: 28 columns parted by white space, a day a line, °C and mm, local standard
 * time; -9999 (and -99 for soil moisture) is missing. Air extremes and rain are taken; soil is for the accuracy command.
 *
 * Source: NOAA NCEI, USCRN/USRCRN daily01 README (Diamond et al. 2013, DOI 10.1175/BAMS-D-12-00170.1): fields 1 to 28.
 */
export const uscrnDaily: WeatherFormat = {
  name: 'USCRN daily01',
  detect: (text) => /^\s*\d{1,6}\s+\d{8}\s+\S+(\s+-?[\d.]+){2}\s/.test(text),
  parse(text, file) {
    const found = new Collector(file);
    const days: Reading[] = [];
    let [previous, station]: [Day | null, string | undefined] = [null, undefined];
    for (const [i, line] of text.split('\n').entries()) {
      const fields = fieldsOf(line);
      if (fields.length === 0) continue;
      const spot = (field: number) => ({
        line: i + 1,
        column: (fields[field]?.at ?? 0) + 1,
        length: fields[field]?.text.length ?? 1,
      });
      if (fields.length !== WIDTH) {
        found.add('weather-cells', { ...spot(0), length: line.length }, { found: fields.length, expected: WIDTH });
        continue;
      }
      const cell = (field: number) => fields[field]?.text ?? '';
      station ??= cell(FIELD.station);
      if (cell(FIELD.station) !== station) {
        found.add('weather-stations', spot(FIELD.station), { first: station, found: cell(FIELD.station) });
        break;
      }
      const day = parseDay(cell(FIELD.date).replace(/^(\d{4})(\d\d)(\d\d)$/, '$1-$2-$3'));
      if (day === null) {
        found.add('not-a-date', spot(FIELD.date), { found: cell(FIELD.date), expected: 'a day such as 20270403' });
        continue;
      }
      const date = formatDay(day);
      if (day === previous) found.add('weather-twice', spot(FIELD.date), { date });
      else if (previous !== null && day < previous)
        found.add('weather-order', spot(FIELD.date), { date, before: formatDay(previous) });
      previous = day;
      const values: Record<Name, number> = { tmin: Number.NaN, tmax: Number.NaN, precip: Number.NaN };
      for (const name of ['tmin', 'tmax', 'precip'] as const) {
        const number = numberIn(cell(FIELD[name]));
        if (number === null)
          found.add('weather-value', spot(FIELD[name]), { found: cell(FIELD[name]), expected: 'a number' });
        else if (number === -9999) continue;
        else if (impossible(name, number))
          found.add('weather-range', spot(FIELD[name]), { date, found: `${name} ${number}` });
        else values[name] = number;
      }
      // Two times of observation on one day; which extreme is wrong cannot be told.
      if (values.tmin > values.tmax) values.tmin = values.tmax = Number.NaN;
      days.push({ day, line: spot(FIELD.date).line, values });
    }
    if (found.problems.length > 0) return { problems: found.problems };
    if (days.length === 0) return { problems: [problem('weather-none', { found: 'no line' }, { file })] };
    return { value: seriesFrom(days, file), problems: [] };
  },
};
