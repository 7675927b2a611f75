import type { JournalEntry } from '../../model/journal.ts';
import type { Lawn } from '../../model/lawn.ts';
import type { Dial, Spreaders } from '../../model/spreader.ts';

/** The dial of the spreader of an entry; none where the lawn file does not tell of it. */
export function dialOf({ equipment }: Lawn, { spreader }: JournalEntry): Dial | undefined {
  const known: Spreaders = equipment ?? {};
  return (spreader === undefined ? known.spreader : known.spreaders?.[spreader])?.dial;
}
