import type { Day } from '../../base/day.ts';
import type { Problem } from '../../base/problem.ts';
import type { DailySeries } from '../../base/series.ts';
import type { WeatherSeries } from '../../model/weather.ts';
import { nonsense } from './json.ts';

/** What a service is asked about: degrees, north and east positive, and the IANA zone that the days are of. */
export interface Site {
  readonly latitude: number;
  readonly longitude: number;
  readonly zone: string;
  /** A station by its name, for services of stations. */
  readonly station?: string | undefined;
}

/** Days asked for, both ends included. A forecast takes no notice of it. */
export interface Range {
  readonly from: Day;
  readonly to: Day;
  /** All that is asked of the same source, where a range is a part of it: one station has to hold it all. */
  readonly whole?: { readonly from: Day; readonly to: Day };
}

/** Soil temperature that a service models itself: daily means at a depth. */
export interface ServiceSoil {
  readonly depthCm: number;
  readonly daily: DailySeries;
}

/** What an answer says: weather; or where to ask next; or why it cannot be read. */
export type Answer =
  | { readonly weather: WeatherSeries; readonly soil?: readonly ServiceSoil[] }
  | { readonly next: string }
  | { readonly problem: Problem };

/**
 * A weather service: where to ask, and how to read what comes. Both are pure; the shell does the asking.
 * A new service is one file with one of these, and one line in `services.ts`.
 */
export interface Service {
  /** Its name in messages, with its terms where they ask for that. */
  readonly title: string;
  /** Where it lives, without a slash at the end; tests put another in its place. */
  readonly base: string;
  url(site: Site, range: Range, base: string): string;
  parse(text: string, site: Site, range: Range, base: string): Answer;
}

/**
 * A talk with a service: yields each address to ask, is handed each answer's text, and returns the last answer.
 * The one who drives it decides where answers come from: the network, or the cache.
 *
 * @param base The service's own, or another for tests.
 */
export function* talk(service: Service, site: Site, range: Range, base: string): Generator<string, Answer, string> {
  let url = service.url(site, range, base);
  for (let hop = 0; ; hop++) {
    const answer = service.parse(yield url, site, range, base);
    if (!('next' in answer)) return answer;
    if (hop === MOST_HOPS) return nonsense(service.title, 'its answers only point to further ones');
    url = answer.next;
  }
}

/** No service needs more than two addresses one after the other. */
const MOST_HOPS = 3;

/** An address with its query. */
export const address = (base: string, path: string, query: Readonly<Record<string, string | number>>): string =>
  `${base}${path}?${Object.entries(query)
    .map(([key, value]) => `${key}=${encodeURIComponent(value).replaceAll('%2C', ',').replaceAll('%2F', '/')}`)
    .join('&')}`;

/** Degrees as they are asked for: to about a kilometre; no grid here is finer, and a lawn is private. */
export const degrees = (value: number): string => value.toFixed(2).replace(/^-(0\.0+)$/, '$1');
