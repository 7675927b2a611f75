import type { Day } from '../../base/day.ts';
import { formatInstant, type Instant, instantAt } from '../../base/zone.ts';
import { type SunTimes, sunTimes } from '../../climate/day-length.ts';
import type { RightHours } from '../../model/around-work.ts';
import type { Lawn } from '../../model/lawn.ts';

const MINUTE = 60_000;
const STEP = 5 * MINUTE;
/** Working hours where the lawn names none; a practitioner's day, common practice. */
const HOURS = { from: 8 * 60, to: 18 * 60 } as const;
/** Minutes after sunrise until the dew has dried: two to three hours, common practice. */
const DEW_DRIES = 150;
/** The heat of a hot day, in minutes from the sun's noon: ten to four by the sun, common practice. */
const HEAT = { from: -120, to: 240 } as const;

/** A stretch of time: `[start, end)`. */
export interface Stretch {
  readonly start: Instant;
  readonly end: Instant;
}

/** What hours are sought for. */
interface Sought {
  readonly right: RightHours;
  readonly minutes: number;
  /** Whether the day is usually so hot that sprays wait. */
  readonly hot: boolean;
  /** Whether the lawn waters itself, so that nobody has to be there. */
  readonly byItself: boolean;
  /** What other jobs take of that day. */
  readonly taken: readonly Stretch[];
}

/**
 * Start and end of a job on a day: the first free time from its right hour on, inside the working hours and civil daylight.
 * Where the day has no such time the working hours win, and daylight over them.
 *
 * @param zone IANA name; working hours are of its wall clock, on days of changed clocks too.
 * @example hoursOn(civil(2027, 7, 1), lawn, 'America/New_York', { right: 'dry', minutes: 60, hot: false, byItself: false, taken: [] })
 */
export function hoursOn(day: Day, lawn: Lawn, zone: string, sought: Sought): Stretch {
  const sun = sunTimes(day, lawn.location, zone);
  const [from, to] = lawn.working?.between ?? [HOURS.from, HOURS.to];
  const [opening, closing] = [instantAt(day, from, zone), instantAt(day, to, zone)];
  const early = sought.byItself ? (sun.dawn ?? opening) : Math.max(opening, sun.dawn ?? opening);
  const late = Math.min(closing, sun.dusk ?? closing);
  const length = sought.minutes * MINUTE;
  // Leaves are driest at the end of hours that are too early for them.
  const wanted = [
    ...startsFor(sought, sun, early),
    ...(sought.right === 'dry' && sun.sunrise !== null ? [late - length - STEP] : []),
    early,
  ];
  const free = wanted.flatMap((one) => firstFree(Math.max(one, early), length, late, sought.taken) ?? []).at(0);
  const start = free ?? lastStart(length, late, sun.dawn ?? early);
  return { start, end: start + length };
}

/** The last start that still ends in time, however early; work that is longer than daylight begins with it. */
const lastStart = (length: number, late: Instant, dawn: Instant): Instant =>
  Math.max(Math.ceil(dawn / STEP) * STEP, Math.floor((late - length) / STEP) * STEP);

/** The starts to try, the best first. */
function startsFor({ right, minutes, hot }: Sought, { sunrise, sunset }: SunTimes, early: Instant): Instant[] {
  if (sunrise === null) return [];
  const dry = sunrise + DEW_DRIES * MINUTE;
  if (right === 'dry') return [dry];
  if (right === 'sunrise') return [sunrise - minutes * MINUTE];
  if (right !== 'cool') return [];
  if (!hot || sunset === null) return [dry];
  const noon = (sunrise + sunset) / 2;
  const begun = Math.max(dry, early);
  const before = begun + minutes * MINUTE <= noon + HEAT.from * MINUTE;
  const [morning, evening] = [before ? [begun] : [], [noon + HEAT.to * MINUTE]];
  return [...morning, ...evening];
}

/** The first start from an instant on that no other job takes and that ends in time; null where there is none. */
function firstFree(from: Instant, length: number, late: Instant, taken: readonly Stretch[]): Instant | null {
  let start = Math.ceil(from / STEP) * STEP;
  for (const one of [...taken].sort((a, b) => a.start - b.start))
    if (one.start < start + length && one.end > start) start = Math.ceil(one.end / STEP) * STEP;
  return start + length <= late ? start : null;
}

export const asText = ({ start, end }: Stretch): { readonly start: string; readonly end: string } => ({
  start: formatInstant(start),
  end: formatInstant(end),
});
