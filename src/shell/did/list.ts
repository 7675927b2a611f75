import { inWords } from '../../amounts/amount.ts';
import { formatDay } from '../../base/day.ts';
import type { Display } from '../../base/display.ts';
import { entriesInForce, nameOf } from '../../model/corrections.ts';
import { entryData } from '../../model/entry-data.ts';
import type { Amount } from '../../model/fields.ts';
import type { Journal } from '../../model/journal.ts';

/** The entries in force, a line each: day, what, where, how much, and the name to take it back by. */
export function listOf(journal: Journal, display: Display): string[] {
  const lines = [...entriesInForce(journal)]
    .sort((a, b) => a.date - b.date)
    .map((entry) => {
      const { date, step, work, product, areas, used, setting, note } = entry;
      const what = [
        step ?? work ?? product,
        areas?.join(', '),
        used && inWords(used, display),
        product !== undefined && (step ?? work) !== undefined ? product : undefined,
      ];
      const more = [setting === undefined ? undefined : `setting ${setting}`, note];
      const named = entry.id === undefined ? '' : `  [${nameOf(entry)}]`;
      return `${formatDay(date)}  ${[...what, ...more].filter((part) => part !== undefined).join('; ')}${named}`;
    });
  return lines.length > 0 ? lines : ['Nothing is written in the journal yet.'];
}

const amountOf = (key: string, amount: Amount | undefined) => ({
  [`${key}Kg`]: amount?.by === 'mass' ? amount.value : null,
  [`${key}L`]: amount?.by === 'volume' ? amount.value * 1000 : null,
});

/** The entries in force as plain data, by day: a unit in its key, absent is null. */
export function entriesAsData(journal: Journal): readonly Readonly<Record<string, unknown>>[] {
  return [...entriesInForce(journal)]
    .sort((a, b) => a.date - b.date)
    .map((entry) => ({
      ...entryData(entry),
      name: nameOf(entry),
      id: entry.id ?? null,
      work: entry.work ?? null,
      areas: entry.areas ?? null,
      product: entry.product ?? null,
      registration: entry.registration ?? null,
      ...amountOf('loaded', entry.loaded),
      ...amountOf('used', entry.used),
      ...amountOf('left', entry.left),
      sprayer: entry.sprayer ?? null,
      outputLPerM2: entry.output === undefined ? null : entry.output * 1000,
      reEntry: entry.reEntry ?? null,
    }));
}
