/** The page of the applicator's record: everything that an entry says, and what it does not. */
import { describe, expect, test } from 'vitest';
import { recordPage } from '../../src/emit/record-page.ts';
import { recordFrom } from '../record-kit.ts';

const pageOf = (journal: string, changed: Parameters<typeof recordFrom>[1] = {}) =>
  recordPage(recordFrom(journal, changed));
const whole = `- date: 2027-04-01
  start: "08:10"
  end: "08:55"
  step: barrier
  product: barrier
  loaded: 7 lb
  left: 1 lb
  spreader: drop-24
  setting: 5.25
  pass: 2
  by: A. Keeper's hand
  licence: island 12
  wind: 4 mph
  wind-from: nw
  air: 62 F
  target: crabgrass
  notices: Signs at 08:00
  note: a < b
`;

describe('of a whole entry', () => {
  const page = pageOf(whole);
  test.each([
    '2027-04-01',
    'from 08:10 to 08:55',
    'front, back',
    '1500 sq ft',
    'tall-fescue',
    'Barrier',
    'Reg. no. IS-4-17',
    'prodiamine 0.4 %',
    '6 lb',
    '4 lb/1000 sq ft',
    'loaded 7 lb',
    'left 1 lb',
    'spreader drop-24',
    'setting 5.25',
    'pass 2',
    'A. Keeper&#39;s hand',
    'licence island 12',
    'wind 4 mph',
    'from NW',
    '62 °F',
    'crabgrass',
    'Once it is dry.',
    'Signs at 08:00',
    'a &lt; b',
    '1 Lighthouse Road',
  ])('%s stands', (text) => expect(page).toContain(text));
  test('nothing is said to be missing', () => expect(page).not.toContain('Not recorded:'));
  test('a metric reader has it in kilograms and metres', () => {
    const { units, ...record } = recordFrom(whole);
    const metric = recordPage({ ...record, units: 'metric' });
    for (const text of ['2.722 kg', '19.53 g/m²', '139.4 m²', 'wind 6.437 km/h', '16.67 °C'])
      expect(metric).toContain(text);
    expect([units, metric.includes(' lb')]).toEqual(['us', false]);
  });
});

test('what is missing stands with its entry, and its cells are empty', () => {
  const page = pageOf('- { date: 2027-04-01, step: barrier }\n');
  expect(page).toContain('Reg. no. not recorded');
  expect(page).toMatch(/Not recorded:<\/b> a product of the products files, the registration number, the amount/);
});

test('an entry that no longer counts is struck through and stays', () => {
  const page = pageOf(
    '- { id: a, date: 2027-04-01, work: spray, used: 1 L }\n- { id: b, date: 2027-04-01, work: spray, used: 2 L, corrects: a }\n',
  );
  expect(page).toContain('<s>33.81 fl oz</s>');
  expect(page).toContain('Corrected by entry b of 2027-04-01.');
  expect(page).not.toContain('<s>67.63 fl oz</s>');
});

test('work that puts nothing down stands apart', () => {
  const page = pageOf('- { date: 2027-04-01, work: mow }\n');
  expect(page.indexOf('mow')).toBeGreaterThan(page.indexOf('Other work'));
});
