import { stringify } from 'yaml';
import { PROGRAM_KEYS } from '../model/program.ts';

type Plain = Readonly<Record<string, unknown>>;

/**
 * One program file of a program and all that it extends: the same bytes from the same files.
 *
 * @param data The program as plain data, with what it extends joined to it.
 * @example programBundle({ kind: 'program', version: 1, id: 'mine' }) //=> 'kind: program\nversion: 1\nid: mine\n'
 */
export function programBundle(data: Plain): string {
  const ordered = Object.fromEntries(PROGRAM_KEYS.flatMap((key) => (key in data ? [[key, data[key]]] : [])));
  return stringify(ordered, {
    version: '1.2',
    schema: 'core',
    lineWidth: 120,
    // The same map may stand in two steps; an alias would be for machines, and their number is limited.
    aliasDuplicateObjects: false,
  });
}
