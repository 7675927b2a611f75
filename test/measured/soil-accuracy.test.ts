/**
 * The shipped soil model against 50 stations of the U.S. Climate Reference Network (2020, NOAA, public domain) and Phoenix
 * Park (2003 to 2022, © Met Éireann, CC BY 4.0): what `npm run accuracy` prints in full, held to its targets.
 */
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { BY_RAIN } from '../../src/climate/soil-parameters.ts';
import { byAir, byModel, modelled } from '../accuracy/predict.ts';
import { columnsBy, prepare } from '../accuracy/prepared.ts';
import { scoresOf, summaryOf } from '../accuracy/score.ts';
import { isEast, stationsIn, withRain } from '../accuracy/stations.ts';
import { sharedFile } from '../kit.ts';

const file = sharedFile('data/soil/uscrn-2020.csv');

describe.skipIf(file === null)(
  `soil temperature${file === null ? ' (skipped: the measured soil is not beside the project)' : ''}`,
  () => {
    const stations = file === null ? [] : stationsIn(path.join(path.dirname(file), '..'));
    const home = stations.filter(({ region }) => region !== 'Ireland');
    const scores = scoresOf(
      stations,
      byModel((station) => modelled(station)),
    );
    const of = (depth: number, some: readonly (typeof stations)[number][]) =>
      summaryOf(scores.filter((one) => one.depth === depth && some.includes(one.station)));

    test('no station was dropped', () => {
      expect([home.length, stations.length]).toEqual([50, 51]);
      expect(scores.length).toBe(101);
      expect(home.filter(isEast).length).toBe(24);
    });
    test('and none is scored on a few days', () =>
      expect(scores.filter(({ n }) => n < 250).map(({ station, n }) => [station.name, n])).toEqual([]));
    test('5 cm, the median of 50: at most 1.6 °C', () => expect(of(5, home).rmse).toBeLessThanOrEqual(1.6));
    test('5 cm, the median east of 100° W: at most 1.35 °C', () =>
      expect(of(5, home.filter(isEast)).rmse).toBeLessThanOrEqual(1.35));
    test.each([5, 10])('%i cm, mean bias within 0.2 °C', (depth) =>
      expect(Math.abs(of(depth, home).bias)).toBeLessThanOrEqual(0.2),
    );
    test('Phoenix Park, 10 cm: at most 1.72 °C', () => {
      const park = stations.filter(({ region }) => region === 'Ireland');
      expect(of(10, park).rmse).toBeLessThanOrEqual(1.72);
    });
    test('a 5-day mean of air is at least twice as far off at the median station', () => {
      const air = scoresOf(home, byAir).filter(({ depth }) => depth === 5);
      expect(summaryOf(air).rmse).toBeGreaterThan(2 * of(5, home).rmse);
    });
    test('the fit runs the model that ships', () => {
      const apart = stations.map((station) => {
        const columns = columnsBy(BY_RAIN, prepare(station));
        const { run } = modelled(withRain(station), BY_RAIN);
        expect(columns.length).toBe(run.columns.length);
        return Math.max(...columns.map((value, i) => Math.abs(value - (run.columns[i] as number))));
      });
      expect(Math.max(...apart)).toBeLessThan(1e-9);
    });
  },
);
