import { createServer, type Server } from 'node:http';
import type { AddressInfo } from 'node:net';
import { type Problem, problem } from '../../base/problem.ts';
import { answering } from './answer.ts';

/** A site that is being served. */
export interface Served {
  readonly port: number;
  /** Ends it: who is being answered gets the rest, and nobody else is let in. */
  close(): Promise<void>;
}

/** How long answers that have begun may take to end [ms]. */
const GRACE_MS = 2000;

/**
 * Serves a site's folder over HTTP.
 *
 * @param port 0 takes one that is free.
 */
export async function listen(
  root: string,
  host: string,
  port: number,
): Promise<Served | { readonly problem: Problem }> {
  const answer = answering(root);
  const server = createServer((request, response) => void answer(request, response));
  try {
    await new Promise<void>((ready, refused) => {
      server.once('error', refused);
      server.listen(port, host, ready);
    });
  } catch (error) {
    return { problem: refusalOf((error as NodeJS.ErrnoException).code ?? String(error), host, port) };
  }
  return { port: (server.address() as AddressInfo).port, close: () => ending(server) };
}

function refusalOf(reason: string, host: string, port: number): Problem {
  if (reason === 'EADDRINUSE') return problem('serve-port-taken', { port }, null);
  if (reason === 'EACCES') return problem('serve-port-forbidden', { port }, null);
  return problem('serve-host', { host, reason }, null);
}

function ending(server: Server): Promise<void> {
  return new Promise((ended) => {
    const late = setTimeout(() => server.closeAllConnections(), GRACE_MS);
    server.close(() => {
      clearTimeout(late);
      ended();
    });
    server.closeIdleConnections();
  });
}
