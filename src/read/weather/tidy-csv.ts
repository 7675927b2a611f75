import Papa from 'papaparse';
import { type Day, formatDay, parseDay } from '../../base/day.ts';
import { type Place, problem } from '../../base/problem.ts';
import { Collector, cellSpot, impossible, numberIn, type Spot } from './collector.ts';
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

/** How a column turns into °C or mm. */
interface Column {
  readonly name: Name;
  readonly index: number;
  readonly unit: FileUnit;
}

/**
 * Tidy CSV: a first line with `date,tmin,tmax` and optionally `precip`, columns in any order, units by suffix (`_c`, `_f`,
 * `_mm`, `_in`) or by the lawn's `weather.units`; other columns are passed over. It is also what a text of no known format
 * is read as, so that its problems say what was expected.
 */
export const tidyCsv: WeatherFormat = {
  name: 'tidy CSV',
  detect: () => true,
  parse(text, file, units) {
    const { data, meta } = Papa.parse<string[]>(text, { newline: '\n', delimitersToGuess: [',', ';', '\t'] });
    const [header = [], ...lines] = data;
    const written = text.split('\n');
    const spotIn = (row: number) => (cell: number) => cellSpot(written[row] ?? '', meta.delimiter, row + 1, cell);
    const columns = columnsOf(header, file, units);
    if ('problem' in columns) return { problems: [columns.problem] };
    if (lines.length === 0)
      return { problems: [problem('weather-none', { found: 'no row' }, { file, line: 1, column: 1, length: 1 })] };

    const found = new Collector(file);
    const days: Reading[] = [];
    let previous: Day | null = null;
    for (const [i, cells] of lines.entries()) {
      const spot = spotIn(i + 1);
      if (cells.length !== header.length) {
        found.add('weather-cells', spot(0), { found: cells.length, expected: header.length });
        continue;
      }
      const date = (cells[columns.date] ?? '').trim();
      const day = parseDay(date);
      if (day === null) {
        found.add('not-a-date', spot(columns.date), { found: date, expected: 'a day such as 2027-04-03' });
        continue;
      }
      if (day === previous) found.add('weather-twice', spot(columns.date), { date });
      else if (previous !== null && day < previous)
        found.add('weather-order', spot(columns.date), { date, before: formatDay(previous) });
      previous = day;
      days.push({ day, line: spot(0).line, values: valuesOf(cells, spot, date, columns.signals, found) });
    }
    if (found.problems.length > 0) return { problems: found.problems };
    const series = seriesFrom(days, file);
    const [first] = columns.signals;
    const suspect = suspectUnits(series, first?.unit === 'f' ? '°F' : '°C', found.place(spotIn(0)(first?.index ?? 0)));
    return suspect ? { problems: [suspect] } : { value: series, problems: [] };
  },
};

/** Which column is what, or why that cannot be told. */
function columnsOf(header: readonly string[], file: string, units: FileUnits | undefined) {
  const first: Place = { file, line: 1, column: 1, length: Math.max(1, header.join(',').length) };
  const names = header.map((cell) => cell.trim().toLowerCase());
  const signals: Column[] = [];
  const missing: string[] = [];
  for (const name of ['tmin', 'tmax', 'precip'] as const) {
    const allowed = name === 'precip' ? (['mm', 'in'] as const) : (['c', 'f'] as const);
    const index = names.findIndex((cell) => cell === name || allowed.some((unit) => cell === `${name}_${unit}`));
    if (index < 0) {
      if (name !== 'precip') missing.push(name);
      continue;
    }
    const suffix = allowed.find((unit) => names[index] === `${name}_${unit}`);
    if (!suffix && !units) return { problem: problem('weather-units', { found: names[index] ?? '' }, first) };
    signals.push({ name, index, unit: suffix ?? allowed[units === 'us' ? 1 : 0] });
  }
  const date = names.indexOf('date');
  if (date < 0) missing.unshift('date');
  if (missing.length > 0)
    return {
      problem: problem(
        'weather-header',
        { missing: missing.join(', '), found: names.join(', ').slice(0, 80) || 'nothing' },
        first,
      ),
    };
  return { date, signals };
}

function valuesOf(
  cells: readonly string[],
  spot: (cell: number) => Spot,
  date: string,
  columns: readonly Column[],
  found: Collector,
) {
  const values = { tmin: Number.NaN, tmax: Number.NaN, precip: Number.NaN };
  for (const { name, index, unit } of columns) {
    const cell = (cells[index] ?? '').trim();
    if (cell === '') continue;
    const written = numberIn(cell);
    if (written === null) found.add('weather-value', spot(index), { found: cell, expected: 'a number' });
    else if (impossible(name, toSi[unit](written)))
      found.add('weather-range', spot(index), { date, found: `${name} ${cell}` });
    else values[name] = toSi[unit](written);
  }
  if (values.tmin > values.tmax) {
    const cell = (name: Name) => cells[columns.find((column) => column.name === name)?.index ?? 0] ?? '';
    found.add('weather-crossed', spot(columns[0]?.index ?? 0), { date, tmin: cell('tmin'), tmax: cell('tmax') });
  }
  return values;
}
