/** Findings as a JUnit report: one case a file, failed by its errors and warnings. */
import type { CheckedFile } from "../checked-file.js";
import { shown } from "../workspace.js";
import { placeOf } from "./check-json.js";

export function junitReport(checked: readonly CheckedFile[]): string {
  const failures = checked.filter((one) => failingOf(one).length > 0).length;
  const cases = checked.map(caseOf).join("");
  return `<?xml version="1.0" encoding="UTF-8"?>\n<testsuites>\n<testsuite name="bellcrank check" tests="${checked.length}" failures="${failures}">\n${cases}</testsuite>\n</testsuites>\n`;
}

function caseOf(checked: CheckedFile): string {
  const failing = failingOf(checked);
  const head = `<testcase classname="bellcrank.check" name="${escaped(shown(checked.file.uri))}"`;
  if (failing.length === 0) return `${head}/>\n`;
  const lines = failing.map(({ span, severity, rule, message }) => {
    const { line, column } = placeOf(checked.file, span).start;
    return `${line}:${column} ${severity} ${rule}: ${message}`;
  });
  const first = lines[0] ?? "";
  return `${head}><failure message="${escaped(first)}">${escaped(lines.join("\n"))}</failure></testcase>\n`;
}

const failingOf = ({ findings }: CheckedFile): CheckedFile["findings"] =>
  findings.filter(({ severity }) => severity === "error" || severity === "warning");

const escaped = (text: string): string =>
  text.replaceAll("&", "&amp;").replaceAll("<", "&lt;").replaceAll(">", "&gt;").replaceAll('"', "&quot;");
