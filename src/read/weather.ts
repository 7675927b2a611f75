import { LIMIT, tooLarge } from './validate.ts';
import type { FileUnits, ReadWeather } from './weather/format.ts';
import { FORMATS } from './weather/formats.ts';

/**
 * Reads daily weather from a file of any format that is known; which one is told by its content.
 * Tidy CSV (`date,tmin,tmax` and optionally `precip`, units by suffix `_c`, `_f`, `_mm`, `_in`), GHCN-Daily `.dly`, NOAA
 * daily-summaries CSV, USCRN daily01.
 *
 * @param units What figures without a unit of their own are in; undefined where the lawn says nothing.
 * @returns The series [°C, mm], NaN where a value is missing; problems with line and column.
 * @example readWeather('date,tmin_c,tmax_c\n2027-01-01,-3,4\n', 'w.csv', undefined).value?.tmin[0] //=> -3
 */
export function readWeather(text: string, name: string, units?: FileUnits): ReadWeather {
  if (text.length > MOST_KEPT_LENGTH) return parseWeather(text, name, units);
  const key = `${units} ${name}\n${text}`;
  const known = kept.get(key) ?? parseWeather(text, name, units);
  if (kept.size >= MOST_KEPT) kept.clear();
  kept.set(key, known);
  return known;
}

/** A command that plans more than once, or for several lawns, asks for the same few files each time. */
const kept = new Map<string, ReadWeather>();
const MOST_KEPT = 8;
const MOST_KEPT_LENGTH = 2_000_000;

function parseWeather(text: string, name: string, units: FileUnits | undefined): ReadWeather {
  const large = tooLarge(text, name, LIMIT.weather);
  if (large) return { problems: [large] };
  const lines = text
    .replace(/^\uFEFF/, '')
    .replace(/\r\n?/g, '\n')
    .trimEnd();
  const format = FORMATS.find(({ detect }) => detect(lines));
  return format ? format.parse(lines, name, units) : { problems: [] };
}
