/** The way to the network, against a server on this machine that fails in every way a service does. */
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { beforeEach, describe, expect, test } from 'vitest';
import { problem } from '../../src/base/problem.ts';
import { type FetchOptions, fetchText } from '../../src/shell/weather/fetch-text.ts';
import { retryAfter } from '../../src/shell/weather/once.ts';
import { folderWith } from '../kit.ts';
import { localServer } from './server.ts';

const GOOD = '{"fine":true}';
const { base, asked } = await localServer((request, response, count) => {
  const [where = ''] = (request.url ?? '').split('?');
  const send = (status: number, body = '', headers = {}) => void response.writeHead(status, headers).end(body);
  switch (where) {
    case '/good':
      return send(200, GOOD);
    case '/agent':
      return send(200, String(request.headers['user-agent']));
    case '/busy-once':
      return count === 1 ? send(429, '', { 'retry-after': '7' }) : send(200, GOOD);
    case '/busy-long':
      return send(429, '', { 'retry-after': '3600' });
    case '/broken':
      return send(500);
    case '/broken-twice':
      return count <= 2 ? send(503) : send(200, GOOD);
    case '/wrong':
      return send(400, '{"error":true,"reason":"Latitude must be in range of -90 to 90."}');
    case '/absent':
      return send(404, '<html>gone</html>');
    case '/cut': // announces more than it sends, then hangs up
      response.writeHead(200, { 'content-length': '1000' });
      response.write('{"daily":');
      return void setTimeout(() => response.destroy(), 10);
    case '/cut-once':
      return count === 1 ? send(200, '{"daily":') : send(200, GOOD);
    case '/drip': {
      response.writeHead(200);
      const drip = setInterval(() => response.write(' '), 20);
      return void response.on('close', () => clearInterval(drip));
    }
    case '/silent':
      return;
    case '/huge': // no length announced
      response.writeHead(200);
      for (let i = 0; i < 64; i++) response.write('x'.repeat(64 * 1024));
      return void response.end();
    case '/huge-announced':
      return send(200, '', { 'content-length': String(2 ** 33) });
    case '/page':
      return send(200, '<html>');
    default:
      return send(404);
  }
});

let waits: number[] = [];
beforeEach(() => {
  waits = [];
});
const NOW = Date.UTC(2027, 3, 2, 12);
const HOUR = 3_600_000;
const options = (more: Partial<FetchOptions> = {}): FetchOptions => ({
  service: 'Test service',
  fetch: globalThis.fetch,
  cacheDir: folderWith(),
  maxAgeMs: HOUR,
  timeoutMs: 2000,
  retries: 3,
  backoffMs: 100,
  maxBytes: 2 ** 20,
  offline: false,
  now: () => NOW,
  sleep: async (ms) => void waits.push(ms),
  ...more,
});
const get = async (where: string, more: Partial<FetchOptions> = {}) => {
  const fetched = await fetchText(`${base}${where}`, options(more));
  return {
    text: 'text' in fetched ? fetched.text : null,
    from: 'text' in fetched ? fetched.from : null,
    codes: fetched.problems.map(({ code }) => code),
    messages: fetched.problems.map(({ message }) => message).join('\n'),
  };
};
const noNetwork: typeof fetch = async () => {
  throw Object.assign(new TypeError('fetch failed'), { cause: { code: 'ENOTFOUND' } });
};
const jsonOnly = (text: string) => {
  try {
    JSON.parse(text);
    return null;
  } catch {
    return problem('service-nonsense', { service: 'Test service', reason: 'not JSON' }, null);
  }
};

describe('an answer', () => {
  test('comes from the network', async () => {
    expect(await get('/good')).toMatchObject({ text: GOOD, from: 'network', codes: [] });
  });
  test('is asked for by name', async () => {
    expect((await get('/agent')).text).toBe('soilclock');
  });
});

describe('what may pass is tried again', () => {
  test('429: after the wait that is asked for', async () => {
    expect(await get('/busy-once')).toMatchObject({ text: GOOD, codes: [] });
    expect(waits).toEqual([7000]);
  });
  test('429 with a wait of an hour: not waited for', async () => {
    expect((await get('/busy-long')).codes).toEqual(['service-status']);
    expect(waits).toEqual([]);
  });
  test('5xx: with waits that double', async () => {
    expect(await get('/broken-twice')).toMatchObject({ text: GOOD, codes: [] });
    expect(waits).toEqual([100, 200]);
  });
  test('5xx to the end', async () => {
    expect(await get('/broken')).toMatchObject({ text: null, codes: ['service-status'] });
    expect(waits).toEqual([100, 200, 400]);
  });
  test('an answer that breaks off on the way', async () => {
    expect(await get('/cut', { retries: 1 })).toMatchObject({ text: null, codes: ['service-no-network'] });
    expect(waits).toEqual([100]);
  });
  test('an answer that was sent in part', async () => {
    expect(await get('/cut-once', { refuse: jsonOnly })).toMatchObject({ text: GOOD, codes: [] });
  });
  test('waits never pass 30 s', async () => {
    await get('/broken', { backoffMs: 20_000 });
    expect(waits).toEqual([20_000, 30_000, 30_000]);
  });
  test.each([
    ['5', 5000],
    ['Fri, 02 Apr 2027 12:00:30 GMT', 30_000],
    ['Fri, 02 Apr 2027 11:00:00 GMT', 0],
    ['soon', null],
    [null, null],
  ])('Retry-After %s', (header, ms) => {
    expect(retryAfter(header, NOW)).toBe(ms);
  });
});

describe('what will not pass is not', () => {
  test('400 with its reason', async () => {
    const { codes, messages } = await get('/wrong');
    expect([codes, waits]).toEqual([['service-status'], []]);
    expect(messages).toContain('Latitude must be in range');
  });
  test('404 without one', async () => {
    expect((await get('/absent')).codes).toEqual(['service-status']);
  });
  test.each([['/huge'], ['/huge-announced']])('%s: more than is read', async (where) => {
    expect((await get(where)).codes).toEqual(['service-too-large']);
    expect(waits).toEqual([]);
  });
});

describe('time', () => {
  test.each([['/silent'], ['/drip']])('%s: no whole answer in time', async (where) => {
    const start = performance.now();
    expect((await get(where, { timeoutMs: 150, retries: 1 })).codes).toEqual(['service-timeout']);
    expect(performance.now() - start).toBeLessThan(1500);
  });
});

describe('no network', () => {
  test('is said with the host and the reason', async () => {
    const { codes, messages } = await get('/good', { fetch: noNetwork });
    expect(codes).toEqual(['service-no-network']);
    expect(messages).toContain('ENOTFOUND');
    expect(messages).toContain('localhost');
  });
  test('a port where nobody listens', async () => {
    const fetched = await fetchText('http://localhost:1/x', options({ retries: 0 }));
    expect(fetched.problems.map(({ code }) => code)).toEqual(['service-no-network']);
  });
  test('--offline with an empty cache', async () => {
    expect((await get('/good', { offline: true })).codes).toEqual(['service-offline']);
  });
});

describe('the cache', () => {
  test('answers while it is young, without the network', async () => {
    const cacheDir = folderWith();
    await get('/good', { cacheDir });
    const before = asked.length;
    expect(await get('/good', { cacheDir, fetch: noNetwork })).toMatchObject({ text: GOOD, from: 'cache', codes: [] });
    expect(await get('/good', { cacheDir, offline: true })).toMatchObject({ text: GOOD, from: 'cache', codes: [] });
    expect(asked.length).toBe(before);
  });
  const later = () => NOW + 5 * HOUR;
  test('is asked anew once it is old', async () => {
    const cacheDir = folderWith();
    await get('/good', { cacheDir });
    expect(await get('/good', { cacheDir, now: later })).toMatchObject({ from: 'network', codes: [] });
  });
  test('stands in with a warning where the network is down', async () => {
    const cacheDir = folderWith();
    await get('/good', { cacheDir });
    const { text, codes, messages } = await get('/good', { cacheDir, now: later, fetch: noNetwork });
    expect([text, codes]).toEqual([GOOD, ['service-stale']]);
    expect(messages).toContain('2027-04-02');
  });
  test('stands in with a warning under --offline', async () => {
    const cacheDir = folderWith();
    await get('/good', { cacheDir });
    expect(await get('/good', { cacheDir, now: later, offline: true })).toMatchObject({ codes: ['service-stale'] });
  });
  test('stands in under its key where the address has changed', async () => {
    const cacheDir = folderWith();
    await get('/good?end=1', { cacheDir, key: 'good' });
    expect(await get('/good?end=2', { cacheDir, key: 'good', fetch: noNetwork })).toMatchObject({
      text: GOOD,
      codes: ['service-stale'],
    });
    expect(await get('/good?end=2', { cacheDir, key: 'good' })).toMatchObject({ from: 'network', codes: [] });
  });
  test('never keeps nonsense', async () => {
    const cacheDir = folderWith();
    expect((await get('/page', { cacheDir, refuse: jsonOnly, retries: 0 })).codes).toEqual(['service-nonsense']);
    expect(readdirSync(cacheDir)).toEqual([]);
  });
  test.each([['{"kind":'], ['{}'], ['']])('is asked anew where its file is damaged: %j', async (damage) => {
    const cacheDir = folderWith();
    await get('/good', { cacheDir });
    const [file = ''] = readdirSync(cacheDir);
    writeFileSync(path.join(cacheDir, file), damage);
    expect(await get('/good', { cacheDir })).toMatchObject({ text: GOOD, from: 'network', codes: [] });
    expect(readFileSync(path.join(cacheDir, file), 'utf8')).toContain('weather-answer');
  });
  test('leaves no part of a file, and its names say nothing of the place', async () => {
    const cacheDir = folderWith();
    await get('/good?latitude=39.2', { cacheDir });
    expect(readdirSync(cacheDir).every((file) => /^[0-9a-f]{24}\.json$/.test(file))).toBe(true);
  });
  test('that cannot be written is said; the answer counts all the same', async () => {
    const cacheDir = path.join(folderWith({ file: '' }), 'file', 'cache');
    expect(await get('/good', { cacheDir })).toMatchObject({ text: GOOD, codes: ['write-failed'] });
  });
});
