/** What the words of problems share: severities, and the shapes of their arguments. */
export const list = (words: readonly string[]): string => words.join(', ');
export const meant = (nearest: string | null): string => (nearest === null ? '' : ` Did you mean "${nearest}"?`);

export interface Found {
  readonly found: string;
}
export interface Expected extends Found {
  readonly expected: string;
}
export interface Word extends Found {
  readonly allowed: readonly string[];
  readonly nearest: string | null;
}
export interface Step {
  readonly step: string;
}
export interface When {
  readonly date: string;
}

export const error = <A>(text: (args: A) => string) => ({ severity: 'error' as const, text });
export const warning = <A>(text: (args: A) => string) => ({ severity: 'warning' as const, text });
export const note = <A>(text: (args: A) => string) => ({ severity: 'note' as const, text });
