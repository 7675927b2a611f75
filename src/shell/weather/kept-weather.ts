import { formatDay } from '../../base/day.ts';
import { type Problem, problem } from '../../base/problem.ts';
import { dayAt } from '../../base/zone.ts';
import type { ServiceWeather } from '../../compile.ts';
import { cut, type WeatherSeries, weatherEnd } from '../../model/weather.ts';
import { readLawn } from '../../read/lawn.ts';
import type { ServiceSoil } from '../../read/services/service.ts';
import type { Io } from '../io.ts';
import type { Asked } from '../which-lawn.ts';
import { zipLookup } from '../zips.ts';
import { kept } from './ask.ts';
import { partsOf, siteOf } from './parts.ts';

/** Weather from the cache, with the soil that a service models itself. */
export interface KeptWeather extends ServiceWeather {
  readonly soil: readonly (ServiceSoil & { readonly service: string })[];
}

/** A forecast older than this on the as-of day is left out [d]. */
const OLD_FORECAST = 3;

/**
 * What the cache holds of a lawn's services, for a plan: no network is touched. Days of a forecast before it was made count
 * as observed. A forecast made after the as-of day is left out, since nobody could have known it.
 */
export function keptWeather({ source, asOf }: Pick<Asked, 'source' | 'asOf'>, io: Io): KeptWeather | undefined {
  const lawn = readLawn(source.text, source.name, zipLookup).value;
  const parts = lawn ? partsOf(lawn, asOf) : [];
  if (!lawn || parts.length === 0) return undefined;
  const site = siteOf(lawn);
  const problems: Problem[] = [];
  const [observed, bridge]: [WeatherSeries[], WeatherSeries[]] = [[], []];
  const soil: (ServiceSoil & { service: string })[] = [];
  let forecast: WeatherSeries | null = null;
  for (const part of parts) {
    const { title } = part.service;
    const told = kept(part, site, io);
    if (!told) {
      problems.push(problem('service-not-fetched', { service: `${title}, ${part.id}` }, null));
      continue;
    }
    const { answer, fetchedAt } = told;
    if (!('weather' in answer)) {
      const reason = 'problem' in answer ? answer.problem.message : 'it leads nowhere';
      problems.push(problem('service-cache', { service: title, reason }, null));
      continue;
    }
    const { weather } = answer;
    if (part.id !== 'forecast') {
      observed.push(weather);
      continue;
    }
    const made = dayAt(fetchedAt, site.zone);
    bridge.push(cut(weather, weather.start, Math.min(made, asOf)));
    soil.push(...(answer.soil ?? []).map((one) => ({ ...one, service: title })));
    const from = formatDay(made);
    if (made > asOf) problems.push(problem('forecast-later', { service: title, from }, null));
    else if (asOf - made > OLD_FORECAST)
      problems.push(problem('forecast-old', { service: title, from, days: asOf - made }, null));
    else forecast = cut(weather, made, weatherEnd(weather));
  }
  // Later ones win where two hold the same day: what was observed over what a forecast says of the days before it.
  return { observed: [...bridge, ...observed], forecast, problems, soil };
}
