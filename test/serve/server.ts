/** What the tests of `serve` share: a site that is being served, and requests that nobody tidies on the way. */
import { type IncomingHttpHeaders, request } from 'node:http';
import { afterAll } from 'vitest';
import { listen } from '../../src/shell/serve/listen.ts';

/** Serves a folder on this machine until the tests of the file are over. */
export async function serving(root: string): Promise<number> {
  const served = await listen(root, 'localhost', 0);
  if ('problem' in served) throw new Error(served.problem.message);
  afterAll(() => served.close());
  return served.port;
}

export interface Answered {
  readonly status: number;
  readonly headers: IncomingHttpHeaders;
  readonly body: Buffer;
}

/** One request; the path goes out as it stands, where `fetch` would resolve its dots. */
export function ask(
  port: number,
  path: string,
  { method = 'GET', headers = {} }: { method?: string; headers?: Record<string, string> } = {},
): Promise<Answered> {
  return new Promise((answered, failed) => {
    const asked = request({ host: 'localhost', port, path, method, headers, agent: false }, (response) => {
      const parts: Buffer[] = [];
      response.on('data', (part: Buffer) => void parts.push(part));
      response.on('error', failed);
      response.on('end', () =>
        answered({ status: response.statusCode ?? 0, headers: response.headers, body: Buffer.concat(parts) }),
      );
    });
    asked.on('error', failed);
    asked.end();
  });
}
