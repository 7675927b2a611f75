/** Other people's readers of iCalendar agree with the Season. Those that are not installed are skipped, by name. */
import { existsSync, mkdirSync } from 'node:fs';
import path from 'node:path';
import ICAL from 'ical.js';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Season } from '../../src/model/season.ts';
import { folderWith, root } from '../kit.ts';
import { khalConfig, readBy, run, runs } from '../other-programs.ts';
import { awkward, awkwardDemo, expected, expectedEvents } from './feed.ts';

let season: Season;
let text: string;
let file: string;
beforeAll(async () => {
  ({ season, text, file } = await awkwardDemo());
});

/**
 * A title on one line. icalendar 4, and khal 0.10, which is built on it, take a backslash that was written before an n
 * for a line end; that much is forgiven them.
 */
const flat = (title: string): string => title.replaceAll('\\n', ' ').replace(/\s+/g, ' ').trim();
const flatTitles = () => flattened(expected(season, 'summary'));
const flattened = (titles: Record<string, string>) =>
  Object.fromEntries(Object.entries(titles).map(([uid, title]) => [uid, flat(title)]));

describe('ical.js', () => {
  const events = () =>
    new ICAL.Component(ICAL.parse(text))
      .getAllSubcomponents('vevent')
      .map((one) => new ICAL.Event(one, { exceptions: [] }));

  test('reads the UID and the start of every event', () => {
    const starts = events().map(({ uid, startDate }) => [uid, startDate.toString()]);
    expect(Object.fromEntries(starts)).toEqual(expected(season, 'start'));
  });
  test('reads the end of every event, which is the first moment after it', () => {
    const ends = events().map(({ uid, endDate }) => [uid, endDate.toString()]);
    expect(Object.fromEntries(ends)).toEqual(expected(season, 'end'));
  });
  test('reads every title as it was written', () => {
    const titles = events().map(({ uid, summary }) => [uid, summary]);
    expect(Object.fromEntries(titles)).toEqual(expected(season, 'summary'));
  });
  test("reads the lawn's name as it was written", () => {
    // ical.js gives properties that it does not know as they stand, so that their escapes are undone here.
    const calendar = new ICAL.Component(ICAL.parse(text));
    for (const name of ['name', 'x-wr-calname']) {
      const raw = String(calendar.getFirstPropertyValue(name));
      expect(raw.replace(/\\(.)/g, (_, letter: string) => (letter === 'n' ? '\n' : letter))).toBe(season.lawnName);
    }
  });
  test('reads cautions, notes and product names in the descriptions as they were written', () => {
    const barrier = season.applications.find(({ id }) => id === 'summer-annual-barrier')!;
    const event = events().find(({ uid }) => uid.endsWith('summer-annual-barrier-job@soilclock.invalid'))!;
    for (const line of [...barrier.how, ...barrier.cautions]) expect(event.description).toContain(line);
    expect(barrier.how.join()).toContain(awkward(''));
  });
});

/** UID → start, as Python's reader has them. */
const PYTHON = `
import datetime, icalendar, json, sys
calendar = icalendar.Calendar.from_ical(open(sys.argv[1], 'rb').read())
def shown(value):
    if isinstance(value, datetime.datetime): return value.astimezone(datetime.timezone.utc).strftime('%Y-%m-%dT%H:%M:%SZ')
    return value.isoformat()
events = calendar.walk('VEVENT')
print(json.dumps({
    'starts': {str(event['UID']): shown(event['DTSTART'].dt) for event in events},
    'ends': {str(event['UID']): shown(event['DTEND'].dt) for event in events},
    'titles': {str(event['UID']): str(event['SUMMARY']) for event in events},
    'errors': [error for event in events for error in event.errors],
}))`;
const python = '/usr/bin/python3';
const hasPython = existsSync(python) && runs(python, ['-c', 'import icalendar']);

readBy('python3-icalendar', hasPython, () => {
  interface Read {
    readonly starts: Record<string, string>;
    readonly ends: Record<string, string>;
    readonly titles: Record<string, string>;
    readonly errors: unknown[];
  }
  let read: Read;
  beforeAll(() => {
    read = JSON.parse(run(python, ['-c', PYTHON, file])) as Read;
  });
  test('finds no error', () => expect(read.errors).toEqual([]));
  test('reads the UID and the start of every event', () => expect(read.starts).toEqual(expected(season, 'start')));
  test('reads the end of every event', () => expect(read.ends).toEqual(expected(season, 'end')));
  test('reads every title, line ends aside', () => expect(flattened(read.titles)).toEqual(flatTitles()));
});

readBy('khal', runs('khal', ['--version']), () => {
  let events: { uid: string; start: string; end: string; title: string }[];
  beforeAll(() => {
    const folder = folderWith({
      'khal.conf': khalConfig(),
    });
    mkdirSync(path.join(folder, 'cal'));
    const config = path.join(folder, 'khal.conf');
    const printed = run('khal', [
      '-c',
      config,
      'printics',
      '--format',
      '@@{uid}##{start-long}##{end-long}##{title}##',
      file,
    ]);
    events = printed
      .split('@@')
      .slice(1)
      .map((event) => event.split('##'))
      .map(([uid = '', start = '', end = '', title = '']) => ({ uid, start, end, title }));
  });
  test('shows the UID and the start of every event', () =>
    expect(Object.fromEntries(events.map(({ uid, start }) => [uid, start]))).toEqual(expected(season, 'start')));
  test('shows the last moment, or the last day, of every event', () => {
    const dayBefore = (day: string) => new Date(Date.parse(day) - 86_400_000).toISOString().slice(0, 10);
    const last = Object.entries(expected(season, 'end')).map(([uid, end]) => [
      uid,
      end.includes('T') ? end : dayBefore(end),
    ]);
    expect(Object.fromEntries(events.map(({ uid, end }) => [uid, end]))).toEqual(Object.fromEntries(last));
  });
  test('shows every title, line ends aside', () =>
    expect(flattened(Object.fromEntries(events.map(({ uid, title }) => [uid, title])))).toEqual(flatTitles()));
});

const libical = existsSync('/usr/include/libical/ical.h') && runs('gcc', ['--version']);
readBy('libical', libical, () => {
  test('finds every event, no error and no broken restriction', () => {
    const program = path.join(folderWith(), 'restrictions');
    run('gcc', [path.join(root, 'test/feed/restrictions.c'), '-o', program, '-lical']);
    expect(run(program, [file]).trim()).toBe(`${Object.keys(expectedEvents(season)).length} 0 1`);
  });
});
