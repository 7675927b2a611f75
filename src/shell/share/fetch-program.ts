import { lookup } from 'node:dns/promises';
import { setTimeout as wait } from 'node:timers/promises';
import { type Problem, problem } from '../../base/problem.ts';
import { partsOfRef } from '../../model/program-ref.ts';
import { LIMIT } from '../../read/validate.ts';
import { type Persistence, persistent } from '../weather/fetch-text.ts';
import { checkedAddress } from './checked-address.ts';
import { guardedFetch } from './guarded-fetch.ts';
import { type KeptProgram, wholeHash } from './kept-programs.ts';

/** The way to programs; a test brings its own. */
export type ProgramNetwork = Pick<
  Persistence,
  'fetch' | 'sleep' | 'timeoutMs' | 'retries' | 'backoffMs' | 'maxBytes' | 'now'
>;

/** The real one: ten seconds for an answer, once more after a second, no more than a program file may hold. */
export const realProgramNetwork = (now: () => number): ProgramNetwork => ({
  fetch: guardedFetch({
    resolve: async (host) => (await lookup(host, { all: true, order: 'ipv4first' })).map(({ address }) => address),
    dial: (address) => address,
  }),
  sleep: (ms) => wait(ms),
  timeoutMs: 10_000,
  retries: 1,
  backoffMs: 1000,
  maxBytes: LIMIT.small,
  now,
});

/**
 * Fetches what stands at the address of a reference. It is kept nowhere yet.
 *
 * @returns The program's text; where the reference is pinned and something else stands there, a problem with both hashes.
 */
export async function fetchProgram(
  ref: string,
  network: ProgramNetwork,
): Promise<KeptProgram | { readonly problems: readonly Problem[] }> {
  const { address, sha256: pinned } = partsOfRef(ref);
  const url = checkedAddress(address);
  if (!(url instanceof URL)) return { problems: [url] };
  const answer = await persistent(url.href, {
    ...network,
    service: url.host,
    advice: 'Check the address.',
    exact: true,
    refuse(text) {
      if (text.includes('\uFFFD'))
        return problem('program-type', { address, found: 'letters that are not UTF-8' }, null);
      const found = wholeHash(text);
      return pinned === null || found === pinned ? null : problem('program-changed', { address, pinned, found }, null);
    },
  });
  if (typeof answer !== 'string') return { problems: [answer.problem] };
  return { name: address, text: answer, sha256: wholeHash(answer) };
}
