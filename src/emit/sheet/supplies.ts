import { type Limit, limitInWords } from '../../model/limit.ts';
import type { Purchase } from '../../model/season.ts';
import { type Html, html } from '../html.ts';
import { buyLine, weighed } from './first-screen.ts';
import { dayOn, shortDay, type Told } from './told.ts';

/** What is to be bought, and what is left of the limits. */
export function supplies(told: Told): Html {
  const { season, words } = told;
  return html`${
    season.shopping.length === 0
      ? null
      : html`<section id="buy" aria-labelledby="buy-title"><h2 id="buy-title">${words.sheet.buy}</h2>
<ul class="plain">${season.shopping.map((one) => purchase(one, told))}</ul></section>`
  }
${
  season.limits.length === 0
    ? null
    : html`<section id="limits" aria-labelledby="limits-title"><h2 id="limits-title">${words.sheet.limits}</h2>
<ul class="plain">${alike(season.limits, told).map((one) => limitLine(one, told))}</ul></section>`
}`;
}

function purchase(one: Purchase, told: Told): Html {
  const { name, needKg, needL, shelfKg, shelfL, packages, buyBy, left, keeps } = one;
  const { sheet } = told.words;
  const shelf = (shelfKg ?? shelfL ?? 0) === 0 ? null : weighed(shelfKg, shelfL, told);
  const head =
    packages.length > 0
      ? buyLine(one, told)
      : html`${buyBy === null ? sheet.enough(name) : sheet.short(name, dayOn(buyBy, told))}`;
  const rest = left === null ? null : html`; ${sheet.leftOver(left, keeps?.how ?? null)}`;
  return html`<li>${head}<br><span class="soft">${sheet.need(weighed(needKg, needL, told), shelf)}${rest}.</span></li>`;
}

/** A limit with all areas that share its figures. */
interface Shared {
  readonly limit: Limit;
  readonly areas: string[];
}

function alike(limits: readonly Limit[], { display }: Told): Shared[] {
  const found = new Map<string, Shared>();
  for (const limit of limits) {
    const key = JSON.stringify([
      limit.name,
      limit.source,
      limit.from,
      limit.to,
      limit.ok,
      limitInWords(limit, display),
    ]);
    const shared = found.get(key) ?? { limit, areas: [] };
    shared.areas.push(limit.area);
    found.set(key, shared);
  }
  return [...found.values()];
}

const BAR = { width: 200, height: 12 };

/** A limit as a bar with its words: what is done is solid, what is planned is hatched. */
function limitLine({ limit, areas }: Shared, told: Told): Html {
  const { words, display, season } = told;
  const { of, by, source, from, to, ok } = limit;
  const nutrients: Readonly<Record<string, string>> = words.limit.nutrients;
  const product = season.shopping.find(({ product: id }) => id === of.product)?.name ?? of.product;
  const what = nutrients[of.nutrient ?? ''] ?? of.active ?? product ?? limit.name;
  const setBy = by === 'label' ? (source ?? '') : words.sheet.limitBy[by];
  const whose =
    from === null || to === null
      ? setBy
      : words.sheet.limitDays(setBy, shortDay(from, told) ?? from, shortDay(to, told) ?? to);
  const said = limitInWords(limit, display);
  const bare = (rate: string) => rate.replace(/ .*/, '');
  const use = ok
    ? words.sheet.limitUse(bare(said.done), bare(said.planned), bare(said.left))
    : words.sheet.limitOver(bare(said.done), bare(said.planned));
  return html`<li>${bar(limit)}<b>${words.sheet.limitOf(what, areas.join(', '), said.limit, whose)}</b> ${use}.</li>`;
}

function bar({ doneGPerM2, doneMlPerM2, plannedGPerM2, plannedMlPerM2, limitGPerM2, limitMlPerM2 }: Limit): Html {
  const whole = limitGPerM2 ?? limitMlPerM2 ?? 0;
  const wide = (value: number | null) =>
    whole <= 0 ? 0 : Math.min(BAR.width, Math.round((BAR.width * (value ?? 0)) / whole));
  const done = wide(doneGPerM2 ?? doneMlPerM2);
  const planned = Math.min(BAR.width - done, wide(plannedGPerM2 ?? plannedMlPerM2));
  return html`<svg class="bar" viewBox="-1 -1 ${BAR.width + 2} ${BAR.height + 2}" width="${BAR.width + 2}" height="${BAR.height + 2}" aria-hidden="true"><rect width="${done}" height="${BAR.height}" fill="var(--moss)"/><rect x="${done}" width="${planned}" height="${BAR.height}" fill="url(#hatch)"/><rect width="${BAR.width}" height="${BAR.height}" fill="none" stroke="var(--ink)"/></svg>`;
}
