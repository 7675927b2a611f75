import path from 'node:path';
import * as v from 'valibot';
import { type Day, parseDay } from '../../base/day.ts';
import { hasErrors, inOrder, type Problem, problem } from '../../base/problem.ts';
import { dayAt, formatInstant } from '../../base/zone.ts';
import { type LinkedPublication, linkPublication } from '../../link-places.ts';
import { baseUrl as baseUrlSchema, type Publication } from '../../model/publication.ts';
import type { PlacesInput } from '../../places.ts';
import { type ReadPublication, readPublication } from '../../read/publication.ts';
import { NotWritten, readText } from '../files.ts';
import type { Io } from '../io.ts';
import { withLock } from '../lock.ts';
import { lookupFrom } from '../lookup.ts';
import { EXIT, exitCode, failing, printProblems, tellProblems } from '../report-problems.ts';
import { asOfProblem } from '../which-lawn.ts';
import { zipLookup } from '../zips.ts';
import { lawnPages } from './lawns.ts';
import { jsonReport, siteReport } from './report.ts';
import { type SiteInput, type SiteWritten, writeSite } from './site.ts';
import { besideOf } from './state.ts';
import { WorkerFailed } from './workers.ts';

export interface PublishOptions {
  readonly out?: string;
  readonly baseUrl?: string;
  readonly asOf?: string;
  readonly dryRun?: boolean;
  readonly json?: boolean;
  readonly strict?: boolean;
  /** How many threads make the places; for tests and benches alone. */
  readonly workers?: number;
}

/**
 * Publishes a publication as a site of static files. What is wrong with one place, row or lawn is told, the others go on, and what
 * was published of it stays.
 */
export function publishCommand(file: string, options: PublishOptions, io: Io): number {
  const fail = failing(options, io);
  const unfit = [
    ...(options.asOf === undefined ? [] : asOfProblem(options.asOf)),
    ...(options.baseUrl === undefined ? [] : baseUrlProblem(options.baseUrl)),
  ];
  if (unfit.length > 0) return fail(unfit);
  const source = readText(file, io.cwd);
  if (source === null) return fail([problem('file-missing', { ref: file }, null)]);
  if ('reason' in source) return fail([problem('file-unreadable', { ref: file, reason: source.reason }, null)]);

  const lookup = lookupFrom(io.cwd);
  const read = readPublication(source.text, source.name, lookup, zipLookup);
  if (!read.value) return fail(read.problems);
  const linked = linkPublication(read, lookup);
  const known = [...read.problems, ...linked.problems];
  if (linked.jobs.length + read.lawns.length === 0) return fail(known);

  const input = inputOf(read.value, { read, linked, known }, path.resolve(io.cwd, file), options, io);
  const done = written(input, io);
  if ('code' in done) return fail([done]);
  const problems = inOrder([...known, ...done.problems]);
  const told = { ...done, problems };
  if (options.json) {
    io.stdout(jsonReport(input, told));
    printProblems(problems, io);
  } else {
    io.stdout(siteReport(input, told, io));
    if (problems.length > 0) io.stderr('\n');
    tellProblems(problems, false, io);
  }
  // What could be published was; a file that one row names is no unreadable input of the command.
  return exitCode(problems, options.strict ?? false) === EXIT.fine ? EXIT.fine : EXIT.problem;
}

/** Writes the site under the lock of its ledger; where nothing is written, without one. */
function written(input: SiteInput, io: Io): SiteWritten | Problem {
  try {
    if (input.dryRun) return writeSite(input, () => {}, io);
    const done = withLock(input.beside.ledgerFile, (stillHeld) => writeSite(input, stillHeld, io));
    if (done instanceof NotWritten) return problem('write-failed', { file: done.file, reason: done.message }, null);
    return 'written' in done ? done : (done.problems[0] as Problem);
  } catch (error) {
    if (error instanceof WorkerFailed) return problem('site-worker', { reason: error.message }, null);
    throw error;
  }
}

interface Known {
  readonly read: ReadPublication;
  readonly linked: LinkedPublication;
  readonly known: readonly Problem[];
}

function inputOf(
  publication: Publication,
  { read, linked, known }: Known,
  file: string,
  options: PublishOptions,
  io: Io,
): SiteInput {
  const { id, name, about = null, baseUrl = null, display = {}, embed = false, changelog = [] } = publication;
  const asOf = (options.asOf === undefined ? dayAt(io.now(), 'UTC') : parseDay(options.asOf)) as Day;
  const revisedAt = options.asOf === undefined ? formatInstant(io.now()) : `${options.asOf}T00:00:00Z`;
  const base = options.baseUrl === undefined ? baseUrl : v.parse(baseUrlSchema, options.baseUrl);
  const places: PlacesInput = {
    publication: { id, name, baseUrl: base, embed, changelog, display },
    programs: linked.programs,
    stations: linked.stations,
    asOf,
    revisedAt,
  };
  const beside = besideOf(file);
  const out = path.resolve(io.cwd, options.out ?? 'out/site');
  const isWhole = !hasErrors(known);
  const dryRun = options.dryRun ?? false;
  const shared: Parameters<typeof lawnPages>[0]['shared'] = (position) => {
    const { readings, station } = linked.near(position);
    return { readings, station: station === null ? null : (linked.stations[station] ?? null) };
  };
  const lawns = { lawns: read.lawns, places, shared, asOf: options.asOf, feeds: beside.lawns, out, dryRun, isWhole };
  return {
    linked,
    places,
    about,
    isWhole,
    beside,
    out,
    dryRun,
    workers: options.workers,
    lawns: (given, stillHeld) => lawnPages(lawns, given, stillHeld, io),
  };
}

const baseUrlProblem = (found: string): Problem[] =>
  v.is(baseUrlSchema, found)
    ? []
    : [problem('site-base-url', { found, expected: 'one such as https://lawns.example/, without "?" and "#"' }, null)];
