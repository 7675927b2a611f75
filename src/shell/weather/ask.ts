import path from 'node:path';
import type { Problem } from '../../base/problem.ts';
import type { Instant } from '../../base/zone.ts';
import { type Answer, type Site, talk } from '../../read/services/service.ts';
import type { Io } from '../io.ts';
import { readKept } from './cache.ts';
import { fetchText } from './fetch-text.ts';
import type { Network } from './network.ts';
import { keyOf, type Part } from './parts.ts';

/** Where answers are kept: under the folder of the command, like everything that can be made anew. */
export const cacheDirOf = (io: Io): string => path.join(io.cwd, 'out/cache/weather');

/** An answer of a service, and when it was given. */
export interface Told {
  readonly answer: Answer;
  readonly fetchedAt: Instant;
  readonly from: 'network' | 'cache';
  readonly problems: readonly Problem[];
}

/** Asks a service for a part, over the network or from the cache. Null with problems where no answer is to be had. */
export async function ask(
  part: Part,
  site: Site,
  { offline }: { readonly offline: boolean },
  network: Network,
  io: Io,
): Promise<Told | { readonly answer: null; readonly problems: readonly Problem[] }> {
  const { service, range, maxAgeMs } = part;
  const base = network.baseOf(service);
  const conversation = talk(service, site, range, base);
  const problems: Problem[] = [];
  let [fetchedAt, from]: [Instant, Told['from']] = [0, 'cache'];
  let step = conversation.next();
  while (!step.done) {
    const url = step.value;
    const fetched = await fetchText(url, {
      ...network,
      service: service.title,
      cacheDir: cacheDirOf(io),
      key: keyOf(part, url, base),
      maxAgeMs,
      offline,
      now: io.now,
      refuse: (text) => {
        const answer = service.parse(text, site, range, base);
        return 'problem' in answer ? answer.problem : null;
      },
    });
    problems.push(...fetched.problems);
    if (!('text' in fetched)) return { answer: null, problems };
    ({ fetchedAt, from } = fetched);
    step = conversation.next(fetched.text);
  }
  return { answer: step.value, fetchedAt, from, problems };
}

/** What the cache holds of a part, however old; null where there is nothing. */
export function kept(part: Part, site: Site, io: Io): Omit<Told, 'from' | 'problems'> | null {
  const { service, range } = part;
  const conversation = talk(service, site, range, service.base);
  let fetchedAt = 0;
  let step = conversation.next();
  while (!step.done) {
    const entry = readKept(cacheDirOf(io), keyOf(part, step.value, service.base));
    if (!entry) return null;
    ({ fetchedAt } = entry);
    step = conversation.next(entry.text);
  }
  return { answer: step.value, fetchedAt };
}
