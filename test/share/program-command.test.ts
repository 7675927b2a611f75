/** A program by its address: fetched once, pinned, kept, never changed unasked. */
import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { beforeEach, describe, expect, test } from 'vitest';
import { LONG, lawnText, root, soilclock } from '../kit.ts';
import { bring, brought, lawnFolder, read, SHARED } from './kit.ts';
import { internet, PUBLIC } from './server.ts';

let served = SHARED;
const net = await internet((_, response) => void response.writeHead(200, { 'content-type': 'text/yaml' }).end(served));
const network = net.network();
const address = `https://lawns.example:${net.port}/fescue.yaml`;
const hash = (text: string): string => createHash('sha256').update(text).digest('hex');
const pinned = (text: string): string => `{ from: ${address}, sha256: "${hash(text)}" }`;
const plan = async (cwd: string, more: readonly string[] = []) => {
  const { code, stdout, stderr } = await soilclock(cwd, ['plan', 'lawn.yaml', '--as-of', '2027-03-10', ...more]);
  return { code, stdout, stderr };
};
const codesOf = (text: string): string[] => [...text.matchAll(/\[([a-z-]+)\]/g)].map(([, code]) => code!);
const LESS = SHARED.replace('0.9 lb', '0.7 lb');

beforeEach(() => {
  served = SHARED;
  net.asked.length = 0;
});

describe('program fetch', LONG, () => {
  test('pins the program in the lawn file, and changes nothing else in it', async () => {
    const cwd = lawnFolder(`${address} # from the island`);
    const before = read(cwd);
    const { code } = await bring(cwd, network);
    expect([code, read(cwd)]).toEqual([0, before.replace(address, pinned(SHARED))]);
  });
  test('tells who made it, under which licence, and what it asks for', async () => {
    const { stdout } = await bring(lawnFolder(address), network);
    for (const part of ['The keeper of Saltwether Island', 'CC-BY-4.0', hash(SHARED), address, 'nutrients: N'])
      expect(stdout).toContain(part);
  });
  test('asks once: the second time it is here', async () => {
    const cwd = lawnFolder(address);
    const from = [await brought(cwd, network), await brought(cwd, network)].map(({ programs }) => programs[0]!.from);
    expect([from, net.asked.length]).toEqual([['network', 'cache'], 1]);
  });
  test('brings what an area has of its own too, each once', async () => {
    const areas = `areas: { front: { rectangle: [50 ft, 20 ft] }, back: { rectangle: [50 ft, 20 ft], program: ${address} } }\n`;
    const cwd = lawnFolder(address);
    writeFileSync(path.join(cwd, 'lawn.yaml'), read(cwd).replace(/^areas.*\n/m, areas));
    await bring(cwd, network);
    expect([read(cwd).split(pinned(SHARED)).length - 1, net.asked.length]).toEqual([2, 1]);
  });
  test('takes an address without a lawn', async () => {
    const { code, programs } = await brought(lawnFolder('program.yaml'), network, { words: [address] });
    expect([code, programs[0]!.sha256]).toEqual([0, hash(SHARED)]);
  });
  test('pins what an anchor names in two places', async () => {
    const areas = 'areas: { front: { rectangle: [50 ft, 20 ft] }, back: { rectangle: [50 ft, 20 ft], program: *p } }\n';
    const cwd = lawnFolder(`&p ${address}`);
    writeFileSync(path.join(cwd, 'lawn.yaml'), read(cwd).replace(/^areas.*\n/m, areas));
    expect([(await bring(cwd, network)).code, read(cwd).split(pinned(SHARED)).length - 1]).toEqual([0, 2]);
  });
  test('says what to write where it cannot change the file', async () => {
    const cwd = lawnFolder(address);
    const latin = Buffer.concat([Buffer.from('# caf'), Buffer.from([0xe9]), Buffer.from(`\n${read(cwd)}`)]);
    writeFileSync(path.join(cwd, 'lawn.yaml'), latin);
    const { codes, problems } = await brought(cwd, network);
    expect([codes.at(-1), problems.at(-1)!.message.includes(hash(SHARED))]).toEqual(['program-unpinned', true]);
    expect(readFileSync(path.join(cwd, 'lawn.yaml')).equals(latin)).toBe(true);
  });
  test('with --dry-run keeps and pins nothing', async () => {
    const cwd = lawnFolder(address);
    await bring(cwd, network, { dryRun: true });
    expect([read(cwd).includes('sha256'), readdirSync(cwd)]).toEqual([false, ['lawn.yaml']]);
  });
  test('refuses a lawn that names none by address', async () =>
    expect((await brought(lawnFolder('program.yaml'), network)).codes).toEqual(['program-none']));
  test('says so where it cannot reach it', async () => {
    const { code, codes } = await brought(
      lawnFolder(address),
      net.network(() => []),
    );
    expect([code, codes]).toEqual([1, ['service-no-network']]);
  });
});

describe('a changed file behind a pinned address', LONG, () => {
  const cwd = lawnFolder(pinned(SHARED));
  test('is refused with both hashes, and nothing is written', async () => {
    served = LESS;
    const { code, problems } = await brought(cwd, network);
    expect([code, problems.map((one) => one.code)]).toEqual([2, ['program-changed']]);
    expect([hash(SHARED), hash(LESS)].every((one) => problems[0]!.message.includes(one))).toBe(true);
    expect(readdirSync(cwd)).toEqual(['lawn.yaml']);
  });
  test('is refused again where the kept one was lost', async () => {
    await bring(cwd, network);
    rmSync(path.join(cwd, 'out'), { recursive: true });
    served = LESS;
    expect((await brought(cwd, network)).codes).toEqual(['program-changed']);
  });
  test('does not touch what is kept', async () => {
    served = SHARED;
    await bring(cwd, network);
    const before = await plan(cwd, ['--json']);
    served = LESS;
    await bring(cwd, network);
    expect(await plan(cwd, ['--json'])).toEqual(before);
  });
});

describe('program update', LONG, () => {
  test('tells step by step what is other, and pins it', async () => {
    const cwd = lawnFolder(address);
    await bring(cwd, network);
    served = LESS.replace(
      / {2}- id: look[\s\S]*$/,
      '  - { id: lime, name: Lime, work: other, window: { opens: { date: 10-01 } } }\n',
    );
    const { code, programs } = await brought(cwd, network, { bringing: 'update' });
    expect([code, programs[0]!.changes]).toEqual([
      0,
      [
        { step: 'look', text: 'is left out' },
        { step: 'feed', text: 'apply, nutrient, N was 0.9 lb/1000 sqft, is 0.7 lb/1000 sqft' },
        { step: 'lime', text: 'is new: Lime' },
      ],
    ]);
    expect(read(cwd)).toContain(pinned(served));
  });
  test('with --dry-run tells it and pins nothing', async () => {
    const cwd = lawnFolder(address);
    await bring(cwd, network);
    served = LESS;
    const { programs } = await brought(cwd, network, { bringing: 'update', dryRun: true });
    expect([programs[0]!.changes!.length, read(cwd).includes(pinned(SHARED))]).toEqual([1, true]);
  });
  test('that fails leaves pin and program as they are', async () => {
    const cwd = lawnFolder(address);
    await bring(cwd, network);
    served = 'kind: lawn\n';
    const { code, codes } = await brought(cwd, network, { bringing: 'update' });
    expect([code, codes, read(cwd).includes(pinned(SHARED))]).toEqual([2, ['wrong-kind', ...codes.slice(1)], true]);
    expect((await plan(cwd, ['--json'])).code).toBe(0);
  });
  test('of one lawn leaves another lawn of the folder where it is pinned', async () => {
    const cwd = lawnFolder(address, {
      'other.yaml': lawnText()
        .replace('program.yaml', address)
        .replace(/^weather.*\n/m, ''),
    });
    await bring(cwd, network);
    await bring(cwd, network, { words: ['other.yaml'] });
    served = LESS;
    await bring(cwd, network, { bringing: 'update' });
    const other = await soilclock(cwd, ['plan', 'other.yaml', '--as-of', '2027-03-10', '--json']);
    const feed = (text: string) =>
      (JSON.parse(text) as { applications: { nutrientsGPerM2: unknown }[] }).applications[0];
    expect([other.code, feed(other.stdout)]).not.toEqual([0, feed((await plan(cwd, ['--json'])).stdout)]);
  });
});

describe("a stranger's file", LONG, () => {
  const told = async (text: string) => {
    served = text;
    const cwd = lawnFolder(address);
    const { code, codes } = await brought(cwd, network);
    return { code, codes, kept: readdirSync(cwd).includes('out') };
  };
  test('with a mistake is not kept', async () =>
    expect(await told(SHARED.replace('work: spread', 'work: shovel'))).toEqual({
      code: 1,
      codes: ['unknown-word'],
      kept: false,
    }));
  test('that extends another is not kept', async () =>
    expect(await told(SHARED.replace('version: 1', 'version: 1\nextends: other.yaml'))).toEqual({
      code: 1,
      codes: ['shared-extends'],
      kept: false,
    }));
  test('of an author who is not named, without a licence', async () =>
    expect((await told(SHARED.replace(/^(author|license).*\n/gm, ''))).codes).toEqual(
      expect.arrayContaining(['shared-author', 'shared-license']),
    ));
  test('whose text would bring an address into calendars', async () =>
    expect(
      (await told(SHARED.replace('name: Look', 'name: Look\n    note: See https://prize.example/now'))).codes,
    ).toContain('shared-link'));
  test('that asks for a deep file tree of a map', async () =>
    expect((await told(`kind: program\nid: ${'{a: '.repeat(60)}1${'}'.repeat(60)}\n`)).codes[0]).toBe('yaml-too-deep'));
  test('is judged by agronomy', async () => {
    const rail = 'nitrogen: { single: { total: 0.5 lb/1000 sqft, source: common-practice } }\nsteps:';
    expect((await told(SHARED.replace('steps:', rail))).codes).toContain('nitrogen-at-once');
    expect((await told(SHARED)).codes).not.toContain('nitrogen-at-once');
  });
});

describe('plan and check', LONG, () => {
  test('say how to bring a program that is not here', async () => {
    const cwd = lawnFolder(pinned(SHARED));
    const { code, stderr } = await plan(cwd);
    expect([code, codesOf(stderr), net.asked]).toEqual([2, ['program-not-fetched'], []]);
    expect(codesOf((await soilclock(cwd, ['check', address])).stderr)).toEqual(['program-not-fetched']);
  });
  test('say so where an address is not pinned, until it is', async () => {
    const cwd = lawnFolder(address);
    await bring(cwd, network, { words: [address] });
    const codes = async () => codesOf((await plan(cwd)).stderr);
    const before = await codes();
    await bring(cwd, network);
    expect([before.includes('program-not-pinned'), (await codes()).includes('program-not-pinned')]).toEqual([
      true,
      false,
    ]);
  });
  test('touch no network once it is here', async () => {
    const cwd = lawnFolder(address);
    await bring(cwd, network);
    net.asked.length = 0;
    net.dialled.length = 0;
    expect([(await plan(cwd)).code, (await soilclock(cwd, ['check', 'lawn.yaml'])).code]).toEqual([0, 0]);
    expect([net.asked, net.dialled]).toEqual([[], []]);
  });
  test('take no kept program that somebody has changed', async () => {
    const cwd = lawnFolder(address);
    await bring(cwd, network);
    writeFileSync(path.join(cwd, 'out/cache/programs', `${hash(SHARED)}.yaml`), LESS);
    expect(codesOf((await plan(cwd)).stderr)).toEqual(['program-not-fetched']);
  });
  test('new takes the address of a program that is here', async () => {
    const cwd = lawnFolder(address);
    await bring(cwd, network);
    const place = ['--place', '38.4, -72.6', '--grass', 'tall-fescue', '--area', 'front: rectangle 50 x 20 ft'];
    const { code } = await soilclock(cwd, ['new', 'new.yaml', '--yes', '--name', 'A', ...place, '--program', address]);
    expect(code).toBe(0);
    expect(read(cwd, 'new.yaml')).toContain(`program: ${address}\n`);
  });
  test('take an address on the command line', async () => {
    const cwd = lawnFolder('program.yaml', { 'program.yaml': LESS });
    await bring(cwd, network, { words: [address] });
    const { code, stdout } = await plan(cwd, ['--program', address, '--json']);
    expect([code, (JSON.parse(stdout) as { program: string }).program]).toEqual([0, 'test-program']);
  });
  test('check tells who made a program by address', async () => {
    const cwd = lawnFolder(address);
    await bring(cwd, network);
    for (const what of [address, 'lawn.yaml']) {
      const { code, stdout } = await soilclock(cwd, ['check', what]);
      expect([code, stdout.includes('The keeper of Saltwether Island')]).toEqual([0, true]);
    }
  });
  test.each(['http://lawns.example/p.yaml', 'file:///etc/passwd', 'ftp://lawns.example/p.yaml'])(
    'refuse %s in a lawn',
    async (ref) => expect(codesOf((await plan(lawnFolder(ref))).stderr)).toEqual(['wrong-type']),
  );
  test('refuse what looks like a pin behind an address', async () =>
    expect(codesOf((await plan(lawnFolder(`${address}#sha256=${hash(SHARED).toUpperCase()}`))).stderr)).toEqual([
      'wrong-type',
    ]));
  test('take a pin in capital letters', async () => {
    const cwd = lawnFolder(pinned(SHARED).replace(hash(SHARED), hash(SHARED).toUpperCase()));
    await bring(cwd, network);
    expect((await plan(cwd)).code).toBe(0);
  });
  test('refuse a pin that is none', async () =>
    expect(codesOf((await plan(lawnFolder(`{ from: ${address}, sha256: "abc" }`))).stderr)).toEqual(['wrong-type']));
});

test('a program shared by address between two folders gives byte-equal seasons and feeds', LONG, async () => {
  served = read(path.join(root, 'programs'), 'tall-fescue-transition.yaml');
  const folders = [lawnFolder(address), lawnFolder(address)];
  for (const cwd of folders) expect((await bring(cwd, network)).code).toBe(0);
  const seasons = await Promise.all(folders.map((cwd) => plan(cwd, ['--json'])));
  expect([seasons[0]!.code, seasons[1]]).toEqual([0, seasons[0]]);
  for (const cwd of folders) expect((await plan(cwd)).code).toBe(0);
  const [first, second] = folders.map((cwd) =>
    readdirSync(path.join(cwd, 'out/site')).map((name) => [name, read(cwd, `out/site/${name}`)]),
  );
  expect(first!.length).toBeGreaterThan(0);
  expect(second).toEqual(first);
  expect(net.dialled.every((one) => one === PUBLIC)).toBe(true);
});
