/** Soil temperature by each way that is compared, for every station and depth. */
import { type DailySeries, endOf, seriesOf, trailingMean } from '../../src/base/series.ts';
import { depthSeries, type Soil, type SoilRun, soilOf, soilUnder } from '../../src/climate/soil.ts';
import { BY_CLIMATE, type SoilParameters } from '../../src/climate/soil-parameters.ts';
import { elevenDayMean } from './other-models.ts';
import type { Depth, Station } from './stations.ts';

/** Soil temperature of a station by one way [°C]. */
export type Predict = (station: Station, depth: Depth) => DailySeries;

/** The model run over a station's record, as the program runs it. */
export interface Modelled {
  readonly soil: Soil;
  readonly run: SoilRun;
}

/** @param parameters The shipped ones where left out. */
export function modelled({ site, climatology, weather }: Station, parameters?: SoilParameters): Modelled {
  const soil = soilOf(site, climatology, 'loam', parameters);
  return { soil, run: soilUnder(weather, soil, climatology) };
}

/** @param offset Added to the whole column, as a thermometer's is [°C]. */
export function temperature({ soil, run }: Modelled, depth: Depth, offset = 0): DailySeries {
  return depthSeries(run, depth / 100, soil, new Float64Array(run.columns.length / 5).fill(offset));
}

/** The model, run once a station. */
export function byModel(run: (station: Station) => Modelled): Predict {
  const runs = new Map<Station, Modelled>();
  return (station, depth) => {
    const known = runs.get(station) ?? run(station);
    runs.set(station, known);
    return temperature(known, depth);
  };
}

/** The printed recipe, as if no rain were known. */
export const byClimate: Predict = (station, depth) => {
  const climatology = { ...station.climatology, rain: Number.NaN, rainKnown: 0 };
  return temperature(modelled({ ...station, climatology }, BY_CLIMATE), depth);
};

/** What people use without a model: the mean of the last five days' air. */
export const byAir: Predict = ({ air }) => seriesOf(air.start, endOf(air), (day) => trailingMean(air, day, 5));

/** The eleven-day weighted mean of others. */
export const byElevenDays: Predict = ({ air }) =>
  seriesOf(air.start, endOf(air), (day) => elevenDayMean(air.values, day - air.start));
