import { setTimeout as wait } from 'node:timers/promises';
import type { Service } from '../../read/services/service.ts';

/** The way to the services; a test brings its own. */
export interface Network {
  readonly fetch: typeof globalThis.fetch;
  /** Where a service lives. */
  baseOf(service: Service): string;
  sleep(ms: number): Promise<void>;
  readonly timeoutMs: number;
  readonly retries: number;
  readonly backoffMs: number;
  readonly maxBytes: number;
}

/** The real one: half a minute for an answer, three more tries after 1, 2 and 4 s, 32 MiB at most. */
export const realNetwork: Network = {
  fetch: globalThis.fetch,
  baseOf: ({ base }) => base,
  sleep: (ms) => wait(ms),
  timeoutMs: 30_000,
  retries: 3,
  backoffMs: 1000,
  maxBytes: 32 * 2 ** 20,
};
