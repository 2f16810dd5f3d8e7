/** What a word of the language is: the vocabulary's entry as a hover or a completion's documentation. */
import type { Form, Slot, Word } from "../../grammar/vocabulary/word.js";
import { unitsOf } from "../quantities/index.js";

export function wordCard(word: Word): string {
  const lines = [`\`${word.word}${formText(word.takes[0])}\``, "", word.help];
  const units = usualUnits(word);
  if (units !== undefined) lines.push("", `Units: ${units}`);
  if (word.fallback !== undefined) lines.push("", `When absent: ${word.fallback}`);
  return lines.join("\n");
}

/** " NAME for MODE" — the slots of a form in the order in which they are written. */
export function formText(form: Form | undefined): string {
  return (form ?? []).map((slot) => ` ${slotText(slot)}`).join("");
}

export function slotText(slot: Slot): string {
  switch (slot.kind) {
    case "keyword":
      return slot.word;
    case "choice":
      return slot.words.join(" | ");
    case "quantity":
      return slot.label ?? exampleQuantity(slot.dimension);
    case "point":
      return slot.dimension === "number" ? "(x, y, z)" : slot.size === 2 ? "(y, z) mm" : "(x, y, z) mm";
    case "range":
      return `A .. B ${unitsOf(slot.dimension)[0] ?? ""}`.trim();
    case "text":
      return `"${slot.label}"`;
    case "name":
      return "NAME";
    case "reference":
      return slot.to.toUpperCase();
    case "attachment":
      return "POINT";
    case "body":
      return "BODY";
    case "modes":
      return "MODE";
    case "figure":
      return "FIGURE";
  }
}

function exampleQuantity(dimension: Extract<Slot, { kind: "quantity" }>["dimension"]): string {
  return `VALUE ${unitsOf(dimension)[0] ?? ""}`.trim();
}

function usualUnits(word: Word): string | undefined {
  const slot = word.takes[0]?.find((candidate) => candidate.kind === "quantity" || candidate.kind === "range");
  if (slot === undefined || (slot.kind !== "quantity" && slot.kind !== "range")) return undefined;
  const units = unitsOf(slot.dimension).filter((unit) => unit !== "");
  return units.length === 0 ? undefined : units.map((unit) => `\`${unit}\``).join(", ");
}
