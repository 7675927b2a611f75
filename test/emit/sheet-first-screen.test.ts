/** The first screen of a season sheet: what is to be done next, and what stands beside it. */
import { parseHTML } from 'linkedom';
import { expect, test } from 'vitest';
import { sheetOf } from '../../src/emit/sheet/sheet.ts';
import type { Season } from '../../src/model/season.ts';
import { demoSeason } from '../words/plans.ts';

const [season] = demoSeason({ units: 'us', language: 'en-US' }).map((made) => made.season!) as [Season];
const pageOf = (one: Season) => parseHTML(sheetOf(one)).document;
const textOf = (one: Season, selector: string) => pageOf(one).querySelector(selector)?.textContent?.trim();

const changed = (id: string, change: Partial<Season['applications'][number]>): Season => ({
  ...season,
  applications: season.applications.map((one) => (one.id === id ? { ...one, ...change } : one)),
});

test('what is due goes before what has an earlier day', () => {
  const overdue = changed('overseed', { status: 'due', date: '2027-09-11' });
  expect(textOf(overdue, '#now h2')).toBe(season.applications.find(({ id }) => id === 'overseed')!.name);
});

test('where nothing more is planned it says so', () => {
  const over = { ...season, applications: season.applications.map((one) => ({ ...one, status: 'done' as const })) };
  expect(pageOf(over).querySelectorAll('#now .when')).toHaveLength(0);
});

test('as many marks are filled as the odds say', () => {
  const { id } = season.applications.find(({ status }) => status === 'open') ?? season.applications[0]!;
  const due = changed(id, { status: 'due', date: '2027-04-10', inWindow: 0.3 });
  expect(pageOf(due).querySelectorAll('#now .odds rect.full')).toHaveLength(3);
});

test('the same season gives the same bytes', () => expect(sheetOf(season)).toBe(sheetOf(season)));
