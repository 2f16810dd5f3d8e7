/** Findings for a machine. The form is described by `schema/check.json` of the package. */
import type { CheckedFile } from "../checking/checked-file.js";
import { isKnown, type Report } from "../checking/report.js";
import { json } from "./json.js";

export function jsonReport(report: Report): string {
  const { files, against } = report;
  const head = { files: files.map(({ path }) => path), findings: files.flatMap((file) => findingsOf(report, file)) };
  if (against === undefined) return json(head);
  const { list, gone } = against;
  return json({ ...head, baseline: { file: list, gone: gone.map(({ path, ...rest }) => ({ file: path, ...rest })) } });
}

function findingsOf(report: Report, { path, findings }: CheckedFile): readonly object[] {
  return findings.map((finding) => {
    const { start, end, severity, rule, message, related, place, fingerprint } = finding;
    const known = report.against === undefined ? {} : { known: isKnown(report, finding) };
    return { file: path, start, end, severity, rule, message, related, place, fingerprint, ...known };
  });
}
