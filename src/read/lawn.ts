import { type Problem, problem } from '../base/problem.ts';
import { nearestWord } from '../base/quantity.ts';
import { isZone } from '../base/zone.ts';
import { type Journal, JournalSchema } from '../model/journal.ts';
import { type Lawn, LawnSchema } from '../model/lawn.ts';
import { type ProductsFile, ProductsSchema } from '../model/product.ts';
import { LIMIT, type Parsed, readAs } from './validate.ts';

/**
 * Reads a lawn file.
 *
 * @returns The lawn where nothing is wrong, and every problem with its place.
 * @example readLawn('kind: lawn\n…', 'lawn.yaml').value?.areas
 */
export function readLawn(text: string, name: string): Parsed<Lawn> {
  const parsed = readAs(LawnSchema, text, name, 'lawn');
  const problems: Problem[] = [...parsed.problems];
  const zone = (parsed.data as { timezone?: unknown } | undefined)?.timezone;
  if (typeof zone === 'string' && !isZone(zone)) {
    const zones = Intl.supportedValuesOf('timeZone');
    const nearest = nearestWord(zone, zones);
    problems.push(
      problem(
        'unknown-word',
        { found: zone, allowed: ['an IANA zone such as America/New_York'], nearest },
        parsed.place(['timezone']),
      ),
    );
  }
  const { value, ...rest } = parsed;
  return { ...rest, problems, ...(value && problems.every(({ severity }) => severity !== 'error') && { value }) };
}

/** Reads a products file. @example readProducts('kind: products\n…', 'products.yaml').value?.products */
export const readProducts = (text: string, name: string): Parsed<ProductsFile> =>
  readAs(ProductsSchema, text, name, 'products');

/** Reads a journal: a list of entries. An empty file is an empty journal. */
export function readJournal(text: string, name: string): Parsed<Journal> {
  const parsed = readAs(JournalSchema, text, name, 'journal', LIMIT.journal);
  const empty = parsed.problems.length === 1 && parsed.problems[0]?.code === 'file-empty';
  return empty ? { ...parsed, value: [], problems: [] } : parsed;
}
