/** What a part of the catalogue and an element have in common: which words of the element a part of a kind would bring. */
import type { Entry, Parsed, Statement } from "../../grammar/index.js";
import { findWord, wordsIn } from "../../grammar/vocabulary/index.js";
import type { Concept, Word } from "../../grammar/vocabulary/word.js";
import { conceptInside, placeAt, wordOf } from "../views/place.js";

export interface ElementAt {
  readonly statement: Statement;
  readonly concept: Concept;
  readonly name: string;
  readonly entries: readonly Entry[];
}

/** The innermost element whose block or first line is around the place. */
export function elementAt({ document }: Parsed, offset: number): ElementAt | undefined {
  const { around, statement } = placeAt(document, offset);
  let concept: Concept | undefined = "file";
  let found: ElementAt | undefined;
  for (const outer of statement === undefined || around.includes(statement) ? around : [...around, statement]) {
    const word = wordOf(concept, outer);
    if (word?.role === "element") found = elementOf(outer, word);
    concept = conceptInside(concept, outer);
  }
  return found;
}

function elementOf(statement: Statement, word: Word): ElementAt | undefined {
  const [item] = statement.items;
  const name = item?.kind === "path" && item.segments.length === 1 ? item.segments[0]?.text : undefined;
  const { block } = statement;
  if (word.opens === undefined || name === undefined || block?.closed !== true) return undefined;
  return { statement, concept: word.opens, name, entries: block.entries };
}

/** Kinds of parts that go into an element. */
export const partWordsFor = (concept: Concept): readonly Word[] =>
  wordsIn("catalogue").filter(({ role, fits }) => role === "part" && fits?.into.includes(concept) === true);

/** A line with one word for its head; undefined for rows and paths. */
export function plainHead(entry: Entry): string | undefined {
  if (entry.kind !== "statement") return undefined;
  const [only, more] = entry.head.segments;
  return more === undefined ? only?.text : undefined;
}

export function isKnown(concept: Concept | undefined, entry: Entry): boolean {
  const head = plainHead(entry);
  return concept !== undefined && head !== undefined && findWord(concept, head) !== undefined;
}

export const isFit = (entry: Entry): entry is Statement => plainHead(entry) === "fit";
