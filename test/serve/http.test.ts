/** `serve` over real HTTP: what is given out, with which headers, and what never is. */
import { mkdirSync, renameSync, symlinkSync, writeFileSync } from 'node:fs';
import { connect } from 'node:net';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { siteFile, unlessAbsent } from '../../src/shell/serve/site-file.ts';
import { folderWith } from '../kit.ts';
import { type Answered, ask, serving } from './server.ts';

const FEED = 'BEGIN:VCALENDAR\r\nVERSION:2.0\r\nX-WR-CALNAME:Grün\r\nEND:VCALENDAR\r\n';
const above = folderWith({
  'secret.ics': FEED,
  'secret.txt': 'outside',
  'site-2/feed.ics': FEED,
  'site/lawn.ics': FEED,
  'site/two words.ics': FEED,
  'site/half.ics': FEED.slice(0, 40),
  'site/empty.ics': '',
  'site/page.html': '<p>page</p>',
  'site/drawing.svg': '<svg/>',
  'site/season.json': '{}',
  'site/changes.xml': '<feed/>',
  'site/changes.atom': '<feed/>',
  'site/notes.txt': 'notes',
  'site/picture.png': 'png',
  'site/lawn.ledger.json': '{}',
  'site/lawn.journal.json': '{}',
  'site/lawn.changes.json': '{}',
  'site/lawn.ics.4711.part': FEED,
  'site/lawn.yaml': 'kind: lawn',
  'site/plain': 'no ending',
  'site/.hidden.ics': FEED,
  'site/.git/config.txt': 'hidden',
  'site/with-index/index.html': '<p>index</p>',
  'site/without/lawn.ics': FEED,
});
const root = path.join(above, 'site');
mkdirSync(path.join(root, 'folder.ics'));
for (const [name, to] of [
  ['out.ics', '../secret.ics'],
  ['outside', '..'],
  ['in.ics', 'lawn.ics'],
  ['to-ledger.json', 'lawn.ledger.json'],
  ['to-hidden.ics', '.hidden.ics'],
  ['dangling.ics', 'nowhere.ics'],
  ['round.ics', 'round.ics'],
] as const)
  symlinkSync(to, path.join(root, name));

const port = await serving(root);
const get = (path: string, headers: Record<string, string> = {}) => ask(port, path, { headers });
const tagOf = ({ headers }: Answered) => headers.etag ?? '';

describe('a file of the site', () => {
  test('comes as its bytes', async () => {
    const { status, body } = await get('/lawn.ics');
    expect(status).toBe(200);
    expect(body.equals(Buffer.from(FEED))).toBe(true);
  });
  test.each([
    ['/lawn.ics', 'text/calendar; charset=utf-8'],
    ['/page.html', 'text/html; charset=utf-8'],
    ['/drawing.svg', 'image/svg+xml'],
    ['/season.json', 'application/json'],
    ['/changes.xml', 'application/xml'],
    ['/changes.atom', 'application/atom+xml'],
    ['/notes.txt', 'text/plain; charset=utf-8'],
    ['/picture.png', 'image/png'],
  ])('%s has the type %s', async (file, type) => {
    const { status, headers } = await get(file);
    expect([status, headers['content-type']]).toEqual([200, type]);
  });
  test.each(['/lawn.ics?token=x', '/two%20words.ics', '/%6Cawn.ics', '/in.ics', '/without/lawn.ics'])(
    'comes by %s too',
    async (file) => expect((await get(file)).body.toString()).toBe(FEED),
  );
  test('says how long it holds, and is kept from other sites, searches and guesses of its type', async () =>
    expect((await get('/lawn.ics')).headers).toMatchObject({
      'cache-control': expect.stringMatching(/^private, max-age=\d+$/),
      'referrer-policy': 'no-referrer',
      'x-robots-tag': 'noindex, nofollow',
      'x-content-type-options': 'nosniff',
      'content-security-policy': expect.stringMatching(/^default-src 'none';/),
    }));
  describe('a page', () => {
    const page = (policy: string, body = '') => `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<title>Page</title></head><body>${body}</body></html>`;
    const SCRIPT = "script-src 'sha256-LL1sTDHC7k7jhvxsswitQGnAFoPfniAEVbkJD0gBVgg='";
    const policyOf = async (text: string, asked = {}) => {
      writeFileSync(path.join(root, 'scripted.html'), text);
      const { headers } = await get('/scripted.html', asked);
      return String(headers['content-security-policy']);
    };
    test('may run the script that its own policy names', async () =>
      expect(await policyOf(page(`default-src 'none'; ${SCRIPT}`))).toContain(SCRIPT));
    test('may run it as well where the reader has it already', async () =>
      expect(await policyOf(page(SCRIPT), { 'if-none-match': '*' })).toContain(SCRIPT));
    test.each([
      ['names none', page("default-src 'none'")],
      ['would let all run', page("script-src 'unsafe-inline'")],
      ['stands further down, as somebody may have written it', page("default-src 'none'", page(SCRIPT))],
    ])('whose policy %s may run none', async (_, text) => expect(await policyOf(text)).not.toContain('script-src'));
  });
  test('is not compressed, whoever asks for it', async () => {
    const { headers, body } = await get('/lawn.ics', { 'accept-encoding': 'gzip, br' });
    expect(headers['content-encoding']).toBeUndefined();
    expect(Number(headers['content-length'])).toBe(body.length);
  });
  test('is no download, and sets no cookie', async () => {
    const { headers } = await get('/lawn.ics');
    expect([headers['content-disposition'], headers['set-cookie']]).toEqual([undefined, undefined]);
  });
  test('comes whatever types the reader accepts', async () =>
    expect((await get('/lawn.ics', { accept: 'image/png' })).status).toBe(200));
});

describe('HEAD', () => {
  test('has the headers of GET and no body', async () => {
    const [head, whole] = [await ask(port, '/lawn.ics', { method: 'HEAD' }), await get('/lawn.ics')];
    expect(head.body.length).toBe(0);
    for (const name of ['etag', 'content-type', 'content-length', 'cache-control'])
      expect(head.headers[name]).toBe(whole.headers[name]);
    expect(head.status).toBe(200);
  });
});

describe('the ETag', () => {
  test('is strong', async () => expect(tagOf(await get('/lawn.ics'))).toMatch(/^"[\w-]{32}"$/));
  test('is of the bytes: the same for the same, in two files', async () =>
    expect(tagOf(await get('/without/lawn.ics'))).toBe(tagOf(await get('/lawn.ics'))));
  test('changes with the bytes, also where size and time of the file do not', async () => {
    const file = path.join(root, 'changing.txt');
    writeFileSync(file, 'one');
    const before = tagOf(await get('/changing.txt'));
    writeFileSync(file, 'two');
    const after = await get('/changing.txt', { 'if-none-match': before });
    expect([after.status, after.body.toString()]).toEqual([200, 'two']);
    expect(tagOf(after)).not.toBe(before);
  });
  test.each([
    ['alone', (tag: string) => tag],
    ['weak', (tag: string) => `W/${tag}`],
    ['in a list', (tag: string) => `"a", W/"b",${tag} , "c"`],
    ['as a star', () => '*'],
  ])('that is known, %s, brings 304 without a body', async (_, asked) => {
    const tag = tagOf(await get('/lawn.ics'));
    const { status, headers, body } = await get('/lawn.ics', { 'if-none-match': asked(tag) });
    expect([status, headers.etag, body.length]).toEqual([304, tag, 0]);
    expect(headers['cache-control']).toMatch(/^private/);
  });
  test.each(['"other"', '', 'W/', '"'])('%j that is not known brings the whole', async (asked) =>
    expect((await get('/lawn.ics', { 'if-none-match': asked })).status).toBe(200),
  );
  test('brings no length with 304, which would be taken for that of the feed', async () => {
    const { headers } = await get('/lawn.ics', { 'if-none-match': '*' });
    expect(headers['content-length']).toBeUndefined();
  });
  test('brings 304 to HEAD too', async () =>
    expect((await ask(port, '/lawn.ics', { method: 'HEAD', headers: { 'if-none-match': '*' } })).status).toBe(304));
  test('a star does not stand for a file that is not there', async () =>
    expect((await get('/nothing.ics', { 'if-none-match': '*' })).status).toBe(404));
  test('goes before the time of a file, which tells nothing of events that went', async () =>
    expect((await get('/lawn.ics', { 'if-modified-since': new Date(2100, 0).toUTCString() })).status).toBe(200));
});

describe('never given out', () => {
  test.each([
    '/../secret.ics',
    '/../site-2/feed.ics',
    '/without/../../secret.ics',
    '/without/../lawn.ics',
    '/%2e%2e/secret.ics',
    '/..%2fsecret.ics',
    '/%2e%2e%2fsecret.ics',
    '/..%5csecret.ics',
    '/%252e%252e/secret.ics',
    '/..%c0%afsecret.ics',
    '/./lawn.ics',
    '//lawn.ics',
    '//etc/hosts.txt',
    '/outside/secret.txt',
    '/out.ics',
    '/to-ledger.json',
    '/to-hidden.ics',
    '/dangling.ics',
    '/round.ics',
    '/.hidden.ics',
    '/.git/config.txt',
    '/%2egit/config.txt',
    '/lawn.ics%00',
    '/lawn.ics%00.txt',
    '/lawn.ics%0d%0a',
    '/lawn.ics::$DATA',
    '/lawn.ics.',
    '/lawn.ics%20',
    '/lawn.ledger.json',
    '/lawn.LEDGER.json',
    '/lawn.journal.json',
    '/lawn.changes.json',
    '/lawn.ics.4711.part',
    '/lawn.yaml',
    '/plain',
    '/folder.ics',
    '/nothing.ics',
    '/%',
    '/%zz.ics',
    'http://localhost/lawn.ics',
    '*',
  ])('%s', async (asked) => {
    const { status, headers, body } = await get(asked);
    expect([status, headers['content-type'], headers.etag]).toEqual([404, 'text/plain; charset=utf-8', undefined]);
    expect(body.toString()).not.toMatch(/VCALENDAR|outside|hidden/);
  });
  test.each([
    ['a name longer than any file has', `/${'a'.repeat(5000)}.ics`],
    ['a path deeper than any folder', `/${'a/'.repeat(5000)}lawn.ics`],
  ])('%s', async (_, asked) => expect((await get(asked)).status).toBe(404));
  test.each(['/', '/without/', '/without', '/.git/'])('a list of the folder %s', async (asked) =>
    expect((await get(asked)).status).toBe(404),
  );
  test('though a folder shows its index', async () =>
    expect((await get('/with-index/')).body.toString()).toBe('<p>index</p>'));
  test.each(['/half.ics', '/empty.ics'])('%s, a feed that does not end: readers keep what they have', async (asked) => {
    const { status, headers } = await get(asked);
    expect([status, headers['retry-after'], headers['content-type']]).toEqual([503, '60', 'text/plain; charset=utf-8']);
  });
});

describe('anything but reading', () => {
  test.each(['POST', 'PUT', 'DELETE', 'PATCH', 'OPTIONS', 'PROPFIND', 'TRACE'])('%s is refused', async (method) => {
    const { status, headers } = await ask(port, '/lawn.ics', { method });
    expect([status, headers.allow]).toEqual([405, 'GET, HEAD']);
  });
  test('leaves the site as it was', async () => {
    await ask(port, '/new.ics', { method: 'PUT' });
    expect((await get('/new.ics')).status).toBe(404);
  });
});

test('who asks for a part gets the whole', async () => {
  const { status, body } = await get('/lawn.ics', { range: 'bytes=0-9' });
  expect([status, body.toString()]).toEqual([200, FEED]);
});

describe('a file that cannot be looked at', () => {
  const failing = (code: string) => unlessAbsent(() => Promise.reject(Object.assign(new Error(code), { code })));
  test.each(['ENOENT', 'ENOTDIR', 'ELOOP', 'ENAMETOOLONG'])('for %s is not there', async (code) =>
    expect(await failing(code)).toBeNull(),
  );
  test.each(['EMFILE', 'ENFILE', 'EIO', 'EACCES', 'ENOMEM'])(
    'for %s is asked for again, and not told as gone',
    async (code) => expect(await failing(code)).toBe('busy'),
  );
  test('is one in a site that is not there', async () =>
    expect(await siteFile('/nowhere/at/all', '/a.ics')).toBeNull());
});

test('two thousand requests while the feed is replaced each get one of the two, whole and by its own tag', async () => {
  const [one, two] = ['one', 'two'].map((name) => FEED.replace('Grün', name.repeat(20_000)));
  const file = path.join(root, 'replaced.ics');
  const put = (text = '') => {
    writeFileSync(`${file}.part`, text);
    renameSync(`${file}.part`, file);
  };
  put(one);
  const tags = new Map<string, string>();
  let done = 0;
  const client = async () => {
    for (; done < 2000; done++) {
      if (done % 20 === 0) put(done % 40 === 0 ? two : one);
      const { status, headers, body } = await get('/replaced.ics');
      expect([status, [one, two].includes(body.toString())]).toEqual([200, true]);
      expect(tags.get(headers.etag ?? '') ?? body.toString()).toBe(body.toString());
      tags.set(headers.etag ?? '', body.toString());
    }
  };
  await Promise.all(Array.from({ length: 16 }, client));
  expect(tags.size).toBe(2);
});

test('readers that say nothing, say nonsense or hang up take nothing from the others', async () => {
  const quiet = Array.from({ length: 50 }, () => connect(port, 'localhost'));
  const odd = ['GET /lawn.ics', '\x16\x03\x01', `GET /${'a'.repeat(40_000)} HTTP/1.1\r\n`].map((text) => {
    const socket = connect(port, 'localhost', () => socket.write(text));
    return socket;
  });
  const gone = Array.from({ length: 50 }, () => {
    const socket = connect(port, 'localhost', () => {
      socket.write('GET /lawn.ics HTTP/1.1\r\nHost: x\r\n\r\n');
      socket.destroy();
    });
    return socket;
  });
  for (const socket of [...quiet, ...odd, ...gone]) socket.on('error', () => {});
  const answers = await Promise.all(Array.from({ length: 50 }, () => get('/lawn.ics')));
  for (const socket of [...quiet, ...odd]) socket.destroy();
  expect(answers.filter(({ body }) => body.toString() === FEED).length).toBe(50);
});

test('a hundred at once all get the whole', async () => {
  const answers = await Promise.all(Array.from({ length: 100 }, () => get('/lawn.ics')));
  expect(answers.filter(({ status, body }) => status === 200 && body.toString() === FEED).length).toBe(100);
});
