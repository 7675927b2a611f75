import { type Day, formatDay, yearOf } from '../base/day.ts';
import { type Place, type Problem, problem } from '../base/problem.ts';
import { type Signal, type WeatherSeries, weatherEnd } from '../model/weather.ts';

/** Several series as one; where two hold the same day, the later one in the list wins. Null where there is nothing. */
export function merge(all: readonly WeatherSeries[]): WeatherSeries | null {
  const present = all.filter((series) => series.tmin.length > 0);
  if (present.length === 0) return null;
  const start = Math.min(...present.map((series) => series.start));
  const length = Math.max(...present.map(weatherEnd)) - start;
  const column = (name: Signal) => {
    const values = new Float64Array(length).fill(Number.NaN);
    for (const series of present) {
      for (const [i, value] of series[name].entries()) {
        // Both extremes of a day come from one series: halves of two could cross.
        const whole = name === 'precip' || known(series, series.start + i);
        if (whole && !Number.isNaN(value)) values[series.start + i - start] = value;
      }
    }
    return values;
  };
  const sources = [...new Set(present.map(({ source }) => source))];
  return { source: sources.join(', '), start, tmin: column('tmin'), tmax: column('tmax'), precip: column('precip') };
}

/** Where a day stands: its line in the last of the series that holds it, else the file as a whole. */
export function placeOfDay(all: readonly WeatherSeries[], day: Day): Place | { readonly file: string } {
  const series = all.findLast((one) => (one.lines?.[day - one.start] ?? 0) > 0);
  const line = series?.lines?.[day - series.start];
  if (!series || !line) return { file: all.at(-1)?.source ?? '' };
  return { file: series.source, line, column: 1, length: 10 };
}

/** Whether both extremes of a day are there. */
export const known = ({ start, tmin, tmax }: WeatherSeries, day: Day): boolean =>
  !Number.isNaN(tmin[day - start] ?? Number.NaN) && !Number.isNaN(tmax[day - start] ?? Number.NaN);

/** The last day with both extremes; null where there is none. */
export function lastKnown(weather: WeatherSeries): Day | null {
  for (let day = weatherEnd(weather) - 1; day >= weather.start; day--) if (known(weather, day)) return day;
  return null;
}

/** Gaps up to this many days are filled between their neighbours. */
const SHORT_GAP = 3;
/** A longer gap than this within a year of the as-of day is an error: no date can rest on it. */
const HOLE = 30;

interface Gap {
  readonly from: Day;
  readonly days: number;
}

/** Runs of days without both extremes between the first and the last known day. */
function gapsOf(weather: WeatherSeries): Gap[] {
  const gaps: Gap[] = [];
  let from: Day | null = null;
  for (let day = weather.start; day < weatherEnd(weather); day++) {
    if (!known(weather, day)) from ??= day;
    else if (from !== null) {
      gaps.push({ from, days: day - from });
      from = null;
    }
  }
  return gaps;
}

/**
 * A record without holes: short gaps are interpolated, longer ones filled by `usual`, each one reported.
 *
 * @param usual Usual extremes of a day [°C]; asked only for days in long gaps.
 * @param asOf Gaps near it are judged more strictly. @param placeOf Where a day stands in its file.
 */
export function filled(
  weather: WeatherSeries,
  usual: (day: Day) => { readonly tmin: number; readonly tmax: number },
  asOf: Day,
  placeOf: (day: Day) => Place | { readonly file: string },
): { readonly weather: WeatherSeries; readonly problems: readonly Problem[]; readonly filledDays: ReadonlySet<Day> } {
  const [tmin, tmax] = [weather.tmin.slice(), weather.tmax.slice()];
  const filledDays = new Set<Day>();
  const gaps: { code: 'weather-hole' | 'weather-gap' | 'weather-gap-short'; from: Day; days: number }[] = [];
  for (const { from, days } of gapsOf(weather)) {
    const code =
      days > HOLE && from + days > asOf - 366 ? 'weather-hole' : days > SHORT_GAP ? 'weather-gap' : 'weather-gap-short';
    gaps.push({ code, from, days });
    for (let day = from; day < from + days; day++) {
      const i = day - weather.start;
      if (days > SHORT_GAP) filledDays.add(day);
      const between = (values: Float64Array) => {
        const [before, after] = [
          values[from - 1 - weather.start] as number,
          values[from + days - weather.start] as number,
        ];
        return before + ((after - before) * (day - from + 1)) / (days + 1);
      };
      const value = days > SHORT_GAP ? usual(day) : { tmin: between(weather.tmin), tmax: between(weather.tmax) };
      tmin[i] = value.tmin;
      tmax[i] = value.tmax;
    }
  }
  return { weather: { ...weather, tmin, tmax }, problems: gapProblems(gaps, placeOf), filledDays };
}

/** The most gaps of one kind that are told one by one, the latest ones; the others are counted. */
const MOST_GAPS = 5;

function gapProblems(
  gaps: readonly { code: 'weather-hole' | 'weather-gap' | 'weather-gap-short'; from: Day; days: number }[],
  placeOf: (day: Day) => Place | { readonly file: string },
): Problem[] {
  return (['weather-hole', 'weather-gap', 'weather-gap-short'] as const).flatMap((code) => {
    const all = gaps.filter((gap) => gap.code === code);
    const told = all.slice(-MOST_GAPS);
    const rest = all.slice(0, -MOST_GAPS);
    const days = rest.reduce((sum, gap) => sum + gap.days, 0);
    return [
      ...(rest.length === 0 ? [] : [problem('weather-gaps-more', { gaps: rest.length, days }, placeOf(-1))]),
      ...told.map(({ from, days: missing }) =>
        problem(code, { from: formatDay(from), days: missing }, placeOf(from + missing)),
      ),
    ];
  });
}

/** The whole years of a record that are known on at least nine days in ten. */
export function wholeYears(weather: WeatherSeries, before: Day): number[] {
  const counts = new Map<number, number>();
  for (let day = weather.start; day < Math.min(weatherEnd(weather), before); day++) {
    if (known(weather, day)) counts.set(yearOf(day), (counts.get(yearOf(day)) ?? 0) + 1);
  }
  return [...counts].filter(([, count]) => count >= 329).map(([year]) => year);
}
