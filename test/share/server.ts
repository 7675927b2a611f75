/** An https server on this machine, with a certificate made for the test, that stands in for the public internet. */
import type { IncomingMessage, ServerResponse } from 'node:http';
import { createServer } from 'node:https';
import type { AddressInfo } from 'node:net';
import { afterAll } from 'vitest';
import type { ProgramNetwork } from '../../src/shell/share/fetch-program.ts';
import { guardedFetch, type Reach } from '../../src/shell/share/guarded-fetch.ts';
import { certificateFor } from './certificate.ts';

/** A public address that the names of the tests have; what is dialled for it is the server. */
export const PUBLIC = '5.6.7.8';
export const ip = (...parts: readonly number[]): string => parts.join('.');
export const LOOPBACK = ip(127, 0, 0, 1);

const HOSTS = ['lawns.example', 'other.example', 'xn--grser-hra.example'] as const;

export interface Internet {
  readonly port: number;
  readonly ca: string;
  /** What was asked of the server: host and path. */
  readonly asked: string[];
  readonly requests: IncomingMessage[];
  /** The addresses that were dialled. */
  readonly dialled: string[];
  /** The names that were resolved. */
  readonly resolved: string[];
  reach(resolve?: (host: string, count: number) => readonly string[]): Reach;
  network(resolve?: (host: string, count: number) => readonly string[], more?: Partial<ProgramNetwork>): ProgramNetwork;
}

export async function internet(
  handler: (request: IncomingMessage, response: ServerResponse, count: number) => void,
): Promise<Internet> {
  const { key, cert: ca } = certificateFor(HOSTS);
  const [asked, requests, dialled, resolved]: [string[], IncomingMessage[], string[], string[]] = [[], [], [], []];
  const counts = new Map<string, number>();
  const server = createServer({ key, cert: ca }, (request, response) => {
    const where = request.url ?? '';
    asked.push(`${request.headers.host?.replace(/:\d+$/, '')}${where}`);
    requests.push(request);
    counts.set(where, (counts.get(where) ?? 0) + 1);
    handler(request, response, counts.get(where) ?? 1);
  });
  await new Promise<void>((listening) => void server.listen(0, 'localhost', listening));
  afterAll(() => {
    server.closeAllConnections();
    server.close();
  });
  const { port, address } = server.address() as AddressInfo;
  const reach: Internet['reach'] = (resolve = () => [PUBLIC]) => ({
    resolve: async (host) => {
      resolved.push(host);
      return resolve(host, resolved.filter((one) => one === host).length);
    },
    dial: (to) => {
      dialled.push(to);
      return address;
    },
    ca,
  });
  const network: Internet['network'] = (resolve, more) => ({
    fetch: guardedFetch(reach(resolve)),
    sleep: async () => {},
    timeoutMs: 10_000,
    retries: 1,
    backoffMs: 1,
    maxBytes: 256 * 1024,
    now: () => Date.UTC(2027, 2, 1, 12),
    ...more,
  });
  return { port, ca, asked, requests, dialled, resolved, reach, network };
}
