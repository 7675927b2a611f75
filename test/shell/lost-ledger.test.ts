/** A ledger that is lost or damaged is taken from the feed on disk, and the plan says so. */
import { rmSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import type { Season } from '../../src/model/season.ts';
import { soilclock } from '../kit.ts';
import { agrees, FEED, LEDGER, PLAN, planFolder, sequencesIn, textOf } from './plan-kit.ts';

/** A folder that has published on three days; its ledger is then spoilt. */
async function spoilt(text: string | null): Promise<string> {
  const cwd = planFolder();
  for (const asOf of ['2027-03-10', '2027-03-20', '2027-04-01']) await soilclock(cwd, [...PLAN, asOf]);
  if (text === null) rmSync(path.join(cwd, LEDGER));
  else writeFileSync(path.join(cwd, LEDGER), text);
  return cwd;
}

describe.each([
  ['lost', null],
  ['empty', ''],
  ['cut short', '{"kind":"ledger","version":2,"events":[{'],
  ['of another form', '{"kind":"ledger","version":1,"events":[]}'],
])('a ledger that is %s', (_, text) => {
  let cwd: string;
  let before: string;
  beforeAll(async () => {
    cwd = await spoilt(text);
    before = textOf(cwd, FEED) ?? '';
  });

  test('leaves the feed as it is, byte for byte, where the plan is the same', async () => {
    const { code, stderr } = await soilclock(cwd, [...PLAN, '2027-04-01']);
    expect([code, stderr.includes('[ledger-rebuilt]')]).toEqual([0, true]);
    expect(textOf(cwd, FEED)).toBe(before);
  });
  test('and is whole afterwards, which is no longer told', async () => {
    const { stderr } = await soilclock(cwd, [...PLAN, '2027-04-01']);
    expect(stderr).not.toContain('[ledger-rebuilt]');
    const [old, now] = [sequencesIn(before), agrees(cwd)];
    expect(Math.max(...Object.values(old))).toBeGreaterThan(0);
    expect(now).toEqual(old);
  });
});

test('a later plan counts on from the feed', async () => {
  const cwd = await spoilt(null);
  const before = sequencesIn(textOf(cwd, FEED) ?? '');
  await soilclock(cwd, [...PLAN, '2027-04-02']);
  const soil = Object.keys(before).find((uid) => uid.includes('-soil@')) ?? '';
  expect(agrees(cwd)[soil]).toBe((before[soil] ?? 0) + 1);
});
test('is a note in the plan as data too', async () => {
  const { stdout } = await soilclock(await spoilt(null), [...PLAN, '2027-04-01', '--json']);
  const { problems } = JSON.parse(stdout) as Season;
  expect(problems.filter(({ code }) => code === 'ledger-rebuilt').map(({ severity }) => severity)).toEqual(['note']);
});
test('without a feed a lost ledger is that of a lawn which has published nothing', async () => {
  const { code, stderr } = await soilclock(planFolder(), [...PLAN, '2027-04-01']);
  expect([code, stderr.includes('[ledger-rebuilt]')]).toEqual([0, false]);
});
test('a damaged ledger beside a damaged feed is an error, and neither is written over', async () => {
  const cwd = await spoilt('{');
  writeFileSync(path.join(cwd, FEED), (textOf(cwd, FEED) ?? '').slice(0, 3000));
  const before = textOf(cwd, FEED);
  const { code, stderr } = await soilclock(cwd, [...PLAN, '2027-04-01']);
  expect([code, stderr.includes('[ledger-damaged]')]).toEqual([1, true]);
  expect([textOf(cwd, FEED), textOf(cwd, LEDGER)]).toEqual([before, '{']);
});
