import { Html, html } from '../html.ts';

/** What the finder looks through, as it stands in the page. */
export interface FinderData {
  /** Id, name, latitude and longitude, to a tenth of a degree. */
  readonly places: readonly (readonly [id: string, name: string, latitude: number, longitude: number])[];
  /** The middle of all ZIP codes that begin with three digits. */
  readonly zips: Readonly<Record<string, readonly [latitude: number, longitude: number]>>;
  readonly miles: boolean;
  /** With `{}` for the distance. */
  readonly away: string;
}

/** Data inside of a page: "<" would end it. */
export const finderData = (data: FinderData): Html =>
  html`<script type="application/json" id="finder-data">${new Html(JSON.stringify(data).replace(/</g, '\\u003c'))}</script>
`;

/**
 * Finds the places nearest to a ZIP code, or those whose name holds what is typed, as it is typed. Distances along the great
 * circle on a sphere of 6371 km, as `greatCircleKm` has them; a ZIP's middle is off by up to some 100 km in the wide west.
 */
export const finderScript = `'use strict';
(() => {
  const data = JSON.parse(document.getElementById('finder-data').textContent);
  const form = document.getElementById('finder');
  const input = document.getElementById('finder-input');
  const list = document.getElementById('finder-found');
  const none = document.getElementById('finder-none');
  const plain = (text) => text.normalize('NFD').replace(/\\p{M}/gu, '').toLowerCase().trim();
  const sine = (degrees) => Math.sin((degrees * Math.PI) / 360) ** 2;
  const cosine = (degrees) => Math.cos((degrees * Math.PI) / 180);
  const far = ([a, b], [c, d]) => 12742 * Math.asin(Math.min(1, Math.sqrt(sine(c - a) + cosine(a) * cosine(c) * sine(d - b))));
  const said = (km) => data.away.replace('{}', data.miles ? Math.round(km / 1.609344) + ' mi' : Math.round(km) + ' km');
  const foundBy = (typed) => {
    const at = /^\\d{5}/.test(typed) ? data.zips[typed.slice(0, 3)] : undefined;
    if (at) return data.places
      .map((place) => ({ place, km: far(at, [place[2], place[3]]) }))
      .sort((x, y) => x.km - y.km).slice(0, 5);
    const wanted = plain(typed);
    const named = data.places.map((place) => ({ place, km: null, at: plain(place[1]).indexOf(wanted) }));
    return named.filter((one) => one.at >= 0).sort((x, y) => x.at - y.at).slice(0, 20);
  };
  const show = () => {
    const typed = input.value.trim();
    const isPart = typed === '' || /^\\d{1,4}$/.test(typed);
    const found = isPart ? [] : foundBy(typed);
    none.hidden = isPart || found.length > 0;
    list.replaceChildren(...found.map(({ place, km }) => {
      const item = document.createElement('li');
      const link = document.createElement('a');
      link.href = place[0] + '/index.html';
      link.textContent = place[1];
      item.append(link, km === null ? '' : ', ' + said(km));
      return item;
    }));
  };
  form.hidden = false;
  form.addEventListener('submit', (event) => { event.preventDefault(); list.querySelector('a')?.click(); });
  input.addEventListener('input', show);
})();
`;
