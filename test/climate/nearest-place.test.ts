import { describe, expect, test } from 'vitest';
import { greatCircleKm, nearestPlace } from '../../src/climate/nearest-place.ts';

const codes = (found: ReturnType<typeof nearestPlace>) => found.problems.map(({ code }) => code);

describe('greatCircleKm', () => {
  test('a degree along a meridian is 111.2 km', () => {
    expect(greatCircleKm(40, -80, 41, -80)).toBeCloseTo(111.195, 3);
  });

  test('it goes the short way across the date line', () => {
    expect(greatCircleKm(0, 179.5, 0, -179.5)).toBeCloseTo(111.195, 3);
  });

  test('half way around is half the circumference', () => {
    expect(greatCircleKm(0, 0, 0, 180)).toBeCloseTo(Math.PI * 6371, 6);
  });
});

describe('nearestPlace', () => {
  test('at a station it is the station itself, unchanged, with a note that names it', () => {
    const found = nearestPlace(42.95, -87.9, 204);
    expect(found.value?.place.id).toBe('milwaukee-wi');
    expect(found.value?.distanceKm).toBe(0);
    expect(found.value?.normals.tmin[0]).toBe(-8.5);
    expect(codes(found)).toEqual(['climate-near']);
    expect(found.problems[0]?.severity).toBe('note');
  });

  test('200 m above it, both extremes are 1.3 °C lower and the rain is the same', () => {
    const found = nearestPlace(42.95, -87.9, 404);
    expect(found.value?.heightDifferenceM).toBe(200);
    expect(found.value?.normals.tmin[0]).toBeCloseTo(-9.8, 6);
    expect(found.value?.normals.tmax[6]).toBeCloseTo(25.89, 6);
    expect(found.value?.normals.precip).toEqual(found.value?.place.normals.precip);
  });

  test('height chooses: 2,000 m up between Phoenix and Flagstaff it is Flagstaff, though Phoenix is nearer', () => {
    expect(nearestPlace(34.2, -111.9, 2000).value?.place.id).toBe('flagstaff-az');
    expect(nearestPlace(34.2, -111.9, null).value?.place.id).toBe('phoenix-az');
  });

  test('without a height nothing is corrected', () => {
    const found = nearestPlace(42.9, -87.9, null);
    expect(found.value?.heightDifferenceM).toBeNull();
    expect(found.value?.normals.tmax).toEqual(found.value?.place.normals.tmax);
  });

  test('beyond 300 m of height it is a warning', () => {
    expect(codes(nearestPlace(39.83, -104.66, 1951))).toEqual(['climate-far']);
    expect(codes(nearestPlace(39.83, -104.66, 1949))).toEqual(['climate-near']);
  });

  test('beyond 150 km it is a warning: western Nebraska', () => {
    const found = nearestPlace(41.1, -102.9, 1300);
    expect(found.value?.distanceKm).toBeGreaterThan(150);
    expect(codes(found)).toEqual(['climate-far']);
  });

  test('beyond 400 km it is an error without a value: the middle of the Pacific', () => {
    const found = nearestPlace(-20, -130, 0);
    expect(found.value).toBeUndefined();
    expect(codes(found)).toEqual(['climate-too-far']);
    expect(found.problems[0]?.severity).toBe('error');
  });

  test('south of the equator the year is the right way round', () => {
    const found = nearestPlace(-37.0, 174.8, 10);
    expect(found.value?.place.id).toBe('auckland-nz');
    expect(found.value?.normals.tmax[0]).toBeGreaterThan(found.value?.normals.tmax[6] as number);
  });

  test('a position that is no number is refused', () => {
    expect(() => nearestPlace(Number.NaN, 0, 0)).toThrow(RangeError);
  });
});
