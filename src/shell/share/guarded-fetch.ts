import type { IncomingMessage } from 'node:http';
import https from 'node:https';
import { isIP, type LookupFunction } from 'node:net';
import { Readable } from 'node:stream';
import { type Problem, problem } from '../../base/problem.ts';
import { Refused } from '../weather/once.ts';
import { checkedAddress } from './checked-address.ts';
import { isPublic } from './public-address.ts';

/** The way from a host's name to its machine. Tests bring their own names, and lead what was let through to a server of theirs. */
export interface Reach {
  /** Every IP address of a host. */
  resolve(host: string): Promise<readonly string[]>;
  /** The machine that is dialled for an IP address that was let through. */
  dial(address: string): string;
  /** Whom to believe a certificate, in place of those whom Node believes (PEM). */
  readonly ca?: string;
}

const MOST_REDIRECTS = 5;
const REDIRECTS: readonly number[] = [301, 302, 303, 307, 308];
/** Types that hold a YAML file; the last is what a server says that does not know them. */
const TYPES = /^(text|application)\/(x-)?yaml$|^text\/plain$/;
const UNKNOWN_TYPE = 'application/octet-stream';

/**
 * A `fetch` for addresses that a stranger may have written. It goes to the public internet alone: at each redirect a host's
 * name is asked for once, every address it has is checked, and only those that were checked are dialled, so that no second
 * answer of the name can lead elsewhere. It sends no credentials and nothing of the caller's, uses no proxy, and gives what is a
 * YAML file by its type.
 *
 * @throws Refused with the problem, where an address, a redirect or a type is none that may be.
 */
export const guardedFetch =
  (reach: Reach): typeof globalThis.fetch =>
  async (asked, init) => {
    const signal = init?.signal ?? null;
    let url = allowed(checkedAddress(String(asked)));
    for (let hops = 0; hops <= MOST_REDIRECTS; hops++) {
      const answer = await ask(url, await addressesOf(url, reach, signal), reach, signal);
      const to = answer.headers.location;
      if (!REDIRECTS.includes(answer.statusCode ?? 0) || to === undefined) return asResponse(answer, url);
      answer.destroy();
      url = allowed(checkedAddress(to, url));
    }
    throw new Refused(problem('program-redirects', { address: String(asked), limit: MOST_REDIRECTS }, null));
  };

function allowed(checked: URL | Problem): URL {
  if (checked instanceof URL) return checked;
  throw new Refused(checked);
}

/** The IP addresses of an address's host, all of them public. */
async function addressesOf({ hostname }: URL, reach: Reach, signal: AbortSignal | null): Promise<readonly string[]> {
  const host = bare(hostname);
  const found = isIP(host) === 0 ? await untilAborted(reach.resolve(host), signal) : [host];
  const closed = found.find((address) => !isPublic(address));
  if (closed !== undefined) throw new Refused(problem('program-address-closed', { host, address: closed }, null));
  return found;
}

/** A host without the brackets of an IPv6 address. */
const bare = (hostname: string): string => hostname.replace(/^\[(.*)\]$/, '$1');

/** Asking for a name cannot be called off, but nobody has to wait for it. */
function untilAborted<T>(promise: Promise<T>, signal: AbortSignal | null): Promise<T> {
  return new Promise((resolve, reject) => {
    const abort = () => reject(signal?.reason);
    if (signal?.aborted) abort();
    signal?.addEventListener('abort', abort, { once: true });
    promise.then(resolve, reject).finally(() => signal?.removeEventListener('abort', abort));
  });
}

function ask(
  url: URL,
  addresses: readonly string[],
  reach: Reach,
  signal: AbortSignal | null,
): Promise<IncomingMessage> {
  const host = bare(url.hostname);
  const dialled = addresses.map((address) => reach.dial(address));
  const entries = dialled.map((address) => ({ address, family: isIP(address) }));
  const lookup: LookupFunction = (_, { all }, done) => {
    const [first] = entries;
    if (first === undefined) done(new Error('ENOTFOUND'), '', 0);
    else if (all) done(null, entries);
    else done(null, first.address, first.family);
  };
  return new Promise((resolve, reject) => {
    const request = https.get(
      {
        host: isIP(host) === 0 ? host : dialled[0],
        ...(isIP(host) === 0 && { servername: host }),
        port: url.port || 443,
        path: url.pathname + url.search,
        headers: { host: url.host, 'user-agent': 'soilclock', accept: 'text/yaml, */*', 'accept-encoding': 'identity' },
        // An agent of its own: the one that all share may have been told of a proxy.
        agent: new https.Agent({ keepAlive: false }),
        rejectUnauthorized: true,
        lookup,
        ...(reach.ca !== undefined && { ca: reach.ca }),
        ...(signal && { signal }),
      },
      resolve,
    );
    request.on('error', reject);
  });
}

function asResponse(answer: IncomingMessage, url: URL): Response {
  const { statusCode: status = 0, headers } = answer;
  const isFine = status >= 200 && status <= 299;
  const found = isFine ? unfit(headers, url) : null;
  if (found !== null || status < 200 || status > 599) {
    answer.destroy();
    const address = url.href;
    throw new Refused(problem('program-type', { address, found: found ?? `an answer of status ${status}` }, null));
  }
  const told = Object.entries(headers).flatMap(([name, value]) =>
    typeof value === 'string' ? [[name, value] as [string, string]] : [],
  );
  const empty = status === 204 || status === 205 || status === 304;
  if (empty) answer.destroy();
  return new Response(empty ? null : (Readable.toWeb(answer) as ReadableStream<Uint8Array>), { status, headers: told });
}

/** What an answer is, where its headers say that it is no YAML file. */
function unfit(headers: IncomingMessage['headers'], url: URL): string | null {
  const coding = headers['content-encoding'] ?? 'identity';
  if (coding !== 'identity') return `something packed (${coding})`;
  const type = (headers['content-type'] ?? UNKNOWN_TYPE).split(';')[0]?.trim().toLowerCase() ?? '';
  if (TYPES.test(type) || (type === UNKNOWN_TYPE && /\.ya?ml$/i.test(url.pathname))) return null;
  return type === 'text/html' ? 'a web page (text/html)' : `the type ${type}`;
}
