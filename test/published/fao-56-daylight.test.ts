/**
 * Length of the day. Source: Allen, Pereira, Raes, Smith (1998), FAO Irrigation and Drainage Paper 56, Example 9 (read in the
 * tests of PyETo, commit 15d9e64; 11.66559 in the NCL documentation of daylight_fao56) and the angles of Example 8.
 * By suncalc the day is longer: refraction lifts the sun by 34', and its upper edge counts.
 */
import { describe, expect, test } from 'vitest';
import { civil } from '../../src/base/day.ts';
import { dayLengthOn, sunTimes } from '../../src/climate/day-length.ts';
import { daylightHours, sunOn, sunsetAngle } from '../../src/climate/sun.ts';
import { dayLength } from '../../src/index.ts';

test('Example 9, 3 September at 20° S: printed 11.7 h, read 11.66559', () => {
  expect(daylightHours(-20, 246).toFixed(1)).toBe('11.7');
  expect(daylightHours(-20, 246)).toBeCloseTo(11.66559, 5);
});
test('Example 8, its angles: distance 0.985, declination 0.120, sunset 1.527', () => {
  const { distance, declination } = sunOn(246);
  expect(distance.toFixed(3)).toBe('0.985');
  expect(declination.toFixed(3)).toBe('0.120');
  expect(sunsetAngle((-20 * Math.PI) / 180, declination).toFixed(3)).toBe('1.527');
});

describe('sunrise to sunset', () => {
  // 50' of altitude on both sides are 7 minutes here; the paper's declination, 0.120 rad where Meeus has 0.132, takes 2 of them.
  test('is 5 minutes longer than Example 9, printed 11.7 h', () => {
    expect(dayLength('2027-09-03', -20).toFixed(1)).toBe('11.7');
    expect(60 * (dayLength('2027-09-03', -20) - daylightHours(-20, 246))).toBeCloseTo(5, 0);
  });
  test.each([-45, -20, 0, 20, 45])('is up to 20 minutes longer than N, and no shorter, all year at %d°', (latitude) => {
    for (let i = 0; i < 365; i++) {
      const minutes = 60 * (dayLengthOn(civil(2027, 1, 1) + i, latitude) - daylightHours(latitude, i + 1));
      expect(minutes).toBeGreaterThan(-0.5);
      expect(minutes).toBeLessThan(20);
    }
  });
  test('is 24 h in the polar day and 0 in the polar night', () => {
    expect(dayLength('2027-06-21', 80)).toBe(24);
    expect(dayLength('2027-12-21', 80)).toBe(0);
    expect(dayLength('2027-12-21', -80)).toBe(24);
    expect(dayLength('2027-06-21', -80)).toBe(0);
  });
  test('is as long in the south half a year later, to 6 minutes', () => {
    const north = dayLength('2027-06-21', 45);
    expect(Math.abs(dayLength('2027-12-22', -45) - north)).toBeLessThan(0.1);
  });
  test('of a day that is none is refused', () => expect(() => dayLength('2027-02-30', 45)).toThrow(RangeError));
});

describe('times of the sun', () => {
  const HOUR = 3_600_000;
  const madison = { latitude: 43.1, longitude: -89.4 };
  test('come in order, and span the length of the day', () => {
    const { dawn, sunrise, sunset, dusk } = sunTimes(civil(2027, 4, 15), madison, 'America/Chicago');
    expect(dawn).toBeLessThan(sunrise!);
    expect(sunset).toBeLessThan(dusk!);
    expect(Math.abs((sunset! - sunrise!) / HOUR - dayLengthOn(civil(2027, 4, 15), 43.1))).toBeLessThan(0.03);
  });
  // Zones on the far side of the date line from their longitude, and a day each side of it.
  test.each([
    { zone: 'Pacific/Tongatapu', latitude: -21.1, longitude: -175.2, offset: 13 },
    { zone: 'Pacific/Auckland', latitude: -36.9, longitude: 174.8, offset: 12 },
    { zone: 'Pacific/Pago_Pago', latitude: -14.3, longitude: -170.7, offset: -11 },
  ])('are those of the civil day in $zone', ({ zone, offset, ...place }) => {
    const midnight = Date.UTC(2027, 5, 21) - offset * HOUR;
    const { sunrise, sunset } = sunTimes(civil(2027, 6, 21), place, zone);
    expect(sunrise! - midnight).toBeGreaterThan(5 * HOUR);
    expect(sunrise! - midnight).toBeLessThan(8.5 * HOUR);
    expect(sunset! - midnight).toBeGreaterThan(16 * HOUR);
    expect(sunset! - midnight).toBeLessThan(19 * HOUR);
  });
  test('are null where the sun does not set', () => {
    const times = sunTimes(civil(2027, 6, 21), { latitude: 78, longitude: 16 }, 'Arctic/Longyearbyen');
    expect(times).toEqual({ dawn: null, sunrise: null, sunset: null, dusk: null });
  });
});
