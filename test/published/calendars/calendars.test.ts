/** Published calendars against the programs; `calendar.ts` says what is compared, the files beside it are the calendars. */
import { readdirSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { root } from '../../kit.ts';
import { differences, type PublishedCalendar } from './calendar.ts';

const folder = path.join(root, 'test/published/calendars');
const names = readdirSync(folder)
  .filter((name) => name !== 'calendar.ts' && !name.endsWith('.test.ts'))
  .map((name) => name.replace('.ts', ''));

test('the calendars were found', () => expect(names.length).toBeGreaterThanOrEqual(12));

describe.each(names)('%s', async (name) => {
  const { calendar } = (await import(/* @vite-ignore */ `./${name}.ts`)) as { calendar: PublishedCalendar };
  const found = differences(calendar);

  test('every difference is explained', () => {
    const unexplained = [...found].filter(([key]) => !(key in calendar.explained));
    expect(Object.fromEntries(unexplained)).toEqual({});
  });

  test('every explained difference is there', () => {
    expect(Object.keys(calendar.explained).filter((key) => !found.has(key))).toEqual([]);
  });
});
