import * as v from 'valibot';
import { maybe, word } from './fields.ts';

/** Languages that plans and feeds are written in. */
const LANGUAGES = ['en-US', 'en-GB', 'en'] as const;

/** How a person wants plans and feeds printed; each key may be left out. */
export const displayKeys = {
  units: maybe(word(['us', 'metric'])),
  language: maybe(word(LANGUAGES)),
  currency: maybe(v.pipe(v.string(), v.regex(/^[A-Z]{3}$/, 'wrong-type:a currency code such as USD'))),
};
