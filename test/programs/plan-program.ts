/** Plans a shipped program at a place, on the climate that comes along: what the tests of the programs share. */
import { existsSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { civil } from '../../src/base/day.ts';
import { type Compiled, compile } from '../../src/compile.ts';

export const PROGRAMS = path.resolve(fileURLToPath(import.meta.url), '../../../programs');

/** Finds a file of `programs/` by its name; a lawn that stands there has no journal. */
export function fromPrograms(ref: string) {
  const file = path.join(PROGRAMS, path.basename(ref));
  return existsSync(file) ? { name: path.basename(ref), text: readFileSync(file, 'utf8') } : null;
}

/** A lawn for a program, without weather of its own. */
export interface Trial {
  /** The file in `programs/`. */
  readonly program: string;
  readonly grass: string;
  readonly latitude: number;
  readonly longitude: number;
  /** Left out, the lawn lies as high as the nearest reference climate. */
  readonly elevationM?: number;
  readonly facts?: Readonly<Record<string, boolean>>;
  /** The soil's; with it goes a low supply of phosphorus and of potassium. */
  readonly pH?: number;
}

/** The season of a program on 1000 ft² at a place, planned on the fifth day of 2027, or of the season that the south begins in 2026. */
export function planProgram(
  { program, grass, latitude, longitude, elevationM, facts = {}, pH }: Trial,
  lookup = fromPrograms,
): Compiled {
  const elevation = elevationM === undefined ? '' : `, elevation: ${elevationM} m`;
  const text = `kind: lawn
version: 1
id: trial
location: { latitude: ${latitude}, longitude: ${longitude}${elevation} }
grass: ${grass}
program: ${program}
products: [products.yaml]
areas: { front: { rectangle: [50 ft, 20 ft] } }
facts: ${JSON.stringify(facts)}
${pH === undefined ? '' : `soil: { tests: [{ date: 2026-06-01, pH: ${pH}, phosphorus: low, potassium: low }] }\n`}`;
  return compile({
    lawn: { name: 'trial-lawn.yaml', text },
    lookup,
    asOf: latitude < 0 ? civil(2026, 7, 5) : civil(2027, 1, 5),
    ledger: null,
    revisedAt: '2027-01-05T06:00:00Z',
    detail: 'quiet',
  });
}
