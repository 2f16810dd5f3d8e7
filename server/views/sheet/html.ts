/**
 * A setup sheet as a page for the printer: one or two sides of A4, without scripts, with nothing to fetch, and readable in
 * black and white: what changed is told by a mark and by weight, never by colour alone.
 */
import { cautions } from "../cautions.js";
import { htmlText } from "../html-text.js";
import {
  findingWords,
  type PatchLine,
  isChanged,
  type SetupSheet,
  type SheetAxle,
  type SheetElement,
  type SheetItem,
} from "./item.js";
import { sheetStyle } from "./style.js";
import { WHEELS } from "./patch.js";

/** Where the sheet comes from; what is not known is left out. */
export interface SheetOrigin {
  readonly file: string;
  /** "1a2b3c4d, with changes that are not committed" */
  readonly commit: string | undefined;
  /** As it is to be read: "2026-05-14 09:20". */
  readonly time: string;
}

/** A picture of an axle as SVG; none where it has no geometry. */
export type AxlePicture = (axle: "front" | "rear") => string | undefined;

export function sheetHtml(sheet: SetupSheet, origin: SheetOrigin, picture: AxlePicture): string {
  return `<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${htmlText(`${nameOf(sheet)}, setup sheet`)}</title>
<style>${sheetStyle}</style>
</head>
<body>
${[
  header(sheet, origin),
  warning(sheet),
  notes(sheet),
  patchSection(sheet.patch),
  missingLines(sheet),
  ...sheet.axles.map((axle) => axleSection(axle, picture(axle.name))),
  goneSection(sheet),
  carSection(sheet),
  measuredTable(sheet.measured),
  expectationSection(sheet),
  footer,
]
  .filter((part) => part !== "")
  .join("\n")}
</body>
</html>
`;
}

export const nameOf = ({ setup, car }: SetupSheet): string => setup ?? car;

function header(sheet: SetupSheet, { file, commit, time }: SheetOrigin): string {
  const from = sheet.from.length === 0 ? "" : `from ${sheet.from.join(" from ")}`;
  const against = sheet.last === undefined ? "" : `<li>▲ differs from ${htmlText(sheet.last.name)}</li>`;
  const lines = [file, ...(commit === undefined ? [] : [`commit ${commit}`]), `printed ${time}`];
  return `<header>
<div><h1>${htmlText(nameOf(sheet))}</h1><p>${htmlText([sheet.title, from].filter((part) => part !== "").join(", "))}</p></div>
<ul>${lines.map((line) => `<li>${htmlText(line)}</li>`).join("")}${against}</ul>
<dl>${["Event and session", "Driver", "Set by", "Checked by"].map((field) => `<dt>${field}</dt><dd></dd>`).join("")}</dl>
</header>`;
}

function warning(sheet: SetupSheet): string {
  const what = findingWords(sheet);
  if (what === "") return "";
  return `<p class="warning"><strong>The file has ${what}:</strong> figures may be missing or wrong. Clear them before the car is set.</p>`;
}

function missingLines({ missing }: SetupSheet): string {
  return missing.map((words) => `<p class="missing">${htmlText(words)}</p>`).join("\n");
}

function notes({ notes: lines }: SetupSheet): string {
  return lines.length === 0
    ? ""
    : `<div class="notes">${lines.map((line) => `<p>${htmlText(line)}</p>`).join("")}</div>`;
}

const head = (words: string): string => `<th scope="col">${htmlText(words)}</th>`;

function patchSection(patch: readonly PatchLine[]): string {
  if (patch.length === 0) return "";
  const heads = ["", ...WHEELS.map((wheel) => wheel.join(" "))].map(head).join("");
  const rows = patch.map(
    ({ name, wheels, isMeasured }) =>
      `<tr><th scope="row">${htmlText(name)}</th>${wheels.map((item) => patchCell(item, isMeasured)).join("")}</tr>`,
  );
  return `<section class="patch"><h2>On the flat patch</h2>
<table><thead><tr>${heads}</tr></thead><tbody>${rows.join("\n")}</tbody></table></section>`;
}

/** The wanted value, how to get there, and room for what was measured. */
function patchCell(item: SheetItem | undefined, isMeasured: boolean): string {
  if (item === undefined) return "<td>-</td>";
  const how = item.how === undefined ? "" : `<small>${htmlText(item.how)}</small>`;
  return `<td><span class="wanted">${valueHtml(item)}</span>${isMeasured ? '<span class="measured"></span>' : ""}${how}</td>`;
}

function valueHtml(item: SheetItem): string {
  const value = `<b${isChanged(item) ? ' class="changed"' : ""}>${htmlText(item.value)}</b>`;
  return item.was === undefined ? value : `${value} <s>${htmlText(item.was)}</s>`;
}

function axleSection({ name, settings, elements }: SheetAxle, picture: string | undefined): string {
  const drawn = picture === undefined ? "" : `<figure>${picture}</figure>`;
  return `<section class="axle"><h2>${name === "front" ? "Front" : "Rear"} axle</h2>${drawn}
${settingTable(settings)}${elementTable(elements)}</section>`;
}

function settingTable(items: readonly SheetItem[]): string {
  if (items.length === 0) return "";
  const rows = items.map((item) => {
    const how = item.how === undefined ? "" : ` <small>${htmlText(item.how)}</small>`;
    return `<tr><td class="box"></td><th scope="row">${htmlText(item.name)}</th><td>${valueHtml(item)}${how}</td></tr>`;
  });
  return `<table class="settings"><tbody>${rows.join("\n")}</tbody></table>`;
}

function elementTable(elements: readonly SheetElement[]): string {
  if (elements.length === 0) return "";
  const heads = ["", "element", "part", "set to"].map(head).join("");
  return `<table class="elements"><thead><tr>${heads}</tr></thead><tbody>${elements.map(elementRow).join("\n")}</tbody></table>`;
}

function elementRow({ path, kind, part, settings, notes: lines }: SheetElement): string {
  const said = settings
    .map((item) => `<span class="setting">${htmlText(item.name)} ${valueHtml(item)}</span>`)
    .join(" ");
  const note = lines.length === 0 ? "" : `<small>${htmlText(lines.join(" "))}</small>`;
  return (
    `<tr><td class="box"></td><th scope="row">${htmlText(path)} <small>${htmlText(kind)}</small></th>` +
    `<td>${part === undefined ? "" : valueHtml(part)}</td><td>${said}${note}</td></tr>`
  );
}

function carSection({ settings, elements }: SetupSheet): string {
  if (settings.length === 0 && elements.length === 0) return "";
  return `<section class="axle"><h2>Car</h2>${settingTable(settings)}${elementTable(elements)}</section>`;
}

/** Also what is taken off the car has to be done by somebody. */
function goneSection({ last }: SetupSheet): string {
  if (last === undefined || last.gone.length === 0) return "";
  const rows = last.gone.map(
    ({ key, name, value }) =>
      `<tr><td class="box"></td><th scope="row">${htmlText(key)}</th><td>${htmlText(name)} <s>${htmlText(value)}</s></td></tr>`,
  );
  return `<section class="axle"><h2>No longer, against ${htmlText(last.name)}</h2>
<table class="settings"><tbody>${rows.join("\n")}</tbody></table></section>`;
}

function measuredTable(section: SetupSheet["measured"]): string {
  if (section === undefined || section.rows.length === 0) return "";
  const rows = section.rows.map(
    (cells) =>
      `<tr${cells.at(-1) === "beyond" ? ' class="missed"' : ""}>${cells.map((cell) => `<td>${htmlText(cell)}</td>`).join("")}</tr>`,
  );
  return `<section class="expectations"><h2>${htmlText(section.title)}</h2>
<table class="measures"><thead><tr>${section.columns.map((column) => head(column.head)).join("")}</tr></thead><tbody>${rows.join("\n")}</tbody></table></section>`;
}

const SIGNS = { met: "✓", missed: "✗", "not-judged": "–" } as const;

function expectationSection({ expectations }: SetupSheet): string {
  if (expectations.length === 0) return "";
  const rows = expectations.map(
    ({ verdict, message }) => `<tr class="${verdict}"><td>${SIGNS[verdict]}</td><td>${htmlText(message)}</td></tr>`,
  );
  return `<section class="expectations"><h2>What the car is expected to do</h2>
<table><tbody>${rows.join("\n")}</tbody></table></section>`;
}

const footer = `<footer><p>${cautions}</p></footer>`;
