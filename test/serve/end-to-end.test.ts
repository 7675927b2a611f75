/**
 * A season from its plan to the phone: planned three times, served, and taken by calendar programs. What the second feed holds is
 * what each of them has to hold then, and what did not change they must not have touched.
 */
import { beforeAll, describe, expect, test } from 'vitest';
import { ModelClient, RULES } from './model-clients.ts';
import { CalendarServer, Subscriber, withPrograms } from './programs.ts';
import { serving } from './server.ts';
import { eventsOf, type FeedEvent, threePlans } from './three-plans.ts';

const plans = await threePlans();
const port = await serving(plans.site);
const first = eventsOf(plans.texts[0]);
const second = eventsOf(plans.texts[1]);
const third = eventsOf(plans.texts[2]);
const { uidOf } = plans;

/** UIDs that both feeds hold with the same lines; and all others. */
const same = [...first.keys()].filter((uid) => first.get(uid)?.lines === second.get(uid)?.lines).sort();
const different = [...new Set([...first.keys(), ...second.keys()])].filter((uid) => !same.includes(uid)).sort();
/** Events by UID without their very lines, which some programs write anew. */
const facts = (events: ReadonlyMap<string, FeedEvent>) =>
  Object.fromEntries([...events].map(([uid, { lines: _, ...rest }]) => [uid, rest]));

describe('the second feed', () => {
  /** Off the calendar: not there, or there as cancelled. */
  const isOff = (step: string) => ['', 'CANCELLED'].includes(second.get(uidOf(step))?.status ?? '');
  test('holds the moved step on another day', () =>
    expect(second.get(uidOf('moved'))?.start.slice(0, 10)).not.toBe(first.get(uidOf('moved'))?.start.slice(0, 10)));
  test('holds the done step on the day it was done', () =>
    expect(second.get(uidOf('done'))?.start.slice(0, 10)).toBe('2027-04-10'));
  test.each(['skipped', 'following', 'taken-out'])('has the step that is %s off the calendar', (step) => {
    expect(first.get(uidOf(step))?.status).toBe('TENTATIVE');
    expect(isOff(step)).toBe(true);
  });
  test('holds the step that was put in', () => {
    expect(first.has(uidOf('put-in'))).toBe(false);
    expect(second.has(uidOf('put-in'))).toBe(true);
  });
  test('leaves the steps of autumn as they were', () =>
    expect(same).toEqual(expect.arrayContaining([uidOf('kept-1'), uidOf('kept-2')])));
  test('raises SEQUENCE, DTSTAMP and LAST-MODIFIED of every event that changed', () => {
    const revised = different.filter((uid) => first.has(uid) && second.has(uid));
    expect(revised.length).toBeGreaterThan(3);
    const raised = revised.filter((uid) => {
      const [before, after] = [first.get(uid), second.get(uid)];
      if (!before || !after) return false;
      return after.sequence > before.sequence && after.stamp > before.stamp && after.lastModified > before.lastModified;
    });
    expect(raised).toEqual(revised);
  });
});

describe('the third feed', () => {
  test('has the step that was skipped on the calendar again', () =>
    expect(third.get(uidOf('skipped'))?.status).toBe('TENTATIVE'));
  test('moves the moved step back towards its first day', () => {
    const [, later = '', back = ''] = [first, second, third].map((feed) => feed.get(uidOf('moved'))?.start);
    expect(back < later).toBe(true);
  });
  test('lets no SEQUENCE and no LAST-MODIFIED fall', () => {
    const fallen = [...third.values()].filter(({ uid, sequence, lastModified }) =>
      [first.get(uid), second.get(uid)].some(
        (before) => before && (before.sequence > sequence || before.lastModified > lastModified),
      ),
    );
    expect(fallen).toEqual([]);
  });
});

describe.each(Object.entries(RULES))('a client that goes by: %s', (_, takes) => {
  const path = `/${plans.feed}`;
  let client: ModelClient;
  beforeAll(() => {
    client = new ModelClient(takes);
  });
  test('takes the first feed whole', async () => {
    plans.publish(0);
    expect((await client.poll(port, path)).status).toBe(200);
    expect(client.held).toEqual(first);
  });
  test('is told that nothing has changed', async () =>
    expect(await client.poll(port, path)).toEqual({ status: 304, touched: [] }));
  test('holds exactly the second feed after it, and has touched what changed and nothing else', async () => {
    plans.publish(1);
    expect(await client.poll(port, path)).toEqual({ status: 200, touched: different });
    expect(client.held).toEqual(second);
  });
  test('is told again that nothing has changed', async () =>
    expect(await client.poll(port, path)).toEqual({ status: 304, touched: [] }));
  test('holds exactly the third feed after it', async () => {
    plans.publish(2);
    await client.poll(port, path);
    expect(client.held).toEqual(third);
  });
  test('holds exactly the third, too, where it was away for the second', async () => {
    const away = new ModelClient(takes);
    for (const feed of [0, 2] as const) {
      plans.publish(feed);
      await away.poll(port, path);
    }
    expect(away.held).toEqual(third);
  });
  test('would stay with the old day, were a move not told as a revision', () => {
    const [before, after] = [first.get(uidOf('moved')), second.get(uidOf('moved'))];
    if (!before || !after) throw new Error('no moved step');
    const { sequence, stamp, lastModified } = before;
    expect(takes(before, { ...after, sequence, stamp, lastModified })).toBe(false);
  });
});

withPrograms(['vdirsyncer', 'khal'], () => {
  let subscriber: Subscriber;
  let before: ReadonlyMap<string, string>;
  beforeAll(async () => {
    plans.publish(0);
    subscriber = new Subscriber(`http://localhost:${port}/${plans.feed}`);
    await subscriber.discover();
    await subscriber.sync();
  });
  /** Events without their UIDs. */
  const nameless = (events: ReadonlyMap<string, FeedEvent>) =>
    [...events.values()].map(({ uid: _, lines: __, ...rest }) => JSON.stringify(rest)).sort();
  /** What khal has to show of a feed. */
  const shown = (events: ReadonlyMap<string, FeedEvent>) =>
    [...events.values()].map(({ start, status, summary }) => `${start} ${status} ${summary}`).sort();

  test('the first feed arrives whole', async () => {
    expect(nameless(subscriber.holds())).toEqual(nameless(first));
    expect(await subscriber.shows()).toEqual(shown(first));
  });
  test('a second time changes no file', async () => {
    before = subscriber.marks();
    expect(before.size).toBe(first.size);
    await subscriber.sync();
    expect(subscriber.marks()).toEqual(before);
  });
  test('after the second feed exactly that is there', async () => {
    plans.publish(1);
    await subscriber.sync();
    expect(nameless(subscriber.holds())).toEqual(nameless(second));
    expect(await subscriber.shows()).toEqual(shown(second));
  });
  test('the files of unchanged events, and no others, were left as they were', () => {
    const after = subscriber.marks();
    const kept = [...before].filter(([title, mark]) => after.get(title) === mark).map(([title]) => title);
    expect(kept.sort()).toEqual(same.map((uid) => first.get(uid)?.summary).sort());
  });
  test('after the third feed exactly that is there', async () => {
    plans.publish(2);
    await subscriber.sync();
    expect(nameless(subscriber.holds())).toEqual(nameless(third));
    expect(await subscriber.shows()).toEqual(shown(third));
  });
});

withPrograms(['radicale'], () => {
  let server: CalendarServer;
  let before: ReadonlyMap<string, string>;
  beforeAll(async () => {
    server = await CalendarServer.start();
  });
  test('accepts the first feed and holds it', async () => {
    expect(await server.put(plans.texts[0])).toBe(201);
    expect(facts(await server.holds())).toEqual(facts(first));
    before = await server.tags();
    expect(before.size).toBe(first.size);
  });
  test('accepts the second in its place and holds exactly that', async () => {
    expect(await server.put(plans.texts[1])).toBe(201);
    expect(facts(await server.holds())).toEqual(facts(second));
  });
  test('leaves the items of unchanged events as they were', async () => {
    const after = await server.tags();
    const kept = [...before].filter(([name, tag]) => after.get(name) === tag).length;
    expect(kept).toBe(same.length);
  });
});
