import { Document, Scalar } from 'yaml';
import type { Draft } from '../model/draft.ts';

/** Characters that are escaped wherever they stand: controls, line ends of Unicode, marks that turn the reading direction. */
const UNPRINTABLE = /[\p{Cc}\p{Zl}\p{Zp}\u{feff}\u{200e}\u{200f}\u{202a}-\u{202e}\u{2066}-\u{2069}]/gu;

/** Times of day, which older readers of YAML take for numbers of base sixty. */
const SIXTIES = /^\d+:\d\d$/;

const escaped = (character: string): string => `\\u${character.charCodeAt(0).toString(16).padStart(4, '0')}`;

/** A scalar on one line, quoted where it could be taken for something else: written as the only entry of a list, without its brackets. */
function scalar(value: unknown): string {
  const node = new Scalar(value);
  if (typeof value === 'string' && (value.search(UNPRINTABLE) >= 0 || SIXTIES.test(value)))
    node.type = Scalar.QUOTE_DOUBLE;
  return new Document([node], { version: '1.2', schema: 'core' })
    .toString({
      collectionStyle: 'flow',
      flowCollectionPadding: false,
      lineWidth: 0,
      blockQuote: false,
      doubleQuotedMinMultiLineLength: Number.POSITIVE_INFINITY,
    })
    .trimEnd()
    .slice(1, -1)
    .replace(UNPRINTABLE, escaped);
}

/** A value as YAML on one line. */
function inline(value: unknown): string {
  if (Array.isArray(value)) return `[${value.map(inline).join(', ')}]`;
  if (value === null || typeof value !== 'object') return scalar(value);
  const pairs = Object.entries(value).filter(([, inner]) => inner !== undefined);
  return pairs.length === 0
    ? '{}'
    : `{ ${pairs.map(([key, inner]) => `${scalar(key)}: ${inline(inner)}`).join(', ')} }`;
}

type Section = readonly [comment: string | null, keys: readonly (keyof Draft | 'feed')[]];

/** The keys of the file in their order, each group under a line that explains it. */
const SECTIONS: readonly Section[] = [
  [
    'The id names the calendar feed. Leave it, and the key of the feed, once a phone subscribes.',
    ['id', 'name', 'feed'],
  ],
  ['Where it is: a U.S. ZIP code in quotes, or latitude and longitude; the elevation where it is known.', ['location']],
  [
    'The grass that most of it is of. An area of another one says so itself: front: { ..., grass: fine-fescue }',
    ['grass'],
  ],
  ['The season program, and products to choose from. Paths are reckoned from this file.', ['program', 'products']],
  ['Past weather: files, or a service (none, open-meteo, ncei). Forecast: none, open-meteo, nws.', ['weather']],
  ['How plans are printed: units us or metric, language such as en-US, en-GB, es-MX or es-US.', ['display']],
  ['Each part as it was measured; "less" takes off what is not grass.', ['areas']],
  ['The spreader: rotary, drop or hand; the width of one pass; its dial.', ['equipment']],
  ['When somebody is there to do it, and how long before the calendar rings.', ['working']],
];

/**
 * A lawn file with a line on each of its keys, as text.
 *
 * @param draft What goes into it.
 * @param feedKey Random letters and digits that make the feed's events this lawn's own.
 * @param name The file's name, for the line that says how to check it.
 * @returns YAML that reads back to the same values, whatever characters stand in them.
 */
export function lawnFile(draft: Draft, feedKey: string, name: string): string {
  const values = { ...draft, feed: { key: feedKey } };
  const sections = SECTIONS.flatMap(([comment, keys]) => {
    const lines = keys.flatMap((key) => (values[key] === undefined ? [] : [keyLine(key, values[key])]));
    return lines.length === 0 ? [] : [`# ${comment}\n${lines.join('\n')}`];
  });
  return `${[
    `# A lawn. Change what you like: soilclock check ${oneLine(name)} tells every mistake with its line.\nkind: lawn\nversion: 1`,
    ...sections,
    '# It may say more: soil, facts, turf, thermometer, steps, local-rules, shelf. The demo lawn shows how.',
  ].join('\n\n')}\n`;
}

/** A file's name in a comment, from which nothing may break out. */
const oneLine = (name: string): string => name.replace(UNPRINTABLE, ' ');

/** A key with its value on a line; areas and equipment one to a line below it, since they get long. */
function keyLine(key: string, value: unknown): string {
  if (key !== 'areas' && key !== 'equipment') return `${key}: ${inline(value)}`;
  const below = Object.entries(value as object).map(([id, inner]) => `  ${scalar(id)}: ${inline(inner)}`);
  return [`${key}:`, ...below].join('\n');
}
