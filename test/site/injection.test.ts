/** What a person may write into a publication stays text: in pages, feeds and digests, whatever it is. */
import { parseHTML } from 'linkedom';
import { describe, expect, test } from 'vitest';
import { parseDay } from '../../src/base/day.ts';
import { indexPage } from '../../src/emit/site/index-page.ts';
import { linkPublication } from '../../src/link-places.ts';
import { filesForPlace } from '../../src/places.ts';
import { readPublication } from '../../src/read/publication.ts';
import { HOSTILE } from '../feed/hostile.ts';
import { faultsOf } from '../feed/rules.ts';
import { LONG } from '../kit.ts';
import { program } from './kit.ts';

const lookup = (ref: string) => ({ name: ref, text: program('fescue', 'tall-fescue') });

/** The files of a publication with a text in every field that takes one; null where it is refused. */
function filesWith(text: string): ReadonlyMap<string, string> | null {
  const written = JSON.stringify(text);
  const read = readPublication(
    `{ "kind": "publication", "version": 1, "id": "p", "name": ${written}, "about": ${written}, "changelog": [${written}],
  "programs": ["p.yaml"], "places": [{ "id": "a", "name": ${written}, "latitude": 39.2, "longitude": -75, "grass": "tall-fescue" }],
  "thermometers": [{ "name": ${written}, "latitude": 39.2, "longitude": -75, "reach": "9 km", "readings": [] }] }`,
    'publish.yaml',
    lookup,
  );
  const { jobs, programs, stations } = linkPublication(read, lookup);
  const [job] = jobs;
  if (!read.value || !job) return null;
  const { name, about = null, changelog = [] } = read.value;
  const made = filesForPlace(
    job,
    {
      publication: { id: 'p', name, baseUrl: 'https://lawns.example/', embed: true, changelog, display: {} },
      programs,
      stations,
      asOf: parseDay('2027-04-02') ?? 0,
      revisedAt: '2027-04-02T00:00:00Z',
    },
    null,
  );
  const index = indexPage([{ ...job, program: 'P' }], { name, about, language: 'en-US', units: 'us', zips: {} });
  return new Map([...made.files.map((one) => [one.name, one.text] as const), ['index.html', index]]);
}

/** The elements and attributes of a page, without its texts. */
const shapeOf = (page: string) =>
  [...parseHTML(page).document.querySelectorAll('*')].map(
    (one) => `${one.tagName} ${[...one.attributes].map(({ name }) => name).join(' ')}`,
  );
const plain = filesWith('Plain') as ReadonlyMap<string, string>;

describe('a text of a publication', LONG, () => {
  test.each(Object.entries(HOSTILE))('%s is refused, or stays text', (_, text) => {
    const files = filesWith(text);
    if (files === null) return;
    for (const [name, page] of files)
      if (name.endsWith('.html')) expect([name, shapeOf(page)]).toEqual([name, shapeOf(plain.get(name) ?? '')]);
    expect(faultsOf(files.get('a/a.ics') ?? '')).toEqual({});
    expect((files.get('a/changes.xml')?.match(/<\w+/g) ?? []).length).toBe(
      (plain.get('a/changes.xml')?.match(/<\w+/g) ?? []).length,
    );
  });
  test('some of them are taken', () =>
    expect(Object.values(HOSTILE).filter((text) => filesWith(text) !== null).length).toBeGreaterThan(5));
});
