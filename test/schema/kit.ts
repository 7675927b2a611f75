/** What the tests of the JSON Schemas share: the committed schemas, their validators, and the shipped files. */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { Ajv2020, type ValidateFunction } from 'ajv/dist/2020.js';
import type { schemas } from '../../programs/schema/schemas.ts';
import { readYaml } from '../../src/read/yaml.ts';
import { root } from '../kit.ts';

export type Kind = keyof ReturnType<typeof schemas>;
export const KINDS: readonly Kind[] = ['program', 'products', 'lawn', 'journal', 'calendar', 'publication', 'ledger'];

export const committed = (kind: Kind): Record<string, unknown> =>
  JSON.parse(readFileSync(path.join(root, 'programs/schema', `${kind}.json`), 'utf8'));

export const ajv = new Ajv2020({ strict: true });
export const validators = Object.fromEntries(KINDS.map((kind) => [kind, ajv.compile(committed(kind))])) as Record<
  Kind,
  ValidateFunction
>;

export interface Shipped {
  /** From the folder of the programs. */
  readonly name: string;
  readonly kind: Kind;
  readonly text: string;
  readonly data: unknown;
}

/** Every YAML file that comes along. */
export const shipped: readonly Shipped[] = ['.', 'demo'].flatMap((folder) =>
  readdirSync(path.join(root, 'programs', folder))
    .filter((name) => name.endsWith('.yaml'))
    .map((file) => {
      const name = path.join(folder, file);
      const text = readFileSync(path.join(root, 'programs', name), 'utf8');
      const { data } = readYaml(text, name);
      return { name, text, data, kind: Array.isArray(data) ? 'journal' : (data as { kind: Kind }).kind };
    }),
);
