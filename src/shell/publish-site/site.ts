import { mkdirSync } from 'node:fs';
import path from 'node:path';
import { type Day, formatDay, parseDay } from '../../base/day.ts';
import { hasErrors, type Problem } from '../../base/problem.ts';
import { filesOfPlace } from '../../emit/site/addresses.ts';
import { type IndexEntry, indexPage } from '../../emit/site/index-page.ts';
import type { LinkedPublication } from '../../link-places.ts';
import type { SiteLedger } from '../../model/site.ts';
import type { PlaceJob, PlacesInput } from '../../places.ts';
import { readText, removeLeftParts, type Writing, writeAll } from '../files.ts';
import type { Io } from '../io.ts';
import type { SiteJob, SiteResult } from './job.ts';
import type { LawnPages } from './lawns.ts';
import { progressOf } from './progress.ts';
import { type Beside, ENDED_DAYS, readSiteLedger, removeSiteFile, stateText } from './state.ts';
import { workersFor, workHere, workOnThreads } from './workers.ts';
import { zipPrefixes } from './zip-prefixes.ts';

/** What a site is written from. */
export interface SiteInput {
  readonly linked: LinkedPublication;
  readonly places: PlacesInput;
  readonly about: string | null;
  /** Whether all that the publication names was read; else nothing is taken for removed. */
  readonly isWhole: boolean;
  readonly beside: Beside;
  /** The site's folder. */
  readonly out: string;
  readonly dryRun: boolean;
  /** How many threads make the places; by their number where it is not said. */
  readonly workers?: number | undefined;
  /** Plans the lawns, on the addresses that they were given before. */
  readonly lawns: (given: SiteLedger['lawns'], stillHeld: () => void) => LawnPages;
}

/** What was done to the site; file names from its folder, in order. */
export interface SiteWritten {
  readonly written: readonly string[];
  readonly removed: readonly string[];
  readonly unchanged: number;
  readonly ended: readonly string[];
  readonly lawns: SiteLedger['lawns'];
  readonly problems: readonly Problem[];
}

/**
 * Writes a site: of each place its ledger first, then its files; then the list, then what is not wanted any more goes. The files
 * that there will be are in the site's ledger before the first of them is written, so that a run that ends in between leaves
 * none that a later one does not know.
 */
export function writeSite(input: SiteInput, stillHeld: () => void, io: Io): SiteWritten {
  const { beside, places: plan, out, dryRun } = input;
  const { ledger: before, problems: ofLedger } = readSiteLedger(beside.ledgerFile, io.cwd);
  if (hasErrors(ofLedger)) return { written: [], removed: [], unchanged: 0, ended: [], lawns: {}, problems: ofLedger };
  const writer = new Writer(out, dryRun, stillHeld);
  const problems: Problem[] = [];
  const { jobs, ended, places } = jobsOf(input, before, plan.asOf);

  const lawns = input.lawns(before.lawns, stillHeld);
  problems.push(...lawns.problems);
  const expected = [
    'index.html',
    ...jobs.flatMap((one) => namesOf(one, plan.publication.embed)),
    ...lawns.files.map(({ name }) => name),
  ];
  const ledger: SiteLedger = {
    ...before,
    places,
    lawns: lawns.given,
    files: sorted([...before.files, ...expected]),
  };
  writer.keep([{ file: beside.ledgerFile, text: stateText(ledger) }]);

  const wanted = new Set(['index.html', ...lawns.files.map(({ name }) => name), ...lawns.keptFiles]);
  const progress = progressOf('places', jobs.length, io);
  let done = 0;
  const take = (number: number, { files, state, problems: found }: SiteResult): void => {
    const one = jobs[number] as Job;
    const { id } = one.job;
    problems.push(...placed(found, one));
    if (files.length > 0) writer.place(files, state === null ? [] : [{ file: beside.placeFile(id), text: state }]);
    // What cannot be planned today stays as it was.
    for (const name of files.length > 0 ? files.map((file) => file.name) : namesOf(one, plan.publication.embed))
      wanted.add(name);
    progress(++done);
  };
  const jobAt = (number: number): SiteJob => {
    const { kind, job } = jobs[number] as Job;
    const source = readText(beside.placeFile(job.id), io.cwd);
    return { kind, job, state: source !== null && 'text' in source ? source.text : null } as SiteJob;
  };
  const work = { count: jobs.length, jobAt, take, alive: stillHeld };
  const workers = input.workers ?? workersFor(jobs.length);
  if (workers === 0) workHere(work, plan);
  else workOnThreads(work, plan, workers);

  writer.place(lawns.files, []);
  writer.place([{ name: 'index.html', text: listOf(input) }], []);
  if (!input.isWhole) for (const name of before.files) wanted.add(name);
  const removed = before.files.filter((name) => !wanted.has(name));
  if (!dryRun) for (const name of removed) removeSiteFile(out, name);
  writer.keep([{ file: beside.ledgerFile, text: stateText({ ...ledger, files: sorted([...wanted]) }) }]);
  return {
    written: sorted(writer.written),
    removed,
    unchanged: writer.unchanged,
    ended: ended.map(({ id }) => id),
    lawns: lawns.given,
    problems,
  };
}

type Job =
  | { readonly kind: 'place'; readonly job: LinkedPublication['jobs'][number] }
  | {
      readonly kind: 'ended';
      readonly job: Pick<PlaceJob, 'id' | 'name'>;
    };

/** The places to make, those that have ended within the last weeks, and what the ledger will say of all of them. */
function jobsOf({ linked, isWhole }: SiteInput, before: SiteLedger, asOf: Day) {
  const known = new Set(linked.jobs.map(({ id }) => id));
  const gone = Object.entries(before.places).filter(([id]) => !known.has(id));
  const places: SiteLedger['places'] = Object.fromEntries(
    linked.jobs.map(({ id, name }) => [id, { name, endedOn: null }]),
  );
  const ended: Pick<PlaceJob, 'id' | 'name'>[] = [];
  for (const [id, { name, endedOn }] of gone) {
    if (!isWhole && endedOn === null) {
      places[id] = { name, endedOn };
      continue;
    }
    const on = endedOn ?? formatDay(asOf);
    if (asOf - (parseDay(on) ?? asOf) >= ENDED_DAYS) continue;
    places[id] = { name, endedOn: on };
    ended.push({ id, name });
  }
  const jobs: Job[] = [
    ...linked.jobs.map((job) => ({ kind: 'place' as const, job })),
    ...ended.map((job) => ({ kind: 'ended' as const, job })),
  ];
  return { jobs, ended, places };
}

/** The files that a job will make. */
function namesOf({ kind, job }: Job, hasEmbed: boolean): string[] {
  const { embed, page, feed, ...rest } = filesOfPlace(job.id);
  if (kind === 'ended') return [page, feed];
  return [page, feed, ...Object.values(rest), ...(hasEmbed ? [embed] : [])];
}

/** Problems of a place, at its own place in the publication where they have none of their own. */
const placed = (found: readonly Problem[], one: Job): Problem[] =>
  found.map((of) => (of.file === null && one.kind === 'place' ? { ...of, ...one.job.place } : of));

const sorted = (names: readonly string[]): string[] => [...new Set(names)].sort();

function listOf({ linked, places: { publication, programs }, about }: SiteInput): string {
  const { name, display } = publication;
  const entries: IndexEntry[] = linked.jobs.map((job) => ({
    ...job,
    program: programs[job.program]?.program.name ?? '',
  }));
  const { units = 'us', language = 'en-US' } = display;
  return indexPage(entries, { name, about, language, units, zips: zipPrefixes() });
}

/** Writes files that have changed, and counts. */
class Writer {
  readonly written: string[] = [];
  unchanged = 0;
  private readonly out: string;
  private readonly dryRun: boolean;
  private readonly stillHeld: () => void;

  constructor(out: string, dryRun: boolean, stillHeld: () => void) {
    this.out = out;
    this.dryRun = dryRun;
    this.stillHeld = stillHeld;
  }

  /** What is kept of a place, then its files. */
  place(files: readonly { readonly name: string; readonly text: string }[], kept: readonly Writing[]): void {
    const changed = files.filter(({ name, text }) => isOther(path.join(this.out, name), text));
    this.written.push(...changed.map(({ name }) => name));
    this.unchanged += files.length - changed.length;
    this.keep([...kept, ...changed.map(({ name, text }) => ({ file: path.join(this.out, name), text }))]);
  }

  keep(writings: readonly Writing[]): void {
    const changed = writings.filter(({ file, text }) => isOther(file, text));
    if (this.dryRun || changed.length === 0) return;
    this.stillHeld();
    for (const { file } of changed) {
      mkdirSync(path.dirname(file), { recursive: true });
      removeLeftParts(file);
    }
    writeAll(changed);
  }
}

function isOther(file: string, text: string): boolean {
  const source = readText(file, path.dirname(file));
  return source === null || 'reason' in source || source.text !== text;
}
