/** Calendar files as they are read and checked, and what commands for one lawn say to them. */
import { describe, expect, test } from 'vitest';
import { readCalendar } from '../../src/read/calendar.ts';
import { CALENDAR, calendarText, edit, LAWNS, lawnsFolder, problemsOf } from './lawns.ts';

const check = (cwd: string) => problemsOf(cwd, ['check', CALENDAR]);

describe('a calendar file', () => {
  test('is read', () =>
    expect(readCalendar(calendarText(LAWNS, 'as: helper\ndetail: quiet\n'), CALENDAR)).toMatchObject({
      problems: [],
      value: { id: 'my-lawns', feed: { key: '4h8r2k9w' }, lawns: LAWNS, as: 'helper', detail: 'quiet' },
    }));
  test.each([
    ['no lawn', calendarText([]), 'wrong-type my-lawns.yaml:6:8'],
    ['too many', calendarText(Array.from({ length: 101 }, (_, i) => `${i}.yaml`)), 'out-of-range my-lawns.yaml:6:8'],
    ['a lawn that is no path', calendarText(['7']), 'wrong-type my-lawns.yaml:6:9'],
    ['no key', calendarText(LAWNS).replace('feed: { key: 4h8r2k9w }\n', ''), 'missing-key my-lawns.yaml:1:1'],
    ['a key it has not', calendarText(LAWNS, 'laws: []\n'), 'unknown-key my-lawns.yaml:7:1'],
    ['a reader it has not', calendarText(LAWNS, 'as: public\n'), 'unknown-word my-lawns.yaml:7:5'],
  ])('with %s is refused at its place', async (_, text, problem) =>
    expect(await check(lawnsFolder(text))).toEqual({ code: 1, problems: [problem] }),
  );
});

describe('check of a calendar', () => {
  test('finds nothing wrong with one whose lawns are fine', async () => {
    const { code, problems } = await check(lawnsFolder());
    expect([code, problems.filter((one) => !one.startsWith('weather-few-years'))]).toEqual([0, []]);
  });
  test('names what is wrong in the file of a lawn', async () => {
    const cwd = lawnsFolder();
    edit(cwd, 'hill/lawn.yaml', 'grass: tall-fescue', 'grass: moss');
    expect((await check(cwd)).problems).toContain('unknown-word hill/lawn.yaml:8:8');
  });
  test.each([
    ['that is not there', 'moor/lawn.yaml', 'file-missing my-lawns.yaml:6:27', 2],
    ['that is a program', 'hill/program.yaml', 'wrong-kind my-lawns.yaml:6:27', 2],
    ['that is the calendar itself', CALENDAR, 'wrong-kind my-lawns.yaml:6:27', 2],
    ['that it has already', './plot-7/lawn.yaml', 'calendar-same-id my-lawns.yaml:6:27', 1],
  ])('names a lawn %s, at its place', async (_, ref, problem, code) => {
    const found = await check(lawnsFolder(calendarText([LAWNS[0], ref])));
    expect([found.code, found.problems.filter((one) => one.includes(CALENDAR))]).toEqual([code, [problem]]);
  });
  test('names a lawn that has the id of the calendar', async () => {
    const cwd = lawnsFolder();
    edit(cwd, CALENDAR, 'id: my-lawns', 'id: hill');
    expect((await check(cwd)).problems).toContain('calendar-same-id my-lawns.yaml:6:27');
  });
});

test.each([['areas'], ['spreader'], ['sprayer'], ['did', 'spring-feed'], ['weather', 'show'], ['weather', 'fetch']])(
  '%s %s wants one of its lawns and names them',
  async (...words) => {
    const [command, ...rest] = words;
    const at = command === 'did' ? [command, CALENDAR, ...rest] : [...words, CALENDAR];
    expect(await problemsOf(lawnsFolder(), at)).toEqual({ code: 2, problems: ['calendar-for-lawn my-lawns.yaml:1:7'] });
  },
);
