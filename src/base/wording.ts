/**
 * Every problem that soilclock can report: its severity and its words, in one place.
 * A sentence says what is, what was expected, and what to do. Tests match codes, never prose.
 */
const list = (words: readonly string[]): string => words.join(', ');
const meant = (nearest: string | null): string => (nearest === null ? '' : ` Did you mean "${nearest}"?`);

interface Found {
  readonly found: string;
}
interface Expected extends Found {
  readonly expected: string;
}
interface Word extends Found {
  readonly allowed: readonly string[];
  readonly nearest: string | null;
}
interface Step {
  readonly step: string;
}
interface When {
  readonly date: string;
}

const error = <A>(text: (args: A) => string) => ({ severity: 'error' as const, text });
const warning = <A>(text: (args: A) => string) => ({ severity: 'warning' as const, text });
const note = <A>(text: (args: A) => string) => ({ severity: 'note' as const, text });

export const wording = {
  // Files
  'file-missing': error(
    (a: { ref: string }) =>
      `"${a.ref}" cannot be read: no such file. Check the path; it counts from the file that names it.`,
  ),
  'file-unreadable': error((a: { ref: string; reason: string }) => `"${a.ref}" cannot be read: ${a.reason}.`),
  'file-empty': error((a: { what: string }) => `The ${a.what} file is empty. It has to begin with "kind: ${a.what}".`),
  'file-too-large': error(
    (a: { size: string; limit: string }) => `The file has ${a.size}; at most ${a.limit} are read.`,
  ),
  'wrong-kind': error(
    (a: Expected) => `The file is of kind "${a.found}"; here a file of kind "${a.expected}" is needed.`,
  ),
  'no-lawn': error(
    (a: { ref: string }) => `No lawn file: "${a.ref}" does not exist. Name one: soilclock plan path/to/lawn.yaml`,
  ),

  'write-failed': error(
    (a: { file: string; reason: string }) =>
      `"${a.file}" cannot be written (${a.reason}). What was there before is unchanged.`,
  ),

  // YAML
  'yaml-syntax': error((a: { reason: string }) => `Not valid YAML: ${a.reason}`),
  'yaml-directive': error(
    (_: Found) => 'A %YAML or %TAG line is not allowed; these files are YAML 1.2. Remove the line.',
  ),
  'yaml-key-mark': error((_: Found) => 'A key written with "? " is not allowed. Write "key: value".'),
  'yaml-too-many-keys': error(
    (a: { limit: number }) => `More than ${a.limit} keys. Split the file, or check that it is the right one.`,
  ),
  'yaml-too-deep': error((a: { limit: number }) => `Nested deeper than ${a.limit} levels.`),
  'yaml-alias': error(
    (a: { limit: number }) => `More than ${a.limit} aliases, or an alias that contains itself. Write the value out.`,
  ),
  'yaml-documents': error((_: Found) => 'A second document begins here ("---"). One file holds one document.'),

  // Values
  'unknown-key': error((a: Word) => `"${a.found}" is not a key here.${meant(a.nearest)} Allowed: ${list(a.allowed)}.`),
  'missing-key': error((a: { key: string }) => `"${a.key}" is missing here.`),
  'wrong-type': error((a: Expected) => `Found ${a.found}; expected ${a.expected}.`),
  'unknown-word': error(
    (a: Word) => `"${a.found}" is not allowed here.${meant(a.nearest)} Allowed: ${list(a.allowed)}.`,
  ),
  'unknown-unit': error(
    (a: Expected & { nearest: string | null }) =>
      `"${a.found}" is not a unit.${meant(a.nearest)} Expected ${a.expected}.`,
  ),
  'wrong-measure': error(
    (a: Expected & { measure: string }) => `"${a.found}" is a ${a.measure}; expected ${a.expected}.`,
  ),
  'out-of-range': error((a: Expected) => `${a.found} is out of range; expected ${a.expected}.`),
  'not-a-date': error((a: Expected) => `"${a.found}" is not a day; expected ${a.expected}.`),
  'trigger-kind': error(
    (a: { found: string; allowed: readonly string[] }) =>
      `A trigger has exactly one kind; found ${a.found}. Kinds: ${list(a.allowed)}.`,
  ),
  'trigger-direction': error(
    (_: Found) => 'A trigger on a temperature has exactly one direction: "rises-to" or "falls-to".',
  ),
  'trigger-from': error(
    (_: Found) =>
      '"falls-to" in "opens" needs "from": the day to begin looking. Without it a cold winter day would count.',
  ),
  'trigger-opening': error(
    (_: Found) => '"opening: true" counts from the window\'s own opening, so it cannot stand in "opens".',
  ),
  'trigger-after': error(
    (_: Found) =>
      '"after" names exactly one of "step" and "opening: true", and exactly one of "wait" and "degree-days".',
  ),
  'soil-depth': error((a: Found) => `Soil temperature is modelled from 5 to 50 cm; ${a.found} is outside.`),
  'degree-days-upper': error((a: Found) => `The upper threshold has to lie above the base; found ${a.found}.`),
  'apply-one-of': error(
    (a: { found: string; allowed: readonly string[] }) =>
      `"apply" says exactly one thing; found ${a.found}. One of: ${list(a.allowed)}.`,
  ),
  'rate-missing': error((_: Found) => 'This needs a "rate".'),
  'duplicate-id': error((a: { id: string }) => `"${a.id}" stands here a second time. Each id is used once.`),
  'unknown-step': error((a: Word) => `There is no step "${a.found}".${meant(a.nearest)} Steps: ${list(a.allowed)}.`),
  'circular-after': error(
    (a: { path: readonly string[] }) =>
      `Steps wait for each other in a circle: ${a.path.join(' → ')}. One of them needs a date or a temperature of its own.`,
  ),
  'unknown-source': error(
    (a: Word) =>
      `"${a.found}" is not in "sources".${meant(a.nearest)} Name one of: ${list(a.allowed)}, common-practice, from-memory.`,
  ),
  'no-source': warning((a: { what: string }) => `${a.what} has no source. Name one of "sources", or common-practice.`),

  // Lawn
  'area-shape': error(
    (a: { found: string; allowed: readonly string[] }) =>
      `An area has exactly one shape; found ${a.found}. Shapes: ${list(a.allowed)}.`,
  ),
  'area-crossing': error(
    (a: { first: number; second: number }) =>
      `Edges ${a.first} and ${a.second} of the polygon cross. Go around the area once, corner by corner.`,
  ),
  'area-corners': error(
    (a: Found) => `A polygon needs at least three corners that are not on one line; found ${a.found}.`,
  ),
  'area-empty': error(
    (a: Found) => `The area is ${a.found}: nothing is left of it. Check the shape and what is taken off.`,
  ),
  'area-triangle': error(
    (a: Found) => `Sides ${a.found} do not close to a triangle: one is as long as the other two together.`,
  ),
  'grass-mismatch': warning((a: Expected) => `The lawn is ${a.found}; the program is written for ${a.expected}.`),
  'season-day': error((a: { found: string; season: string }) => `${a.found} lies outside the season ${a.season}.`),

  // Products
  'unknown-product': error(
    (a: Word) =>
      `There is no product "${a.found}" in the lawn's products.${meant(a.nearest)} Known: ${list(a.allowed) || 'none'}.`,
  ),
  'no-bag-rate': error(
    (a: { product: string }) => `"${a.product}" says neither "covers" nor "package"; a bag rate needs both.`,
  ),
  'product-no-nutrient': error(
    (a: { product: string; nutrient: string }) => `"${a.product}" contains no ${a.nutrient}.`,
  ),
  'no-product': warning(
    (a: Step & { need: string }) =>
      `Step "${a.step}": no product of the lawn gives ${a.need}; the dates are planned, the amount is left open.`,
  ),
  'no-label': warning(
    (a: Step & { need: string }) =>
      `Step "${a.step}": no product entry with a label for ${a.need}; the amount reads "from your label".`,
  ),
  'pesticide-rate': error(
    (a: { product: string }) =>
      `"${a.product}" is a pesticide: its rate comes from its label entry, never from "rate" in a program.`,
  ),
  'over-single-nitrogen': warning(
    (a: Step & { planned: string; limit: string }) =>
      `Step "${a.step}" puts down ${a.planned} of nitrogen at once; the program allows ${a.limit}.`,
  ),
  'over-yearly': warning(
    (a: { area: string; planned: string; limit: string; what: string }) =>
      `Area "${a.area}": ${a.planned} of ${a.what} planned for the season; the limit is ${a.limit}.`,
  ),
  'under-yearly': note(
    (a: { area: string; planned: string; least: string }) =>
      `Area "${a.area}": ${a.planned} of nitrogen in the season; the program's range begins at ${a.least}.`,
  ),

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
  'weather-hole': error(
    (a: { from: string; days: number }) =>
      `${a.days} days are missing from ${a.from} on, within a year of the as-of day: no date can rest on that. Add the days.`,
  ),
  'weather-unit-suspect': error(
    (a: { column: string; mean: string; unit: string }) =>
      `The warmest month has a mean ${a.column} of ${a.mean}: that cannot be ${a.unit}. Is the file in °F? Name the columns tmin_f and tmax_f.`,
  ),
  'weather-range': error(
    (a: When & Found) => `${a.date}: ${a.found} has never been measured outdoors. Check unit and sign.`,
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

  // Plan
  'as-of': error((a: Found) => `"${a.found}" is not a day; write --as-of YYYY-MM-DD.`),
  'plan-step': error(
    (a: Word) => `The program has no step "${a.found}".${meant(a.nearest)} Steps: ${list(a.allowed)}.`,
  ),
  'compare-file': error(
    (a: { reason: string }) =>
      `The earlier plan cannot be compared: ${a.reason} It has to be what "plan --json" printed.`,
  ),
  'no-working-day': warning(
    (a: Step) =>
      `Step "${a.step}": its window holds no day on which you work and the rules allow it. Widen "working", or pin a day under "steps".`,
  ),
  'ledger-damaged': error(
    (a: { reason: string }) =>
      `The ledger cannot be read: ${a.reason} It holds what the feed has published. Restore it from your backup, or remove it to publish every event anew.`,
  ),
} as const;

export type ProblemCode = keyof typeof wording;
export type WordingArgs<C extends ProblemCode> = Parameters<(typeof wording)[C]['text']>[0];
