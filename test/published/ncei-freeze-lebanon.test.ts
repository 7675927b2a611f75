/**
 * Freeze days of Lebanon, New Hampshire, airport (USW00094765). Source: NCEI, U.S. Climate Normals 1991-2020, annual and
 * seasonal file of the station (read): the days that go with chances of 10 to 90 %, for 36, 32 and 28 °F.
 *
 * What is checked is the definition: spring days fall with the chance and fall days rise, a higher threshold is met later in
 * spring and earlier in fall, and from a set of years built so that its quantiles are these days, each day comes back at its
 * own chance. What cannot be checked without the station's series is NCEI's fit (22 years, a distribution of days mixed with
 * a chance of none), and the length of the season: its median, 148 days at 32 °F, is not the 150 between the median days.
 */
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { civil, type Day, formatDay, type MonthDay, parseMonthDay } from '../../src/base/day.ts';
import { type DailySeries, seriesOf } from '../../src/base/series.ts';
import { coldSeasons, frostDay } from '../../src/climate/frost.ts';
import { frostDate } from '../../src/index.ts';

const days = (text: string) => text.split(' ');
const lebanon = [
  {
    fahrenheit: 36,
    spring: days('06-06 06-02 05-29 05-26 05-22 05-20 05-16 05-12 05-07'),
    fall: days('09-12 09-17 09-20 09-23 09-26 09-28 10-01 10-03 10-07'),
  },
  {
    fahrenheit: 32,
    spring: days('05-24 05-20 05-16 05-12 05-09 05-06 05-04 05-01 04-27'),
    fall: days('09-23 09-28 10-01 10-03 10-06 10-08 10-11 10-14 10-19'),
  },
  {
    fahrenheit: 28,
    spring: days('05-11 05-07 05-03 04-30 04-29 04-26 04-24 04-21 04-17'),
    fall: days('10-03 10-07 10-10 10-13 10-15 10-18 10-22 10-26 11-01'),
  },
] as const;
const chances = [0.1, 0.2, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9];
const thresholdOf = (fahrenheit: number) => (fahrenheit - 32) / 1.8;
const text = (found: MonthDay | null) => found && formatDay(civil(2001, found.month, found.day)).slice(5);

describe.each(lebanon)('as printed, $fahrenheit °F', ({ spring, fall }) => {
  test('nine days in spring, which fall', () => {
    expect(spring).toHaveLength(9);
    expect([...spring].sort().reverse()).toEqual(spring);
  });
  test('nine days in fall, which rise', () => {
    expect(fall).toHaveLength(9);
    expect([...fall].sort()).toEqual(fall);
  });
});
test('a higher threshold is met later in spring and earlier in fall, at every chance', () => {
  for (const [i, warmer] of lebanon.slice(0, -1).entries())
    for (let p = 0; p < 9; p++) {
      expect(warmer.spring[p]! > lebanon[i + 1]!.spring[p]!).toBe(true);
      expect(warmer.fall[p]! < lebanon[i + 1]!.fall[p]!).toBe(true);
    }
});

/** A whole cold season from 15 July: mild, with frosts (in °C) from a first day through a last one; with neither, none. */
function season(year: number, frosts: { first: string; last: string } | null, frost = -20, mild = 12): DailySeries {
  const on = (monthDay: string, inYear: number): Day => {
    const { month, day } = parseMonthDay(monthDay)!;
    return civil(inYear, month, day);
  };
  const [from, to] = frosts ? [on(frosts.first, year), on(frosts.last, year + 1)] : [Infinity, -Infinity];
  return seriesOf(civil(year, 7, 15), civil(year + 1, 7, 15), (day) => (day >= from && day <= to ? frost : mild));
}

/** Eleven years, in no order: by type 7 their quantiles at 10 to 90 % are the nine days between the outermost two. */
const ORDER = [4, 9, 0, 7, 2, 10, 5, 1, 8, 3, 6];
const yearsOf = ({ spring, fall }: { spring: readonly string[]; fall: readonly string[] }, frost: number) => {
  const last = ['07-01', ...spring, '04-01'];
  const first = ['08-20', ...fall, '11-20'];
  // Spring and fall are shuffled against each other, and two of the years are leap years.
  return ORDER.map((rank, i) => season(1995 + i, { first: first[(rank * 3) % 11]!, last: last[rank]! }, frost));
};

describe.each(lebanon)('from years built for it, $fahrenheit °F', ({ fahrenheit, ...printed }) => {
  const threshold = thresholdOf(fahrenheit);
  const years = yearsOf(printed, threshold);
  test.each(chances.map((chance, i) => ({ chance, spring: printed.spring[i], fall: printed.fall[i] })))(
    '$chance: $spring and $fall',
    ({ chance, spring, fall }) => {
      expect(text(frostDay(years, threshold, 'last', chance))).toBe(spring);
      expect(text(frostDay(years, threshold, 'first', chance))).toBe(fall);
    },
  );
  test('10 % in spring is the day after which one year of eleven still has one', () => {
    const p10 = printed.spring[0]!;
    const later = years.filter(({ start, values }) =>
      values.some(
        (value, i) =>
          value <= threshold &&
          start + i > civil(Number(formatDay(start).slice(0, 4)) + 1, Number(p10.slice(0, 2)), Number(p10.slice(3))),
      ),
    );
    expect(later).toHaveLength(1);
  });
  test('and a threshold 0.1 K lower is met by none of them', () => {
    expect(frostDay(years, threshold - 0.1, 'last', 0.5)).toBeNull();
    expect(frostDay(years, threshold - 0.1, 'first', 0.5)).toBeNull();
  });
});

describe('years without a frost', () => {
  const frosty = yearsOf(lebanon[1], 0);
  const mild = (count: number) => Array.from({ length: count }, (_, i) => season(1960 + i, null));
  // Eleven with and ten without: 21 years, whose 10 % is the third of them, the frosty years' 20 %.
  test('lie beyond all others: what was 20 % of eleven years is 10 % of these and ten without', () => {
    const years = [...frosty, ...mild(10)];
    expect(text(frostDay(years, 0, 'last', 0.1))).toBe(lebanon[1].spring[1]);
    expect(text(frostDay(years, 0, 'first', 0.1))).toBe(lebanon[1].fall[1]);
  });
  test('a chance that the frosts never reach has no day', () => {
    expect(frostDay([...frosty, ...mild(10)], 0, 'last', 0.6)).toBeNull();
    expect(frostDay([...frosty, ...mild(10)], 0, 'first', 0.6)).toBeNull();
    expect(frostDay(mild(30), 0, 'last', 0.1)).toBeNull();
  });
  test('nine years are too few to say anything', () => {
    expect(frostDay(frosty.slice(0, 9), 0, 'last', 0.5)).toBeNull();
    expect(frostDay(frosty.slice(0, 10), 0, 'last', 0.5)).not.toBeNull();
    expect(frostDay([], 0, 'first', 0.5)).toBeNull();
  });
});

describe('a year of which too much is missing', () => {
  const whole = yearsOf(lebanon[1], 0).slice(0, 10);
  const holed = (missing: number) => {
    const [one, ...rest] = whole as [DailySeries, ...DailySeries[]];
    // The days before 15 July, where the search for the last frost begins.
    const values = one.values.map((value, i) => (i >= one.values.length - missing ? Number.NaN : value));
    return [...rest, { ...one, values }];
  };
  test('counts with nine days missing on the way to its frost', () =>
    expect(frostDay(holed(9), 0, 'last', 0.5)).toEqual(frostDay(whole, 0, 'last', 0.5)));
  test('does not with ten: nine years are left', () => expect(frostDay(holed(10), 0, 'last', 0.5)).toBeNull());
  test('still does at the other end of winter', () => expect(frostDay(holed(30), 0, 'first', 0.5)).not.toBeNull());
});

test.each([0, 1, -0.1, 1.1, Number.NaN])('a chance of %d is refused', (chance) =>
  expect(() => frostDay(yearsOf(lebanon[1], 0), 0, 'last', chance)).toThrow(RangeError),
);

describe('whatever the years', () => {
  const iso = (from: Day, span: number) => fc.integer({ min: 0, max: span }).map((i) => formatDay(from + i).slice(5));
  const frosts = fc.record({ first: iso(civil(2001, 8, 1), 120), last: iso(civil(2001, 3, 1), 120) });
  const years = fc.array(fc.option(frosts, { freq: 4 }), { minLength: 10, maxLength: 20 });
  const seasonsOf = (all: readonly ({ first: string; last: string } | null)[]) =>
    all.map((one, i) => season(1990 + i, one, 0));
  const chance = fc.integer({ min: 1, max: 99 }).map((percent) => percent / 100);
  /** Later in the cold season is greater; a frost that never comes is the latest first one and the earliest last one. */
  const rank = (found: MonthDay | null, which: 'first' | 'last') => {
    if (found) return (found.month * 31 + found.day - (7 * 31 + 15) + 12 * 31) % (12 * 31);
    return which === 'first' ? Infinity : -Infinity;
  };

  test('one more year without a frost never moves a last frost later, nor a first one earlier', () => {
    fc.assert(
      fc.property(years, chance, (described, p) => {
        const some = seasonsOf(described);
        const more = [...some, season(2020, null)];
        for (const which of ['first', 'last'] as const) {
          const [before, after] = [some, more].map((all) => rank(frostDay(all, 0, which, p), which));
          if (which === 'last') expect(after).toBeLessThanOrEqual(before!);
          else expect(after).toBeGreaterThanOrEqual(before!);
        }
      }),
    );
  });
  test('a year that turns warmer never does either', () => {
    fc.assert(
      fc.property(years, chance, fc.nat(19), fc.nat(365), fc.nat(365), (described, p, which, from, length) => {
        const some = seasonsOf(described);
        const warmed = some.map((one, i) =>
          i === which % some.length
            ? { ...one, values: one.values.map((v, day) => (day >= from && day < from + length ? v + 5 : v)) }
            : one,
        );
        expect(rank(frostDay(warmed, 0, 'last', p), 'last')).toBeLessThanOrEqual(
          rank(frostDay(some, 0, 'last', p), 'last'),
        );
        expect(rank(frostDay(warmed, 0, 'first', p), 'first')).toBeGreaterThanOrEqual(
          rank(frostDay(some, 0, 'first', p), 'first'),
        );
      }),
    );
  });
  test('spring days fall and fall days rise with the chance', () => {
    fc.assert(
      fc.property(years, chance, chance, (described, a, b) => {
        const some = seasonsOf(described);
        const [low, high] = [Math.min(a, b), Math.max(a, b)];
        const of = (which: 'first' | 'last', p: number) => rank(frostDay(some, 0, which, p), which);
        expect(of('last', low)).toBeGreaterThanOrEqual(of('last', high));
        expect(of('first', low)).toBeLessThanOrEqual(of('first', high));
      }),
    );
  });
});

describe('cold seasons of a record', () => {
  test('begin on 15 July in the north and on 15 January in the south, the outer ones in part', () => {
    const record = seriesOf(civil(2000, 1, 1), civil(2002, 12, 31) + 1, () => 5);
    const starts = (southern: boolean) => coldSeasons(record, southern).map(({ start }) => formatDay(start));
    expect(starts(false)).toEqual(['1999-07-15', '2000-07-15', '2001-07-15', '2002-07-15']);
    expect(starts(true)).toEqual(['1999-01-15', '2000-01-15', '2001-01-15', '2002-01-15']);
    for (const { start, values } of coldSeasons(record, false))
      expect(formatDay(start + values.length).slice(5)).toBe('07-15');
  });
  test('frostDate finds the same in one record, north and half a year on in the south', () => {
    const frostAt = (month: number, day: number) => month < 5 || (month === 5 && day <= 10) || month >= 11;
    const tmin: number[] = [];
    for (let day = civil(1990, 1, 1); day <= civil(2010, 12, 31); day++) {
      const [, month, dayOfMonth] = formatDay(day).split('-').map(Number);
      tmin.push(frostAt(month!, dayOfMonth!) ? -1 : 9);
    }
    const rule = { threshold: 0, chance: 0.3, latitude: 44 } as const;
    const north = { start: '1990-01-01', tmin };
    expect(frostDate(north, { ...rule, which: 'last' })).toBe('05-10');
    expect(frostDate(north, { ...rule, which: 'first' })).toBe('11-01');
    // The same nights 184 days on: the frost of 10 May falls on 9 or 10 November.
    const south = { start: '1990-07-04', tmin };
    expect(frostDate(south, { ...rule, which: 'last', latitude: -44 })).toMatch(/^11-(09|10|11)$/);
    expect(frostDate(south, { ...rule, which: 'first', latitude: -44 })).toMatch(/^05-0[3-5]$/);
    expect(() => frostDate({ start: 'May', tmin }, { ...rule, which: 'last' })).toThrow(RangeError);
  });
});
