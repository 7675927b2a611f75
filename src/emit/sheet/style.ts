/** The look of a season sheet: paper, ink, and one colour each for what is planned, the soil, the air and what is done. */
export const sheetStyle = `
:root { color-scheme: light dark; --paper: #fbfaf6; --ink: #1f2430; --soft: #5a6070; --line: #d9d5c8; --rule: #8d8a7e;
  --navy: #26345c; --navy-band: #7f8cb3; --soil: #9c5f10; --air: #5d7283; --moss: #5b6650; --moss-band: #87927a; --care: #f2ead8; }
@media screen and (prefers-color-scheme: dark) {
  :root { --paper: #171a21; --ink: #eceae2; --soft: #a9adb8; --line: #333845; --rule: #6d7382;
    --navy: #b6c4f0; --navy-band: #5d6c9c; --soil: #e2a94f; --air: #8fa8bb; --moss: #b3c0a3; --moss-band: #66715a; --care: #2a2720; }
}
@page { margin: 8mm; }
* { box-sizing: border-box; }
html { -webkit-text-size-adjust: 100%; }
body { margin: 0 auto; padding: 0 1rem 2rem; max-width: 62rem; background: var(--paper); color: var(--ink);
  font: 1rem/1.45 system-ui, sans-serif; font-variant-numeric: tabular-nums; overflow-wrap: anywhere; }
a { color: inherit; }
:focus-visible { outline: 3px solid var(--navy); outline-offset: 2px; }
.skip { position: absolute; left: -100rem; }
.skip:focus { position: static; display: inline-block; padding: 0.5rem; }
.paints { position: absolute; }
header { display: flex; flex-wrap: wrap; justify-content: space-between; gap: 0 1rem; padding: 0.6rem 0 0.4rem; border-bottom: 3px double var(--rule); }
h1, header p { font-size: 0.9rem; font-weight: 600; margin: 0; }
header p { font-weight: 400; color: var(--soft); }
h2 { font-size: 1.35rem; line-height: 1.2; margin: 2rem 0 0.6rem; }
h3 { font-size: 1rem; margin: 0.8rem 0 0.2rem; }
h4 { font-size: 0.9rem; margin: 0.5rem 0 0.1rem; color: var(--soft); }
p { margin: 0 0 0.3rem; }
ul { margin: 0 0 0.4rem; padding-left: 1.1rem; }
.soft { color: var(--soft); }
#now h2 { font-size: 1.55rem; line-height: 1.15; margin: 0; font-weight: 700; }
#now h3, .kicker { font-size: 0.8rem; font-weight: 600; color: var(--soft); margin: 0.6rem 0 0; }
.kicker { margin-top: 0.7rem; }
.when { font-size: 1.5rem; font-weight: 700; color: var(--navy); margin: 0.1rem 0 0; line-height: 1.2; }
p.much { font-size: 1.5rem; font-weight: 700; margin: 0; line-height: 1.2; }
p.much::first-letter { text-transform: uppercase; }
.areas { list-style: none; padding: 0; display: flex; flex-wrap: wrap; gap: 0.1rem 1.2rem; }
.odds { display: flex; flex-wrap: wrap; align-items: center; gap: 0.2rem 0.6rem; }
.odds rect { fill: none; stroke: var(--navy); stroke-width: 1.2; }
.odds rect.full { fill: var(--navy); }
.care { background: var(--care); border-left: 4px solid var(--soil); padding: 0.3rem 0.6rem; margin: 0.5rem 0; }
.care p { margin: 0; }
.aside ul { padding: 0; list-style: none; }
@media (min-width: 45rem) {
  #now { display: grid; grid-template: "next because" auto "before after" auto / 1fr 1fr; gap: 0 2.5rem; }
  .next { grid-area: next; }
  .because { grid-area: because; }
  .before { grid-area: before; }
  .after { grid-area: after; }
  #now h2 { font-size: 2.6rem; }
  .when, p.much { font-size: 2rem; }
  .because { margin-top: 2.1rem; }
}
figure { margin: 0; }
.chart { display: block; width: 100%; height: auto; }
.wide, .narrow { display: none; }
@media screen and (min-width: 46rem) { .wide { display: block; } }
@media screen and (max-width: 45.99rem) { .narrow { display: block; } }
.legend { list-style: none; padding: 0; margin: 0.4rem 0; display: flex; flex-wrap: wrap; gap: 0.2rem 1.2rem; font-size: 0.85rem; }
.keys { list-style: none; padding: 0; margin: 0.2rem 0; display: flex; flex-wrap: wrap; gap: 0.1rem 1.2rem; font-size: 0.85rem; }
.keys b { color: var(--navy); }
.legend svg { vertical-align: -2px; margin-right: 0.4rem; }
stop.plan { stop-color: var(--navy-band); }
stop.done { stop-color: var(--moss-band); }
stop.none { stop-opacity: 0.08; }
.scroll { overflow-x: auto; }
table { border-collapse: collapse; width: 100%; font-size: 0.9rem; }
th, td { text-align: start; vertical-align: top; padding: 0.3rem 0.6rem 0.3rem 0; border-bottom: 1px solid var(--line); }
thead th { border-bottom: 1px solid var(--rule); color: var(--soft); font-weight: 600; }
.plain { list-style: none; padding: 0; }
.plain li { margin: 0 0 0.5rem; }
.bar { display: block; max-width: 100%; }
.ways .narrow, .ways .wide { background: #fff; padding: 0.4rem; }
.ways svg { display: block; width: 100%; height: auto; max-width: 46rem; }
.ways figcaption { font-size: 0.85rem; color: var(--soft); margin-top: 0.3rem; }
.qr svg { width: 10rem; height: 10rem; background: #fff; }
summary { cursor: pointer; padding: 0.3rem 0; }
.hidden { position: absolute; width: 1px; height: 1px; overflow: hidden; clip-path: inset(50%); white-space: nowrap; }
.job { border-top: 1px solid var(--line); padding: 0.5rem 0; }
.job h3 { margin: 0; font-size: 1.1rem; }
.head { font-weight: 600; color: var(--navy); }
.done .head, .skipped .head, .dropped .head { color: var(--soft); }
.take h4 { margin-top: 0; }
.take { font-size: 0.9rem; }
@media screen and (min-width: 46rem) {
  .job { display: grid; grid-template-columns: 3fr 2fr; gap: 0 2.5rem; }
  .job details { grid-column: 1 / -1; }
}
footer { border-top: 3px double var(--rule); margin-top: 2rem; padding-top: 0.5rem; }
.each, .once { display: none; }
@media print {
  :root { --paper: #fff; --line: #ccc; --care: #fff; }
  body { padding: 0; max-width: none; font-size: 9pt; line-height: 1.22; }
  header { padding: 0; }
  h2 { font-size: 12pt; margin: 2mm 0 0.5mm; break-after: avoid; }
  h3, .job h3 { font-size: 9.5pt; margin: 0.5mm 0 0; break-after: avoid; }
  p, ul { margin-bottom: 0.5mm; }
  h4, .take, .keys, table, #now h3, .kicker, h1, header p, #now .because p, #now .aside li { font-size: 9pt; }
  #now { display: block; columns: 2; column-gap: 6mm; }
  #now > * { margin: 0; }
  #now p, #now li { break-inside: avoid; }
  #now h2 { font-size: 15pt; }
  #now h3, .kicker { margin-top: 0.5mm; }
  .when, p.much { font-size: 12pt; }
  .wide { display: block; break-inside: avoid; }
  .keys { display: block; columns: 2; margin: 0; }
  details, .skip, .heat, .ways, .legend, figure > h3, #moved, #notes, #subscribe, #sprayer, .job.skipped, .job.dropped,
  .job .odds, .job .do li:nth-child(n + 2), .job .take .shared, .job .take p, #limits, .job.done ul, .job.done .take,
  .plain .soft, .plain br, .aside .soft { display: none; }
  .each { display: block; font-weight: 600; }
  .once { display: block; column-span: all; break-inside: avoid; margin: 1mm 0; border-top: 1px solid var(--line); padding-top: 1mm; }
  #jobs { columns: 2; column-gap: 6mm; }
  #jobs h2 { column-span: all; }
  .job { padding: 0.3mm 0; break-inside: avoid; }
  .job ul { margin: 0; padding-left: 4mm; }
  .whys p:nth-child(n + 3), .take h4 { display: none; }
  .care { padding: 0 2mm; margin: 0.5mm 0; }
  .take ul { list-style: "! "; }
  .plain li { margin: 0 0 0.5mm; break-inside: avoid; }
  .bar { display: inline-block; vertical-align: -2px; margin-right: 2mm; width: 30mm; height: auto; }
  footer { margin-top: 2mm; padding-top: 1mm; break-inside: avoid; }
}
`;
