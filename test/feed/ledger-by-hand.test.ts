/** A ledger that somebody or something has changed: what a calendar cannot carry is damage, texts stay texts. */
import { writeFileSync } from 'node:fs';
import path from 'node:path';
import * as v from 'valibot';
import { beforeAll, expect, test } from 'vitest';
import { type Ledger, LedgerSchema } from '../../src/model/ledger.ts';
import type { Season } from '../../src/model/season.ts';
import { demoCopy, soilclock } from '../kit.ts';
import { FEED, LEDGER, PLAN, planFolder, textOf } from '../shell/plan-kit.ts';
import { AS_OF, feedOf, partsOf, planned } from './feed.ts';
import { HOSTILE } from './hostile.ts';

const COMPONENT = 'x\r\nBEGIN:VEVENT\r\nUID:evil\r\nEND:VEVENT';

let season: Season;
let ledger: Ledger;
beforeAll(async () => {
  const { cwd, lawn } = demoCopy();
  ({ season, ledger } = await planned(cwd, lawn, AS_OF));
});
/** The ledger with one thing changed in its first timed job. */
function changedBy(key: string, value: unknown): Ledger {
  const first = ledger.events.findIndex(({ kind, allDay }) => kind === 'job' && !allDay);
  expect(first).toBeGreaterThanOrEqual(0);
  return { ...ledger, events: ledger.events.map((one, i) => (i === first ? { ...one, [key]: value } : one)) };
}

test('a ledger as it was written is one', () => expect(v.is(LedgerSchema, ledger)).toBe(true));
test.each<[string, unknown]>([
  ['uid', COMPONENT],
  ['uid', 'a b'],
  ['uid', ''],
  ['kind', COMPONENT],
  ['step', 'a step'],
  ['hash', COMPONENT],
  ['day', '2027-02-30'],
  ['dueSince', COMPONENT],
  ['cancelledOn', 'x'],
  ['removedOn', '2027-13-01'],
  ['start', 'x'],
  ['start', '2027-02-30T08:00:00Z'],
  ['end', '2020-01-01T08:00:00Z'],
  ['end', '2030-01-01'],
  ['lastModified', '2027-03-10T00:00'],
  ['lastModified', '2027-02-30T00:00:00Z'],
  ['sequence', -1],
  ['sequence', 1e300],
  ['season', 2027.5],
  ['remindersMin', [-5]],
  ['remindersMin', [0.5]],
  ['status', 'DONE'],
])('an entry with %s %j is damage', (key, value) => expect(v.is(LedgerSchema, changedBy(key, value))).toBe(false));
test('an entry that stands there twice is damage', () =>
  expect(v.is(LedgerSchema, { ...ledger, events: [...ledger.events, ledger.events[0]] })).toBe(false));
test('such damage is told, and the feed on disk stands in', async () => {
  const cwd = planFolder();
  await soilclock(cwd, [...PLAN, '2027-03-10']);
  const before = textOf(cwd, FEED);
  writeFileSync(path.join(cwd, LEDGER), (textOf(cwd, LEDGER) ?? '').replace(/"start": "[^"]*"/, '"start": "x"'));
  const { code, stderr } = await soilclock(cwd, [...PLAN, '2027-03-10']);
  expect([code, stderr.includes('[ledger-rebuilt]')]).toEqual([0, true]);
  expect(textOf(cwd, FEED)).toBe(before);
});

test.each(['summary', 'description', 'categories'] as const)(
  'no text for a %s that the plan no longer has changes a component or a property',
  (key) => {
    const names = (text: string) => {
      const events = ledger.events.map((one) => ({ ...one, [key]: key === 'categories' ? [text] : text }));
      const made = feedOf({ ...season, applications: [] }, { ...ledger, events }).text;
      return partsOf(made).parts.map(({ properties }) => properties.map((line) => line.split(/[:;]/, 1)[0]));
    };
    const expected = names('Feed');
    expect(expected.length).toBeGreaterThan(10);
    for (const text of Object.values(HOSTILE)) expect(names(text)).toEqual(expected);
  },
);
