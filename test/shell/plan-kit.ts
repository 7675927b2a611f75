/** What tests of publishing share: a lawn of its own, the command as a process, and what feed and ledger have to have in common. */
import { type ChildProcess, spawn } from 'node:child_process';
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import ICAL from 'ical.js';
import { expect } from 'vitest';
import type { Ledger } from '../../src/model/ledger.ts';
import { inventedWeather } from '../invented-weather.ts';
import { folderWith, lawnText, programText, root } from '../kit.ts';

export const LEDGER = 'lawn.ledger.json';
export const FEED = 'out/site/test-lawn.ics';
/** To be followed by the as-of day. */
export const PLAN = ['plan', 'lawn.yaml', '--no-sheet', '--as-of'];

const PROGRAM = programText(`  - id: spring-barrier
    name: Spring barrier
    work: spread
    window: { opens: { soil: { depth: 2 in, mean: 5 d, rises-to: 50 degF, from: 02-01 } }, closes: { date: 05-10 } }
  - id: spring-feed
    name: Feed, "light"; or none
    work: spread
    window: { opens: { date: 03-01 }, closes: { date: 04-20 } }
  - id: autumn-feed
    name: Autumn feed
    work: spread
    window: { opens: { date: 09-01 }, closes: { date: 10-01 } }
`);

/** A lawn that plans in a moment and has published nothing. */
export const planFolder = (): string =>
  folderWith({
    'lawn.yaml': lawnText('working: { remind: [12 h, 3 d] }\n'),
    'program.yaml': PROGRAM,
    'weather.csv': inventedWeather('2020-01-01'),
  });

/** The command in a process of its own, which can be killed. @param loads A module that it runs first. */
export const child = (cwd: string, asOf: string, loads?: string, command = PLAN): ChildProcess =>
  spawn(
    process.execPath,
    [...(loads === undefined ? [] : ['--import', loads]), path.join(root, 'src/bin.cjs'), ...command, asOf],
    { cwd, stdio: 'ignore' },
  );

/** Ends the process at the n-th step of those that change a file, where that writes with half of it written. */
export const dieAt = (n: number) =>
  `data:text/javascript,${encodeURIComponent(`
import fs from 'node:fs';
import { syncBuiltinESMExports } from 'node:module';
let left = ${n};
for (const name of ['mkdirSync', 'openSync', 'writeFileSync', 'fsyncSync', 'renameSync', 'rmSync', 'linkSync']) {
  const real = fs[name];
  fs[name] = (...args) => {
    const reads = name === 'openSync' && args[1] !== 'w';
    if (!reads && --left === 0) {
      if (name === 'writeFileSync') real(args[0], args[1].slice(0, args[1].length / 2), args[2]);
      process.kill(process.pid, 'SIGKILL');
    }
    return real(...args);
  };
}
syncBuiltinESMExports();
`)}`;

export const ended = (one: ChildProcess): Promise<number | null> =>
  new Promise((resolve) => one.on('exit', (code) => resolve(code)));

export const textOf = (cwd: string, name: string): string | null =>
  existsSync(path.join(cwd, name)) ? readFileSync(path.join(cwd, name), 'utf8') : null;

/** UID → SEQUENCE of a feed, as another program reads it. */
export const sequencesIn = (feed: string): Record<string, number> =>
  Object.fromEntries(
    new ICAL.Component(ICAL.parse(feed))
      .getAllSubcomponents('vevent')
      .map((event) => [event.getFirstPropertyValue('uid'), event.getFirstPropertyValue('sequence')]),
  );

/** That feed and ledger hold the same events in the same revisions. @returns UID → SEQUENCE. */
export function agrees(cwd: string, feed = FEED, ledger = LEDGER): Record<string, number> {
  const inFeed = sequencesIn(textOf(cwd, feed) ?? '');
  const { events } = JSON.parse(textOf(cwd, ledger) ?? '') as Ledger;
  const standing = events.filter(({ removedOn }) => removedOn === null);
  expect(inFeed).toEqual(Object.fromEntries(standing.map(({ uid, sequence }) => [uid, sequence])));
  return inFeed;
}
