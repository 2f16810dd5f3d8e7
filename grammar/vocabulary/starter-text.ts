/**
 * What to write where a word is missing: its example, its usual value, or a block with what is
 * needed inside. Used by fixes, completion, snippets and the reference page.
 *
 * Invariant: the text parses without problems and every word in it is known in its place.
 */
import { findWord, opensAt, wordsIn } from "./index.js";
import type { Concept, Form, Slot, Word } from "./word.js";

const step = "  ";

/** One statement, with the lines of its block indented against it; no newline at the end. */
export function starterText(word: Word): string {
  if (word.example !== undefined) return word.example;
  if (word.starter !== undefined) return `${word.word} ${word.starter}`;
  const head = [word.word, ...(word.takes[0] ?? []).map(slotText)].join(" ");
  const concept = opensAt(word, 0);
  if (concept === undefined) return head;
  const inside = neededIn(concept).map((needed) => starterText(needed));
  return inside.length === 0 ? `${head} {\n}` : `${head} {\n${indented(inside.join("\n"))}\n}`;
}

function neededIn(concept: Concept): readonly Word[] {
  const needed = wordsIn(concept).filter((word) => word.needed === true);
  const axle = concept === "car" ? findWord(concept, "axle") : undefined;
  return axle === undefined ? needed : [...needed, axle];
}

function indented(text: string): string {
  return text.replace(/^(?=.)/gm, step);
}

function slotText(slot: Form[number]): string {
  return fixedText(slot) ?? (slot.kind === "text" ? `"${slot.label}"` : "name");
}

/** What stands there whatever the author means: a fixed word, or the first of several. */
function fixedText(slot: Slot): string | undefined {
  if (slot.kind === "keyword") return slot.word;
  return slot.kind === "choice" ? slot.words[0] : undefined;
}
