/** Code actions: quick fixes, everything safe at once, unit conversions, refactorings; each source in `actions/`. */
import { CodeActionKind, type CodeActionParams } from "vscode-languageserver";
import { bothSidesKind, sideActions } from "../actions/both-sides.js";
import { fixAll, fixAllKind } from "../actions/fix-all.js";
import { quickFixes } from "../actions/quick-fixes.js";
import { extractions, inlinings, moves } from "../actions/refactorings.js";
import { conversionKind, unitConversions } from "../actions/unit-conversions.js";
import type { Feature } from "../feature.js";

const sources = [
  { kind: CodeActionKind.QuickFix, actions: quickFixes },
  { kind: fixAllKind, actions: fixAll },
  { kind: conversionKind, actions: unitConversions },
  { kind: bothSidesKind, actions: sideActions },
  { kind: CodeActionKind.RefactorExtract, actions: extractions },
  { kind: CodeActionKind.RefactorInline, actions: inlinings },
  { kind: CodeActionKind.RefactorMove, actions: moves },
] as const;

export const codeActions: Feature = {
  capabilities: { codeActionProvider: { codeActionKinds: [...new Set(sources.map(({ kind }) => kind))] } },
  attach(connection, session) {
    connection.onCodeAction((parameters) => {
      const file = session.file(parameters.textDocument.uri);
      const wanted = sources.filter(({ kind }) => wants(parameters, kind));
      return wanted.flatMap(({ actions }) => actions(session, file, parameters));
    });
  },
};

/** A client may ask for some kinds only; `refactor` covers `refactor.rewrite`. */
function wants({ context }: CodeActionParams, kind: string): boolean {
  return context.only === undefined || context.only.some((asked) => kind === asked || kind.startsWith(`${asked}.`));
}
