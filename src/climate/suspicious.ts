import { type Day, formatDay } from '../base/day.ts';
import { type Place, type Problem, problem } from '../base/problem.ts';
import { at } from '../base/series.ts';
import { signal, type WeatherSeries, weatherEnd } from '../model/weather.ts';

/** Both extremes the same for so many days: a stuck sensor or a filled-in column. Common practice. */
const STUCK_DAYS = 7;
/** A change of the mid-range from one day to the next that no weather makes [°C]. Common practice. */
const JUMP = 30;
/** A stretch so far above the usual for so long is in another unit [°C, d]: 70 °F read as °C. Common practice. */
const MIXED = { above: 22, days: 10 } as const;
/** The most of one kind that are told. */
const MOST = 5;

/**
 * What looks wrong in observed weather: stuck values, jumps, stretches in another unit. The values stay as they are; a
 * person decides.
 *
 * @param usual Usual mid-range of a day [°C]. @param placeOf Where a day stands in its file.
 */
export function suspicious(
  weather: WeatherSeries,
  usual: (day: Day) => number,
  placeOf: (day: Day) => Place | { readonly file: string },
): Problem[] {
  const [tmin, tmax] = [signal(weather, 'tmin'), signal(weather, 'tmax')];
  const middle = (day: Day) => (at(tmin, day) + at(tmax, day)) / 2;
  const same = (day: Day) => at(tmin, day) === at(tmin, day - 1) && at(tmax, day) === at(tmax, day - 1);
  const mixed = (day: Day) => middle(day) - usual(day) > MIXED.above;
  const problems: Problem[] = [];
  for (let day = weather.start + 1; day < weatherEnd(weather); day++) {
    const change = middle(day) - middle(day - 1);
    if (!(Math.abs(change) > JUMP)) continue; // NaN beside a gap is no jump
    problems.push(
      problem(
        'weather-jump',
        { date: formatDay(day), change: `${change > 0 ? '+' : ''}${change.toFixed(1)} °C` },
        placeOf(day),
      ),
    );
  }
  const told = problems.slice(0, MOST);
  // A run of days that repeat the day before is one day longer than it looks.
  for (const { from, days } of runs(weather, same, STUCK_DAYS - 1).slice(0, MOST)) {
    told.push(problem('weather-stuck', { from: formatDay(from - 1), days: days + 1 }, placeOf(from - 1)));
  }
  for (const { from, days } of runs(weather, mixed, MIXED.days).slice(0, MOST)) {
    told.push(problem('weather-unit-mix', { from: formatDay(from), days }, placeOf(from)));
  }
  return told;
}

/** Runs of at least so many days that all meet a condition. */
function runs(weather: WeatherSeries, meets: (day: Day) => boolean, least: number): { from: Day; days: number }[] {
  const found: { from: Day; days: number }[] = [];
  let from = weather.start;
  for (let day = weather.start; day <= weatherEnd(weather); day++) {
    if (day < weatherEnd(weather) && meets(day)) continue;
    if (day - from >= least) found.push({ from, days: day - from });
    from = day + 1;
  }
  return found;
}
