import type { Application, Purchase } from '../../model/season.ts';
import { type Html, html } from '../html.ts';
import { isTouchy } from './care.ts';
import { dayOf, nextWork } from './next-work.ts';
import { aboutDay, dayOn, hoursOf, isPublic, minutesOf, nameOf, type Told } from './told.ts';

/** The first screen: what now, when, how much, why. */
export function firstScreen(told: Told): Html {
  const { season, words } = told;
  const { next, isFar, before, buys, after, stuck } = nextWork(season);
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
${oddsOf(next, told)}
${amountOf(next, told)}
</div>
${asideOf('before', sheet.before, [...before.map((one) => bought(one, told)), ...stuck.map((one) => stuckLine(one, told))])}
<div class="because">
${whyOf(next, told)}
${careOf(next, told)}
</div>
${asideOf('after', sheet.after, [...buys.map((one) => bought(one, told)), ...after.map((one) => afterLine(one, told))])}
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

/** Letters of an amount, a height or a depth; more than these is a text to read. */
const SHORT = 30;
const isLong = (text: string | null): boolean => (text ?? '').length > SHORT;

/** How much in all and on each area; the first line of how where nothing is weighed. */
function amountOf(application: Application, told: Told): Html | null {
  const { inAll, how, areas, areasDone } = application;
  const { words, display } = told;
  const left = areas.filter(({ id }) => !areasDone.includes(id));
  const [first = null] = how;
  const isKnown = inAll !== null;
  const much = inAll ?? left[0]?.amount ?? null;
  // At a place there is no lawn to measure off for: the rate stands in the first line.
  if (isPublic(told))
    return first === null
      ? null
      : html`<h3>${words.sheet.howMuch}</h3><p class="${isLong(first) ? 'long' : 'much'}">${first}</p>`;
  return html`<h3>${words.sheet.howMuch}</h3>
<p class="${isLong(much ?? first) ? 'long' : 'much'}">${much ?? first ?? words.sheet.noAmount}</p>
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

/** A line with the day that it stands at. */
interface Dated {
  readonly day: string;
  readonly line: Html;
}

/** What comes before or after, in the order of its days. */
function asideOf(kind: 'before' | 'after', title: string, lines: readonly Dated[]): Html | null {
  if (lines.length === 0) return null;
  const inTime = [...lines].sort((a, b) => (a.day < b.day ? -1 : a.day > b.day ? 1 : 0));
  return html`<div class="aside ${kind}"><h3>${title}</h3><ul>${inTime.map(({ line }) => html`<li>${line}</li>`)}</ul></div>`;
}

/** What is to be bought, with what it is for and what of it is there. */
function bought(one: Purchase, told: Told): Dated {
  const { shelfKg, shelfL, neededOn, buyBy } = one;
  const shelf = (shelfKg ?? shelfL ?? 0) === 0 ? null : weighed(shelfKg, shelfL, told);
  const why = neededOn === null ? null : told.words.sheet.buyFor(dayOn(neededOn, told), shelf);
  return {
    day: buyBy ?? '',
    line: html`${buyLine(one, told)}${why === null ? null : html` <span class="soft">(${why})</span>`}`,
  };
}

/** An amount by weight or by volume. */
export const weighed = (kg: number | null, litres: number | null, { display }: Told): string =>
  kg !== null ? display.mass(kg) : litres === null ? '' : display.volume(litres / 1000);

function stuckLine(application: Application, told: Told): Dated {
  const last = application.window.closes.p50 ?? application.window.closes.p90;
  const name = nameOf(application, told);
  return { day: last ?? '9', line: html`${told.words.sheet.stuck(name, last === null ? null : dayOn(last, told))}` };
}

/** What is to be bought, and by when. */
export function buyLine({ packages, name, buyBy, cost }: Purchase, told: Told): Html {
  const { words, display, season } = told;
  const what = packages.map(({ size, count }) => `${count} × ${size}`).join(' + ');
  const money = cost === null ? '' : `, ${display.money(cost, season.display.currency)}`;
  return html`<b>${words.sheet.buyBy(dayOn(buyBy ?? season.asOf, told))}</b>: ${words.now.amountOf(what, name)}${money}`;
}

function afterLine(application: Application, told: Told): Dated {
  const inAll = application.inAll === null ? null : `, ${application.inAll}`;
  return {
    day: dayOf(application) ?? '',
    line: html`<b>${whenOf(application, told)}</b>: ${nameOf(application, told)}${inAll}`,
  };
}
