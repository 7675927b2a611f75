/** An answer's words: how a person may shorten or spell them. */

const plainWord = (text: string): string => text.toLowerCase().replace(/[^a-z0-9]+/g, '');

/**
 * The word that an answer means: by its place in the list, by itself in any spelling of case, spaces and hyphens, or by a
 * beginning that only one word has. An answer that means none comes back as it is, for the schema to refuse.
 *
 * @example chosen('tall fescue', ['fine-fescue', 'tall-fescue']) //=> 'tall-fescue'
 */
export function chosen(text: string, words: readonly string[]): string {
  const number = /^[1-9]\d?$/.test(text) ? words[Number(text) - 1] : undefined;
  if (number !== undefined) return number;
  const typed = plainWord(text);
  const same = words.find((word) => plainWord(word) === typed);
  if (same !== undefined) return same;
  const [only, second] = typed === '' ? [] : words.filter((word) => plainWord(word).startsWith(typed));
  return only !== undefined && second === undefined ? only : text;
}

/** Whether an answer says that there is none. */
export const isNone = (text: string): boolean => /^(none|no|not known|unknown|nothing)$/i.test(text);

/** The entries of an answer that lists several, by commas. */
export const listed = (text: string): string[] =>
  text
    .split(',')
    .map((entry) => entry.trim())
    .filter((entry) => entry !== '');

/** Accents that a letter carries once it is taken apart. */
const ACCENTS = /\p{M}+/gu;
const LONGEST_ID = 64;

/**
 * An id made of a name: lower-case letters, digits and single hyphens; empty where nothing of the name can stand in one.
 *
 * @example idOf('Front Yard (süd)') //=> 'front-yard-sud'
 */
export const idOf = (name: string): string =>
  name
    .normalize('NFKD')
    .replace(ACCENTS, '')
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-/, '')
    .slice(0, LONGEST_ID)
    .replace(/-$/, '');
