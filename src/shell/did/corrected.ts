import { type Problem, problem } from '../../base/problem.ts';
import { nearestWord } from '../../base/quantity.ts';
import type { EntryDraft } from '../../emit/journal-entry.ts';
import { correctionsOf, entriesNamed, nameOf } from '../../model/corrections.ts';
import type { Journal } from '../../model/journal.ts';
import { readJournal } from '../../read/journal.ts';
import { readToChange } from '../files.ts';
import type { DidInput } from './input.ts';

/** Nobody reads on after so many names. */
const MOST_NAMED = 10;

/** The entry in force that a name means, the last of the file where none is named; or why there is no such one. */
export function targetOf(
  journal: Journal,
  name: string | undefined,
): { readonly at: number; readonly name: string } | { readonly problems: readonly Problem[] } {
  const { inForce } = correctionsOf(journal);
  const standing = journal.flatMap((_, at) => (inForce[at] ? [at] : []));
  const last = standing.at(-1);
  if (last === undefined) return { problems: [problem('did-nothing', { found: 'nothing' }, null)] };
  const wanted = name ?? nameOf(journal[last] as Journal[number]);
  const found = entriesNamed(wanted, journal).filter((at) => inForce[at]);
  const [at, second] = name === undefined && found.includes(last) && found.length === 1 ? [last] : found;
  if (at === undefined) {
    const allowed = standing.map((one) => nameOf(journal[one] as Journal[number]));
    const nearest = nearestWord(wanted, allowed);
    return { problems: [problem('did-entry', { found: wanted, allowed: allowed.slice(-MOST_NAMED), nearest }, null)] };
  }
  if (second !== undefined) return { problems: [problem('did-entries', { found: wanted, count: found.length }, null)] };
  return { at, name: wanted };
}

/** An entry as it stands in the file, every text as it was typed. @param at Its place in the journal as it was read. */
export function writtenAs({ journalFile, io }: DidInput, at: number): EntryDraft {
  const source = readToChange(journalFile, io.cwd);
  const { data, positions } = readJournal(source && 'text' in source ? source.text : '', journalFile);
  const row = Array.isArray(data) ? data[positions[at] as number] : null;
  return (row ?? {}) as EntryDraft;
}
