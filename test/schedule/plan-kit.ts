/** Plans small programs on a small lawn, for the tests of the schedule. */
import type { Application, Season } from '../../src/model/season.ts';
import { inventedWeather } from '../invented-weather.ts';
import { folderWith, lawnText, programText, soilclock } from '../kit.ts';

const weather = inventedWeather('2010-01-01', '2027-12-31');

/** A program's steps on a small lawn with invented weather. */
export interface Case {
  readonly steps: string;
  readonly program?: string;
  readonly lawn?: string;
  readonly files?: Record<string, string>;
  readonly asOf?: string;
}

/** The season of a case, as `plan --json` prints it. */
export async function plan({ steps, program = '', lawn = '', files = {}, asOf = '2027-04-02' }: Case): Promise<Season> {
  const cwd = folderWith({
    'program.yaml': programText(steps, program),
    'lawn.yaml': lawnText(lawn),
    'weather.csv': weather,
    ...files,
  });
  const { stdout, stderr } = await soilclock(cwd, ['plan', 'lawn.yaml', '--as-of', asOf, '--json', '--dry-run']);
  const season = JSON.parse(stdout) as Season;
  if (season.kind !== 'season') throw new Error(stderr);
  return season;
}

/** One application of a season. */
export const application = (season: Season, id: string): Application =>
  season.applications.find((one) => one.id === id) as Application;

/** A feed of 0.5 lb N/1000 sqft, or as given, between two days. */
export const feed = (id: string, opens: string, closes: string, more = '', N = '0.5') =>
  `  - { id: ${id}, name: Feed ${id}, work: spread, window: { opens: { date: ${opens} }, closes: { date: ${closes} } }, apply: { nutrient: { N: ${N} lb/1000 sqft } }${more} }\n`;

/** Work of another kind between two days. */
export const work = (id: string, kind: string, opens: string, closes: string, more = '') =>
  `  - { id: ${id}, name: ${kind} ${id}, work: ${kind}, window: { opens: { date: ${opens} }, closes: { date: ${closes} } }${more} }\n`;

/** Urea, a pre-emergent with a label, and seed, as products of a lawn. */
export const PRODUCTS = `products:
  - { id: urea, form: granular, analysis: 46-0-0 }
  - id: barrier
    form: granular
    pesticide: pre-emergent
    actives: { prodiamine: 0.4% }
    label: { rate: 4 lb/1000 sqft, interval: 60 d, seed-safe: { after: 12 weeks, before: 8 weeks } }
  - { id: seed, form: seed }
`;
