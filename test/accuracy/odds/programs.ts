/** The programs whose triggers and steps are judged. */
import path from 'node:path';
import { readAll } from '../../../src/compile.ts';
import { type Step, triggersOf } from '../../../src/model/program.ts';
import type { Trigger } from '../../../src/model/trigger.ts';
import type { Linked } from '../../../src/read/link.ts';
import { lookupFrom } from '../../../src/shell/lookup.ts';
import type { OddsStation } from './stations.ts';

export const PROGRAMS: readonly string[] = [
  'tall-fescue-transition',
  'kentucky-bluegrass-cool-humid',
  'bermudagrass-transition',
];

const root = path.resolve(import.meta.dirname, '../../..');

/** A lawn at a station with a program, all of its steps wanted. @throws Error where a file is wrong. */
export function lawnAt({ id, latitude, longitude, elevationM }: OddsStation, program: string): Linked {
  const text = `kind: lawn
version: 1
id: ${id}
location: { latitude: ${latitude}, longitude: ${longitude}, elevation: ${elevationM} m }
timezone: America/New_York
grass: tall-fescue
program: programs/${program}.yaml
products: [programs/products.yaml]
areas: { front: { rectangle: [10 m, 10 m] } }
`;
  const { value, problems } = readAll({ lawn: { name: 'lawn.yaml', text }, lookup: lookupFrom(root) });
  if (!value) throw new Error(problems.map(({ message }) => message).join('; '));
  const steps = value.program.steps.map(({ onlyIf: _, unless: __, ...step }) => step);
  return { ...value, program: { ...value.program, steps } };
}

export type Judged = Extract<Trigger, { kind: 'soil' | 'degree-days' }>;

/** The bare soil and degree-day triggers in the windows of steps, each once. A fall without a `from` counts from an opening and has no day of its own. */
export function judgedTriggers(steps: readonly Step[]): { readonly label: string; readonly trigger: Judged }[] {
  const found = new Map<string, Judged>();
  for (const trigger of steps.flatMap(triggersOf)) {
    if (trigger.kind !== 'soil' && trigger.kind !== 'degree-days') continue;
    if (trigger.kind === 'soil' && trigger.direction === 'falls' && !trigger.from) continue;
    found.set(labelOf(trigger), trigger);
  }
  return [...found].map(([label, trigger]) => ({ label, trigger }));
}

const inF = (celsius: number): string => `${Number((celsius * 1.8 + 32).toFixed(1))} °F`;

/** What makes a trigger another one, in one line: "soil 5 cm, 5 d: 50 °F up, held 3 d, from 2-1". */
function labelOf(trigger: Judged): string {
  const from = trigger.from ? ` from ${trigger.from.month}-${trigger.from.day}` : '';
  if (trigger.kind === 'soil') {
    const { depth, mean, direction, threshold, holds } = trigger;
    const way = direction === 'rises' ? 'up' : 'down';
    return `soil ${Number((depth * 100).toFixed(1))} cm, ${mean} d: ${inF(threshold)} ${way}, ${holds} d${from}`;
  }
  const { base, upper, method, reaches, of } = trigger;
  const above = `${inF(base)}${upper === undefined ? '' : ` to ${inF(upper)}`}`;
  return `heat ${Math.round(reaches * 1.8)} °F·d over ${above}${of === 'soil' ? ' of soil' : ''}, ${method}${from}`;
}
