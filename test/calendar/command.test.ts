/** What a plan of a calendar prints, as text and as data, and what it refuses. */
import { describe, expect, test } from 'vitest';
import { soilclock } from '../kit.ts';
import { AS_OF, CALENDAR, calendarText, edit, LAWNS, lawnsFolder, plan, problemsOf } from './lawns.ts';

const json = async (cwd: string) => {
  const { stdout } = await soilclock(cwd, ['plan', CALENDAR, '--as-of', AS_OF, '--json']);
  return JSON.parse(stdout);
};
/** The hill's spring feed on the Sunday after. */
const apart = (cwd: string) => edit(cwd, LAWNS[1], 'working: { ', 'working: { days: [sun], ');

describe('the plan as text', () => {
  const printed = async (cwd: string) => (await plan(cwd, AS_OF)).stdout.split('\n');

  test('has the jobs of all lawns by day', async () => {
    const cwd = lawnsFolder();
    apart(cwd);
    const rows = (await printed(cwd)).filter((line) => line.includes('Spring feed'));
    expect(rows.map((row) => row.split(/ {2,}/).filter((cell) => cell !== ''))).toEqual([
      ['Sat, Apr 10', '09:40–10:00', 'Plot 7', 'Spring feed'],
      ['Sun, Apr 11', '09:40–10:00', 'The hill', 'Spring feed'],
    ]);
  });
  test('counts what comes later', async () =>
    expect(await printed(lawnsFolder())).toContain('2 more jobs after Sat, May 15.'));
  test('says where two lawns want somebody in the same hours', async () =>
    expect(await printed(lawnsFolder())).toContain(
      '  Sat, Apr 10: two jobs on two lawns, some of them in the same hours',
    ));
  test('says nothing of days with one lawn', async () => {
    const cwd = lawnsFolder();
    apart(cwd);
    expect(await printed(cwd)).not.toContain('Several lawns on one day');
  });
  test('says where the feed is and how to subscribe', async () => {
    const lines = await printed(lawnsFolder());
    expect(lines).toContain('Calendar feed: out/site/my-lawns.ics (9 events)');
    expect(lines.join(' ')).toContain('webcal://your.place/my-lawns.ics');
  });
  test('fits 80 columns, however long the names are', async () => {
    const cwd = lawnsFolder(calendarText(LAWNS, `as: owner\n`).replace('My lawns', 'All of the lawns '.repeat(9)));
    edit(cwd, LAWNS[0], 'Plot 7', 'The very long lawn on the far side of the hill beyond the river');
    edit(cwd, 'pond/program.yaml', 'name: Spring feed', `name: ${'Feed it lightly in spring '.repeat(4)}`);
    expect((await printed(cwd)).filter((line) => [...line].length > 80)).toEqual([]);
  });
});

describe('the plan as data', () => {
  test('has every season, and what changes', async () => {
    const { kind, version, calendar, name, seasons, changes, problems } = await json(lawnsFolder());
    expect([kind, version, calendar, name]).toEqual(['calendar', 1, 'my-lawns', 'My lawns']);
    expect(seasons.map(({ kind, lawn }: { kind: string; lawn: string }) => [kind, lawn])).toEqual([
      ['season', 'plot-7'],
      ['season', 'hill'],
    ]);
    expect(changes.every(({ what }: { what: string }) => what === 'new')).toBe(true);
    expect(problems.map(({ code }: { code: string }) => code)).toEqual(['weather-few-years']);
  });
  test('has the days on which several lawns want somebody', async () =>
    expect((await json(lawnsFolder())).sharedDays[0]).toEqual({
      date: '2027-04-10',
      jobs: [
        { lawn: 'plot-7', step: 'spring-feed', start: '2027-04-10T13:40:00Z', end: '2027-04-10T14:00:00Z' },
        { lawn: 'hill', step: 'spring-feed', start: '2027-04-10T13:40:00Z', end: '2027-04-10T14:00:00Z' },
      ],
      overlap: true,
    }));
  test('tells hours that do not meet from those that do', async () => {
    const cwd = lawnsFolder();
    edit(cwd, LAWNS[1], 'working: { ', 'working: { between: ["15:00", "18:00"], ');
    expect((await json(cwd)).sharedDays[0]).toMatchObject({ date: '2027-04-10', overlap: false });
  });
});

test.each([
  ['--weather', ['--weather', 'weather.csv'], 'calendar-option my-lawns.yaml'],
  ['--program', ['--program', 'hill/program.yaml'], 'calendar-option my-lawns.yaml'],
  ['--compare', ['--compare', 'april.json'], 'calendar-option my-lawns.yaml'],
  ['a step', ['spring-feed'], 'calendar-option my-lawns.yaml'],
  ['a day that is none', ['--as-of', '2027-02-30'], 'as-of'],
])('%s is refused', async (_, words, problem) =>
  expect(await problemsOf(lawnsFolder(), ['plan', CALENDAR, ...words])).toEqual({ code: 2, problems: [problem] }),
);
test('a calendar with a mistake in it plans nothing', async () =>
  expect(await problemsOf(lawnsFolder(calendarText([])), ['plan', CALENDAR])).toEqual({
    code: 1,
    problems: ['wrong-type my-lawns.yaml:6:8'],
  }));
