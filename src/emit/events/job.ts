import type { Application, Season } from '../../model/season.ts';
import { asOfLine, type DraftEvent, nextDay, odds, uidOf, wordsFor, workParts } from './draft.ts';
import { fitted, listed, section } from './fitted.ts';

/** The work itself, on its day and with its hours. */
export function jobEvent(season: Season, application: Application): DraftEvent[] {
  const { id, date, start, end, status, name } = application;
  if (date === null) return [];
  const words = wordsFor(season);
  const timed = start !== null && end !== null;
  return [
    {
      uid: uidOf(season, 'job', application.season, id),
      kind: 'job',
      season: application.season,
      step: id,
      day: date,
      dueSince: application.dueSince,
      allDay: !timed,
      start: timed ? start : date,
      end: timed ? end : nextDay(date),
      summary: status === 'done' ? words.doneTitle(name) : words.jobTitle(name, application.inAll),
      description: jobText(season, application),
      status: status === 'expected' ? 'TENTATIVE' : 'CONFIRMED',
      transparent: status === 'done',
      categories: [words.category],
      remindersMin: status === 'done' ? [] : season.remindersMin,
      substance: [
        date,
        start,
        end,
        status,
        application.areas.map(({ id: area, product, amount }) => [area, product, amount]),
        application.cautions,
        application.dueSince,
        name,
        season.remindersMin,
        ...application.secondPasses.map(({ id: area, amount, dial }) => [area, amount, dial]),
        ...application.tanks.map(({ count, sprayL, amount }) => [count, sprayL, amount]),
      ],
      about: { odds: application.inWindow, days: null },
    },
  ];
}

function jobText(season: Season, application: Application): string {
  const { why, whyNow, status, used, hours, inWindow } = application;
  const words = wordsFor(season);
  if (status === 'done')
    return fitted(
      [
        { goes: 'late', lines: section(words.whatWasDone, used) },
        { goes: 'never', lines: [asOfLine(season)] },
      ],
      words.more,
    );
  const hoursLine = words.hours[hours];
  const share = odds(inWindow);
  const reasons = whyNow === null ? why : [whyNow, ...why];
  return fitted(
    [
      ...workParts(season, application),
      // The reason that names the day has its odds as well, and the event its hours.
      {
        goes: 'first',
        lines: [
          ...(share === null ? [] : [words.odds(Math.round(10 * share))]),
          ...(hoursLine === null ? [] : [hoursLine]),
        ],
      },
      { goes: 'never', lines: reasons.length > 0 ? ['', words.why, ...(whyNow === null ? [] : [listed(whyNow)])] : [] },
      { goes: 'first', lines: why.filter((line) => line !== whyNow).map(listed) },
    ],
    words.more,
  );
}
