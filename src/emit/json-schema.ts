import type * as v from 'valibot';
import type { Measure } from '../base/quantity.ts';
import { units } from '../base/units.ts';
import type { Told } from '../model/fields.ts';

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
    const { forms, name, quantity, pattern } = toldBy(of);
    if (name !== undefined) {
      if (!definitions.has(name) && forms) {
        definitions.set(name, {});
        definitions.set(name, either(forms(), name));
      }
      return { $ref: `#/$defs/${name}` };
    }
    if (forms) return either(forms(), path);
    if (quantity) return { type: 'string', pattern: quantityPattern(quantity) };
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
    return Object.assign({}, begun, ...rest.map(bound));
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
    const rest = node(of.rest);
    const properties = entries.map(([key, entry]) => {
      const below = `${path}.${key}`;
      return [key, described(below, convert(entry, below))] as const;
    });
    const required = entries.filter(([, entry]) => !optional(entry)).map(([key]) => key);
    return {
      type: 'object',
      properties: Object.fromEntries(properties),
      ...(required.length > 0 && { required }),
      additionalProperties: rest.type === 'custom' ? false : convert(rest, `${path}.*`),
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

/** What an action of a pipe says that JSON Schema can say too. */
function bound({ type, requirement }: Node): JsonSchema {
  switch (type) {
    case 'min_value':
      return { minimum: requirement };
    case 'max_value':
      return { maximum: requirement };
    case 'gt_value':
      return { exclusiveMinimum: requirement };
    case 'integer':
      return { type: 'integer' };
    case 'non_empty':
      return { minLength: 1 };
    case 'min_length':
      return { minItems: requirement };
    case 'max_length':
      return typeof requirement === 'number' ? { maxLength: requirement } : {};
    case 'regex':
      return { pattern: (requirement as RegExp).source };
    default:
      return {};
  }
}

const NUMBER = '[+-]?(\\d+\\.?\\d*|\\.\\d+)';
const escaped = (text: string): string => text.replace(/[.*+?^${}()|[\]\\/]/g, '\\$&');
const anyOf = (words: readonly string[]): string =>
  `(${[...words]
    .sort((a, b) => b.length - a.length)
    .map(escaped)
    .join('|')})`;
const named = (dimension: string): string[] =>
  [...units].flatMap(([name, unit]) => (unit.dimension === dimension ? [name] : []));
/** Names as people write them: an area's may have a space, and so may fluid ounces. */
const spaced = (names: readonly string[]): string =>
  anyOf(names)
    .replace(/\bsq(ft|yd|m)\b/g, 'sq ?$1')
    .replace(/\bfloz\b/g, 'fl ?oz');

/** A pattern for a quantity of one of some measures, from the table of units. */
function quantityPattern(measures: readonly Measure[]): string {
  const one = (measure: Measure): string => {
    const ratio = /^(mass|volume) per area$/.exec(measure);
    if (ratio) return `${spaced(named(ratio[1] as string))} ?/ ?(\\d+(\\.\\d+)? ?)?${spaced(named('area'))}`;
    if (measure === 'density') return `${spaced(named('mass'))} ?/ ?${spaced(named('volume'))}`;
    return spaced(named(measure));
  };
  return `^\\s*${NUMBER}\\s*(${measures.map(one).join('|')})\\s*$`;
}
