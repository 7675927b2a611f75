import { type Place, type Problem, problem } from '../base/problem.ts';
import { isAddress, partsOfRef } from '../model/program-ref.ts';

/** A file that another one names: its name for problems and its text. */
export interface Source {
  readonly name: string;
  readonly text: string;
}

/**
 * Finds a file by the path that stands in another file, or a program by its address among those that were fetched.
 *
 * @returns The file; null where there is none; a reason where it cannot be read.
 */
export type Lookup = (ref: string, from: string) => Source | null | { readonly reason: string };

/** The problem of what a lookup did not find. */
export const unfound = (ref: string, found: null | { readonly reason: string }, place: Place | null): Problem => {
  if (found) return problem('file-unreadable', { ref, reason: found.reason }, place);
  return isAddress(ref)
    ? problem('program-not-fetched', partsOfRef(ref), place)
    : problem('file-missing', { ref }, place);
};

/** A note on an address that is not pinned, since another text may stand there when it is fetched the next time. */
export function unpinned(ref: string, place: Place): Problem[] {
  const { address, sha256 } = partsOfRef(ref);
  return isAddress(ref) && sha256 === null ? [problem('program-not-pinned', { address }, place)] : [];
}
