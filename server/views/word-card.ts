/** What a word of the language is: the vocabulary's entry as a hover or a completion's documentation. */
import { formText } from "../../grammar/vocabulary/form-text.js";
import type { Word } from "../../grammar/vocabulary/word.js";
import { valueText } from "../model/forms.js";
import { unitsOf } from "../quantities/index.js";

export function wordCard(word: Word): string {
  const lines = [`\`${[word.word, firstForm(word)].join(" ").trim()}\``, "", word.help];
  const units = usualUnits(word);
  if (units !== undefined) lines.push("", `Units: ${units}`);
  if (word.fallback !== undefined) lines.push("", `When absent: ${word.fallback}`);
  return lines.join("\n");
}

/** "NAME for MODE": the first way to write it, values by their usual unit. */
export function firstForm(word: Word): string {
  return formText(word.takes[0] ?? [], valueText);
}

function usualUnits(word: Word): string | undefined {
  const slot = word.takes[0]?.find((candidate) => candidate.kind === "quantity" || candidate.kind === "range");
  if (slot === undefined || (slot.kind !== "quantity" && slot.kind !== "range")) return undefined;
  const units = unitsOf(slot.dimension).filter((unit) => unit !== "");
  return units.length === 0 ? undefined : units.map((unit) => `\`${unit}\``).join(", ");
}
