import { partsOf } from '../../base/day.ts';
import { type Place, type Problem, problem } from '../../base/problem.ts';
import type { WeatherSeries } from '../../model/weather.ts';
import { EXTREMES } from './collector.ts';

/** The hottest month ever measured had a mean of about 42 °C; above this a file is in °F. */
const HOTTEST_MONTH = 45;
/** Where lawns grow, the warmest month has more than this; below it a file is in °C. */
const COLDEST_SUMMER = 5;

/**
 * A warmest month too hot for °C, or in a whole year too cold for °F: the other scale is meant.
 *
 * @param unit The unit that the file was read in.
 */
export function suspectUnits({ start, tmin, tmax }: WeatherSeries, unit: '°C' | '°F', place: Place): Problem | null {
  const months = new Map<number, { sum: number; count: number }>();
  let single = Number.NEGATIVE_INFINITY;
  for (const [i, low] of tmin.entries()) {
    const high = tmax[i] as number;
    if (high > single) single = high;
    const mean = (low + high) / 2;
    if (Number.isNaN(mean)) continue;
    const { year, month } = partsOf(start + i);
    const { sum, count } = months.get(year * 12 + month) ?? { sum: 0, count: 0 };
    months.set(year * 12 + month, { sum: sum + mean, count: count + 1 });
  }
  let [hottest, full] = [Number.NEGATIVE_INFINITY, 0];
  for (const { sum, count } of months.values()) {
    if (count < 5) continue;
    hottest = Math.max(hottest, sum / count);
    full++;
  }
  const tooCold = unit === '°F' && full >= 12 && hottest < COLDEST_SUMMER;
  if (hottest <= HOTTEST_MONTH && single <= EXTREMES.high + 1 && !tooCold) return null;
  const mean = `${Math.round(Number.isFinite(hottest) ? hottest : single)} °C`;
  const other = unit === '°F' ? '°C' : '°F';
  return problem('weather-unit-suspect', { column: 'temperature', mean, unit, other }, place);
}
