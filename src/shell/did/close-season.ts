import { copyFileSync, existsSync } from 'node:fs';
import path from 'node:path';
import { isMap, isScalar, parseDocument } from 'yaml';
import { inWords } from '../../amounts/amount.ts';
import { formatDay } from '../../base/day.ts';
import { hasErrors, problem } from '../../base/problem.ts';
import type { Amount } from '../../model/fields.ts';
import type { Season } from '../../model/season.ts';
import { fileBeside } from '../../read/link.ts';
import { NotWritten, writeAll } from '../files.ts';
import { type DidInput, type Done, displayFor, failed, planNow } from './input.ts';

/**
 * Carries a lawn over into its next season: the shelf as the journal leaves it, counted today; pins of days that have
 * passed are dropped; everything else, comments too, stays as it stands. Settings and work go on in the journal, which is
 * read by date. With `--to` the next season gets a lawn file and a journal of its own, else the file is changed and its
 * old text kept beside it.
 */
export function closeSeason(input: DidInput): Done {
  const { asked, today, options, io } = input;
  const { season, problems } = planNow(input, null);
  if (!season || hasErrors(problems)) return failed(problems);
  const { text, lines } = carriedOver(input, season);
  const target = options.to === undefined ? asked.file : path.resolve(io.cwd, options.to);
  if (options.to !== undefined && existsSync(target))
    return failed([
      problem('did-to', { found: options.to, expected: 'a file that is not there yet' }, { file: '--to' }),
    ]);
  if (text === asked.source.text && options.to === undefined)
    return {
      lines: ['Nothing to carry over: shelf and pins are as they should be.'],
      problems: [],
      json: { changed: false },
    };
  if (options.dryRun) return { lines: ['Would carry over:', ...lines], problems: [], json: { changed: false } };
  try {
    if (options.to === undefined) copyFileSync(target, `${target}.${formatDay(today)}.bak`);
    writeAll([{ file: target, text }]);
    if (options.to !== undefined && existsSync(input.journalFile))
      copyFileSync(input.journalFile, fileBeside(target, 'journal.yaml'));
  } catch (error) {
    const reason = error instanceof NotWritten ? error.message : String((error as NodeJS.ErrnoException).code ?? error);
    return failed([problem('write-failed', { file: target, reason }, null)]);
  }
  const where = `Carried over into ${path.relative(io.cwd, target)}:`;
  return { lines: [where, ...lines], problems: [], json: { changed: true, file: target } };
}

/** The lawn's text for the next season, and what was changed in it. */
function carriedOver(
  { asked, linked, today }: DidInput,
  season: Season,
): { readonly text: string; readonly lines: readonly string[] } {
  const document = parseDocument(asked.source.text);
  const display = displayFor(linked);
  const lines: string[] = [];
  for (const { product, kg, l } of season.shelf) {
    const amount: Amount = kg === null ? { by: 'volume', value: (l ?? 0) / 1000 } : { by: 'mass', value: kg };
    const had = linked.lawn.shelf?.stock[product];
    if (!had || Math.abs(had.value - amount.value) <= 0.005 * had.value) continue;
    const words = inWords(amount, display, 'down');
    if (amount.value < 1e-6) document.deleteIn(['shelf', product]);
    else document.setIn(['shelf', product], words);
    lines.push(`  shelf: ${product}: ${amount.value < 1e-6 ? 'used up' : words}`);
  }
  if (lines.length > 0) document.setIn(['shelf', 'counted'], formatDay(today));
  for (const [id, asked] of Object.entries(linked.lawn.steps ?? {})) {
    if (asked === 'skip' || asked.date === undefined || asked.date >= today) continue;
    if (asked.areas) document.deleteIn(['steps', id, 'date']);
    else document.deleteIn(['steps', id]);
    lines.push(`  steps: ${id}: the pin to ${formatDay(asked.date)} has passed`);
  }
  const steps = document.get('steps', true);
  if (isMap(steps) && steps.items.length === 0) document.delete('steps');
  const unchanged = lines.length === 0 || isScalar(document.contents);
  return { text: unchanged ? asked.source.text : document.toString({ lineWidth: 0 }), lines };
}
