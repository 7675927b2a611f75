import { type Day, formatDay } from '../base/day.ts';
import { type Problem, problem } from '../base/problem.ts';
import { at } from '../base/series.ts';
import { type WeatherSeries, weatherEnd } from '../model/weather.ts';
import { type KnownWeather, knownWeather, type WeatherInput } from './known-weather.ts';
import { depthSeries, type Soil, type SoilRun, soilOf, soilUnder } from './soil.ts';
import type { Texture } from './soil-parameters.ts';
import { offsetSd, type Reading, siteOffset } from './thermometer.ts';

/** A record without holes and the soil under it. */
export interface Ground {
  readonly record: WeatherSeries;
  readonly soil: Soil;
  readonly run: SoilRun;
  /** What the lawn's thermometer adds to the model [°C], and what is still not known of a site's offset. */
  readonly offset: number;
  readonly offsetSd: number;
}

/** What the ground is made from. */
export interface GroundInput extends WeatherInput {
  readonly texture?: Texture | undefined;
  /** The lawn's own thermometer. */
  readonly readings?: readonly Reading[] | undefined;
}

/** The weather that is known and the soil under it, moved to the lawn's thermometer; null with the reason where there is none. */
export function groundOf(input: GroundInput): {
  readonly value: { readonly known: KnownWeather; readonly ground: Ground } | null;
  readonly problems: readonly Problem[];
} {
  const { value: known, problems } = knownWeather(input);
  if (!known) return { value: null, problems };
  const { record, climatology, provenance } = known;
  const soil = soilOf(input.site, climatology, input.texture);
  const run = soilUnder(record, soil, climatology);
  const given = (input.readings ?? []).filter(({ day }) => day <= input.asOf);
  const seen = (day: Day) => day >= record.start && day < weatherEnd(record) && provenance(day) === 'observed';
  const readings = given.filter(({ day }) => seen(day));
  const site = siteOffset(readings, (day, depth) => at(depthSeries(run, depth, soil), day));
  const unused = [
    ...given
      .filter(({ day }) => !seen(day))
      .map((one) => ({ one, why: 'no weather was seen on that day to compare it with' })),
    ...site.frozen.map((one) => ({ one, why: 'frozen or nearly frozen ground tells nothing of how the soil differs' })),
  ].map(({ one, why }) => problem('reading-unused', { date: formatDay(one.day), why }, null));
  return {
    value: { known, ground: { record, soil, run, offset: site.offset, offsetSd: offsetSd(site.sd, site.used) } },
    problems: [...problems, ...doubts(site.doubted), ...unused],
  };
}

/** Readings that are more likely a mistake than news. */
const doubts = (doubted: ReturnType<typeof siteOffset>['doubted']): Problem[] =>
  doubted.map(({ reading, modelled, sds }) =>
    problem(
      'reading-doubted',
      {
        date: formatDay(reading.day),
        reads: `${reading.value.toFixed(1)} °C`,
        modelled: `${modelled.toFixed(1)} °C`,
        sds: Number(sds.toFixed(1)),
      },
      null,
    ),
  );
