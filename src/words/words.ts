import { en, type Words } from './en.ts';
import { es } from './es.ts';

export type { Words } from './en.ts';

/** Each language by the first part of its tags. */
const CATALOGUES: Readonly<Record<string, Words>> = { en, es };

/**
 * The catalogue of a language tag; English for one that has none.
 *
 * @param language A BCP 47 language tag.
 * @example wordsOf('es-MX').feed.whatToDo //=> 'Qué hacer'
 */
export const wordsOf = (language: string): Words => CATALOGUES[language.split('-')[0] ?? ''] ?? en;
