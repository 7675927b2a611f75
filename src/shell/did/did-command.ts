import path from 'node:path';
import { formatDay } from '../../base/day.ts';
import { hasErrors, type Problem, problem } from '../../base/problem.ts';
import { dayAt, zoneAt } from '../../base/zone.ts';
import { readAll } from '../../compile.ts';
import { type EntryDraft, entryLine } from '../../emit/journal-entry.ts';
import { correctionsOf, entriesNamed, nameOf } from '../../model/corrections.ts';
import type { Journal } from '../../model/journal.ts';
import { fileBeside, stepIds } from '../../read/link.ts';
import { lookupFrom } from '../files.ts';
import type { Io } from '../io.ts';
import { addEntry } from '../journal-file.ts';
import { exitCode, printProblems } from '../report-problems.ts';
import { whichLawn } from '../which-lawn.ts';
import { zipLookup } from '../zips.ts';
import { closeSeason } from './close-season.ts';
import { entryOf } from './entry-of.ts';
import { type DidInput, type DidOptions, type Done, displayFor, failed } from './input.ts';
import { listOf } from './list.ts';
import { meaningOf } from './meaning.ts';

/** Writes down work that was done: an entry of the journal, the undoing of one, or the close of a season. */
export function didCommand(words: readonly string[], options: DidOptions, io: Io): number {
  const fail = (problems: readonly Problem[]): number => {
    printProblems(problems, io);
    if (options.json) io.stdout(`${JSON.stringify({ kind: 'problems', version: 1, problems }, null, 2)}\n`);
    return exitCode(problems, options.strict ?? false);
  };
  const asked = whichLawn(words, undefined, io);
  if ('problems' in asked) return fail(asked.problems);
  if (asked.isDemo) return fail([problem('did-demo', { found: asked.file }, null)]);
  const clash = clashing(options, asked.step);
  if (clash) return fail([clash]);
  const { value: linked, problems } = readAll({ lawn: asked.source, lookup: lookupFrom(io.cwd), zips: zipLookup });
  if (!linked || hasErrors(problems)) return fail(problems);
  const { latitude, longitude } = linked.lawn.location;
  const today = dayAt(io.now(), linked.lawn.timezone ?? zoneAt(latitude, longitude));
  const input: DidInput = { asked, linked, journalFile: fileBeside(asked.file, 'journal.yaml'), today, options, io };

  const done = options.list
    ? { lines: listOf(linked.journal, displayFor(linked)), problems, json: { entries: linked.journal.length } }
    : options.closeSeason
      ? closeSeason(input)
      : options.undo
        ? undo(input)
        : record(input);
  if (hasErrors(done.problems)) return fail(done.problems);
  if (options.json)
    io.stdout(`${JSON.stringify({ kind: 'did', version: 1, ...done.json, problems: done.problems }, null, 2)}\n`);
  else io.stdout(`${done.lines.join('\n')}\n`);
  printProblems(done.problems, io);
  return exitCode(done.problems, options.strict ?? false);
}

/** Two things that one run cannot do. */
function clashing(options: DidOptions, step: string | undefined): Problem | null {
  const modes = (['undo', 'list', 'closeSeason'] as const).filter((mode) => options[mode]);
  const flag = (mode: string) => `--${mode.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}`;
  const [first, second] = modes;
  if (first && second) return problem('did-option', { option: flag(second), with: flag(first) }, null);
  if (first && step !== undefined) return problem('did-option', { option: step, with: flag(first) }, null);
  if (options.entry !== undefined && !options.undo)
    return problem('did-needs', { option: '--entry', needs: '--undo' }, null);
  if (options.to !== undefined && !options.closeSeason)
    return problem('did-needs', { option: '--to', needs: '--close-season' }, null);
  return null;
}

/** Puts an entry at the journal's end, or says what it would be. */
function write({ journalFile, options, io }: DidInput, draft: EntryDraft): { readonly line: string } | Done {
  if (options.dryRun) return { line: entryLine(draft) };
  const written = addEntry(journalFile, draft, io.cwd);
  return 'problems' in written ? failed(written.problems) : written;
}

function record(input: DidInput): Done {
  const { asked, linked, options, today } = input;
  const ids = stepIds(linked.program, linked.areaPrograms);
  const recorded = entryOf(asked.step, options, linked, ids, today);
  if ('problems' in recorded) return failed(recorded.problems);
  const written = write(input, recorded.draft);
  if ('problems' in written) return written;
  const { lines, problems } = meaningOf(input, recorded.entry);
  return { lines: [told(input, written.line), ...lines], problems, json: { entry: recorded.draft } };
}

const told = ({ journalFile, options, io }: DidInput, line: string): string =>
  `${options.dryRun ? 'Would write into' : 'Written into'} ${path.relative(io.cwd, journalFile)}:\n${line}`;

/** Takes an entry back: the one that is named, else the last of the file that is in force. */
function undo(input: DidInput): Done {
  const { linked, options, today } = input;
  const target = targetOf(linked.journal, options.entry);
  if ('problems' in target) return failed(target.problems);
  const draft = { date: formatDay(today), corrects: target.name, undo: true };
  const written = write(input, draft);
  if ('problems' in written) return written;
  const undone = listOf([linked.journal[target.at] as Journal[number]], displayFor(linked));
  return { lines: [told(input, written.line), `Taken back: ${undone[0] ?? ''}`], problems: [], json: { entry: draft } };
}

function targetOf(
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
    return { problems: [problem('did-entry', { found: wanted, allowed, nearest: null }, null)] };
  }
  if (second !== undefined) return { problems: [problem('did-entries', { found: wanted, count: found.length }, null)] };
  return { at, name: wanted };
}
