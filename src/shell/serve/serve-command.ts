import { statSync } from 'node:fs';
import path from 'node:path';
import { type Problem, problem } from '../../base/problem.ts';
import { folded } from '../../emit/table.ts';
import type { Io } from '../io.ts';
import { EXIT, failing, printProblems } from '../report-problems.ts';
import { feedsIn, hostsOf, isLoopback, LOOPBACK } from './addresses.ts';
import { listen } from './listen.ts';

export interface ServeOptions {
  readonly host?: string;
  readonly port?: string;
}

const PORT = 8743;

/**
 * Serves a written site, read-only, to this machine or to the household's network, until it is told to end.
 *
 * @param until Gives a promise that holds until then; called once the server listens.
 */
export async function serveCommand(
  folder: string,
  options: ServeOptions,
  io: Io,
  until: () => Promise<void>,
): Promise<number> {
  const fail = failing({}, io);
  const root = path.resolve(io.cwd, folder);
  const port = portOf(options.port);
  if (typeof port !== 'number') return fail([port]);
  const missing = missingFolder(root, folder);
  if (missing) return fail([missing]);
  const host = options.host ?? LOOPBACK;
  const served = await listen(root, host, port);
  if ('problem' in served) return fail([served.problem]);
  // Before anything is said: who reads the addresses may end it at once.
  const told = until();
  tell(root, folder, host, served.port, io);
  await told;
  await served.close();
  io.stdout('Ended.\n');
  return EXIT.fine;
}

function portOf(asked: string | undefined): number | Problem {
  if (asked === undefined) return PORT;
  return /^\d{1,5}$/.test(asked) && Number(asked) < 65_536
    ? Number(asked)
    : problem('serve-option-port', { found: asked }, null);
}

function missingFolder(root: string, shown: string): Problem | null {
  const found = statSync(root, { throwIfNoEntry: false });
  if (found?.isDirectory()) return null;
  return problem('serve-folder', { folder: shown, found: found ? 'file' : 'nothing' }, null);
}

/** The addresses of the feeds, and who reaches them. */
function tell(root: string, folder: string, host: string, port: number, io: Io): void {
  const feeds = feedsIn(root);
  const hosts = hostsOf(host, port);
  const addresses = feeds.flatMap((feed) =>
    hosts.flatMap((at) => [
      `  webcal://${at}${feed}   opens the calendar program`,
      `  http://${at}${feed}   to type in`,
    ]),
  );
  const who = isLoopback(host)
    ? 'Only this machine reaches it; --host 0.0.0.0 opens it to your network.'
    : 'Whoever is in that network and knows an address can read it: there is no password.';
  const lines = [
    `Serving ${folder} at ${hosts.map((at) => `http://${at}/`).join(' ')}`,
    ...addresses,
    who,
    'Ctrl-C ends it.',
  ];
  io.stdout(`${lines.flatMap((line) => (line.startsWith(' ') ? [line] : folded(line, io.columns))).join('\n')}\n`);
  if (feeds.length === 0) printProblems([problem('serve-no-feed', { folder }, null)], io);
}
