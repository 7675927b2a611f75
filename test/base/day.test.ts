import { addDays as addDaysFns } from 'date-fns/addDays';
import { addMonths as addMonthsFns } from 'date-fns/addMonths';
import { differenceInCalendarDays } from 'date-fns/differenceInCalendarDays';
import { getDayOfYear } from 'date-fns/getDayOfYear';
import { getISODay } from 'date-fns/getISODay';
import { isExists } from 'date-fns/isExists';
import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  addMonths,
  civil,
  dayOfYear,
  firstOnOrAfter,
  formatDay,
  inYear,
  latestOnOrBefore,
  monthDayIn,
  parseDay,
  parseMonthDay,
  partsOf,
  weekday,
  yearOf,
} from '../../src/base/day.ts';

/** Days from 1800 to 2399, leap centuries and common ones among them. */
const someDay = fc.integer({ min: civil(1800, 1, 1), max: civil(2399, 12, 31) });

/** A day as date-fns holds it: midnight of the machine's own zone. */
const local = (day: number): Date => {
  const { year, month, day: dayOfMonth } = partsOf(day);
  return new Date(year, month - 1, dayOfMonth);
};
const back = (date: Date): number => civil(date.getFullYear(), date.getMonth() + 1, date.getDate());

describe('civil days', () => {
  test('the day after 1970-01-01 is 1', () => expect(civil(1970, 1, 2)).toBe(1));
  test('the day before it is -1', () => expect(parseDay('1969-12-31')).toBe(-1));
  test('2000-01-01 is 10957', () => expect(parseDay('2000-01-01')).toBe(10_957));
  test('2028-02-29 exists', () => expect(parseDay('2028-02-29')).toBe(civil(2028, 2, 29)));
  test.each([
    '2027-02-29',
    '1900-02-29',
    '2027-04-31',
    '2027-13-01',
    '2027-00-01',
    '2027-01-00',
    '2027-1-1',
    '27-01-01',
    '0027-01-01',
    '2027-01-01T00:00:00Z',
    ' 2027-01-01',
    '2027/01/01',
    '+2027-01-01',
    '２０２７-01-01',
    '',
  ])('"%s" is no day', (text) => expect(parseDay(text)).toBeNull());
  test('2000-02-29 exists: a century that is a multiple of 400', () => {
    expect(formatDay(civil(2000, 2, 29))).toBe('2000-02-29');
  });
  test('the day after 2027-12-31 is 2028-01-01', () => {
    expect(formatDay(civil(2027, 12, 31) + 1)).toBe('2028-01-01');
  });
  test('partsOf a day before 1970', () => {
    expect(partsOf(civil(1899, 12, 31))).toEqual({ year: 1899, month: 12, day: 31 });
  });
  test('what is written is read again', () => {
    fc.assert(fc.property(someDay, (day) => parseDay(formatDay(day)) === day));
  });
});

describe('day of the year and of the week', () => {
  test('1 February is day 32', () => expect(dayOfYear(civil(2027, 2, 1))).toBe(32));
  test('31 December of a leap year is day 366', () => expect(dayOfYear(civil(2028, 12, 31))).toBe(366));
  test('31 December of a common year is day 365', () => expect(dayOfYear(civil(2027, 12, 31))).toBe(365));
  test('1970-01-01 was a Thursday', () => expect(weekday(0)).toBe(4));
  test('2027-04-03 is a Saturday', () => expect(weekday(civil(2027, 4, 3))).toBe(6));
  test('1969-12-28 was a Sunday', () => expect(weekday(civil(1969, 12, 28))).toBe(0));
});

describe('month-days', () => {
  test('02-29 is allowed', () => expect(parseMonthDay('02-29')).toEqual({ month: 2, day: 29 }));
  test.each(['02-30', '04-31', '13-01', '00-10', '10-00', '2-1', '2027-02-01', '10/01', ''])(
    '"%s" is no month-day',
    (text) => expect(parseMonthDay(text)).toBeNull(),
  );
  test('02-29 is 28 February in 2027', () => {
    expect(formatDay(monthDayIn({ month: 2, day: 29 }, 2027))).toBe('2027-02-28');
  });
  test('02-29 is 29 February in 2028', () => {
    expect(formatDay(monthDayIn({ month: 2, day: 29 }, 2028))).toBe('2028-02-29');
  });
  test('02-29 is 28 February in 2100', () => {
    expect(formatDay(monthDayIn({ month: 2, day: 29 }, 2100))).toBe('2100-02-28');
  });
  test('the first 03-01 on or after 1 March is that day', () => {
    expect(formatDay(firstOnOrAfter({ month: 3, day: 1 }, civil(2027, 3, 1)))).toBe('2027-03-01');
  });
  test('the first 03-01 on or after 2 March is in the next year', () => {
    expect(formatDay(firstOnOrAfter({ month: 3, day: 1 }, civil(2027, 3, 2)))).toBe('2028-03-01');
  });
  test('the first 02-29 on or after 1 March 2027 is 29 February 2028', () => {
    expect(formatDay(firstOnOrAfter({ month: 2, day: 29 }, civil(2027, 3, 1)))).toBe('2028-02-29');
  });
  test('the latest 12-01 on or before 2 January is in the year before', () => {
    expect(formatDay(latestOnOrBefore({ month: 12, day: 1 }, civil(2027, 1, 2)))).toBe('2026-12-01');
  });
  test('the latest 02-29 on or before 28 February 2027 is that day', () => {
    expect(formatDay(latestOnOrBefore({ month: 2, day: 29 }, civil(2027, 2, 28)))).toBe('2027-02-28');
  });
  test('29 February in a common year is 28 February', () => {
    expect(formatDay(inYear(civil(2028, 2, 29), 2027))).toBe('2027-02-28');
  });
  test.each([
    [{ month: 8, day: 31 }, 6, { month: 2, day: 29 }],
    [{ month: 10, day: 31 }, 6, { month: 4, day: 30 }],
    [{ month: 2, day: 15 }, 6, { month: 8, day: 15 }],
    [{ month: 12, day: 31 }, 6, { month: 6, day: 30 }],
    [{ month: 1, day: 31 }, -6, { month: 7, day: 31 }],
    [{ month: 3, day: 31 }, -13, { month: 2, day: 29 }],
  ])('%j moved by %i months is %j', (from, months, to) => expect(addMonths(from, months)).toEqual(to));
});

describe('against date-fns, over 600 years', () => {
  test('adding days', () => {
    fc.assert(
      fc.property(
        someDay,
        fc.integer({ min: -800, max: 800 }),
        (day, n) => back(addDaysFns(local(day), n)) === day + n,
      ),
    );
  });
  test('difference of days', () => {
    fc.assert(fc.property(someDay, someDay, (a, b) => differenceInCalendarDays(local(a), local(b)) === a - b));
  });
  test('day of the year', () => {
    fc.assert(fc.property(someDay, (day) => getDayOfYear(local(day)) === dayOfYear(day)));
  });
  test('day of the week, 7 for Sunday there', () => {
    fc.assert(fc.property(someDay, (day) => getISODay(local(day)) % 7 === weekday(day)));
  });
  test('which days exist', () => {
    const part = (max: number) => fc.integer({ min: 0, max });
    fc.assert(
      fc.property(fc.integer({ min: 1800, max: 2399 }), part(13), part(32), (year, month, day) => {
        const text = `${year}-${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`;
        return isExists(year, month - 1, day) === (parseDay(text) !== null);
      }),
    );
  });
  test('moving month-days, in a leap year', () => {
    const leap = fc.integer({ min: civil(2024, 1, 1), max: civil(2024, 12, 31) });
    fc.assert(
      fc.property(leap, fc.integer({ min: 0, max: 11 }), (day, months) => {
        const { month, day: dayOfMonth } = partsOf(day);
        // Moved inside 2024 alone, so that both clip to the same month.
        const wrapped = month + months > 12 ? months - 12 : months;
        const moved = partsOf(back(addMonthsFns(local(day), wrapped)));
        expect(addMonths({ month, day: dayOfMonth }, months)).toEqual({ month: moved.month, day: moved.day });
      }),
    );
  });
  test('the first on or after is never before, nor a year and a day after', () => {
    fc.assert(
      fc.property(someDay, someDay, (day, other) => {
        const { month, day: dayOfMonth } = partsOf(other);
        const found = firstOnOrAfter({ month, day: dayOfMonth }, day);
        expect(found).toBeGreaterThanOrEqual(day);
        expect(found - day).toBeLessThanOrEqual(366);
        expect(latestOnOrBefore({ month, day: dayOfMonth }, found)).toBe(found);
      }),
    );
  });
  test('inYear keeps the year asked for', () => {
    fc.assert(
      fc.property(someDay, fc.integer({ min: 1800, max: 2399 }), (day, year) => yearOf(inYear(day, year)) === year),
    );
  });
});
