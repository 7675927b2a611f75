import { type Day, dayOfYear } from '../base/day.ts';
import { at, type DailySeries, endOf, seriesOf, trailingMean } from '../base/series.ts';
import type { Celsius, Days } from '../base/units.ts';
import type { GrassSeason } from '../model/grass.ts';
import { hargreavesEvapotranspiration } from './evapotranspiration.ts';
import type { Trace } from './trace.ts';

/**
 * Water that turf uses, as a share of reference evapotranspiration: yearly values of Meyer et al. (1985), University of
 * California, for cool-season turf 0.80, warm-season 0.60.
 */
const CROP: Readonly<Record<GrassSeason, number>> = { cool: 0.8, warm: 0.6 };

/** Dry: over so many days less rain than this share of what the turf uses. Our own rule; no publication among ours has one. */
const DROUGHT = { days: 28, share: 0.25 } as const;

/**
 * Hot: the mean of the daily highs of so many days. Cool-season turf is fed once the highs have left the 90s F: Purdue
 * University, fall nitrogen for turf. The week is our own.
 */
const HEAT = { days: 7, high: (90 - 32) / 1.8 } as const;

/** Whether unwatered turf would stand still in a trace. */
export interface Stress {
  /** Too little rain for a month. */
  drought(trace: Trace, grass: GrassSeason, day: Day): boolean;
  /** Too hot for cool-season grass. */
  heat(trace: Trace, grass: GrassSeason, day: Day): boolean;
}

/** @param latitude [°], north positive. */
export function stressAt(latitude: number): Stress {
  const uses = new WeakMap<Trace, DailySeries>();
  const used = (trace: Trace): DailySeries => {
    const known = uses.get(trace) ?? evapotranspiration(trace, latitude);
    uses.set(trace, known);
    return known;
  };
  return {
    drought(trace, grass, day) {
      const [rain, use] = [trailingMean(trace.precip, day, DROUGHT.days), trailingMean(used(trace), day, DROUGHT.days)];
      return rain < DROUGHT.share * CROP[grass] * use;
    },
    heat: (trace, grass, day) => grass === 'cool' && meanHigh(trace, day, HEAT.days) >= HEAT.high,
  };
}

const meanHigh = (trace: Trace, day: Day, days: Days): Celsius => trailingMean(trace.tmax, day, days);

/** Reference evapotranspiration of each day of a trace [mm]. */
const evapotranspiration = ({ tmin, tmax }: Trace, latitude: number): DailySeries =>
  seriesOf(tmin.start, endOf(tmin), (day) =>
    hargreavesEvapotranspiration(at(tmin, day), at(tmax, day), latitude, dayOfYear(day)),
  );
