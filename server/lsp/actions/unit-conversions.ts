/** Converts the value at the cursor, or all values of a file, to the other system of units; the car stays the same. */
import { type CodeAction, CodeActionKind, type CodeActionParams } from "vscode-languageserver";
import type { TextEdit } from "../../findings/finding.js";
import type { FileView } from "../../snapshot/workspace.js";
import { laidOut } from "../../refactorings/laid-out.js";
import { convertUnits } from "../../views/convert-units.js";
import { spanOf } from "../convert.js";
import { workspaceEdit } from "../edits.js";
import type { Session } from "../session.js";

export const conversionKind = CodeActionKind.RefactorRewrite;

const systems = [
  { target: "inch", words: "inch units" },
  { target: "si", words: "metric units" },
] as const;

export function unitConversions(session: Session, file: FileView, { range }: CodeActionParams): readonly CodeAction[] {
  const here = spanOf(file.parsed.lines, range);
  const action = (title: string, edits: readonly TextEdit[]): CodeAction[] =>
    edits.length === 0 ? [] : [{ title, kind: conversionKind, edit: workspaceEdit(session, edits) }];
  return systems.flatMap(({ target, words }) => {
    const local = convertUnits(file.uri, file.parsed, target, here);
    if (local.length === 0) return [];
    return [
      ...action(`Convert to ${words} here`, local),
      ...action(`Convert the whole file to ${words}`, laidOut(file.text, convertUnits(file.uri, file.parsed, target))),
    ];
  });
}
