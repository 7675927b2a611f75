import type * as v from 'valibot';
import { quantityPattern, type Sign } from '../base/quantity-pattern.ts';
import type { Told } from '../model/fields.ts';
import type { Standing } from '../model/standing.ts';

/** A JSON Schema, or a part of one. */
export type JsonSchema = { readonly [key: string]: unknown };

/**
 * What is said of a key: a sentence, then examples. The name is the keys that lead to it from the file's kind or a named
 * part, or the last of them: `label.rate` serves every path that ends so, unless a longer name does.
 */
export type About = Readonly<Record<string, readonly [description: string, ...examples: unknown[]]>>;

/** A valibot schema or action as far as it is looked at. */
interface Node {
  readonly kind: string;
  readonly type: string;
  readonly [key: string]: unknown;
}

const node = (value: unknown): Node => value as Node;
const pipeOf = (schema: Node): readonly Node[] => (schema.pipe as readonly Node[] | undefined) ?? [];

/** What the schema itself tells of what cannot be seen: the last word of its pipe, then of what the pipe begins with. */
function toldBy(schema: Node): Told {
  const [first, ...rest] = pipeOf(schema);
  const own = rest.filter(({ type }) => type === 'metadata').map(({ metadata }) => metadata as Told);
  return Object.assign({}, first && first !== schema ? toldBy(first) : {}, ...own);
}

/**
 * The JSON Schema (2020-12) of a file kind, from the valibot schema that reads it: its input, so quantities are texts.
 *
 * What JSON Schema cannot say (crossing edges, references between steps, days that do not exist) is left to the reader.
 *
 * @param about A sentence on each key, by the keys that lead to it; parts with a name begin anew with that.
 * @returns The schema, the keys it was told nothing of, and the names that served.
 */
export function jsonSchemaOf(
  schema: v.GenericSchema,
  { id, title, about }: { readonly id: string; readonly title: string; readonly about: About },
): { readonly schema: JsonSchema; readonly untold: readonly string[]; readonly told: readonly string[] } {
  const definitions = new Map<string, JsonSchema>();
  const untold = new Set<string>();
  const told = new Set<string>();

  const described = (path: string, json: JsonSchema): JsonSchema => {
    const name = suffixes(path).find((one) => one in about);
    const [description, ...examples] = name === undefined ? [] : (about[name] ?? []);
    if (name === undefined) untold.add(path);
    else told.add(name);
    return { ...(description !== undefined && { description }), ...json, ...(examples.length > 0 && { examples }) };
  };

  /** The part of a schema that a reader would look at, below the keys of `path`. */
  const convert = (of: Node, path: string): JsonSchema => {
    const { forms, name, quantity, sign, pattern } = toldBy(of);
    if (name !== undefined) {
      if (!definitions.has(name)) {
        definitions.set(name, {});
        definitions.set(name, forms ? either(forms(), name) : narrowed(of, name));
      }
      return { $ref: `#/$defs/${name}` };
    }
    if (forms) return either(forms(), path);
    if (quantity) return { type: 'string', pattern: quantityPattern(quantity, sign ?? signOf(of)) };
    if (pattern !== undefined) return { type: 'string', pattern };
    return narrowed(of, path);
  };

  const either = (forms: readonly v.GenericSchema[], path: string): JsonSchema => ({
    anyOf: forms.map((form) => convert(node(form), path)),
  });

  /** A schema with the bounds that its pipe adds. */
  const narrowed = (of: Node, path: string): JsonSchema => {
    const [first, ...rest] = pipeOf(of);
    if (!first) return plain(of, path);
    // A map is any map first, then its keys: the first schema that says more is the one.
    const later = rest.find(({ kind, type }) => kind === 'schema' && type !== 'custom');
    const begun =
      first.type === 'custom' && later ? convert(later, path) : first === of ? plain(of, path) : convert(first, path);
    const bounds = rest.map((action) => bound(action, begun.type));
    const allOf = bounds.flatMap((one) => (one.allOf as JsonSchema[] | undefined) ?? []);
    return Object.assign({}, begun, ...bounds, allOf.length > 0 && { allOf });
  };

  const plain = (of: Node, path: string): JsonSchema => {
    switch (of.type) {
      case 'string':
      case 'number':
      case 'boolean':
        return { type: of.type };
      case 'literal':
        return { const: of.literal };
      case 'picklist':
        return { enum: of.options };
      case 'array':
        return { type: 'array', items: convert(node(of.item), path) };
      case 'strict_tuple': {
        const items = (of.items as readonly unknown[]).map((item) => convert(node(item), path));
        return { type: 'array', prefixItems: items, minItems: items.length, maxItems: items.length };
      }
      case 'record':
        return {
          type: 'object',
          propertyNames: convert(node(of.key), path),
          additionalProperties: convert(node(of.value), `${path}.*`),
        };
      case 'nullable':
        return { anyOf: [convert(node(of.wrapped), path), { type: 'null' }] };
      case 'object':
      case 'object_with_rest':
        return objectOf(of, path);
      case 'exact_optional':
      case 'optional':
        return convert(node(of.wrapped), path);
      case 'union':
        return { anyOf: (of.options as readonly unknown[]).map((option) => convert(node(option), path)) };
      case 'lazy':
        return convert(node((of.getter as (input: unknown) => unknown)(undefined)), path);
      default:
        throw new Error(`no JSON Schema for ${of.type} at ${path}`);
    }
  };

  const objectOf = (of: Node, path: string): JsonSchema => {
    const entries = Object.entries(of.entries as Record<string, Node>);
    const optional = (entry: Node) => entry.type === 'exact_optional' || entry.type === 'optional';
    const rest = of.rest === undefined ? null : node(of.rest);
    const properties = entries.map(([key, entry]) => {
      const below = `${path}.${key}`;
      return [key, described(below, convert(entry, below))] as const;
    });
    const required = entries.filter(([, entry]) => !optional(entry)).map(([key]) => key);
    return {
      type: 'object',
      properties: Object.fromEntries(properties),
      ...(required.length > 0 && { required }),
      ...(rest && { additionalProperties: rest.type === 'custom' ? false : convert(rest, `${path}.*`) }),
    };
  };

  const top = convert(node(schema), id);
  const $defs = Object.fromEntries([...definitions].sort(([a], [b]) => (a < b ? -1 : 1)));
  return {
    schema: {
      $schema: 'https://json-schema.org/draft/2020-12/schema',
      title,
      ...top,
      ...(definitions.size > 0 && { $defs }),
    },
    untold: [...untold],
    told: [...told],
  };
}

/** A path and what is left of it without its first keys, the longest first. */
const suffixes = (path: string): string[] => {
  const keys = path.split('.');
  return keys.map((_, i) => keys.slice(i).join('.'));
};

/** What a bound on a length is called, by what is bounded. */
const lengthOf = (type: unknown): string => (type === 'array' ? 'Items' : 'Length');

/** What an action of a pipe says that JSON Schema can say too. @param type Of the value that it looks at. */
function bound({ type: action, requirement, standing }: Node, type: unknown): JsonSchema {
  if (standing) return { allOf: (standing as readonly Standing[]).map(rule) };
  switch (action) {
    case 'min_value':
      return { minimum: requirement };
    case 'max_value':
      return { maximum: requirement };
    case 'integer':
      return { type: 'integer' };
    case 'non_empty':
      return { [`min${lengthOf(type)}`]: 1 };
    case 'min_length':
      return { [`min${lengthOf(type)}`]: requirement };
    case 'max_length':
      return { [`max${lengthOf(type)}`]: requirement };
    case 'min_entries':
      return { minProperties: requirement };
    case 'regex':
    case 'iso_timestamp':
      return { pattern: (requirement as RegExp).source };
    default:
      return {};
  }
}

/** Which keys have to stand. */
function rule(standing: Standing): JsonSchema {
  if ('needs' in standing) return { dependentRequired: { [standing.key]: [standing.needs] } };
  const { of, least, most } = standing;
  // The keys are named beside what is required, or strict validators take them for misspelt.
  const having = (...keys: string[]) => ({
    properties: Object.fromEntries(keys.map((key) => [key, true])),
    required: keys,
  });
  if (least === 0) return { not: having(...of) };
  return { [most === 1 ? 'oneOf' : 'anyOf']: of.map((key) => having(key)) };
}

/** Which numbers the bounds of a quantity leave. */
function signOf(schema: Node): Sign {
  const lowest = (of: Node): [bound: number, taken: boolean][] =>
    pipeOf(of).flatMap((part): [number, boolean][] => {
      if (part.type === 'min_value') return [[part.requirement as number, true]];
      if (part.type === 'gt_value') return [[part.requirement as number, false]];
      return part === of ? [] : lowest(part);
    });
  const bounds = lowest(schema);
  if (bounds.some(([bound, taken]) => bound > 0 || (bound === 0 && !taken))) return 'above 0';
  return bounds.some(([bound]) => bound === 0) ? 'not negative' : 'any';
}
