import { formatDay } from '../../base/day.ts';
import { type Problem, problem } from '../../base/problem.ts';
import { parseQuantity } from '../../base/quantity.ts';
import { factorOf } from '../../base/units.ts';
import { entriesInForce } from '../../model/corrections.ts';
import type { Season } from '../../model/season.ts';
import { type Edit, edited } from '../../read/edit-yaml.ts';
import { readLawn } from '../../read/lawn.ts';
import { workOf } from '../../schedule/shelf.ts';
import { zipLookup } from '../zips.ts';
import type { DidInput } from './input.ts';

/** A lawn's text for its next season, and what was carried over. */
export interface CarriedOver {
  readonly text: string;
  readonly lines: readonly string[];
  readonly told: {
    readonly shelf: readonly { readonly product: string; readonly from: string; readonly to: string | null }[];
    readonly pinsDropped: readonly string[];
    readonly skipsKept: readonly string[];
    readonly settings: readonly { readonly product: string; readonly setting: number; readonly date: string }[];
  };
}

/** The lawn's text with the shelf as the journal leaves it and without the pins of days that have passed. */
export function carriedOver(
  input: DidInput,
  text: string,
  season: Season,
): CarriedOver | { readonly problems: readonly Problem[] } {
  const { linked, today, asked } = input;
  const written = readLawn(text, asked.source.name, zipLookup).data as {
    readonly shelf?: Readonly<Record<string, string>>;
  };
  const shelf = season.shelf.flatMap(({ product, kg, l }) => {
    const had = linked.lawn.shelf?.stock[product];
    const left = kg ?? (l ?? 0) / 1000;
    if (!had || Math.abs(had.value - left) <= 1e-9 * had.value) return [];
    const from = String(written.shelf?.[product]);
    return [{ product, from, to: left <= 1e-9 * had.value ? null : inUnitOf(from, had.by, left) }];
  });
  const steps = Object.entries(linked.lawn.steps ?? {});
  const passed = steps.flatMap(([id, one]) =>
    one !== 'skip' && one.date !== undefined && one.date < today ? [{ id, date: one.date, areas: one.areas }] : [],
  );
  const skipsKept = steps.flatMap(([id, one]) => (one === 'skip' ? [id] : []));
  const edits: Edit[] = [
    ...(shelf.length > 0 ? [{ path: ['shelf', 'counted'], to: formatDay(today) }] : []),
    ...shelf.map(({ product, to }) => ({ path: ['shelf', product], to })),
    ...passed.map(({ id, areas }) => ({ path: areas ? ['steps', id, 'date'] : ['steps', id], to: null })),
  ];
  const next = edited(text, edits);
  if (!meansTheSame(input, next, shelf.length > 0))
    return { problems: [problem('did-close-text', { found: asked.source.name }, { file: asked.source.name })] };
  const settings = settingsOf(input, season);
  const lines = [
    ...shelf.map(({ product, from, to }) => `  shelf: ${product}: ${from} → ${to ?? 'used up'}`),
    ...passed.map(({ id, date }) => `  steps: ${id}: the pin to ${formatDay(date)} has passed`),
    ...skipsKept.map((id) => `  steps: ${id} stays skipped; take the line out to bring it back`),
    ...settings.map(({ product, setting, date }) => `  journal: ${product} was last set to ${setting} (${date})`),
  ];
  return { text: next, lines, told: { shelf, pinsDropped: passed.map(({ id }) => id), skipsKept, settings } };
}

/** An amount in the unit that the file has it in, to four digits. */
function inUnitOf(written: string, by: 'mass' | 'volume', value: number): string {
  const read = parseQuantity(written, by);
  const unit = 'unit' in read ? read.unit : by === 'mass' ? 'kg' : 'L';
  return `${Number((value / factorOf(unit)).toPrecision(4))} ${unit}`;
}

/** Whether a changed text says of everything but shelf and steps what the lawn's does. */
function meansTheSame({ linked, today, asked }: DidInput, text: string, counted: boolean): boolean {
  const { value } = readLawn(text, asked.source.name, zipLookup);
  if (!value) return false;
  const rest = (lawn: typeof value) => JSON.stringify({ ...lawn, shelf: null, steps: null });
  return rest(value) === rest(linked.lawn) && (!counted || value.shelf?.counted === today);
}

/** The setting that each product was last put down with. */
function settingsOf({ linked }: DidInput, { applications }: Season): CarriedOver['told']['settings'] {
  const settings = new Map<string, { product: string; setting: number; date: string }>();
  for (const entry of [...entriesInForce(linked.journal)].sort((a, b) => a.date - b.date)) {
    const [work] = workOf([entry], applications, linked.products);
    if (work && entry.setting !== undefined)
      settings.set(work.product, { product: work.product, setting: entry.setting, date: formatDay(entry.date) });
  }
  return [...settings.values()];
}
