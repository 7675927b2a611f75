/** The look of the record's page: light and dark on screen, black on white on paper, on sheets of any size laid crosswise. */
export const recordStyle = `
:root { color-scheme: light dark; --ink: #1b1e1c; --paper: #fdfdfb; --rule: #8b918d; --soft: #55605a; --head: #ecefec; --mark: #7a2e12; }
@media screen and (prefers-color-scheme: dark) {
  :root { --ink: #e6e9e6; --paper: #171a18; --rule: #6d756f; --soft: #a9b3ac; --head: #262b28; --mark: #f0a987; }
}
@page { size: landscape; margin: 12mm 10mm 14mm; @bottom-right { content: counter(page) " / " counter(pages); font: 8pt system-ui, sans-serif; } }
* { box-sizing: border-box; }
body { margin: 0 auto; padding: 1.5rem; max-width: 92rem; background: var(--paper); color: var(--ink); font: 0.875rem/1.4 system-ui, sans-serif; overflow-wrap: anywhere; }
h1 { font-size: 1.4rem; margin: 0 0 0.5rem; }
h2 { font-size: 1.05rem; margin: 1.5rem 0 0.4rem; break-after: avoid; }
dl.lawn { display: grid; grid-template-columns: max-content 1fr; gap: 0.1rem 1rem; margin: 0; }
dt { color: var(--soft); }
dd { margin: 0; white-space: pre-line; }
.wide { overflow-x: auto; }
table { width: 100%; min-width: 60rem; border-collapse: collapse; table-layout: fixed; }
thead { display: table-header-group; }
thead th { background: var(--head); text-align: start; vertical-align: bottom; padding: 0.3rem 0.4rem; border-bottom: 1px solid var(--rule); }
thead .running th { font-weight: normal; color: var(--soft); border-bottom: 0; }
tbody { break-inside: avoid; border-bottom: 1px solid var(--rule); }
td { vertical-align: top; padding: 0.3rem 0.4rem; white-space: pre-line; }
tr.more td { padding-top: 0; }
tr { break-inside: avoid; }
.small { color: var(--soft); font-size: 0.92em; }
.mark { color: var(--mark); }
.more p { margin: 0; white-space: pre-line; }
.more b { font-weight: 600; }
footer { margin-top: 1.5rem; break-before: avoid; }
footer p { margin: 0 0 0.4rem; max-width: 75em; }
.sign { display: flex; gap: 2rem; margin: 2rem 0 1rem; break-inside: avoid; break-before: avoid; }
.sign span { flex: 1; border-top: 1px solid var(--ink); padding-top: 0.2rem; }
.sign span + span { flex: 0 0 12rem; }
@media print {
  :root { color-scheme: light; --ink: #000; --paper: #fff; --rule: #777; --soft: #333; --head: #eee; --mark: #000; }
  body { padding: 0; max-width: none; font-size: 8.5pt; }
  table { min-width: 0; }
  .wide { overflow: visible; }
}
`;
