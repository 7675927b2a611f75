/** The text of a job stands on its own: nothing that matters gives way, lengths are of code points, markup is only ours. */
import { beforeAll, describe, expect, test } from 'vitest';
import { eventsOf } from '../../src/emit/events/all.ts';
import { weatherFrom } from '../../src/emit/events/weather-from.ts';
import type { Application, Season } from '../../src/model/season.ts';
import { FORECASTS, PAST_SERVICES } from '../../src/read/services/services.ts';
import { demoCopy } from '../kit.ts';
import { AS_OF, changed, feedOf, partsOf, planned, unfolded, valueIn } from './feed.ts';

let season: Season;
beforeAll(async () => {
  const { cwd, lawn } = demoCopy();
  ({ season } = await planned(cwd, lawn, AS_OF));
});

const BARRIER = 'summer-annual-barrier';
const textOf = (change: Partial<Application> = {}) =>
  eventsOf(changed(season, BARRIER, change), 'full').find(({ kind, step }) => kind === 'job' && step === BARRIER)!
    .description;
const much = (what: string, lines = 80) => Array.from({ length: lines }, (_, i) => `Line ${i} ${what}, and so on.`);
const lengthOf = (text: string) => [...text].length;

describe('the text of a job', () => {
  test.each(['4 lb/1000 sq ft', '7.5 lb', 'crosswise', '57 %', AS_OF, 'files'])('says %s', (fact) =>
    expect(textOf()).toContain(fact),
  );
  test('says every caution', () => {
    const { cautions } = season.applications.find(({ id }) => id === BARRIER)!;
    for (const caution of cautions) expect(textOf()).toContain(caution);
    expect(cautions.length).toBeGreaterThan(0);
  });
  test('keeps its cautions where there is too much to do', () => {
    const how = Array.from({ length: 80 }, (_, i) => `Line ${i} of what is to be done here.`);
    const text = textOf({ how, cautions: ['Wear gloves.'] });
    expect(text).toContain('Wear gloves.');
    expect(text).toContain('Line 0 ');
    expect(text).not.toContain('Line 79 ');
    expect(lengthOf(text)).toBeLessThan(2000);
  });
  test('keeps its reasons out where there is no room', () => {
    const why = Array.from({ length: 80 }, (_, i) => `Reason ${i} of many for this day.`);
    expect(lengthOf(textOf({ why }))).toBeLessThan(2000);
  });
  test.each(['Sun, Apr 11 lies inside', '57 %', 'Wear gloves.', AS_OF])(
    'keeps %s where there is too much to do',
    (fact) => expect(textOf({ how: much('to do'), why: much('to know'), cautions: ['Wear gloves.'] })).toContain(fact),
  );
  test.each(['Sun, Apr 11 lies inside', '57 %', AS_OF])('keeps %s where there is too much to take care of', (fact) =>
    expect(textOf({ cautions: much('to mind') })).toContain(fact),
  );
  test('gives way in what is to be done before its cautions', () => {
    const text = textOf({ how: much('to do', 20), cautions: much('to mind', 40) });
    expect(text).toContain('Line 39 to mind');
    expect(text).not.toContain('Line 19 to do');
  });
  test('gives way in its reasons before what is to be done', () => {
    const text = textOf({ how: much('to do', 40), cautions: [], why: much('to know', 40) });
    expect(text).toContain('Line 39 to do');
    expect(text).not.toContain('Line 39 to know');
  });
  test('gives way by whole lines, so that no amount is cut', () => {
    const how = much('to do');
    const told = textOf({ how })
      .split('\n')
      .filter((line) => line.startsWith('- Line'));
    expect(told.length).toBeGreaterThan(3);
    expect(told.filter((line) => !how.includes(line.slice(2)))).toEqual([]);
  });
  test('counts code points: a thousand emoji of two units each fit', () =>
    expect(textOf({ how: ['🌱'.repeat(1000)], cautions: [] })).toContain('🌱'.repeat(1000)));
  test('is cut between code points where what may never go is too long', () => {
    const text = textOf({ notJudged: ['🌱'.repeat(5000)] });
    expect(lengthOf(text)).toBe(1990);
    expect(text).not.toMatch(/\p{Surrogate}/u);
  });
  test('speaks of the leaves where the hours go by them', () =>
    expect(textOf({ hours: 'wet', cautions: [] })).not.toBe(textOf({ hours: 'dry', cautions: [] })));
  test.each(['6 in 10', 'sunrise'])('says %s where there is room', (fact) =>
    expect(textOf({ cautions: [] })).toContain(fact),
  );
  test('says all that is to be done, and every caution, of the step of which the demo has most to say', () => {
    const { how, cautions } = season.applications.find(({ id }) => id === BARRIER)!;
    expect([...how, ...cautions].filter((line) => !textOf().includes(line))).toEqual([]);
  });
});

describe('where the weather came from', () => {
  const sources = (...names: string[]) => weatherFrom({ weather: { ...season.weather, sources: names } });
  test('a file has no name, which may tell the place', () =>
    expect(sources('weather/springfield.csv')).toEqual({ files: true, services: [] }));
  test.each([
    'Open-Meteo, 12 Harbour Street.csv',
    'Open-Meteo archive (12 Harbour Street)',
    'NOAA NCEI daily summaries, station 12 Harbour Street',
    'U.S. National Weather Service of Springfield.csv',
  ])('%s is a file, though its name begins as that of a service', (name) =>
    expect(sources(name)).toEqual({ files: true, services: [] }),
  );
  test('a station is told with its service', () =>
    expect(sources('NOAA NCEI daily summaries, station USC00334403').services).toHaveLength(1));
  test.each([...Object.values(PAST_SERVICES), ...Object.values(FORECASTS)].map(({ title }) => title))('%s', (title) =>
    expect(sources(title)).toEqual({ files: false, services: [title] }),
  );
});

describe('the HTML variant', () => {
  const alternatives = (one: Season) =>
    partsOf(feedOf(one).text).parts.map((event) =>
      valueIn(event, 'X-ALT-DESC')!.replace(/\\n/g, '\n').replace(/\\(.)/g, '$1'),
    );
  test('stands in every event once, as HTML', () => {
    const { text } = feedOf(season);
    const lines = unfolded(text).filter((line) => line.startsWith('X-ALT-DESC'));
    expect(lines).toHaveLength(partsOf(text).parts.length);
    for (const line of lines) expect(line).toMatch(/^X-ALT-DESC;FMTTYPE=text\/html:<html>.*<\/html>$/);
  });
  test('has no markup but ours, whatever a text holds', () => {
    const hostile = changed(season, BARRIER, {
      how: ['<script>alert(1)</script>', '<img src=x onerror=y>'],
      name: '<b>',
    });
    const tags = alternatives(hostile).flatMap((one) => one.match(/<[^>]*>/g) ?? []);
    expect([...new Set(tags)].sort()).toEqual([
      '</body>',
      '</html>',
      '</li>',
      '</p>',
      '</ul>',
      '<body>',
      '<html>',
      '<li>',
      '<p>',
      '<ul>',
    ]);
  });
  test('says what the plain text says', () => {
    const words = (text: string) =>
      text
        .replace(/<[^>]*>/g, ' ')
        .replace(/&#39;/g, "'")
        .replace(/&quot;/g, '"')
        .replace(/&gt;/g, '>')
        .replace(/&lt;/g, '<')
        .replace(/&amp;/g, '&')
        .split(/\s+/)
        .filter((word) => word !== '' && word !== '-')
        .join(' ');
    const plain = partsOf(feedOf(season).text).parts.map((event) =>
      valueIn(event, 'DESCRIPTION')!.replace(/\\n/g, '\n').replace(/\\(.)/g, '$1'),
    );
    expect(alternatives(season).map(words)).toEqual(plain.map((text) => words(text.replace(/^- /gm, ''))));
  });
});
