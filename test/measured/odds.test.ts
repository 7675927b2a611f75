/**
 * What plans said of two past seasons two weeks ahead, by the kit of `npm run accuracy -- DATA --odds`, which does it for four stations and
 * thirty seasons. Weather: Milwaukee WI, NOAA GHCN-Daily (public domain), 1961 on.
 */
import { describe, expect, test } from 'vitest';
import type { WeatherSeries } from '../../src/model/weather.ts';
import { judgedCases, reliabilityOf, skillOf } from '../accuracy/odds/judge.ts';
import { lawnAt } from '../accuracy/odds/programs.ts';
import { type SeasonOdds, seasonOdds } from '../accuracy/odds/season-odds.ts';
import { ODDS_STATIONS, type OddsStation, recordOf } from '../accuracy/odds/stations.ts';
import { sharedFile } from '../kit.ts';

const folder = sharedFile('data');
const milwaukee = ODDS_STATIONS[0] as OddsStation;

describe.skipIf(folder === null)(
  `Two seasons at Milwaukee${folder === null ? ' (skipped: the measured weather is not beside the project)' : ''}`,
  () => {
    const record = folder === null ? null : recordOf(milwaukee, folder);
    const odds = (record === null ? [] : [2007, 2012]).map((year): SeasonOdds => {
      const linked = lawnAt(milwaukee, 'tall-fescue-transition');
      return seasonOdds(milwaukee.id, [linked], record as WeatherSeries, year, { leads: [2] });
    });
    const triggers = judgedCases(odds.flatMap((one) => one.triggers));
    const choices = odds.flatMap((one) => one.choices);

    test('most real days lie from p10 to p90', () => {
      const { n, cover } = skillOf(triggers, 'withError');
      expect(n).toBeGreaterThan(10);
      expect(cover).toBeGreaterThan(0.6);
    });
    test('two weeks ahead the median is nearer than the fixed one', () => {
      expect(skillOf(triggers, 'withError').skill).toBeGreaterThan(0.12);
    });
    test('chosen days lie in their real window about as often as said', () => {
      const { said, held } = reliabilityOf(choices, 'withError');
      expect(Math.abs(said - held)).toBeLessThan(0.15);
    });
  },
);
