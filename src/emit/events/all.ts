import type { Application, Season } from '../../model/season.ts';
import { buyingEvents } from './buying.ts';
import type { DraftEvent, EventKind } from './draft.ts';
import { jobEvent } from './job.ts';
import { keepOffEvent } from './keep-off.ts';
import { soilEvent } from './soil.ts';
import { soilCheckEvent } from './soil-check.ts';
import { waterEvent } from './water.ts';
import { windowEvent } from './window.ts';

/** How much a feed carries: jobs alone; windows, buying, watering in and keep-off too; soil checks as well. */
export type Detail = 'quiet' | 'normal' | 'full';

const DETAILS: readonly Detail[] = ['quiet', 'normal', 'full'];

/** A kind of event: the least detail that carries it, and how it is made. */
interface Kind {
  readonly from: Detail;
  readonly of: (season: Season) => readonly DraftEvent[];
}

/** An event of each application that has one. */
const each = (event: (season: Season, application: Application) => readonly DraftEvent[]) => (season: Season) =>
  season.applications.flatMap((application) => event(season, application));

const KINDS: Readonly<Record<EventKind, Kind>> = {
  job: { from: 'quiet', of: each(jobEvent) },
  window: { from: 'normal', of: each(windowEvent) },
  buying: { from: 'normal', of: buyingEvents },
  water: { from: 'normal', of: each(waterEvent) },
  'keep-off': { from: 'normal', of: each(keepOffEvent) },
  'soil-check': { from: 'full', of: each(soilCheckEvent) },
  // A feed is never empty, since this stands in every one.
  soil: { from: 'quiet', of: soilEvent },
};

/** Whether a feed carries events of a kind; one that is not known here may be anything. */
export const carries = (detail: Detail, kind: string): boolean => {
  const from = Object.entries(KINDS).find(([name]) => name === kind)?.[1].from ?? 'quiet';
  return DETAILS.indexOf(from) <= DETAILS.indexOf(detail);
};

/** The events of a season, in the order of their days. */
export const eventsOf = (season: Season, detail: Detail): DraftEvent[] =>
  Object.entries(KINDS)
    .flatMap(([kind, { of }]) => (carries(detail, kind) ? of(season) : []))
    .sort((a, b) => (a.start < b.start ? -1 : a.start > b.start ? 1 : 0));
