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

/** An editor with more than this in one file is slow, and nobody reads on; the rest is counted. */
export const MOST = 1000;

const byWeight: readonly Severity[] = ["error", "warning", "information", "hint"];

export function diagnosticsOf(session: Session, file: FileView): Diagnostic[] {
  const findings = file.findings();
  const shown = findings.length <= MOST ? findings : weightiest(findings);
  const diagnostics = shown.map((finding) => diagnosticOf(session, file, finding));
  if (shown.length < findings.length) diagnostics.push(andMore(findings.length, file));
  return diagnostics;
}

/** Errors before warnings and so on, those of one weight in the order of the text. */
const weightiest = (findings: readonly Finding[]): readonly Finding[] =>
  byWeight.flatMap((weight) => findings.filter(({ severity }) => severity === weight)).slice(0, MOST);

function andMore(all: number, { parsed }: FileView): Diagnostic {
  return {
    range: rangeOf(parsed.lines, { start: 0, end: 0 }),
    severity: DiagnosticSeverity.Information,
    source: "bellcrank",
    message: `The ${MOST} weightiest findings are shown, and ${all - MOST} more are not. \`bellcrank check\` lists all of them.`,
  };
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
