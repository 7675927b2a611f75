import type { Day } from '../../base/day.ts';
import { at } from '../../base/series.ts';
import type { Celsius } from '../../base/units.ts';
import type { Climate } from '../../climate/traces.ts';
import { median } from '../readings.ts';
import type { SeasonYear } from '../season-year.ts';

/** Sprays wait from here on: 85 °F, as many labels of leaf herbicides print; from memory. */
const HOT: Celsius = 29.4;

/** Whether a day is usually hot. By past years alone, so that hours do not flicker with the weather of the week. */
export const isHot = (climate: Climate, { start, end }: SeasonYear, day: Day): boolean =>
  (median(climate.past(start, end), ({ tmax }) => at(tmax, day)) ?? Number.NEGATIVE_INFINITY) >= HOT;
