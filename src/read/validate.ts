import * as v from 'valibot';
import { type Place, type Problem, problem } from '../base/problem.ts';
import { expectedOf, nearestWord, type QuantityFault } from '../base/quantity.ts';
import type { WeighedFault } from '../model/weighed.ts';
import { idOf } from './answers/words.ts';
import { type Path, readYaml, type YamlFile, type YamlSize } from './yaml.ts';

/** A file turned into the model: its value where nothing is wrong, every problem in it, and the way back to a place. */
export interface Parsed<T> {
  readonly value?: T;
  readonly problems: readonly Problem[];
  readonly file: string;
  readonly place: YamlFile['place'];
  /** The file as plain data, for checks that span it. */
  readonly data: unknown;
}

/** Bytes that are read of the small files, and of journals. */
export const LIMIT = { small: 256 * 1024, journal: 4 * 1024 * 1024, weather: 64 * 1024 * 1024 } as const;

const kib = (bytes: number): string =>
  bytes >= 1 << 20 ? `${Math.round(bytes / (1 << 20))} MiB` : `${Math.ceil(bytes / 1024)} KiB`;

/** A problem where a text is longer than is read; null where it is not. */
export function tooLarge(text: string, file: string, limit: number = LIMIT.small): Problem | null {
  if (text.length <= limit) return null;
  return problem('file-too-large', { size: kib(text.length), limit: kib(limit) }, { file });
}

/**
 * Opens a YAML file as plain data: size, then syntax; a file without anything in it is a problem.
 *
 * @param what The file's kind in words, for an empty file.
 */
export function openYaml(
  text: string,
  file: string,
  what: string,
  limit: number = LIMIT.small,
  size?: YamlSize,
): Parsed<never> {
  const start: Place = { file, line: 1, column: 1, length: 1 };
  const failed = (problems: readonly Problem[]) => ({ problems, file, place: () => start, data: undefined });
  const large = tooLarge(text, file, limit);
  if (large) return failed([large]);
  const { data, problems, place } = readYaml(text, file, size);
  if (problems.length > 0) return failed(problems);
  if (data === undefined || data === null) return failed([problem('file-empty', { what }, start)]);
  return { problems, file, place, data };
}

/** Reads a YAML file of one kind: size, syntax, then schema; all problems of a stage at once, each with its place. */
export function readAs<S extends v.GenericSchema>(
  schema: S,
  text: string,
  file: string,
  what: string,
  limit: number = LIMIT.small,
): Parsed<v.InferOutput<S>> {
  const opened = openYaml(text, file, what, limit);
  return opened.problems.length > 0 ? opened : judge(schema, opened);
}

/** Judges opened data by a schema. */
export function judge<S extends v.GenericSchema>(schema: S, opened: Parsed<unknown>): Parsed<v.InferOutput<S>> {
  const { file, place, data } = opened;
  const result = v.safeParse(schema, data);
  const found = [...(result.issues ?? []).map((issue) => toProblem(issue, place, data)), ...reserved(data, [], place)];
  if (found.length > 0) return { problems: found, file, place, data };
  return { problems: found, file, place, data, ...(result.success && { value: result.output }) };
}

/** Keys that schemas pass over, lest they reach a prototype: nothing may be called so. */
function reserved(value: unknown, path: Path, place: YamlFile['place']): Problem[] {
  if (value === null || typeof value !== 'object') return [];
  return Object.entries(value).flatMap(([key, inner]) => {
    const here = [...path, Array.isArray(value) ? Number(key) : key];
    const below = reserved(inner, here, place);
    return ['__proto__', 'prototype', 'constructor'].includes(key)
      ? [problem('reserved-key', { found: key }, place(here, 'key')), ...below]
      : below;
  });
}

/** A value as it is named in a message. */
function named(value: unknown): string {
  if (value === null || value === undefined) return 'nothing';
  if (Array.isArray(value)) return 'a list';
  if (typeof value === 'object') return 'a map';
  return typeof value === 'string' ? `"${value.length > 60 ? `${value.slice(0, 57)}...` : value}"` : String(value);
}

const words = (list: string | undefined): string[] => (list ?? '').split('|').filter((one) => one !== '');

/** A fault that a schema reports, as a problem with its place. */
function toProblem(issue: v.BaseIssue<unknown>, place: YamlFile['place'], data: unknown): Problem {
  const path: Path = (issue.path ?? []).map(({ key }) => key as string | number);
  const here = place(path);
  const found = named(issue.input);
  const [code = '', ...rest] = issue.message.split(':');
  const detail = rest.join(':');
  switch (code) {
    case 'unknown-key': {
      const key = String(path.at(-1));
      return problem(
        'unknown-key',
        { found: key, allowed: words(detail), nearest: nearestWord(key, words(detail)) },
        place(path, 'key'),
      );
    }
    case 'missing-key':
      return problem('missing-key', { key: detail }, here);
    case 'quantity':
      return quantityProblem(JSON.parse(detail) as QuantityFault, String(issue.input), issue.expected ?? '', here);
    case 'wrong-kind':
      return problem('wrong-kind', { found: found.replace(/^"(.*)"$/, '$1'), expected: detail }, here);
    case 'not-a-date':
      return problem('not-a-date', { found: String(issue.input), expected: issue.expected ?? '' }, here);
    case 'trigger-kind':
    case 'area-shape':
    case 'apply-one-of':
      return problem(code, { found: rest.slice(0, -1).join(':'), allowed: words(rest.at(-1)) }, here);
    case 'area-crossing':
      return problem(code, { first: Number(rest[0]), second: Number(rest[1]) }, here);
    case 'area-crossing-at':
      return problem(code, { first: Number(rest[0]), second: Number(rest[1]), where: rest[2] ?? '' }, here);
    case 'geojson-type':
      return problem(code, { found: rest[0] ?? '', expected: words(rest[1]).join(', ') }, here);
    case 'geojson-several':
      return problem(code, { found: `${(valueAt(data, path) as unknown[]).length}` }, here);
    case 'geojson-hole':
      return problem(code, { hole: Number(rest[0]) }, here);
    case 'journal-weights': {
      const entry = valueAt(data, path.slice(0, -1)) as Readonly<Record<string, unknown>>;
      const text = (key: string) => String(entry[key] ?? '');
      const [at = '', fault = ''] = rest;
      const amounts = { loaded: text('loaded'), used: text('used'), left: text('left') };
      return problem(code, { at, fault: fault as WeighedFault, ...amounts }, here);
    }
    case 'journal-times':
    case 'journal-equipment':
    case 'trigger-direction':
    case 'trigger-frost':
    case 'trigger-after':
    case 'local-rule':
    case 'turf-both':
    case 'nutrient-twice':
    case 'sprayer-output':
    case 'sprayer-caught-in':
    case 'by-soil-test':
    case 'soil-test-nitrogen':
    case 'spreader-swath':
    case 'degree-days-upper':
    case 'degree-days-cutoff':
    case 'degree-days-soil':
    case 'soil-depth':
      return problem(code, { found: named(valueAt(data, path)) }, here);
    case 'area-corners':
      return problem(code, { found: `${(valueAt(data, path) as unknown[]).length} corners` }, here);
    case 'area-triangle':
      return problem(code, { found: (valueAt(data, [...path, 'sides']) as unknown[]).join(', ') }, here);
    case 'out-of-range':
      return problem(
        'out-of-range',
        { found: named(valueAt(data, path)), expected: detail || (issue.expected ?? '') },
        here,
      );
    case 'wrong-type':
      return problem('wrong-type', { found, expected: detail + suchAs(issue.input, detail) }, here);
    default:
      return schemaProblem(issue, path, found, place, data);
  }
}

/** The id that a name most likely stands for, where an id is expected: `2-4-d` for "2,4-D". */
function suchAs(input: unknown, expected: string): string {
  const id = expected.startsWith('an id') && typeof input === 'string' ? idOf(input) : '';
  return id === '' ? '' : `, such as "${id}"`;
}

/** A fault of a schema that carries no code of its own. */
function schemaProblem(
  issue: v.BaseIssue<unknown>,
  path: Path,
  found: string,
  place: YamlFile['place'],
  data: unknown,
): Problem {
  const last = issue.path?.at(-1);
  if (last && issue.input === undefined && !hasKey(data, path))
    return problem('missing-key', { key: String(last.key) }, place(path.slice(0, -1)));
  if (last && 'origin' in last && last.origin === 'key') {
    return problem(
      'wrong-type',
      { found: `the key "${String(last.key)}"`, expected: 'an id in lower-case letters, digits and hyphens' },
      place(path, 'key'),
    );
  }
  const allowed = [...(issue.expected ?? '').matchAll(/"([^"]*)"/g)].map(([, word = '']) => word);
  if (allowed.length > 0 && typeof issue.input === 'string') {
    return problem(
      'unknown-word',
      { found: issue.input, allowed, nearest: nearestWord(issue.input, allowed) },
      place(path),
    );
  }
  return problem('wrong-type', { found, expected: plainType(issue.expected) }, place(path));
}

const plainType = (expected: string | null): string =>
  ({ Object: 'a map', Array: 'a list', string: 'a text', number: 'a number', boolean: 'true or false' })[
    expected ?? ''
  ] ??
  expected ??
  'another value';

function quantityProblem(fault: QuantityFault, found: string, expected: string, here: Place): Problem {
  switch (fault.fault) {
    case 'form':
      return problem('wrong-type', { found: `"${found}"`, expected }, here);
    case 'comma': {
      const [, digits] = /^(\S+)/.exec(fault.instead) ?? [];
      const how = digits?.includes('.') ? 'with a point' : 'without a comma';
      return problem('wrong-type', { found: `"${found}"`, expected: `"${fault.instead}", ${how}` }, here);
    }
    case 'unit':
      return problem('unknown-unit', { found: fault.unit, expected, nearest: fault.nearest }, here);
    case 'measure':
      return problem(
        'wrong-measure',
        { found, measure: expectedOf(fault.found).replace(/^an? (.*) such as .*$/, '$1'), expected },
        here,
      );
  }
}

function valueAt(data: unknown, path: Path): unknown {
  let value = data;
  for (const key of path)
    value = value !== null && typeof value === 'object' ? (value as Record<string | number, unknown>)[key] : undefined;
  return value;
}

const parentOf = (data: unknown, path: Path): unknown => valueAt(data, path.slice(0, -1));

function hasKey(data: unknown, path: Path): boolean {
  const parent = parentOf(data, path);
  return parent !== null && typeof parent === 'object' && Object.hasOwn(parent, path.at(-1) as string);
}
