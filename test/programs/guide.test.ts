/** Every example of programs/README.md is read as what it says it is, and nothing is wrong with it. */
import { readdirSync, readFileSync } from 'node:fs';
import path from 'node:path';
import { describe, expect, test } from 'vitest';
import { readAll } from '../../src/compile.ts';
import { readJournal } from '../../src/read/journal.ts';
import { readProducts } from '../../src/read/lawn.ts';
import { readProgram } from '../../src/read/program.ts';
import { lookupFrom } from '../../src/shell/lookup.ts';
import { lawnText, programText, root } from '../kit.ts';

const folder = path.join(root, 'programs');
const blocks = [...readFileSync(path.join(folder, 'README.md'), 'utf8').matchAll(/^```yaml (\w+)\n([\s\S]*?)^```/gm)];
const lookup = lookupFrom(folder);
const indented = (text: string) => text.replace(/^/gm, '  ').trimEnd().concat('\n');
const readers: Readonly<Record<string, (text: string) => readonly { readonly code: string }[]>> = {
  program: (text) => readProgram(text, path.join(folder, 'example.yaml'), lookup).problems,
  steps: (text) => readProgram(programText(indented(text)), path.join(folder, 'example.yaml'), lookup).problems,
  products: (text) => readProducts(text, 'products.yaml').problems,
  journal: (text) => readJournal(text, 'lawn.journal.yaml').problems,
  lawn: (text) =>
    readAll({
      lawn: {
        name: path.join(folder, 'lawn.yaml'),
        text: lawnText(`products: [products.yaml]\n${text}`)
          .replace('program.yaml', 'tall-fescue-transition.yaml')
          // The guide's own place, where its coordinates lie.
          .replace('latitude: 39, longitude: -84', 'latitude: 38.4, longitude: -72.6')
          .replace('weather: { files: [weather.csv] }\n', ''),
      },
      lookup,
    }).problems.filter(({ code }) => code !== 'grass-mismatch'),
};

test('there are examples of each kind', () =>
  expect(new Set(blocks.map(([, kind]) => kind))).toEqual(new Set(Object.keys(readers))));

describe.each(blocks.map(([, kind = '', text = '']) => ({ kind, text, first: text.split('\n')[0] })))(
  '$kind: $first',
  ({ kind, text }) => {
    test('reads without a problem', () => {
      expect(readers[kind]?.(text).map(({ code }) => code)).toEqual([]);
    });
  },
);

test('every program stands in the table with its climates', () => {
  const page = readFileSync(path.join(folder, 'README.md'), 'utf8');
  const rows = [...page.matchAll(/^\| `([a-z-]+\.yaml)` \|[^|]*\| ([a-z, -]+) \|$/gm)].map(([, name, climates]) => [
    name,
    climates?.split(', '),
  ]);
  const shipped = readdirSync(folder).flatMap((name) => {
    if (!name.endsWith('.yaml')) return [];
    const { value } = readProgram(readFileSync(path.join(folder, name), 'utf8'), path.join(folder, name), lookup);
    return value ? [[name, value.climate]] : [];
  });
  expect(rows.toSorted()).toEqual(shipped.toSorted());
});
