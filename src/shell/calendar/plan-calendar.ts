import { inOrder, type Problem, problem } from '../../base/problem.ts';
import { formatInstant } from '../../base/zone.ts';
import { feedOfLawns, latestOf } from '../../emit/lawns/feed-of-lawns.ts';
import { isForReader, keyOfCalendar } from '../../emit/lawns/keys.ts';
import { lawnsReport } from '../../emit/lawns/report.ts';
import { sharedDaysOf } from '../../emit/lawns/same-day.ts';
import type { Calendar } from '../../model/calendar.ts';
import { emptyLedger, type Ledger } from '../../model/ledger.ts';
import type { Season } from '../../model/season.ts';
import { readCalendar } from '../../read/calendar.ts';
import { type ListedLawn, listedLawns } from '../../read/listed-lawns.ts';
import type { Io } from '../io.ts';
import { feedFile } from '../lawn-feeds.ts';
import { ledgerPath } from '../ledger-file.ts';
import { lookupFrom } from '../lookup.ts';
import { type DrawnPlan, feedFolder, isFineWith, type PlanOptions, writes } from '../plan-lawn.ts';
import { publish } from '../publish.ts';
import { EXIT, failing, printProblems, tellProblems } from '../report-problems.ts';
import { seenChanges, subscribing } from '../tell-feeds.ts';
import { type AskedFile, asOfProblem } from '../which-lawn.ts';
import { zipLookup } from '../zips.ts';
import { planLawns } from './plan-lawns.ts';

/**
 * Plans every lawn of a calendar as by itself, then writes their one feed. A lawn that cannot be planned is told, and its events
 * stay as they were published; the others go on.
 */
export function planCalendar(asked: AskedFile, options: DrawnPlan, io: Io): number {
  const parsed = readCalendar(asked.source.text, asked.source.name);
  const { value: calendar } = parsed;
  const unfit = calendar ? unfitOptions(asked, options) : parsed.problems;
  if (!calendar || unfit.length > 0) return failing(options, io)(unfit);

  const lawns = listedLawns(parsed, lookupFrom(io.cwd), zipLookup);
  const { made, problems, written } = publishCalendar(calendar, lawns, asked, options, io);
  if (made?.about == null) {
    tellProblems(problems, options.json, io);
    return EXIT.problem;
  }
  const { seasons, changes, about } = made;
  const isFine = seasons.length === lawns.length && isFineWith(options)(problems);
  const code = isFine ? EXIT.fine : EXIT.problem;
  if (options.json) {
    const { id, name = id } = calendar;
    const plan = { calendar: id, name, asOf: about.asOf, seasons, sharedDays: sharedDaysOf(seasons) };
    const whole = { kind: 'calendar', version: 1, ...plan, changes: changes?.told ?? [], problems };
    io.stdout(`${JSON.stringify(whole, null, 2)}\n`);
    return code;
  }
  io.stdout(lawnsReport(about, lawns.length, seasons, io.columns));
  io.stdout(seenChanges(made, about.display.language, written !== null, io));
  if (problems.length > 0) io.stderr('\n');
  printProblems(problems, io);
  io.stdout(subscribing(written, io));
  return code;
}

/**
 * Plans the lawns and publishes their feed, all of it under the lock of the calendar's ledger: of two runs at once the second
 * plans on what the first has published.
 */
function publishCalendar(
  calendar: Calendar,
  lawns: readonly ListedLawn[],
  { file }: AskedFile,
  options: DrawnPlan,
  io: Io,
) {
  const feedIn = feedFolder(options, io);
  const revisedAt = options.asOf === undefined ? formatInstant(io.now()) : `${options.asOf}T00:00:00Z`;
  const key = keyOfCalendar(calendar);
  return publish(
    {
      revisedAt,
      ledgerFile: ledgerPath(file),
      feedIn,
      asked: [{ reader: null, file: feedFile(feedIn, calendar.id, null), key }],
      writes: writes({ isDemo: false }, options),
      // A lawn with an error has no season here; that is no reason to keep back the others.
      isFine: () => true,
    },
    (ledger, stillHeld) => {
      const planned = planLawns(lawns, calendar.display ?? {}, options, io, stillHeld);
      const made = madeOf(calendar, planned.seasons, lawns, ledger, revisedAt);
      return { ...made, problems: inOrder(planned.problems) };
    },
    io,
  );
}

/** What is published of a calendar with these seasons; nothing where it has none. */
function madeOf(
  calendar: Calendar,
  seasons: readonly Season[],
  lawns: readonly ListedLawn[],
  ledger: Ledger | null,
  revisedAt: string,
) {
  const latest = latestOf(seasons);
  if (latest === undefined)
    return { about: null, seasons, feed: null, readers: [], ledger: null, changes: null, sheet: null };
  const { id, name = id, feed } = calendar;
  const isWhole = seasons.length === lawns.length;
  const made = feedOfLawns(calendar, seasons, { ledger: ledger ?? emptyLedger, revisedAt, isWhole });
  return {
    about: {
      lawn: id,
      lawnName: name,
      asOf: latest.asOf,
      display: latest.display,
      feedKey: feed.key,
      mayTell: isForReader(calendar),
    },
    seasons,
    feed: made.text,
    readers: [],
    ledger: made.ledger,
    changes: { told: made.told, isFirst: made.isFirst },
    sheet: null,
  };
}

/** What a calendar cannot be asked, since it is of one lawn; and an as-of day that is none. */
function unfitOptions({ step, source }: AskedFile, { asOf, weather, program, compare }: PlanOptions): Problem[] {
  const place = { file: source.name };
  const given = {
    '--weather': weather,
    '--program': program,
    '--compare': compare,
    ...(step !== undefined && { [`The step "${step}"`]: step }),
  };
  return [
    ...Object.entries(given).flatMap(([option, value]) =>
      value === undefined ? [] : [problem('calendar-option', { option }, place)],
    ),
    ...(asOf === undefined ? [] : asOfProblem(asOf)),
  ];
}
