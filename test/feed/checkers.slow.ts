/** Every feed that the tests made, read by other people's readers. Those that are not installed are skipped, by name. */
import { existsSync, mkdirSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import ICAL from 'ical.js';
import { beforeAll, expect, test } from 'vitest';
import { folderWith, root } from '../kit.ts';
import { khalConfig, readBy, run, runs } from '../other-programs.ts';
import { CalendarServer } from '../serve/programs.ts';
import { partsOf, valueIn } from './feed.ts';
import { faultsOf } from './rules.ts';

const folder = path.resolve(root, process.env.SOILCLOCK_FEEDS ?? 'out/feeds');
const files = existsSync(folder)
  ? readdirSync(folder)
      .filter((name) => name.endsWith('.ics'))
      .map((name) => path.join(folder, name))
  : [];

interface Read {
  readonly uids: readonly string[];
  readonly faults: readonly string[];
}
const textOf = (file: string) => readFileSync(file, 'utf8');
const uidsIn = (file: string) => partsOf(textOf(file)).parts.map((event) => valueIn(event, 'UID')!);

/** File → what a reader found wrong in it, of those in which it did. */
function wrong(read: readonly Read[], uids = (found: Read) => found.uids): Record<string, readonly string[]> {
  expect(read).toHaveLength(files.length);
  return Object.fromEntries(
    files.flatMap((file, i) => {
      const found = read[i]!;
      const same = [...uids(found)].sort().join() === uidsIn(file).sort().join();
      const faults = [...found.faults, ...(same ? [] : [`${found.uids.length} events`])];
      return faults.length === 0 ? [] : [[path.basename(file), faults]];
    }),
  );
}

test('the tests made feeds', () => expect(files.length).toBeGreaterThanOrEqual(50));
test('no feed breaks a rule of ours', () => {
  const broken = files.map((file) => [path.basename(file), faultsOf(textOf(file))] as const);
  expect(Object.fromEntries(broken.filter(([, faults]) => Object.keys(faults).length > 0))).toEqual({});
});
test('ical.js reads every event of every feed', () => {
  const read = files.map((file) => {
    const events = new ICAL.Component(ICAL.parse(textOf(file))).getAllSubcomponents('vevent');
    return { uids: events.map((event) => String(event.getFirstPropertyValue('uid'))), faults: [] };
  });
  expect(wrong(read)).toEqual({});
});

const python = '/usr/bin/python3';
const script = path.join(root, 'test/feed/readers.py');
const pythonReads = (reader: string, env = {}): Read[] =>
  run(python, [script, reader, ...files], env)
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line) as Read);
const hasModule = (name: string) => existsSync(python) && runs(python, ['-c', `import ${name}`]);

for (const [reader, module] of [
  ['python3-icalendar', 'icalendar'],
  ['python3-vobject', 'vobject'],
] as const)
  readBy(reader, hasModule(module), () => {
    test('takes every feed, with all its events', () => expect(wrong(pythonReads(module))).toEqual({}));
  });

readBy('khal', hasModule('khal.cli, click.testing'), () => {
  test('prints every event of every feed', () => {
    const config = folderWith({
      'khal.conf': khalConfig(),
    });
    mkdirSync(path.join(config, 'cal'));
    expect(wrong(pythonReads('khal', { KHAL_CONFIG: path.join(config, 'khal.conf'), HOME: config }))).toEqual({});
  });
});

readBy('libical', existsSync('/usr/include/libical/ical.h') && runs('gcc', ['--version']), () => {
  test('finds no error and no broken restriction in any feed', () => {
    const program = path.join(folderWith(), 'restrictions');
    run('gcc', ['-Wall', '-Werror', path.join(root, 'test/feed/restrictions.c'), '-o', program, '-lical']);
    const found = run(program, files).trim().split('\n');
    const expected = files.map((file) => `${uidsIn(file).length} 0 1`);
    expect(files.flatMap((file, i) => (found[i] === expected[i] ? [] : `${path.basename(file)}: ${found[i]}`))).toEqual(
      [],
    );
  });
});

readBy('radicale', runs('radicale', ['--version']), () => {
  let server: CalendarServer;
  beforeAll(async () => {
    server = await CalendarServer.start();
  });
  test('keeps every feed as a collection, with all its events', async () => {
    const read: Read[] = [];
    for (const file of files) {
      const status = await server.put(textOf(file));
      read.push({ uids: [...(await server.holds()).keys()], faults: status === 201 ? [] : [`PUT gives ${status}`] });
    }
    expect(wrong(read)).toEqual({});
  });
});
