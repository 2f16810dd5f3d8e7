/**
 * Three versions of a file to one, as a set-up is read: by its statements, not by its lines.
 *
 * In: three texts. Out: the merge with its conflicts, or why it cannot be made so, in which case lines have to do.
 */
import { format } from "../../../grammar/index.js";
import { type Body, piecesOf } from "./pieces.js";
import { marked, type Marks, printed, type Way } from "./print.js";
import { type Conflict, type MergedBody, threeWay } from "./three-way.js";

export type { Conflict } from "./three-way.js";

export interface SetupMerge {
  readonly conflicts: readonly Conflict[];
  /** Statements that came from theirs, each by its path. */
  readonly taken: readonly string[];
  settled(wayOf: (conflict: Conflict) => Way): string;
  marked(marksOf: (conflict: Conflict) => Marks): string;
}

export type CannotMerge = { readonly unreadable: Way };

/** The result has the line ends of ours, and its byte-order mark. */
export function mergeSetups(base: string, ours: string, theirs: string): SetupMerge | CannotMerge {
  const texts = { base, ours, theirs };
  const bodies = { base: wholeBody(base), ours: wholeBody(ours), theirs: wholeBody(theirs) };
  for (const way of ["base", "ours", "theirs"] as const) if (bodies[way] === undefined) return { unreadable: way };
  const { body, conflicts } = threeWay(bodies.base as Body, bodies.ours as Body, bodies.theirs as Body);
  return {
    conflicts,
    taken: takenFrom(bodies.ours as Body, body),
    settled: (wayOf) => asWritten(texts.ours, printed(body, wayOf)),
    marked: (marksOf) => asWritten(texts.ours, marked(body, marksOf)),
  };
}

/** The pieces, if they put together give the text again: else something in it is not understood, and may not be lost. */
function wholeBody(text: string): Body | undefined {
  const body = piecesOf(text);
  const plain = (some: string): string => format(asLines(some)).replace(/\n+/g, "\n").trim();
  return body !== undefined && plain(printed(body, () => "ours")) === plain(text) ? body : undefined;
}

const asLines = (text: string): string => text.replace(/^\ufeff/, "").replace(/\r\n?/g, "\n");

function asWritten(like: string, text: string): string {
  const mark = like.startsWith("\ufeff") ? "\ufeff" : "";
  return mark + (like.includes("\r\n") ? asLines(text).replaceAll("\n", "\r\n") : asLines(text));
}

/** Paths of what ours did not have so. */
function takenFrom(ours: Body, merged: MergedBody, path: readonly string[] = []): readonly string[] {
  const own = new Map(ours.pieces.map((piece) => [piece.key, piece]));
  const left = new Set(own.keys());
  const changed = merged.pieces.flatMap((piece): readonly string[] => {
    if ("conflict" in piece) {
      left.delete(piece.conflict.path.at(-1) ?? "");
      return [];
    }
    left.delete(piece.key);
    const before = own.get(piece.key);
    const here = [...path, piece.key];
    if (before === undefined || before.meaning !== piece.meaning) return [here.join(" > ")];
    if (before.body !== undefined && piece.body !== undefined) return takenFrom(before.body, piece.body, here);
    return before.body === piece.body ? [] : [here.join(" > ")];
  });
  return [...changed, ...[...left].map((key) => `${[...path, key].join(" > ")} (removed)`)];
}
