import { inWords } from '../../amounts/amount.ts';
import { netArea } from '../../amounts/area.ts';
import { inMeasure } from '../../amounts/in-measure.ts';
import { formatDay } from '../../base/day.ts';
import { type Problem, problem } from '../../base/problem.ts';
import { entriesInForce } from '../../model/corrections.ts';
import type { Rate } from '../../model/fields.ts';
import type { JournalEntry } from '../../model/journal.ts';
import { isPesticide, type Product } from '../../model/product.ts';
import type { Season } from '../../model/season.ts';
import { workOf } from '../../schedule/shelf.ts';
import { type DidInput, displayFor } from './input.ts';

/** What scales and rounding may add to a label's rate without being more than it. */
const HAIR = 1.001;

/** What goes over the label of a pesticide: in one application, in the season. It is said, never hidden. */
export function labelProblems(
  input: DidInput,
  entry: JournalEntry,
  areas: readonly string[],
  season: Season,
): Problem[] {
  const [work] = workOf([entry], season.applications, input.linked.products);
  const product = work && input.linked.products.get(work.product);
  if (!product || !isPesticide(product)) return [];
  if (!product.label) return [problem('did-label-unknown', { product: product.id }, null)];
  const most = product.label.perApplication ?? product.label.rate;
  const used = measuredAs(most, product, work.amount);
  if (work.amount && used === null) return [problem('did-label-measure', { product: product.id }, null)];
  const m2 = sizeOf(input, areas);
  const over = m2 > 0 && used !== null && used > most.value * m2 * HAIR;
  const args = { product: product.name ?? product.id, area: areas.join(', ') };
  const inAll = (value: number, rounding: 'nearest' | 'down') =>
    inWords({ by: most.by, value }, displayFor(input.linked), rounding);
  return [
    ...(over && used !== null
      ? [
          problem(
            'did-over-label',
            { ...args, used: inAll(used, 'nearest'), label: inAll(most.value * m2, 'down') },
            null,
          ),
        ]
      : []),
    ...yearProblems(input, entry, product, areas, season),
  ];
}

/** Areas that have had more in the season than the label allows in a year. */
function yearProblems(
  input: DidInput,
  entry: JournalEntry,
  product: Product,
  areas: readonly string[],
  season: Season,
): Problem[] {
  const most = product.label?.perYear;
  if (!most) return [];
  const { linked } = input;
  const { start, end } = season.season;
  const inSeason = entriesInForce([...linked.journal, entry]).filter(
    ({ date }) => formatDay(date) >= start && formatDay(date) <= end,
  );
  const display = displayFor(linked);
  const rate = (value: number) => (most.by === 'mass' ? display.massRate(value) : display.volumeRate(value));
  return areas.flatMap((area) => {
    const had = inSeason.reduce((sum, one) => {
      const own = season.applications.find(({ id }) => id === one.step)?.areas.map(({ id }) => id);
      const covered = one.areas ?? own ?? Object.keys(linked.lawn.areas);
      const [work] = workOf([one], season.applications, linked.products);
      if (!covered.includes(area) || work?.product !== product.id) return sum;
      return sum + (measuredAs(most, product, work.amount) ?? 0) / sizeOf(input, covered);
    }, 0);
    if (had <= most.value * HAIR) return [];
    const args = { product: product.name ?? product.id, area, used: rate(had), label: rate(most.value) };
    return [problem('did-over-label-year', args, null)];
  });
}

const sizeOf = ({ linked }: DidInput, areas: readonly string[]): number =>
  areas.reduce((sum, id) => sum + (linked.lawn.areas[id] ? netArea(linked.lawn.areas[id]) : 0), 0);

const measuredAs = ({ by }: Rate, product: Product, amount: Parameters<typeof inMeasure>[0] | null): number | null =>
  amount && inMeasure(amount, by, product);
