/** Each of those that may notice a changed program does, and nothing does where nothing was changed. */
import { readFileSync } from 'node:fs';
import path from 'node:path';
import { expect, test } from 'vitest';
import { cited as ryegrass } from './cited/perennial-ryegrass-maritime.ts';
import { cited as zoysiagrass } from './cited/zoysiagrass.ts';
import { noticedBy } from './notices.ts';
import { PROGRAMS } from './plan-program.ts';

const of = { zoysiagrass, 'perennial-ryegrass-maritime': ryegrass };

/** What notices a program in which one text, found once, was replaced. */
function noticed(program: keyof typeof of, from: string, to: string): Promise<string | null> {
  const name = `${program}.yaml`;
  const parts = readFileSync(path.join(PROGRAMS, name), 'utf8').split(from);
  expect(parts.length).toBe(2);
  return noticedBy({ name, text: parts.join(to), cited: of[program] });
}

test('nothing notices the program as it stands', async () =>
  expect(await noticed('zoysiagrass', 'id: zoysiagrass', 'id: zoysiagrass')).toBeNull());
test('the second typing notices a published rate', async () =>
  expect(await noticed('zoysiagrass', 'water: { depth: 1 in', 'water: { depth: 2 in')).toBe(
    'the figures typed a second time',
  ));
test('common practice notices a day that no other program has', async () =>
  expect(await noticed('zoysiagrass', 'closes: { date: 09-10', 'closes: { date: 09-21')).toBe(
    'what is common practice',
  ));
test('the reader notices a word that it does not know', async () =>
  expect(await noticed('zoysiagrass', 'kind: program', 'kind: programme')).toMatch(/^the reader/));
test('agronomy notices a best day that comes before the opening', async () =>
  expect(
    await noticed(
      'zoysiagrass',
      'opens: { date: 07-01, source: common-practice',
      'opens: { date: 08-01, source: common-practice',
    ),
  ).toBe('a rule of agronomy (best-outside)'));
test('a calendar notices a feed that is smaller than it prints', async () =>
  expect(await noticed('perennial-ryegrass-maritime', 'N: 0.75 lb/1000 sqft', 'N: 0.3 lb/1000 sqft')).toBe(
    'a published calendar',
  ));
