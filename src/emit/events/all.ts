import { DETAILS, type Detail, type Role } from '../../model/reader.ts';
import type { Application, Season } from '../../model/season.ts';
import { buyingEvents } from './buying.ts';
import type { DraftEvent, EventKind } from './draft.ts';
import { jobEvent } from './job.ts';
import { keepOffEvent } from './keep-off.ts';
import { soilEvent } from './soil.ts';
import { soilCheckEvent } from './soil-check.ts';
import { waterEvent } from './water.ts';
import { windowEvent } from './window.ts';

/** A kind of event: the least detail that carries it, for each who sees it at all; and how it is made. */
interface Kind {
  readonly from: Readonly<Partial<Record<Role, Detail>>>;
  readonly of: (season: Season, role: Role) => readonly DraftEvent[];
}

/** An event of each application that has one. */
const each =
  (event: (season: Season, application: Application, role: Role) => readonly DraftEvent[]): Kind['of'] =>
  (season, role) =>
    season.applications.flatMap((application) => event(season, application, role));

const KINDS: Readonly<Record<Exclude<EventKind, 'ended'>, Kind>> = {
  job: { from: { owner: 'quiet', helper: 'quiet' }, of: each(jobEvent) },
  // A program at a place has no day of anybody's, so its windows say what is to be done.
  window: { from: { owner: 'normal', public: 'quiet' }, of: each(windowEvent) },
  buying: { from: { owner: 'normal' }, of: buyingEvents },
  water: { from: { owner: 'normal', helper: 'normal' }, of: each(waterEvent) },
  'keep-off': { from: { owner: 'normal', helper: 'normal' }, of: each(keepOffEvent) },
  'soil-check': { from: { owner: 'full', helper: 'full', public: 'full' }, of: each(soilCheckEvent) },
  // A feed is never empty, since this stands in every one.
  soil: { from: { owner: 'quiet', helper: 'quiet', public: 'quiet' }, of: soilEvent },
};

/** Whether a feed carries events of a kind for one who may see this much; one that is not known here may be anything. */
export function carries(detail: Detail, role: Role, kind: string): boolean {
  const known = Object.entries(KINDS).find(([name]) => name === kind)?.[1];
  if (known === undefined) return true;
  const least = known.from[role];
  return least !== undefined && DETAILS.indexOf(least) <= DETAILS.indexOf(detail);
}

/** A language that is read makes a revision of its own; English, which was first, leaves hashes as they are. */
const spoken = ({ display: { language } }: Season): readonly string[] => (/^en\b/.test(language) ? [] : [language]);

/** The events of a season for one who may see this much, in the order of their days. */
export const eventsOf = (season: Season, detail: Detail, role: Role = 'owner'): DraftEvent[] =>
  Object.entries(KINDS)
    .flatMap(([kind, { of }]) => (carries(detail, role, kind) ? of(season, role) : []))
    .map((event) => ({ ...event, substance: [...event.substance, ...spoken(season)] }))
    .sort((a, b) => (a.start < b.start ? -1 : a.start > b.start ? 1 : 0));
