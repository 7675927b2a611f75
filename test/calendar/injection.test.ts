/** No name of a calendar or of a lawn adds, removes or renames a property or a component of their one feed. */
import { beforeAll, expect, test } from 'vitest';
import { feedOfLawns } from '../../src/emit/lawns/feed-of-lawns.ts';
import type { Calendar } from '../../src/model/calendar.ts';
import { emptyLedger } from '../../src/model/ledger.ts';
import type { Season } from '../../src/model/season.ts';
import { readCalendar } from '../../src/read/calendar.ts';
import { type Part, partsOf } from '../feed/feed.ts';
import { HOSTILE } from '../feed/hostile.ts';
import { faultsOf } from '../feed/rules.ts';
import { soilclock } from '../kit.ts';
import { AS_OF, CALENDAR, calendarText, LAWNS, lawnsFolder } from './lawns.ts';

const calendar = readCalendar(calendarText(LAWNS.slice(0, 2)), CALENDAR).value as Calendar;
let seasons: Season[];
beforeAll(async () => {
  const { stdout } = await soilclock(lawnsFolder(), ['plan', CALENDAR, '--as-of', AS_OF, '--json']);
  ({ seasons } = JSON.parse(stdout) as { seasons: Season[] });
});

/** The feed where every name is this text; as it was where there is none. */
function feedWith(text?: string): string {
  const named = text === undefined ? seasons : seasons.map((season) => ({ ...season, lawnName: text }));
  const options = { ledger: emptyLedger, revisedAt: `${AS_OF}T00:00:00Z`, isWhole: true };
  return feedOfLawns({ ...calendar, ...(text !== undefined && { name: text }) }, named, options).text;
}
/** Kinds of components and names of properties, in their order. */
const shapeOf = ({ kind, properties, parts }: Part): unknown => [
  kind,
  properties.map((line) => /^[A-Z-]+/.exec(line)?.[0]),
  parts.map(shapeOf),
];
const inOrder = (text: string) => {
  const { parts, ...rest } = partsOf(text);
  const byUid = [...parts].sort((a, b) => (String(a.properties[0]) < String(b.properties[0]) ? -1 : 1));
  return shapeOf({ ...rest, parts: byUid });
};

test.each(Object.entries(HOSTILE))('%s', (_, text) => {
  const feed = feedWith(text);
  expect(inOrder(feed)).toEqual(inOrder(feedWith()));
  expect(faultsOf(feed)).toEqual({});
});
