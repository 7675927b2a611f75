/** What the feed tests share: a feed full of awkward texts, what its Season says it must hold, and its raw lines. */
import { readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { parse } from 'yaml';
import { calendarOf } from '../../src/emit/calendar.ts';
import { emptyLedger, type Ledger } from '../../src/model/ledger.ts';
import type { Application, Season } from '../../src/model/season.ts';
import { demoCopy, keepFeed, soilclock } from '../kit.ts';

/** Every character that iCalendar escapes, folds badly or lets pass: comma, semicolon, backslash, line end, quote, emoji. */
export const awkward = (text: string): string => `${text}, with; a \\ and \\n\nof "Ümläut" 👩🏽‍🌾 🌱`;

export const AS_OF = '2027-04-02';
const REVISED_AT = '2027-04-02T00:00:00Z';

interface Written {
  readonly season: Season;
  /** The feed as it stands in its file. */
  readonly text: string;
  readonly file: string;
  readonly cwd: string;
  readonly ledger: Ledger;
}

type Plain = Record<string, unknown>;

function rewrite(file: string, change: (content: Plain) => void): void {
  const content = parse(readFileSync(file, 'utf8'), { schema: 'core' }) as Plain;
  change(content);
  // JSON is YAML, with every text in quotes.
  writeFileSync(file, JSON.stringify(content, null, 1));
}

const rename = (content: Plain, key = 'name') => {
  content[key] = awkward(String(content[key] ?? key));
};

/** The demo with an awkward text wherever a person may write one, planned by the command. */
export async function awkwardDemo(asOf = AS_OF): Promise<Written> {
  const { cwd, lawn } = demoCopy();
  const at = (name: string) => path.join(cwd, 'programs', name);
  rewrite(at('demo/lawn.yaml'), (content) => rename(content));
  for (const name of ['products.yaml', 'demo/my-products.yaml'])
    rewrite(at(name), ({ products }) => {
      for (const product of Object.values(products as Record<string, Plain>)) {
        rename(product);
        if (product.label) rename(product.label as Plain, 're-entry');
      }
    });
  rewrite(at('tall-fescue-transition.yaml'), (content) => {
    rename(content);
    for (const step of content.steps as Plain[]) {
      rename(step);
      step.note = awkward('Mind the edge');
      step.cautions = [awkward('Take care')];
    }
  });
  return { ...(await planned(cwd, lawn, asOf)), cwd };
}

/** Plans a lawn by the command, and reads what was written. */
export async function planned(cwd: string, lawn: string, asOf: string): Promise<Omit<Written, 'cwd'>> {
  const { code, stdout, stderr } = await soilclock(cwd, [
    'plan',
    lawn,
    '--no-sheet',
    '--as-of',
    asOf,
    '--json',
    '--out',
    'out/site',
  ]);
  if (code !== 0) throw new Error(stderr);
  const season = JSON.parse(stdout) as Season;
  const file = path.join(cwd, 'out/site', `${season.lawn}.ics`);
  const ledger = JSON.parse(readFileSync(path.join(cwd, lawn.replace('.yaml', '.ledger.json')), 'utf8')) as Ledger;
  return { season, file, text: readFileSync(file, 'utf8'), ledger };
}

interface Expected {
  readonly start: string;
  /** The first moment, or the first day, after the event. */
  readonly end: string;
  readonly summary: string;
}

const dayAfter = (day: string): string =>
  new Date(Date.parse(`${day}T00:00:00Z`) + 86_400_000).toISOString().slice(0, 10);

/** UID → start, end and title of every event, worked out from the Season alone. */
export function expectedEvents(season: Season): Record<string, Expected> {
  const uid = (...parts: (string | number)[]) => `${season.feedKey}-${parts.join('-')}@soilclock.invalid`;
  const events: Record<string, Expected> = {};
  for (const { id, name, inAll, season: year, status, date, start, end, window } of season.applications) {
    const [opens, closes] = [window.opens.p50, window.closes.p50];
    if (date !== null)
      events[uid(year, id, 'job')] = {
        start: start ?? date,
        end: end ?? dayAfter(date),
        summary: status === 'done' ? `Done: ${name}` : inAll === null ? name : `${name}: ${inAll}`,
      };
    if (opens !== null && closes !== null && /^(expected|open|due)$/.test(status))
      events[uid(year, id, 'window')] = { start: opens, end: dayAfter(closes), summary: `Window: ${name}` };
  }
  Object.assign(events, noticesOf(season, uid));
  events[uid(season.season.year, 'soil')] = {
    start: season.asOf,
    end: dayAfter(season.asOf),
    summary: season.today.title,
  };
  return events;
}

const daysBefore = (day: string, count: number): string =>
  new Date(Date.parse(`${day}T00:00:00Z`) - count * 86_400_000).toISOString().slice(0, 10);

/** What stands round the work in a normal feed: buying ahead, watering in, keep-off. */
function noticesOf(season: Season, uid: (...parts: (string | number)[]) => string): Record<string, Expected> {
  const events: Record<string, Expected> = {};
  const bought = season.shopping.flatMap(({ product, name, neededOn }) => {
    const day = [7, 1, 0].map((ahead) => daysBefore(neededOn ?? '1970-01-01', ahead)).find((one) => one >= season.asOf);
    return neededOn === null ? [] : [{ product, name, day: day ?? neededOn }];
  });
  for (const day of new Set(bought.map((one) => one.day))) {
    const group = bought.filter((one) => one.day === day);
    const [head] = group.map(({ product }) => product).sort();
    const summary = `Buy: ${group.map(({ name }) => name).join(', ')}`;
    events[uid(season.season.year, head!, 'buying')] = { start: day, end: dayAfter(day), summary };
  }
  for (const { id, name, season: year, date, waterIn, reEntry } of season.applications) {
    if (date === null) continue;
    if (waterIn !== null) {
      const depth = waterIn.depthMm === null ? '' : ` ${Number((waterIn.depthMm / 25.4).toPrecision(2))} in`;
      const end = dayAfter(waterIn.by ?? date);
      events[uid(year, id, 'water')] = { start: date, end, summary: `Water in${depth}: ${name}` };
    }
    if (reEntry !== null)
      events[uid(year, id, 'keep-off')] = {
        start: date,
        end: dayAfter(date),
        summary: `Keep off as the label says: ${name}`,
      };
  }
  return events;
}

/** UID → one of its figures alone. */
export const expected = (season: Season, key: keyof Expected): Record<string, string> =>
  Object.fromEntries(Object.entries(expectedEvents(season)).map(([uid, event]) => [uid, event[key]]));

/** The feed of a Season as data. */
export function feedOf(season: Season, ledger: Ledger = emptyLedger, revisedAt = REVISED_AT) {
  const made = calendarOf(season, { ledger, revisedAt, detail: 'normal' });
  // No file may hold longer names, and no plan writes longer texts into its ledger.
  const texts = [season.lawnName, ...ledger.events.flatMap(({ summary, description }) => [summary, description])];
  if (texts.every((text) => text.length <= 2000)) keepFeed(made.text);
  return made;
}

/** A Season in which one application is changed. */
export const changed = (season: Season, id: string, change: Partial<Application>): Season => ({
  ...season,
  applications: season.applications.map((one) => (one.id === id ? { ...one, ...change } : one)),
});

/** The lines of a feed with their folds undone. */
export const unfolded = (text: string): string[] => text.replace(/\r\n[ \t]/g, '').split('\r\n');

export interface Part {
  readonly kind: string;
  readonly properties: string[];
  readonly parts: Part[];
}

/** Components with the lines of their properties, in the order in which they stand. */
export function partsOf(text: string): Part {
  const open: Part[] = [{ kind: '', properties: [], parts: [] }];
  for (const line of unfolded(text)) {
    const [, begin] = /^BEGIN:(.*)$/.exec(line) ?? [];
    if (begin !== undefined) {
      const part: Part = { kind: begin, properties: [], parts: [] };
      open.at(-1)!.parts.push(part);
      open.push(part);
    } else if (line.startsWith('END:')) open.pop();
    else if (line !== '') open.at(-1)!.properties.push(line);
  }
  return open[0]!.parts[0]!;
}

/** The value of a property, undefined where the component has none. */
export const valueIn = ({ properties }: Part, name: string): string | undefined =>
  properties.find((line) => line.startsWith(`${name}:`) || line.startsWith(`${name};`))?.replace(/^[^:]*:/, '');

/** UID → the event's lines as they stand in the feed. */
export const bytesByUid = (text: string): Map<string, string> =>
  new Map(
    [...text.matchAll(/BEGIN:VEVENT\r\n.*?END:VEVENT\r\n/gs)].map(([event]) => [
      /^UID:(.*)\r$/m.exec(event.replace(/\r\n /g, ''))?.[1] ?? '',
      event,
    ]),
  );
