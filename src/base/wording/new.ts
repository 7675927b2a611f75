import { type Expected, error, list, warning } from './forms.ts';

/** Problems of a lawn file that is being made. */
export const newLawn = {
  'new-exists': error(
    (a: { file: string }) =>
      `"${a.file}" is there already and stays as it is. Name another file, or let --force write over it.`,
  ),
  'new-file-name': error((a: { file: string }) => `"${a.file}" is no name for a lawn file; it has to end in .yaml.`),
  'new-missing': error(
    (a: { asked: string; example: string }) =>
      `"${a.asked}" has no answer and no default. Give one, such as ${a.example}, or answer in a terminal.`,
  ),
  'new-flag-twice': error(
    (a: { other: string }) => `The same was already answered by ${a.other}. Give one of the two.`,
  ),
  'new-flag-idle': error(
    (a: { flag: string }) => `${a.flag} does not go with the other answers. Leave it out, or change them.`,
  ),
  'new-none-fits': error(
    (a: { grass: string; grasses: readonly string[] }) =>
      `No program that comes along is written for ${a.grass}; there is one for ${list(a.grasses)}. Name a program file of your own, or another grass.`,
  ),
  'new-not-answer': error((a: Expected) => `"${a.found}" is not understood; expected ${a.expected}.`),
  'new-no-program': error(
    (a: { found: string; grass: string; grasses: readonly string[] }) =>
      `"${a.found}" is written for ${list(a.grasses) || 'no grass'}; this lawn is ${a.grass}. Choose a program for that grass.`,
  ),
  'new-other-climate': warning(
    (a: { program: string; climates: readonly string[]; here: readonly string[] }) =>
      `"${a.program}" is written for another climate (${list(a.climates)}) than this place has (${list(a.here)}): look at its steps and figures before you go by it. One of your own is named by --program.`,
  ),
  'new-area-twice': error((a: { id: string }) => `There is an area "${a.id}" already. Give this one another name.`),
  'new-unusable': error((_: object) => 'With these answers the file would not pass a check, so nothing was written.'),
} as const;
