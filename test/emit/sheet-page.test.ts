/** The page that a season sheet is: sealed, the same again, and to be read by anybody. */
import { describe, expect, test } from 'vitest';
import { seenBy } from '../../src/emit/readers/seen-by.ts';
import { sheetOf } from '../../src/emit/sheet/sheet.ts';
import type { Season } from '../../src/model/season.ts';
import { HOSTILE } from '../feed/hostile.ts';
import { demoOn, pageOf } from './sheet-kit.ts';

const season = demoOn(4, 2);
const page = pageOf(season);
/** The tags of a page with the names of their attributes; a longer name takes one text more in a drawing. */
const tagsOf = (one: Season): string[] =>
  [...sheetOf(one).matchAll(/<(\/?[a-z!][^\s>]*)((?:[^>"]|"[^"]*")*)>/gi)]
    .map(([, tag = '', rest = '']) => `${tag} ${rest.replace(/="[^"]*"/g, '')}`)
    .filter((tag) => !/^\/?text/.test(tag))
    .toSorted();

test('the same season gives the same bytes', () => expect(sheetOf(season)).toBe(sheetOf(season)));
test('it is smaller than 300 KB', () => expect(Buffer.byteLength(sheetOf(season))).toBeLessThan(300_000));
test('its policy lets nothing run and nothing load', () =>
  expect(page.querySelector('meta[http-equiv]')?.getAttribute('content')).toBe(
    "default-src 'none'; style-src 'unsafe-inline'; img-src data:",
  ));
test('it holds no script and nothing to load', () =>
  expect(page.querySelectorAll('script, link, img, iframe, object, embed, video, audio, base')).toHaveLength(0));
test('no two parts have one name', () => {
  const ids = [...page.querySelectorAll('[id]')].map(({ id }) => id);
  expect(ids.filter((id, i) => ids.indexOf(id) !== i)).toEqual([]);
});
test('every name that is pointed to is there', () => {
  const wanted = [...page.querySelectorAll('[aria-labelledby]')].map((one) => one.getAttribute('aria-labelledby')!);
  const paints = [...sheetOf(season).matchAll(/url\(#([\w-]+)\)/g)].map(([, id]) => id!);
  expect(wanted.length).toBeGreaterThan(3);
  expect(paints.length).toBeGreaterThan(3);
  expect([...wanted, ...paints].filter((id) => page.getElementById(id) === null)).toEqual([]);
});
test('no heading leaves a level out', () => {
  const levels = [...page.querySelectorAll('h1, h2, h3, h4')].map(({ tagName }) => Number(tagName[1]));
  expect(levels.filter((level, i) => level > (levels[i - 1] ?? 0) + 1)).toEqual([]);
  expect(levels.filter((level) => level === 1)).toHaveLength(1);
});
test('every step stands in the table of the season', () =>
  expect([...page.querySelectorAll('#season tbody th')].map((one) => one.textContent)).toEqual(
    season.applications.map(({ name }) => name),
  ));
test('every caution of work to come stands on the printed sheet, at its job or once for all', () => {
  const printed = [...page.querySelectorAll('.take li:not(.shared)'), page.querySelector('.once')!]
    .map((one) => one.textContent)
    .join('\n');
  const cautions = season.applications.filter(({ date }) => date !== null).flatMap((one) => one.cautions);
  expect(cautions.length).toBeGreaterThan(20);
  expect(cautions.filter((one) => !printed.includes(one))).toEqual([]);
});
test('a mark stands for each chosen day that is to come, and another for each that is done', () => {
  const planned = season.applications.filter(({ date, status }) => date !== null && status !== 'done');
  const [narrow] = page.querySelectorAll('#season .narrow [fill="var(--navy)"]');
  const marks = [...page.querySelectorAll('#season .narrow g')].map((group) => [
    group.getAttribute('fill'),
    group.querySelectorAll(':scope > path').length,
  ]);
  expect(narrow).toBeDefined();
  expect(marks).toContainEqual(['var(--navy)', planned.length]);
  expect(marks).toContainEqual(['var(--moss)', season.applications.filter(({ status }) => status === 'done').length]);
});

/** Each step of the season named by another of these texts, as many seasons as that takes. */
const TEXTS = [...Object.values(HOSTILE), '</title><script>alert(1)</script><b onclick="x">', '" onload="x'];
const COUNT = season.applications.length;
const hostile = Array.from({ length: Math.ceil(TEXTS.length / COUNT) }, (_, turn) => {
  const name = (i: number) => TEXTS[(turn * COUNT + i) % TEXTS.length]!;
  return {
    ...season,
    lawnName: name(0),
    applications: season.applications.map((one, i) => ({ ...one, name: name(i), how: [name(i)], why: [name(i)] })),
  };
});

test('no text of a file brings a tag or an attribute in', () => {
  const one = (text: string): Season => ({
    ...season,
    lawnName: text,
    applications: season.applications.map((of) => ({ ...of, name: text, how: [text], why: [text] })),
  });
  const expected = tagsOf(one('Plain'));
  expect(expected.length).toBeGreaterThan(100);
  for (const season of hostile) expect(tagsOf(season)).toEqual(expected);
});
test('no text of a file brings in what could deceive a reader', () => {
  const deceiving = (text: string) =>
    [...new Set(text)].filter((one) => !'\n\t'.includes(one) && /[\p{Cc}\p{Bidi_Control}\ufeff]/u.test(one));
  expect(TEXTS.flatMap(deceiving).length).toBeGreaterThan(50);
  expect(hostile.flatMap((one) => deceiving(sheetOf(one)))).toEqual([]);
});

describe('a season that a helper may see', () => {
  const helper = pageOf(seenBy(season, { id: 'crew', as: 'helper', title: null }).season);
  test('has the work', () => expect(helper.querySelectorAll('#jobs .job')).toHaveLength(season.applications.length));
  test('has nothing that is the owner’s', () => {
    const text = helper.body.textContent ?? '';
    const private_ = [season.lawnName, ...season.shopping.flatMap(({ cost }) => (cost === null ? [] : [`$${cost}`]))];
    expect(private_.length).toBeGreaterThan(2);
    expect(private_.filter((one) => text.includes(one))).toEqual([]);
  });
});
