import { randomBytes } from 'node:crypto';
import path from 'node:path';
import { type Day, formatDay, parseDay } from '../../base/day.ts';
import { type Problem, problem } from '../../base/problem.ts';
import type { CompileInput } from '../../compile.ts';
import { endedFeed } from '../../emit/site/ended-feed.ts';
import { ownerPage } from '../../emit/site/owner-page.ts';
import type { SiteLedger } from '../../model/site.ts';
import type { PlacesInput } from '../../places.ts';
import type { NamedLawn } from '../../read/publication.ts';
import { readText } from '../files.ts';
import type { Io } from '../io.ts';
import { lookupFrom } from '../lookup.ts';
import { planLawn } from '../plan-lawn.ts';
import { asOfDay } from '../which-lawn.ts';
import { ENDED_DAYS } from './state.ts';

type Given = SiteLedger['lawns'];

/** The pages of owners' lawns, and the addresses that they stand at. */
export interface LawnPages {
  readonly files: readonly { readonly name: string; readonly text: string }[];
  /** Files of lawns that could not be planned today, which stay. */
  readonly keptFiles: readonly string[];
  readonly given: Given;
  readonly problems: readonly Problem[];
}

/** What lawns are planned with. */
export interface LawnsInput {
  readonly lawns: readonly NamedLawn[];
  readonly places: Pick<PlacesInput, 'publication' | 'asOf' | 'revisedAt'>;
  readonly shared: CompileInput['shared'];
  /** The as-of day as it was given; each lawn's own today where it was not. */
  readonly asOf: string | undefined;
  /** The folder of all their feeds, beside the publication and not in the site. */
  readonly feeds: string;
  readonly out: string;
  readonly dryRun: boolean;
  readonly isWhole: boolean;
}

/** What stands at the address of an owner or a reader: no name of a lawn is in it. */
const folderOf = (token: string) => `l/${token}`;
const feedOf = (token: string) => `${folderOf(token)}/calendar.ics`;
const pageOf = (token: string) => `${folderOf(token)}/index.html`;

/**
 * Plans each lawn as by its own file, its ledger with it, and puts what its owner and each of its readers may see where nobody
 * else finds it. An address that was given stays. Of a lawn that the publication no longer names the calendars end.
 */
export function lawnPages(input: LawnsInput, before: Given, stillHeld: () => void, io: Io): LawnPages {
  const made = new Made();
  const given: Given = {};
  for (const lawn of input.lawns) {
    stillHeld();
    addLawn(lawn, input, before, { made, given }, io);
  }
  for (const [id, tokens] of Object.entries(before))
    if (given[id] === undefined) keepOrEnd([id, tokens], input, { made, given });
  return { ...made, given };
}

/** What is gathered on the way. */
class Made {
  readonly files: { readonly name: string; readonly text: string }[] = [];
  readonly keptFiles: string[] = [];
  readonly problems: Problem[] = [];

  /** Leaves what stands at these addresses. */
  stay(tokens: Given[string]): void {
    for (const token of [tokens.owner, ...Object.values(tokens.readers)])
      this.keptFiles.push(feedOf(token), pageOf(token));
  }
}

interface Gathered {
  readonly made: Made;
  readonly given: Given;
}

function addLawn(
  { ref, from, place }: NamedLawn,
  { places, shared, asOf, feeds, dryRun }: LawnsInput,
  before: Given,
  { made, given }: Gathered,
  io: Io,
): void {
  const source = lookupFrom(io.cwd)(ref, from);
  if (source === null || 'reason' in source) {
    const reason = source?.reason;
    made.problems.push(
      reason === undefined
        ? problem('file-missing', { ref }, place)
        : problem('file-unreadable', { ref, reason }, place),
    );
    return;
  }
  const file = path.resolve(io.cwd, source.name);
  const asked = asOfDay({ file, source, step: undefined, isDemo: false }, asOf, io);
  const planned =
    'problems' in asked
      ? { made: null, problems: asked.problems }
      : planLawn(asked, { ...(asOf !== undefined && { asOf }), out: feeds, detail: 'normal', dryRun }, io, { shared });
  made.problems.push(
    ...planned.problems
      .filter(({ severity }) => severity !== 'note')
      .map((one) => (one.file === null ? { ...one, file: source.name } : one)),
  );
  const season = planned.made?.season;
  if (!planned.made || !season) {
    made.problems.push(problem('site-left-out', { what: `"${ref}"` }, place));
    return;
  }
  const { lawn: id } = season;
  if (given[id] !== undefined) {
    made.problems.push(problem('site-same-id', { id, before: 'another lawn' }, place));
    return;
  }
  const tokens = before[id] ?? { owner: newToken(), readers: {}, endedOn: null };
  const readers = Object.fromEntries(
    planned.made.readers.map((reader) => [reader.id, tokens.readers[reader.id] ?? newToken()]),
  );
  given[id] = { owner: tokens.owner, readers, endedOn: null };
  const { baseUrl } = places.publication;
  // Where a plan writes a sheet beside the feed, the sheet is the owner's page.
  const sheet = dryRun ? null : readText(path.join(feeds, `${id}.html`), io.cwd);
  const page = sheet !== null && 'text' in sheet ? sheet.text : ownerPage(season, feedOf(tokens.owner), baseUrl);
  made.files.push(
    { name: feedOf(tokens.owner), text: planned.made.feed ?? '' },
    { name: pageOf(tokens.owner), text: page },
  );
  for (const reader of planned.made.readers)
    made.files.push({ name: feedOf(readers[reader.id] as string), text: reader.text });
}

/** A lawn that has no page today: where something could not be read it stays, else its calendars end within the month. */
function keepOrEnd(
  [id, tokens]: readonly [string, Given[string]],
  { places, out, isWhole }: LawnsInput,
  { made, given }: Gathered,
): void {
  const couldNot = made.problems.some(({ severity }) => severity === 'error');
  if (tokens.endedOn === null && (!isWhole || couldNot)) {
    given[id] = tokens;
    made.stay(tokens);
    return;
  }
  const endedOn = tokens.endedOn ?? formatDay(places.asOf);
  if (places.asOf - (parseDay(endedOn) as Day) >= ENDED_DAYS) return;
  given[id] = { ...tokens, endedOn };
  for (const token of [tokens.owner, ...Object.values(tokens.readers)]) {
    const source = readText(path.join(out, feedOf(token)), out);
    const text = source !== null && 'text' in source ? endedFeed(source.text, token, places) : null;
    if (text !== null) made.files.push({ name: feedOf(token), text });
  }
}

const newToken = (): string => randomBytes(16).toString('hex');
