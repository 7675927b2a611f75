/** The look of a site's pages: light and dark, from 320 px on; nothing is told by colour alone. */
export const siteStyle = `
:root { color-scheme: light dark; --ink: #1d2330; --paper: #fcfcfa; --rule: #8a90a0; --soft: #4d5566; --band: #eef0f4; --link: #1f4b8f; }
@media (prefers-color-scheme: dark) { :root { --ink: #e4e7ee; --paper: #14171e; --rule: #6d7486; --soft: #a7aec0; --band: #222733; --link: #9dbcf0; } }
* { box-sizing: border-box; }
body { margin: 0 auto; padding: 1rem; max-width: 56rem; background: var(--paper); color: var(--ink); font: 1rem/1.5 system-ui, sans-serif; overflow-wrap: anywhere; }
h1 { font-size: 1.6rem; line-height: 1.2; margin: 0.5rem 0; }
h2 { font-size: 1.2rem; margin: 2rem 0 0.5rem; border-top: 2px solid var(--rule); padding-top: 0.6rem; }
h3 { font-size: 1.05rem; margin: 1.4rem 0 0.3rem; }
h4 { font-size: 1rem; margin: 0.7rem 0 0.2rem; }
p, ul { margin: 0.4rem 0; }
ul { padding-left: 1.3rem; }
a { color: var(--link); }
a:focus-visible, input:focus-visible, summary:focus-visible, [tabindex]:focus-visible { outline: 3px solid var(--link); outline-offset: 2px; }
.soft { color: var(--soft); }
.now { background: var(--band); border-left: 0.4rem solid var(--ink); padding: 0.6rem 1rem; font-size: 1.1rem; }
.wide { overflow-x: auto; }
table { border-collapse: collapse; width: 100%; min-width: 34rem; }
th, td { text-align: start; vertical-align: top; padding: 0.35rem 0.5rem; border-bottom: 1px solid var(--rule); }
thead th { background: var(--band); }
input { font: inherit; width: 100%; max-width: 24rem; padding: 0.5rem; color: inherit; background: var(--paper); border: 2px solid var(--rule); }
.address { font-family: ui-monospace, monospace; font-size: 0.9rem; }
.qr { max-width: 100%; height: auto; }
pre { white-space: pre-wrap; background: var(--band); padding: 0.6rem; }
summary { cursor: pointer; }
@media print { body { max-width: none; padding: 0; font-size: 10pt; } .qr { width: 3cm; } }
`;
