import { formatDay } from '../../base/day.ts';
import { type Problem, problem } from '../../base/problem.ts';
import { dayAt, type Instant } from '../../base/zone.ts';
import { NotWritten } from '../files.ts';
import { type Kept, keep, readKept } from './cache.ts';
import { type Asking, type Failure, once } from './once.ts';

/** How an answer is asked for more than once. */
export interface Persistence extends Asking {
  /** Times to try again after a failure that may pass: no connection, a timeout, 429, 5xx, an answer that breaks off. */
  readonly retries: number;
  /** The first wait before another try; it doubles each time, up to 30 s [ms]. */
  readonly backoffMs: number;
  sleep(ms: number): Promise<void>;
}

/** How an answer is fetched and kept. */
export interface FetchOptions extends Persistence {
  readonly cacheDir: string;
  /** What the answer is kept under; the address where left out. Addresses that change daily need a key that does not. */
  readonly key?: string;
  /** An answer of the same address that is younger than this is not asked for again [ms]. */
  readonly maxAgeMs: number;
  /** Never touch the network: the cache alone answers, however old. */
  readonly offline: boolean;
}

/** An answer with where it came from; or why there is none. */
export type Fetched =
  | {
      readonly text: string;
      readonly from: 'network' | 'cache';
      readonly fetchedAt: Instant;
      readonly problems: readonly Problem[];
    }
  | { readonly problems: readonly Problem[] };

const LONGEST_WAIT = 30_000;
/** A service that asks for a longer pause than this is not waited for [ms]. */
const LONGEST_ASKED = 60_000;

/**
 * Fetches the text of an address, from the cache where that is young enough, else from the network, and keeps it. Where the
 * network or the service fails, an old answer stands in with the warning `service-stale`.
 *
 * @returns Never throws for what the network, the service or the cache do; the codes begin with `service-`.
 * @example await fetchText('https://…', { service: 'NOAA NCEI', fetch, cacheDir, maxAgeMs: 6 * 3_600_000, … })
 */
export async function fetchText(url: string, options: FetchOptions): Promise<Fetched> {
  const { cacheDir, service } = options;
  const key = options.key ?? url;
  const kept = readKept(cacheDir, key);
  const usable = kept && !options.refuse?.(kept.text) ? kept : null;
  const now = options.now();
  if (usable && usable.url === url && now - usable.fetchedAt < options.maxAgeMs) return fromCache(usable, []);
  if (options.offline) {
    if (!usable) return { problems: [problem('service-offline', { service }, null)] };
    return fromCache(usable, [stale(usable, service, 'It is older than usual; --offline was asked.')]);
  }
  const answer = await persistent(url, options);
  if (typeof answer !== 'string')
    return usable
      ? fromCache(usable, [stale(usable, service, answer.problem.message)])
      : { problems: [answer.problem] };
  const fetchedAt = options.now();
  try {
    keep(cacheDir, key, { url, fetchedAt, text: answer });
  } catch (error) {
    if (!(error instanceof NotWritten)) throw error;
    const unkept = problem('write-failed', { file: error.file, reason: error.message }, null);
    return { text: answer, from: 'network', fetchedAt, problems: [unkept] };
  }
  return { text: answer, from: 'network', fetchedAt, problems: [] };
}

const fromCache = ({ text, fetchedAt }: Kept, problems: readonly Problem[]): Fetched => ({
  text,
  from: 'cache',
  fetchedAt,
  problems,
});

const stale = ({ fetchedAt }: Kept, service: string, because: string): Problem =>
  problem('service-stale', { service, from: formatDay(dayAt(fetchedAt, 'UTC')), because }, null);

/** Tries, waits and tries again; the last failure where all fail. */
export async function persistent(url: string, options: Persistence): Promise<string | Failure> {
  for (let tries = 1; ; tries++) {
    const answer = await once(url, options, tries);
    if (typeof answer === 'string' || !answer.mayPass || tries > options.retries) return answer;
    if ((answer.askedWaitMs ?? 0) > LONGEST_ASKED) return answer;
    await options.sleep(answer.askedWaitMs ?? Math.min(options.backoffMs * 2 ** (tries - 1), LONGEST_WAIT));
  }
}
