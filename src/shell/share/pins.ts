import { type Problem, problem } from '../../base/problem.ts';
import type { Lawn } from '../../model/lawn.ts';
import { isAddress, partsOfRef, pinnedRef } from '../../model/program-ref.ts';
import { edited } from '../../read/edit-yaml.ts';
import { readLawn } from '../../read/lawn.ts';
import { NotWritten, readToChange, writeAll } from '../files.ts';
import { zipLookup } from '../zips.ts';

/** A place in a lawn file that names a program by address. */
interface Named {
  readonly path: readonly string[];
  readonly ref: string;
}

/** Where a lawn names programs by address. */
export const namedByAddress = ({ program, areas }: Lawn): readonly Named[] =>
  [
    { path: ['program'], ref: program },
    ...Object.entries(areas).map(([id, area]) => ({ path: ['areas', id, 'program'], ref: area.program ?? '' })),
  ].filter(({ ref }) => isAddress(ref));

/**
 * Writes into a lawn file what its programs by address are pinned to; comments and all else stay.
 *
 * @param pins The SHA-256 of each reference as it stands in the file.
 * @returns Whether the file was changed; a problem for each pin where it could not be.
 */
export function pin(
  file: string,
  lawn: Lawn,
  pins: ReadonlyMap<string, string>,
  cwd: string,
): { readonly changed: boolean; readonly problems: readonly Problem[] } {
  const wanted = namedByAddress(lawn).flatMap(({ path, ref }) => {
    const sha256 = pins.get(ref);
    const { address } = partsOfRef(ref);
    return sha256 === undefined || ref === pinnedRef(address, sha256) ? [] : [{ path, address, sha256 }];
  });
  if (wanted.length === 0) return { changed: false, problems: [] };
  const failed = wanted.map(({ address, sha256 }) => problem('program-unpinned', { file, address, sha256 }, null));
  const source = readToChange(file, cwd);
  if (source === null || 'reason' in source) return { changed: false, problems: failed };
  const edits = wanted.map(({ path, ...one }) => ({ path, to: asYaml(one) }));
  const text = edited(source.text, edits);
  const after = readLawn(text.replace(/^\uFEFF/, ''), source.name, zipLookup).value;
  if (!after || withPins(after, new Map()) !== withPins(lawn, pins)) return { changed: false, problems: failed };
  try {
    writeAll([{ file, text }]);
  } catch (error) {
    if (!(error instanceof NotWritten)) throw error;
    return { changed: false, problems: failed };
  }
  return { changed: true, problems: [] };
}

/** A SHA-256 may look like a number, so it stands in quotes. */
const asYaml = ({ address, sha256 }: { readonly address: string; readonly sha256: string }): string =>
  `{ from: ${/^[\w:/.~%=&+-]+$/.test(address) ? address : JSON.stringify(address)}, sha256: "${sha256}" }`;

/** All that a lawn says, its references pinned to these. */
function withPins(lawn: Lawn, pins: ReadonlyMap<string, string>): string {
  const pinned = (ref: string): string => {
    const sha256 = pins.get(ref);
    return sha256 === undefined ? ref : pinnedRef(partsOfRef(ref).address, sha256);
  };
  const areas = Object.entries(lawn.areas).map(([id, area]) => [
    id,
    area.program === undefined ? area : { ...area, program: pinned(area.program) },
  ]);
  return JSON.stringify({ ...lawn, program: pinned(lawn.program), areas });
}
