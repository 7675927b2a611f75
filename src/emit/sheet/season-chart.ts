import { parseDay } from '../../base/day.ts';
import type { Application } from '../../model/season.ts';
import { type Html, html } from '../html.ts';
import { SIZES, type Span } from './chart/plot.ts';
import { rowsChart } from './chart/rows.ts';
import { aboutDay, dayNumber, dayOn, type Told } from './told.ts';

/** The days of the season, and of what of the next is planned already. */
function spanOf({ season }: Told): Span {
  const ends = season.applications.flatMap(({ window, date }) => [window.closes.p90, window.closes.p50, date]);
  return {
    from: dayNumber(season.season.start),
    to: Math.max(dayNumber(season.season.end) + 1, ...ends.flatMap((day) => parseDay(day ?? '') ?? [])),
  };
}

/** The season on one axis of days, and the same as a table. */
export function seasonChart(told: Told): Html {
  const { sheet } = told.words;
  const span = spanOf(told);
  return html`<section id="season" aria-labelledby="season-title">
<h2 id="season-title">${sheet.season(String(told.season.season.year))}</h2>
<figure>
${SIZES.map(
  (size) =>
    html`<div class="${size.kind}" role="img" aria-label="${sheet.chartLabel}">${rowsChart(told, size, span)}</div>`,
)}
${legend(told)}
</figure>
<details><summary>${sheet.asTable}</summary>
<div class="scroll" tabindex="0" role="region" aria-label="${sheet.asTable}"><table>
<thead><tr>${sheet.columns.map((title) => html`<th scope="col">${title}</th>`)}</tr></thead>
<tbody>${told.season.applications.map((one) => rowOf(one, told))}</tbody>
</table></div></details>
</section>`;
}

function legend({ words }: Told): Html {
  const { legend: said } = words.sheet;
  const mark = (inner: Html, text: string) =>
    html`<li><svg viewBox="0 0 36 14" width="36" height="14" aria-hidden="true">${inner}</svg>${text}</li>`;
  return html`<ul class="legend">
${mark(html`<rect x="0" y="2" width="12" height="10" fill="url(#plan-in)"/><rect x="12" y="2" width="12" height="10" fill="var(--navy-band)"/><rect x="24" y="2" width="12" height="10" fill="url(#plan-out)"/>`, said.window)}
${mark(html`<path d="M18,0 L25,7 L18,14 L11,7 Z" fill="var(--navy)"/>`, said.chosen)}
${mark(html`<rect x="13" y="2" width="10" height="10" fill="var(--moss)"/>`, said.done)}
${mark(html`<path d="M18,2 V12" stroke="var(--ink)"/>`, said.usual)}
${mark(html`<path d="M18,0 V14" stroke="var(--ink)" stroke-dasharray="2 3"/>`, said.today)}
</ul>`;
}

function rowOf(application: Application, told: Told): Html {
  const { name, status, window, date, inWindow } = application;
  const { sheet } = told.words;
  const isOver = status === 'dropped' || status === 'skipped';
  return html`<tr><th scope="row">${name}</th><td>${sheet.status[status]}</td>
<td>${isOver ? '' : aboutDay(window.opens, told)}</td><td>${isOver ? '' : aboutDay(window.closes, told)}</td>
<td>${date === null ? '' : dayOn(date, told)}</td><td>${inWindow === null ? '' : sheet.inTen(Math.round(10 * inWindow))}</td></tr>`;
}
