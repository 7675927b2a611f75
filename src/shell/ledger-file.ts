import path from 'node:path';
import * as v from 'valibot';
import { type Problem, problem } from '../base/problem.ts';
import { type Ledger, LedgerSchema } from '../model/ledger.ts';
import { fileBeside } from '../read/link.ts';
import { readText } from './files.ts';

/** The ledger that stands beside a lawn file. */
export const ledgerPath = (lawn: string): string => fileBeside(lawn, 'ledger.json');

/** Reads a ledger; null where there is none yet. A damaged one is an error: publishing over it would confuse every subscriber. */
export function readLedger(
  file: string,
  cwd: string,
): { readonly ledger: Ledger | null; readonly problems: readonly Problem[] } {
  const source = readText(file, cwd);
  if (source === null) return { ledger: null, problems: [] };
  const damaged = (reason: string, name: string) => ({
    ledger: null,
    problems: [problem('ledger-damaged', { reason }, { file: name })],
  });
  if ('reason' in source) return damaged(`${source.reason}.`, path.relative(cwd, file));
  try {
    const result = v.safeParse(LedgerSchema, JSON.parse(source.text));
    return result.success
      ? { ledger: result.output, problems: [] }
      : damaged('its keys are not those of a ledger.', source.name);
  } catch {
    return damaged('it is not JSON.', source.name);
  }
}
