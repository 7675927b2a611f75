/** One season of the demo lawn lived day by day on the weather of a station: under the calm rule and planned freely. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { type Day, formatDay, parseDay } from '../../../src/base/day.ts';
import { readAll } from '../../../src/compile.ts';
import type { Journal } from '../../../src/model/journal.ts';
import type { Season } from '../../../src/model/season.ts';
import type { WeatherSeries } from '../../../src/model/weather.ts';
import type { Linked } from '../../../src/read/link.ts';
import { type LivedDay, replay, seasonIn } from '../../../src/replay.ts';
import { lookupFrom } from '../../../src/shell/lookup.ts';
import type { OddsStation } from '../odds/stations.ts';

const root = path.resolve(import.meta.dirname, '../../..');
const DEMO = 'programs/demo/lawn.yaml';
/** The year that the demo lawn's file is about. */
const DEMO_YEAR = 2027;
const DAYS = 365;

/**
 * The demo lawn at a station, the days in its file moved to a year and the year before; its journal is left out.
 *
 * @throws Error where the file is wrong.
 */
export function demoAt({ latitude, longitude, elevationM }: OddsStation, year: number): Linked {
  const text = readFileSync(path.join(root, DEMO), 'utf8')
    .replaceAll(`${DEMO_YEAR}-`, `${year}-`)
    .replaceAll(`${DEMO_YEAR - 1}-`, `${year - 1}-`);
  const { value, problems } = readAll({ lawn: { name: DEMO, text }, lookup: lookupFrom(root) });
  if (!value) throw new Error(problems.map(({ message }) => message).join('; '));
  const location = { ...value.lawn.location, latitude, longitude, elevation: elevationM };
  return { ...value, lawn: { ...value.lawn, location }, journal: [] };
}

/** The work of a day, done as planned: a journal entry for each job whose day it is and whose window is open. */
export const doneOnItsDay = ({ asOf, applications }: Season): Journal =>
  applications
    .filter(({ date, status }) => date === asOf && status === 'due')
    .map(({ id }) => ({ date: parseDay(asOf) as Day, step: id }));

/** A season lived twice. */
export interface Lived {
  readonly name: string;
  readonly calm: readonly LivedDay[];
  readonly free: readonly LivedDay[];
}

/**
 * Lives a season from its first day on.
 *
 * @param done Whether work is done on its day; otherwise nobody ever does any. Planned freely, the journal is the same.
 */
export function live(station: OddsStation, record: WeatherSeries, year: number, done: boolean): Lived {
  const linked = demoAt(station, year);
  const { start } = seasonIn(linked.program, linked.lawn.location.latitude < 0, year);
  const days = Array.from({ length: DAYS }, (_, i) => start + i);
  const written = new Map<string, Journal>();
  const does = (season: Season): Journal => {
    const entries = done ? doneOnItsDay(season) : [];
    written.set(season.asOf, entries);
    return entries;
  };
  const calm = replay(linked, record, year, days, { detail: 'full', does });
  const free = replay(linked, record, year, days, { free: true, does: ({ asOf }) => written.get(asOf) ?? [] });
  return { name: `${station.name} ${year}, from ${formatDay(start)}`, calm, free };
}
