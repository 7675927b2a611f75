import path from 'node:path';
import * as v from 'valibot';
import { contentHash } from '../../base/hash.ts';
import { formatInstant, type Instant } from '../../base/zone.ts';
import { readText, writeAll } from '../files.ts';

/** An answer of a service as it was kept. */
export interface Kept {
  readonly url: string;
  readonly fetchedAt: Instant;
  readonly text: string;
}

const KeptSchema = v.object({
  kind: v.literal('weather-answer'),
  version: v.literal(1),
  url: v.string(),
  fetchedAt: v.pipe(v.string(), v.isoTimestamp()),
  text: v.string(),
});

/** The file of a key: its name says nothing about the place, since a cache may be shared. */
const fileOf = (cacheDir: string, key: string): string => path.join(cacheDir, `${contentHash(key, 24)}.json`);

/** What is kept under a key; null where there is nothing, or nothing that can be read. */
export function readKept(cacheDir: string, key: string): Kept | null {
  const source = readText(fileOf(cacheDir, key), '/');
  if (source === null || 'reason' in source) return null;
  try {
    const { url, fetchedAt, text } = v.parse(KeptSchema, JSON.parse(source.text));
    return { url, fetchedAt: Date.parse(fetchedAt), text };
  } catch {
    return null;
  }
}

/** Keeps an answer under a key, whole or not at all. @throws NotWritten, with nothing changed. */
export function keep(cacheDir: string, key: string, { url, fetchedAt, text }: Kept): void {
  const entry = { kind: 'weather-answer', version: 1, url, fetchedAt: formatInstant(fetchedAt), text };
  writeAll([{ file: fileOf(cacheDir, key), text: `${JSON.stringify(entry)}\n` }]);
}
