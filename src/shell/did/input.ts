import type { Day } from '../../base/day.ts';
import { displayOf } from '../../base/display.ts';
import type { Problem } from '../../base/problem.ts';
import { type Compiled, compile } from '../../compile.ts';
import type { Ledger } from '../../model/ledger.ts';
import type { Linked } from '../../read/link.ts';
import { lookupFrom } from '../files.ts';
import type { Io } from '../io.ts';
import { keptWeather } from '../weather/kept-weather.ts';
import type { Asked } from '../which-lawn.ts';
import { zipLookup } from '../zips.ts';
import type { EntryOptions } from './entry-of.ts';

export interface DidOptions extends EntryOptions {
  readonly undo?: boolean;
  readonly entry?: string;
  readonly list?: boolean;
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

/** No instant of a revision: these plans are not published. */
const NEVER = '2000-01-01T00:00:00Z';

/** The plan as the files have it now. */
export const planNow = ({ asked, today, io }: DidInput, ledger: Ledger | null): Compiled =>
  compile({
    lawn: asked.source,
    lookup: lookupFrom(io.cwd),
    zips: zipLookup,
    service: keptWeather({ ...asked, asOf: today }, io),
    asOf: today,
    ledger,
    revisedAt: NEVER,
    detail: 'quiet',
  });
