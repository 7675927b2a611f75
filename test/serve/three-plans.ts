/**
 * A small lawn planned by the command on 2, 20 and 27 April. Before the second plan a cold spell, work done, a step skipped
 * that another waits for, one taken out of the program and one put in; before the third a warm week, and the step is not
 * skipped after all.
 */
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import ICAL from 'ical.js';
import { inventedWeather } from '../invented-weather.ts';
import { folderWith, lawnText, programText, soilclock } from '../kit.ts';

const NITROGEN = 'apply: { nutrient: { N: 0.25 lb/1000 sqft } }';
const dated = (id: string, opens: string, closes: string) =>
  `  - { id: ${id}, name: "${id}", work: spread, window: { opens: { date: ${opens} }, closes: { date: ${closes} } }, ${NITROGEN} }\n`;
const MOVED =
  '  - { id: moved, name: "moved", work: scout, window: { opens: { soil: { depth: 2 in, mean: 5 d, rises-to: 55 F, holds: 3 d } }, closes: { after: { opening: true, wait: 21 d } } } }\n';
const FOLLOWING =
  '  - { id: following, name: "following", work: scout, window: { opens: { after: { step: skipped, wait: 14 d } }, closes: { after: { opening: true, wait: 14 d } } } }\n';
const KEPT = [dated('kept-1', '09-01', '09-20'), dated('kept-2', '10-10', '10-30')].join('');
const BEFORE = `${dated('done', '03-25', '04-18')}${MOVED}${dated('skipped', '05-20', '06-05')}${FOLLOWING}${dated('taken-out', '06-20', '07-05')}${KEPT}`;
const AFTER = BEFORE.replace(dated('taken-out', '06-20', '07-05'), dated('put-in', '07-25', '08-10'));

/** 9 °C below from 2 April, 10 °C above from 20 April. */
const coldSpell = (day: number): number => {
  const since = day - Date.parse('2027-04-02') / 86_400_000;
  return since < 0 ? 0 : since < 18 ? -9 : 10;
};

/** An event of a feed, as its lines unfolded; what clients compare beside it. */
export interface FeedEvent {
  readonly uid: string;
  readonly lines: string;
  readonly start: string;
  readonly status: string;
  readonly summary: string;
  readonly sequence: number;
  readonly stamp: string;
  readonly lastModified: string;
}

/** The events of any calendar text, by UID. */
export function eventsOf(text: string): ReadonlyMap<string, FeedEvent> {
  const calendar = new ICAL.Component(ICAL.parse(text));
  return new Map(
    calendar.getAllSubcomponents('vevent').map((event) => {
      const value = (name: string) => String(event.getFirstPropertyValue(name) ?? '');
      const one: FeedEvent = {
        uid: value('uid'),
        lines: event.toString(),
        start: value('dtstart'),
        status: value('status'),
        summary: value('summary'),
        sequence: Number(value('sequence')),
        stamp: value('dtstamp'),
        lastModified: value('last-modified'),
      };
      return [one.uid, one];
    }),
  );
}

export interface ThreePlans {
  /** The folder that is served. */
  readonly site: string;
  readonly feed: string;
  readonly texts: readonly [string, string, string];
  /** The event of a step, whatever its feed calls it besides. */
  readonly uidOf: (step: string) => string;
  /** Puts one of the feeds in its place. */
  readonly publish: (which: 0 | 1 | 2) => void;
}

/** Plans three times, and keeps the feeds. */
export async function threePlans(): Promise<ThreePlans> {
  const cwd = folderWith({
    'lawn.yaml': lawnText('products: [{ id: urea, form: granular, analysis: 46-0-0 }]\n'),
    'program.yaml': programText(BEFORE),
    'weather.csv': inventedWeather('2012-01-01', '2027-04-01'),
  });
  const feed = 'test-lawn.ics';
  const file = path.join(cwd, 'out/site', feed);
  const run = async (day: number, ...argv: string[]) => {
    const { code, stderr } = await soilclock(cwd, argv, Date.UTC(2027, 3, day, 12));
    if (code !== 0) throw new Error(stderr);
  };
  await run(2, 'plan', 'lawn.yaml');
  const first = readFileSync(file, 'utf8');

  const weather = (through: string) =>
    writeFileSync(path.join(cwd, 'weather.csv'), inventedWeather('2012-01-01', through, coldSpell));
  const lawn = readFileSync(path.join(cwd, 'lawn.yaml'), 'utf8');
  weather('2027-04-19');
  writeFileSync(path.join(cwd, 'program.yaml'), programText(AFTER));
  writeFileSync(path.join(cwd, 'lawn.yaml'), `${lawn}steps: { skipped: skip }\n`);
  await run(20, 'did', 'lawn.yaml', 'done', '--date', '2027-04-10', '--used', '9 oz');
  await run(20, 'plan', 'lawn.yaml');
  const second = readFileSync(file, 'utf8');

  weather('2027-04-26');
  writeFileSync(path.join(cwd, 'lawn.yaml'), lawn);
  await run(27, 'plan', 'lawn.yaml');
  const texts = [first, second, readFileSync(file, 'utf8')] as const;
  return {
    site: path.dirname(file),
    feed,
    texts,
    uidOf: (step) => {
      const found = [...eventsOf(texts[0]).keys(), ...eventsOf(texts[1]).keys()].find((uid) =>
        uid.includes(`-${step}-job@`),
      );
      if (found === undefined) throw new Error(`no job of ${step}`);
      return found;
    },
    publish: (which) => writeFileSync(file, texts[which]),
  };
}
