/** Calendar programs of other people, each run on its own in a folder of the test. */
import { execFile, spawn } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:net';
import path from 'node:path';
import { promisify } from 'node:util';
import { afterAll, describe } from 'vitest';
import { folderWith } from '../kit.ts';
import { khalConfig, runs } from '../other-programs.ts';
import { eventsOf } from './three-plans.ts';

const environment = (home: string) => ({ ...process.env, HOME: home, LC_ALL: 'C.UTF-8', TZ: 'UTC' });

/** Runs a program until the tests of the file are over. */
function background(home: string, command: string, args: readonly string[]): void {
  const child = spawn(command, args, { cwd: home, env: environment(home), stdio: 'ignore' });
  afterAll(() => void child.kill());
}

/** Tests with these programs; where one is absent their name says so. */
export function withPrograms(commands: readonly string[], tests: () => void): void {
  const absent = commands.filter((command) => !runs(command, ['--version']));
  const name = commands.join(' and ');
  describe.skipIf(absent.length > 0)(
    absent.length > 0 ? `skipped: ${name}: ${absent.join(', ')} not installed` : name,
    tests,
  );
}

/**
 * A phone's part, played by vdirsyncer, which subscribes, and khal, which shows what is there. vdirsyncer names the events
 * of a feed by a hash of what they say, and writes that in the place of their UIDs.
 */
export class Subscriber {
  readonly #home: string;

  constructor(address: string) {
    this.#home = folderWith();
    const configs = {
      'vd.conf': `[general]
status_path = "status/"
[pair season]
a = "feed"
b = "local"
collections = null
conflict_resolution = "a wins"
[storage feed]
type = "http"
url = "${address}"
[storage local]
type = "filesystem"
path = "cal/"
fileext = ".ics"
`,
      'khal.conf': khalConfig('readonly = True\n', `[sqlite]\npath = ${path.join(this.#home, 'khal.db')}\n`),
    };
    for (const [name, text] of Object.entries(configs)) writeFileSync(path.join(this.#home, name), text);
    mkdirSync(path.join(this.#home, 'cal'));
  }

  async #run(command: string, args: readonly string[]): Promise<string> {
    const { stdout } = await promisify(execFile)(command, args, { cwd: this.#home, env: environment(this.#home) });
    return stdout;
  }

  discover = () => this.#run('vdirsyncer', ['-c', 'vd.conf', 'discover', 'season']);
  sync = () => this.#run('vdirsyncer', ['-c', 'vd.conf', 'sync']);

  #files = () => readdirSync(path.join(this.#home, 'cal')).filter((name) => name.endsWith('.ics'));
  #pathOf = (name: string) => path.join(this.#home, 'cal', name);

  /** What lies in the folder. */
  holds = () => new Map(this.#files().flatMap((name) => [...eventsOf(readFileSync(this.#pathOf(name), 'utf8'))]));

  /** The title of each event and a mark of its file, which changes whenever the file is written. */
  marks(): ReadonlyMap<string, string> {
    return new Map(
      this.#files().flatMap((name) => {
        const { ino, mtimeNs } = statSync(this.#pathOf(name), { bigint: true });
        const events = eventsOf(readFileSync(this.#pathOf(name), 'utf8')).values();
        return [...events].map(({ summary }): [string, string] => [summary, `${name} ${ino} ${mtimeNs}`]);
      }),
    );
  }

  /** What khal shows of the year: start, status and title. */
  async shows(): Promise<readonly string[]> {
    const list = ['-c', 'khal.conf', 'list', '--once', '--day-format', ''];
    const listed = await this.#run('khal', [
      ...list,
      '--format',
      '{start-long} {status} {title}',
      '2027-01-01',
      '400d',
    ]);
    const rows = listed.split('\n').map((row) => row.trim().replace(/ +/g, ' '));
    return rows.filter((row) => row !== '').sort();
  }
}

/** A household's own calendar server. */
export class CalendarServer {
  readonly #base: string;

  private constructor(port: number) {
    this.#base = `http://localhost:${port}/me/season/`;
  }

  static async start(): Promise<CalendarServer> {
    const port = await freePort();
    const home = folderWith({
      'radicale.conf': `[server]
hosts = localhost:${port}
[auth]
type = none
[storage]
filesystem_folder = collections
`,
    });
    background(home, 'radicale', ['--config', 'radicale.conf']);
    const server = new CalendarServer(port);
    await server.#answers();
    return server;
  }

  async #answers(): Promise<void> {
    for (let tries = 0; tries < 100; tries++) {
      try {
        await this.#ask('OPTIONS');
        return;
      } catch {
        await new Promise((later) => setTimeout(later, 100));
      }
    }
    throw new Error('radicale does not answer');
  }

  #ask(method: string, body?: string, headers: Record<string, string> = {}): Promise<Response> {
    const authorization = `Basic ${Buffer.from('me:x').toString('base64')}`;
    return fetch(this.#base, { method, headers: { authorization, ...headers }, ...(body !== undefined && { body }) });
  }

  /** Puts a whole feed in the collection's place; gives the status. */
  async put(feed: string): Promise<number> {
    return (await this.#ask('PUT', feed, { 'content-type': 'text/calendar; charset=utf-8' })).status;
  }

  holds = async () => eventsOf(await (await this.#ask('GET')).text());

  /** The items' names and ETags. */
  async tags(): Promise<ReadonlyMap<string, string>> {
    const asked = '<propfind xmlns="DAV:"><prop><getetag/></prop></propfind>';
    const answer = await (await this.#ask('PROPFIND', asked, { depth: '1' })).text();
    const items = [...answer.matchAll(/<href>([^<]*\.ics)<\/href>.*?<getetag>([^<]*)<\/getetag>/gs)];
    return new Map(items.map(([, href = '', tag = '']) => [decodeURIComponent(href), tag]));
  }
}

/** A port that nobody has just now. */
function freePort(): Promise<number> {
  return new Promise((found) => {
    const server = createServer();
    server.listen(0, 'localhost', () => {
      const address = server.address();
      server.close(() => found(typeof address === 'object' && address ? address.port : 0));
    });
  });
}
