import { civil, type Day, yearOf } from '../../base/day.ts';
import { zoneAt } from '../../base/zone.ts';
import type { Lawn } from '../../model/lawn.ts';
import type { Range, Service, Site } from '../../read/services/service.ts';
import { FORECASTS, PAST_SERVICES } from '../../read/services/services.ts';

/** A piece of what a lawn's services are asked for. */
export interface Part {
  readonly id: 'history' | 'recent' | 'forecast';
  readonly service: Service;
  readonly range: Range;
  /** How long an answer counts as new [ms]. */
  readonly maxAgeMs: number;
}

const HOUR = 3_600_000;
/** As many past years as climate normals have. */
const YEARS = 30;
/** Past years are closed this long after their end, when a service has no hole left in them [d]. */
const CLOSED = 60;

/** The place that services are asked about. */
export const siteOf = (lawn: Lawn): Site => ({
  latitude: lawn.location.latitude,
  longitude: lawn.location.longitude,
  zone: lawn.timezone ?? zoneAt(lawn.location.latitude, lawn.location.longitude),
  station: lawn.weather.station,
});

/**
 * What a lawn's services are asked for: 30 closed years, once a year; the days since, up to the day before; the forecast.
 * Nothing where the lawn names no service.
 */
export function partsOf({ weather }: Lawn, today: Day): Part[] {
  const past = weather.service === undefined || weather.service === 'none' ? null : PAST_SERVICES[weather.service];
  const ahead = Object.entries(FORECASTS).find(([word]) => word === weather.forecast)?.[1];
  const year = yearOf(today - CLOSED);
  const [from, start] = [civil(year - YEARS, 1, 1), civil(year, 1, 1)];
  const whole = { from, to: today - 1 };
  const parts: Part[] = [];
  if (past) {
    parts.push({ id: 'history', service: past, range: { from, to: start - 1, whole }, maxAgeMs: 400 * 24 * HOUR });
    parts.push({ id: 'recent', service: past, range: { from: start, to: today - 1, whole }, maxAgeMs: 6 * HOUR });
  }
  if (ahead) parts.push({ id: 'forecast', service: ahead, range: { from: today, to: today + 16 }, maxAgeMs: 3 * HOUR });
  return parts;
}

/** What an answer is kept under: the address without its host and its days, so that an old answer is found again. */
export const keyOf = ({ id, service }: Part, url: string, base: string): string =>
  `${service.title} ${id} ${url.slice(base.length).replace(/([?&])(start|end)_?date=[^&]*/gi, '$1')}`;
