import type { Problem } from '../base/problem.ts';
import { readCalendar } from './calendar.ts';
import { readJournal } from './journal.ts';
import { readLawn, readProducts, type ZipLookup } from './lawn.ts';
import type { Lookup } from './lookup.ts';
import { readProgram } from './program.ts';
import { readPublication } from './publication.ts';
import { LIMIT } from './validate.ts';
import { readWeather } from './weather.ts';
import { readYaml } from './yaml.ts';

/** The kinds of files that say what they are. */
const SAYING = ['program', 'products', 'lawn', 'calendar', 'publication'] as const;
/** The kinds of files that `check` knows. */
export type FileKind = (typeof SAYING)[number] | 'journal' | 'weather';

/** What a file is: by its ending, then by its `kind`; a list is a journal. Null where it says no kind that is known. */
export function kindOf(text: string, name: string): FileKind | null {
  if (/\.(csv|dly|txt)$/i.test(name)) return 'weather';
  // Only a journal may be longer; what is too long is not taken apart to learn its kind.
  if (text.length > LIMIT.small) return /^\s*(#.*\s+)*[-[]/.test(text.slice(0, 4096)) ? 'journal' : null;
  const { data } = readYaml(text, name);
  if (Array.isArray(data)) return 'journal';
  const kind = data !== null && typeof data === 'object' ? (data as { kind?: unknown }).kind : undefined;
  return SAYING.find((one) => one === kind) ?? null;
}

/** The problems of one file by itself, read as its kind; where it says none, as a lawn, the kind most people write. */
export function problemsOf(
  text: string,
  name: string,
  kind: FileKind | null,
  lookup: Lookup,
  zips?: ZipLookup,
): readonly Problem[] {
  const readers = {
    program: (text: string, name: string) => readProgram(text, name, lookup),
    products: readProducts,
    lawn: (text: string, name: string) => readLawn(text, name, zips),
    calendar: readCalendar,
    publication: (text: string, name: string) => readPublication(text, name, lookup, zips),
    journal: readJournal,
    weather: readWeather,
  };
  return readers[kind ?? 'lawn'](text, name).problems;
}
