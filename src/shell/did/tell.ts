import { inWords } from '../../amounts/amount.ts';
import { applicationFor } from '../../model/applied.ts';
import type { Amount } from '../../model/fields.ts';
import type { JournalEntry } from '../../model/journal.ts';
import { limitInWords } from '../../model/limit.ts';
import type { Season } from '../../model/season.ts';
import { type DidInput, displayFor } from './input.ts';
import type { AgainstPlan, Meaning } from './meaning.ts';
import { nextSettingInWords } from './next-setting.ts';

/** What an entry means, line by line. */
export function meaningInWords(input: DidInput, entry: JournalEntry, meaning: Meaning, season: Season): string[] {
  const application = applicationFor(entry, season.applications);
  const display = displayFor(input.linked);
  const { against, areasOpen, areasHalfDone, limits, shelf, next } = meaning;
  return [
    ...(entry.used ? againstInWords(input, entry.used, against) : []),
    ...(application && areasOpen ? stillToDo(application.name, areasOpen, areasHalfDone ?? []) : []),
    ...limits.map((limit) => {
      const { done, limit: most } = limitInWords(limit, display);
      return `${limit.area}: ${done} of ${most} done (${limit.name}).`;
    }),
    ...(shelf ? [`Left on the shelf: ${inWords(amountOf(shelf), display)} of ${nameOf(input, shelf.product)}.`] : []),
    ...(next ? nextSettingInWords(next, entry, display) : []),
  ];
}

function stillToDo(name: string, open: readonly string[], halfDone: readonly string[]): string[] {
  if (open.length === 0) return [`"${name}" is done.`];
  const whole = open.filter((area) => !halfDone.includes(area));
  const second = halfDone.length > 0 ? [`the second pass on ${halfDone.join(', ')}`] : [];
  return [`Still to do: ${[...whole, ...second].join(', ')}.`];
}

const amountOf = ({ kg, l }: { readonly kg: number | null; readonly l: number | null }): Amount =>
  kg === null ? { by: 'volume', value: (l ?? 0) / 1000 } : { by: 'mass', value: kg };

const nameOf = ({ linked }: DidInput, product: string): string => linked.products.get(product)?.name ?? product;

function againstInWords(input: DidInput, used: Amount, against: readonly AgainstPlan[]): string[] {
  const planned = against.reduce(
    (sum, { plannedKg, plannedL }) => sum + (used.by === 'mass' ? (plannedKg ?? 0) : (plannedL ?? 0) / 1000),
    0,
  );
  if (!(planned > 0)) return [];
  const display = displayFor(input.linked);
  const percent = Math.round(100 * (used.value / planned - 1));
  const words =
    percent === 0
      ? 'as planned'
      : `${Math.abs(percent)} % ${percent > 0 ? 'more' : 'less'} than the ${inWords({ by: used.by, value: planned }, display)} planned`;
  return [`${against.map(({ area }) => area).join(', ')}: ${inWords(used, display)} used, ${words}.`];
}
