/** Lawns that between them need most of what a plan can say, told in any language. */
import { existsSync, readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { civil, type Day } from '../../src/base/day.ts';
import { type Compiled, compile } from '../../src/compile.ts';
import type { Ledger } from '../../src/model/ledger.ts';
import { PROGRAMS } from '../programs/plan-program.ts';

export interface Display {
  readonly units: 'us' | 'metric';
  readonly language: string;
}

const read = (file: string) => readFileSync(path.join(PROGRAMS, file), 'utf8');
const DEMO = read('demo/lawn.yaml');
const displayLine = ({ units, language }: Display) => `display: { units: ${units}, language: ${language} }`;

function lookup(ref: string) {
  const file = [path.join(PROGRAMS, 'demo', ref), path.join(PROGRAMS, path.basename(ref))].find(existsSync);
  return file === undefined ? null : { name: path.basename(ref), text: readFileSync(file, 'utf8') };
}

/** Compiles a lawn's text; `extra` holds files that it names. */
export function told(
  text: string,
  asOf: Day,
  ledger: Ledger | null = null,
  extra: Readonly<Record<string, string>> = {},
) {
  const own = (ref: string) => (extra[ref] === undefined ? lookup(ref) : { name: ref, text: extra[ref] });
  const revisedAt = new Date(asOf * 86_400_000).toISOString().replace('.000Z', 'Z');
  return compile({ lawn: { name: 'lawn.yaml', text }, lookup: own, asOf, ledger, revisedAt, detail: 'full' });
}

/** The demo, of which `change` may change the text. */
export const demoText = (display: Display, change: (text: string) => string = (text) => text): string =>
  change(DEMO.replace(/^display:.*$/m, displayLine(display)));

export const DAYS = [civil(2027, 1, 20), civil(2027, 4, 2), civil(2027, 4, 14), civil(2027, 6, 15), civil(2027, 9, 10)];

/** The demo through its season, each plan on the ledger of the one before. */
export function demoSeason(display: Display): Compiled[] {
  let ledger: Ledger | null = null;
  return DAYS.map((asOf) => {
    const made = told(demoText(display), asOf, ledger);
    ledger = made.ledger;
    return made;
  });
}

const NAMES = readdirSync(PROGRAMS).filter((name) => name.endsWith('.yaml') && /^kind: program$/m.test(read(name)));

/** Every shipped program on a small lawn. */
export function programSeasons(display: Display): Compiled[] {
  return NAMES.flatMap((name) => {
    const grass = /^grass: \[([a-z-]+)/m.exec(read(name))?.[1];
    const text = `kind: lawn
version: 1
id: trial
location: { latitude: 36, longitude: -84 }
grass: ${grass}
program: ${name}
products: [products.yaml]
areas: { front: { rectangle: [50 ft, 20 ft] } }
equipment: { sprayer: { tank: 4 gal, output: 1 gal/1000 sqft } }
soil: { tests: [{ date: 2026-06-01, pH: 4.5, phosphorus: low, potassium: low }] }
${displayLine(display)}
`;
    return [told(text, civil(2027, 3, 5))];
  });
}

/** Everything that somebody wrote into the shipped files: it stays as it is in every language. */
export const AUTHORS = [...NAMES, 'products.yaml', 'demo/lawn.yaml', 'demo/my-products.yaml', 'demo/lawn.journal.yaml']
  .map(read)
  .join('\n')
  .replace(/\s+/g, ' ');
