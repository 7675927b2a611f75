/** Two plans of one lawn at once: whoever comes second plans on what the first has published. */
import { existsSync, readFileSync, statSync, utimesSync, writeFileSync } from 'node:fs';
import { hostname } from 'node:os';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { withLock } from '../../src/shell/lock.ts';
import { soilclock } from '../kit.ts';
import { agrees, child, ended, FEED, LEDGER, PLAN, planFolder } from './plan-kit.ts';

describe('plans at once', () => {
  test('all end well, and leave a feed that is its ledger', async () => {
    const cwd = planFolder();
    const days = ['2027-03-10', '2027-03-20', '2027-04-01', '2027-04-10'];
    const exits = await Promise.all(days.map((asOf) => ended(child(cwd, asOf))));
    expect(exits).toEqual(days.map(() => 0));
    agrees(cwd);
  });
  test('each counts on the one before: the soil of today has been revised by all but the first', async () => {
    const cwd = planFolder();
    const days = ['2027-03-10', '2027-03-11', '2027-03-12', '2027-03-13'];
    await Promise.all(days.map((asOf) => ended(child(cwd, asOf))));
    const { events } = JSON.parse(readFileSync(path.join(cwd, LEDGER), 'utf8'));
    expect(events.find(({ kind }: { kind: string }) => kind === 'soil').sequence).toBe(days.length - 1);
  });
  test('leave no lock', async () => {
    const cwd = planFolder();
    await soilclock(cwd, [...PLAN, '2027-04-01']);
    expect(existsSync(path.join(cwd, `${LEDGER}.lock`))).toBe(false);
  });
});

describe('a question', () => {
  test('does not wait for a plan that is being made', async () => {
    const cwd = planFolder();
    writeFileSync(path.join(cwd, `${LEDGER}.lock`), `${process.pid} ${hostname()} x`);
    expect((await soilclock(cwd, [...PLAN, '2027-04-01', '--dry-run'])).code).toBe(0);
    expect(existsSync(path.join(cwd, FEED))).toBe(false);
  });
});

test('a lock that a plan left which has ended is taken over', async () => {
  const cwd = planFolder();
  const gone = child(cwd, 'none');
  await ended(gone);
  writeFileSync(path.join(cwd, `${LEDGER}.lock`), `${gone.pid} ${hostname()} x`);
  expect((await soilclock(cwd, [...PLAN, '2027-04-01'])).code).toBe(0);
  agrees(cwd);
});

test('a lock is made young again by its holder, so that nobody takes a long plan for dead', () => {
  const file = path.join(planFolder(), LEDGER);
  const age = withLock(file, (stillHeld) => {
    utimesSync(`${file}.lock`, new Date(0), new Date(0));
    stillHeld();
    return { seconds: (Date.now() - statSync(`${file}.lock`).mtimeMs) / 1000 };
  });
  expect('seconds' in age && age.seconds < 10).toBe(true);
});
