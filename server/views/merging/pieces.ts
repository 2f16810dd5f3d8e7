/**
 * A text as pieces that can be merged one by one: each statement with its comments, and a key that says which statement
 * of another version is the same one: its word, or its word and name where there may be several, or the path of an override.
 *
 * Invariant: every character of the text but blanks, line breaks and commas between statements is in some piece.
 */
import { type Entry, parse, type Parsed, type Statement } from "../../../grammar/index.js";
import type { Concept } from "../../../grammar/vocabulary/word.js";
import { conceptInside, wordOf } from "../place.js";
import { meaningOf } from "./meaning.js";

export interface Piece {
  readonly key: string;
  /** Comments and notes above it, line by line; "" is a blank line. */
  readonly lead: readonly string[];
  /** The statement without its block, as written. */
  readonly header: string;
  /** The same for every way to write it: blanks and units are no difference. */
  readonly meaning: string;
  /** The comment behind it. */
  readonly tail: string | undefined;
  readonly body: Body | undefined;
}

export interface Body {
  /** The comment behind the opening brace. */
  readonly open: string | undefined;
  readonly pieces: readonly Piece[];
  /** Comments below the last statement. */
  readonly foot: readonly string[];
}

export const noBody: Body = { open: undefined, pieces: [], foot: [] };

/** Undefined where the text cannot be read whole: then its pieces would not be all of it. */
export function piecesOf(text: string): Body | undefined {
  const parsed = parse(text.replace(/^\ufeff/, ""));
  return parsed.problems.length > 0
    ? undefined
    : bodyOf(parsed, parsed.document.entries, 0, parsed.text.length, "file");
}

function bodyOf(
  parsed: Parsed,
  entries: readonly Entry[],
  start: number,
  end: number,
  concept: Concept | undefined,
): Body {
  const gaps = gapsOf(parsed.text, entries, start, end);
  const seen = new Map<string, number>();
  const pieces = entries.map((entry, i): Piece => {
    const plain = keyOf(entry, concept);
    const nth = (seen.get(plain) ?? 0) + 1;
    seen.set(plain, nth);
    return {
      key: nth === 1 ? plain : `${plain} #${nth}`,
      lead: gaps[i]?.lead ?? [],
      header: headerOf(parsed.text, entry),
      meaning: meaningOf(parsed.text, entry),
      tail: gaps[i + 1]?.tail,
      body: innerBody(parsed, entry, concept),
    };
  });
  return { open: gaps[0]?.tail, pieces, foot: gaps.at(-1)?.lead ?? [] };
}

function innerBody(parsed: Parsed, entry: Entry, concept: Concept | undefined): Body | undefined {
  if (entry.kind === "row" || entry.block === undefined) return undefined;
  const { start, end, entries } = entry.block;
  return bodyOf(parsed, entries, start + 1, end - 1, conceptInside(concept, entry));
}

/** Where a statement itself begins: its span has its notes too. */
const ownStart = (entry: Entry): number => (entry.kind === "row" ? entry.key.start : entry.head.start);

function headerOf(text: string, entry: Entry): string {
  const end = entry.kind === "statement" && entry.block !== undefined ? entry.block.start : entry.end;
  return text.slice(ownStart(entry), end).trim();
}

interface Gap {
  /** The comment that stands on the line of what is before. */
  readonly tail: string | undefined;
  readonly lead: readonly string[];
}

/** What stands before each entry, and behind the last. */
function gapsOf(text: string, entries: readonly Entry[], start: number, end: number): readonly Gap[] {
  const from = [start, ...entries.map((entry) => entry.end)];
  const to = [...entries.map(ownStart), end];
  return from.map((at, i) => gapOf(text.slice(at, to[i]), i === 0 && start === 0));
}

function gapOf(gap: string, isTop: boolean): Gap {
  const [first = "", ...rest] = gap.split(/\r\n|\n|\r/);
  const lines = isTop ? [first, ...rest] : rest;
  const tail = isTop ? "" : commentIn(first);
  return { tail: tail === "" ? undefined : tail, lead: tidy(lines.map(commentIn)) };
}

/** The last line of a gap may end in the blanks before the statement, and a comma may part it from the one before. */
const commentIn = (line: string): string => line.replace(/^[\s,]+/, "").trimEnd();

/** One blank line where there are several; the end of the last line is where the statement itself stands. */
function tidy(lines: readonly string[]): readonly string[] {
  const own = lines.at(-1) === "" ? lines.slice(0, -1) : lines;
  return own.filter((line, i) => line !== "" || own[i - 1] !== "");
}

/** Words before which a statement has said what it is about. */
const comparisons: ReadonlySet<string> = new Set(["between", "above", "below", "within"]);

function keyOf(entry: Entry, concept: Concept | undefined): string {
  if (entry.kind === "row") return `row ${plainItem(entry.key)}`;
  const head = pathText(entry.head);
  const word = wordOf(concept, entry);
  if (word === undefined) return isDeclared(entry) ? subject(entry) : head;
  return word.times === "one" ? head : word.times === "named" ? named(entry) : subject(entry);
}

/** `remove front.third`, `case hairpin { … }`: an unknown word with a name is told apart by it, an override is not. */
const isDeclared = ({ head, items }: Statement): boolean => head.segments.length === 1 && items[0]?.kind === "path";

const named = ({ head, items: [name] }: Statement): string =>
  name?.kind === "path" ? `${pathText(head)} ${pathText(name)}` : pathText(head);

/** `expect front.heave-rate at hairpin`, `use "parts.crank"`, `ratio heave`: all up to the first figure or comparison. */
function subject({ head, items }: Statement): string {
  const words = [pathText(head)];
  for (const item of items) {
    const word = item.kind === "path" ? pathText(item) : item.kind === "text" ? JSON.stringify(item.value) : undefined;
    if (word === undefined || comparisons.has(word)) break;
    words.push(word);
  }
  return words.join(" ");
}

const pathText = ({ segments }: { readonly segments: readonly { readonly text: string }[] }): string =>
  segments.map(({ text }) => text).join(".");

function plainItem(item: Statement["items"][number]): string {
  if (item.kind === "path") return pathText(item);
  return item.kind === "quantity" ? `${item.digits} ${item.unit?.text ?? ""}` : `at ${item.kind}`;
}

/** Whether both say the same, comments aside. */
export function saysSame(one: Piece, other: Piece): boolean {
  if (one.meaning !== other.meaning) return false;
  const [own, others] = [one.body?.pieces, other.body?.pieces];
  if (own === undefined || others === undefined) return own === others;
  return own.length === others.length && own.every((piece, i) => others[i] !== undefined && saysSame(piece, others[i]));
}
