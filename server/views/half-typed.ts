/** The line that is being typed: the word under the cursor, the block around it, and the statement that has begun before it. */
import type { Block, Document, Entry, Span, Statement } from "../../grammar/index.js";
import type { FileView } from "../snapshot/workspace.js";
import { holds, type Place, placeAt } from "./place.js";

export interface HalfTyped {
  /** The word under the cursor up to the cursor: what a completion replaces. */
  readonly typed: Span;
  readonly place: Place;
  readonly block: Block | Document;
  /** Undefined where the cursor is in the first word of a line. */
  readonly line: Statement | undefined;
}

/** Undefined in a comment, and in a block that an unknown word opened. */
export function halfTypedAt(file: FileView, offset: number): HalfTyped | undefined {
  if (insideComment(file, offset)) return undefined;
  const typed = typedAt(file.text, offset);
  const place = placeAt(file.parsed.document, offset);
  if (place.concept === undefined) return undefined;
  const block = innermost(place);
  return { typed, place, block, line: statementBefore(block.entries, file.text, typed.start) };
}

function typedAt(text: string, offset: number): Span {
  let start = offset;
  while (start > 0 && /[\p{L}\p{N}_.%*^/-]/u.test(text[start - 1] ?? "")) start -= 1;
  // A number is not a word: `95 N` completes the unit, `95` nothing.
  const digits = /^[-+]?[\d.]+/.exec(text.slice(start, offset))?.[0] ?? "";
  return { start: start + digits.length, end: offset };
}

/** The statement on this line that has begun before the typed word, if only blanks and items lie between. */
function statementBefore(entries: readonly Entry[], text: string, start: number): Statement | undefined {
  const before = entries
    .filter((entry): entry is Statement => entry.kind === "statement" && entry.start < start)
    .at(-1);
  if (before === undefined) return undefined;
  const between = text.slice(Math.min(before.end, start), start);
  return /[\n,{}]/.test(between) ? undefined : before;
}

function innermost(place: Place): Block | Document {
  const blocks = place.chain.filter(
    (node): node is Block | Document => node.kind === "block" || node.kind === "document",
  );
  return blocks.at(-1) ?? { kind: "document", entries: [], start: 0, end: 0 };
}

function insideComment(file: FileView, offset: number): boolean {
  const line = file.text.lastIndexOf("\n", offset - 1) + 1;
  return (
    file.parsed.comments.some((comment) => comment.start < offset && holds(comment, offset)) ||
    /^\s*##/.test(file.text.slice(line, offset))
  );
}
