/** The finder of a site's first page, run in a page without a browser. */
import { createContext, runInContext } from 'node:vm';
import { parseHTML } from 'linkedom';
import { describe, expect, test } from 'vitest';
import { indexPage } from '../../src/emit/site/index-page.ts';
import { zipPrefixes } from '../../src/shell/publish-site/zip-prefixes.ts';

const place = (id: string, name: string, latitude: number, longitude: number) => ({
  id,
  name,
  latitude,
  longitude,
  program: 'P',
});
const PLACES = [
  place('east', 'Point Été', 40.7, -73.9),
  place('middle', 'Middle </script> & co', 39.1, -94.6),
  place('west', 'West wood', 34.1, -118.2),
];
const page = (units: 'us' | 'metric' = 'us') =>
  indexPage(PLACES, { name: 'Site', about: null, language: 'en-US', units, zips: zipPrefixes() });

/** What the finder shows for what is typed: the links, and whether it says that nothing was found. */
function found(typed: string, text = page()) {
  const { document } = parseHTML(text);
  const script = document.querySelector('script:not([type])')?.textContent ?? '';
  runInContext(script, createContext({ document }));
  const input = document.getElementById('finder-input') as unknown as {
    value: string;
    dispatchEvent(e: unknown): void;
  };
  input.value = typed;
  const { Event } = parseHTML('').window ?? {};
  input.dispatchEvent(new (Event as typeof globalThis.Event)('input'));
  return {
    items: [...document.querySelectorAll('#finder-found li')].map((item) => item.textContent ?? ''),
    links: [...document.querySelectorAll('#finder-found a')].map((link) => link.getAttribute('href')),
    none: !(document.getElementById('finder-none')?.hasAttribute('hidden') ?? true),
  };
}

describe('the finder', () => {
  // ZIP codes 100xx are Manhattan, 641xx Kansas City, 900xx Los Angeles: U.S. Census Bureau, Gazetteer of 2021.
  test.each([
    ['10001', 'east/index.html'],
    ['64111', 'middle/index.html'],
    ['90012-1234', 'west/index.html'],
  ])('finds the nearest place to %s', (zip, link) => expect(found(zip).links[0]).toBe(link));
  test('says how far it is, in miles or kilometres', () => {
    expect(found('90012').items[0]).toMatch(/^West wood, about \d{1,2} mi away$/);
    expect(found('90012', page('metric')).items[0]).toMatch(/^West wood, about \d{1,2} km away$/);
  });
  test.each([
    ['wood', ['west/index.html']],
    ['ETE', ['east/index.html']],
    ['  point', ['east/index.html']],
  ])('finds a place by "%s" of its name', (typed, links) => expect(found(typed).links).toEqual(links));
  test('says so where there is none', () => expect(found('nowhere')).toEqual({ items: [], links: [], none: true }));
  test.each(['', '1', '9001'])('waits while "%s" is no whole ZIP code', (typed) =>
    expect(found(typed)).toEqual({ items: [], links: [], none: false }),
  );
  test('a name cannot end the data', () => expect(found('middle').items).toEqual(['Middle </script> & co']));
});

describe('the page', () => {
  const { document } = parseHTML(page());
  test('is whole without a script: the list of all, in the order of the names', () =>
    expect([...document.querySelectorAll('main > ul a')].map((link) => link.textContent)).toEqual([
      'Middle </script> & co',
      'Point Été',
      'West wood',
    ]));
  test('shows the form only where the script runs', () =>
    expect(document.getElementById('finder')?.hasAttribute('hidden')).toBe(true));
  test('says to look in the list where no script runs', () =>
    expect(document.querySelector('noscript')?.textContent).toContain('list'));
  test('has fewer than a thousand middles of ZIP codes', () => {
    const count = Object.keys(zipPrefixes()).length;
    expect(count).toBeGreaterThan(850);
    expect(count).toBeLessThan(1000);
  });
  test('loads nothing', () => expect(page()).not.toMatch(/\ssrc=|@import|url\(/));
});
