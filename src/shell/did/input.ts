import type { Day } from '../../base/day.ts';
import { displayOf } from '../../base/display.ts';
import { hasErrors, type Problem } from '../../base/problem.ts';
import { type Compiled, compile, readAll } from '../../compile.ts';
import { appended, type EntryDraft, entryLine } from '../../emit/journal-entry.ts';
import type { Linked } from '../../read/link.ts';
import type { Lookup } from '../../read/lookup.ts';
import type { Io } from '../io.ts';
import { ledgerToAsk } from '../ledger-file.ts';
import { lookupFrom } from '../lookup.ts';
import { keptWeather } from '../weather/kept-weather.ts';
import type { Asked } from '../which-lawn.ts';
import { zipLookup } from '../zips.ts';
import type { EntryOptions } from './entry-of.ts';

export interface DidOptions extends EntryOptions {
  readonly undo?: boolean;
  readonly entry?: string;
  readonly list?: boolean;
  readonly export?: boolean;
  readonly year?: string;
  readonly out?: string;
  readonly closeSeason?: boolean;
  readonly to?: string;
  readonly dryRun?: boolean;
  readonly json?: boolean;
  readonly strict?: boolean;
}

/** What the parts of the command work with. */
export interface DidInput {
  readonly asked: Asked;
  readonly linked: Linked;
  readonly journalFile: string;
  readonly today: Day;
  readonly options: DidOptions;
  readonly io: Io;
}

/** What a part of the command has done: what to print, and what was wrong with it. */
export interface Done {
  readonly lines: readonly string[];
  readonly problems: readonly Problem[];
  readonly json: Readonly<Record<string, unknown>>;
}

export const failed = (problems: readonly Problem[]): Done => ({ lines: [], problems, json: {} });

export const displayFor = ({ lawn }: Linked) =>
  displayOf(lawn.display?.units ?? 'us', lawn.display?.language ?? 'en-US');

/** A lawn with what it names, its weather too if that can be read: work is written down whatever the weather files are like. */
export function readForWork(asked: Asked, io: Io) {
  const from = { lawn: asked.source, lookup: lookupFrom(io.cwd), zips: zipLookup };
  const whole = readAll(from);
  if (!hasErrors(whole.problems)) return whole;
  const without = readAll({ ...from, weather: [] });
  return hasErrors(without.problems) ? whole : without;
}

/** No instant of a revision: these plans are not published. */
const NEVER = '2000-01-01T00:00:00Z';

/**
 * The plan as the files have it now, without the lawn's weather where that cannot carry one.
 *
 * @param draft An entry that is not written, to plan as if it were.
 */
export function planNow(
  { asked, today, journalFile, io }: DidInput,
  draft: EntryDraft | null = null,
): Pick<Compiled, 'season' | 'problems'> {
  const from = {
    lawn: asked.source,
    lookup: draft === null ? lookupFrom(io.cwd) : lookupWith(draft, journalFile, io),
    zips: zipLookup,
    asOf: today,
    // Work is written down whatever the ledger is like: a plan tells of a damaged one before it publishes.
    ledger: ledgerToAsk(asked, io).ledger,
    revisedAt: NEVER,
    detail: 'quiet' as const,
  };
  const planned = compile({ ...from, service: keptWeather({ ...asked, asOf: today }, io) });
  return planned.season ? planned : compile({ ...from, weather: [] });
}

/** Finds files as they are, and the journal with one entry more. */
function lookupWith(draft: EntryDraft, journalFile: string, io: Io): Lookup {
  const lookup = lookupFrom(io.cwd);
  return (ref, from) => {
    const found = lookup(ref, from);
    if (!journalFile.endsWith(ref) || (found && 'reason' in found)) return found;
    const longer = appended(found?.text ?? '', entryLine(draft));
    return { name: found?.name ?? ref, text: 'text' in longer ? longer.text : (found?.text ?? '') };
  };
}
