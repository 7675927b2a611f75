/** A past season lived day by day, on invented weather. */
import { describe, expect, test } from 'vitest';
import { type Day, parseDay } from '../src/base/day.ts';
import { planLinked, readAll } from '../src/compile.ts';
import { emptyLedger } from '../src/model/ledger.ts';
import type { WeatherSeries } from '../src/model/weather.ts';
import { readWeather } from '../src/read/weather.ts';
import { othersBefore, replay } from '../src/replay.ts';
import { inventedWeather } from './invented-weather.ts';
import { lawnText, programText } from './kit.ts';

const day = (text: string): Day => parseDay(text) as Day;
const record = (shift?: (day: Day) => number): WeatherSeries =>
  readWeather(inventedWeather('2000-01-01', '2027-12-31', shift), 'w.csv').value as WeatherSeries;
const STEP = `  - id: barrier
    name: Barrier
    work: other
    window:
      opens: { soil: { depth: 5 cm, mean: 5 d, rises-to: 50 F, from: 02-01 } }
      closes: { after: { opening: true, wait: 2 weeks } }
`;
const files: Readonly<Record<string, string>> = {
  'program.yaml': programText(STEP),
  'weather.csv': inventedWeather('2000-01-01', '2002-12-31'),
};
const { value: linked } = readAll({
  lawn: { name: 'lawn.yaml', text: lawnText() },
  lookup: (ref) => (files[ref] === undefined ? null : { name: ref, text: files[ref] }),
});
if (!linked) throw new Error('the lawn of this test is wrong');
const DAYS = ['2015-02-20', '2015-03-05', '2015-03-20', '2015-04-10'].map(day);

describe('replay', () => {
  const lived = replay(linked, record(), 2015, DAYS);

  test('gives a season for each as-of day', () => {
    expect(lived.map(({ season }) => season?.asOf)).toEqual(['2015-02-20', '2015-03-05', '2015-03-20', '2015-04-10']);
  });
  test('days of the season after an as-of day change nothing', () => {
    const warmer = (d: Day) => (d > day('2015-03-05') && d <= day('2015-12-31') ? 6 : 0);
    const other = replay(linked, record(warmer), 2015, DAYS.slice(0, 2));
    expect(other).toEqual(lived.slice(0, 2));
  });
  test('later years lie beyond the as-of day as well', () => {
    const warmer = (d: Day) => (d > day('2015-12-31') ? 6 : 0);
    const [other] = replay(linked, record(warmer), 2015, DAYS.slice(0, 1));
    expect(other?.season?.applications[0]?.window.opens).not.toEqual(lived[0]?.season?.applications[0]?.window.opens);
  });
  test('the last day of a record is planned as from the record itself', () => {
    const [last] = replay(linked, record(), 2027, [day('2027-12-31')]);
    const plan = planLinked({ ...linked, weather: [record()] }, { asOf: day('2027-12-31'), ledger: emptyLedger });
    expect(last?.season).toEqual(plan.season);
  });
  test('what was published goes on: a day that passed is due since then', () => {
    const first = lived[0]?.season?.applications[0]?.date ?? '';
    const [, later] = replay(linked, record(), 2015, [DAYS[0] as Day, day(first) + 1]);
    expect(later?.season?.applications[0]?.dueSince).toBe(first);
  });
});

describe('the years around a season', () => {
  test('keep their calendar days, 29 February too', () => {
    const turned = othersBefore(record(), day('2015-12-31'));
    const leap = day('2020-02-29');
    const moved = leap - 7 * 1461;
    const whole = record();
    expect(turned.tmin[moved - turned.start]).toBe(whole.tmin[leap - whole.start]);
  });
});
