/**
 * Lines of a text as pieces to move: entries with the notes above and the comment behind them, and what takes lines away without
 * losing a comment.
 */
import type { Entry, Parsed, Span, Statement } from "../../grammar/index.js";
import { removal } from "../findings/edits.js";
import type { TextEdit } from "../findings/finding.js";

/** From the first note of an entry to the end of the comment behind it on its line. */
export function wholeOf({ text }: Parsed, { start, end, notes }: Entry): Span {
  const behind = /^[ \t]*,?[ \t]*(#[^\r\n]*)/.exec(text.slice(end));
  return { start: notes[0]?.start ?? start, end: end + (behind?.[0].trimEnd().length ?? 0) };
}

/** Entries that stand one behind the other as one piece, with the comments between them. */
export function runsOf(parsed: Parsed, entries: readonly Entry[], isMoved: (entry: Entry) => boolean): readonly Span[] {
  const runs: Span[] = [];
  let isOpen = false;
  for (const entry of entries) {
    const moved = isMoved(entry);
    const last = runs.at(-1);
    if (moved) {
      const whole = wholeOf(parsed, entry);
      if (isOpen && last !== undefined) runs[runs.length - 1] = { start: last.start, end: whole.end };
      else runs.push(whole);
    }
    isOpen = moved;
  }
  return runs;
}

export const sliceOf = ({ text }: Parsed, { start, end }: Span): string => text.slice(start, end);

export function removedRun(uri: string, { text }: Parsed, span: Span): TextEdit {
  return { uri, span: removal(text, span), newText: "" };
}

/** Takes a statement away; its notes and the comment behind it stay as comments. */
export function removedStatement(uri: string, parsed: Parsed, statement: Statement): TextEdit {
  const { start, end, notes } = statement;
  const span = removal(parsed.text, { start: notes[0]?.start ?? start, end });
  const kept = [
    ...notes.map(({ text }) => `# ${text}`),
    ...parsed.comments.filter((comment) => comment.start >= end && comment.end <= span.end).map(({ text }) => text),
  ];
  const indent = /^[ \t]*/.exec(parsed.text.slice(span.start))?.[0] ?? "";
  return { uri, span, newText: kept.map((comment) => `${indent}${comment}\n`).join("") };
}
