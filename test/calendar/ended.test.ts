/** Plans of a calendar that are ended before their time, or made at once: the feed is the old one or the new one, whole. */
import { readdirSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { agrees, child, dieAt, ended, sequencesIn } from '../shell/plan-kit.ts';
import { AS_OF, CALENDAR, calendarText, FEED, LAWNS, LEDGER, lawnsFolder, plan, read } from './lawns.ts';

const COMMAND = ['plan', CALENDAR, '--no-sheet', '--as-of'];
const EVERY = process.env.SOILCLOCK_RUNS === 'whole' ? 2 : 5;
const leftovers = (cwd: string) =>
  readdirSync(cwd, { recursive: true }).filter((name) => /\.(part|lock)$/.test(String(name)));

test('ended at steps of its writing, a plan leaves a whole feed, and the next one makes all good', {
  timeout: 120_000,
}, async () => {
  const cwd = lawnsFolder();
  await plan(cwd, AS_OF);
  // A lawn of its own takes a dozen steps, then the calendar as many; every fifth is tried (every second where everything is
  // checked), and what comes last.
  let exit: number | null = null;
  let wasOld = 0;
  for (let n = 20; exit !== 0; n += EVERY) {
    const [asOf, before] = [`2027-03-${n + 1 < 32 ? n + 1 : 31}`, read(cwd, FEED)];
    exit = await ended(child(cwd, asOf, dieAt(n), COMMAND));
    const found = read(cwd, FEED);
    if (found === before) wasOld++;
    const old = sequencesIn(found);
    expect(Object.keys(old)).toHaveLength(9);
    await plan(cwd, asOf);
    for (const [uid, sequence] of Object.entries(agrees(cwd, FEED, LEDGER)))
      expect(sequence).toBeGreaterThanOrEqual(old[uid] ?? 0);
    expect(leftovers(cwd)).toEqual([]);
  }
  expect(wasOld).toBeGreaterThan(1);
});

describe('plans at once', () => {
  test('of a calendar and of its lawns all end well, and feed and ledger are the same', {
    timeout: 60_000,
  }, async () => {
    const cwd = lawnsFolder(calendarText(LAWNS));
    const days = ['2027-03-10', '2027-03-12', '2027-03-14'];
    const lawn = ['plan', LAWNS[0], '--no-sheet', '--as-of'];
    const runs = days.flatMap((asOf) => [COMMAND, lawn].map((command) => ended(child(cwd, asOf, undefined, command))));
    expect(await Promise.all(runs)).toEqual(runs.map(() => 0));
    agrees(cwd, FEED, LEDGER);
    agrees(cwd, 'out/site/plot-7.ics', 'plot-7/lawn.ledger.json');
    expect(leftovers(cwd)).toEqual([]);
  });
  test('a question waits for nobody', async () => {
    const cwd = lawnsFolder();
    writeFileSync(path.join(cwd, `${LEDGER}.lock`), `${process.pid} ${hostname()} x`);
    expect(await ended(child(cwd, AS_OF, undefined, ['plan', CALENDAR, '--dry-run', '--as-of']))).toBe(0);
  });
});
