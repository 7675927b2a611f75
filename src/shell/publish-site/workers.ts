import { availableParallelism } from 'node:os';
import { MessageChannel, type MessagePort, receiveMessageOnPort, Worker } from 'node:worker_threads';
import type { PlacesInput } from '../../places.ts';
import { runJob, type SiteJob, type SiteResult } from './job.ts';

/** Fewer places than this are made sooner by one process than others are started [places]. */
const FEW = 24;
/** More do not help: each keeps the years of weather of its places in memory. */
const MOST_WORKERS = 4;
/** Jobs that a worker has before it, so that it never waits for the next one. */
const AHEAD = 2;
/** A worker that says nothing for so long has failed [ms]. */
const SILENT_MS = 60_000;
/** Between two looks at whether the lock is still held [ms]. */
const LOOK_MS = 500;

/** What a worker is started with. */
export interface WorkerStart {
  readonly port: MessagePort;
  /** Counts what all workers have said, and wakes who waits for it. */
  readonly said: Int32Array;
  readonly input: PlacesInput;
}

export interface ToWorker {
  readonly number: number;
  readonly job: SiteJob;
}
export type FromWorker = { readonly number: number; readonly result: SiteResult } | { readonly failed: string };

/** A thread that makes places has failed. */
export class WorkerFailed extends Error {}

/** Jobs to be made, in any order, and who takes what came of them. */
export interface Work {
  readonly count: number;
  readonly jobAt: (number: number) => SiteJob;
  readonly take: (number: number, result: SiteResult) => void;
  /** Called now and then, so that nobody takes the run for dead. */
  readonly alive: () => void;
}

/** How many workers so many jobs are given to; none where this process does them itself. */
export const workersFor = (count: number): number =>
  count < FEW ? 0 : Math.min(MOST_WORKERS, Math.max(2, availableParallelism()));

/** Makes all jobs here, one after the other. */
export function workHere({ count, jobAt, take, alive }: Work, input: PlacesInput): void {
  for (let number = 0; number < count; number++) {
    alive();
    take(number, runJob(jobAt(number), input));
  }
}

/**
 * Makes all jobs on other threads, and takes what they give as it comes. It waits without giving way, since a lock is held; files
 * are written by the caller alone.
 *
 * @throws WorkerFailed where a worker fails.
 */
export function workOnThreads(work: Work, input: PlacesInput, workers: number): void {
  const said = new Int32Array(new SharedArrayBuffer(4));
  const ports = Array.from({ length: workers }, () => startWorker(said, input));
  let next = 0;
  const give = (port: MessagePort): void => {
    if (next < work.count) port.postMessage({ number: next, job: work.jobAt(next) } satisfies ToWorker);
    next++;
  };
  try {
    for (let ahead = 0; ahead < AHEAD; ahead++) for (const port of ports) give(port);
    let [done, silentMs] = [0, 0];
    while (done < work.count) {
      const heard = Atomics.load(said, 0);
      const before = done;
      for (const port of ports) {
        for (let got = receiveMessageOnPort(port); got !== undefined; got = receiveMessageOnPort(port)) {
          const message = got.message as FromWorker;
          if ('failed' in message) throw new WorkerFailed(message.failed);
          give(port);
          work.take(message.number, message.result);
          done++;
        }
      }
      work.alive();
      silentMs = done === before ? silentMs + LOOK_MS : 0;
      if (silentMs > SILENT_MS) throw new WorkerFailed(`a worker has said nothing for ${SILENT_MS / 1000} s`);
      if (done < work.count) Atomics.wait(said, 0, heard, LOOK_MS);
    }
  } finally {
    for (const port of ports) port.postMessage(null);
  }
}

function startWorker(said: Int32Array, input: PlacesInput): MessagePort {
  const { port1, port2 } = new MessageChannel();
  // As this file is called, so is that one: `.ts` in a checkout, `.js` where it was built.
  const file = new URL(import.meta.url.endsWith('.ts') ? './worker.ts' : './worker.js', import.meta.url);
  const worker = new Worker(file, {
    workerData: { port: port2, said, input } satisfies WorkerStart,
    transferList: [port2],
    // Flags of this process may be ones that no worker takes.
    execArgv: [],
  });
  worker.unref();
  port1.unref();
  return port1;
}
