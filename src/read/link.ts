import { type Place, type Problem, problem } from '../base/problem.ts';
import { nearestWord } from '../base/quantity.ts';
import type { Journal } from '../model/journal.ts';
import type { Lawn } from '../model/lawn.ts';
import type { Product } from '../model/product.ts';
import type { Program } from '../model/program.ts';
import { SUBSTANCES, substancesIn } from '../model/substance.ts';
import type { WeatherSeries } from '../model/weather.ts';
import { withPolygons } from './geojson.ts';
import { journalProblems, readJournal } from './journal.ts';
import { readProducts } from './lawn.ts';
import { type Lookup, type Source, unfound, unpinned } from './lookup.ts';
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
  /** The ways back into the programs' files. */
  readonly places: ReadonlyMap<Program, Parsed<Program>['place']>;
  placeOfProduct(id: string): Place;
}

/**
 * Resolves what a lawn names: outlines of areas, program, products, journal, weather.
 *
 * @param instead Names to take instead of the lawn's own, from the command.
 * @returns The linked lawn where nothing is wrong; the problems of every file.
 */
export function link(
  parsed: Parsed<Lawn>,
  lookup: Lookup,
  instead: Instead,
): { readonly value?: Linked; readonly problems: readonly Problem[] } {
  if (!parsed.value) return { problems: parsed.problems };
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
      problems.push(unfound(ref, source, place));
      return undefined;
    }
    const result = read(source);
    problems.push(...result.problems);
    return result.value;
  };

  const lawn: Lawn = { ...parsed.value, areas: withPolygons(parsed.value.areas, follow) };
  const places = new Map<Program, Parsed<Program>['place']>();
  const asProgram = ({ text, name }: Source) => {
    const parsed = readProgram(text, name, lookup);
    if (parsed.value) places.set(parsed.value, parsed.place);
    return parsed;
  };
  const program = follow(
    instead.program ?? lawn.program,
    instead.program === undefined ? ['program'] : null,
    asProgram,
  );
  const areaPrograms = new Map<string, Program>();
  for (const [id, area] of Object.entries(lawn.areas)) {
    if (area.program === undefined || instead.program !== undefined) continue;
    const own = follow(area.program, ['areas', id, 'program'], asProgram);
    if (!own) continue;
    areaPrograms.set(id, own);
    problems.push(...unpinned(area.program, parsed.place(['areas', id, 'program'])));
  }
  if (program && instead.program === undefined) problems.push(...unpinned(lawn.program, parsed.place(['program'])));
  const products = new Map<string, Product>();
  const productPlaces = new Map<string, Place>();
  for (const [i, entry] of (lawn.products ?? []).entries()) {
    if (typeof entry !== 'string') {
      products.set(entry.id, entry);
      productPlaces.set(entry.id, parsed.place(['products', i]));
    } else {
      const read = ({ text, name }: Source) => {
        const file = readProducts(text, name);
        for (const id of Object.keys(file.value?.products ?? {}))
          productPlaces.set(id, file.place(['products', id], 'key'));
        return file;
      };
      const file = follow(entry, ['products', i], read);
      for (const [id, product] of Object.entries(file?.products ?? {})) products.set(id, { ...product, id });
    }
  }
  const files = instead.weather ?? lawn.weather.files ?? [];
  const weather = files.flatMap((ref, i) => {
    const path = instead.weather ? null : ['weather', 'files', i];
    return follow(ref, path, ({ text, name }) => readWeather(text, name, lawn.weather.units)) ?? [];
  });
  // Where a command asks for no weather at all, the forecast's file is not looked for either.
  const ahead = instead.weather?.length === 0 ? undefined : lawn.weather.forecast;
  const forecast = ahead?.includes('.')
    ? (follow(ahead, ['weather', 'forecast'], ({ text, name }) => readWeather(text, name, lawn.weather.units)) ?? null)
    : null;
  const journalRef = fileBeside(parsed.file, 'journal.yaml').replace(/^.*[/\\]/, '');
  const written = lookup(journalRef, parsed.file);
  // Pins, skips and the journal name steps of the lawn's own program; another one tried on it need not have them.
  const ids: Ids = {
    steps: program && instead.program === undefined ? stepIds(program, areaPrograms) : null,
    products: [...products.keys()],
    areas: Object.keys(lawn.areas),
    spreaders: Object.keys(lawn.equipment?.spreaders ?? {}),
  };
  const readEntries = ({ text, name }: Source) => {
    const entries = readJournal(text, name);
    return { ...entries, problems: [...entries.problems, ...journalProblems(entries, ids)] };
  };
  const journal = written === null ? [] : follow(journalRef, null, readEntries);

  problems.push(...referenceProblems(parsed, lawn, ids));
  if (program) {
    problems.push(...grassProblems(parsed, lawn, program, areaPrograms));
    problems.push(...localRuleProblems(parsed, lawn, [program, ...areaPrograms.values()], products));
  }
  const fine = problems.every(({ severity }) => severity !== 'error');
  if (!program || !journal || !fine) return { problems };
  const placeOfProduct = (id: string) => productPlaces.get(id) ?? parsed.place(['products']);
  const named = { lawn, program, areaPrograms, products, journal, weather, forecast, places, placeOfProduct };
  return { value: named, problems };
}

/** The name of a file that stands beside a lawn file: its name without `.yaml`, then this ending. */
export const fileBeside = (lawn: string, ending: string): string => `${lawn.replace(/\.ya?ml$/i, '')}.${ending}`;

/** The ids that a lawn and its journal may use; null where any will do. */
interface Ids {
  readonly steps: readonly string[] | null;
  readonly products: readonly string[];
  readonly areas: readonly string[];
  readonly spreaders: readonly string[];
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

/** Every step's id as the lawn has it. */
export const stepIds = (program: Program, areaPrograms: ReadonlyMap<string, Program>): string[] => [
  ...program.steps.map(({ id }) => id),
  ...[...new Set(areaPrograms.values())]
    .filter(({ id }) => id !== program.id)
    .flatMap((own) => own.steps.map(({ id }) => `${own.id}.${id}`)),
];

/** Ids that the lawn uses of itself and of other files. */
function referenceProblems({ place }: Parsed<Lawn>, lawn: Lawn, ids: Ids): Problem[] {
  const { tests = [] } = lawn.soil ?? {};
  return [
    ...Object.entries(lawn.steps ?? {}).flatMap(([id, asked]) => [
      ...unless('unknown-step', id, ids.steps, place(['steps', id], 'key')),
      ...(asked === 'skip' ? [] : (asked.areas ?? [])).flatMap((area, i) =>
        unless('unknown-area', area, ids.areas, place(['steps', id, 'areas', i])),
      ),
    ]),
    ...Object.keys(lawn.shelf?.stock ?? {}).flatMap((id) =>
      unless('unknown-product', id, ids.products, place(['shelf', id], 'key')),
    ),
    ...tests.flatMap(({ area }, i) =>
      area === undefined ? [] : unless('unknown-area', area, ids.areas, place(['soil', 'tests', i, 'area'])),
    ),
  ];
}

/** An area's grass against its program's. */
function grassProblems(
  { place }: Parsed<Lawn>,
  lawn: Lawn,
  program: Program,
  areaPrograms: ReadonlyMap<string, Program>,
): Problem[] {
  const judged = Object.entries(lawn.areas).map(([id, area]) => {
    const here = area.grass ? ['areas', id, 'grass'] : area.program ? ['areas', id, 'program'] : ['grass'];
    return { grass: area.grass ?? lawn.grass, own: areaPrograms.get(id) ?? program, here };
  });
  const seen = new Set<string>();
  return judged.flatMap(({ grass, own, here }) => {
    const key = here.join('.');
    if (own.grass.includes(grass) || seen.has(key)) return [];
    seen.add(key);
    return [problem('grass-mismatch', { found: grass, expected: own.grass.join(', ') }, place(here))];
  });
}

/** Words in local rules that nothing is called: no substance, product, kind of pesticide or active. */
function localRuleProblems(
  { place }: Parsed<Lawn>,
  lawn: Lawn,
  programs: readonly Program[],
  products: ReadonlyMap<string, Product>,
): Problem[] {
  const ofProducts = [...products.values()].flatMap((product) => [...substancesIn(product)]);
  const ofPrograms = programs.flatMap(({ steps }) =>
    steps.flatMap(({ apply }) =>
      apply?.kind === 'pesticide' ? [apply.pesticide, ...Object.keys(apply.actives ?? {})] : [],
    ),
  );
  const allowed = [...new Set([...SUBSTANCES, ...ofProducts, ...ofPrograms])];
  return (lawn.localRules ?? []).flatMap((rule, i) =>
    'forbid' in rule
      ? rule.forbid.flatMap((word, j) => {
          if (allowed.includes(word)) return [];
          const nearest = nearestWord(word, allowed);
          return [problem('unknown-word', { found: word, allowed, nearest }, place(['local-rules', i, 'forbid', j]))];
        })
      : [],
  );
}
