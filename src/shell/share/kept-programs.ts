import path from 'node:path';
import * as v from 'valibot';
import { contentHash } from '../../base/hash.ts';
import { partsOfRef } from '../../model/program-ref.ts';
import type { Source } from '../../read/lookup.ts';
import { readToChange, writeAll } from '../files.ts';

/**
 * Where fetched programs are kept: under the folder of the command, like everything that can be made anew. What must not get
 * lost is the pin, and that stands in the file that names the program.
 */
const folderOf = (cwd: string): string => path.join(cwd, 'out/cache/programs');
/** A program's text, by what is in it: programs pinned to different states of one address lie beside each other. */
const textFile = (sha256: string, cwd: string): string => path.join(folderOf(cwd), `${sha256}.yaml`);
/** What was last taken over from an address, for whoever names it without a pin. */
const addressFile = (address: string, cwd: string): string =>
  path.join(folderOf(cwd), `${contentHash(address, 24)}.json`);

const AddressSchema = v.object({
  kind: v.literal('program-address'),
  version: v.literal(1),
  address: v.string(),
  sha256: v.pipe(v.string(), v.regex(/^[0-9a-f]{64}$/)),
});

/** A program that was fetched: its address as its name. */
export interface KeptProgram extends Source {
  readonly sha256: string;
}

/** The SHA-256 of a whole text, as `sha256sum` tells it of the file. */
export const wholeHash = (text: string): string => contentHash(text, 64);

/** The kept program of a reference; null where there is none, or where what is kept is no longer what it was. */
export function keptProgram(ref: string, cwd: string): KeptProgram | null {
  const { address, sha256: pinned } = partsOfRef(ref);
  const sha256 = pinned ?? lastTaken(address, cwd);
  if (sha256 === null) return null;
  const source = readToChange(textFile(sha256, cwd), cwd);
  if (source === null || 'reason' in source || wholeHash(source.text) !== sha256) return null;
  return { name: address, text: source.text, sha256 };
}

function lastTaken(address: string, cwd: string): string | null {
  const source = readToChange(addressFile(address, cwd), cwd);
  if (source === null || 'reason' in source) return null;
  try {
    const found = v.parse(AddressSchema, JSON.parse(source.text));
    return found.address === address ? found.sha256 : null;
  } catch {
    return null;
  }
}

/** Keeps a program that was fetched from an address. @throws NotWritten, with nothing changed. */
export function keepProgram({ name: address, text, sha256 }: KeptProgram, cwd: string): void {
  const entry = { kind: 'program-address', version: 1, address, sha256 };
  writeAll([
    { file: textFile(sha256, cwd), text },
    { file: addressFile(address, cwd), text: `${JSON.stringify(entry)}\n` },
  ]);
}
