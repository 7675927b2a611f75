import { type Place, type Problem, problem } from '../base/problem.ts';
import { nearestWord } from '../base/quantity.ts';
import type { Journal } from '../model/journal.ts';
import type { Lawn } from '../model/lawn.ts';
import type { Product } from '../model/product.ts';
import type { Program } from '../model/program.ts';
import type { WeatherSeries } from '../model/weather.ts';
import { readJournal, readProducts } from './lawn.ts';
import type { Lookup, Source } from './lookup.ts';
import { readProgram } from './program.ts';
import type { Parsed } from './validate.ts';
import { readWeather } from './weather.ts';

/** Files that a command names instead of the lawn. */
export interface Instead {
  readonly weather?: readonly string[] | undefined;
  readonly program?: string | undefined;
}

/** A lawn with everything that it names. */
export interface Linked {
  readonly lawn: Lawn;
  readonly program: Program;
  /** Programs of areas that have one of their own, by area. */
  readonly areaPrograms: ReadonlyMap<string, Program>;
  readonly products: ReadonlyMap<string, Product>;
  readonly journal: Journal;
  readonly weather: readonly WeatherSeries[];
  /** The days to come, where a file of the lawn's tells them. */
  readonly forecast: WeatherSeries | null;
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
    ({ text, name }) => readProgram(text, name, lookup),
  );
  const areaPrograms = new Map<string, Program>();
  for (const [id, area] of Object.entries(lawn.areas)) {
    if (area.program === undefined || instead.program !== undefined) continue;
    const own = follow(area.program, ['areas', id, 'program'], ({ text, name }) => readProgram(text, name, lookup));
    if (own) areaPrograms.set(id, own);
  }
  const products = new Map<string, Product>();
  for (const [i, entry] of (lawn.products ?? []).entries()) {
    if (typeof entry !== 'string') products.set(entry.id, entry);
    else {
      const file = follow(entry, ['products', i], ({ text, name }) => readProducts(text, name));
      for (const [id, product] of Object.entries(file?.products ?? {})) products.set(id, { ...product, id });
    }
  }
  const files = instead.weather ?? lawn.weather.files ?? [];
  const weather = files.flatMap((ref, i) => {
    const path = instead.weather ? null : ['weather', 'files', i];
    return follow(ref, path, ({ text, name }) => readWeather(text, name, lawn.weather.units)) ?? [];
  });
  const ahead = lawn.weather.forecast;
  const forecast = ahead?.includes('.')
    ? (follow(ahead, ['weather', 'forecast'], ({ text, name }) => readWeather(text, name, lawn.weather.units)) ?? null)
    : null;
  const journalRef = fileBeside(parsed.file, 'journal.yaml').replace(/^.*[/\\]/, '');
  const written = lookup(journalRef, parsed.file);
  // Pins, skips and the journal name steps of the lawn's own program; another one tried on it need not have them.
  const ids: Ids = {
    steps: program && instead.program === undefined ? program.steps.map(({ id }) => id) : null,
    products: [...products.keys()],
    areas: Object.keys(lawn.areas),
  };
  const readEntries = ({ text, name }: Source) => {
    const entries = readJournal(text, name);
    return { ...entries, problems: [...entries.problems, ...journalProblems(entries, ids)] };
  };
  const journal = written === null ? [] : follow(journalRef, null, readEntries);

  if (program) problems.push(...referenceProblems(parsed, lawn, program, ids));
  const fine = problems.every(({ severity }) => severity !== 'error');
  if (!program || !journal || !fine) return { problems };
  return { value: { lawn, program, areaPrograms, products, journal, weather, forecast }, problems };
}

/** The name of a file that stands beside a lawn file: its name without `.yaml`, then this ending. */
export const fileBeside = (lawn: string, ending: string): string => `${lawn.replace(/\.ya?ml$/i, '')}.${ending}`;

/** The ids that a lawn and its journal may use; null where any will do. */
interface Ids {
  readonly steps: readonly string[] | null;
  readonly products: readonly string[];
  readonly areas: readonly string[];
}

/** The problem of an id that is not among the known ones; none where it is, or where any will do. */
function unless<C extends 'unknown-step' | 'unknown-product' | 'unknown-area'>(
  code: C,
  found: string,
  allowed: readonly string[] | null,
  place: Place,
): Problem[] {
  if (allowed === null || allowed.includes(found)) return [];
  return [problem(code, { found, allowed, nearest: nearestWord(found, allowed) }, place)];
}

/** Ids that the lawn uses of other files, and the lawn's grass against the program's. */
function referenceProblems({ place }: Parsed<Lawn>, lawn: Lawn, program: Program, ids: Ids): Problem[] {
  const grass = program.grass.includes(lawn.grass)
    ? []
    : [problem('grass-mismatch', { found: lawn.grass, expected: program.grass.join(', ') }, place(['grass']))];
  return [
    ...Object.keys(lawn.steps ?? {}).flatMap((id) =>
      unless('unknown-step', id, ids.steps, place(['steps', id], 'key')),
    ),
    ...Object.keys(lawn.shelf?.stock ?? {}).flatMap((id) =>
      unless('unknown-product', id, ids.products, place(['shelf', id], 'key')),
    ),
    ...grass,
  ];
}

/** Ids in a journal that nothing has. */
function journalProblems({ value, place }: Parsed<Journal>, ids: Ids): Problem[] {
  return (value ?? []).flatMap(({ step, product, areas }, i) => [
    ...(step === undefined ? [] : unless('unknown-step', step, ids.steps, place([i, 'step']))),
    ...(product === undefined ? [] : unless('unknown-product', product, ids.products, place([i, 'product']))),
    ...(areas ?? []).flatMap((area, j) => unless('unknown-area', area, ids.areas, place([i, 'areas', j]))),
  ]);
}
