/** No text of a person adds, removes or renames a property or a component of a feed, whatever file it stands in. */
import { existsSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import ICAL from 'ical.js';
import { beforeAll, describe, expect, test } from 'vitest';
import { parse } from 'yaml';
import type { Season } from '../../src/model/season.ts';
import { demoCopy, root, soilclock } from '../kit.ts';
import { AS_OF, feedOf, planned } from './feed.ts';
import { FIELDS, FILES, furnish, HELD_ELSEWHERE, type Plain, textsOfSchemas, WORDED_BY_NOBODY } from './fields.ts';
import { HOSTILE } from './hostile.ts';

type Field = (typeof FIELDS)[number];
const titleOf = ({ file, at }: Field): string => `${file}: ${at}`;
/** A word that stands nowhere else, one a field. */
const marker = (field: Field): string => `zq${titleOf(field).replace(/\W/g, '')}qz`;
const reaching = FIELDS.filter(({ reaches }) => reaches);

/** The demo with a text of its own in every field. */
function demoWith(textOf: (field: Field) => string) {
  const { cwd, lawn } = demoCopy();
  for (const [kind, name] of Object.entries(FILES)) {
    const file = path.join(cwd, 'programs', name);
    const content = parse(readFileSync(file, 'utf8'), { schema: 'core' }) as Plain;
    furnish(kind as keyof typeof FILES, content);
    for (const field of FIELDS.filter((one) => one.file === kind))
      for (const [map, key] of field.where(content)) map[key] = key === 'cautions' ? [textOf(field)] : textOf(field);
    // JSON is YAML, with every text in quotes.
    writeFileSync(file, JSON.stringify(content, null, 1));
  }
  return { cwd, lawn };
}

let marked: string;
let feed: string;
beforeAll(async () => {
  const { cwd, lawn } = demoWith(marker);
  const { season, text } = await planned(cwd, lawn, AS_OF);
  feed = text.replaceAll('\r\n ', '');
  // The fewest applications that say all of them: one done, one open, one to come, one late and one held up.
  const few = season.applications.filter(({ id }, i) => i < 3 || id === 'late' || id === 'held-up');
  marked = JSON.stringify({ ...season, applications: few });
});

/** The Season with a text in place of a field's marker, as though no file had been checked on the way. */
const seasonWith = (field: Field, text: string): Season =>
  JSON.parse(marked.replaceAll(marker(field), JSON.stringify(text).slice(1, -1))) as Season;

/** Component and property names, in order. */
const skeleton = (component: ICAL.Component): unknown => [
  component.name,
  component.getAllProperties().map(({ name }) => name),
  component.getAllSubcomponents().map(skeleton),
];
const namesIn = (text: string): unknown => skeleton(new ICAL.Component(ICAL.parse(text)));

describe('a field of a file', () => {
  test.each(FIELDS.map((field) => [titleOf(field), field] as const))(
    '%s stands in the feed where it is meant to, and nowhere else',
    (_, field) => expect(feed.includes(marker(field))).toBe(field.reaches),
  );
  test.each(reaching.map((field) => [titleOf(field), field] as const))(
    '%s changes no component and no property name, whatever it holds',
    (_, field) => {
      const plain = namesIn(feedOf(seasonWith(field, 'Feed')).text);
      const breaking = Object.entries(HOSTILE).filter(
        ([, text]) => JSON.stringify(namesIn(feedOf(seasonWith(field, text)).text)) !== JSON.stringify(plain),
      );
      expect(breaking.map(([name]) => name)).toEqual([]);
    },
  );
  test('is one of the corpus or one that nobody words: every text of the schemas', () => {
    const inCorpus = FIELDS.map(({ file, at }) => `${file.replace('own ', '')} ${at}`);
    const worded = [...Object.values(WORDED_BY_NOBODY).map(([, at]) => at), ...Object.values(HELD_ELSEWHERE)];
    expect(Object.keys(HELD_ELSEWHERE).filter((file) => !existsSync(path.join(root, file)))).toEqual([]);
    const texts = textsOfSchemas();
    expect(texts.filter((one) => !inCorpus.includes(one) && !worded.some((at) => at.test(one)))).toEqual([]);
    // And none that there is no more.
    expect(inCorpus.filter((one) => !texts.includes(one))).toEqual([]);
    expect(worded.filter((at) => !texts.some((one) => at.test(one)))).toEqual([]);
  });
  test('is tried with at least 30 texts', () => expect(Object.keys(HOSTILE).length).toBeGreaterThanOrEqual(30));
});

/** Through the command each takes a plan of its own: all of them only in one of the runs. */
const planning = Object.entries(HOSTILE).filter(([name]) => process.env.SOILCLOCK_RUNS === 'whole' || name === 'NUL');
describe('a text in every field at once, with', () => {
  test.each(planning)('%s is refused before a feed is written, or gives the same names', async (_, text) => {
    const { cwd, lawn } = demoWith(() => text);
    const { code } = await soilclock(cwd, ['plan', lawn, '--no-sheet', '--as-of', AS_OF, '--out', 'out/site']);
    const file = path.join(cwd, 'out/site/saltwether-lawn.ics');
    expect(existsSync(file)).toBe(code === 0);
    if (code === 0) expect(namesIn(readFileSync(file, 'utf8'))).toEqual(namesIn(feed.replaceAll('\r\n ', '')));
  });
});
