import * as v from 'valibot';
import { maybe, word } from './fields.ts';
import { LANGUAGES } from './languages.ts';

/** How a person wants plans and feeds printed; each key may be left out. */
export const displayKeys = {
  units: maybe(word(['us', 'metric'])),
  language: maybe(word(LANGUAGES)),
  currency: maybe(v.pipe(v.string(), v.regex(/^[A-Z]{3}$/, 'wrong-type:a currency code such as USD'))),
};
