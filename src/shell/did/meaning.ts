import { inWords } from '../../amounts/amount.ts';
import type { Problem } from '../../base/problem.ts';
import { problem } from '../../base/problem.ts';
import type { SquareMetres } from '../../base/units.ts';
import type { Amount } from '../../model/fields.ts';
import type { JournalEntry } from '../../model/journal.ts';
import { isPesticide } from '../../model/product.ts';
import type { Season } from '../../model/season.ts';
import { ledgerPath, readLedger } from '../ledger-file.ts';
import { type DidInput, displayFor, planNow } from './input.ts';

/** What an entry means: against the plan, the areas still open, the limits, the shelf; and what is over a label. */
export function meaningOf(
  input: DidInput,
  entry: JournalEntry,
): { readonly lines: readonly string[]; readonly problems: readonly Problem[] } {
  const season = seasonAfter(input);
  if (!season) return { lines: [], problems: labelProblems(input, entry, null) };
  return {
    lines: [
      ...againstPlan(input, entry, season),
      ...stillOpen(entry, season),
      ...limitLines(input, season),
      ...shelfLines(input, entry, season),
    ],
    problems: labelProblems(input, entry, season),
  };
}

/** The plan with the entry in it; none where it was not written. */
function seasonAfter(input: DidInput): Season | null {
  if (input.options.dryRun) return null;
  return planNow(input, readLedger(ledgerPath(input.asked.file), input.io.cwd).ledger).season;
}

/** The areas that an entry covers, and their size. */
function covered(
  { linked }: DidInput,
  entry: JournalEntry,
  season: Season | null,
): { readonly ids: readonly string[]; readonly m2: SquareMetres } {
  const sizes = new Map(season?.applications.flatMap(({ areas }) => areas.map(({ id, areaM2 }) => [id, areaM2])));
  const own = season?.applications.find(({ id }) => id === entry.step)?.areas.map(({ id }) => id);
  const ids = entry.areas ?? own ?? Object.keys(linked.lawn.areas);
  return { ids, m2: ids.reduce((sum, id) => sum + (sizes.get(id) ?? 0), 0) };
}

/** What was used beside what the plan had for these areas. */
function againstPlan(input: DidInput, entry: JournalEntry, season: Season): string[] {
  const application = season.applications.find(({ id }) => id === entry.step);
  const { used } = entry;
  if (!application || !used) return [];
  const { ids } = covered(input, entry, season);
  const planned = application.areas.filter(({ id }) => ids.includes(id));
  const sum = planned.reduce(
    (total, { amountKg, amountL }) => total + (used.by === 'mass' ? (amountKg ?? 0) : (amountL ?? 0) / 1000),
    0,
  );
  if (!(sum > 0)) return [];
  const percent = Math.round(100 * (used.value / sum - 1));
  const wanted: Amount = { by: used.by, value: sum };
  const words =
    percent === 0
      ? 'as planned'
      : `${Math.abs(percent)} % ${percent > 0 ? 'more' : 'less'} than the ${inWords(wanted, displayFor(input.linked))} planned`;
  return [`${ids.join(', ')}: ${inWords(used, displayFor(input.linked))} used, ${words}.`];
}

function stillOpen(entry: JournalEntry, season: Season): string[] {
  const application = season.applications.find(({ id }) => id === entry.step);
  if (!application) return [];
  const open = application.areas.map(({ id }) => id).filter((id) => !application.areasDone.includes(id));
  return open.length === 0 ? [`"${application.name}" is done.`] : [`Still to do: ${open.join(', ')}.`];
}

/** Nutrients of the year against their limits, where anything was put down. */
function limitLines({ linked }: DidInput, { limits }: Season): string[] {
  const display = displayFor(linked);
  const rate = (grams: number) => display.massRate(grams / 1000);
  return limits
    .filter(({ doneGPerM2 }) => doneGPerM2 > 0)
    .map(
      ({ name, area, doneGPerM2, limitGPerM2 }) =>
        `${area}: ${rate(doneGPerM2)} of ${rate(limitGPerM2)} done (${name}).`,
    );
}

/** What is left of the product on the shelf. */
function shelfLines({ linked }: DidInput, entry: JournalEntry, season: Season): string[] {
  const id = entry.product ?? season.applications.find((one) => one.id === entry.step)?.areas[0]?.product ?? null;
  const stock = id === null ? undefined : linked.lawn.shelf?.stock[id];
  const left = season.shelf.find(({ product }) => product === id);
  if (!stock || !left) return [];
  const amount: Amount =
    left.kg === null ? { by: 'volume', value: (left.l ?? 0) / 1000 } : { by: 'mass', value: left.kg };
  return [
    `Left on the shelf: ${inWords(amount, displayFor(linked))} of ${linked.products.get(left.product)?.name ?? left.product}.`,
  ];
}

/** More of a pesticide than its label allows is said, never hidden. */
function labelProblems(input: DidInput, entry: JournalEntry, season: Season | null): Problem[] {
  const { linked } = input;
  const id = entry.product ?? season?.applications.find((one) => one.id === entry.step)?.areas[0]?.product;
  const product = id == null ? undefined : linked.products.get(id);
  if (!product || !isPesticide(product) || !entry.used) return [];
  if (!product.label) return [problem('did-label-unknown', { product: product.id }, null)];
  const { ids, m2 } = covered(input, entry, season);
  const most = product.label.perApplication ?? product.label.rate;
  if (most.by !== entry.used.by || !(m2 > 0) || entry.used.value <= most.value * m2 * 1.001) return [];
  const display = displayFor(linked);
  const args = { product: product.name ?? product.id, area: ids.join(', ') };
  const amounts = {
    used: inWords(entry.used, display),
    label: inWords({ by: most.by, value: most.value * m2 }, display, 'down'),
  };
  return [problem('did-over-label', { ...args, ...amounts }, null)];
}
