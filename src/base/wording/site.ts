import { type Expected, error, list, note, type Word } from './forms.ts';

/** Problems of publications: the file, its tables of places and lawns, and what a site is made of. */
export const site = {
  'site-nothing': error(
    (_: { found: string }) =>
      'This publication names no place and no lawn. Write "places", "places-file", "lawns" or "lawns-file".',
  ),
  'site-table-column': error(
    (a: Word) =>
      `The column "${a.found}" is not one of a table of this kind.${a.nearest === null ? '' : ` Did you mean "${a.nearest}"?`} Columns: ${list(a.allowed)}.`,
  ),
  'site-table-header': error(
    (a: { missing: string; allowed: readonly string[] }) =>
      `The first line names no column "${a.missing}". It is the head of the table; columns: ${list(a.allowed)}, in any order.`,
  ),
  'site-table-empty': error((_: { found: string }) => 'The table has no row below its head. Write one a line.'),
  'site-table-cells': error(
    (a: Expected) =>
      `This row has ${a.found} cells; the head of the table has ${a.expected}. A text with a comma in it stands in quotes.`,
  ),
  'site-row-missing': error((a: { column: string }) => `The cell "${a.column}" is empty; every row needs it.`),
  'site-place-where': error(
    (_: { found: string }) =>
      'A place has either "latitude" and "longitude" or "zip". Write the one or the other, and not both.',
  ),
  'site-same-id': error(
    (a: { id: string; before: string }) =>
      `The id "${a.id}" is already that of ${a.before}: their pages would be one. Give each an id of its own.`,
  ),
  'site-id-kept': error(
    (a: { id: string }) => `"${a.id}" is a folder of the site itself, so no place can have that id. Choose another.`,
  ),
  'site-no-program': error(
    (a: { grass: string; programs: readonly string[] }) =>
      `No program of this publication is for ${a.grass}. Its programs: ${list(a.programs)}. Add one for that grass, or name one with "program".`,
  ),
  'site-other-grass': error(
    (a: { program: string; grass: string; expected: readonly string[] }) =>
      `The program "${a.program}" is for ${list(a.expected)}; this place has ${a.grass}. Name another program or grass.`,
  ),
  'site-thermometer': error(
    (_: { found: string }) => 'A thermometer has "readings" or "weather", or both; here is neither. Write one.',
  ),
  'site-left-out': note(
    (a: { what: string }) =>
      `${a.what} is not planned anew: what was published of it stays as it was. Mend what is told of it and publish again.`,
  ),
  'site-ledger-damaged': error(
    (a: { reason: string }) =>
      `The ledger of the site cannot be read: ${a.reason} Take it from a backup, since it knows the addresses that were given to owners and the files that may be removed.`,
  ),
  'site-base-url': error((a: Expected) => `"${a.found}" is not an address for a site; expected ${a.expected}.`),
  'site-worker': error(
    (a: { reason: string }) => `A worker that plans places has failed: ${a.reason}. Nothing more was written.`,
  ),
} as const;
