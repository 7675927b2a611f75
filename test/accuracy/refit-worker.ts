/** A thread that fits parameters to all stations but those it is told to leave out. */
import { parentPort, workerData } from 'node:worker_threads';
import { fitTo } from './fit.ts';
import { prepare } from './prepared.ts';
import { stationsIn } from './stations.ts';

const prepared = stationsIn(workerData).map(prepare);
parentPort?.on('message', (leftOut: readonly string[]) =>
  parentPort?.postMessage(fitTo(prepared.filter(({ station }) => !leftOut.includes(station.id)))),
);
