/**
 * Which files a file rests on, through `use`, and the circles in it.
 *
 * Invariant: visits each file once; a chain of uses of any length takes no stack.
 */
import type { FileContext } from "./file-context.js";

export type ContextAt = (uri: string) => FileContext | undefined;

/** Every other file that one rests on, nearest first; files that cannot be read are left out. */
export function closureOf(context: FileContext, contextAt: ContextAt): readonly FileContext[] {
  const found = new Set<FileContext>([context]);
  for (const here of found) {
    for (const { uri } of here.uses) {
      const next = uri === undefined ? undefined : contextAt(uri);
      if (next !== undefined) found.add(next);
    }
  }
  found.delete(context);
  return [...found];
}

/** The way from a used file back to the file that uses it, both ends included; undefined where there is none. */
export function wayBack(from: FileContext, to: FileContext, contextAt: ContextAt): readonly string[] | undefined {
  const cameFrom = new Map<FileContext, FileContext | undefined>([[from, undefined]]);
  for (const here of cameFrom.keys()) {
    if (here === to) return trail(to, cameFrom);
    for (const { uri } of here.uses) {
      const next = uri === undefined ? undefined : contextAt(uri);
      if (next !== undefined && !cameFrom.has(next)) cameFrom.set(next, here);
    }
  }
  return undefined;
}

function trail(end: FileContext, cameFrom: ReadonlyMap<FileContext, FileContext | undefined>): readonly string[] {
  const uris: string[] = [];
  for (let here: FileContext | undefined = end; here !== undefined; here = cameFrom.get(here)) uris.push(here.uri);
  return uris.reverse();
}
