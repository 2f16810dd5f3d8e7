/** Where a new part can go: a catalogue that the file uses already, else a new file beside it. */
import type { Statement } from "../../grammar/index.js";
import type { TextEdit } from "../findings/finding.js";
import { insertionInto } from "../findings/insertion.js";
import { relativeTo } from "../model/relative.js";
import type { FileView } from "../snapshot/workspace.js";
import { plainHead } from "./part-of.js";
import type { Refactored, Refactoring } from "./refactoring.js";

export interface Shelf {
  /** For a title: the file's name. */
  readonly called: string;
  readonly text: string;
  /** What puts a part there; the whole text of a new file in `creates`. */
  put(part: string): Pick<Refactoring, "edits" | "creates">;
}

/** More than these nobody wants to choose from. */
const MOST = 3;

export function shelvesOf({ file, exists }: Refactored): readonly Shelf[] {
  const used = file.uses.flatMap((uri) => shelfIn(file, uri) ?? []);
  if (used.length > 0) return used.slice(0, MOST);
  const made = newShelf(file, exists);
  return made === undefined ? [] : [made];
}

/** In its last catalogue. */
function shelfIn(file: FileView, uri: string): Shelf | undefined {
  const parsed = file.parsedOf(uri);
  const block = parsed?.document.entries
    .filter((entry): entry is Statement => entry.kind === "statement" && plainHead(entry) === "catalogue")
    .at(-1)?.block;
  if (parsed === undefined || block?.closed !== true) return undefined;
  const words = new Set(block.entries.map((entry) => (entry.kind === "statement" ? (plainHead(entry) ?? "") : "")));
  return {
    called: calledOf(uri),
    text: parsed.text,
    put: (part) => ({ edits: [{ uri, ...insertionInto(parsed.text, block, part, words) }] }),
  };
}

function newShelf(file: FileView, exists: Refactored["exists"]): Shelf | undefined {
  const stem = calledOf(file.uri).replace(/\.crank$/, "");
  const names = ["parts.crank", `${stem}-parts.crank`, `${stem}-catalogue.crank`];
  for (const called of names) {
    const target = relativeTo(file.uri, called);
    if (!("uri" in target) || !/^[^:]+:\/.*\//.test(file.uri)) return undefined;
    if (exists(target.uri)) continue;
    const textWith = (part: string): string => `# ${called}: what is on the shelf\ncatalogue {\n${indented(part)}\n}\n`;
    return {
      called,
      text: "",
      put: (part) => ({ edits: [useLine(file, called)], creates: { uri: target.uri, text: textWith(part) } }),
    };
  }
  return undefined;
}

const indented = (text: string): string => text.replace(/^(?=.)/gm, "  ");

/** Behind the last file that is used, else above the first statement and its notes. */
function useLine({ uri, text, parsed: { document } }: FileView, called: string): TextEdit {
  const line = `use "${called}"`;
  const last = document.entries.filter((entry) => plainHead(entry) === "use").at(-1);
  const [first] = document.entries;
  const at = last === undefined ? (first?.notes[0]?.start ?? first?.start ?? 0) : endOfLine(text, last.end);
  return { uri, span: { start: at, end: at }, newText: last === undefined ? `${line}\n\n` : `\n${line}` };
}

function endOfLine(text: string, place: number): number {
  const end = /[\r\n]|$/.exec(text.slice(place));
  return place + (end?.index ?? 0);
}

function calledOf(uri: string): string {
  const last = uri.split("/").at(-1) ?? uri;
  try {
    return decodeURIComponent(last);
  } catch {
    // A percent sign that escapes nothing: shown as it is.
    return last;
  }
}
