import { createServer, type IncomingMessage, type ServerResponse } from 'node:http';
import type { AddressInfo } from 'node:net';
import { afterAll } from 'vitest';

type Handler = (request: IncomingMessage, response: ServerResponse, count: number) => void;

/** A server on this machine alone, gone after the tests of the file. `count` is how often that path was asked, from 1. */
export async function localServer(handler: Handler): Promise<{ readonly base: string; readonly asked: string[] }> {
  const asked: string[] = [];
  const counts = new Map<string, number>();
  const server = createServer((request, response) => {
    const url = request.url ?? '';
    const [path = ''] = url.split('?');
    asked.push(url);
    counts.set(path, (counts.get(path) ?? 0) + 1);
    handler(request, response, counts.get(path) ?? 1);
  });
  await new Promise<void>((listening) => void server.listen(0, 'localhost', listening));
  afterAll(() => {
    server.closeAllConnections();
    server.close();
  });
  return { base: `http://localhost:${(server.address() as AddressInfo).port}`, asked };
}
