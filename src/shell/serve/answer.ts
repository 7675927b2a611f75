import { createHash } from 'node:crypto';
import { readFile } from 'node:fs/promises';
import type { IncomingMessage, ServerResponse } from 'node:http';
import { siteFile, unlessAbsent } from './site-file.ts';

/** How long a reader may go on with what it has [s]: feeds change once a day, and a replan should show within the hour. */
const MAX_AGE_S = 900;
const RETRY_S = '60';

/** What any answer may load where it is shown: pictures and styles from here, and nothing that runs. */
const POLICY = "default-src 'none'; img-src 'self'; style-src 'self' 'unsafe-inline'";

/** What every answer carries: a feed's address is a secret of the household, told to no other place and to no search engine. */
const ALWAYS = {
  'Referrer-Policy': 'no-referrer',
  'X-Robots-Tag': 'noindex, nofollow',
  'X-Content-Type-Options': 'nosniff',
  'Content-Security-Policy': POLICY,
} as const;

/** The same for a page, and of scripts the one that its own policy names by its hash, before anything that somebody wrote. */
function policyOf(page: Buffer): string {
  const own =
    /^<!doctype html>\s*<html[^>]*>\s*<head>\s*<meta charset[^>]*>\s*<meta http-equiv="Content-Security-Policy" content="[^"]*(script-src 'sha256-[\w+/=]+')"/;
  const script = own.exec(page.toString('latin1', 0, 512))?.[1];
  return script === undefined ? POLICY : `${POLICY}; ${script}`;
}

type Headers = Readonly<Record<string, string>>;

/**
 * Answers requests from a site's folder, read-only. Nothing is kept between two of them, and nothing is logged: an address
 * may be a secret.
 *
 * A feed that does not end is being copied just now; a reader that took it would drop events, so that it is told to come again.
 * There is no compression: a calendar program in wide use stumbles over it.
 */
export const answering =
  (root: string) =>
  async (request: IncomingMessage, response: ServerResponse): Promise<void> => {
    const { status, headers, body } = await answer(root, request);
    // With 304 a length would be taken for that of what the reader has (RFC 9110, 8.6).
    const length = status === 304 ? {} : { 'Content-Length': body.length };
    response.writeHead(status, { ...ALWAYS, ...headers, ...length });
    response.end(request.method === 'HEAD' ? undefined : body);
  };

interface Answer {
  readonly status: number;
  readonly headers: Headers;
  readonly body: Buffer;
}

async function answer(root: string, { method = '', url = '', headers }: IncomingMessage): Promise<Answer> {
  if (method !== 'GET' && method !== 'HEAD') return refusal(405, 'Only GET and HEAD.', { Allow: 'GET, HEAD' });
  const found = await siteFile(root, url);
  if (found === 'busy') return COME_AGAIN;
  const body = found && (await unlessAbsent(() => readFile(found.file)));
  if (body === 'busy') return COME_AGAIN;
  if (!found || !body) return refusal(404, 'There is no such file.');
  if (found.type.startsWith('text/calendar') && !isWhole(body)) return COME_AGAIN;
  const tag = `"${createHash('sha256').update(body).digest('base64url').slice(0, 32)}"`;
  const kept = {
    ETag: tag,
    'Cache-Control': `private, max-age=${MAX_AGE_S}`,
    // Also with 304, whose headers take the place of those that were kept (RFC 9111, 3.2).
    ...(found.type.startsWith('text/html') && { 'Content-Security-Policy': policyOf(body) }),
  };
  if (knows(headers['if-none-match'], tag)) return { status: 304, headers: kept, body: Buffer.alloc(0) };
  return { status: 200, headers: { ...kept, 'Content-Type': found.type }, body };
}

function refusal(status: number, text: string, headers: Headers = {}): Answer {
  return {
    status,
    headers: { ...headers, 'Content-Type': 'text/plain; charset=utf-8', 'Cache-Control': 'no-store' },
    body: Buffer.from(`${text}\n`),
  };
}

/** Said where a feed is being written, or cannot be read just now: readers keep what they have. */
const COME_AGAIN = refusal(503, 'The file cannot be read just now; come again.', { 'Retry-After': RETRY_S });

const isWhole = (feed: Buffer): boolean => /END:VCALENDAR\s*$/.test(feed.subarray(-32).toString('latin1'));

/** If-None-Match: a list of tags, weak or strong, or a star (RFC 9110, 13.1.2). */
const knows = (asked: string | undefined, tag: string): boolean =>
  asked?.split(',').some((part) => part.trim() === '*' || part.trim().replace(/^W\//, '') === tag) ?? false;
