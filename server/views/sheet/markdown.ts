/** A setup sheet as Markdown: for a chat, a wiki or a pull request. */
import { cautions } from "../cautions.js";
import { asTable } from "../section.js";
import { withUnitStars } from "../markdown.js";
import { type SheetOrigin, nameOf } from "./html.js";
import { findingWords, isChanged, type PatchLine, type SetupSheet, type SheetElement, type SheetItem } from "./item.js";
import { WHEELS } from "./patch.js";

export function sheetMarkdown(sheet: SetupSheet, { file, commit, time }: SheetOrigin): string {
  const from = sheet.from.length === 0 ? "" : `, from ${sheet.from.join(" from ")}`;
  const where = [file, ...(commit === undefined ? [] : [`commit ${commit}`]), time].join(" · ");
  const parts = [
    `# ${nameOf(sheet)}: setup sheet`,
    `${sheet.title}${from}`,
    where,
    ...(sheet.last === undefined ? [] : [`**Bold** is what differs from ${sheet.last.name}.`]),
    ...(findingWords(sheet) === ""
      ? []
      : [`**The file has ${findingWords(sheet)}: figures may be missing or wrong.**`]),
    ...sheet.notes.map((note) => `> ${note}`),
    patchTable(sheet.patch),
    ...sheet.missing,
    ...sheet.axles.flatMap(({ name, settings, elements }) => [
      `## ${name === "front" ? "Front" : "Rear"} axle`,
      settingList(settings),
      elementTable(elements),
    ]),
    ...(sheet.settings.length + sheet.elements.length === 0
      ? []
      : ["## Car", settingList(sheet.settings), elementTable(sheet.elements)]),
    ...goneList(sheet),
    ...(sheet.measured === undefined ? [] : [asTable({ ...sheet.measured, title: `## ${sheet.measured.title}` })]),
    ...(sheet.expectations.length === 0
      ? []
      : ["## What the car is expected to do", sheet.expectations.map(({ message }) => `- ${message}`).join("\n")]),
    `> ${cautions.replaceAll("\n", "\n> ")}`,
  ];
  return withUnitStars(`${parts.filter((part) => part !== "").join("\n\n")}\n`);
}

function shown(item: SheetItem): string {
  const value = isChanged(item) ? `**${item.value}**` : item.value;
  return item.was === undefined ? value : `${value} (was ${item.was})`;
}

const row = (cells: readonly string[]): string => `| ${cells.map((cell) => cell.replaceAll("|", "\\|")).join(" | ")} |`;

function patchTable(patch: readonly PatchLine[]): string {
  if (patch.length === 0) return "";
  const heads = ["", ...WHEELS.map((wheel) => wheel.join(" "))];
  const lines = patch.flatMap(({ name, wheels, isMeasured }) => [
    row([name, ...wheels.map((item) => (item === undefined ? "-" : shown(item)))]),
    ...(wheels.some((item) => item?.how !== undefined) ? [row(["", ...wheels.map((item) => item?.how ?? "")])] : []),
    ...(isMeasured ? [row([`${name}, measured`, "", "", "", ""])] : []),
  ]);
  return ["## On the flat patch", "", row(heads), row(heads.map(() => "---")), ...lines].join("\n");
}

const settingList = (items: readonly SheetItem[]): string =>
  items.map((item) => `- [ ] ${item.name}: ${shown(item)}${item.how === undefined ? "" : ` (${item.how})`}`).join("\n");

function elementTable(elements: readonly SheetElement[]): string {
  if (elements.length === 0) return "";
  const lines = elements.map(({ path, kind, part, settings, notes }) =>
    row([
      path,
      kind,
      part === undefined ? "" : shown(part),
      [...settings.map((item) => `${item.name} ${shown(item)}`), ...notes].join("; "),
    ]),
  );
  const heads = ["element", "", "part", "set to"];
  return [row(heads), row(heads.map(() => "---")), ...lines].join("\n");
}

function goneList({ last }: SetupSheet): readonly string[] {
  if (last === undefined || last.gone.length === 0) return [];
  const lines = last.gone.map(({ key, name, value }) => `- [ ] ${key}: ${name} was ${value}`);
  return [`## No longer, against ${last.name}`, lines.join("\n")];
}
