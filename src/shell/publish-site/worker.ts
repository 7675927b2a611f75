/** A thread that makes places as they come, until it is told that there are no more. */
import { workerData } from 'node:worker_threads';
import { runJob } from './job.ts';
import type { FromWorker, ToWorker, WorkerStart } from './workers.ts';

const { port, said, input } = workerData as WorkerStart;

port.on('message', (message: ToWorker | null) => {
  if (message === null) {
    port.close();
    return;
  }
  say(made(message));
});

function made({ number, job }: ToWorker): FromWorker {
  try {
    return { number, result: runJob(job, input) };
  } catch (error) {
    return { failed: error instanceof Error ? (error.stack ?? error.message) : String(error) };
  }
}

function say(message: FromWorker): void {
  port.postMessage(message);
  Atomics.add(said, 0, 1);
  Atomics.notify(said, 0);
}
