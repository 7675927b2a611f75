import Papa from 'papaparse';
import { type Day, formatDay, parseDay, partsOf } from '../base/day.ts';
import { type Place, type Problem, problem } from '../base/problem.ts';
import type { WeatherSeries } from '../model/weather.ts';
import { LIMIT, tooLarge } from './validate.ts';

/** How a column turns into °C or mm. */
interface Column {
  readonly name: 'tmin' | 'tmax' | 'precip';
  readonly index: number;
  readonly unit: 'c' | 'f' | 'mm' | 'in';
}

const toSi: Record<Column['unit'], (value: number) => number> = {
  c: (value) => value,
  f: (value) => (value - 32) / 1.8,
  mm: (value) => value,
  in: (value) => value * 25.4,
};

/** The most problems of one kind that are listed; a file in disorder would otherwise print a line a day. */
const MOST = 10;

/** Lowest and highest air temperature ever measured outdoors [°C]: Vostok 1983, Furnace Creek 1913 (WMO archive). */
const EXTREMES = { low: -89.2, high: 56.7 } as const;
/** The hottest month ever measured had a mean of about 42 °C; above this a file is in °F. */
const HOTTEST_MONTH = 45;
/** Where lawns grow, the warmest month has more than this; below it a file is in °C. */
const COLDEST_SUMMER = 5;

/**
 * Reads daily weather from tidy CSV: a first line with `date,tmin,tmax` and optionally `precip`, columns in any order,
 * units by suffix (`_c`, `_f`, `_mm`, `_in`) or by the lawn's `weather.units`; other columns are passed over.
 *
 * @param units What columns without a suffix are in; undefined where the lawn says nothing.
 * @returns The series [°C, mm], NaN where a cell is empty or a day missing; problems with line and column.
 * @example readWeather('date,tmin_c,tmax_c\n2027-01-01,-3,4\n', 'w.csv', undefined).value?.tmin[0] //=> -3
 */
export function readWeather(
  text: string,
  name: string,
  units?: 'metric' | 'us',
): { readonly value?: WeatherSeries; readonly problems: readonly Problem[] } {
  const large = tooLarge(text, name, LIMIT.weather);
  if (large) return { problems: [large] };
  const lines = text
    .replace(/^\uFEFF/, '')
    .replace(/\r\n?/g, '\n')
    .trimEnd();
  const { data: rows, meta } = Papa.parse<string[]>(lines, { newline: '\n', delimitersToGuess: [',', ';', '\t'] });
  const [header = [], ...records] = rows;
  const columns = columnsOf(header, name, units);
  if ('problem' in columns) return { problems: [columns.problem] };
  if (records.length === 0)
    return { problems: [problem('weather-none', { found: 'no row' }, { file: name, line: 1, column: 1, length: 1 })] };

  const found = new Collector(name, lines, meta.delimiter);
  const days: { day: Day; line: number; values: Record<Column['name'], number> }[] = [];
  let previous: Day | null = null;
  for (const [i, cells] of records.entries()) {
    const row = i + 1;
    if (cells.length !== header.length) {
      found.add('weather-cells', row, 0, { found: cells.length, expected: header.length });
      continue;
    }
    const written = (cells[columns.date] ?? '').trim();
    const day = parseDay(written);
    if (day === null) {
      found.add('not-a-date', row, columns.date, { found: written, expected: 'a day such as 2027-04-03' });
      continue;
    }
    if (day === previous) found.add('weather-twice', row, columns.date, { date: written });
    else if (previous !== null && day < previous)
      found.add('weather-order', row, columns.date, { date: written, before: formatDay(previous) });
    previous = day;
    days.push({ day, line: row + 1, values: valuesOf(cells, row, written, columns.signals, found) });
  }
  if (found.problems.length > 0) return { problems: found.problems };
  const series = seriesFrom(days, name);
  const suspect = suspectUnits(series, columns.signals, found);
  return suspect ? { problems: [suspect] } : { value: series, problems: [] };
}

/** Which column is what, or why that cannot be told. */
function columnsOf(header: readonly string[], file: string, units: 'metric' | 'us' | undefined) {
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

function valuesOf(cells: readonly string[], row: number, date: string, columns: readonly Column[], found: Collector) {
  const values = { tmin: Number.NaN, tmax: Number.NaN, precip: Number.NaN };
  for (const { name, index, unit } of columns) {
    const cell = (cells[index] ?? '').trim();
    if (cell === '') continue;
    const value = toSi[unit](Number(cell));
    if (!/^[+-]?(\d+\.?\d*|\.\d+)(e[+-]?\d+)?$/i.test(cell))
      found.add('weather-value', row, index, { found: cell, expected: 'a number' });
    else if (name === 'precip' ? value < 0 : value < EXTREMES.low || value > 2 * EXTREMES.high) {
      found.add('weather-range', row, index, { date, found: `${name} ${cell}` });
    } else values[name] = value;
  }
  if (values.tmin > values.tmax) {
    const cell = (name: Column['name']) => cells[columns.find((column) => column.name === name)?.index ?? 0] ?? '';
    found.add('weather-crossed', row, columns[0]?.index ?? 0, { date, tmin: cell('tmin'), tmax: cell('tmax') });
  }
  return values;
}

function seriesFrom(
  days: readonly { day: Day; line: number; values: Record<Column['name'], number> }[],
  source: string,
): WeatherSeries {
  const start = days[0]?.day ?? 0;
  const length = (days.at(-1)?.day ?? -1) - start + 1;
  const column = () => new Float64Array(length).fill(Number.NaN);
  const series = { source, start, tmin: column(), tmax: column(), precip: column(), lines: new Int32Array(length) };
  for (const { day, line, values } of days) {
    series.lines[day - start] = line;
    for (const name of ['tmin', 'tmax', 'precip'] as const) series[name][day - start] = values[name];
  }
  return series;
}

/** A warmest month too hot for °C, or in a whole year too cold for °F: the other scale is meant. */
function suspectUnits(
  { start, tmin, tmax }: WeatherSeries,
  columns: readonly Column[],
  found: Collector,
): Problem | null {
  const months = new Map<string, { sum: number; count: number; row: number }>();
  for (const [i, low] of tmin.entries()) {
    const mean = (low + (tmax[i] as number)) / 2;
    if (Number.isNaN(mean)) continue;
    const { year, month } = partsOf(start + i);
    const key = `${year}-${month}`;
    const { sum, count } = months.get(key) ?? { sum: 0, count: 0 };
    months.set(key, { sum: sum + mean, count: count + 1, row: i });
  }
  const highest = (values: Iterable<number>): number => {
    let most = Number.NEGATIVE_INFINITY;
    for (const value of values) if (value > most) most = value;
    return most;
  };
  const full = [...months.values()].filter(({ count }) => count >= 5);
  const hottest = highest(full.map(({ sum, count }) => sum / count));
  const single = highest(tmax);
  const tooCold = columns[0]?.unit === 'f' && full.length >= 12 && hottest < COLDEST_SUMMER;
  if (hottest <= HOTTEST_MONTH && single <= EXTREMES.high + 1 && !tooCold) return null;
  const [unit, other] = columns[0]?.unit === 'f' ? ['°F', '°C'] : ['°C', '°F'];
  const mean = Number.isFinite(hottest) ? hottest : single;
  return problem(
    'weather-unit-suspect',
    { column: 'temperature', mean: `${Math.round(mean)} °C`, unit, other },
    found.place(0, columns[0]?.index ?? 0),
  );
}

/** Problems of a file of rows; of each kind the first few are kept. */
class Collector {
  readonly problems: Problem[] = [];
  readonly #file: string;
  readonly #text: string;
  #lines: readonly string[] | undefined;
  readonly #delimiter: string;
  readonly #counts = new Map<string, number>();
  constructor(file: string, text: string, delimiter: string) {
    this.#file = file;
    this.#text = text;
    this.#delimiter = delimiter;
  }
  place(row: number, cell: number): Place {
    // As it is written, quotes and all; no cell that is read here holds a delimiter.
    this.#lines ??= this.#text.split('\n');
    const cells = (this.#lines[row] ?? '').split(this.#delimiter);
    const column = cells.slice(0, cell).reduce((sum, text) => sum + text.length + 1, 1);
    return { file: this.#file, line: row + 1, column, length: Math.max(1, cells[cell]?.length ?? 1) };
  }
  add(...[code, row, cell, args]: CellProblem): void {
    const count = (this.#counts.get(code) ?? 0) + 1;
    this.#counts.set(code, count);
    if (count <= MOST) this.problems.push(problem(code, args as never, this.place(row, cell)));
  }
}

type CellCode =
  | 'weather-cells'
  | 'not-a-date'
  | 'weather-twice'
  | 'weather-order'
  | 'weather-value'
  | 'weather-range'
  | 'weather-crossed';
type CellProblem = { [C in CellCode]: [C, number, number, Parameters<typeof problem<C>>[1]] }[CellCode];
