import { type Expected, error, type Found, note, type When, warning } from './forms.ts';

export interface Reference {
  readonly place: string;
  readonly origin: string;
  readonly km: number;
  readonly heightM: number | null;
}

/** Miles in a kilometre, feet in a metre: a problem does not know whose units its reader wants. */
const [MILES, FEET] = [1 / 1.609344, 1 / 0.3048];
const distance = (km: number): string => `${km} km (${Math.round(km * MILES)} miles)`;
const height = (m: number): string => `${m} m (${Math.round(m * FEET)} ft)`;

const away = ({ km, heightM }: Reference): string =>
  `${distance(km)} away${heightM === null ? "; the lawn's height is not known: add location.elevation" : ` and ${height(Math.abs(heightM))} ${heightM < 0 ? 'higher' : 'lower'} than the lawn`}`;

/** Where a reference climate's figures come from, for a reader. */
const ORIGIN: Readonly<Record<string, string>> = {
  measured: 'published normals',
  derived: 'worked out from daily readings',
  'from memory': 'figures not checked against a published table',
};

/** Problems of weather. */
export const weather = {
  // Weather
  'weather-none': error(
    (_: Found) =>
      'There is no weather: the file has no row with a day. It needs "date,tmin,tmax" and at least a year of days.',
  ),
  'weather-header': error(
    (a: { missing: string; found: string }) =>
      `The first line has to name the columns; ${a.missing} is missing (found: ${a.found}). Expected date, tmin, tmax and if you like precip, each with _c, _f, _mm or _in or by the lawn's "weather.units".`,
  ),
  'weather-units': error(
    (_: Found) =>
      'The columns name no unit. Write tmin_c or tmin_f, or set "weather.units" in the lawn file to metric or us.',
  ),
  'weather-value': error(
    (a: Expected) => `"${a.found}" is not ${a.expected}. Leave the cell empty where nothing was measured.`,
  ),
  'weather-cells': error(
    (a: { found: number; expected: number }) =>
      `This line has ${a.found} cells; the first line names ${a.expected} columns.`,
  ),
  'weather-twice': error((a: When) => `${a.date} stands here a second time. Keep one of the two lines.`),
  'weather-order': error(
    (a: When & { before: string }) => `${a.date} comes after ${a.before}; days have to rise from line to line.`,
  ),
  'weather-crossed': error(
    (a: When & { tmin: string; tmax: string }) => `${a.date}: the minimum ${a.tmin} is above the maximum ${a.tmax}.`,
  ),
  'weather-gap': warning(
    (a: { from: string; days: number }) =>
      `${a.days} days are missing from ${a.from} on; they are filled from the usual weather of the file.`,
  ),
  'weather-gap-short': note(
    (a: { from: string; days: number }) => `${a.days} day(s) missing from ${a.from} on; filled between the neighbours.`,
  ),
  'weather-gaps-more': note(
    (a: { gaps: number; days: number }) =>
      `${a.gaps} earlier gaps with ${a.days} days in all are filled in the same way.`,
  ),
  'weather-hole': error(
    (a: { from: string; days: number }) =>
      `${a.days} days are missing from ${a.from} on, within a year of the as-of day: no date can rest on that. Add the days.`,
  ),
  'weather-unit-suspect': error(
    (a: { column: string; mean: string; unit: string; other: string }) =>
      `The warmest month has a mean ${a.column} of ${a.mean}: that cannot be ${a.unit}. Is the file in ${a.other}? Name the columns tmin_${a.other === '°F' ? 'f' : 'c'} and tmax_${a.other === '°F' ? 'f' : 'c'}.`,
  ),
  'weather-range': error(
    (a: When & Found) => `${a.date}: ${a.found} has never been measured outdoors. Check unit and sign.`,
  ),
  'weather-few-days': error(
    (a: { days: number; needed: number }) =>
      `The weather holds ${a.days} days up to the as-of day; fewer than ${a.needed} are taken for a mistake. Add days, or leave "weather" out: the plan then goes by the nearest known climate.`,
  ),
  'weather-too-short': error(
    (a: { years: number; needed: number }) =>
      `The weather before the as-of day holds ${a.years} usable past years; at least ${a.needed} are needed to give a date and its spread. Add years to "weather.files".`,
  ),
  'weather-few-years': warning((a: { years: number }) => `Only ${a.years} past years: the spreads are rough below 20.`),
  'weather-ends-early': warning(
    (a: { last: string; days: number }) =>
      `The observed weather ends on ${a.last}, ${a.days} days before the as-of day; from there past years stand in, and nothing is chosen within 5 days.`,
  ),
  'climate-near': note(
    (a: Reference) =>
      `No weather of this place was seen for long enough: its usual weather is taken from ${a.place}, ${away(a)} (${ORIGIN[a.origin] ?? a.origin}). Add a weather file or a service for dates of this place and year.`,
  ),
  'climate-far': warning(
    (a: Reference) =>
      `No weather of this place was seen for long enough: its usual weather is taken from ${a.place}, ${away(a)} (${ORIGIN[a.origin] ?? a.origin}): dates can be off by a week and more. Add a weather file from nearby, or a service.`,
  ),
  'climate-too-far': error(
    (a: Reference) =>
      `The nearest place whose usual weather is known is ${a.place}, ${away(a)}; beyond ${distance(400)} none can stand in. Add a weather file ("weather.files") or a service ("weather.service") to the lawn file.`,
  ),
  'reading-unused': note(
    (a: When & { why: string }) => `The thermometer's reading of ${a.date} is not used: ${a.why}.`,
  ),
  'reading-doubted': warning(
    (a: { date: string; reads: string; modelled: string; sds: number }) =>
      `The thermometer's ${a.reads} on ${a.date} is ${a.sds} standard deviations from the ${a.modelled} of the model: more likely a slip than news. It is not used; check depth, scale and date.`,
  ),
  'weather-unseen': error(
    (_: object) =>
      'No weather was observed for this lawn. Name files under "weather.files", or a service under "weather.service" and fetch from it: soilclock weather fetch',
  ),
  'weather-stuck': warning(
    (a: { from: string; days: number }) =>
      `The same minimum and maximum stand on ${a.days} days from ${a.from} on: a stuck sensor, or a column filled in. Empty the cells if they were not measured.`,
  ),
  'weather-jump': warning(
    (a: When & { change: string }) =>
      `${a.date}: ${a.change} from one day to the next is more than weather does. Check the two lines.`,
  ),
  'weather-unit-mix': warning(
    (a: { from: string; days: number }) =>
      `${a.days} days from ${a.from} on lie far above the usual: are they in °F in a file of °C?`,
  ),
} as const;
