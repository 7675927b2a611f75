import type { Application } from '../../model/season.ts';
import { Html, html } from '../html.ts';
import { isTouchy, sharedCautions } from './care.ts';
import { oddsOf } from './first-screen.ts';
import { aboutDay, dayOn, hoursOf, nameOf, type Told } from './told.ts';

/** The jobs of the season in the order of their days. */
export function jobs(told: Told, ways: { readonly narrow: string; readonly wide: string } | null): Html {
  const { season, words } = told;
  const shared = sharedCautions(season);
  return html`<section id="jobs" aria-labelledby="jobs-title">
<h2 id="jobs-title">${words.sheet.jobs}</h2>
${season.applications.map((one) => job(one, shared, told))}
${shared.length === 0 ? null : html`<p class="shared once"><b>${words.sheet.forAll}</b> ${shared.join(' ')}</p>`}
${waysSection(ways, told)}
</section>`;
}

/** The ways over the areas. They are drawn in ink on paper, in the dark as well. */
const waysSection = (ways: { readonly narrow: string; readonly wide: string } | null, { words }: Told): Html | null =>
  ways &&
  html`<figure class="ways"><h3>${words.sheet.ways.title}</h3>
<div class="narrow" role="img" aria-label="${words.sheet.ways.title}">${new Html(ways.narrow)}</div><div class="wide" role="img" aria-label="${words.sheet.ways.title}">${new Html(ways.wide)}</div>
<figcaption>${words.sheet.ways.legend}</figcaption></figure>`;

const list = (lines: readonly string[]): Html | null =>
  lines.length === 0 ? null : html`<ul>${lines.map((line) => html`<li>${line}</li>`)}</ul>`;

function job(application: Application, shared: readonly string[], told: Told): Html {
  const { status, date, how, cautions, used, why, sources, window, inAll } = application;
  const { words } = told;
  const when = date === null ? (status === 'expected' ? aboutDay(window.opens, told) : '') : dayOn(date, told);
  const head = [words.sheet.status[status], when, hoursOf(application, told), inAll].filter((part) => part);
  const isLaw = isTouchy(application) && how.length > 0;
  return html`<article class="job ${status}${inAll === null ? null : ' amounts'}">
<div class="do"><h3>${nameOf(application, told)}</h3>
<p class="head">${head.join(' · ')}</p>
${oddsOf(application, told)}
${list(how)}${onEach(application)}${list(used)}</div>
${
  cautions.length === 0 && !isLaw
    ? null
    : html`<div class="take"><h4>${words.feed.cautions}</h4>${cautionList(cautions, shared)}${isLaw ? html`<p>${words.feed.labelWins}</p>` : null}</div>`
}
<details><summary>${words.sheet.whyAndSources}<span class="hidden">: ${nameOf(application, told)}</span></summary>${list(why)}${
    sources.length === 0 ? null : html`<h4>${words.sheet.sources}</h4>${list(sources)}`
  }</details>
</article>`;
}

/** The amounts of the areas in one line, for the printed sheet, where the lines on how are left out. */
const onEach = ({ areas, areasDone, inAll }: Application): Html | null =>
  inAll === null
    ? null
    : html`<p class="each" aria-hidden="true">${areas
        .flatMap(({ id, amount }) => (amount === null || areasDone.includes(id) ? [] : [`${id} ${amount}`]))
        .join(' · ')}</p>`;

/** Cautions, of which a printed sheet says those once that several jobs share. */
const cautionList = (cautions: readonly string[], shared: readonly string[]): Html | null =>
  cautions.length === 0
    ? null
    : html`<ul>${cautions.map((line) => (shared.includes(line) ? html`<li class="shared">${line}</li>` : html`<li>${line}</li>`))}</ul>`;
