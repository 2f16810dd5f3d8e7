/** The outline of a file: cars, axles, elements, parts, cases, set-ups, by the vocabulary's roles. */
import type { Document, Entry, Span, Statement } from "../../grammar/index.js";
import type { Concept, Word } from "../../grammar/vocabulary/word.js";
import { conceptInside, wordOf } from "./place.js";

export type OutlineKind = "car" | "setup" | "axle" | "element" | "part" | "case" | "let" | "structure";

export interface Outline {
  readonly kind: OutlineKind;
  readonly name: string;
  readonly detail: string;
  readonly span: Span;
  readonly nameSpan: Span;
  readonly children: readonly Outline[];
}

export function outlineOf(document: Document): readonly Outline[] {
  return outlines(document.entries, "file");
}

function outlines(entries: readonly Entry[], concept: Concept | undefined): readonly Outline[] {
  return entries.flatMap((entry) => {
    if (entry.kind !== "statement") return [];
    const word = wordOf(concept, entry);
    const kind = word === undefined ? undefined : kindOf(word);
    return word === undefined || kind === undefined ? [] : [outline(entry, word, kind, conceptInside(concept, entry))];
  });
}

function outline(statement: Statement, word: Word, kind: OutlineKind, inside: Concept | undefined): Outline {
  const named = statement.items[0];
  const name = named?.kind === "path" && kind !== "structure" ? named : statement.head;
  const text = name.segments.map((segment) => segment.text).join(".");
  return {
    kind,
    name: kind === "axle" ? `${text} axle` : text,
    detail: kind === "structure" ? "" : word.word,
    span: statement,
    nameSpan: name,
    children: outlines(statement.block?.entries ?? [], inside),
  };
}

function kindOf(word: Word): OutlineKind | undefined {
  switch (word.word) {
    case "car":
    case "setup":
    case "axle":
    case "case":
    case "let":
      return word.word;
    default:
      if (word.role === "element") return "element";
      if (word.role === "part") return "part";
      return word.role === "structure" && word.opens !== undefined ? "structure" : undefined;
  }
}
