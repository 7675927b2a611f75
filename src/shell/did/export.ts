import path from 'node:path';
import { type RecordStep, recordOf } from '../../amounts/record.ts';
import { yearOf } from '../../base/day.ts';
import { type Problem, problem } from '../../base/problem.ts';
import { recordCsv } from '../../emit/record-csv.ts';
import { recordPage } from '../../emit/record-page.ts';
import { recordWords } from '../../emit/record-words-en.ts';
import type { ApplicatorRecord } from '../../model/record.ts';
import type { Linked } from '../../read/link.ts';
import { programsOf } from '../../schedule/assign.ts';
import { NotWritten, writeAll } from '../files.ts';
import { type DidInput, type Done, failed, planNow } from './input.ts';

/**
 * Writes the applicator's record of a year, as CSV and as a page to print, and tells what is missing in it.
 *
 * Both are made from the journal, which stays what it is; a later run writes them anew.
 *
 * @param read Problems of the files; entries that do not read are told on the page.
 */
export function exportRecord(input: DidInput, read: readonly Problem[]): Done {
  const { linked, options, today, io } = input;
  const asked = options.year ?? String(yearOf(today));
  if (!/^\d{4}$/.test(asked)) return refused(asked, linked);
  const unreadLines = read.flatMap(({ code, line }) => (code === 'journal-entry' && line !== null ? [line] : []));
  const record = recordOf({
    ...linked,
    steps: stepsOf(linked),
    plan: planNow(input).season,
    year: Number(asked),
    asOf: today,
    unreadLines: [...new Set(unreadLines)],
  });
  if (record.entries.length === 0 && unreadLines.length === 0) return refused(asked, linked);
  const stem = path.resolve(io.cwd, options.out ?? 'out/record', `${record.lawn}-${record.year}`);
  const files = [
    { file: `${stem}.csv`, text: recordCsv(record) },
    { file: `${stem}.html`, text: recordPage(record) },
  ];
  if (!options.dryRun) {
    try {
      writeAll(files);
    } catch (error) {
      if (!(error instanceof NotWritten)) throw error;
      return failed([problem('write-failed', { file: error.file, reason: error.message }, null)]);
    }
  }
  const names = files.map(({ file }) => path.relative(io.cwd, file));
  const does = options.dryRun ? 'Would write' : 'Written';
  const counted = record.entries.length === 1 ? '1 entry' : `${record.entries.length} entries`;
  return {
    lines: [`${does}: the record of ${record.year}, ${counted}:`, ...names],
    problems: [...read, ...missingProblems(record)],
    json: { record, files: names, written: !options.dryRun },
  };
}

/** A year that there is no record of, with those that there are. */
function refused(found: string, { journal }: Linked): Done {
  const years = [...new Set(journal.map(({ date }) => yearOf(date)))].sort((a, b) => a - b).map(String);
  return failed([problem('did-year', { found, allowed: years, nearest: null }, { file: '--year' })]);
}

/** What the record of a pesticide lacks: said, and nothing made up in its place. */
const missingProblems = ({ entries }: ApplicatorRecord): Problem[] =>
  entries.flatMap(({ name, missing }) =>
    missing.length === 0 ? [] : [problem('did-record', { entry: name, missing: recordWords.missing(missing) }, null)],
  );

/** The steps of all programs of a lawn, by their ids in its journal. */
function stepsOf({ lawn, program, areaPrograms }: Linked): ReadonlyMap<string, RecordStep> {
  const programs = new Map([[program, [] as readonly string[]], ...programsOf(lawn, program, areaPrograms)]);
  return new Map(
    [...programs].flatMap(([own, areas]) =>
      own.steps.map((step): [string, RecordStep] => [
        own.id === program.id ? step.id : `${own.id}.${step.id}`,
        { name: step.name, work: step.work, pesticide: step.apply?.kind === 'pesticide', areas },
      ]),
    ),
  );
}
