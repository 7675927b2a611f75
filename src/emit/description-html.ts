import { type Html, html } from './html.ts';

/** The plain text of an event as a page, for calendars that show one: lines, and lists of those that begin with a dash. */
export function descriptionHtml(plain: string): string {
  const blocks: { readonly listed: boolean; readonly lines: Html[] }[] = [];
  for (const line of plain.split('\n')) {
    if (line.trim() === '') continue;
    const listed = line.startsWith('- ');
    const [block] = blocks.slice(-1);
    if (listed && block?.listed) block.lines.push(item(line));
    else blocks.push({ listed, lines: [listed ? item(line) : html`<p>${line}</p>`] });
  }
  const body = blocks.map(({ listed, lines }) => (listed ? html`<ul>${lines}</ul>` : html`${lines}`));
  return html`<html><body>${body}</body></html>`.text;
}

const item = (line: string): Html => html`<li>${line.slice(2)}</li>`;
