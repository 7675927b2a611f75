/** A feed that carries less than before: what it leaves out was not called off, and leaves at once. */
import { beforeAll, describe, expect, test } from 'vitest';
import { calendarOf } from '../../src/emit/calendar.ts';
import { emptyLedger, type Ledger } from '../../src/model/ledger.ts';
import type { Detail } from '../../src/model/reader.ts';
import type { Season } from '../../src/model/season.ts';
import { demoCopy } from '../kit.ts';
import { AS_OF, changed, partsOf, planned, valueIn } from './feed.ts';

let season: Season;
beforeAll(async () => {
  const { cwd, lawn } = demoCopy();
  ({ season } = await planned(cwd, lawn, AS_OF));
});

const BARRIER = 'summer-annual-barrier';
const publish = (detail: Detail, ledger: Ledger = emptyLedger, asOf = AS_OF, one: Season = season) =>
  calendarOf({ ...one, asOf }, { ledger, revisedAt: `${asOf}T06:00:00Z`, detail });
const kindsOf = (ledger: Ledger, has: (entry: Ledger['events'][number]) => boolean) =>
  [...new Set(ledger.events.filter(has).map(({ kind }) => kind))].sort();
const dropped = () => {
  const none = { p10: null, p50: null, p90: null, usual: null };
  const window = { opens: none, best: none, closes: none };
  return changed(season, BARRIER, { date: null, start: null, end: null, status: 'dropped', window });
};

describe('a feed of full detail that becomes quiet', () => {
  const quiet = () => publish('quiet', publish('full').ledger, '2027-04-03');

  test('has only what a quiet one has', () =>
    expect(kindsOf(quiet().ledger, ({ removedOn }) => removedOn === null)).toEqual(['job', 'soil']));
  test('calls nothing off', () => {
    const states = partsOf(quiet().text).parts.map((event) => valueIn(event, 'STATUS'));
    expect(states.length).toBeGreaterThan(5);
    expect(states).not.toContain('CANCELLED');
  });
  test('tells what leaves as removed', () => {
    const { changes } = quiet();
    expect(changes.filter(({ what }) => what === 'removed').length).toBeGreaterThan(20);
    expect(changes.filter(({ what }) => what === 'cancelled')).toEqual([]);
  });
  test('loses what had been called off of those kinds as well', () => {
    const off = publish('full', publish('full').ledger, '2027-04-03', dropped());
    expect(kindsOf(off.ledger, ({ cancelledOn }) => cancelledOn !== null)).toContain('window');
    const { ledger } = publish('quiet', off.ledger, '2027-04-04', dropped());
    expect(kindsOf(ledger, ({ cancelledOn, removedOn }) => cancelledOn !== null && removedOn === null)).toEqual([
      'job',
    ]);
  });
  test('still calls off work that the plan no longer has', () => {
    const { ledger } = publish('quiet', publish('full').ledger, '2027-04-03', dropped());
    expect(kindsOf(ledger, ({ cancelledOn }) => cancelledOn !== null)).toEqual(['job']);
  });
  test('becomes full again with every SEQUENCE counting on', () => {
    const again = publish('full', quiet().ledger, '2027-04-04').ledger.events.filter(({ kind }) => kind === 'window');
    expect(again.map(({ removedOn }) => removedOn)).toEqual(again.map(() => null));
    expect(again.map(({ sequence }) => sequence)).toEqual(again.map(() => 1));
  });
});

test('a kind that this version does not know is called off like any other', () => {
  const { ledger } = publish('full');
  const events = ledger.events.map((one) =>
    one.kind === 'window' ? { ...one, kind: 'other', uid: `x${one.uid}` } : one,
  );
  const next = publish('quiet', { ...ledger, events }, '2027-04-03');
  expect(kindsOf(next.ledger, ({ cancelledOn }) => cancelledOn !== null)).toEqual(['other']);
});
