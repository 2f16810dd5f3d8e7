/** Findings as the protocol's diagnostics. */
import { type Diagnostic, DiagnosticSeverity, DiagnosticTag } from "vscode-languageserver";
import type { Finding, Severity } from "../findings/finding.js";
import type { FileView } from "../snapshot/workspace.js";
import { rangeOf } from "./convert.js";
import type { Session } from "./session.js";

const severities: Record<Severity, DiagnosticSeverity> = {
  error: DiagnosticSeverity.Error,
  warning: DiagnosticSeverity.Warning,
  information: DiagnosticSeverity.Information,
  hint: DiagnosticSeverity.Hint,
};

export function diagnosticsOf(session: Session, file: FileView): Diagnostic[] {
  return file.findings().map((finding) => diagnosticOf(session, file, finding));
}

export function diagnosticOf(session: Session, file: FileView, finding: Finding): Diagnostic {
  const diagnostic: Diagnostic = {
    range: rangeOf(file.parsed.lines, finding.span),
    severity: severities[finding.severity],
    code: finding.rule,
    source: "bellcrank",
    message: finding.message,
  };
  if (session.pages !== undefined) diagnostic.codeDescription = { href: `${session.pages}#${finding.rule}` };
  if (finding.tags.includes("unnecessary")) diagnostic.tags = [DiagnosticTag.Unnecessary];
  if (finding.related.length > 0) diagnostic.relatedInformation = relatedOf(session, finding);
  return diagnostic;
}

function relatedOf(session: Session, finding: Finding): NonNullable<Diagnostic["relatedInformation"]> {
  return finding.related.map(({ origin, message }) => ({
    location: { uri: origin.uri, range: rangeOf(session.file(origin.uri).parsed.lines, origin) },
    message,
  }));
}
