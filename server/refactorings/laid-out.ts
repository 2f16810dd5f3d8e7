/** Edits of one text with its layout: a text that was laid out before is so afterwards, any other keeps its author's layout. */
import { format } from "../../grammar/index.js";
import { applyEdits } from "../findings/edits.js";
import type { TextEdit } from "../findings/finding.js";
import { minimalEdit } from "../views/minimal-edit.js";

export function laidOut(text: string, edits: readonly TextEdit[]): readonly TextEdit[] {
  const [first] = edits;
  if (first === undefined || format(text) !== text) return edits;
  const after = applyEdits(text, edits);
  const wanted = format(after);
  const edit = wanted === after ? undefined : minimalEdit(text, wanted);
  return edit === undefined ? edits : [{ uri: first.uri, ...edit }];
}
