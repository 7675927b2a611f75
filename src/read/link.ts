import { type Problem, problem } from '../base/problem.ts';
import { nearestWord } from '../base/quantity.ts';
import type { Journal } from '../model/journal.ts';
import type { Lawn } from '../model/lawn.ts';
import type { Product } from '../model/product.ts';
import type { Program } from '../model/program.ts';
import type { WeatherSeries } from '../model/weather.ts';
import { readJournal, readProducts } from './lawn.ts';
import { readProgram } from './program.ts';
import type { Parsed } from './validate.ts';
import { readWeather } from './weather.ts';

/** A file that another one names: its name for problems and its text. */
export interface Source {
  readonly name: string;
  readonly text: string;
}

/**
 * Finds a file by the path that stands in another file.
 *
 * @returns The file; null where there is none; a reason where it cannot be read.
 */
export type Lookup = (ref: string, from: string) => Source | null | { readonly reason: string };

/** Files that a command names instead of the lawn. */
export interface Instead {
  readonly weather?: readonly string[] | undefined;
  readonly program?: string | undefined;
}

/** A lawn with everything that it names. */
export interface Linked {
  readonly lawn: Lawn;
  readonly program: Program;
  readonly products: ReadonlyMap<string, Product>;
  readonly journal: Journal;
  readonly weather: readonly WeatherSeries[];
}

/**
 * Resolves what a lawn names: program, products, journal, weather.
 *
 * @param instead Names to take instead of the lawn's own, from the command.
 * @returns The linked lawn where nothing is wrong; the problems of every file.
 */
export function link(
  parsed: Parsed<Lawn>,
  lookup: Lookup,
  instead: Instead,
): { readonly value?: Linked; readonly problems: readonly Problem[] } {
  const lawn = parsed.value;
  if (!lawn) return { problems: parsed.problems };
  const problems: Problem[] = [...parsed.problems];

  /** Reads what `ref` names, keeping its problems. */
  const follow = <T>(
    ref: string,
    path: readonly (string | number)[] | null,
    read: (source: Source) => { value?: T; problems: readonly Problem[] },
  ): T | undefined => {
    const source = lookup(ref, parsed.file);
    if (source === null || 'reason' in source) {
      const place = path === null ? null : parsed.place(path);
      problems.push(
        source === null
          ? problem('file-missing', { ref }, place)
          : problem('file-unreadable', { ref, reason: source.reason }, place),
      );
      return undefined;
    }
    const result = read(source);
    problems.push(...result.problems);
    return result.value;
  };

  const program = follow(
    instead.program ?? lawn.program,
    instead.program === undefined ? ['program'] : null,
    ({ text, name }) => readProgram(text, name),
  );
  const products = new Map<string, Product>();
  for (const [i, entry] of (lawn.products ?? []).entries()) {
    if (typeof entry !== 'string') products.set(entry.id, entry);
    else {
      const file = follow(entry, ['products', i], ({ text, name }) => readProducts(text, name));
      for (const [id, product] of Object.entries(file?.products ?? {})) products.set(id, { ...product, id });
    }
  }
  const files = instead.weather ?? lawn.weather.files;
  const weather = files.flatMap((ref, i) => {
    const path = instead.weather ? null : ['weather', 'files', i];
    return follow(ref, path, ({ text, name }) => readWeather(text, name, lawn.weather.units)) ?? [];
  });
  const journalRef = parsed.file.replace(/\.ya?ml$/, '.journal.yaml').replace(/^.*[/\\]/, '');
  const written = lookup(journalRef, parsed.file);
  const journal = written === null ? [] : follow(journalRef, null, ({ text, name }) => readJournal(text, name));

  if (program) problems.push(...referenceProblems(parsed, lawn, program, products, instead.program === undefined));
  const fine = problems.every(({ severity }) => severity !== 'error');
  if (!program || !journal || !fine) return { problems };
  return { value: { lawn, program, products, journal, weather }, problems };
}

/** Ids that the lawn uses of other files, and the lawn's grass against the program's. */
function referenceProblems(
  parsed: Parsed<Lawn>,
  lawn: Lawn,
  program: Program,
  products: ReadonlyMap<string, Product>,
  ownProgram: boolean,
): Problem[] {
  const problems: Problem[] = [];
  const steps = program.steps.map(({ id }) => id);
  // Pins and skips belong to the lawn's own program; another one tried on it need not have those steps.
  for (const id of ownProgram ? Object.keys(lawn.steps ?? {}) : []) {
    if (!steps.includes(id))
      problems.push(
        problem(
          'unknown-step',
          { found: id, allowed: steps, nearest: nearestWord(id, steps) },
          parsed.place(['steps', id], 'key'),
        ),
      );
  }
  const known = [...products.keys()];
  for (const id of Object.keys(lawn.shelf?.stock ?? {})) {
    if (!products.has(id))
      problems.push(
        problem(
          'unknown-product',
          { found: id, allowed: known, nearest: nearestWord(id, known) },
          parsed.place(['shelf', id], 'key'),
        ),
      );
  }
  if (!program.grass.includes(lawn.grass)) {
    problems.push(
      problem('grass-mismatch', { found: lawn.grass, expected: program.grass.join(', ') }, parsed.place(['grass'])),
    );
  }
  return problems;
}
