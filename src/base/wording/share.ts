import { error, type Found, note, warning } from './forms.ts';

const pins = (a: { sha256: string | null }): string => (a.sha256 === null ? '' : ` (SHA-256 ${a.sha256})`);

/** Problems of programs that are read from an address. */
export const share = {
  'program-not-fetched': error(
    (a: { address: string; sha256: string | null }) =>
      `The program at ${a.address}${pins(a)} is not here yet. Run "soilclock program fetch" with this file or address once, with a network.`,
  ),
  'program-not-pinned': note(
    (a: { address: string }) =>
      `${a.address} is not pinned, so another text may come from there the next time. "soilclock program fetch" with this file pins what is here.`,
  ),
  'program-changed': error(
    (a: { address: string; pinned: string; found: string }) =>
      `What stands at ${a.address} has changed: pinned is SHA-256 ${a.pinned}, found is ${a.found}. Nothing was taken over. "soilclock program update" shows what is other, and pins it.`,
  ),
  'program-type': error(
    (a: { address: string; found: string }) =>
      `${a.address} gives ${a.found}, not a program file. Take the address of the file itself, not of a page that shows it.`,
  ),
  'program-address': error(
    (a: Found & { because: string }) =>
      `"${a.found}" cannot be fetched: ${a.because}. Give an address such as https://lawns.example/program.yaml.`,
  ),
  'program-address-closed': error(
    (a: { host: string; address: string }) =>
      `${a.host === a.address ? a.host : `${a.host} is at ${a.address}, which`} is not on the public internet. Programs are fetched from there alone; copy the file instead.`,
  ),
  'program-redirects': error(
    (a: { address: string; limit: number }) =>
      `${a.address} leads on more than ${a.limit} times. Give the address that it ends at.`,
  ),
  'program-none': error(
    (a: Found) =>
      `"${a.found}" names no program by address. Write "program: https://…" there, or give the address itself.`,
  ),
  'program-unpinned': error(
    (a: { file: string; address: string; sha256: string }) =>
      `"${a.file}" could not be changed to pin ${a.address}. Write there: program: { from: ${a.address}, sha256: ${a.sha256} }`,
  ),
  'shared-extends': error(
    (a: Found) =>
      `A program by address has to stand on its own; this one extends "${a.found}", which nobody could pin. Whoever shares it makes one file of both: soilclock check --bundle FILE`,
  ),
  'extends-address': error(
    (a: Found) =>
      `"${a.found}" is an address; "extends" takes the path of a program file. Save the program beside this one.`,
  ),
  'shared-author': warning(
    (_: Found) => 'The program does not say who made it ("author"). Look at its steps and figures before you go by it.',
  ),
  'shared-license': warning(
    (_: Found) =>
      'The program does not say whether it may be passed on ("license"). Ask its author before you share it.',
  ),
  'shared-link': warning(
    (a: Found) =>
      `This text holds an address (${a.found}) that would stand in your calendar. Open it only where you know whose it is.`,
  ),
  'bundle-kind': error(
    (a: Found) => `Found a file of kind "${a.found}"; "--bundle" makes one file of a program and what it extends.`,
  ),
} as const;
