import { parseDay } from '../../base/day.ts';
import type { Application } from '../../model/season.ts';
import { type Html, html } from '../html.ts';
import { type Panel, panelChart } from './chart/panel.ts';
import { SIZES, type Size, type Span } from './chart/plot.ts';
import { rowsChart } from './chart/rows.ts';
import { type Awaited, heatLevels, heatPanel, heatTitle, temperatureLevels, temperaturePanel } from './curves.ts';
import { legend } from './legend.ts';
import { aboutDay, dayNumber, dayOn, nameOf, type Told } from './told.ts';

/** More days than these leave a month no room for its name. */
const MOST_DAYS = 420;
/** Of a season that nears its end, so much is shown before the as-of day. */
const LOOK_BACK = 120;

/** The days of the season, and of what of the next is planned already. */
function spanOf({ season }: Told): Span {
  const ends = season.applications.flatMap(({ window, date }) => [window.closes.p90, window.closes.p50, date]);
  const from = dayNumber(season.season.start);
  const to = Math.max(dayNumber(season.season.end) + 1, ...ends.flatMap((day) => parseDay(day ?? '') ?? []));
  return to - from <= MOST_DAYS ? { from, to } : { from: Math.max(from, dayNumber(season.asOf) - LOOK_BACK), to };
}

const HEIGHTS = { temperature: { wide: 136, narrow: 180 }, heat: { wide: 80, narrow: 90 } };

/** A drawing in both sizes, of which one is shown. */
const both = (label: string, draw: (size: Size) => Html | null): Html =>
  html`${SIZES.map((size) => html`<div class="${size.kind}" role="img" aria-label="${label}">${draw(size)}</div>`)}`;

/** The season on one axis of days: soil and air, the windows of the steps, degree days; and the same as text. */
export function seasonChart(told: Told): Html {
  const { words, season } = told;
  const { sheet } = words;
  const span = spanOf(told);
  const draw = (panel: Panel | null) => (size: Size) => panel && panelChart(told, size, span, panel);
  const levels = temperatureLevels(told);
  const hasSoil = temperaturePanel(told, levels, 1) !== null;
  let letters = levels.length;
  const heats = season.signals.heat.map((signal) => {
    const own = heatLevels(signal, letters, told);
    letters += own.length;
    const title = heatTitle(signal, told);
    return html`<div class="heat"><h3>${title}</h3>
${both(title, (size) => draw(heatPanel(signal, own, HEIGHTS.heat[size.kind], told))(size))}
${keys(own)}</div>`;
  });
  return html`<section id="season" aria-labelledby="season-title">
<h2 id="season-title">${sheet.season(String(season.season.year))}</h2>
<figure>
${
  hasSoil
    ? html`<h3>${sheet.temperatures}</h3>
${both(season.today.title, (size) => draw(temperaturePanel(told, levels, HEIGHTS.temperature[size.kind]))(size))}
${keys(levels)}`
    : null
}
<h3>${sheet.windows}</h3>
${both(sheet.chartLabel, (size) => rowsChart(told, size, span))}
${heats}
${legend(told, season.signals.heat.length > 0)}
</figure>
<details><summary>${sheet.asTable}</summary>
<div class="scroll" tabindex="0" role="region" aria-label="${sheet.asTable}"><table>
<thead><tr>${sheet.columns.map((title) => html`<th scope="col">${title}</th>`)}</tr></thead>
<tbody>${season.applications.map((one) => rowOf(one, told))}</tbody>
</table></div>
${season.today.lines.map((line) => html`<p>${line}</p>`)}</details>
</section>`;
}

/** What the letters of a panel stand for. */
const keys = (levels: readonly Awaited[]): Html | null =>
  levels.length === 0
    ? null
    : html`<ul class="keys">${levels.map(({ letter, line }) => html`<li><b>${letter}</b> ${line}</li>`)}</ul>`;

function rowOf(application: Application, told: Told): Html {
  const { status, window, date, inWindow } = application;
  const { sheet } = told.words;
  const isOver = status === 'dropped' || status === 'skipped';
  return html`<tr><th scope="row">${nameOf(application, told)}</th><td>${sheet.status[status]}</td>
<td>${isOver ? '' : aboutDay(window.opens, told)}</td><td>${isOver ? '' : aboutDay(window.closes, told)}</td>
<td>${date === null ? '' : dayOn(date, told)}</td><td>${inWindow === null ? '' : sheet.inTen(Math.round(10 * inWindow))}</td></tr>`;
}
