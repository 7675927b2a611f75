import { type Day, parseDay } from '../../base/day.ts';
import { type Display, displayOf } from '../../base/display.ts';
import type { Application, Season, Spread } from '../../model/season.ts';
import { wordsOf } from '../../words/words.ts';
import { type Html, html } from '../html.ts';

/** How far ahead "what now" looks. */
const WEEKS = 3;

/** Windows of a season for the public in words: no chosen day stands in them, since nobody's working days do. */
export interface Windows {
  readonly now: readonly string[];
  readonly table: Html;
}

/** Which of a place's windows are open or near, and all of them as a table. */
export function windowsOf(season: Season): Windows {
  const words = wordsOf(season.display.language);
  const display = displayOf(season.display.units, season.display.language);
  const asOf = parseDay(season.asOf) ?? 0;
  const shown = season.applications.filter(({ status }) => status !== 'dropped' && status !== 'skipped');
  const open = shown
    .filter(isOpen)
    .map(({ name, window }) => words.site.openNow(name, closing(window.closes, display)));
  const soon = shown
    .filter((one) => one.status === 'expected' && isWithin(one.window.opens.p50, asOf, 7 * WEEKS))
    .map(({ name, window }) => words.site.opensSoon(name, opening(window.opens, display)));
  const lines = [...open, ...soon];
  return { now: lines.length > 0 ? lines : [words.site.nothingNow(WEEKS)], table: tableOf(shown, season, display) };
}

/** Work of which there is a window; what fell out of the season is in no table. */
const isOpen = ({ status }: Application): boolean => status === 'open' || status === 'due';

function isWithin(day: string | null, asOf: Day, days: number): boolean {
  const parsed = parseDay(day ?? '');
  return parsed !== null && parsed - asOf <= days;
}

const short = (day: string | null, display: Display): string | null => {
  const parsed = parseDay(day ?? '');
  return parsed === null ? null : display.shortDay(parsed);
};

function opening({ p10, p50, p90 }: Spread, display: Display): string {
  const words = wordsOf(display.language).window;
  const day = short(p50, display);
  if (day === null) return words.noMiddle;
  return p10 === p90 ? words.opensOn(day, null) : words.opensAbout(day, short(p10, display), short(p90, display), null);
}

function closing({ p10, p50, p90 }: Spread, display: Display): string {
  const words = wordsOf(display.language).window;
  const day = short(p50, display);
  const first = short(p10, display);
  if (day === null) return '';
  return p10 === p90 || first === null ? words.lastDay(day) : words.lastDayAbout(day, first, short(p90, display));
}

function tableOf(applications: readonly Application[], { display: told }: Season, display: Display): Html {
  const words = wordsOf(told.language).site;
  const cell = (spread: Spread): string => {
    const [day, first] = [short(spread.p50, display), short(spread.p10, display)];
    if (day === null) return words.none;
    return spread.p10 === spread.p90 || first === null ? day : words.about(day, first, short(spread.p90, display));
  };
  const rows = applications.map(
    ({ name, window, status }) => html`<tr><th scope="row">${name}</th><td>${cell(window.opens)}</td><td>${
      short(window.best.p50, display) ?? words.none
    }</td><td>${cell(window.closes)}</td><td>${words.states[status]}</td></tr>
`,
  );
  return html`<div class="wide" role="region" aria-label="${words.windows}" tabindex="0"><table>
<thead><tr>${[words.work, words.opens, words.best, words.lastDay, words.state].map(
    (head) => html`<th scope="col">${head}</th>`,
  )}</tr></thead>
<tbody>
${rows}</tbody>
</table></div>
`;
}
