import type { Season } from '../../model/season.ts';
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

/** Who reads a feed: the one who looks after the lawn, a helper there, anybody. */
export type Reader = 'owner' | 'helper' | 'public';

/** A kind of event: which feeds carry it, and how it is made. */
interface Kind {
  readonly details: readonly Detail[];
  readonly readers: readonly Reader[];
  readonly of: (season: Season) => readonly DraftEvent[];
}

const KINDS: Readonly<Record<EventKind, Kind>> = {
  job: {
    details: ['quiet', 'normal', 'full'],
    readers: ['owner', 'helper', 'public'],
    of: (season) => season.applications.flatMap((application) => jobEvent(season, application)),
  },
  window: {
    details: ['normal', 'full'],
    readers: ['owner', 'public'],
    of: (season) => season.applications.flatMap((application) => windowEvent(season, application)),
  },
  buying: { details: ['normal', 'full'], readers: ['owner'], of: buyingEvents },
  // A helper's jobs say both in their own text.
  water: {
    details: ['normal', 'full'],
    readers: ['owner'],
    of: (season) => season.applications.flatMap((application) => waterEvent(season, application)),
  },
  'keep-off': {
    details: ['normal', 'full'],
    readers: ['owner'],
    of: (season) => season.applications.flatMap((application) => keepOffEvent(season, application)),
  },
  'soil-check': {
    details: ['full'],
    readers: ['owner'],
    of: (season) => season.applications.flatMap((application) => soilCheckEvent(season, application)),
  },
  // A feed is never empty, since this stands in every one.
  soil: { details: ['quiet', 'normal', 'full'], readers: ['owner', 'helper', 'public'], of: soilEvent },
};

/** The events of a season for a reader, in the order of their days. */
export const eventsOf = (season: Season, detail: Detail, reader: Reader): DraftEvent[] =>
  Object.values(KINDS)
    .filter(({ details, readers }) => details.includes(detail) && readers.includes(reader))
    .flatMap(({ of }) => of(season))
    .sort((a, b) => (a.start < b.start ? -1 : a.start > b.start ? 1 : 0));
