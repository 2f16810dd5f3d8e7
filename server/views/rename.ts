/** Whether a name can become another, and the edits that make it so. */
import { reservedNames } from "../../grammar/vocabulary/index.js";
import type { TextEdit } from "../findings/finding.js";
import type { ModelSymbol } from "../model/resolved-file.js";
import type { FileView } from "../snapshot/workspace.js";
import { placesOf } from "./names.js";

export type Rename = { readonly edits: readonly TextEdit[] } | { readonly refused: string };

const nameShape = /^\p{L}[\p{L}\p{N}]*(?:[-_][\p{L}\p{N}]+)*$/u;

export function rename(symbol: ModelSymbol, to: string, files: readonly FileView[]): Rename {
  if (!nameShape.test(to))
    return { refused: `"${to}" is not a name: letters, digits and single hyphens, a letter first.` };
  if (reservedNames.has(to))
    return { refused: `"${to}" is a word of the language and cannot name a ${symbol.target}.` };
  if (to !== symbol.name && isTaken(symbol, to, files))
    return { refused: `"${to}" already names a ${symbol.target} here.` };
  return { edits: placesOf(symbol, files).map((origin) => ({ uri: origin.uri, span: origin, newText: to })) };
}

/** Taken where the new path would be the same as another's. */
function isTaken(symbol: ModelSymbol, to: string, files: readonly FileView[]): boolean {
  const place = symbol.path.slice(0, symbol.path.length - symbol.name.length);
  return files.some((file) =>
    file.symbols.some((other) => other.target === symbol.target && other.path === `${place}${to}`),
  );
}
