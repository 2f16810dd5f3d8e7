/**
 * Cars and set-ups that a new text has word for word where the last one had them are taken over as they were built,
 * with what was told of them, so that a keystroke in one car of a file does not build the others anew.
 *
 * What was read of the blocks of a car that is typed into is handed on as well (`readings.ts`).
 *
 * Invariant: what is taken over is what building it again would give: the same text at the same place, the same files in
 * use, the same parts, tables and names around it, and what it derives from taken over too. Where a file has `let`s of its own,
 * nothing is.
 */
import type { Entry, Span } from "../../grammar/index.js";
import type { Declared, FileContext } from "./file-context.js";
import { plainWord } from "./forms.js";
import type { ReadText } from "./resolved-file.js";

/** @param before the same file as it was last built */
export function adopt(context: FileContext, before: FileContext, readText: ReadText): void {
  if (!isSameAround(context, before) || !holdsTables(before, readText)) return;
  context.readings = before.readings;
  const taken = new Set<Declared>();
  for (const declared of context.declared.values()) adoptOne(declared, before, taken);
  if (taken.size > 0) for (const [uri, text] of before.tables.texts) context.tables.texts.set(uri, text);
}

const isBuilt = ({ tree, view }: Declared): boolean =>
  tree !== undefined && tree !== null && view !== undefined && view !== null;

/** What it derives from comes first, whatever the order in the text. */
function adoptOne(declared: Declared, before: FileContext, taken: Set<Declared>): void {
  const { context, name } = declared;
  const old = before.declared.get(name);
  if (taken.has(declared) || old === undefined || !isBuilt(old)) return;
  if (!isSameEntry(declared.raw, old.raw, context, before) || isDisturbed(declared.raw, context, before)) return;
  const base = declared.base && context.findDeclared(declared.base.text);
  if (base?.context === context) {
    // Two set-ups that derive from each other have no view, so this comes to an end.
    adoptOne(base, before, taken);
    if (!taken.has(base)) return;
  }
  declared.tree = old.tree;
  declared.view = old.view;
  declared.sink = old.sink;
  taken.add(declared);
}

function isSameAround(context: FileContext, before: FileContext): boolean {
  if (context.scope.lets !== undefined || before.scope.lets !== undefined) return false;
  if (!isSameList(context.used, before.used)) return false;
  if (!isSameList(context.declaredNames(), before.declaredNames())) return false;
  const own = around(context);
  const old = around(before);
  return own.length === old.length && own.every((entry, i) => isSameEntry(entry, old[i] as Entry, context, before));
}

const isSameList = <T>(a: readonly T[], b: readonly T[]): boolean =>
  a.length === b.length && a.every((one, i) => one === b[i]);

/** Everything at the top of the file but its cars and set-ups. */
function around({ parsed }: FileContext): readonly Entry[] {
  return parsed.document.entries.filter((entry) => {
    const word = entry.kind === "statement" ? plainWord(entry.head) : undefined;
    return word !== "car" && word !== "setup";
  });
}

function isSameEntry(entry: Entry, old: Entry, context: FileContext, before: FileContext): boolean {
  return isSameText(entry, old, context, before) && isSameNotes(entry, old);
}

function isSameText(a: Span, b: Span, context: FileContext, before: FileContext): boolean {
  if (a.start !== b.start || a.end !== b.end) return false;
  return context.parsed.text.slice(a.start, a.end) === before.parsed.text.slice(b.start, b.end);
}

function isSameNotes(a: Entry, b: Entry): boolean {
  return (
    a.notes.length === b.notes.length &&
    a.notes.every(({ text, start }, i) => text === b.notes[i]?.text && start === b.notes[i].start)
  );
}

/** Where the grammar had to help itself, the same text may have been read in another way. */
function isDisturbed({ start, end }: Span, ...contexts: readonly FileContext[]): boolean {
  return contexts.some(({ parsed }) => parsed.problems.some((problem) => problem.end >= start && problem.start <= end));
}

function holdsTables({ tables }: FileContext, readText: ReadText): boolean {
  return [...tables.texts].every(([uri, text]) => {
    const read = readText(uri);
    return ("text" in read ? read.text : undefined) === text;
  });
}
