import path from 'node:path';
import { formatDay } from '../../base/day.ts';
import { hasErrors, type Problem, problem } from '../../base/problem.ts';
import { dayAt, zoneAt } from '../../base/zone.ts';
import { type EntryDraft, entryLine } from '../../emit/journal-entry.ts';
import { folded } from '../../emit/table.ts';
import type { Journal, JournalEntry } from '../../model/journal.ts';
import { fileBeside, type Linked, stepIds } from '../../read/link.ts';
import type { Io } from '../io.ts';
import { addEntry } from '../journal-file.ts';
import { EXIT, exitCode, printProblems, tellProblems } from '../report-problems.ts';
import { whichLawn } from '../which-lawn.ts';
import { closeSeason } from './close-season.ts';
import { targetOf, writtenAs } from './corrected.ts';
import { entryOf } from './entry-of.ts';
import { exportRecord } from './export.ts';
import { implausible } from './implausible.ts';
import { type DidInput, type DidOptions, type Done, displayFor, failed, planNow, readForWork } from './input.ts';
import { intervalProblems } from './interval.ts';
import { labelProblems } from './label.ts';
import { entriesAsData, listOf } from './list.ts';
import { type Meaning, meaningOf } from './meaning.ts';
import { noAdvice } from './no-advice.ts';
import { lacking } from './record-of-year.ts';
import { meaningInWords } from './tell.ts';
import { weatherProblems } from './weather-of-work.ts';
import { withProduct } from './with-product.ts';

/** Writes down work that was done: an entry of the journal, the undoing of one, or the close of a season; shows and exports the journal. */
export function didCommand(words: readonly string[], options: DidOptions, io: Io): number {
  const fail = (problems: readonly Problem[]): number => {
    tellProblems(problems, options.json, io);
    const unwritten = problems.some(({ code }) => code === 'write-failed');
    return unwritten ? EXIT.usage : exitCode(problems, options.strict ?? false);
  };
  const asked = whichLawn(words, undefined, io);
  if ('problems' in asked) return fail(asked.problems);
  if (asked.isDemo) return fail([problem('did-demo', { found: asked.file }, null)]);
  const clash = clashing(options, asked.step);
  if (clash) return fail([clash]);
  const { value: linked, problems } = readForWork(asked, io);
  if (!linked || hasErrors(problems)) return fail(problems);
  const { latitude, longitude } = linked.lawn.location;
  const today = dayAt(io.now(), linked.lawn.timezone ?? zoneAt(latitude, longitude));
  const input: DidInput = { asked, linked, journalFile: fileBeside(asked.file, 'journal.yaml'), today, options, io };

  const done = doneBy(input, problems);
  if (hasErrors(done.problems)) return fail(done.problems);
  if (options.json)
    io.stdout(`${JSON.stringify({ kind: 'did', version: 1, ...done.json, problems: done.problems }, null, 2)}\n`);
  else io.stdout(`${folded(done.lines.join('\n'), io.columns).join('\n')}\n`);
  printProblems(done.problems, io);
  return exitCode(done.problems, options.strict ?? false);
}

/** What was asked for, done. @param read Problems of the files. */
function doneBy(input: DidInput, read: readonly Problem[]): Done {
  const { options, linked } = input;
  if (options.list) {
    const json = { entries: entriesAsData(linked.journal) };
    return { lines: listOf(linked.journal, displayFor(linked)), problems: read, json };
  }
  if (options.export) return exportRecord(input, read);
  if (options.closeSeason) return closeSeason(input);
  return options.undo ? undo(input) : record(input);
}

/** Two things that one run cannot do. */
function clashing(options: DidOptions, step: string | undefined): Problem | null {
  const modes = (['undo', 'list', 'export', 'closeSeason'] as const).filter((mode) => options[mode]);
  const flag = (mode: string) => `--${mode.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)}`;
  const [first, second] = modes;
  if (first && second) return problem('did-option', { option: flag(second), with: flag(first) }, null);
  if (first && step !== undefined) return problem('did-option', { option: step, with: flag(first) }, null);
  const belonging = [
    ['entry', 'undo'],
    ['to', 'closeSeason'],
    ['year', 'export'],
    ['out', 'export'],
  ] as const;
  const alone = belonging.find(([option, mode]) => options[option] !== undefined && !options[mode]);
  return alone ? problem('did-needs', { option: flag(alone[0]), needs: flag(alone[1]) }, null) : null;
}

/** Puts an entry at the journal's end, or says what it would be. */
function write(
  { journalFile, options, io }: DidInput,
  draft: EntryDraft,
): { readonly line: string; readonly id: string | null } | Done {
  if (options.dryRun) return { line: entryLine(draft), id: null };
  const written = addEntry(journalFile, draft, io.cwd);
  return 'problems' in written ? failed(written.problems) : written;
}

function record(input: DidInput): Done {
  const { asked, linked, options, today } = input;
  const ids = stepIds(linked.program, linked.areaPrograms);
  const target = options.corrects === undefined ? null : targetOf(linked.journal, options.corrects);
  if (target && 'problems' in target) return failed(target.problems);
  const before = target && writtenAs(input, target.at);
  const recorded = entryOf(asked.step, options, linked, ids, today, before);
  if ('problems' in recorded) return failed(recorded.problems);
  const { draft, entry } = withProduct(input, recorded, before);
  const written = write(input, draft);
  if ('problems' in written) return written;
  const json = { entry: { id: written.id, ...draft }, written: !options.dryRun };
  const { season } = planNow(input, options.dryRun ? draft : null);
  const lacks = lacking(input, entry, season);
  if (!season) return { lines: [told(input, written.line)], problems: lacks, json: { ...json, means: null } };
  const means = meaningOf(input, entry, season);
  return {
    lines: [told(input, written.line), ...meaningInWords(input, entry, means, season)],
    problems: [
      ...labelProblems(input, entry, means.areas, season),
      ...intervalProblems(input, entry, means.areas, season),
      ...implausible(input, entry, means, season),
      ...weatherProblems(linked, entry),
      ...noAdvice(input, entry, means, season),
      ...countedProblems(linked, entry, means),
      ...lacks,
    ],
    json: { ...json, means },
  };
}

/** Work of the day of counting, or before it, is not taken off the shelf. */
function countedProblems({ lawn }: Linked, { date }: JournalEntry, { shelf }: Meaning): Problem[] {
  const counted = lawn.shelf?.counted ?? null;
  if (shelf === null || counted === null || date > counted) return [];
  return [problem('did-counted', { date: formatDay(date), counted: formatDay(counted) }, null)];
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
  return {
    lines: [told(input, written.line), `Taken back: ${undone[0] ?? ''}`],
    problems: [],
    json: { entry: { id: written.id, ...draft }, written: !options.dryRun },
  };
}
