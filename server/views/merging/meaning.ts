/**
 * What a statement says, whatever units and blanks it is written with: 25.4 mm and 1 in are the same.
 *
 * Invariant: statements with the same meaning resolve to the same values; the other way round is not promised, since
 * expressions are compared as they are written.
 */
import type { Entry, Item } from "../../../grammar/index.js";
import { dimensionOfUnit, toSI } from "../../quantities/index.js";

export function meaningOf(text: string, entry: Entry): string {
  const said = (item: Item): string => itemMeaning(text, item, undefined);
  if (entry.kind === "row") return `${said(entry.key)}: ${said(entry.value)}`;
  const { head, items, equals } = entry;
  const sign = equals === undefined ? "" : "= ";
  return `${plainText(text.slice(head.start, head.end))} ${sign}${listMeaning(text, items)}`;
}

/** A number without a unit has that of the one that follows it (`46 and 49 %`). */
function listMeaning(text: string, items: readonly Item[]): string {
  let unit: string | undefined;
  const said: string[] = [];
  for (const item of [...items].reverse()) {
    if (item.kind === "quantity" && item.unit !== undefined) unit = item.unit.text;
    said.unshift(itemMeaning(text, item, item.kind === "quantity" ? unit : undefined));
  }
  return said.join(" ");
}

function itemMeaning(text: string, item: Item, unit: string | undefined): string {
  switch (item.kind) {
    case "quantity":
      return numberMeaning(item.value, item.digits, item.unit?.text ?? unit);
    case "tuple":
      return `(${item.members.map((member) => itemMeaning(text, member, item.unit?.text ?? unit)).join(", ")})`;
    case "range": {
      const own = item.to.kind === "quantity" ? (item.to.unit?.text ?? unit) : unit;
      return `${itemMeaning(text, item.from, own)} .. ${itemMeaning(text, item.to, own)}`;
    }
    case "text":
    case "path":
    case "binary":
    case "negation":
    case "group":
      return plainText(text.slice(item.start, item.end));
  }
}

/** Twelve digits are more than anybody writes, and fewer than a conversion gets wrong. A sign may mean a change (`by +2`). */
function numberMeaning(value: number, digits: string, unit: string | undefined): string {
  const sign = /^[+]/.exec(digits)?.[0] ?? "";
  const si = unit === undefined ? value : toSI(value, unit);
  const dimension = unit === undefined ? "" : dimensionOfUnit(unit);
  if (si === undefined || dimension === undefined) return `${digits} ${unit ?? ""}`;
  return `${sign}${Number(si.toPrecision(12))} ${dimension}`;
}

const plainText = (text: string): string => text.replace(/\s+/g, " ").trim();
