/** Places in a text that name another file, with the address that they lead to. */
import type { Entry, Span } from "../../grammar/index.js";
import type { FileView } from "../snapshot/workspace.js";

export interface Link {
  readonly span: Span;
  /** As it is written. */
  readonly path: string;
  readonly target: string;
}

export function linksOf(file: FileView): readonly Link[] {
  const found: Link[] = [];
  collect(file.parsed.document.entries, file.uri, found);
  return found;
}

function collect(entries: readonly Entry[], uri: string, into: Link[]): void {
  for (const entry of entries) {
    if (entry.kind !== "statement") continue;
    const named = entry.head.segments[0]?.text === "use" || entry.items.some(isCsv);
    for (const item of named ? entry.items : []) {
      if (item.kind === "text" && item.value !== "")
        into.push({ span: item, path: item.value, target: joined(uri, item.value) });
    }
    collect(entry.block?.entries ?? [], uri, into);
  }
}

const isCsv = (item: { kind: string; segments?: readonly { text: string }[] }): boolean =>
  item.kind === "path" && item.segments?.[0]?.text === "csv";

/** Relative to the file that names it. */
function joined(uri: string, path: string): string {
  const escaped = path.split("/").map(encodeURIComponent).join("/");
  return new URL(escaped, uri).toString();
}
