/** A file that another one names: its name for problems and its text. */
export interface Source {
  readonly name: string;
  readonly text: string;
}

/**
 * Finds a file by the path that stands in another file.
 *
 * @returns The file; null where there is none; a reason where it cannot be read.
 */
export type Lookup = (ref: string, from: string) => Source | null | { readonly reason: string };
