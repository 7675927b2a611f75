import { type Place, type Problem, problem } from '../base/problem.ts';
import type { Calendar } from '../model/calendar.ts';
import { kindOf } from './any.ts';
import { readLawn, type ZipLookup } from './lawn.ts';
import type { Lookup, Source } from './lookup.ts';
import type { Parsed } from './validate.ts';

/** A lawn that a calendar names. */
export interface ListedLawn {
  /** Its path as it stands in the calendar file, and where. */
  readonly ref: string;
  readonly place: Place;
  /** Its file; null where `problems` say why there is none to plan. */
  readonly source: Source | null;
  readonly problems: readonly Problem[];
}

/**
 * The lawns of a calendar in its order. One that is not there, is no lawn, or has the id of another feed has a problem at its
 * place in the calendar; what is wrong inside of its file is told by whoever plans or checks it.
 */
export function listedLawns(
  { value, file, place }: Parsed<Calendar>,
  lookup: Lookup,
  zips: ZipLookup,
): readonly ListedLawn[] {
  const taken = new Map(value ? [[value.id, null as string | null]] : []);
  return (value?.lawns ?? []).map((ref, i) => {
    const here = place(['lawns', i]);
    const refused = (found: Problem): ListedLawn => ({ ref, place: here, source: null, problems: [found] });
    const source = lookup(ref, file);
    if (source === null) return refused(problem('file-missing', { ref }, here));
    if ('reason' in source) return refused(problem('file-unreadable', { ref, reason: source.reason }, here));
    const kind = kindOf(source.text, source.name);
    if (kind !== null && kind !== 'lawn')
      return refused(problem('wrong-kind', { found: kind, expected: 'lawn' }, here));
    const id = readLawn(source.text, source.name, zips).value?.id;
    const other = id === undefined ? undefined : taken.get(id);
    if (id !== undefined && other !== undefined) return refused(problem('calendar-same-id', { id, other }, here));
    if (id !== undefined) taken.set(id, ref);
    return { ref, place: here, source, problems: [] };
  });
}
