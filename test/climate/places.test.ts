import { describe, expect, test } from 'vitest';
import { REFERENCE_PLACES } from '../../src/climate/places/all.ts';
import { placesOf } from '../../src/climate/places/table.ts';

const american = REFERENCE_PLACES.filter(({ region }) => /^[A-Z]{2}$/.test(region));
const elsewhere = REFERENCE_PLACES.filter((place) => !american.includes(place));
const byName = REFERENCE_PLACES.map((place) => [place.id, place] as const);

describe('Reference places', () => {
  test('at least ten U.S. places are measured and at least 50 more are there', () => {
    expect(american.filter(({ origin }) => origin === 'measured').length).toBeGreaterThanOrEqual(10);
    expect(american.filter(({ origin }) => origin !== 'measured').length).toBeGreaterThanOrEqual(50);
  });

  test('at least 12 places lie elsewhere, at least 8 of them south of the equator', () => {
    expect(elsewhere.length).toBeGreaterThanOrEqual(12);
    expect(elsewhere.filter(({ latitude }) => latitude < 0).length).toBeGreaterThanOrEqual(8);
  });

  test('nothing outside the measured rows is called measured', () => {
    const called = REFERENCE_PLACES.filter(({ origin, precipOrigin }) => [origin, precipOrigin].includes('measured'));
    for (const { source } of called) expect(source).toMatch(/NCEI|NOAA/);
  });

  test('ids are unique and made of small letters and hyphens', () => {
    const ids = REFERENCE_PLACES.map(({ id }) => id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const id of ids) expect(id).toMatch(/^[a-z]+(-[a-z]+)*$/);
  });

  test.each(byName)('%s: seasons, order and ranges', (_, { latitude, longitude, elevationM, normals, ...place }) => {
    const { tmin, tmax, precip } = normals;
    const mid = (m: number) => ((tmin[m] as number) + (tmax[m] as number)) / 2;
    expect(Math.sign(mid(6) - mid(0))).toBe(Math.sign(latitude));
    tmin.forEach((low, m) => {
      expect((tmax[m] as number) - low).toBeGreaterThan(3);
      expect((tmax[m] as number) - low).toBeLessThan(22);
      expect(low).toBeGreaterThan(-25);
      expect(tmax[m]).toBeLessThan(43);
      expect(Math.abs(mid(m) - mid((m + 1) % 12))).toBeLessThan(12);
    });
    for (const rain of precip) expect(rain).toBeGreaterThanOrEqual(0);
    for (const rain of precip) expect(rain).toBeLessThan(450);
    expect(Math.abs(latitude)).toBeLessThan(66);
    expect(Math.abs(longitude)).toBeLessThanOrEqual(180);
    expect(elevationM).toBeGreaterThan(-10);
    expect(elevationM).toBeLessThan(2500);
    expect(place.source.length * place.period.length * place.name.length).toBeGreaterThan(0);
  });

  test.each(byName)('%s: variability lies within what is measured on Earth', (_, { normals }) => {
    for (const sd of normals.sdDaily) expect(sd).toBeGreaterThan(1.5);
    for (const sd of normals.sdDaily) expect(sd).toBeLessThan(8);
    normals.sdMonthly.forEach((sd, m) => {
      expect(sd).toBeLessThan(normals.sdDaily[m] as number);
    });
    for (const share of normals.wetShare) expect(share).toBeGreaterThanOrEqual(0);
    for (const share of normals.wetShare) expect(share).toBeLessThan(0.85);
  });

  test('a row that is not whole is refused', () => {
    expect(() => placesOf('a | A | NY | - | 1 2 3 | 1 2 | 3 4 | 5 6', null)).toThrow(RangeError);
  });
});

describe('Variability from monthly means', () => {
  const of = (id: string) => REFERENCE_PLACES.find((place) => place.id === id)?.normals;
  /** Standard deviation of the mid-range in January and July [°C], and mean wet-day share: the four stations, 1991-2020. */
  test.each([
    ['milwaukee-wi', 6.15, 3.4, 0.34],
    ['philadelphia-pa', 5.37, 2.69, 0.33],
    ['seattle-wa', 3.31, 2.71, 0.43],
    ['merced-ca', 2.74, 2.58, 0.16],
  ])('%s: within 0.7 °C and 0.08 of the measured', (id, january, july, wet) => {
    const normals = of(id);
    expect(Math.abs((normals?.sdDaily[0] as number) - january)).toBeLessThan(0.7);
    expect(Math.abs((normals?.sdDaily[6] as number) - july)).toBeLessThan(0.7);
    expect(Math.abs((normals?.wetShare.reduce((sum, share) => sum + share, 0) as number) / 12 - wet)).toBeLessThan(
      0.08,
    );
  });
});
