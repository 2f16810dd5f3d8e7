/**
 * A finding's code is a link to its page. The server gives the page's address; in this editor the
 * link runs the command that shows the page rendered, at its anchor.
 */
import * as vscode from "vscode";

export const OPEN_FINDING_PAGE = "bellcrank.openFindingPage";

/** The rule's id, whichever of the two forms the editor gives a code in. */
export function ruleOf(diagnostic: vscode.Diagnostic): string | undefined {
  const code = typeof diagnostic.code === "object" ? diagnostic.code.value : diagnostic.code;
  return code === undefined ? undefined : String(code);
}

export function explainInEditor(diagnostic: vscode.Diagnostic): vscode.Diagnostic {
  const rule = ruleOf(diagnostic);
  if (rule === undefined || typeof diagnostic.code !== "object") return diagnostic;
  const query = encodeURIComponent(JSON.stringify([rule]));
  diagnostic.code = { value: rule, target: vscode.Uri.parse(`command:${OPEN_FINDING_PAGE}?${query}`) };
  return diagnostic;
}
