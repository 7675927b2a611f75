/** What the shelf has left decides on a product, not what was once counted there. */
import { expect, test } from 'vitest';
import { application, feed, plan } from './plan-kit.ts';

/** A lawn of 1000 ft²; half a pound of nitrogen is 1.09 lb of urea or 5 lb of the feed on the shelf, which comes second in the list. */
const LAWN = `products:
  - { id: urea, form: granular, analysis: 46-0-0 }
  - { id: stock, form: granular, analysis: 10-0-0 }
shelf: { counted: 2027-03-01, stock: 5 lb }
`;
const spring = feed('spring', '04-10', '04-30');
const autumn = feed('autumn', '09-01', '09-30');

/** The product of a step, and whether it is taken since it is on the shelf. */
async function taken(id: string, steps: string, journal = '[]\n', lawn = LAWN) {
  const one = application(await plan({ steps, lawn, files: { 'lawn.journal.yaml': journal } }), id);
  return [one.areas[0]?.product, one.why.join(' ').includes('it is on the shelf')];
}

test('what is left is taken first', async () => expect(await taken('spring', spring)).toEqual(['stock', true]));
test('what the journal has used up is not there any more', async () =>
  expect(await taken('spring', spring, '- { date: 2027-03-20, work: spread, product: stock, used: 5 lb }\n')).toEqual([
    'urea',
    false,
  ]));
test('nor what a step before it is to take', async () => {
  expect(await taken('spring', spring + autumn)).toEqual(['stock', true]);
  expect(await taken('autumn', spring + autumn)).toEqual(['urea', false]);
});
test('nor what a step before it has taken', async () =>
  expect(await taken('autumn', spring + autumn, '- { date: 2027-04-01, step: spring }\n')).toEqual(['urea', false]));
test('of a step that is half done the first pass has gone and the second is to come, each once', async () => {
  const half = '- { date: 2027-04-01, step: spring, pass: 1, used: 2.5 lb }\n';
  const lawn = LAWN.replace('stock: 5 lb', 'stock: 5.5 lb');
  expect(await taken('autumn', spring + autumn, half, lawn)).toEqual(['stock', true]);
});
test('a step keeps its product when it has used up the shelf itself', async () => {
  const [product] = await taken('spring', spring, '- { date: 2027-04-01, step: spring, used: 5 lb }\n');
  expect(product).toBe('stock');
});
