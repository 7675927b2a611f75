/**
 * Every row of the published table stands among the reference places, figure by figure. Source: NOAA/NCEI, monthly normals of ten U.S. stations,
 * U.S. Government work, public domain (shared/reference/us-station-normals.csv).
 */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { REFERENCE_PLACES } from '../../src/climate/places/all.ts';
import { sharedFile } from '../kit.ts';

const file = sharedFile('reference/us-station-normals.csv');
const rows = file === null ? [] : readFileSync(file, 'utf8').trim().split('\n').slice(2);

describe.skipIf(file === null)(
  `Station normals${file === null ? ' (skipped: the published table is not beside the project)' : ''}`,
  () => {
    test('the table has ten rows', () => {
      expect(rows.length).toBe(10);
    });

    test.each(rows.map((row) => [row.split(',')[1], row]))('%s', (_, row) => {
      const [station = '', , latitude, longitude, period, source, ...cells] = row?.split(',') ?? [];
      const place = REFERENCE_PLACES.find((one) => one.station === station);
      expect(place).toMatchObject({ latitude: Number(latitude), longitude: Number(longitude), period, source });
      expect(place?.origin).toBe('measured');
      expect(place?.normals.tmin).toEqual(cells.slice(0, 12).map(Number));
      expect(place?.normals.tmax).toEqual(cells.slice(12, 24).map(Number));
      const rain = cells.slice(24);
      const printed = rain.every((cell) => cell !== '');
      expect(place?.precipOrigin).toBe(printed ? 'measured' : 'from memory');
      if (printed) expect(place?.normals.precip).toEqual(rain.map(Number));
    });
  },
);
