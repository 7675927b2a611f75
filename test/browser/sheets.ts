/** Sheets of the demo lawn under programs of 5, 12 and 25 steps, made of the shipped ones, as a site on this machine. */
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { parse, stringify } from 'yaml';
import { demoCopy, root, soilclock } from '../kit.ts';

type Step = { readonly id: string } & Readonly<Record<string, unknown>>;
interface Program {
  readonly id: string;
  readonly name: string;
  readonly sources: Readonly<Record<string, string>>;
  readonly steps: readonly Step[];
}

const programOf = (id: string): Program =>
  parse(readFileSync(path.join(root, 'programs', `${id}.yaml`), 'utf8')) as Program;

/** More steps that stand by themselves, by the program that they are of. */
const FURTHER: Readonly<Record<string, readonly string[]>> = {
  'kentucky-bluegrass-cool-humid': ['spring-broadleaf', 'billbug-scout'],
  'bermudagrass-transition': ['summer-water'],
  centipedegrass: ['mole-cricket-scout', 'spittlebug-scout', 'dethatch', 'large-patch-scout'],
  zoysiagrass: ['bug-scout'],
  'st-augustinegrass': ['chinch-bug-scout'],
  'perennial-ryegrass-maritime': ['crane-fly-scout'],
};

/** A program of this many steps: those of tall fescue in their order, then of others, 25 at most. */
function programOfSteps(count: number): string {
  const first = programOf('tall-fescue-transition');
  const others = Object.entries(FURTHER).map(([id, wanted]) => renamed(programOf(id), wanted));
  const steps = [first, ...others].flatMap((one) => one.steps).slice(0, count);
  if (steps.length !== count) throw new Error(`${steps.length} steps where ${count} were wanted`);
  const sources = Object.assign({}, ...[first, ...others].map((one) => one.sources)) as object;
  return stringify({ ...first, id: `steps-${count}`, name: `A year of ${count} steps`, sources, steps });
}

/** The wanted steps with their sources, all under names that no other program has. */
function renamed(program: Program, wanted: readonly string[]): Pick<Program, 'sources' | 'steps'> {
  const own = (name: string) => `${program.id}-${name}`;
  const told = (key: string, value: unknown) =>
    key === 'source' && typeof value === 'string' && value in program.sources ? own(value) : value;
  const chosen = program.steps.filter(({ id }) => wanted.includes(id)).map((step) => ({ ...step, id: own(step.id) }));
  return {
    sources: Object.fromEntries(Object.entries(program.sources).map(([name, text]) => [own(name), text])),
    steps: JSON.parse(JSON.stringify(chosen, told)) as Step[],
  };
}

/** How a lawn of the site differs from the demo lawn. */
interface Variant {
  /** Steps of its program; null for that of the demo lawn. */
  readonly steps: number | null;
  readonly language: string;
  readonly units: 'us' | 'metric';
  readonly asOf: string;
}

export const DEMO: Variant = { steps: null, language: 'en-US', units: 'us', asOf: '2027-04-02' };
export const STEPS = [5, 12, 25] as const;

/** Writes the sheet of each variant. @returns The site's folder, and the name of each sheet in it. */
export async function sheetsOf(variants: Readonly<Record<string, Variant>>): Promise<string> {
  const { cwd, lawn } = demoCopy();
  const folder = path.dirname(path.join(cwd, lawn));
  const journal = readFileSync(path.join(folder, 'lawn.journal.yaml'), 'utf8');
  for (const [name, { steps, language, units, asOf }] of Object.entries(variants)) {
    const asDemo = parse(readFileSync(path.join(folder, 'lawn.yaml'), 'utf8')) as Record<string, unknown>;
    if (steps !== null) writeFileSync(path.join(folder, `${name}-program.yaml`), programOfSteps(steps));
    const own = { id: name, display: { units, language, currency: 'USD' } };
    const program = steps === null ? {} : { program: `${name}-program.yaml` };
    // What is skipped in the demo may not be a step of this one.
    const skipped = steps === 5 ? { steps: {} } : {};
    writeFileSync(path.join(folder, `${name}.yaml`), stringify({ ...asDemo, ...own, ...program, ...skipped }));
    writeFileSync(path.join(folder, `${name}.journal.yaml`), journal);
    const argv = ['plan', `programs/demo/${name}.yaml`, '--as-of', asOf, '--out', 'out/site'];
    const { code, stderr } = await soilclock(cwd, argv);
    if (code === 2) throw new Error(stderr);
  }
  return path.join(cwd, 'out/site');
}
