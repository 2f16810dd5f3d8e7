/** The name under the cursor: where it is declared and where else it is spoken of, over a set of files. */
import type { ModelSymbol } from "../model/resolved-file.js";
import type { Origin } from "../model/origin.js";
import type { FileView } from "../snapshot/workspace.js";
import { holds } from "./place.js";

export interface NameAt {
  readonly symbol: ModelSymbol;
  /** The occurrence that the cursor is in. */
  readonly here: Origin;
}

export function nameAt(file: FileView, offset: number): NameAt | undefined {
  for (const symbol of file.symbols) {
    const here = occurrences(symbol).find((origin) => origin.uri === file.uri && holds(origin, offset));
    if (here !== undefined) return { symbol, here };
  }
  return undefined;
}

/** Every place of the name, declaration first, over the files given; each place once. */
export function placesOf(symbol: ModelSymbol, files: Iterable<FileView>): readonly Origin[] {
  const places = new Map<string, Origin>();
  const add = (origin: Origin): unknown => places.set(`${origin.uri} ${origin.start}`, origin);
  add(symbol.declaration);
  for (const file of files) {
    for (const other of file.symbols)
      if (samePlace(other.declaration, symbol.declaration)) other.references.forEach(add);
  }
  return [...places.values()];
}

const occurrences = (symbol: ModelSymbol): readonly Origin[] => [symbol.declaration, ...symbol.references];
export const samePlace = (a: Origin, b: Origin): boolean => a.uri === b.uri && a.start === b.start;
