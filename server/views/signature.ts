/**
 * Signature help: the ways to write the line that is being typed which what is there still fits, and the part that is due.
 *
 * In: a file and an offset. Out: undefined at the first word of a line, and once the line is whole.
 */
import type { Item, Statement } from "../../grammar/index.js";
import { modesIn, usualOf } from "../../grammar/vocabulary/index.js";
import { slotText } from "../../grammar/vocabulary/form-text.js";
import type { Form, Slot, Word } from "../../grammar/vocabulary/word.js";
import { valueText } from "../model/forms.js";
import { showQuantity, unitsOf } from "../quantities/index.js";
import type { FileView } from "../snapshot/workspace.js";
import { overriddenWord } from "./completion/overrides.js";
import { slotsFilled } from "./completion/next-slots.js";
import { halfTypedAt } from "./half-typed.js";
import { type Place, wordOf } from "./place.js";

export interface SignatureHelp {
  readonly ways: readonly Way[];
  readonly help: string;
}

export interface Way {
  /** "between END and END" */
  readonly label: string;
  readonly parts: readonly Part[];
  /** Index of the part that is due. */
  readonly due: number;
}

export interface Part {
  /** Where it stands in the label. */
  readonly from: number;
  readonly to: number;
  readonly help: string;
}

export function signatureAt(file: FileView, offset: number): SignatureHelp | undefined {
  const found = halfTypedAt(file, offset);
  if (found?.line === undefined) return undefined;
  const { line, place } = found;
  const word = wordOf(place.concept, line) ?? overriddenWord(file, place, line);
  if (word === undefined || isBehind(line, offset)) return undefined;
  const items = finished(line.items, offset);
  const head = file.text.slice(line.head.start, line.head.end);
  const ways = word.takes.flatMap((form) => {
    const due = slotsFilled(form, items);
    return due === undefined || due >= form.length
      ? []
      : [wayOf(head, form, due, (slot) => slotHelp(slot, word, place))];
  });
  return ways.length === 0 ? undefined : { ways, help: word.help };
}

/** What touches the cursor is still being typed, and so is a number whose unit has not come yet. */
function finished(items: readonly Item[], offset: number): readonly Item[] {
  const before = items.filter(({ end }) => end < offset);
  const last = before.at(-1);
  return last?.kind === "quantity" && last.unit === undefined ? before.slice(0, -1) : before;
}

/** Behind the block that the line opens, or behind its own brace. */
const isBehind = ({ block }: Statement, offset: number): boolean => block !== undefined && offset > block.start;

function wayOf(head: string, form: Form, due: number, help: (slot: Slot) => string): Way {
  let label = head;
  const parts = form.map((slot) => {
    const from = label.length + 1;
    label = `${label} ${slotText(slot, valueText)}`;
    return { from, to: label.length, help: help(slot) };
  });
  return { label, parts, due };
}

function slotHelp(slot: Slot, word: Word, { concept }: Place): string {
  switch (slot.kind) {
    case "quantity":
    case "range":
      return [unitHelp(slot), usualHelp(word, slot)].filter((text) => text !== "").join(" ");
    case "modes":
      return `One of ${modesIn(concept ?? "axle")
        .map(code)
        .join(", ")}; several are joined by \`and\`.`;
    case "attachment":
      return "An eye (`rocker.side`, `left.rocker.third`), or a point of a body (`chassis (10, 40, 360) mm`).";
    case "body":
      return "A body that can twist: `rocker`, `left.rocker`, `chassis`.";
    case "name":
      return "A name of yours: letters, digits and hyphens.";
    default:
      return "";
  }
}

const code = (text: string): string => `\`${text}\``;

function unitHelp({ dimension }: Extract<Slot, { kind: "quantity" | "range" }>): string {
  const units = unitsOf(dimension).filter((unit) => unit !== "");
  return units.length === 0 ? "" : `Units: ${units.map(code).join(", ")}.`;
}

function usualHelp(word: Word, slot: Extract<Slot, { kind: "quantity" | "range" }>): string {
  const usual = usualOf(word, slot);
  const [unit] = unitsOf(slot.dimension);
  if (usual === undefined || unit === undefined) return "";
  return `Usual: ${showQuantity(usual.from, unit)} to ${showQuantity(usual.to, unit)}.`;
}
