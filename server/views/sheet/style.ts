/** How a setup sheet looks on paper: ink and thin lines, large values, boxes to tick and to write in. */

export const sheetStyle = `
@page { size: A4; margin: 11mm 12mm 13mm;
  @bottom-right { content: "page " counter(page) " of " counter(pages); font: 8pt sans-serif; color: #333; } }
:root { --ink: #111; --quiet: #444; --line: #999; --faint: #f0f0f0; }
* { box-sizing: border-box; }
html { background: #fff; }
body { margin: 0 auto; max-width: 186mm; color: var(--ink); background: #fff; font: 9pt/1.3 "Liberation Sans", Arial, sans-serif;
  font-variant-numeric: tabular-nums; }
@media screen { body { padding: 10mm 8mm; } }
h1 { margin: 0; font-size: 17pt; line-height: 1.1; overflow-wrap: anywhere; }
h2 { margin: 2.6mm 0 1mm; font-size: 10pt; border-bottom: 0.5mm solid var(--ink); break-after: avoid; }
p { margin: 0 0 1mm; }
small { color: var(--quiet); font-size: 7.5pt; font-weight: normal; }
s { color: var(--quiet); font-size: 8pt; }
header { display: grid; grid-template-columns: 1fr auto; gap: 1mm 6mm; border-bottom: 0.7mm solid var(--ink); padding-bottom: 1.5mm; }
header ul { margin: 0; padding: 0; list-style: none; text-align: right; font-size: 8pt; overflow-wrap: anywhere; max-width: 90mm; }
header dl { grid-column: 1 / -1; display: grid; grid-template-columns: repeat(4, auto 1fr); gap: 1mm 2mm; margin: 1mm 0 0; }
header dt { color: var(--quiet); font-size: 8pt; align-self: end; }
header dd { margin: 0; border-bottom: 0.2mm solid var(--line); min-height: 6mm; }
.warning { margin: 2mm 0; padding: 1.5mm 2mm; border: 0.7mm solid var(--ink); }
.missing { margin: 1mm 0 0; font-size: 8.5pt; }
.notes { margin: 2mm 0 0; padding: 1.2mm 2mm; border-left: 1mm solid var(--ink); background: var(--faint); }
.notes p:last-child { margin: 0; }
table { width: 100%; border-collapse: collapse; }
tr { break-inside: avoid; }
th { text-align: left; font-weight: normal; }
thead th { color: var(--quiet); font-size: 8pt; }
td, tbody th { padding: 0.6mm 1.5mm 0.6mm 0; vertical-align: top; border-bottom: 0.15mm solid var(--line); overflow-wrap: anywhere; }
b { font-weight: 600; }
b.changed { font-weight: 800; }
b.changed::before { content: "▲ "; font-size: 7pt; }
.patch table { table-layout: fixed; }
.patch thead th:first-child { width: 24mm; }
.patch td, .patch th { padding-top: 1mm; }
.patch .wanted { font-size: 11pt; }
.patch .measured { display: block; width: 92%; height: 5.4mm; margin: 0.5mm 0; border: 0.25mm solid var(--ink); }
.patch small { display: block; }
.box { width: 6mm; }
.box::before { content: ""; display: block; width: 3.4mm; height: 3.4mm; border: 0.25mm solid var(--ink); }
.settings th { width: 52mm; }
.elements { table-layout: fixed; margin-top: 1mm; }
.elements thead th:nth-child(1) { width: 6mm; }
.elements thead th:nth-child(2) { width: 54mm; }
.elements thead th:nth-child(3) { width: 30mm; }
.elements td small { display: block; }
.setting { display: inline-block; margin-right: 4mm; }
figure { margin: 1mm 0; break-inside: avoid; }
figure svg { display: block; width: 100%; max-height: 45mm; }
.expectations td:first-child { width: 6mm; font-weight: 800; }
.expectations .measures td:first-child { width: auto; font-weight: inherit; }
.expectations .missed td { font-weight: 700; }
.expectations table { font-size: 8pt; }
.expectations td { padding-top: 0.3mm; padding-bottom: 0.3mm; }
footer { margin-top: 3mm; padding-top: 1mm; border-top: 0.5mm solid var(--ink); font-size: 8pt; break-inside: avoid; }
`;
