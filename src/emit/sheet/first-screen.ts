import type { Application, Purchase } from '../../model/season.ts';
import { type Html, html } from '../html.ts';
import { isTouchy } from './care.ts';
import { nextWork } from './next-work.ts';
import { aboutDay, dayOn, hoursOf, isPublic, minutesOf, nameOf, type Told } from './told.ts';

/** The first screen: what now, when, how much, why. */
export function firstScreen(told: Told): Html {
  const { season, words } = told;
  const { next, isFar, before, buys, after } = nextWork(season);
  if (next === null)
    return html`<section id="now" aria-labelledby="now-title"><h2 id="now-title">${words.now.seasonOver}</h2></section>`;
  const { sheet } = words;
  const kicker = isFar ? sheet.nothingNow : sheet.kicker[next.status as keyof typeof sheet.kicker];
  return html`<section id="now" aria-labelledby="now-title">
<div class="next">
<p class="kicker">${kicker}</p>
<h2 id="now-title">${nameOf(next, told)}</h2>
<p class="when">${whenOf(next, told)}</p>
<p class="hours">${hoursLine(next, told)}</p>
${amountOf(next, told)}
</div>
${asideOf('before', sheet.before, before, told)}
<div class="because">
${oddsOf(next, told)}
${whyOf(next, told)}
${careOf(next, told)}
</div>
${asideOf('after', sheet.after, buys, told, after)}
</section>`;
}

const whenOf = (application: Application, told: Told): string =>
  application.date === null ? aboutDay(application.window.opens, told) : dayOn(application.date, told);

/** The hours of the day, how long, and what they wait for. */
function hoursLine(application: Application, told: Told): string | null {
  const { sheet, feed } = told.words;
  const [hours, minutes] = [hoursOf(application, told), minutesOf(application)];
  if (hours === null || minutes === null) return null;
  const when = feed.hours[application.hours];
  return `${hours}, ${sheet.minutes(minutes)}.${when === null ? '' : ` ${when}`}`;
}

/** How much in all and on each area; the first line of how where nothing is weighed. */
function amountOf(application: Application, told: Told): Html | null {
  const { inAll, how, areas, areasDone } = application;
  const { words, display } = told;
  const left = areas.filter(({ id }) => !areasDone.includes(id));
  const [first = null] = how;
  const isKnown = inAll !== null;
  const much = inAll ?? left[0]?.amount ?? null;
  // At a place there is no lawn to measure off for: the rate stands in the first line.
  if (isPublic(told)) return first === null ? null : html`<h3>${words.sheet.howMuch}</h3><p class="much">${first}</p>`;
  return html`<h3>${words.sheet.howMuch}</h3>
<p class="much">${much ?? first ?? words.sheet.noAmount}</p>
${much !== null && first !== null ? html`<p>${first}</p>` : null}
<ul class="areas">${left.map(({ id, areaM2, amount }) =>
    isKnown && amount !== null
      ? html`<li>${id} <b>${amount}</b></li>`
      : html`<li>${id} <span class="soft">${display.area(areaM2)}</span></li>`,
  )}</ul>`;
}

const MARKS = 10;

/** The odds in words and as ten small marks, filled as far as they go. */
export function oddsOf({ inWindow }: Application, { words }: Told): Html | null {
  if (inWindow === null) return null;
  const inTen = Math.round(MARKS * inWindow);
  const marks = Array.from(
    { length: MARKS },
    (_, i) => html`<rect x="${1 + 14 * i}" y="1" width="10" height="10"${i < inTen ? html` class="full"` : null}/>`,
  );
  return html`<p class="odds"><svg viewBox="0 0 138 12" width="138" height="12" aria-hidden="true">${marks}</svg> ${words.sheet.odds(inTen)}</p>`;
}

/** Lines of why that fit a first screen: the rule, the value today, the expected day. */
const LINES = 3;

function whyOf({ why, whyNow }: Application, { words }: Told): Html | null {
  const lines = why.filter((line) => line !== whyNow).slice(0, LINES);
  if (lines.length === 0) return null;
  return html`<h3>${words.feed.why}</h3>
<div class="whys">${lines.map((line) => html`<p>${line}</p>`)}</div>`;
}

function careOf(application: Application, { words }: Told): Html | null {
  const lines = [
    ...(application.notJudged.length > 0 ? [words.feed.lookFirst(application.notJudged)] : []),
    ...(isTouchy(application) ? [words.feed.labelWins] : []),
  ];
  return lines.length === 0 ? null : html`<div class="care">${lines.map((line) => html`<p>${line}</p>`)}</div>`;
}

/** What comes before or after: what to buy, then work. */
function asideOf(
  kind: 'before' | 'after',
  title: string,
  buys: readonly Purchase[],
  told: Told,
  work: readonly Application[] = [],
): Html | null {
  const lines = [...buys.map((one) => buyLine(one, told)), ...work.map((one) => afterLine(one, told))];
  return lines.length === 0
    ? null
    : html`<div class="aside ${kind}"><h3>${title}</h3><ul>${lines.map((line) => html`<li>${line}</li>`)}</ul></div>`;
}

/** What is to be bought, and by when. */
export function buyLine({ packages, name, buyBy, cost }: Purchase, told: Told): Html {
  const { words, display, season } = told;
  const what = packages.map(({ size, count }) => `${count} × ${size}`).join(' + ');
  const money = cost === null ? '' : `, ${display.money(cost, season.display.currency)}`;
  return html`<b>${words.sheet.buyBy(dayOn(buyBy ?? season.asOf, told))}</b>: ${words.now.amountOf(what, name)}${money}`;
}

function afterLine(application: Application, told: Told): Html {
  return html`<b>${whenOf(application, told)}</b>: ${nameOf(application, told)}${application.inAll === null ? null : `, ${application.inAll}`}`;
}
