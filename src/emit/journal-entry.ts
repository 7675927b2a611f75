import { Document, visit } from 'yaml';

/** What an entry is written with, by its keys in the file. */
export type EntryDraft = Readonly<Record<string, string | number | boolean | readonly string[]>>;

/** An entry as one line of a journal, every text quoted as it needs to be. @example '- { date: 2027-04-03, step: feed }' */
export function entryLine(entry: EntryDraft): string {
  const document = new Document([entry], { version: '1.2' });
  const [first] = (document.contents as { items: { flow?: boolean }[] } | null)?.items ?? [];
  if (first) first.flow = true;
  // In braces a text over several lines, written without quotes, may read as something else ("-" on a line of its own).
  visit(document, {
    Scalar: (_, node) => {
      if (typeof node.value === 'string' && node.value.includes('\n')) node.type = 'QUOTE_DOUBLE';
    },
  });
  return document.toString({ lineWidth: 0, flowCollectionPadding: true, doubleQuotedAsJSON: true }).trimEnd();
}

/** A journal with one more entry at its end, or why it cannot be put there without harm. */
export type Appended = { readonly text: string } | { readonly reason: string };

/**
 * Adds a line to a journal's text. What stands there is not touched: comments, order, line ends and indentation stay.
 *
 * A list in brackets is refused where anything is in it; an empty one gives way. Whatever follows the list at its own
 * depth (`...`) is refused too: the reader would not see the new entry.
 *
 * @param line As `entryLine` gives it.
 * @example appended('- { date: 2027-04-01, work: mow }\n', '- { date: 2027-04-03, step: feed }')
 */
export function appended(text: string, line: string): Appended {
  const newline = /\r\n/.test(text) ? '\r\n' : '\n';
  const rows = text.split(/\r?\n/);
  const said = rows.filter((row) => row.trim() !== '' && !/^\s*#/.test(row));
  const bare = /^\s*---\s*(#.*)?$/.test(said[0] ?? '') ? said.slice(1) : said;
  if (bare.some((row) => /^(---|\.\.\.)(\s|$)/.test(row)))
    return { reason: 'a document mark ("---" or "...") stands in it.' };
  const [first = ''] = bare;
  if (/^\s*\[\s*\]\s*(#.*)?$/.test(first) && bare.length === 1)
    return { text: rows.map((row) => (row === first ? row.replace(/[ \t]*\[\s*\]/, () => line) : row)).join(newline) };
  if (first !== '' && !/^\s*-(\s|$)/.test(first)) return { reason: 'its entries do not stand one below the other.' };
  const indent = /^[ \t]*/.exec(first)?.[0] ?? '';
  const whole = text === '' || text.endsWith('\n') ? text : `${text}${newline}`;
  return { text: `${whole}${indent}${line}${newline}` };
}
