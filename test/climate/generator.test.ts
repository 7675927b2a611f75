/**
 * Generated weather agrees with what it was given. The tolerances are sampling errors: over n years a monthly mean is
 * off by sdMonthly / sqrt(n); 3.5 times that is passed by chance once in 2,000 months.
 */
import { describe, expect, test } from 'vitest';
import { civil, type Day, partsOf } from '../../src/base/day.ts';
import { generate } from '../../src/climate/generator.ts';
import { REFERENCE_PLACES } from '../../src/climate/places/all.ts';
import { smoothYear } from '../../src/climate/smooth-year.ts';
import type { MonthlyNormals } from '../../src/model/normals.ts';

const START = civil(1971, 1, 1);
const normalsOf = (id: string) => REFERENCE_PLACES.find((place) => place.id === id)?.normals as MonthlyNormals;
const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
const spread = (values: readonly number[]) => {
  const middle = mean(values);
  return Math.sqrt(values.reduce((sum, value) => sum + (value - middle) ** 2, 0) / (values.length - 1));
};
const correlation = (pairs: readonly (readonly [number, number])[]) => {
  const [a, b] = [mean(pairs.map(([x]) => x)), mean(pairs.map(([, y]) => y))];
  const cross = mean(pairs.map(([x, y]) => (x - a) * (y - b)));
  return cross / Math.sqrt(mean(pairs.map(([x]) => (x - a) ** 2)) * mean(pairs.map(([, y]) => (y - b) ** 2)));
};

/** What a run holds, month by month. */
function measured(normals: MonthlyNormals, seed: number, years: number) {
  const days = civil(1971 + years, 1, 1) - START;
  const run = generate(normals, seed, START, days);
  const [low, high] = [smoothYear(normals.tmin), smoothYear(normals.tmax)];
  const mid = (i: number) => ((run.tmin[i] as number) + (run.tmax[i] as number)) / 2;
  const anomaly = (i: number) => mid(i) - (low(START + i) + high(START + i)) / 2;
  return Array.from({ length: 12 }, (_, m) => {
    const here = Array.from({ length: days }, (_, i) => i).filter((i) => partsOf(START + i).month === m + 1);
    const ofDays = (values: Float64Array, some = here) => mean(some.map((i) => values[i] as number));
    const byYear = new Map<number, number[]>();
    for (const i of here) {
      const { year } = partsOf(START + i);
      byYear.set(year, [...(byYear.get(year) ?? []), i]);
    }
    const wet = here.filter((i) => (run.precip[i] as number) > 0);
    const dry = here.filter((i) => run.precip[i] === 0);
    return {
      tmin: ofDays(run.tmin),
      tmax: ofDays(run.tmax),
      rain: ofDays(run.precip) * 30.44,
      wetShare: wet.length / here.length,
      sdDaily: Math.sqrt(mean(here.map((i) => anomaly(i) ** 2))),
      sdMonthly: spread([...byYear.values()].map((some) => mean(some.map(anomaly)))),
      lag: correlation(here.filter((i) => i > 0).map((i) => [anomaly(i - 1), anomaly(i)] as const)),
      tmaxWet: ofDays(run.tmax, wet),
      tmaxDry: ofDays(run.tmax, dry),
      rangeWet: ofDays(run.tmax, wet) - ofDays(run.tmin, wet),
      rangeDry: ofDays(run.tmax, dry) - ofDays(run.tmin, dry),
    };
  });
}

const given = (normals: MonthlyNormals, name: keyof MonthlyNormals, m: number) => normals[name][m] as number;

describe.each(['milwaukee-wi', 'seattle-wa', 'phoenix-az', 'miami-fl', 'christchurch-nz'])(
  'Thirty years at %s',
  (id) => {
    const normals = normalsOf(id);
    const months = measured(normals, 20_27, 30);

    test('monthly means of Tmin and Tmax are within 3.5 sampling errors', () => {
      months.forEach(({ tmin, tmax }, m) => {
        const tolerance = 3.5 * (given(normals, 'sdMonthly', m) / Math.sqrt(30) + 0.05);
        expect(Math.abs(tmin - given(normals, 'tmin', m))).toBeLessThan(tolerance);
        expect(Math.abs(tmax - given(normals, 'tmax', m))).toBeLessThan(tolerance);
      });
    });

    test('annual means are within 0.5 °C', () => {
      expect(Math.abs(mean(months.map(({ tmin }) => tmin)) - mean(normals.tmin))).toBeLessThan(0.5);
      expect(Math.abs(mean(months.map(({ tmax }) => tmax)) - mean(normals.tmax))).toBeLessThan(0.5);
    });

    test('daily standard deviations are within 15 %', () => {
      months.forEach(({ sdDaily }, m) => {
        expect(Math.abs(sdDaily / given(normals, 'sdDaily', m) - 1)).toBeLessThan(0.15);
      });
    });

    test('the year has its rain within 10 %', () => {
      const rain = months.reduce((sum, month) => sum + month.rain, 0);
      expect(Math.abs(rain / normals.precip.reduce((sum, value) => sum + value, 0) - 1)).toBeLessThan(0.1);
    });

    test('over the year the wet share is within 0.02 and the autocorrelation within 0.03', () => {
      expect(Math.abs(mean(months.map(({ wetShare }) => wetShare)) - mean(normals.wetShare))).toBeLessThan(0.02);
      expect(Math.abs(mean(months.map(({ lag }) => lag)) - mean(normals.autocorrelation))).toBeLessThan(0.03);
    });
  },
);

describe.each(['milwaukee-wi', 'seattle-wa', 'merced-ca'])('Four hundred years at %s', (id) => {
  const normals = normalsOf(id);
  const months = measured(normals, 1, 400);

  test('every month agrees: means 0.4 °C, deviations 7 %, rain 12 %, wet share 0.03, autocorrelation 0.04', () => {
    months.forEach((month, m) => {
      expect(Math.abs(month.tmin - given(normals, 'tmin', m))).toBeLessThan(0.4);
      expect(Math.abs(month.tmax - given(normals, 'tmax', m))).toBeLessThan(0.4);
      expect(Math.abs(month.sdDaily / given(normals, 'sdDaily', m) - 1)).toBeLessThan(0.07);
      expect(Math.abs(month.sdMonthly / given(normals, 'sdMonthly', m) - 1)).toBeLessThan(0.15);
      if (given(normals, 'precip', m) > 10) {
        expect(Math.abs(month.rain / given(normals, 'precip', m) - 1)).toBeLessThan(0.12);
      }
      expect(Math.abs(month.wetShare - given(normals, 'wetShare', m))).toBeLessThan(0.03);
      expect(Math.abs(month.lag - given(normals, 'autocorrelation', m))).toBeLessThan(0.04);
    });
  });

  test('wet days have cooler maxima and three quarters of the range', () => {
    for (const { tmaxWet, tmaxDry, rangeWet, rangeDry, wetShare } of months) {
      if (wetShare < 0.1) continue;
      expect(tmaxWet).toBeLessThan(tmaxDry);
      expect(rangeWet / rangeDry).toBeGreaterThan(0.7);
      expect(rangeWet / rangeDry).toBeLessThan(0.8);
    }
  });
});

describe('generate', () => {
  const normals = normalsOf('milwaukee-wi');
  const twelve = (value: number) => new Array<number>(12).fill(value);

  test('months that vary more than the days alone make them do so', () => {
    const months = measured({ ...normals, sdMonthly: twelve(3), sdDaily: twelve(5) }, 3, 300);
    months.forEach(({ sdMonthly, sdDaily, lag }) => {
      expect(Math.abs(sdMonthly / 3 - 1)).toBeLessThan(0.15);
      expect(Math.abs(sdDaily / 5 - 1)).toBeLessThan(0.1);
      expect(Math.abs(lag - 0.72)).toBeLessThan(0.04);
    });
  });

  test('the same seed gives the same days, another seed others', () => {
    expect(generate(normals, 7, START, 400)).toEqual(generate(normals, 7, START, 400));
    expect(generate(normals, 8, START, 400).tmin).not.toEqual(generate(normals, 7, START, 400).tmin);
  });

  test('a longer run begins with the shorter one', () => {
    expect(generate(normals, 7, START, 500).tmax.slice(0, 400)).toEqual(generate(normals, 7, START, 400).tmax);
  });

  test('Tmin stays below Tmax, and nothing is missing', () => {
    const run = generate(normals, 11, START, 40_000);
    run.tmin.forEach((low, i) => {
      expect(low < (run.tmax[i] as number) && (run.precip[i] as number) >= 0).toBe(true);
    });
  });

  test('a wet day has at least 0.25 mm', () => {
    const wet = [...generate(normals, 5, START, 5000).precip].filter((rain) => rain > 0);
    expect(Math.min(...wet)).toBeGreaterThanOrEqual(0.25);
  });

  test('a month without rain has none', () => {
    const run = generate({ ...normals, precip: twelve(0) }, 5, START, 2000);
    expect(Math.max(...run.precip)).toBe(0);
  });

  test('without days it is empty', () => {
    expect(generate(normals, 1, START, 0).tmin.length).toBe(0);
  });
});

describe('smoothYear', () => {
  test('keeps the monthly means within 0.01', () => {
    const { tmin } = normalsOf('milwaukee-wi');
    const course = smoothYear(tmin);
    const sums = tmin.map(() => [] as number[]);
    for (let day: Day = civil(2027, 1, 1); day < civil(2028, 1, 1); day++)
      sums[partsOf(day).month - 1]?.push(course(day));
    tmin.forEach((value, m) => {
      expect(Math.abs(mean(sums[m] as number[]) - value)).toBeLessThan(0.01);
    });
  });

  test('does not jump from one month to the next', () => {
    const course = smoothYear(normalsOf('milwaukee-wi').tmax);
    for (let day: Day = civil(2027, 1, 1); day < civil(2028, 1, 1); day++) {
      expect(Math.abs(course(day + 1) - course(day))).toBeLessThan(0.35);
    }
  });
});
