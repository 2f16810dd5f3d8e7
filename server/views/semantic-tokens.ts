/**
 * What each word is, for colouring: only what a pattern cannot know (words by their place in the
 * vocabulary, names by what they declare or point at). Numbers, comments and text are the grammar file's.
 */
import type { Entry, Item, Span, Statement } from "../../grammar/index.js";
import { connectives } from "../../grammar/vocabulary/index.js";
import type { Concept, Word } from "../../grammar/vocabulary/word.js";
import { conceptInside, wordOf } from "./place.js";

export const tokenTypes = [
  "keyword",
  "property",
  "function",
  "class",
  "type",
  "variable",
  "enumMember",
  "string",
] as const;
export type TokenType = (typeof tokenTypes)[number];
export const tokenModifiers = ["declaration"] as const;

export interface Token extends Span {
  readonly type: TokenType;
  readonly declares: boolean;
}

export function tokensOf(entries: readonly Entry[]): readonly Token[] {
  const tokens: Token[] = [];
  walk(entries, "file", tokens);
  return tokens;
}

function walk(entries: readonly Entry[], concept: Concept | undefined, into: Token[]): void {
  for (const entry of entries) {
    if (entry.kind === "row") {
      paint(entry.key, "enumMember", into);
      continue;
    }
    const word = wordOf(concept, entry);
    paint(entry.head, headType(entry, word), into);
    entry.items.forEach((item, index) => paintItem(item, index, word, into));
    if (entry.block !== undefined) walk(entry.block.entries, conceptInside(concept, entry), into);
  }
}

function headType(statement: Statement, word: Word | undefined): TokenType | undefined {
  if (statement.head.segments.length > 1) return "property";
  switch (word?.role) {
    case "property":
    case "law":
      return "property";
    case undefined:
      return undefined;
    default:
      return "keyword";
  }
}

function paintItem(item: Item, index: number, word: Word | undefined, into: Token[]): void {
  if (item.kind !== "path") return;
  const [only, more] = item.segments;
  if (only !== undefined && more === undefined && connectives.has(only.text)) return paint(item, "keyword", into);
  const declared = word?.takes.some((form) => form[index]?.kind === "name") === true;
  const type = declared ? declaredType(word) : word === undefined ? undefined : "variable";
  paint(item, isMode(item) ? "enumMember" : type, into, declared);
}

function declaredType(word: Word | undefined): TokenType {
  if (word?.role === "element") return "function";
  if (word?.role === "part") return "type";
  return word?.word === "car" || word?.word === "setup" ? "class" : "variable";
}

const modes = new Set(["corner", "heave", "roll", "pitch", "warp"]);
const isMode = (item: Item): boolean => item.kind === "path" && item.segments.every(({ text }) => modes.has(text));

function paint(span: Span, type: TokenType | undefined, into: Token[], declares = false): void {
  if (type !== undefined && span.end > span.start) into.push({ start: span.start, end: span.end, type, declares });
}
