import { wordsOf } from '../../words/words.ts';
import { html } from '../html.ts';
import { type FinderData, finderData, finderScript } from './finder.ts';
import { sitePage } from './page.ts';

/** A place as it stands in the list. */
export interface IndexEntry {
  readonly id: string;
  readonly name: string;
  readonly latitude: number;
  readonly longitude: number;
  readonly program: string;
}

/** What the first page of a site tells. */
export interface IndexAbout {
  readonly name: string;
  readonly about: string | null;
  readonly language: string;
  readonly units: 'us' | 'metric';
  readonly zips: FinderData['zips'];
}

/** A tenth of a degree is about 11 km: enough to find the nearest place, too little to find a garden. */
const toTenth = (degrees: number): number => Math.round(10 * degrees) / 10;

/** The first page of a site: the list of all places in the order of their names, and a finder where scripts run. */
export function indexPage(entries: readonly IndexEntry[], { name, about, language, units, zips }: IndexAbout): string {
  const words = wordsOf(language).site;
  const { compare } = new Intl.Collator(language);
  const places = entries.toSorted((a, b) => compare(a.name, b.name) || (a.id < b.id ? -1 : 1));
  const data: FinderData = {
    places: places.map((one) => [one.id, one.name, toTenth(one.latitude), toTenth(one.longitude)]),
    zips,
    miles: units === 'us',
    away: words.away('{}'),
  };
  const hasPlaces = places.length > 0;
  return sitePage({
    language,
    title: name,
    ...(hasPlaces && { script: finderScript }),
    body: html`<header>
<h1>${name}</h1>
${about === null ? null : html`<p>${about}</p>\n`}</header>
<main>
${
  hasPlaces
    ? html`<form id="finder" role="search" hidden>
<label for="finder-input">${words.find}: ${words.findLabel}</label>
<input id="finder-input" type="search" autocomplete="postal-code">
<div role="status"><p id="finder-none" hidden>${words.notFound}</p>
<ul id="finder-found" aria-label="${words.nearest}"></ul></div>
<p class="soft">${words.zipNote}</p>
</form>
<noscript><p>${words.noScript}</p></noscript>
<h2>${words.places}</h2>
<ul>
${places.map((one) => html`<li><a href="${one.id}/index.html">${one.name}</a> <span class="soft">${one.program}</span></li>\n`)}</ul>
`
    : null
}</main>
${hasPlaces ? finderData(data) : null}`,
  });
}
