/** Problems of weather files in other formats, of weather services and of ZIP codes: severity and words. Part of the one table. */

import { error, note, warning } from './forms.ts';

/** Which service failed, and how. */
export interface Service {
  readonly service: string;
}
export interface Failed extends Service {
  readonly reason: string;
}
/** What to do, where it is no service of weather. */
export interface Advised {
  readonly advice?: string | undefined;
}

const days = (count: number): string => `${count} day${count === 1 ? '' : 's'}`;

export const services = {
  // Weather files
  'weather-line': error(
    (a: { format: string; found: string; expected: string }) =>
      `This is not a line of the ${a.format} format: found ${a.found}, expected ${a.expected}. Is the file cut off or edited?`,
  ),
  'weather-stations': error(
    (a: { first: string; found: string }) =>
      `Station ${a.found} begins here after ${a.first}. One file holds one station: split it, or leave out the others.`,
  ),

  // Weather services
  'service-none': error(
    (a: { services: readonly string[]; forecasts: readonly string[] }) =>
      `The lawn names no weather service. Set "weather.service" to ${a.services.join(' or ')}, or "weather.forecast" to ${a.forecasts.join(' or ')}.`,
  ),
  'service-offline': error(
    (a: Service) =>
      `${a.service}: nothing is in the cache, and --offline was asked. Run "soilclock weather fetch" once with a network.`,
  ),
  'service-no-network': error(
    (a: Failed & Advised & { host: string; tries: number }) =>
      `${a.service}: ${a.host} cannot be reached (${a.reason}; tried ${a.tries === 1 ? 'once' : `${a.tries} times`}). ${a.advice ?? 'A weather file does without it.'} Check the network and try again.`,
  ),
  'service-timeout': error(
    (a: Service & { seconds: number; tries: number }) =>
      `${a.service}: no whole answer within ${a.seconds} s (tried ${a.tries === 1 ? 'once' : `${a.tries} times`}). Try again later.`,
  ),
  'service-status': error(
    (a: Failed & Advised & { status: number }) =>
      `${a.service} answered with status ${a.status}${a.reason === '' ? '' : `: ${a.reason}`}. ${
        a.status === 429
          ? 'It is asked too often; wait before you try again.'
          : a.status >= 500
            ? 'The fault is on its side; try again later.'
            : (a.advice ?? 'Check that it serves the place of the lawn, and the days asked for.')
      }`,
  ),
  'service-nonsense': error(
    (a: Failed) =>
      `${a.service} gave an answer that cannot be read: ${a.reason}. Try again later; if it stays so, the service has changed: use another or a file.`,
  ),
  'service-too-large': error(
    (a: Service & { limit: string }) => `${a.service}: the answer is larger than ${a.limit}; it was not read further.`,
  ),
  'service-empty': error(
    (a: Service) => `${a.service} gave no day with a minimum and a maximum. Check the place of the lawn.`,
  ),
  'service-no-station': error(
    (a: Service & { km: number }) =>
      `${a.service} knows no station within ${a.km} km (${Math.round(a.km / 1.609344)} miles) that measures still and long enough. Name one by "weather.station", or use open-meteo.`,
  ),
  'service-stale': warning(
    (a: Service & { from: string; because: string }) => `${a.service}: the answer of ${a.from} is used. ${a.because}`,
  ),
  'service-cache': warning(
    (a: Failed) => `${a.service}: the answer in the cache is left out: ${a.reason}. Run "soilclock weather fetch".`,
  ),
  'service-not-fetched': warning(
    (a: Service) => `${a.service} is named by the lawn, but nothing of it is here. Run "soilclock weather fetch".`,
  ),
  'forecast-old': warning(
    (a: Service & { from: string; days: number }) =>
      `${a.service}: the forecast of ${a.from} is ${days(a.days)} old and left out. Run "soilclock weather fetch".`,
  ),
  'forecast-later': note(
    (a: Service & { from: string }) =>
      `${a.service}: the forecast of ${a.from} was made after the as-of day and is left out.`,
  ),

  // Location
  'zip-unknown': error(
    (a: { zip: string }) =>
      `ZIP code ${a.zip} has no place in the table (Census ZCTAs of 2021; boxes and single buildings are not in it). Write latitude and longitude, or the ZIP code of a street nearby.`,
  ),
  'zip-no-table': error(
    (a: { zip: string }) =>
      `ZIP code ${a.zip} cannot be looked up: no table of ZIP codes was given. Write latitude and longitude.`,
  ),
} as const;
