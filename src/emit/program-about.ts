import { cleaned } from '../base/text.ts';
import type { Program } from '../model/program.ts';

/** Where a program is from. */
interface Origin {
  readonly address: string;
  readonly sha256: string;
}

/** What somebody wrote, on one line. */
const line = (text: string): string => cleaned(text).replace(/\s+/g, ' ').trim();

const by = (author: string | undefined, license: string | undefined): string =>
  `${author === undefined ? 'author not stated' : `by ${line(author)}`}, ${
    license === undefined ? 'no licence stated' : `licence ${line(license)}`
  }`;

/** Ids by what a program asks for, each once, in the order of its steps. */
export interface Asked {
  readonly pesticides: readonly string[];
  readonly actives: readonly string[];
  readonly nutrients: readonly string[];
  readonly products: readonly string[];
}

/** What a program asks a lawn to put down. */
export function askedFor({ steps }: Program): Asked {
  const all = steps.flatMap(({ apply }) => (apply === undefined ? [] : [apply]));
  const each = (of: (apply: (typeof all)[number]) => readonly string[]) => [...new Set(all.flatMap(of))];
  return {
    pesticides: each((apply) => (apply.kind === 'pesticide' ? [apply.pesticide] : [])),
    actives: each((apply) => (apply.kind === 'pesticide' ? Object.keys(apply.actives ?? {}) : [])),
    nutrients: each((apply) => (apply.kind === 'nutrient' ? Object.keys(apply.rates) : [])),
    products: each((apply) => ('product' in apply ? [apply.product] : [])),
  };
}

/**
 * What somebody should know of a program before they go by it: who made it, whether it may be passed on, what it asks for.
 *
 * @param origin Its address and the hash of its text; null for a file of one's own.
 */
export function aboutProgramLines(program: Program, origin: Origin | null): readonly string[] {
  const { id, name, about, author, license, basedOn = [], grass, climate, steps } = program;
  const { pesticides, actives, nutrients, products } = askedFor(program);
  const told = (title: string, words: readonly string[]) =>
    words.length === 0 ? [] : [`${title}: ${words.join(', ')}`];
  const below = [
    ...(origin === null ? [] : [`from ${origin.address}`, `SHA-256 ${origin.sha256}`]),
    by(author, license),
    ...basedOn.map((part) => `made from ${line(part.name ?? part.id)}, ${by(part.author, part.license)}`),
    ...(about === undefined ? [] : [line(about)]),
    `for ${grass.join(', ')}${climate === undefined ? '' : `; climate ${climate.join(', ')}`}; ${steps.length} step${steps.length === 1 ? '' : 's'}`,
    ...told('asks for nutrients', nutrients),
    ...told('asks for products', products),
    ...told('asks for pesticides, each by its label in your hand', pesticides),
    ...told('compares the rates of', actives),
  ];
  return [`${line(name)} (${id})`, ...below.map((text) => `  ${text}`)];
}
