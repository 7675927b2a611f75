/** Every text of the catalogues, and whole plans, in each language: nothing of one language stands in the other. */
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import type { Compiled } from '../../src/compile.ts';
import { atomFeed } from '../../src/emit/changes/atom.ts';
import { digestText, digestWith } from '../../src/emit/changes/digest.ts';
import { sheetOf } from '../../src/emit/sheet/sheet.ts';
import type { Season } from '../../src/model/season.ts';
import { en } from '../../src/words/en.ts';
import { es } from '../../src/words/es.ts';
import { faultsOf } from '../feed/rules.ts';
import { keepFeed } from '../kit.ts';
import { BY_HAND } from './by-hand.ts';
import { type Asked, listen, marked, TEXTS, tell } from './catalogues.ts';
import { AUTHORS, DAYS, type Display, demoSeason, demoText, programSeasons, told } from './plans.ts';

const DISPLAYS = [
  { units: 'us', language: 'en-US' },
  { units: 'metric', language: 'en-GB' },
  { units: 'us', language: 'es-US' },
  { units: 'metric', language: 'es-ES' },
] as const satisfies readonly Display[];
const isSpanish = ({ language }: Display) => language.startsWith('es');

const plans = new Map<Display, readonly Compiled[]>();
const digests = new Map<Display, readonly string[]>();
const sheets = new Map<Display, readonly string[]>();
let heard: { readonly en: readonly Asked[]; readonly es: readonly Asked[] };
const ears = { en: listen(en), es: listen(es) };
const stop = () => {
  ears.en.stop();
  ears.es.stop();
};
beforeAll(() => {
  for (const [i, display] of DISPLAYS.entries()) {
    const made = [...demoSeason(display), ...(i === 0 || i === 3 ? programSeasons(display) : [])];
    plans.set(display, made);
    sheets.set(
      display,
      // Problems are for whoever mends the files, and have one language.
      made.map(({ season }) => sheetOf({ ...season!, problems: [] })),
    );
    digests.set(
      display,
      made.slice(1, DAYS.length).flatMap(({ changes, season }) => {
        const digest = digestWith(null, changes!.told, season!.asOf, `${season!.asOf}T06:00:00Z`);
        const empty = digestWith(null, [], season!.asOf, `${season!.asOf}T06:00:00Z`);
        return [digestText(digest, season!), digestText(empty, season!), atomFeed(digest, season!)];
      }),
    );
  }
  stop();
  heard = { en: ears.en.asked, es: ears.es.asked };
}, 120_000);
afterAll(stop);

const feeds = (of: (display: Display) => boolean) =>
  [...plans].flatMap(([display, made]) => (of(display) ? made.map(({ feed }) => feed!) : []));
const events = (of: (display: Display) => boolean) =>
  [...plans].flatMap(([display, made]) => (of(display) ? made.flatMap(({ ledger }) => ledger!.events) : []));

describe('the catalogues', () => {
  const asked = () => [
    ...new Map([...heard.en, ...heard.es, ...BY_HAND].map((one) => [JSON.stringify(one), one])).values(),
  ];
  /** Titles and lists that are nothing but what is put in, and words that both languages have. */
  const ALIKE =
    /^(feed\.(jobTitle|onDay)|soilTest\.names\.|trigger\.(any|all)|work\.(areaLine|entry|labelKeyOf|aid)|work\.rounded)$/;

  test('have the same texts', () => expect([...TEXTS.es.keys()].sort()).toEqual([...TEXTS.en.keys()].sort()));
  test.each(['en', 'es'] as const)('%s: every text is told, by a plan or by hand', (language) => {
    const known = new Set([...heard[language], ...BY_HAND].map(({ path }) => path));
    expect(
      [...TEXTS[language].keys()].filter((path) => !known.has(path) && TEXTS[language].get(path) !== null),
    ).toEqual([]);
  });
  test('every text by hand is one', () => expect(BY_HAND.filter(({ path }) => !TEXTS.en.has(path))).toEqual([]));
  test('every text holds the same of what is put in, and the same figures', () => {
    const holds = (text: string) => [...new Set(text.match(/⟦.⟧|\d+/g))].sort();
    const wrong = asked().flatMap((one) => {
      const [english, spanish] = [tell('en', marked(one)), tell('es', marked(one))];
      return JSON.stringify(holds(english)) === JSON.stringify(holds(spanish)) ? [] : [[one.path, english, spanish]];
    });
    expect(wrong).toEqual([]);
  });
  test('no text is the same in both', () => {
    const words = (text: string) => text.replace(/⟦.⟧/g, '').match(/\p{L}{3,}/gu) ?? [];
    const same = asked()
      .map((one) => [one.path, tell('en', marked(one)), tell('es', marked(one))] as const)
      .filter(([path, english, spanish]) => english === spanish && words(english).length > 0 && !ALIKE.test(path));
    expect(same).toEqual([]);
  });
  test('no text is left open', () => {
    const open = /undefined|NaN|null|\[object|\(\s*\)|\s[.,;:]|\s{2}\S|\.\.|,,/;
    expect(
      asked().flatMap((one) => [tell('en', one), tell('es', one)].filter((text) => open.test(text.trim()))),
    ).toEqual([]);
  });
});

/** Pieces of English that are long enough to know again, and that nobody wrote into a file. */
function english(): string[] {
  const pieces = [...heard.en, ...BY_HAND].flatMap((one) => tell('en', marked(one)).split(/⟦.⟧|\d+|[:;.()"“”]|\n/));
  const long = pieces.map((piece) => piece.trim()).filter((piece) => /\p{L}{2,} \p{L}{2,} \p{L}{2,}/u.test(piece));
  return [...new Set(long)].filter((piece) => !AUTHORS.includes(piece));
}

describe('a Spanish plan', () => {
  test('has no English of ours in its feed, its digest or its sheet', () => {
    const pieces = english();
    const inEnglish = events((display) => !isSpanish(display))
      .map(({ description }) => description)
      .join('\n');
    expect(pieces.filter((piece) => inEnglish.includes(piece)).length).toBeGreaterThan(50);
    const texts = [
      ...events(isSpanish).flatMap(({ summary, description }) => [summary, description]),
      ...[...digests, ...sheets].flatMap(([display, all]) => (isSpanish(display) ? all : [])),
    ].join('\n');
    expect(pieces.filter((piece) => texts.includes(piece))).toEqual([]);
  });
  test('has none in its season', () => {
    const pieces = english();
    const seasons = [...plans].flatMap(([display, made]) =>
      isSpanish(display) ? made.map(({ season }) => season!) : [],
    );
    // Problems are for whoever mends the files; limits are figures, told by reports.
    const texts = JSON.stringify(seasons.map(({ problems: _, limits: __, ...rest }) => rest));
    expect(pieces.filter((piece) => texts.includes(piece))).toEqual([]);
  });
  test('keeps every rule on feeds', () => {
    for (const feed of feeds(isSpanish)) expect(faultsOf(keepFeed(feed))).toEqual({});
  });
  test('says its language', () => {
    for (const feed of feeds(isSpanish)) expect(feed).toMatch(/^PRODID:.*\/\/ES\r$/m);
    for (const [display, all] of digests)
      if (isSpanish(display))
        expect(all.filter((text) => text.includes(`xml:lang="${display.language}"`)).length).toBeGreaterThan(0);
  });
  test('keeps descriptions to 2000 characters', () => {
    const lengths = events(isSpanish).map(({ description }) => [...description].length);
    expect(Math.max(...lengths)).toBeLessThanOrEqual(2000);
  });
  test('keeps every caution of work to come', () => {
    for (const [display, made] of plans)
      for (const { season, ledger } of isSpanish(display) ? [made[0]!] : [])
        for (const { id, season: year, cautions, status } of season!.applications) {
          const job = ledger!.events.find((one) => one.kind === 'job' && one.step === id && one.season === year);
          if (job && status !== 'done') for (const caution of cautions) expect(job.description).toContain(caution);
        }
  });
  test('leaves texts of files as they were written', () => {
    const said = events(isSpanish).map(({ description }) => description);
    expect(said.some((text) => text.includes('Waited a week for the ground to dry'))).toBe(true);
  });
});

describe('whatever the language', () => {
  /** Figures, days and ids of a season; prose is left out. */
  const facts = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map(facts);
    if (typeof value === 'string') return /^\d{4}-\d\d-\d\d|^[a-z0-9]+(-[a-z0-9]+)*$/.test(value) ? value : '';
    if (value === null || typeof value !== 'object') return value;
    return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, facts(inner)]));
  };
  const pairs = [
    ['us', 0, 2],
    ['metric', 1, 3],
  ] as const;
  const season = (at: number, i: number) => plans.get(DISPLAYS[at]!)![i]!.season as Season;

  test.each(pairs)('days and amounts are the same in %s units', (_, first, second) => {
    for (const i of DAYS.keys()) {
      const plain = ({ display: _, problems: __, ...rest }: Season) => facts(rest);
      expect(plain(season(second, i))).toEqual(plain(season(first, i)));
    }
  });
  test.each(pairs)('events are the same in %s units', (_, first, second) => {
    const shown = (at: number) =>
      plans
        .get(DISPLAYS[at]!)!
        .slice(0, DAYS.length)
        .map(({ ledger }) =>
          ledger!.events.map(({ uid, start, end, sequence, status }) => ({ uid, start, end, sequence, status })),
        );
    expect(shown(second)).toEqual(shown(first));
  });
  test.each(pairs)('what subscribers see change is the same in %s units', (_, first, second) => {
    const shown = (at: number) =>
      plans
        .get(DISPLAYS[at]!)!
        .slice(0, DAYS.length)
        .map(({ changes }) =>
          changes!.told.map(({ uid, what, before, after, days, text }) => [
            uid,
            what,
            before,
            after,
            days,
            text.endsWith('.'),
          ]),
        );
    expect(shown(second)).toEqual(shown(first));
  });
});

test('another language is a revision of every event', () => {
  const before = plans.get(DISPLAYS[0])![1]!;
  const after = told(demoText({ units: 'us', language: 'es-US' }), DAYS[1]!, before.ledger);
  const next = new Map(after.ledger!.events.map((one) => [one.uid, one.sequence]));
  const standing = before.ledger!.events.filter(
    ({ removedOn, cancelledOn, kind }) => removedOn === null && cancelledOn === null && kind !== 'soil',
  );
  expect(standing.filter(({ uid, sequence }) => next.get(uid) !== sequence + 1)).toEqual([]);
});

describe.each([
  ['en-US', / \(7 days later\): you are away\.$/],
  ['es-MX', / \(7 días más tarde\): usted está fuera\.$/],
] as const)('a job that moved, in %s', (language, line) => {
  const BARRIER = 'summer-annual-barrier';
  const display = { units: 'us', language } as const;
  const away = (text: string) => text.replace('away: [', 'away: [[2027-04-10, 2027-04-12], ');
  const before = told(demoText(display), DAYS[1]!);
  const after = told(demoText(display, away), DAYS[1]! + 1, before.ledger);
  const job = ({ season }: Compiled) => season!.applications.find(({ id }) => id === BARRIER)!;

  test('says from which day, and why', () => {
    expect(job(before).moved).toBe(null);
    expect(job(after).moved).toMatchObject({ from: job(before).date });
  });
  test('is told with the reason', () => {
    const { told: lines } = after.changes!;
    expect(lines.find(({ kind, step }) => kind === 'job' && step === BARRIER)?.text).toMatch(line);
  });
});

test('a Spanish reader of an English lawn has no English of ours', () => {
  const readers = (text: string) =>
    text.replace(
      /^feed:.*$/m,
      'feed: { key: 482akxt7, readers: { crew: { as: helper, language: es-MX }, town: { as: public, language: es-419 } } }',
    );
  const { readers: made } = told(demoText({ units: 'us', language: 'en-US' }, readers), DAYS[1]!);
  expect(made.map(({ id }) => id)).toEqual(['crew', 'town']);
  const pieces = english();
  for (const { text } of made) {
    expect(faultsOf(keepFeed(text))).toEqual({});
    const whole = text
      .replace(/\r\n[ \t]/g, '')
      .replaceAll('\\,', ',')
      .replaceAll('\\;', ';');
    expect(pieces.filter((piece) => whole.includes(piece))).toEqual([]);
  }
});
