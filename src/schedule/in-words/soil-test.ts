import { formatDay } from '../../base/day.ts';
import { type Display, displayOf } from '../../base/display.ts';
import { wordsOf } from '../../words/words.ts';
import type { TestedArea } from '../soil-test/tested.ts';

/**
 * What the test asks for, what it has had, and what is left for later.
 *
 * @param next The first day of the next part.
 */
export function testedInWords(
  areas: readonly string[],
  one: TestedArea,
  next: number | null,
  display: Display,
): string {
  const words = wordsOf(display.language).soilTest;
  const { what, by, asked, done, others, left, acidity } = one;
  const where = areas.join(', ');
  if (one.test === null) return words.none(where);
  const test = formatDay(one.test);
  if (by === 'enough') return words.enough(where, test, what);
  if (asked === null) {
    const [least, most, goals] = TABLE;
    const print = display.number;
    const table = acidity === null ? '' : words.table(print(least), print(most), goals.map(print));
    return words.noAmount(where, test, what, toAdd(what, display)) + table;
  }
  const rate = (grams: number) => display.massRate(grams / 1000);
  const parts = [
    words.asks(where, test, rate(asked), what, by === 'table' && acidity !== null ? display.number(acidity) : null),
    ...(done > 0 ? [words.done(rate(done))] : []),
    ...(others > 0 ? [words.others(rate(others))] : []),
    ...(left > 0 ? [words.left(rate(left), next === null ? null : formatDay(next))] : []),
  ];
  return `${parts.join('; ')}.`;
}

/** Where the table of acidity begins and ends [meq/100 g], and the pH that it leads to. */
const TABLE = ['2.0', '25.7', ['6.0', '6.5', '7.0']] as const;

/** The keys that a test of the lawn file wants, as they are written there, whatever the language. */
function toAdd(what: TestedArea['what'], display: Display): string {
  const words = wordsOf(display.language).soilTest;
  const { massRate } = displayOf(display.system, 'en');
  if (what !== 'lime') return words.add(`${what}: ${massRate(0.005)}`, null);
  return words.add(`lime: ${massRate(0.2)}`, words.and('acidity: 7.1', 'goal: 6.5'));
}
