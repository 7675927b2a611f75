/** What tests of the applicator's record share: a lawn with its products, a record of a journal, a CSV read by somebody else. */
import { parse } from 'csv-parse/sync';
import { type RecordInput, type RecordStep, recordOf } from '../src/amounts/record.ts';
import { civil } from '../src/base/day.ts';
import type { Lawn } from '../src/model/lawn.ts';
import type { Product } from '../src/model/product.ts';
import { readJournal } from '../src/read/journal.ts';
import { readLawn } from '../src/read/lawn.ts';
import { lawnText } from './kit.ts';

/** 1000 and 500 square feet; a feed, and a barrier with a registration number. */
export const RECORD_LAWN = `areas: { front: { rectangle: [50 ft, 20 ft] }, back: { rectangle: [25 ft, 20 ft] } }
equipment: { spreaders: { drop-24: { kind: drop, swath: 24 in }, broadcast: { kind: rotary, swath: 10 ft } } }
record: { customer: "A. Keeper", address: "1 Lighthouse Road" }
products:
  - { id: urea, form: granular, analysis: 46-0-0 }
  - id: barrier
    name: Barrier
    form: granular
    pesticide: pre-emergent
    registration: IS-4-17
    actives: { prodiamine: 0.4% }
    label: { rate: 4 lb/1000 sqft, re-entry: Once it is dry. }
`;

const STEPS = new Map<string, RecordStep>([
  ['feed', { name: 'Feed', work: 'spread', pesticide: false, areas: ['front', 'back'] }],
  ['barrier', { name: 'Barrier', work: 'spread', pesticide: true, areas: ['front', 'back'] }],
]);

/** The record of a journal, as YAML, for 2027. */
export function recordFrom(journal: string, changed: Partial<RecordInput> = {}) {
  const lawn = readLawn(lawnText(RECORD_LAWN), 'lawn.yaml').value as Lawn;
  const products = (lawn.products ?? []).filter((one): one is Product => typeof one !== 'string');
  return recordOf({
    lawn,
    products: new Map(products.map((product) => [product.id, product])),
    steps: STEPS,
    plan: null,
    journal: readJournal(journal, 'lawn.journal.yaml').value ?? [],
    year: 2027,
    asOf: civil(2027, 12, 31),
    unreadLines: [],
    ...changed,
  });
}

/** A CSV as another library reads it, strictly: every row as long as the header. */
export const csvRows = (text: string): Record<string, string>[] =>
  parse(text, { bom: true, columns: true, record_delimiter: '\r\n' });

/** A text of a cell as it was before it was made safe. */
export const unguarded = (cell: string | undefined): string => (cell ?? '').replace(/^'/, '');
