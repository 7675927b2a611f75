/** Plans that are ended before their time, wherever they stand: the feed on disk is the old one or the new one, whole. */
import { cpSync, existsSync, readdirSync, symlinkSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { formatDay } from '../../src/base/day.ts';
import { seeded } from '../../src/base/random.ts';
import { folderWith, soilclock } from '../kit.ts';
import { agrees, child, dieAt, ended, FEED, LEDGER, PLAN, planFolder, sequencesIn, textOf } from './plan-kit.ts';

/** As many as a check of everything has; else a tenth of them, and every third step. */
const [KILLS, EVERY] = process.env.SOILCLOCK_RUNS === 'whole' ? [50, 1] : [5, 3];
/** Long before the weather of the lawn ends, so that every day has a plan of its own. */
const FIRST_DAY = Date.UTC(2027, 1, 1) / 86_400_000;

/** A plan that writes all it can. */
const WITH_SHEET = ['plan', 'lawn.yaml', '--as-of'];

const plan = async (cwd: string, asOf: string, command = PLAN) => (await soilclock(cwd, [...command, asOf])).code;

/** The feed that a plan would write that nobody ends, made in a copy of the folder. */
async function wholeFeed(cwd: string, asOf: string): Promise<string | null> {
  const copy = folderWith();
  cpSync(cwd, copy, { recursive: true });
  expect(await plan(copy, asOf)).toBe(0);
  return textOf(copy, FEED);
}

/** What holds of a folder whose plan was ended, now and after the next plan. @returns Whether the feed was the old one. */
async function expectWhole(
  cwd: string,
  asOf: string,
  before: string,
  whole: string | null,
  command = PLAN,
): Promise<boolean> {
  const found = textOf(cwd, FEED) ?? '';
  expect(sequencesIn(found)).not.toEqual({});
  expect([before, whole]).toContain(found);
  expect(await plan(cwd, asOf, command)).toBe(0);
  expect(textOf(cwd, FEED)).toBe(whole);
  const [old, now] = [sequencesIn(before), agrees(cwd)];
  for (const [uid, sequence] of Object.entries(now)) expect(sequence).toBeGreaterThanOrEqual(old[uid] ?? 0);
  expect(readdirSync(cwd, { recursive: true }).filter((name) => /\.(part|lock)$/.test(String(name)))).toEqual([]);
  return found === before;
}

test(`killed at ${KILLS} random moments`, { timeout: 20_000 * KILLS }, async () => {
  const cwd = planFolder();
  expect(await plan(cwd, formatDay(FIRST_DAY))).toBe(0);
  const began = Date.now();
  await ended(child(cwd, formatDay(FIRST_DAY)));
  const needs = Date.now() - began;
  const random = seeded(20270402);
  for (let i = 1; i <= KILLS; i++) {
    const asOf = formatDay(FIRST_DAY + i);
    const [before, whole] = [textOf(cwd, FEED) ?? '', await wholeFeed(cwd, asOf)];
    const one = child(cwd, asOf);
    // Most of the time goes into planning; what counts happens at its end.
    setTimeout(() => one.kill('SIGKILL'), needs * (0.5 + 0.6 * random()));
    await ended(one);
    await expectWhole(cwd, asOf, before, whole);
  }
});

test(`killed at ${EVERY === 1 ? 'every' : 'every third'} step of its writing`, { timeout: 360_000 }, async () => {
  const cwd = planFolder();
  expect(await plan(cwd, formatDay(FIRST_DAY))).toBe(0);
  const wasOld: boolean[] = [];
  for (let n = 1; ; n += EVERY) {
    const asOf = formatDay(FIRST_DAY + n);
    const [before, whole] = [textOf(cwd, FEED) ?? '', await wholeFeed(cwd, asOf)];
    const exit = await ended(child(cwd, asOf, dieAt(n), WITH_SHEET));
    const old = await expectWhole(cwd, asOf, before, whole, WITH_SHEET);
    if (exit === 0) break;
    wasOld.push(old);
  }
  // Lock, each file beside its place, its rename, and the lock's end: before the last rename all are old, then new.
  expect(wasOld.length).toBeGreaterThan(10 / EVERY);
  expect(new Set(wasOld)).toEqual(new Set([true, false]));
  expect(wasOld).toEqual([...wasOld].sort().reverse());
});

// The device of Linux to which every write fails as on a full disk.
describe.skipIf(!existsSync('/dev/full'))('a disk that is full', () => {
  test.each([LEDGER, FEED])('at %s: feed and ledger stay as they are, and the next plan goes on', async (name) => {
    const cwd = planFolder();
    await plan(cwd, '2027-03-10');
    const [feed, ledger] = [textOf(cwd, FEED) ?? '', textOf(cwd, LEDGER)];
    const whole = await wholeFeed(cwd, '2027-03-11');
    symlinkSync('/dev/full', path.join(cwd, `${name}.${process.pid}.part`));
    const { code, stderr } = await soilclock(cwd, [...PLAN, '2027-03-11']);
    expect([code, stderr.includes('[write-failed]')]).toEqual([1, true]);
    expect([textOf(cwd, FEED), textOf(cwd, LEDGER)]).toEqual([feed, ledger]);
    expect(await expectWhole(cwd, '2027-03-11', feed, whole)).toBe(true);
  });
});
