/** The first screen of a season sheet: what is to be done next, and what stands beside it. */
import { expect, test } from 'vitest';
import type { Season } from '../../src/model/season.ts';
import { changed, demoOn, pageOf } from './sheet-kit.ts';

const season = demoOn(4, 2);
const BARRIER = 'summer-annual-barrier';
const only = (one: Season, id: string): Season => ({
  ...one,
  applications: one.applications.filter((application) => application.id === id),
});
const textOf = (one: Season, selector: string) => pageOf(one).querySelector(selector)?.textContent?.trim();
const nameOf = (id: string) => season.applications.find((one) => one.id === id)!.name;

test('the work with the earliest day comes first', () =>
  expect(textOf(season, '#now h2')).toBe(nameOf('first-mowing')));
test('what is due goes before what has an earlier day', () =>
  expect(textOf(changed(season, 'overseed', { status: 'due' }), '#now h2')).toBe(nameOf('overseed')));
test('it says the day', () => expect(textOf(only(season, BARRIER), '#now .when')).toBe('Sun, Apr 11'));
test('it says the hours by the clock of the lawn', () =>
  expect(textOf(only(season, BARRIER), '#now .hours')).toMatch(/^8:55\s–\s9:15\sAM/));
test('it says the amount in all', () => expect(textOf(only(season, BARRIER), '#now p.much')).toBe('20.7 lb'));
test('it says the amount of each area that is still to do', () =>
  expect(
    [
      ...pageOf(changed(only(season, BARRIER), BARRIER, { areasDone: ['front'] })).querySelectorAll('#now .areas li'),
    ].map((one) => one.textContent?.replace(/\s+/g, ' ').trim()),
  ).toEqual(['back 10.7 lb', 'side 2.4 lb']));
test('it says the rule, the value of today and the expected day', () => {
  const { why, whyNow } = season.applications.find(({ id }) => id === BARRIER)!;
  const said = textOf(only(season, BARRIER), '#now .because')!;
  for (const line of why.filter((one) => one !== whyNow).slice(0, 3)) expect(said).toContain(line);
});
test('as many marks are filled as the odds say', () => {
  const due = changed(only(season, BARRIER), BARRIER, { inWindow: 0.3 });
  expect(pageOf(due).querySelectorAll('#now .odds rect.full')).toHaveLength(3);
});
test('work that a label has a say in defers to it', () =>
  expect(pageOf(only(season, BARRIER)).querySelectorAll('#now .care')).toHaveLength(1));
test('work that none has a say in does not', () =>
  expect(pageOf(only(season, 'first-mowing')).querySelectorAll('#now .care')).toHaveLength(0));
test('what is to be bought before the work stands before it', () =>
  expect(textOf(season, '#now .before')).toContain('Sun, Apr 4'));
test('work without a day says about when', () => {
  const open = changed(only(season, BARRIER), BARRIER, { date: null, start: null, end: null, inWindow: null });
  expect(textOf(open, '#now .when')).toContain('Apr 8');
});
test('open work without a day gives way to work with one, and is told beside it', () => {
  const stuck = changed(season, 'first-mowing', { date: null, start: null, end: null, inWindow: null });
  expect(textOf(stuck, '#now h2')).toBe(nameOf(BARRIER));
  expect(textOf(stuck, '#now .before')).toContain(nameOf('first-mowing'));
});
test('what is to be bought today stands before work of today', () => {
  const today = { ...changed(season, BARRIER, { status: 'due' }), asOf: '2027-04-11' };
  const shopping = season.shopping.map((one) => ({ ...one, buyBy: '2027-04-11' }));
  expect(pageOf({ ...today, shopping }).querySelectorAll('#now .before li').length).toBeGreaterThan(1);
});
test('a long instruction is no large figure', () =>
  expect(pageOf(only(season, 'seedling-scout')).querySelectorAll('#now p.much')).toHaveLength(0));
test('where nothing more is planned it names no day', () => {
  const over = { ...season, applications: season.applications.map((one) => ({ ...one, status: 'done' as const })) };
  expect(pageOf(over).querySelectorAll('#now .when')).toHaveLength(0);
});
