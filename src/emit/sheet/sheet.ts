import type { Season } from '../../model/season.ts';
import { dayText } from '../day-text.ts';
import { Html, html } from '../html.ts';
import { firstScreen } from './first-screen.ts';
import { jobs } from './jobs.ts';
import { notes, type SheetFeed, subscribing, weatherLine } from './notes.ts';
import { seasonChart } from './season-chart.ts';
import { sheetStyle } from './style.ts';
import { supplies } from './supplies.ts';
import { titleOf, toldOf } from './told.ts';

/** Nothing of the page may run, or be loaded from anywhere. */
const POLICY = "default-src 'none'; style-src 'unsafe-inline'; img-src data:";

/** How bands fade and bars are hatched: shared by every drawing of the page. */
const PAINTS = html`<svg width="0" height="0" class="paints" aria-hidden="true"><defs>
${['plan', 'done'].map((kind) => {
  const stops = (from: string, to: string) =>
    html`<stop offset="0" class="${kind} ${from}"/><stop offset="1" class="${kind} ${to}"/>`;
  return html`<linearGradient id="${kind}-in">${stops('none', 'whole')}</linearGradient><linearGradient id="${kind}-out">${stops('whole', 'none')}</linearGradient>`;
})}
<pattern id="hatch" width="6" height="6" patternUnits="userSpaceOnUse" patternTransform="rotate(45)"><path d="M0,0 V6" stroke="var(--navy)" stroke-width="5"/></pattern>
</defs></svg>`;

/** What stands on a sheet beside the season. */
export interface SheetOptions {
  /** The ways over the areas with the spreader, drawn for a phone and for anything wider; null where nothing is spread. */
  readonly ways?: { readonly narrow: string; readonly wide: string } | null;
  readonly feed?: SheetFeed | null;
}

/**
 * A season as one page to look at and to hang up: what now, the season on one axis, the jobs. It needs no network and no script.
 *
 * What a reader may not see has to be out of the season before: a sheet says all that it is given.
 *
 * @example sheetOf(season, { feed: { address: 'plot-7.ics', qr: null } }).startsWith('<!doctype html>')
 */
export function sheetOf(season: Season, { ways = null, feed: subscribed = null }: SheetOptions = {}): string {
  const told = toldOf(season);
  const { sheet, feed } = told.words;
  const name = titleOf(told);
  return html`<!doctype html>
<html lang="${season.display.language}">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${POLICY}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<meta name="color-scheme" content="light dark">
<title>${sheet.title(name, String(season.season.year))}</title>
<style>${new Html(sheetStyle)}</style>
</head>
<body>
<a class="skip" href="#season">${sheet.skip}</a>
${PAINTS}
<header><h1>${name}</h1><p>${sheet.asOf(dayText(season.asOf, season.asOf, told.display))}</p></header>
<main>
${firstScreen(told)}
${seasonChart(told)}
${jobs(told, ways)}
${supplies(told)}
${notes(told)}
${subscribing(subscribed, told)}
</main>
<footer><p>${weatherLine(told)}</p><p>${feed.labelWins}</p></footer>
</body>
</html>
`.text;
}
