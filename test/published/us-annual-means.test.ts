/**
 * Every U.S. place agrees with its station's published annual mean within 1.0 °C. Source: NOAA NCEI, U.S. Climate
 * Normals 1981-2010, ann-tavg-normal, U.S. Government work, public domain (shared/reference/us-annual-means-1981-2010.csv).
 * The places' normals are mostly of 1991-2020, which are about 0.3 °C warmer.
 */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { greatCircleKm } from '../../src/climate/nearest-place.ts';
import { REFERENCE_PLACES } from '../../src/climate/places/all.ts';
import { sharedFile } from '../kit.ts';

const file = sharedFile('reference/us-annual-means-1981-2010.csv');
const published = new Map(
  (file === null ? '' : readFileSync(file, 'utf8'))
    .trim()
    .split('\n')
    .map((row) => [row.split(',')[0], row.split(',')]),
);
const american = REFERENCE_PLACES.filter(({ region }) => /^[A-Z]{2}$/.test(region));
const memory = american.filter(({ origin }) => origin === 'from memory');
/** Measured rows whose station the table of annual means has not. */
const ELSEWHERE = ['west-palm-beach-fl', 'merced-ca', 'lebanon-nh'];

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
const ofPlace = ({ normals }: (typeof american)[number]) => mean([...normals.tmin, ...normals.tmax]);

describe.skipIf(file === null)(
  `Annual means${file === null ? ' (skipped: the published table is not beside the project)' : ''}`,
  () => {
    test('every U.S. row from memory has a published mean, and all but three measured ones', () => {
      expect(american.filter(({ station }) => !published.has(station ?? '')).map(({ id }) => id)).toEqual(ELSEWHERE);
    });

    test.each(american.filter(({ id }) => !ELSEWHERE.includes(id)).map((place) => [place.id, place] as const))(
      '%s is within 1.0 °C, and where its station is',
      (_, place) => {
        const [, , , latitude, longitude, elevation, , annual] = published.get(place.station ?? '') ?? [];
        expect(Math.abs(ofPlace(place) - Number(annual))).toBeLessThanOrEqual(1.0);
        expect(greatCircleKm(place.latitude, place.longitude, Number(latitude), Number(longitude))).toBeLessThan(2);
        expect(Math.abs(place.elevationM - Number(elevation))).toBeLessThan(1);
      },
    );

    test('the rows from memory are warmer on average by 0.1 to 0.5 °C, as the later period is', () => {
      const excess = mean(memory.map((place) => ofPlace(place) - Number(published.get(place.station ?? '')?.[7])));
      expect(excess).toBeGreaterThan(0.1);
      expect(excess).toBeLessThan(0.5);
    });
  },
);
