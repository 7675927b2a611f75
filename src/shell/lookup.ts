import path from 'node:path';
import { isAddress } from '../model/program-ref.ts';
import type { Lookup, Source } from '../read/lookup.ts';
import { readText } from './files.ts';
import { keptProgram } from './share/kept-programs.ts';

/** Reads what a command names: a file, or a program by its address among those that were fetched. */
export function readNamed(ref: string, cwd: string): Source | null | { readonly reason: string } {
  if (!isAddress(ref)) return readText(ref, cwd);
  const kept = keptProgram(ref, cwd);
  return kept && { name: kept.name, text: kept.text.replace(/^\uFEFF/, '') };
}

/**
 * Finds files by the path that stands in another file, relative to that file's folder, and programs by their address, which no
 * network is asked for here.
 */
export const lookupFrom =
  (cwd: string): Lookup =>
  (ref, from) =>
    readNamed(isAddress(ref) ? ref : path.resolve(cwd, path.dirname(from), ref), cwd);
