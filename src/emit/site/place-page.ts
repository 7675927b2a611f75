import type { Program } from '../../model/program.ts';
import type { Season } from '../../model/season.ts';
import { type Words, wordsOf } from '../../words/words.ts';
import { type Html, html } from '../html.ts';
import { filesOfPlace, type Subscribing, subscribingTo } from './addresses.ts';
import { sitePage } from './page.ts';
import { qrCode } from './qr.ts';
import { nowPart, seasonPart } from './season-part.ts';

/** What the pages of a place tell besides its season. */
export interface PlaceAbout {
  readonly id: string;
  readonly name: string;
  /** What the whole site is called. */
  readonly siteName: string;
  /** Ends in a slash; null where nobody knows yet where the site will stand. */
  readonly baseUrl: string | null;
  readonly program: Pick<Program, 'name' | 'about' | 'author' | 'license'>;
  /** By which a program is known again. */
  readonly version: string;
  readonly changelog: readonly string[];
  /** Whether the place has a small page for other people's pages. */
  readonly embed: boolean;
}

/** The page of a place. @param season As the public may see it. */
export function placePage(season: Season, about: PlaceAbout): string {
  const { language } = season.display;
  const words = wordsOf(language);
  const { id, name, siteName, baseUrl } = about;
  const feed = filesOfPlace(id).feed;
  return sitePage({
    language,
    title: `${name}: ${siteName}`,
    head: html`<link rel="alternate" type="application/atom+xml" title="${words.site.moved}" href="changes.xml">
`,
    body: html`<header>
<p><a href="../index.html">${words.site.backToList}: ${siteName}</a></p>
<h1>${name}</h1>
<p>${about.program.name}</p>
</header>
<main>
${seasonPart(season)}${subscribePart(feed, baseUrl, words.site)}<section aria-labelledby="moved">
<h2 id="moved">${words.site.moved}</h2>
<p><a href="changes.txt">${words.site.movedText}</a>, <a href="changes.xml">${words.site.movedFeed}</a></p>
</section>
${about.embed && baseUrl !== null ? embedPart(about, baseUrl, words.site) : null}${programPart(about, words.site)}</main>`,
  });
}

/** A small page that stands inside of another one. @param season As the public may see it. */
export function embedPage(season: Season, { id, name }: PlaceAbout): string {
  const { language } = season.display;
  return sitePage({
    language,
    title: name,
    hidden: true,
    body: html`<main>
<h1><a href="index.html" target="_top">${name}</a></h1>
${nowPart(season)}<p><a href="${id}.ics" target="_top">${wordsOf(language).site.subscribe}</a></p>
</main>`,
  });
}

/** What stands for a place whose calendar has ended. */
export function endedPage(name: string, language: string): string {
  const words = wordsOf(language).site;
  return sitePage({
    language,
    title: words.endedTitle(name),
    hidden: true,
    body: html`<main>
<h1>${words.endedTitle(name)}</h1>
<p>${words.endedText}</p>
<p><a href="../index.html">${words.backToList}</a></p>
</main>`,
  });
}

/** How to follow a feed: without an address of the site only its file, else every way. @param feed From the site's folder. */
export function subscribePart(feed: string, baseUrl: string | null, words: Words['site']): Html {
  const file = feed.replace(/^.*\//, '');
  return html`<section aria-labelledby="subscribe">
<h2 id="subscribe">${words.subscribe}</h2>
<p>${words.subscribeText}</p>
${baseUrl === null ? null : waysPart(subscribingTo(baseUrl, feed), words)}<p><a href="${file}">${words.feedFile}</a></p>
</section>
`;
}

const waysPart = ({ https, webcal, google }: Subscribing, words: Words['site']): Html => html`<ul>
<li><a href="${webcal}">${words.openIn}</a></li>
<li><a href="${google}" rel="noopener">${words.addGoogle}</a></li>
<li>${words.byAddress} <a class="address" href="${https}">${https}</a></li>
</ul>
${qrCode(webcal, words.qr)}
`;

function embedPart({ id, name }: PlaceAbout, baseUrl: string, words: Words['site']): Html {
  const shown = html`${name}`.text;
  const snippet = `<iframe src="${baseUrl}${filesOfPlace(id).embed}" title="${shown}" width="100%" height="320" loading="lazy"></iframe>`;
  return html`<section aria-labelledby="embed">
<h2 id="embed">${words.embed}</h2>
<p>${words.embedText}</p>
<pre><code>${snippet}</code></pre>
</section>
`;
}

function programPart({ program, version, changelog }: PlaceAbout, words: Words['site']): Html {
  const { name, about, author, license } = program;
  return html`<section aria-labelledby="program">
<h2 id="program">${words.program}</h2>
<p>${name}. ${words.version(version)}.${author === undefined ? null : ` ${words.author(author)}`}${license === undefined ? null : ` ${words.license(license)}`}</p>
${about === undefined ? null : html`<p>${about}</p>\n`}${
  changelog.length === 0
    ? null
    : html`<h3>${words.changelog}</h3>
<ul>
${changelog.map((line) => html`<li>${line}</li>\n`)}</ul>
`
}</section>
`;
}
