/** A spring lived every third day on invented weather: what is published stays calm, and what measures it can tell. */
import { describe, expect, test } from 'vitest';
import { type Day, parseDay } from '../src/base/day.ts';
import { readAll } from '../src/compile.ts';
import type { LedgerEntry } from '../src/model/ledger.ts';
import type { WeatherSeries } from '../src/model/weather.ts';
import { readWeather } from '../src/read/weather.ts';
import { type LivedDay, replay } from '../src/replay.ts';
import { compared, livesOf } from './accuracy/calm/judge.ts';
import { inventedWeather } from './invented-weather.ts';
import { lawnText, programText } from './kit.ts';

const YEAR = 2015;
const STEPS = `  - id: barrier
    name: Barrier
    work: other
    window:
      opens: { soil: { depth: 5 cm, mean: 5 d, rises-to: 50 F, from: 02-01 } }
      closes: { after: { opening: true, wait: 3 weeks } }
  - id: scout
    name: Scout
    work: scout
    window:
      opens: { degree-days: { base: 50 F, method: average, from: 01-01, reaches: 155 } }
      closes: { after: { opening: true, wait: 3 weeks } }
`;
const files: Readonly<Record<string, string>> = {
  'program.yaml': programText(STEPS),
  'weather.csv': inventedWeather('2000-01-01', '2002-12-31'),
};
const { value: linked } = readAll({
  lawn: { name: 'lawn.yaml', text: lawnText() },
  lookup: (ref) => (files[ref] === undefined ? null : { name: ref, text: files[ref] }),
});
if (!linked) throw new Error('the lawn of this test is wrong');
const record = readWeather(inventedWeather('1996-01-01', '2021-12-31'), 'w.csv').value as WeatherSeries;
const first = parseDay('2015-02-15') as Day;
const days = Array.from({ length: 16 }, (_, i) => first + 3 * i);
const calm = replay(linked, record, YEAR, days, { detail: 'full' });
const free = replay(linked, record, YEAR, days, { free: true });
const lives = livesOf(calm, YEAR);
const judged = compared({ name: 'invented', calm, free });

describe('a spring of plans', () => {
  test('revises events', () => expect(lives.reduce((sum, { revisions }) => sum + revisions, 0)).toBeGreaterThan(2));
  test('revises none for nothing', () => expect(lives.flatMap(({ forNothing }) => forNothing)).toEqual([]));
  test('raises SEQUENCE and LAST-MODIFIED together', () =>
    expect(lives.filter(({ together }) => !together)).toEqual([]));
  test('revises no event more than six times', () =>
    expect(lives.filter(({ revisions }) => revisions > 6).map(({ uid }) => uid)).toEqual([]));
  test('moves at most half as many days as plans that know nothing of each other', () => {
    expect(judged.freeMoves).toBeGreaterThan(3);
    expect(judged.calmMoves).toBeLessThanOrEqual(judged.freeMoves / 2);
  });
  test('keeps the odds within three points', () =>
    expect(judged.freeInWindow - judged.calmInWindow).toBeLessThan(0.03));
});

describe('what measures it', () => {
  const [before] = calm as [LivedDay];
  const uid = before.ledger.events.find(({ kind }) => kind === 'job')?.uid;
  /** The first day once more, with another revision of one event. */
  const livedOn = (revision: Partial<LedgerEntry>) => {
    const events = before.ledger.events.map((one) => (one.uid === uid ? { ...one, ...revision } : one));
    return livesOf([before, { ...before, ledger: { ...before.ledger, events } }], YEAR).find((one) => one.uid === uid);
  };
  const later = { sequence: 1, lastModified: '2015-02-16T00:00:00Z' };

  test('tells a revision for nothing', () => expect(livedOn(later)?.forNothing).toEqual(['2015-02-15']));
  test('tells a SEQUENCE that rose alone', () => expect(livedOn({ sequence: 1 })?.together).toBe(false));
  test('tells words that changed without a revision', () =>
    expect(livedOn({ description: 'Other.' })?.together).toBe(false));
  test('takes a whole revision for one', () => expect(livedOn(later)?.together).toBe(true));
});
