import * as v from 'valibot';
import { type Problem, problem } from '../base/problem.ts';
import { nearestWord } from '../base/quantity.ts';
import { BasedOnSchema } from '../model/based-on.ts';
import { isAddress } from '../model/program-ref.ts';
import { type Lookup, unfound } from './lookup.ts';
import { openYaml, type Parsed } from './validate.ts';
import type { Path } from './yaml.ts';

/** A program file as plain data, before any schema has seen it. */
type Opened = Parsed<unknown>;
type Plain = Readonly<Record<string, unknown>>;

export const isPlain = (value: unknown): value is Plain =>
  value !== null && typeof value === 'object' && !Array.isArray(value);

/** More files than this in a row are a mistake. */
const DEEPEST = 5;

/**
 * A program with what it extends: its own keys over those of the other file, steps by `id`, `sources` joined. Places
 * lead into the file that a value stands in, so a problem is told where it is.
 */
export function withExtended(opened: Opened, lookup: Lookup, trail: readonly string[] = []): Opened {
  const { data, place, file } = opened;
  if (!isPlain(data) || !('extends' in data)) return opened;
  const refuse = (found: Problem): Opened => ({ ...opened, problems: [found] });
  const ref = data.extends;
  const here = place(['extends']);
  if (typeof ref !== 'string')
    return refuse(problem('wrong-type', { found: String(ref), expected: 'the path of a program file' }, here));
  if (data.id === undefined) return refuse(problem('missing-key', { key: 'id' }, place([])));
  if (isAddress(file)) return refuse(problem('shared-extends', { found: ref }, here));
  if (isAddress(ref)) return refuse(problem('extends-address', { found: ref }, here));
  const source = lookup(ref, file);
  if (source === null || 'reason' in source) return refuse(unfound(ref, source, here));
  const files = [...trail, file];
  if (files.includes(source.name)) return refuse(problem('extends-circle', { files: [...files, source.name] }, here));
  if (files.length > DEEPEST) return refuse(problem('extends-deep', { limit: DEEPEST }, here));
  const parent = withExtended(openYaml(source.text, source.name, 'program'), lookup, files);
  if (parent.problems.length > 0) return { ...opened, problems: parent.problems };
  if (!isPlain(parent.data) || parent.data.kind !== 'program') {
    const found = isPlain(parent.data) ? String(parent.data.kind ?? 'none') : 'none';
    return refuse(problem('wrong-kind', { found, expected: 'program' }, parent.place(['kind'])));
  }
  return joined(opened, parent, data, parent.data);
}

/** A step of the joined program: where it stands in the file, and in the one that is extended. */
interface Origin {
  readonly own: number | null;
  readonly inherited: number | null;
}

function joined(child: Opened, parent: Opened, own: Plain, inherited: Plain): Opened {
  const inheritedSteps = listOf(inherited.steps);
  const ownSteps = listOf(own.steps);
  const inheritedIds = inheritedSteps.map(idOf);
  const problems: Problem[] = [];
  const overriding = new Map<number, number>();
  const added: number[] = [];
  for (const [i, step] of ownSteps.entries()) {
    const at = inheritedIds.indexOf(idOf(step));
    if (at >= 0 && !overriding.has(at)) overriding.set(at, i);
    else if (at < 0 && isPlain(step) && step.drop === true) {
      const [found, allowed] = [String(idOf(step)), inheritedIds.flatMap((id) => id ?? [])];
      const nearest = nearestWord(found, allowed);
      problems.push(problem('unknown-step', { found, allowed, nearest }, child.place(['steps', i, 'id'])));
    } else added.push(i);
  }
  const origins: Origin[] = [
    ...inheritedSteps.map((_, at) => ({ own: overriding.get(at) ?? null, inherited: at })),
    ...added.map((i) => ({ own: i, inherited: null })),
  ].filter(({ own: i }) => !(i !== null && isPlain(ownSteps[i]) && ownSteps[i].drop === true));
  const steps = origins.map(({ own: i, inherited: at }) => {
    const [over, under] = [i === null ? null : ownSteps[i], at === null ? null : inheritedSteps[at]];
    return isPlain(over) && isPlain(under) ? { ...under, ...over } : (over ?? under);
  });
  const { extends: _, ...rest } = own;
  const parts = [...listOf(own['based-on']), ...partOf(inherited), ...listOf(inherited['based-on'])];
  const data = {
    ...inherited,
    ...rest,
    ...(isPlain(inherited.sources) && isPlain(own.sources) && { sources: { ...inherited.sources, ...own.sources } }),
    ...(parts.length > 0 && { 'based-on': parts }),
    steps,
  };
  const place: Opened['place'] = (path, part) => {
    const [key, second, ...below] = path;
    if (key === 'steps' && typeof second === 'number') {
      const origin = origins[second] ?? { own: null, inherited: null };
      const { own: i, inherited: at } = origin;
      const holds = i !== null && (below.length === 0 || has(ownSteps[i], below[0]));
      if (holds || at === null) return child.place(['steps', i ?? second, ...below], part);
      return parent.place(['steps', at, ...below], part);
    }
    const inChild: Path = key === 'sources' && second !== undefined ? ['sources', second] : path.slice(0, 1);
    return reaches(own, inChild) || !reaches(inherited, inChild) ? child.place(path, part) : parent.place(path, part);
  };
  return { problems, file: child.file, place, data };
}

/** What a program that is extended says of itself; nothing where that is not fit to be said. */
function partOf({ id, name, author, license }: Plain): readonly Plain[] {
  const said = Object.entries({ id, name, author, license }).filter(([, value]) => value !== undefined);
  const part = Object.fromEntries(said);
  return v.is(BasedOnSchema, part) ? [part] : [];
}

const listOf = (value: unknown): readonly unknown[] => (Array.isArray(value) ? value : []);
const idOf = (step: unknown): string | null => (isPlain(step) && typeof step.id === 'string' ? step.id : null);
const has = (step: unknown, key: string | number | undefined): boolean =>
  isPlain(step) && key !== undefined && Object.hasOwn(step, key);

function reaches(value: unknown, path: Path): boolean {
  let inner = value;
  for (const key of path) {
    if (!isPlain(inner) || !Object.hasOwn(inner, key)) return false;
    inner = inner[key];
  }
  return true;
}
