import { parseDay } from '../../base/day.ts';
import { weatherFrom } from '../events/weather-from.ts';
import { Html, html } from '../html.ts';
import type { Told } from './told.ts';

/** Where the calendar of the same days is. */
export interface SheetFeed {
  /** A whole address, or the name of a file beside the sheet. */
  readonly address: string;
  /** The address as a drawing that a phone reads; null where none is known. */
  readonly qr: string | null;
}

const list = (id: string, title: string, lines: readonly string[]): Html | null =>
  lines.length === 0
    ? null
    : html`<section id="${id}" aria-labelledby="${id}-title"><h2 id="${id}-title">${title}</h2><ul class="plain">${lines.map((line) => html`<li>${line}</li>`)}</ul></section>`;

/** What has moved, the sprayer, what the files leave open. */
export function notes({ season, words }: Told): Html {
  const { sheet } = words;
  return html`${list('moved', sheet.moved, season.moved)}
${list('sprayer', sheet.sprayer, season.sprayer?.how ?? [])}
${
  season.problems.length === 0
    ? null
    : // Problems are for whoever mends the files, and have one language.
      html`<div lang="en">${list(
        'notes',
        sheet.notes,
        season.problems.map(({ message }) => message),
      )}</div>`
}`;
}

/** How a phone comes to the same days. */
export function subscribing(feed: SheetFeed | null, { words }: Told): Html | null {
  if (feed === null) return null;
  const { sheet } = words;
  const { address, qr } = feed;
  const isFile = !/^[a-z]+:/.test(address);
  return html`<section id="subscribe" aria-labelledby="subscribe-title"><h2 id="subscribe-title">${sheet.subscribe}</h2>
${isFile ? html`<p>${sheet.feedFile(address)}</p>` : html`<p>${sheet.feedAt}</p>`}
<p><a href="${address}">${address}</a></p>
${qr === null ? null : html`<div class="qr">${new Html(qr)}</div>`}</section>`;
}

/** Of which day it is, and where its weather came from. */
export function weatherLine({ season, words, display }: Told): string {
  const { asOf, weather } = season;
  const [day, observed] = [parseDay(asOf), parseDay(weather.observedThrough ?? '')];
  const { files, services } = weatherFrom(season);
  return words.feed.asOf(
    day === null ? asOf : display.fullDay(day),
    observed === null ? null : display.fullDay(observed),
    weather.generated,
    files,
    services,
  );
}
