import { randomInt } from 'node:crypto';
import { existsSync, realpathSync } from 'node:fs';
import path from 'node:path';
import { hasErrors, type Problem, problem } from '../base/problem.ts';
import { appended, type EntryDraft, entryLine } from '../emit/journal-entry.ts';
import { readJournal } from '../read/journal.ts';
import { NotWritten, readToChange, removeLeftParts, writeAll } from './files.ts';
import { withLock } from './lock.ts';

/** What came of writing an entry. */
export type Written = { readonly line: string; readonly id: string } | { readonly problems: readonly Problem[] };

/**
 * Adds an entry to a journal file, or begins one: whole or not at all, whoever else writes at the same time.
 *
 * A lock beside the file keeps other runs out while the text is read, lengthened and put in place of the old one. The new
 * text is read back before it is written: it has to hold one entry more.
 *
 * @param entry Its `id` is added here, unlike every other one in the file.
 */
export function addEntry(named: string, entry: EntryDraft, cwd: string): Written {
  // The lock stands beside the file itself, so that all who come to it by links meet there.
  const file = existsSync(named) ? realpathSync(named) : named;
  const result = withLock(file, (stillHeld) => {
    removeLeftParts(file);
    const source = readToChange(file, cwd);
    if (source && 'reason' in source)
      return { problems: [problem('file-unreadable', { ref: named, reason: source.reason }, null)] };
    const next = lengthened(source?.text ?? '', entry, path.basename(named));
    if ('problems' in next) return next;
    stillHeld();
    writeAll([{ file, text: next.text }]);
    return { line: next.line, id: next.id };
  });
  if (!(result instanceof NotWritten)) return result;
  return { problems: [problem('write-failed', { file: result.file, reason: result.message }, null)] };
}

/** The journal's text with the entry at its end, read back; or why not. */
function lengthened(
  text: string,
  entry: EntryDraft,
  name: string,
): { readonly text: string; readonly line: string; readonly id: string } | { readonly problems: readonly Problem[] } {
  const before = readJournal(text, name);
  if (hasErrors(before.problems)) return { problems: before.problems };
  const id = freshId(text);
  const line = entryLine({ id, ...entry });
  const longer = appended(text, line);
  if ('reason' in longer) return { problems: [problem('journal-append', longer, { file: name })] };
  const after = readJournal(longer.text, name);
  const others = JSON.stringify(after.value?.slice(0, -1)) === JSON.stringify(before.value);
  if (!hasErrors(after.problems) && others && after.value?.at(-1)?.id === id) return { text: longer.text, line, id };
  return { problems: [problem('journal-append', { reason: 'the new entry would not be read back.' }, { file: name })] };
}

/** Without those that look alike; digits behind the letters. */
const SIGNS = 'abcdefghijkmnpqrstuvwxyz23456789';
const LETTERS = 24;

/** A short id that stands nowhere in the text: a letter first, so that no reader of YAML takes it for a number. */
function freshId(text: string): string {
  for (let length = 4; ; length++) {
    const id = Array.from({ length }, (_, i) => SIGNS[randomInt(i === 0 ? LETTERS : SIGNS.length)]).join('');
    if (!text.includes(id)) return id;
  }
}
