import path from 'node:path';
import { yearOf } from '../../base/day.ts';
import { type Problem, problem } from '../../base/problem.ts';
import { recordCsv } from '../../emit/record-csv.ts';
import { recordPage } from '../../emit/record-page.ts';
import type { Linked } from '../../read/link.ts';
import { NotWritten, writeAll } from '../files.ts';
import { type DidInput, type Done, failed, planNow } from './input.ts';
import { missingProblems, recordOfYear } from './record-of-year.ts';

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
  const record = recordOfYear(input, Number(asked), planNow(input).season, [...new Set(unreadLines)]);
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
    problems: [...read, ...missingProblems(record.entries)],
    json: { record, files: names, written: !options.dryRun },
  };
}

/** A year that there is no record of, with those that there are. */
function refused(found: string, { journal }: Linked): Done {
  const years = [...new Set(journal.map(({ date }) => yearOf(date)))].sort((a, b) => a - b).map(String);
  return failed([problem('did-year', { found, allowed: years, nearest: null }, { file: '--year' })]);
}
