/**
 * Makes `weather.csv`, the weather of the demo lawn. ALL OF IT IS INVENTED, for a humid place on no map, between where
 * the cool and where the warm grasses grow: thirty years of history and then a late, cold spring in 2027. It says
 * nothing about any real place and proves nothing about soilclock.
 *
 * A day's mean is the usual mean of the day, plus a fast and a slow departure (each keeps part of yesterday's), less
 * the cold spell. Rain comes in wet and dry runs, and a wet day has a small range from night to afternoon. Only the
 * four basic operations and the square root are used, so every machine writes the same bytes.
 *
 * Run: node programs/demo/make-weather.ts
 */
import { writeFileSync } from 'node:fs';
import { pathToFileURL } from 'node:url';

const FIRST = '1997-01-01';
const LAST = '2027-04-01';
const SEED = 20271716;

/** Usual mean of each month at its middle, January first [°C]. */
const MONTH_MEAN_C = [1.0, 2.7, 7.4, 13.0, 18.0, 22.8, 25.2, 24.3, 20.5, 14.3, 8.8, 3.6];

/** A fast departure of weather systems and a slow one of whole seasons: share kept overnight, spread [°C]. */
const FAST = { kept: 0.6, winterC: 4.5, summerC: 2.5 };
const SLOW = { kept: 0.97, sdC: 0.9 };

/** Chance of rain after a wet and after a dry day; the middling wet day [mm]; the range from night to day [°C]. */
const RAIN = { afterWet: 0.45, afterDry: 0.26, scaleMm: 4.5 };
const RANGE_C = { dry: 11.5, wet: 7, sd: 2, least: 2 };

/** The late spring: how much colder, from and to when, and the days of easing in and out. */
const COLD = { from: '2027-02-05', to: '2027-04-01', byC: 3.5, easing: 7 };

const DAY_MS = 86_400_000;
const dayOf = (date: string): number => Date.parse(`${date}T00:00:00Z`) / DAY_MS;

/** A 32-bit xorshift generator: the same numbers from 0 up to 1 for the same seed, which may not be 0. */
function uniformFrom(seed: number): () => number {
  let state = seed;
  return () => {
    state ^= state << 13;
    state ^= state >>> 17;
    state ^= state << 5;
    return (state >>> 0) / 2 ** 32;
  };
}

/** Nearly normal with mean 0 and spread 1: twelve uniform numbers less six, which needs no logarithm. */
function normalFrom(uniform: () => number): number {
  let sum = -6;
  for (let i = 0; i < 12; i++) sum += uniform();
  return sum;
}

/** The usual mean of a day [°C], straight between the middles of the months. */
function usualC(day: number): number {
  const date = new Date(day * DAY_MS);
  const months = date.getUTCMonth() + (date.getUTCDate() - 15) / 30.4 + 12;
  const before = Math.floor(months);
  const at = (month: number): number => MONTH_MEAN_C[month % 12] ?? Number.NaN;
  return at(before) + (months - before) * (at(before + 1) - at(before));
}

/** How much of the cold spell a day has, 0 to 1. */
function coldShare(day: number): number {
  const edge = Math.min(day - dayOf(COLD.from), dayOf(COLD.to) - day) + 1;
  return Math.min(Math.max(edge / COLD.easing, 0), 1);
}

/** The departure of the next day: keeps part of yesterday's and adds news, so that the spread stays what it is. */
const next = (departure: number, kept: number, news: number): number =>
  kept * departure + Math.sqrt(1 - kept * kept) * news;

const tenth = (value: number): string => (Math.round(value * 10) / 10).toFixed(1);

/**
 * The whole file as text; the same on every call.
 *
 * @returns Lines of `date,tmin_c,tmax_c,precip_mm` under a header, daily from 1997-01-01 to 2027-04-01.
 */
export function demoWeather(): string {
  const uniform = uniformFrom(SEED);
  const lines = ['date,tmin_c,tmax_c,precip_mm'];
  let fast = 0;
  let slow = 0;
  let wet = false;
  for (let day = dayOf(FIRST); day <= dayOf(LAST); day++) {
    fast = next(fast, FAST.kept, normalFrom(uniform));
    slow = next(slow, SLOW.kept, normalFrom(uniform));
    wet = uniform() < (wet ? RAIN.afterWet : RAIN.afterDry);
    const share = uniform();
    const rainMm = wet ? Math.max((RAIN.scaleMm * share) / (1.06 - share), 0.1) : 0;
    const usual = usualC(day);
    const summer = (usual - 1) / 24; // 0 in January, 1 in July
    const fastC = FAST.winterC + summer * (FAST.summerC - FAST.winterC);
    const meanC = usual + fast * fastC + slow * SLOW.sdC - COLD.byC * coldShare(day);
    const rangeC = Math.max((wet ? RANGE_C.wet : RANGE_C.dry) + RANGE_C.sd * normalFrom(uniform), RANGE_C.least);
    const date = new Date(day * DAY_MS).toISOString().slice(0, 10);
    lines.push([date, tenth(meanC - rangeC / 2), tenth(meanC + rangeC / 2), tenth(rainMm)].join(','));
  }
  return `${lines.join('\n')}\n`;
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? '').href) {
  writeFileSync(new URL('weather.csv', import.meta.url), demoWeather());
}
