import { constants, copyFileSync, existsSync } from 'node:fs';
import path from 'node:path';
import { formatDay } from '../../base/day.ts';
import { problem } from '../../base/problem.ts';
import { fileBeside } from '../../read/link.ts';
import { NotWritten, readToChange, type Writing, writeAll } from '../files.ts';
import { ledgerPath } from '../ledger-file.ts';
import { withLock } from '../lock.ts';
import { type CarriedOver, carriedOver } from './carried-over.ts';
import { type DidInput, type Done, failed, planNow } from './input.ts';

/**
 * Carries a lawn over into its next season: the shelf as the journal leaves it, counted today; pins of days that have
 * passed are dropped; everything else, comments too, stays as it stands. Settings and work go on in the journal, which is
 * read by date. With `--to` the next season gets a lawn file, a journal and a ledger of its own, else the file is changed
 * and its old text kept beside it.
 */
export function closeSeason(input: DidInput): Done {
  if (input.options.dryRun) return close(input);
  const done = withLock(input.journalFile, () => close(input));
  if (done instanceof NotWritten)
    return failed([problem('write-failed', { file: done.file, reason: done.message }, null)]);
  return 'lines' in done ? done : failed(done.problems);
}

function close(input: DidInput): Done {
  const { asked, options, io } = input;
  const { season, problems } = planNow(input);
  if (!season) return failed(problems.filter(({ severity }) => severity === 'error'));
  const source = readToChange(asked.file, io.cwd);
  if (source === null || 'reason' in source)
    return failed([
      problem('file-unreadable', { ref: asked.source.name, reason: source?.reason ?? 'it has gone' }, null),
    ]);
  const over = carriedOver(input, source.text, season);
  if ('problems' in over) return failed(over.problems);
  const json = { changed: false, file: null, backup: null, ...over.told };
  if (over.text === source.text && options.to === undefined)
    return { lines: ['Nothing to carry over: shelf and pins are as they should be.'], problems: [], json };
  if (options.dryRun) return { lines: ['Would carry over:', ...over.lines], problems: [], json };
  return options.to === undefined ? inPlace(input, over) : intoNew(input, over, options.to);
}

/** Changes the lawn's file; its old text stays beside it, and no older copy is written over. */
function inPlace({ asked, today, io }: DidInput, over: CarriedOver): Done {
  const backup = freeName(`${asked.file}.${formatDay(today)}`);
  try {
    copyFileSync(asked.file, backup, constants.COPYFILE_EXCL);
  } catch (error) {
    throw new NotWritten(backup, error);
  }
  writeAll([{ file: asked.file, text: over.text }]);
  const [file, kept] = [path.relative(io.cwd, asked.file), path.relative(io.cwd, backup)];
  const lines = [`Carried over into ${file}; the old text is in ${kept}:`, ...over.lines];
  return { lines, problems: [], json: { changed: true, file, backup: kept, ...over.told } };
}

function freeName(stem: string): string {
  for (let n = 1; ; n++) {
    const name = `${stem}${n === 1 ? '' : `.${n}`}.bak`;
    if (!existsSync(name)) return name;
  }
}

/** Writes the next season's lawn with its journal and its ledger, so that subscribers see one feed go on. */
function intoNew({ asked, io }: DidInput, over: CarriedOver, to: string): Done {
  const target = path.resolve(io.cwd, to);
  const refuse = (expected: string) => failed([problem('did-to', { found: to, expected }, { file: '--to' })]);
  if (!/\.ya?ml$/i.test(target)) return refuse('a name that ends in .yaml');
  if (path.dirname(target) !== path.dirname(asked.file))
    return refuse('a file in the folder of the old one, since the paths in it count from there');
  const beside = [
    [fileBeside(asked.file, 'journal.yaml'), fileBeside(target, 'journal.yaml')],
    [ledgerPath(asked.file), ledgerPath(target)],
  ] as const;
  if ([target, ...beside.map(([, file]) => file)].some((file) => existsSync(file)))
    return refuse('a file that is not there yet');
  const copies = beside.flatMap(([from, file]): Writing[] => {
    const source = readToChange(from, io.cwd);
    return source && 'text' in source ? [{ file, text: source.text }] : [];
  });
  writeAll([...copies, { file: target, text: over.text }]);
  const file = path.relative(io.cwd, target);
  return {
    lines: [`Carried over into ${file}, with journal and ledger:`, ...over.lines],
    problems: [],
    json: { changed: true, file, backup: null, ...over.told },
  };
}
