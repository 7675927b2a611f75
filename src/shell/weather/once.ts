import { type Problem, problem } from '../../base/problem.ts';
import type { Instant } from '../../base/zone.ts';

/** How one answer is asked for. */
export interface Asking {
  /** The service's name, for messages. */
  readonly service: string;
  /** The way to the network; tests and offline machines bring their own. */
  readonly fetch: typeof globalThis.fetch;
  /** For a whole answer, its last byte included [ms]. */
  readonly timeoutMs: number;
  readonly maxBytes: number;
  now(): Instant;
  /** What to do where it refuses or cannot be reached, in place of the advice on weather. */
  readonly advice?: string;
  /** Whether each byte of an answer counts, a byte order mark too. */
  readonly exact?: boolean;
  /** Why an answer is none; such an answer is not kept, and counts as a failure that may pass where it is nonsense. */
  refuse?(text: string): Problem | null;
}

/** Thrown by a `fetch` that may not go where it was to go; no further try is made. */
export class Refused extends Error {
  readonly problem: Problem;

  constructor(refused: Problem) {
    super(refused.message);
    this.problem = refused;
  }
}

/** Why one try gave no answer, and whether another may. */
export interface Failure {
  readonly problem: Problem;
  readonly mayPass: boolean;
  /** How long the service asks to wait before another try [ms]. */
  readonly askedWaitMs?: number;
}

/** Asks once. @param tries Which try it is, for the message. */
export async function once(url: string, options: Asking, tries: number): Promise<string | Failure> {
  const { service, timeoutMs, advice, exact = false } = options;
  const signal = AbortSignal.timeout(timeoutMs);
  try {
    const headers = { 'user-agent': 'soilclock', accept: 'application/json, application/geo+json, text/csv, */*' };
    const response = await options.fetch(url, { headers, signal });
    if (!response.ok) return await statusFailure(response, options);
    const text = await bodyOf(response, options.maxBytes, exact);
    if (text === null) {
      const limit = inBytes(options.maxBytes);
      return { problem: problem('service-too-large', { service, limit }, null), mayPass: false };
    }
    const refused = options.refuse?.(text);
    return refused ? { problem: refused, mayPass: refused.code === 'service-nonsense' } : text;
  } catch (error) {
    if (error instanceof Refused) return { problem: error.problem, mayPass: false };
    if (signal.aborted)
      return {
        problem: problem('service-timeout', { service, seconds: timeoutMs / 1000, tries }, null),
        mayPass: true,
      };
    const reason = reasonOf(error);
    return {
      problem: problem('service-no-network', { service, host: new URL(url).host, reason, tries, advice }, null),
      mayPass: true,
    };
  }
}

async function statusFailure(response: Response, { service, now, advice }: Asking): Promise<Failure> {
  const { status } = response;
  const body = (await bodyOf(response, 64 * 1024, false).catch(() => null)) ?? '';
  const failed = problem('service-status', { service, status, reason: reasonIn(body), advice }, null);
  const mayPass = status === 429 || status === 408 || status >= 500;
  const askedWaitMs = mayPass ? retryAfter(response.headers.get('retry-after'), now()) : null;
  return { problem: failed, mayPass, ...(askedWaitMs !== null && { askedWaitMs }) };
}

/** The `Retry-After` of an answer, in seconds or as a date (RFC 9110, 10.2.3) [ms]; null for anything else. */
export function retryAfter(header: string | null, now: number): number | null {
  if (header === null) return null;
  if (/^\s*\d+\s*$/.test(header)) return Number(header) * 1000;
  const at = Date.parse(header);
  return Number.isNaN(at) ? null : Math.max(0, at - now);
}

const inBytes = (bytes: number): string =>
  bytes < 2 ** 20 ? `${Math.round(bytes / 2 ** 10)} KiB` : `${Math.round(bytes / 2 ** 20)} MiB`;

/** A body as text; null where it is larger than is read. The connection is given up at the limit. */
async function bodyOf(response: Response, maxBytes: number, exact: boolean): Promise<string | null> {
  if (Number(response.headers.get('content-length') ?? 0) > maxBytes) {
    await response.body?.cancel();
    return null;
  }
  const decoder = new TextDecoder('utf-8', { ignoreBOM: exact });
  let [text, bytes] = ['', 0];
  for await (const chunk of response.body ?? []) {
    bytes += chunk.byteLength;
    if (bytes > maxBytes) return null;
    text += decoder.decode(chunk, { stream: true });
  }
  return text + decoder.decode();
}

/** What a service says about a refusal: Open-Meteo `reason`, NWS `detail`, NCEI `errorMessage`; nothing where it is a page. */
function reasonIn(body: string): string {
  try {
    const data = JSON.parse(body) as Readonly<Record<string, unknown>>;
    const said = data.reason ?? data.detail ?? data.errorMessage ?? data.title;
    return typeof said === 'string' ? said.replace(/\s+/g, ' ').slice(0, 200).replace(/\.$/, '') : '';
  } catch {
    return '';
  }
}

/** The innermost reason of a failed request, such as `ENOTFOUND`. */
function reasonOf(error: unknown): string {
  const { cause, code, message } = error as { cause?: unknown; code?: string; message?: string };
  if (cause !== undefined && cause !== null && cause !== error) return reasonOf(cause);
  return code ?? message ?? String(error);
}
