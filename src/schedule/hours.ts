import { getTimes } from 'suncalc';
import type { Day } from '../base/day.ts';
import { formatInstant, type Instant, instantAt } from '../base/zone.ts';
import type { Lawn } from '../model/lawn.ts';
import type { AreaAmount } from '../model/season.ts';
import type { Walks } from './passes.ts';

const MINUTE = 60_000;
/** Working hours where the lawn names none; a practitioner's day, common practice. */
const HOURS = { from: 8 * 60, to: 18 * 60 } as const;
/** Filling, setting and sweeping up; common practice. */
const SET_UP_MINUTES = 15;
/** Work whose pace is not known. */
const OTHER_MINUTES = 60;
/** Minutes that a job takes: walking both half-rate ways, or the one that is left, and setting up, to the next five minutes. */
export function minutesFor(
  spreads: boolean,
  areas: readonly Pick<AreaAmount, 'id' | 'areaM2' | 'passes'>[],
  walks: Walks,
): number {
  if (!spreads) return OTHER_MINUTES;
  const seconds = areas.reduce(
    (sum, { id, areaM2, passes }) => sum + walks.seconds(id, areaM2, passes.length === 1 ? 'second' : 'both'),
    0,
  );
  return Math.ceil((SET_UP_MINUTES + seconds / 60) / 5) * 5;
}

/**
 * Start and end of a job on a day: from the beginning of the working hours or, later, civil dawn, after other jobs of
 * the day.
 *
 * @param taken Minutes of that day that other jobs take.
 */
export function hoursOn(
  day: Day,
  lawn: Lawn,
  zone: string,
  minutes: number,
  taken: number,
): { readonly start: string; readonly end: string } {
  const opening = instantAt(day, lawn.working?.between?.[0] ?? HOURS.from, zone);
  const noon = instantAt(day, 12 * 60, zone);
  const { latitude, longitude } = lawn.location;
  const dawn = getTimes(new Date(noon), latitude, longitude).dawn?.getTime() ?? opening;
  const start: Instant = Math.ceil(Math.max(opening, dawn) / (5 * MINUTE)) * 5 * MINUTE + taken * MINUTE;
  return { start: formatInstant(start), end: formatInstant(start + minutes * MINUTE) };
}
