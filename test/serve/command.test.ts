/** `soilclock serve`: what it says, what it refuses, and how it ends. */
import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { writeFileSync } from 'node:fs';
import { connect } from 'node:net';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { hostsOf, isLoopback } from '../../src/shell/serve/addresses.ts';
import { serveCommand } from '../../src/shell/serve/serve-command.ts';
import { folderWith, root, soilclock } from '../kit.ts';
import { ask, serving } from './server.ts';

const FEED = 'BEGIN:VCALENDAR\r\nEND:VCALENDAR\r\n';
const site = () =>
  folderWith({
    'out/site/lawn.ics': FEED,
    'out/site/sub/my yard.ics': FEED,
    'out/site/.old.ics': FEED,
    'out/site/a.txt': '',
  });
const codes = (stderr: string) => [...stderr.matchAll(/\[([a-z-]+)\]$/gm)].map(([, code]) => code);

/** Runs the command until it has listened, and asks it something. */
async function whileServing<T>(
  cwd: string,
  options: { host?: string },
  meanwhile: (port: number, said: () => string) => Promise<T>,
) {
  const [out, err]: [string[], string[]] = [[], []];
  const io = { stdout: (text: string) => void out.push(text), stderr: (text: string) => void err.push(text) };
  let end = () => {};
  const running = serveCommand(
    'out/site',
    { ...options, port: '0' },
    { ...io, cwd, now: () => 0, columns: 100 },
    () => {
      return new Promise<void>((ended) => {
        end = ended;
      });
    },
  );
  while (out.length === 0) await new Promise((later) => setTimeout(later, 5));
  const port = Number(/:(\d+)\//.exec(out[0] ?? '')?.[1]);
  const answered = await meanwhile(port, () => out.join(''));
  end();
  return { code: await running, answered, port, stdout: out.join(''), stderr: err.join('') };
}

describe('while it serves', () => {
  test('it answers, and ends with 0', async () => {
    const { code, answered } = await whileServing(site(), {}, (port) => ask(port, '/lawn.ics'));
    expect([code, answered.status]).toEqual([0, 200]);
  });
  test('it prints the two addresses of each feed and of nothing else', async () => {
    const { stdout, port } = await whileServing(site(), {}, async () => {});
    expect(stdout.match(/\S+:\/\/\S+\.\w+/g)).toEqual([
      `webcal://localhost:${port}/lawn.ics`,
      `http://localhost:${port}/lawn.ics`,
      `webcal://localhost:${port}/sub/my%20yard.ics`,
      `http://localhost:${port}/sub/my%20yard.ics`,
    ]);
  });
  test('the addresses that it prints lead to the feeds', async () => {
    const { answered } = await whileServing(site(), {}, (port) => ask(port, '/sub/my%20yard.ics'));
    expect(answered.body.toString()).toBe(FEED);
  });
  test('to all networks, the addresses of the machine in them that it names lead to the feed too', async () => {
    const { stdout, answered } = await whileServing(site(), { host: '0.0.0.0' }, async (_, said) => {
      const addresses = said().match(/http:\/\/\S+\.ics/g) ?? [];
      return Promise.all(addresses.map(async (one) => (await fetch(one)).status));
    });
    expect(answered.length).toBeGreaterThan(1);
    expect(answered.every((status) => status === 200)).toBe(true);
    expect(stdout).not.toContain('//0.0.0.0');
    expect(stdout).toContain('no password');
  });
  test('to this machine, it does not warn of others', async () =>
    expect((await whileServing(site(), {}, async () => {})).stdout).not.toContain('no password'));
  test('after its end nobody answers', async () => {
    const { port } = await whileServing(site(), {}, async () => {});
    await expect(ask(port, '/lawn.ics')).rejects.toMatchObject({ code: 'ECONNREFUSED' });
  });
  test('a folder without a feed is told, and served as soon as one is there', async () => {
    const { code, stderr } = await whileServing(folderWith({ 'out/site/a.txt': '' }), {}, async () => {});
    expect([code, codes(stderr)]).toEqual([0, ['serve-no-feed']]);
  });
});

test.each([
  ['localhost', true],
  ['::1', true],
  ['0.0.0.0', false],
  ['::', false],
  ['pi.local', false],
  ['192.0.2.1', false],
])('%s is reached from this machine alone: %s', (host, alone) => expect(isLoopback(host)).toBe(alone));

test('an IPv6 address stands in brackets', () => expect(hostsOf('2001:db8::1', 80)).toEqual(['[2001:db8::1]:80']));

describe('refused', () => {
  test('a port that is taken', async () => {
    const cwd = site();
    const port = await serving(cwd);
    const { code, stderr } = await soilclock(cwd, ['serve', '--port', String(port)]);
    expect([code, codes(stderr)]).toEqual([1, ['serve-port-taken']]);
  });
  test.each(['', 'http', '-1', '65536', '80.5', '1e3'])('%j for a port', async (port) => {
    const { code, stderr } = await soilclock(site(), ['serve', `--port=${port}`]);
    expect([code, codes(stderr)]).toEqual([2, ['serve-option-port']]);
  });
  test.each([
    ['a folder that is not there', ['serve', 'nowhere']],
    ['a file for a folder', ['serve', 'out/site/lawn.ics']],
  ])('%s', async (_, argv) => {
    const { code, stderr } = await soilclock(site(), argv);
    expect([code, codes(stderr)]).toEqual([2, ['serve-folder']]);
  });
  test('a host that is not of this machine', async () => {
    const { code, stderr } = await soilclock(site(), ['serve', '--port', '0', '--host', '192.0.2.1']);
    expect([code, codes(stderr)]).toEqual([1, ['serve-host']]);
  });
});

test('it ends within seconds though a reader takes nothing of what it asked for', async () => {
  const cwd = site();
  writeFileSync(path.join(cwd, 'out/site/large.txt'), 'x'.repeat(50_000_000));
  const began = Date.now();
  const { code } = await whileServing(cwd, {}, async (port) => {
    const slow = connect(port, 'localhost');
    slow.on('error', () => {}).pause();
    slow.write('GET /large.txt HTTP/1.1\r\nHost: x\r\n\r\n');
    await new Promise((later) => setTimeout(later, 300));
  });
  expect([code, Date.now() - began < 15_000]).toEqual([0, true]);
});

test.each(['SIGINT', 'SIGTERM'] as const)(
  'a process of its own ends with 0 on %s, a reader still connected',
  async (signal) => {
    const child = spawn(process.execPath, [path.join(root, 'src/bin.cjs'), 'serve', '--port', '0'], { cwd: site() });
    let said = '';
    child.stdout.setEncoding('utf8').on('data', (text: string) => {
      said += text;
    });
    // Not its exit, before which the last of what it said may not have been read.
    const ended = once(child, 'close');
    while (!said.includes('Ctrl-C')) await once(child.stdout, 'data');
    const kept = await fetch(`http://localhost:${/:(\d+)\//.exec(said)?.[1]}/lawn.ics`);
    expect(await kept.text()).toBe(FEED);
    child.kill(signal);
    expect(await ended).toEqual([0, null]);
    expect(said.endsWith('Ended.\n')).toBe(true);
  },
);
