import type { ApplicatorRecord, RecordEntry } from '../model/record.ts';
import { Html, html } from './html.ts';
import { type Column, columnsOf } from './record-columns.ts';
import { recordStyle } from './record-style.ts';
import { recordWords as words } from './record-words-en.ts';

/**
 * A record as a page to print: one row of the table an application, complete in itself, without a script.
 *
 * Each application is a group of two rows that no page cuts: its particulars, and across the sheet what may be long. The head
 * of the table, with the lawn and the year, stands on every sheet. The page loads nothing, and its policy forbids it to.
 *
 * @example recordPage(record).startsWith('<!doctype html>')
 */
export function recordPage(record: ApplicatorRecord): string {
  const { lawnName, year, units, entries, unreadLines, asOf } = record;
  const { applications, otherWork } = columnsOf(units);
  const policy = "default-src 'none'; style-src 'unsafe-inline'";
  const page = html`<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${words.title(lawnName, year)}</title>
<style>${new Html(recordStyle)}</style>
</head>
<body>
<main>
<h1>${words.title(lawnName, year)}</h1>
${aboutLawn(record)}
${unreadLines.length > 0 ? html`<p class="mark">${words.unread(unreadLines)}</p>` : null}
${section(words.applications, applications, entriesOf(entries, true), record)}
${entries.some(({ application }) => !application) ? section(words.otherWork, otherWork, entriesOf(entries, false), record) : null}
<footer>
<div class="sign"><span>${words.signature}</span><span>${words.date}</span></div>
${words.deference.map((line) => html`<p>${line}</p>`)}
<p>${words.asOfFiles(asOf)}</p>
</footer>
</main>
</body>
</html>
`;
  return page.text;
}

const entriesOf = (entries: readonly RecordEntry[], application: boolean) =>
  entries.filter((entry) => entry.application === application);

function aboutLawn({ customer, address, latitude, longitude, asOf }: ApplicatorRecord): Html {
  const rows: readonly (readonly [string, string | null])[] = [
    [words.customer, customer],
    [words.address, address],
    [words.place, `${latitude}, ${longitude}`],
    [words.asOf, asOf],
  ];
  const shown = rows.filter(([, value]) => value !== null);
  return html`<dl class="lawn">
${shown.map(([name, value]) => html`<dt>${name}</dt><dd dir="auto">${value}</dd>`)}
</dl>`;
}

function section(title: string, columns: readonly Column[], entries: readonly RecordEntry[], record: ApplicatorRecord) {
  if (entries.length === 0) return html`<h2>${title}</h2><p>${words.none}</p>`;
  const { lawnName, year } = record;
  return html`<h2>${title}</h2>
<div class="wide" tabindex="0" role="region" aria-label="${title}"><table>
<colgroup>${columns.map(({ percent }) => html`<col style="width: ${percent}%">`)}</colgroup>
<thead>
<tr class="running"><th colspan="${columns.length}" scope="colgroup">${words.title(lawnName, year)}</th></tr>
<tr>${columns.map((column) => html`<th scope="col">${column.title}</th>`)}</tr>
</thead>
${entries.map((entry) => group(entry, columns))}
</table></div>`;
}

/** The rows of one entry, struck through where it no longer counts. */
function group(entry: RecordEntry, columns: readonly Column[]): Html {
  const isStruck = entry.standing === 'corrected' || entry.standing === 'taken-back';
  const struck = (inner: Html) => (isStruck ? html`<s>${inner}</s>` : inner);
  const cell = ({ lines }: Column) => {
    const [first = null, ...others] = lines(entry).filter((line) => line !== null);
    const small = others.map((line) => html`<br><span class="small">${struck(html`${line}`)}</span>`);
    return html`<td dir="auto">${first === null ? null : struck(html`${first}`)}${small}</td>`;
  };
  const standing = words.standing(entry);
  const long: readonly (readonly [string, string | null])[] = [
    [words.reEntry, entry.reEntry],
    [words.notices, entry.notices],
    [words.note, entry.note],
  ];
  const paragraphs = [
    html`<p>${standing === null ? null : html`<b class="mark">${standing}</b> `}<span class="small">${words.entry} ${entry.name}</span></p>`,
    ...long.flatMap(([name, text]) =>
      text === null ? [] : [html`<p dir="auto"><b>${name}:</b> ${struck(html`${text}`)}</p>`],
    ),
    ...(entry.missing.length > 0
      ? [html`<p class="mark"><b>${words.notRecorded}:</b> ${words.missing(entry.missing)}.</p>`]
      : []),
  ];
  return html`<tbody>
<tr>${columns.map(cell)}</tr>
<tr class="more"><td colspan="${columns.length}">${paragraphs}</td></tr>
</tbody>
`;
}
