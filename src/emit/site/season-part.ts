import { parseDay } from '../../base/day.ts';
import { displayOf } from '../../base/display.ts';
import type { Application, Season } from '../../model/season.ts';
import { wordsOf } from '../../words/words.ts';
import { type Html, html } from '../html.ts';
import { windowsOf } from './windows.ts';

/**
 * What a page tells of a place's season: what now, the windows, then each work with how, care, why and sources.
 *
 * @param season As its reader may see it.
 * @param told What now, where somebody has told it; else what is open and near.
 */
export function seasonPart(season: Season, told: readonly string[] | null = null): Html {
  const words = wordsOf(season.display.language);
  const { now, table } = windowsOf(season);
  const work = season.applications.filter(({ status }) => status !== 'dropped' && status !== 'skipped');
  const over = (one: Application) => one.status === 'done' || one.status === 'missed';
  return html`<section aria-labelledby="now">
<h2 id="now">${words.site.now}</h2>
<div class="now">${listOf(told ?? now)}</div>
<p class="soft">${words.site.asOf(dayOf(season))}${told === null ? ` ${words.site.rough}` : null}</p>
</section>
<section>
<h2>${words.site.windows}</h2>
${table}</section>
<section aria-labelledby="steps">
<h2 id="steps">${words.site.steps}</h2>
<p>${words.feed.labelWins}</p>
${work.filter((one) => !over(one)).map((one) => stepPart(one, season))}</section>
`;
}

/** What is open or near, for a small page inside of another one. */
export const nowPart = (season: Season): Html =>
  html`<div class="now">${listOf(windowsOf(season).now)}</div>
<p class="soft">${wordsOf(season.display.language).site.asOf(dayOf(season))} ${wordsOf(season.display.language).feed.labelWins}</p>
`;

const dayOf = ({ asOf, display: { units, language } }: Season): string =>
  displayOf(units, language).fullDay(parseDay(asOf) ?? 0);

const listOf = (lines: readonly string[]): Html => html`<ul>
${lines.map((line) => html`<li>${line}</li>\n`)}</ul>
`;

function stepPart({ name, how, cautions, why, sources, notJudged, hours }: Application, season: Season): Html {
  const { feed, site } = wordsOf(season.display.language);
  const hoursLine = feed.hours[hours];
  const section = (title: string, lines: readonly string[]) =>
    lines.length === 0 ? null : html`<h4>${title}</h4>\n${listOf(lines)}`;
  const inside = (title: string, lines: readonly string[]) =>
    lines.length === 0 ? null : html`<details><summary>${title}</summary>\n${listOf(lines)}</details>\n`;
  return html`<article>
<h3>${name}</h3>
${section(feed.whatToDo, [...how, ...(hoursLine === null ? [] : [hoursLine])])}${section(feed.cautions, [
  ...cautions,
  ...(notJudged.length > 0 ? [feed.lookFirst(notJudged)] : []),
])}${inside(feed.whyThen, why)}${inside(site.sources, sources)}</article>
`;
}
