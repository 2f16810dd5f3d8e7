/**
 * Quick fixes of the findings at the cursor, and the safe ones of a whole file at once.
 * Fixes are computed here, when they are asked for, never while typing.
 */
import {
  type CodeAction,
  CodeActionKind,
  type CodeActionParams,
  type Diagnostic,
} from "vscode-languageserver";
import type { Finding, Fix } from "../../findings/finding.js";
import type { FileView } from "../../snapshot/workspace.js";
import { spanOf } from "../convert.js";
import { diagnosticOf } from "../diagnostics.js";
import { workspaceEdit } from "../edits.js";
import type { Feature } from "../feature.js";
import type { Session } from "../session.js";

const fixAllKind = `${CodeActionKind.SourceFixAll}.bellcrank`;

export const codeActions: Feature = {
  capabilities: { codeActionProvider: { codeActionKinds: [CodeActionKind.QuickFix, fixAllKind] } },
  attach(connection, session) {
    connection.onCodeAction((parameters) => {
      const file = session.file(parameters.textDocument.uri);
      return [...quickFixes(session, file, parameters), ...fixAll(session, file, parameters)];
    });
  },
};

function wants(parameters: CodeActionParams, kind: string): boolean {
  const only = parameters.context.only;
  return only === undefined || only.some((asked) => kind === asked || kind.startsWith(`${asked}.`));
}

function quickFixes(session: Session, file: FileView, parameters: CodeActionParams): CodeAction[] {
  if (!wants(parameters, CodeActionKind.QuickFix)) return [];
  const at = spanOf(file.parsed.lines, parameters.range);
  const here = file.findings().filter(({ span }) => span.start <= at.end && at.start <= span.end);
  return here.flatMap((finding) => file.fixes(finding).map((fix) => quickFix(session, file, finding, fix)));
}

function quickFix(session: Session, file: FileView, finding: Finding, fix: Fix): CodeAction {
  const diagnostic: Diagnostic = diagnosticOf(session, file, finding);
  return {
    title: fix.title,
    kind: CodeActionKind.QuickFix,
    diagnostics: [diagnostic],
    isPreferred: fix.preferred,
    edit: workspaceEdit(session, fix.edits),
  };
}

/** Every safe fix that does not touch the place of an earlier one. */
function fixAll(session: Session, file: FileView, parameters: CodeActionParams): CodeAction[] {
  if (!wants(parameters, fixAllKind)) return [];
  const edits = file.safeEdits();
  if (edits.length === 0) return [];
  return [{ title: "Mend everything that is safe to mend", kind: fixAllKind, edit: workspaceEdit(session, edits) }];
}
