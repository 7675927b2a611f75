import path from 'node:path';
import type { Seen } from '../compile.ts';
import { folded } from '../emit/table.ts';
import { wordsOf } from '../words/words.ts';
import type { Io } from './io.ts';
import type { WrittenFeed } from './publish.ts';

/** A feed that a command has made. */
interface MadeFeed {
  readonly changes: Seen | null;
  readonly feed: string | null;
}

/** What subscribers see change, or would see where nothing was written. */
export function seenChanges(
  { changes, feed }: MadeFeed,
  language: string,
  isWritten: boolean,
  { columns }: Io,
): string {
  const { told, isFirst } = changes ?? { told: [], isFirst: false };
  const words = wordsOf(language).changes;
  const lines = isFirst ? [words.firstFeed(eventsIn(feed))] : told.map(({ text }) => text);
  const title = isWritten ? words.seen : words.wouldSee;
  const shown = lines.length > 0 ? lines : [words.nothing];
  return `\n${title}\n${shown.flatMap((line) => folded(`  ${line}`, columns)).join('\n')}\n`;
}

const eventsIn = (feed: string | null): number => (feed?.match(/^BEGIN:VEVENT/gm) ?? []).length;

const NOT_WRITTEN = '\nNothing was written. With --out FOLDER the calendar feed and the season sheet go there.\n';

/** Where the season is to be looked at, and how a phone comes to the feeds; or that none were written. @param sheet The file of the season's sheet. */
export function subscribing(
  feeds: readonly WrittenFeed[] | null,
  { columns }: Io,
  sheet: string | null = null,
): string {
  if (feeds === null) return NOT_WRITTEN;
  const [own, ...others] = feeds;
  const lines = [
    ...(sheet === null ? [] : [`Season sheet: ${sheet} (open it in any browser, or print it)`]),
    ...feeds.map(({ reader, file, text, ended }) => {
      const whose = reader === null ? 'Calendar feed' : ended ? `Ended, of ${reader}` : `For ${reader}`;
      return `${whose}: ${file} (${eventsIn(text)} events)`;
    }),
    `To subscribe: put the file on any web space, and add its address to the calendar on your phone ("add a calendar by address", or open webcal://your.place/${path.basename(own?.file ?? '')}). It then follows every new plan that you put there. For the phones of your household "soilclock serve" gives it out from here. To look at it first, open the file in any calendar program.`,
    ...(others.length > 0
      ? [
          'Each reader is told an address of their own. Give your own feed, and what stands beside it, to nobody who may not see all of it: put only their file where they can reach it.',
        ]
      : []),
  ];
  return `\n${folded(lines.join('\n'), columns).join('\n')}\n`;
}
