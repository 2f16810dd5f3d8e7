/** Words that a line can begin with here: needed ones that are missing first, single ones that stand already left out. */
import type { Block, Document, Span } from "../../../grammar/index.js";
import { wordsIn } from "../../../grammar/vocabulary/index.js";
import type { Concept, Slot, Word } from "../../../grammar/vocabulary/word.js";
import { firstForm, wordCard } from "../word-card.js";
import { type Candidate, candidate, type CandidateKind } from "./candidate.js";

export function wordCandidates(concept: Concept, around: Block | Document, span: Span): readonly Candidate[] {
  const present = new Set(
    around.entries.flatMap((entry) =>
      entry.kind === "statement" && entry.start !== span.start ? headWords(entry.head.segments) : [],
    ),
  );
  return wordsIn(concept)
    .filter((word) => word.times !== "one" || !present.has(word.word))
    .map((word) => wordCandidate(word, span));
}

const headWords = (segments: readonly { readonly text: string }[]): string[] =>
  segments.length === 1 && segments[0] !== undefined ? [segments[0].text] : [];

function wordCandidate(word: Word, span: Span): Candidate {
  return candidate(word.word, kindOf(word), span, {
    detail: firstForm(word),
    documentation: wordCard(word),
    insert: snippetOf(word),
    snippet: true,
    rank: word.needed === true ? 0 : 1,
  });
}

function kindOf(word: Word): CandidateKind {
  if (word.role === "element") return "element";
  return word.role === "property" || word.role === "law" ? "property" : "word";
}

/** The word, its starter value or its slots as tab stops, and a block where one has to follow. */
function snippetOf(word: Word): string {
  const form = word.takes[0] ?? [];
  const slots = word.starter !== undefined && form.length === 1 ? ` \${1:${escaped(word.starter)}}` : slotStops(form);
  return `${word.word}${slots}${word.block === "required" ? " {\n  $0\n}" : ""}`;
}

function slotStops(form: readonly Slot[]): string {
  let stop = 0;
  return form
    .map((slot) => {
      if (slot.kind === "keyword") return ` ${slot.word}`;
      stop += 1;
      return ` \${${stop}:${escaped(stopText(slot))}}`;
    })
    .join("");
}

function stopText(slot: Slot): string {
  switch (slot.kind) {
    case "choice":
      return slot.words[0] ?? "";
    case "modes":
      return "heave";
    case "point":
      return slot.size === 2 ? "(0, 0) mm" : slot.dimension === "number" ? "(1, 0, 0)" : "(0, 0, 0) mm";
    case "text":
      return '"file"';
    case "range":
      return "0 .. 0";
    case "quantity":
      return "0";
    default:
      return "name";
  }
}

const escaped = (text: string): string => text.replace(/[\\$}]/g, "\\$&");
