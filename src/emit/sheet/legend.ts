import { type Html, html } from '../html.ts';
import type { Told } from './told.ts';

/** What the marks of the drawings stand for. */
export function legend({ words, season }: Told, hasHeat: boolean): Html {
  const { legend: said } = words.sheet;
  const mark = (inner: Html, text: string) =>
    html`<li><svg viewBox="0 0 36 14" width="36" height="14" aria-hidden="true">${inner}</svg>${text}</li>`;
  const line = (colour: string, width: number, dash = '') =>
    html`<path d="M0,7 H36" stroke="var(--${colour})" stroke-width="${width}"${dash === '' ? null : html` stroke-dasharray="${dash}"`}/>`;
  const hasForecast = season.signals.forecast.soil5C.length > 0;
  return html`<ul class="legend">
${mark(line('soil', 2.8), said.soil)}
${mark(html`<rect x="0" y="1" width="36" height="12" fill="var(--soil)" fill-opacity="0.16"/>${line('soil', 1.1)}`, said.usualSoil)}
${mark(line('air', 1), said.air)}
${mark(line('air', 0.8, '1 2'), hasHeat ? said.usualAirAndHeat : said.usualAir)}
${hasForecast ? mark(line('soil', 2.8, '5 3'), said.forecast) : null}
${mark(line('navy', 2.4), said.awaited)}
${mark(html`<rect x="0" y="2" width="12" height="10" fill="url(#plan-in)"/><rect x="12" y="2" width="12" height="10" fill="var(--navy-band)"/><rect x="24" y="2" width="12" height="10" fill="url(#plan-out)"/>`, said.window)}
${mark(html`<path d="M18,0 L25,7 L18,14 L11,7 Z" fill="var(--navy)"/>`, said.chosen)}
${mark(html`<rect x="13" y="2" width="10" height="10" fill="var(--moss)"/>`, said.done)}
${mark(html`<path d="M18,2 V12" stroke="var(--ink)"/>`, said.usual)}
${mark(html`<path d="M18,0 V14" stroke="var(--ink)" stroke-dasharray="2 3"/>`, said.today)}
</ul>`;
}
