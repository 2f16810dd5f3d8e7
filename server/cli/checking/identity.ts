/**
 * What makes a finding the same one after the text around it has changed. Always its check, and how grave it is: a leak
 * that grew from 3 to 4 % is the same finding, and one that became an error is another. Beyond that
 *
 * - of what is wrong with the text: where it stands in the tree, told by words and names, and the words that are marked;
 * - of what follows from the figures: the car or set-up, and the message without its figures. Its line is no part of it,
 *   since that is where a remedy would best be written, and it moves as lines come and go.
 *
 * Lines, blanks, comments and figures are never part of it.
 *
 * Invariant: an edit that neither renames nor moves what a finding is about leaves its identity as it is.
 */
import { createHash } from "node:crypto";
import type { Entry, Item, Parsed, Span, Statement } from "../../../grammar/index.js";

export const stepSign = " > ";

/** `setup wet from quill > front.third.rate`; empty for a place between the statements. */
export function treePlace({ document }: Parsed, { start }: Pick<Span, "start">): string {
  const steps: string[] = [];
  let entries: readonly Entry[] = document.entries;
  for (;;) {
    const entry = entries.find((one) => one.start <= start && start < Math.max(one.end, one.start + 1));
    if (entry === undefined) return steps.join(stepSign);
    steps.push(wordsOf(entry));
    if (entry.kind === "row") return steps.join(stepSign);
    entries = entry.block?.entries ?? [];
  }
}

/** A statement without its figures: `damper side for corner`, `rate`, `expect front.heave-rate between and`. */
function wordsOf(entry: Entry): string {
  if (entry.kind === "row") return wordOf(entry.key) ?? "row";
  const { head, items } = entry satisfies Statement;
  return [pathText(head), ...items.flatMap((item) => wordOf(item) ?? [])].join(" ");
}

function wordOf(item: Item): string | undefined {
  if (item.kind === "path") return pathText(item);
  return item.kind === "text" ? JSON.stringify(item.value) : undefined;
}

const pathText = ({ segments }: { readonly segments: readonly { readonly text: string }[] }): string =>
  segments.map(({ text }) => text).join(".");

/** The words of what is marked; nothing for a block, whose content may change without touching the finding. */
export function markedWords(text: string, { start, end }: Span): string {
  const marked = text.slice(start, Math.min(end, start + 300));
  return /[{}\r\n]/.test(marked) ? "" : withoutFigures(marked);
}

/** "moves # % in heave": a number inside a name (V-14) stays. */
export const withoutFigures = (text: string): string =>
  text
    .replace(/(?<![\w-])[-+]?(?:\d+\.?\d*|\.\d+)(?:e[-+]?\d+)?/g, "#")
    .replace(/\s+/g, " ")
    .trim();

/** Sixteen hexadecimal digits: enough for more findings than a season has. */
export const fingerprintOf = (parts: readonly string[]): string =>
  createHash("sha256").update(parts.join("\n")).digest("hex").slice(0, 16);
