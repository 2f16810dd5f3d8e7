/**
 * A review as a page: printable, readable in black and white, with nothing to fetch. The editor shows the same body in the
 * colours of its theme, and leads to the lines that carry a place.
 */
import { cautions } from "../cautions.js";
import { htmlText } from "../html-text.js";
import { type AxlePicture, pictureSvg } from "./pictures.js";
import type { PageSection, Place } from "./page.js";
import { comparisonPage } from "./page.js";
import { carWords, followerWords, type Review, type ReviewedCar } from "./review.js";

export function reviewHtml(review: Review): string {
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${htmlText(review.headline)}</title>
<style>${pageStyle}${reviewStyle}</style>
</head>
<body>
${reviewBody(review)}
</body>
</html>
`;
}

/** What stands inside the page. Rows that are written somewhere carry `data-uri`, `data-line` and `data-side`. */
export function reviewBody(review: Review): string {
  const told = review.cars.filter(({ status }) => status !== "same");
  return [
    `<main><h1>${htmlText(review.headline)}</h1>`,
    `<p class="sides"><span>Was: ${htmlText(review.old)}</span> <span>Is: ${htmlText(review.now)}</span></p>`,
    ...told.map((car) => carArticle(car, told.length > 1)),
    `<p class="cautions">${htmlText(cautions)}</p></main>`,
  ].join("\n");
}

function carArticle(car: ReviewedCar, isOneOfMany: boolean): string {
  const head = isOneOfMany
    ? [`<h2>${htmlText(car.name)}</h2>`, `<p>${htmlText(carWords(car))} <small>${htmlText(car.path)}</small></p>`]
    : [];
  if (car.comparison === undefined || car.follows !== undefined) {
    const words = followerWords(car);
    const follows = words === undefined ? "" : `<p>${htmlText(words)}</p>`;
    return `<article>${head.join("\n")}${follows}</article>`;
  }
  const page = comparisonPage(car.comparison);
  const pictures = car.comparison.pictures.flatMap(figureHtml);
  return [
    "<article>",
    ...head,
    `<div class="columns">${column(page.sections, "said", pictures)}${column(page.sections, "does", [])}</div>`,
    ...page.remarks.map((remark) => `<p>${htmlText(remark)}</p>`),
    "</article>",
  ].join("\n");
}

function figureHtml(picture: AxlePicture): readonly string[] {
  const svg = pictureSvg(picture);
  if (svg === undefined) return [];
  const { axle, before, marked } = picture;
  const words = [
    `${axle} axle`,
    ...(before === undefined ? [] : ["dashed: as it was"]),
    ...(marked.length === 0 ? [] : ["filled number: something of it differs"]),
  ];
  return [`<figure>${svg}<figcaption>${htmlText(words.join("; "))}</figcaption></figure>`];
}

/** What is said beside what it does, where there is room for both. */
function column(sections: readonly PageSection[], part: PageSection["part"], pictures: readonly string[]): string {
  const own = [...sections.filter((section) => section.part === part).map(sectionHtml), ...pictures];
  return own.length === 0 ? "" : `<div class="column">${own.join("\n")}</div>`;
}

function sectionHtml(section: PageSection): string {
  const { title, rows, isDetail } = section;
  if (isDetail) return `<details><summary>${htmlText(title)} (${rows.length})</summary>${tableHtml(section)}</details>`;
  return `<section><h3>${htmlText(title)}</h3>${tableHtml(section)}</section>`;
}

function tableHtml({ title, columns, rows, places }: PageSection): string {
  const head = columns.map(({ head: name }) => `<th scope="col">${htmlText(name)}</th>`).join("");
  const body = rows.map((row, i) => {
    const cells = row.map((cell, at) =>
      cellHtml(cell, columns[at]?.head ?? "", at === row.length - 1 ? places[i] : undefined),
    );
    return `<tr${row[0] === "" ? "" : ' class="first"'}>${cells.join("")}</tr>`;
  });
  return `<table aria-label="${htmlText(title)}"><thead><tr>${head}</tr></thead><tbody>${body.join("\n")}</tbody></table>`;
}

/** Values keep to one line, notes and tables do not. */
const SHORT = 18;

/** The last cell of a row leads to its line. */
function cellHtml(cell: string, head: string, place: Place | undefined): string {
  const isSide = head === "was" || head === "is";
  const kind = isSide ? ` class="${head}${cell.length > SHORT ? " long" : ""}"` : "";
  if (place === undefined) return `<td${kind}>${head === "difference" ? inPieces(cell) : htmlText(cell)}</td>`;
  const data = `data-uri="${htmlText(place.uri)}" data-line="${place.line}" data-side="${place.side}"`;
  return `<td${kind}><a class="place" role="link" tabindex="0" ${data}>${htmlText(cell)}</a></td>`;
}

/** A figure stays with its unit; lines break between figures. */
const inPieces = (cell: string): string =>
  cell
    .split(", ")
    .map((piece) => (piece.length > SHORT ? htmlText(piece) : htmlText(piece).replaceAll(" ", "&nbsp;")))
    .join(", ");

/** Of the page by itself: ink on paper. */
const pageStyle = `
:root { --ink: #1d2129; --quiet: #5b6472; --line: #c9cfd8; --was: #f6efe4; --is: #e4eef6; --ground: #ffffff; }
body { margin: 0 auto; padding: 1.5rem; max-width: 100rem; color: var(--ink); background: var(--ground);
  font: 14px/1.45 system-ui, sans-serif; }
@media print { body { max-width: none; padding: 0; font-size: 9.5pt; } details > summary { list-style: none; }
  section, figure, tr { break-inside: avoid; } h2, h3 { break-after: avoid; } }
@page { size: A4; margin: 14mm; }
`;

/** Shared with the editor, which gives the colours. */
export const reviewStyle = `
h1 { font-size: 1.35em; line-height: 1.3; margin: 0 0 .4em; }
h2 { font-size: 1.2em; margin: 1.6em 0 .3em; border-top: 2px solid var(--ink); padding-top: .5em; }
h3 { font-size: 1em; margin: 1.2em 0 .3em; }
.sides { color: var(--quiet); margin: 0 0 1em; }
.sides span + span { margin-left: 1.5em; }
table { border-collapse: collapse; width: 100%; font-variant-numeric: tabular-nums; }
th { text-align: left; font-weight: 600; color: var(--quiet); }
th, td { padding: .2em .6em .2em 0; vertical-align: top; }
tr.first > td { border-top: 1px solid var(--line); }
td.was { background: var(--was); padding-left: .4em; }
td.is { background: var(--is); padding-left: .4em; font-weight: 600; }
td.was, td.is { white-space: nowrap; }
td.long { white-space: normal; font-weight: normal; min-width: 8em; }
td:first-child { white-space: nowrap; color: var(--quiet); }
a.place { color: inherit; text-decoration: none; }
summary { cursor: pointer; margin: .8em 0 .3em; color: var(--quiet); }
@media screen and (min-width: 85rem) {
  .columns { display: grid; grid-template-columns: repeat(auto-fit, minmax(38rem, 1fr)); gap: 0 2.5rem; }
}
figure { margin: 1.2em 0 .5em; max-width: 40rem; }
figure svg { display: block; width: 100%; height: auto; background: #ffffff; }
figcaption { color: var(--quiet); font-size: .9em; }
.cautions { margin-top: 2em; color: var(--quiet); font-size: .9em; }
`;
