import { problem } from '../../base/problem.ts';
import { filesForPlace, filesOfEnded, type MadePlace, type PlaceJob, type PlacesInput } from '../../places.ts';
import { placeStateFrom, stateText } from './state.ts';

/** A place to be made: one of the publication, or one that has ended. */
export type SiteJob = (
  | { readonly kind: 'place'; readonly job: PlaceJob }
  | { readonly kind: 'ended'; readonly job: Pick<PlaceJob, 'id' | 'name'> }
) & {
  /** What is kept of it, as text. */
  readonly state: string | null;
};

/** What came of it: files to write, and what is kept, as text; null for nothing new. */
export interface SiteResult extends Pick<MadePlace, 'files' | 'problems'> {
  readonly state: string | null;
}

/** Makes one place, wherever it runs. */
export function runJob(one: SiteJob, input: PlacesInput): SiteResult {
  const before = placeStateFrom(one.state);
  if (before !== null && 'reason' in before)
    return { files: [], state: null, problems: [problem('site-ledger-damaged', { reason: before.reason }, null)] };
  const made =
    one.kind === 'place'
      ? filesForPlace(one.job, input, before)
      : before === null
        ? { files: [], state: null, problems: [] }
        : filesOfEnded(one.job, input, before);
  return { files: made.files, state: made.state && stateText(made.state), problems: made.problems };
}
