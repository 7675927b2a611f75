/** The shelf follows the journal: what was counted, less what the work since has taken. */
import { describe, expect, test } from 'vitest';
import { parseDay } from '../../src/base/day.ts';
import type { Lawn } from '../../src/model/lawn.ts';
import type { Product } from '../../src/model/product.ts';
import type { Application } from '../../src/model/season.ts';
import { readJournal } from '../../src/read/journal.ts';
import { readLawn } from '../../src/read/lawn.ts';
import { onShelf, workOf } from '../../src/schedule/shelf.ts';
import { lawnText } from '../kit.ts';

const feed: Product = { id: 'feed', form: 'granular' };
const liquid: Product = { id: 'liquid', form: 'liquid', density: 1200 };
const thin: Product = { id: 'thin', form: 'liquid' };
const products = new Map([feed, liquid, thin].map((one) => [one.id, one]));
const applications = [
  {
    id: 'spring',
    seasonSpan: { start: '2027-01-01', end: '2027-12-31' },
    areas: [
      { id: 'front', product: 'feed', amountKg: 2, amountL: null },
      { id: 'back', product: 'feed', amountKg: 3, amountL: null },
    ],
  },
] as unknown as readonly Application[];
const left = (product: Product, by: 'mass' | 'volume', entries: string, shelf = 'counted: 2027-03-01, feed: 10 kg') => {
  const lawn = readLawn(lawnText(`shelf: { ${shelf} }\n`), 'lawn.yaml').value as Lawn;
  return onShelf(product, by, lawn, workOf(readJournal(entries, 'j.yaml').value ?? [], applications, products));
};

describe('taken off is', () => {
  test.each([
    ['what was used of the product', '- { date: 2027-04-01, product: feed, used: 4 kg }\n', 6],
    ["what was used of a step's product", '- { date: 2027-04-01, step: spring, used: 4 kg }\n', 6],
    ['what was planned, where nobody says how much', '- { date: 2027-04-01, step: spring }\n', 5],
    ['half of that in a pass', '- { date: 2027-04-01, step: spring, pass: 1 }\n', 7.5],
    ['and only for the areas that were done', '- { date: 2027-04-01, step: spring, areas: [front] }\n', 8],
    ['what was loaded less what was left', '- { date: 2027-04-01, step: spring, loaded: 5 kg, left: 1 kg }\n', 6],
    ['nothing of before the counting', '- { date: 2027-02-01, product: feed, used: 4 kg }\n', 10],
    ['nothing of the day of counting', '- { date: 2027-03-01, product: feed, used: 4 kg }\n', 10],
    ['nothing of a step in another season', '- { date: 2028-04-01, step: spring, used: 4 kg }\n', 10],
    ['nothing of another product', '- { date: 2027-04-01, step: spring, product: thin, used: 4 kg }\n', 10],
    ['no more than is there', '- { date: 2027-04-01, product: feed, used: 40 kg }\n', 0],
  ])('%s', (_, entries, expected) => expect(left(feed, 'mass', entries)).toBeCloseTo(expected, 9));
});

describe('a liquid', () => {
  const used = '- { date: 2027-04-01, product: liquid, used: 1.2 kg }\n';
  test('counted by volume and used by weight goes by its density', () =>
    expect(left(liquid, 'volume', used, 'liquid: 5 L')).toBeCloseTo(0.004, 12));
  test('counted by volume and needed by weight as well', () =>
    expect(left(liquid, 'mass', used, 'liquid: 5 L')).toBeCloseTo(4.8, 9));
  test('without a density cannot be compared', () => expect(left(thin, 'mass', '', 'thin: 5 L')).toBe(0));
});

test('the day of an entry is the day that counts', () =>
  expect(workOf(readJournal('- { date: 2027-04-01, product: feed }\n', 'j.yaml').value ?? [], [], products)).toEqual([
    { date: parseDay('2027-04-01'), product: 'feed', amount: null },
  ]));
