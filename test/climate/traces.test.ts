import { describe, expect, test } from 'vitest';
import { type Day, parseDay } from '../../src/base/day.ts';
import { at } from '../../src/base/series.ts';
import { type ClimateInput, climateOf } from '../../src/climate/traces.ts';
import { readWeather } from '../../src/read/weather.ts';
import { inventedWeather } from '../invented-weather.ts';

const day = (text: string): Day => parseDay(text) as Day;

function climate(text: string | null, asOf: string, more: Partial<ClimateInput> = {}) {
  const observed = text === null ? null : (readWeather(text, 'w.csv').value ?? null);
  return climateOf({
    observed,
    history: [],
    forecast: null,
    ofFiles: text !== null,
    site: { latitude: 39, elevationM: 270, irrigated: false },
    position: { longitude: -84, elevationM: 270 },
    asOf: day(asOf),
    from: day(`${asOf.slice(0, 4)}-01-01`),
    to: day(`${asOf.slice(0, 4)}-12-31`),
    ...more,
  });
}
const codes = ({ problems }: ReturnType<typeof climate>) => problems.map(({ code }) => code);
const made = (found: ReturnType<typeof climate>) => {
  if (!found.climate) throw new Error(JSON.stringify(found.problems));
  return found.climate;
};

describe('traces', () => {
  const text = inventedWeather('2000-01-01', '2028-03-10');

  test('share what was observed and part after it', () => {
    const { traces } = made(climate(text, '2027-04-02'));
    const on = (date: string) => new Set(traces.map(({ tmax }) => at(tmax, day(date))));
    expect([on('2027-04-02').size, on('2027-04-20').size > 20]).toEqual([1, true]);
  });
  test('have every day of a leap year, 29 February too', () => {
    const { traces, past } = made(climate(text, '2028-02-20'));
    for (const trace of [...traces, ...past(day('2028-01-01'), day('2028-12-31'))]) {
      for (let d = day('2028-01-01'); d <= day('2028-12-31'); d++) expect(at(trace.tmin, d)).not.toBeNaN();
      expect(at(trace.soil(0.05), day('2028-02-29'))).not.toBeNaN();
    }
  });
  test('carry one possible error of the soil model each; what is read off for today has none', () => {
    const { traces, modelled } = made(climate(text, '2027-04-02'));
    const soils = traces.map((trace) => at(trace.soil(0.05), day('2027-04-01')));
    const mean = soils.reduce((sum, one) => sum + one, 0) / soils.length;
    expect(new Set(soils).size).toBe(traces.length);
    // The error has a standard deviation of 1.6 °C; the mean of some 25 paths one of 0.32.
    expect(Math.abs(mean - at(modelled.soil(0.05), day('2027-04-01')))).toBeLessThan(1.2);
  });
  test('begin as warm as the last days were, go their own way within days, and keep a quarter of the month', () => {
    const warm = inventedWeather('2000-01-01', '2027-04-02', (d) => (d > day('2027-03-03') ? 4 : 0));
    const [a, b] = [made(climate(text, '2027-04-02')), made(climate(warm, '2027-04-02'))];
    const ahead = (date: string) => at(b.modelled.tmax, day(date)) - at(a.modelled.tmax, day(date));
    expect([ahead('2027-04-03').toFixed(1), ahead('2027-04-22').toFixed(1)]).toEqual(['3.0', '0.6']);
    expect(Math.abs(ahead('2027-09-01'))).toBeLessThan(0.05);
  });
  test('nothing after the as-of day is looked at', () => {
    const [whole, cut] = [
      made(climate(text, '2027-04-02')),
      made(climate(inventedWeather('2000-01-01', '2027-04-02'), '2027-04-02')),
    ];
    expect(whole.traces.map(({ tmin }) => [...tmin.values])).toEqual(cut.traces.map(({ tmin }) => [...tmin.values]));
  });
  test("where each day's weather comes from is known", () => {
    const { provenance } = made(climate(text, '2027-04-02'));
    expect(['2027-04-02', '2027-04-03'].map((date) => provenance(day(date)))).toEqual(['observed', 'past-year']);
  });
});

describe('without enough weather', () => {
  test('thirty years are made after the nearest reference climate, which is named', () => {
    const found = climate(null, '2027-04-02');
    expect(codes(found)).toEqual(['climate-near']);
    expect(made(found)).toMatchObject({ observedThrough: null });
    expect(made(found).traces).toHaveLength(30);
    expect(made(found).provenance(day('2027-06-01'))).toBe('generated');
  });
  test('the same years are made each time', () => {
    const soil = () => [...made(climate(null, '2027-04-02')).modelled.soil(0.05).values];
    expect(soil()).toEqual(soil());
  });
  test('two years of a file stand before made-up ones', () => {
    const found = made(climate(inventedWeather('2025-01-01', '2027-04-01'), '2027-04-02'));
    expect(found.traces.length).toBe(30);
    expect(['2027-03-01', '2027-06-01'].map((date) => found.provenance(day(date)))).toEqual(['observed', 'generated']);
  });
  test('far from every reference climate there is no plan, and it is said', () => {
    const found = climate(null, '2027-04-02', {
      site: { latitude: 0, elevationM: 0, irrigated: false },
      position: { longitude: -30, elevationM: 0 },
    });
    expect([found.climate, codes(found)]).toEqual([null, ['climate-too-far']]);
  });
  test('in the south summer comes at the turn of the year', () => {
    const found = climate(null, '2027-04-02', {
      site: { latitude: -37.8, elevationM: 30, irrigated: false },
      position: { longitude: 145, elevationM: 30 },
    });
    const soil = made(found).modelled.soil(0.05);
    expect(at(soil, day('2027-01-20'))).toBeGreaterThan(at(soil, day('2027-07-20')) + 5);
  });
});

test('snow melts where rain is no longer known', () => {
  // A cold winter with snow on the ground; from 1 February on the file holds no precipitation.
  const whole = inventedWeather('2000-01-01', '2027-05-10', (d) =>
    d > day('2026-12-01') && d < day('2027-02-20') ? -12 : 0,
  );
  const dry = whole.replace(/^(2027-(?:0[2-9])[^\n]*),[^,\n]*$/gm, '$1,');
  const soil = (text: string) => at(made(climate(text, '2027-05-10')).modelled.soil(0.05), day('2027-05-10'));
  expect(Math.abs(soil(dry) - soil(whole))).toBeLessThan(1.5);
});

test('a reading on a day without observed weather is said to be unused', () => {
  const readings = [{ day: day('2027-03-20'), depth: 0.05, value: 9 }];
  expect(codes(climate(null, '2027-04-02', { readings }))).toContain('reading-unused');
});
