/**
 * The row of Dublin is what the daily readings give: means by month, 2004 to August 2022, rain scaled to whole months.
 * Readings: Phoenix Park, © Met Éireann, CC BY 4.0 (shared/data/soil/phoenix-park-ie.csv).
 */
import { readFileSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { REFERENCE_PLACES } from '../../src/climate/places/all.ts';
import { sharedFile } from '../kit.ts';

const file = sharedFile('data/soil/phoenix-park-ie.csv');
const DAYS = [31, 28.25, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

describe.skipIf(file === null)(
  `Phoenix Park${file === null ? ' (skipped: the readings are not beside the project)' : ''}`,
  () => {
    const rows = file === null ? [] : readFileSync(file, 'utf8').trim().split('\n').slice(1);
    const normals = REFERENCE_PLACES.find(({ id }) => id === 'dublin-ie')?.normals;

    /** Mean of a column over the days of a month that have it. */
    const mean = (month: number, column: number) => {
      const cells = rows
        .map((row) => row.split(','))
        .filter(([date = '']) => date >= '2004' && Number(date.slice(5, 7)) === month)
        .map((row) => row[column] ?? '')
        .filter((cell) => cell !== '');
      expect(cells.length).toBeGreaterThan(500);
      return cells.reduce((sum, cell) => sum + Number(cell), 0) / cells.length;
    };

    test.each(DAYS.map((days, m) => [m + 1, days] as const))('month %i', (month, days) => {
      expect(Math.abs((normals?.tmin[month - 1] ?? Number.NaN) - mean(month, 1))).toBeLessThan(0.006);
      expect(Math.abs((normals?.tmax[month - 1] ?? Number.NaN) - mean(month, 2))).toBeLessThan(0.006);
      expect(Math.abs((normals?.precip[month - 1] ?? Number.NaN) - mean(month, 4) * days)).toBeLessThan(0.06);
    });
  },
);
