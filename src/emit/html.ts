import { cleaned } from '../base/text.ts';

/** Text of a page that is safe as it is: made by `html`, or a constant of ours. */
export class Html {
  readonly text: string;

  constructor(text: string) {
    this.text = text;
  }
}

type Inserted = Html | string | number | null | readonly Html[];

const NAMED: Readonly<Record<string, string>> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;', "'": '&#39;' };

/**
 * Text of a page; whatever is inserted is text and never markup, in elements and in quoted attributes alike.
 *
 * @example html`<td title="${'"'}">${'<b>'}</td>`.text //=> '<td title="&quot;">&lt;b&gt;</td>'
 */
export function html(strings: TemplateStringsArray, ...inserted: readonly Inserted[]): Html {
  const parts = strings.map((string, i) => string + (i < inserted.length ? asText(inserted[i] ?? null) : ''));
  return new Html(parts.join(''));
}

/** A text as it stands in markup, a drawing's too. @example escaped('<b>') //=> '&lt;b&gt;' */
export const escaped = (text: string): string => html`${text}`.text;

function asText(value: Inserted): string {
  if (value === null) return '';
  if (value instanceof Html) return value.text;
  if (Array.isArray(value)) return (value as readonly Html[]).map(({ text }) => text).join('');
  return cleaned(String(value)).replace(/[&<>"']/g, (character) => NAMED[character] ?? '');
}
