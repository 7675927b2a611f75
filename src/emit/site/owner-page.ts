import type { Season } from '../../model/season.ts';
import { wordsOf } from '../../words/words.ts';
import { html } from '../html.ts';
import { sitePage } from './page.ts';
import { subscribePart } from './place-page.ts';
import { seasonPart } from './season-part.ts';

/** The page of somebody's own lawn, which is in no list. @param feed Its feed, from the site's folder. */
export function ownerPage(season: Season, feed: string, baseUrl: string | null): string {
  const { language } = season.display;
  return sitePage({
    language,
    title: season.lawnName,
    hidden: true,
    body: html`<header>
<h1>${season.lawnName}</h1>
<p>${season.programName}</p>
</header>
<main>
${seasonPart(season, season.now)}${subscribePart(feed, baseUrl, wordsOf(language).site)}</main>`,
  });
}
