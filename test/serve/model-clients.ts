/** Calendar programs as models: each polls a feed as real ones do, and takes an event's revision by one of the two rules. */
import { ask } from './server.ts';
import { eventsOf, type FeedEvent } from './three-plans.ts';

/** Whether a known event is taken anew. */
type Takes = (held: FeedEvent, offered: FeedEvent) => boolean;

export const RULES: Readonly<Record<string, Takes>> = {
  // As a widely used subscriber on Android has it.
  'LAST-MODIFIED has grown': (held, offered) => offered.lastModified > held.lastModified,
  // RFC 5546, 2.1.5: the higher SEQUENCE, and of equal ones the later DTSTAMP.
  'SEQUENCE, then DTSTAMP': (held, offered) =>
    offered.sequence === held.sequence ? offered.stamp > held.stamp : offered.sequence > held.sequence,
};

export class ModelClient {
  readonly held = new Map<string, FeedEvent>();
  readonly #takes: Takes;
  #tag = '';

  constructor(takes: Takes) {
    this.#takes = takes;
  }

  /** Asks once; gives the status and the UIDs that were put in, taken anew or removed. */
  async poll(port: number, path: string): Promise<{ readonly status: number; readonly touched: readonly string[] }> {
    const { status, headers, body } = await ask(port, path, { headers: { 'if-none-match': this.#tag } });
    if (status !== 200) return { status, touched: [] };
    this.#tag = headers.etag ?? '';
    return { status, touched: this.#take(eventsOf(body.toString('utf8'))) };
  }

  #take(offered: ReadonlyMap<string, FeedEvent>): readonly string[] {
    const removed = [...this.held.keys()].filter((uid) => !offered.has(uid));
    for (const uid of removed) this.held.delete(uid);
    const taken = [...offered.values()].filter((event) => {
      const held = this.held.get(event.uid);
      return !held || this.#takes(held, event);
    });
    for (const event of taken) this.held.set(event.uid, event);
    return [...removed, ...taken.map(({ uid }) => uid)].sort();
  }
}
