/**
 * Nitrogen on warm-season grasses, whatever the program: none before green-up, none near frost or on brown grass, and the
 * year inside the range of the grass. Georgia (Dougherty County, 2022): after the soil has warmed, until six to eight weeks
 * before the average first frost. South Carolina (Clemson calendars): potash four to six weeks before the expected frost.
 */
import { describe, expect, test } from 'vitest';
import type { Application } from '../../src/model/season.ts';
import { LB_PER_1000_SQFT } from '../published/pounds.ts';
import { planProgram } from './plan-program.ts';

const PLACES = {
  'Kansas City MO': [39.3, -94.73],
  'Raleigh NC': [35.89, -78.78],
  'Atlanta GA': [33.63, -84.44],
  'New Orleans LA': [29.99, -90.25],
  'Denver CO': [39.83, -104.66],
} as const;

/** Program, the step that waits for green-up, the range of a year [lb/1000 ft²] and where. */
const CASES: readonly (readonly [string, string, readonly [number, number], readonly (keyof typeof PLACES)[]])[] = [
  ['bermudagrass-transition', 'first-mowing', [2, 4], ['Kansas City MO', 'Raleigh NC']],
  ['bermudagrass-warm-humid', 'first-mowing', [2, 4], ['Raleigh NC', 'Atlanta GA', 'New Orleans LA']],
  ['zoysiagrass', 'first-mowing', [1, 2], ['Kansas City MO', 'Atlanta GA', 'New Orleans LA']],
  ['st-augustinegrass', 'first-mowing', [2, 4], ['Atlanta GA', 'New Orleans LA']],
  ['centipedegrass', 'first-mowing', [0.5, 2], ['Raleigh NC', 'New Orleans LA']],
  ['bahiagrass', 'mowing-height', [2, 3], ['Raleigh NC', 'New Orleans LA']],
  ['buffalograss', 'mowing-height', [0, 2], ['Kansas City MO', 'Denver CO']],
];

describe.each(CASES)('%s', (program, greenUp, [from, to], places) => {
  describe.each(places)('at %s', (place) => {
    const [latitude, longitude] = PLACES[place];
    const grass = program.replace(/-(transition|warm-humid)$/, '');
    const { season } = planProgram({
      program: `${program}.yaml`,
      grass,
      latitude,
      longitude,
      facts: { irrigated: true, 'darker-green': true },
      pH: 6,
    });
    const planned = season?.applications.filter((one) => one.season === season.season.year && one.date !== null) ?? [];
    const feeds = planned.filter(({ nutrientsGPerM2 }) => nutrientsGPerM2.N > 0);
    const opening = (id: string) => planned.find((one) => one.id === id)?.window.opens.p50 ?? null;
    const dates = (of: readonly Application[]) => of.map(({ date }) => date as string);

    test('none comes before green-up, nor before April', () => {
      expect(feeds.length).toBeGreaterThan(0);
      const green = opening(greenUp);
      expect(green).not.toBeNull();
      expect(dates(feeds).filter((date) => date < (green as string) || date < '2027-04-01')).toEqual([]);
    });

    test('none comes in the six weeks before the usual first frost, nor after September', () => {
      const potash = opening('autumn-potash') ?? '2027-10-01';
      expect(dates(feeds).filter((date) => date > potash || date > '2027-09-30')).toEqual([]);
    });

    test('the year is inside the range of the grass', () => {
      const pounds = feeds.reduce((sum, { nutrientsGPerM2 }) => sum + nutrientsGPerM2.N / LB_PER_1000_SQFT, 0);
      expect(pounds).toBeGreaterThanOrEqual(from - 0.005);
      expect(pounds).toBeLessThanOrEqual(to + 0.005);
    });

    test('feeds are four weeks apart or more', () => {
      const days = dates(feeds)
        .map((date) => Date.parse(date) / 86_400_000)
        .toSorted((a, b) => a - b);
      expect(days.slice(1).filter((day, i) => day - (days[i] as number) < 28)).toEqual([]);
    });
  });
});
