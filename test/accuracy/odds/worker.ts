/** A thread that plans seasons of stations again. */
import { parentPort, workerData } from 'node:worker_threads';
import type { Linked } from '../../../src/read/link.ts';
import { lawnAt, PROGRAMS } from './programs.ts';
import { seasonOdds } from './season-odds.ts';
import type { Job } from './seasons.ts';
import { ODDS_STATIONS, recordOf } from './stations.ts';

const stations = ODDS_STATIONS.map((station) => ({
  station,
  record: recordOf(station, workerData),
  lawns: PROGRAMS.map((program) => lawnAt(station, program)),
}));

parentPort?.on('message', ({ id, year, options }: Job) => {
  const found = stations.find(({ station }) => station.id === id);
  if (found)
    parentPort?.postMessage(seasonOdds(id, found.lawns as [Linked, ...Linked[]], found.record as never, year, options));
});
