/** Parameters fitted without the stations that they are then scored at: five folds, and each region in turn. */
import { availableParallelism } from 'node:os';
import { Worker } from 'node:worker_threads';
import type { Fit } from './fit.ts';
import { REGIONS, type Station } from './stations.ts';

/** One fit: to all stations but those left out. */
export interface Refit {
  readonly label: string;
  readonly leftOut: readonly string[];
}

export interface Refitted extends Refit, Fit {}

const FOLDS = 5;

/** Every fifth station in the order of the file, each fold spread over the country; Phoenix Park by itself. */
export function folds(stations: readonly Station[]): Refit[] {
  const home = stations.filter(({ region }) => region !== 'Ireland');
  return Array.from({ length: FOLDS }, (_, fold) => ({
    label: `fold ${fold + 1}`,
    leftOut: home.filter((_, i) => i % FOLDS === fold).map(({ id }) => id),
  }));
}

/** Each region by itself. */
export const regions = (stations: readonly Station[]): Refit[] =>
  Object.keys(REGIONS).map((label) => ({
    label,
    leftOut: stations.filter(({ region }) => region === label).map(({ id }) => id),
  }));

/**
 * Fits side by side, one a processor.
 *
 * @param onDone Called after each with how many are done.
 * @returns In the order asked for; a fit depends on its stations alone, so the order of work changes nothing.
 */
export async function refitAll(
  folder: string,
  refits: readonly Refit[],
  onDone: (done: number) => void,
): Promise<Refitted[]> {
  const results: Refitted[] = [];
  let [next, done] = [0, 0];
  const work = async (): Promise<void> => {
    const worker = new Worker(new URL('./refit-worker.ts', import.meta.url), { workerData: folder });
    try {
      for (let i = next++; i < refits.length; i = next++) {
        const refit = refits[i] as Refit;
        const fit = await new Promise<Fit>((resolve, reject) => {
          worker.once('message', resolve);
          worker.once('error', reject);
          worker.postMessage(refit.leftOut);
        });
        worker.removeAllListeners('error');
        results[i] = { ...refit, ...fit };
        onDone(++done);
      }
    } finally {
      await worker.terminate();
    }
  };
  await Promise.all(Array.from({ length: Math.min(availableParallelism(), refits.length) }, work));
  return results;
}
