import type { Application, Season } from '../../model/season.ts';
import { asOfLine, type DraftEvent, fitted, fittedAround, nextDay, odds, section, uidOf, wordsFor } from './draft.ts';

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
      about: { odds: application.inWindow, days: false },
    },
  ];
}

function jobText(season: Season, application: Application): string {
  const { how, why, notJudged, cautions, status, used, hours, inWindow } = application;
  const words = wordsFor(season);
  if (status === 'done') return fitted([...section(words.whatWasDone, used), asOfLine(season)], []);
  const hoursLine = words.hours[hours];
  const share = odds(inWindow);
  return fittedAround(
    section(words.whatToDo, how),
    [
      ...section(words.cautions, cautions),
      ...(notJudged.length > 0 ? [words.lookFirst(notJudged)] : []),
      words.labelWins,
      asOfLine(season),
    ],
    [
      ...(share === null ? [] : [words.odds(Math.round(10 * share))]),
      ...(hoursLine === null ? [] : [hoursLine]),
      '',
      ...section(words.why, why),
    ],
    words.more,
  );
}
