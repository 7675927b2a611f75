import { readdirSync, rmSync } from 'node:fs';
import path from 'node:path';
import * as v from 'valibot';
import { type Problem, problem } from '../../base/problem.ts';
import { DigestSchema } from '../../emit/changes/digest.ts';
import { LedgerSchema } from '../../model/ledger.ts';
import { emptySiteLedger, type SiteLedger, SiteLedgerSchema } from '../../model/site.ts';
import type { PlaceState } from '../../places.ts';
import { fileBeside } from '../../read/link.ts';
import { readText } from '../files.ts';

/** A calendar that has ended stays so long, as a cancelled event does [d]. */
export const ENDED_DAYS = 30;

/** What stands beside a publication: the site's ledger, and a folder with a file a place and a folder of its lawns' feeds. */
export interface Beside {
  readonly ledgerFile: string;
  readonly placeFile: (id: string) => string;
  readonly lawns: string;
}

/** @param file The publication's, absolute. */
export function besideOf(file: string): Beside {
  const folder = fileBeside(file, 'ledger');
  return {
    ledgerFile: fileBeside(file, 'ledger.json'),
    placeFile: (id) => path.join(folder, `${id}.json`),
    lawns: path.join(folder, 'lawns'),
  };
}

/** Reads the site's ledger; a damaged one is an error, since addresses that were given to owners stand in it. */
export function readSiteLedger(
  file: string,
  cwd: string,
): { readonly ledger: SiteLedger; readonly problems: readonly Problem[] } {
  const source = readText(file, cwd);
  if (source === null) return { ledger: emptySiteLedger, problems: [] };
  const damaged = (reason: string) => ({
    ledger: emptySiteLedger,
    problems: [problem('site-ledger-damaged', { reason }, { file: path.relative(cwd, file) })],
  });
  if ('reason' in source) return damaged(`${source.reason}.`);
  const result = v.safeParse(SiteLedgerSchema, jsonOf(source.text));
  return result.success
    ? { ledger: result.output, problems: [] }
    : damaged('it is not JSON, or its keys are not those of such a ledger.');
}

const PlaceStateSchema = v.object({
  kind: v.literal('place-ledger'),
  version: v.literal(1),
  ledger: LedgerSchema,
  changes: v.nullable(DigestSchema),
});

/**
 * What is kept of a place, from its text; null where there is none, and a reason where it cannot be read: published over,
 * every subscriber would be confused.
 */
export function placeStateFrom(text: string | null): PlaceState | null | { readonly reason: string } {
  if (text === null) return null;
  const result = v.safeParse(PlaceStateSchema, jsonOf(text));
  return result.success ? result.output : { reason: 'it is not JSON, or its keys are not those of such a ledger.' };
}

export const stateText = (state: PlaceState | SiteLedger): string => `${JSON.stringify(state, null, 1)}\n`;

function jsonOf(text: string): unknown {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}

/** Takes away a file of the site, and its folder where nothing else is in it. */
export function removeSiteFile(out: string, name: string): void {
  const file = path.join(out, name);
  rmSync(file, { force: true });
  for (let folder = path.dirname(file); folder.length > out.length; folder = path.dirname(folder)) {
    try {
      if (readdirSync(folder).length > 0) return;
      rmSync(folder, { recursive: true });
    } catch {
      // It has gone, or others hold it: nothing of ours is in it.
      return;
    }
  }
}
