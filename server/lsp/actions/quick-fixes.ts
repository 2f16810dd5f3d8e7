/** The fixes of the findings at the cursor. They are computed here, when they are asked for, never while typing. */
import { type CodeAction, CodeActionKind, type CodeActionParams } from "vscode-languageserver";
import type { Finding, Fix } from "../../findings/finding.js";
import type { FileView } from "../../snapshot/workspace.js";
import { spanOf } from "../convert.js";
import { diagnosticOf } from "../diagnostics.js";
import { workspaceEdit } from "../edits.js";
import type { Session } from "../session.js";

export function quickFixes(session: Session, file: FileView, parameters: CodeActionParams): readonly CodeAction[] {
  const at = spanOf(file.parsed.lines, parameters.range);
  const here = file.findings().filter(({ span }) => span.start <= at.end && at.start <= span.end);
  return here.flatMap((finding) => file.fixes(finding).map((fix) => quickFix(session, file, finding, fix)));
}

function quickFix(session: Session, file: FileView, finding: Finding, fix: Fix): CodeAction {
  return {
    title: fix.title,
    kind: CodeActionKind.QuickFix,
    diagnostics: [diagnosticOf(session, file, finding)],
    isPreferred: fix.preferred,
    edit: workspaceEdit(session, fix.edits),
  };
}
