/** Every season that is judged, planned again side by side, one a processor. */
import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import { partsOf } from '../../../src/base/day.ts';
import { weatherEnd } from '../../../src/model/weather.ts';
import type { ChoiceCase, OddsOptions, SeasonOdds, TriggerCase } from './season-odds.ts';
import { ODDS_STATIONS, recordOf } from './stations.ts';

const [FIRST, LAST] = [1991, 2020];

export interface Job {
  readonly id: string;
  readonly year: number;
  readonly options: OddsOptions;
}

/** Seattle's record ends in December 2017: the last season that it holds whole is 2016. */
function jobsIn(folder: string, options: OddsOptions): Job[] {
  return ODDS_STATIONS.flatMap((station) => {
    const lastWhole = partsOf(weatherEnd(recordOf(station, folder))).year - 1;
    const years = Math.min(LAST, lastWhole) - FIRST + 1;
    return Array.from({ length: years }, (_, i) => ({ id: station.id, year: FIRST + i, options }));
  });
}

/** All cases of a data folder. @param onDone Called after each season. */
export async function allOdds(
  folder: string,
  onDone: (done: number, all: number) => void,
  options: OddsOptions = {},
): Promise<{ readonly triggers: readonly TriggerCase[]; readonly choices: readonly ChoiceCase[] }> {
  const jobs = jobsIn(folder, options);
  const results: SeasonOdds[] = [];
  let [next, done] = [0, 0];
  const work = async (): Promise<void> => {
    const worker = new Worker(new URL('./worker.ts', import.meta.url), { workerData: folder });
    try {
      for (let i = next++; i < jobs.length; i = next++) {
        results[i] = await new Promise<SeasonOdds>((resolve, reject) => {
          worker.once('message', resolve);
          worker.once('error', reject);
          worker.postMessage(jobs[i]);
        });
        worker.removeAllListeners('error');
        onDone(++done, jobs.length);
      }
    } finally {
      await worker.terminate();
    }
  };
  await Promise.all(Array.from({ length: Math.min(availableParallelism(), jobs.length) }, work));
  return { triggers: results.flatMap(({ triggers }) => triggers), choices: results.flatMap(({ choices }) => choices) };
}
