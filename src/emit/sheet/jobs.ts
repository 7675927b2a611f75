import type { Application } from '../../model/season.ts';
import { type Html, html } from '../html.ts';
import { isTouchy } from './care.ts';
import { oddsOf } from './first-screen.ts';
import { aboutDay, dayOn, hoursOf, type Told } from './told.ts';

/** The jobs of the season in the order of their days. */
export function jobs(told: Told): Html {
  const { season, words } = told;
  return html`<section id="jobs" aria-labelledby="jobs-title">
<h2 id="jobs-title">${words.sheet.jobs}</h2>
${season.applications.map((one) => job(one, told))}
</section>`;
}

const list = (lines: readonly string[]): Html | null =>
  lines.length === 0 ? null : html`<ul>${lines.map((line) => html`<li>${line}</li>`)}</ul>`;

function job(application: Application, told: Told): Html {
  const { name, status, date, how, cautions, used, why, sources, window, inAll } = application;
  const { words } = told;
  const when = date === null ? (status === 'expected' ? aboutDay(window.opens, told) : '') : dayOn(date, told);
  const hours = hoursOf(application, told);
  const head = [words.sheet.status[status], when, hours, inAll].filter((part) => part);
  const care = [
    ...cautions,
    ...(isTouchy(application) && status !== 'done' && how.length > 0 ? [words.feed.labelWins] : []),
  ];
  return html`<article class="job ${status}">
<h3>${name}</h3>
<p class="head">${head.join(' · ')}</p>
${oddsOf(application, told)}
${list(how)}${list(used)}
${care.length === 0 ? null : html`<h4>${words.feed.cautions}</h4>${list(care)}`}
<details><summary>${words.sheet.whyAndSources}</summary>${list(why)}${sources.length === 0 ? null : html`<h4>${words.sheet.sources}</h4>${list(sources)}`}</details>
</article>`;
}
