/** No title of a reader adds, removes or renames a property or a component of that reader's feed. */
import { beforeAll, expect, test } from 'vitest';
import { calendarOf } from '../../src/emit/calendar.ts';
import { emptyLedger } from '../../src/model/ledger.ts';
import type { Season } from '../../src/model/season.ts';
import { type Part, partsOf, planned } from '../feed/feed.ts';
import { HOSTILE } from '../feed/hostile.ts';
import { faultsOf } from '../feed/rules.ts';
import { demoCopy } from '../kit.ts';

const AS_OF = '2027-04-02';
let season: Season;
beforeAll(async () => {
  const { cwd, lawn } = demoCopy();
  ({ season } = await planned(cwd, lawn, AS_OF));
});

const feedWith = (title: string): string =>
  calendarOf(season, {
    ledger: emptyLedger,
    revisedAt: `${AS_OF}T00:00:00Z`,
    detail: 'quiet',
    reader: 'helper',
    feed: 'crew',
    title,
  }).text;
/** Kinds of components and names of properties, in their order. */
const shapeOf = ({ kind, properties, parts }: Part): unknown => [
  kind,
  properties.map((line) => /^[A-Z-]+/.exec(line)?.[0]),
  parts.map(shapeOf),
];

test('a plain title is said', () => expect(feedWith('Crew of spring')).toContain('Crew of spring'));
test.each(Object.entries(HOSTILE))('%s', (_, text) => {
  expect(shapeOf(partsOf(feedWith(text)))).toEqual(shapeOf(partsOf(feedWith('Crew'))));
  expect(faultsOf(feedWith(text))).toEqual({});
});
