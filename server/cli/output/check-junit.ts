/**
 * Findings and expectations as a JUnit report: in one suite a case a file, failed by its errors and warnings; in the other
 * a case for each expectation of each car and set-up, with its figure and margin. A missed expectation fails its own case
 * only. What was known before fails nothing.
 */
import { escaped } from "../../views/drawings/svg.js";
import type { CheckedExpectation, CheckedFile } from "../checking/checked-file.js";
import { isKnown, newFindings, type Report } from "../checking/report.js";

interface TestCase {
  readonly classname: string;
  readonly name: string;
  readonly outcome: "passed" | "failure" | "skipped";
  readonly message: string;
  /** Longer than the message. */
  readonly details: string;
}

export function junitReport(report: Report): string {
  const files = report.files.map((file) => fileCase(report, file));
  const expectations = report.files.flatMap((file) =>
    file.expectations.map((expectation) => expectationCase(report, file, expectation)),
  );
  const suites = [suite("bellcrank check", files), suite("bellcrank expectations", expectations)];
  const totals = countsOf([...files, ...expectations]);
  return `<?xml version="1.0" encoding="UTF-8"?>\n<testsuites tests="${totals.tests}" failures="${totals.failures}" errors="0">\n${suites.join("")}</testsuites>\n`;
}

const countsOf = (cases: readonly TestCase[]): { tests: number; failures: number; skipped: number } => ({
  tests: cases.length,
  failures: cases.filter(({ outcome }) => outcome === "failure").length,
  skipped: cases.filter(({ outcome }) => outcome === "skipped").length,
});

function suite(name: string, cases: readonly TestCase[]): string {
  const { tests, failures, skipped } = countsOf(cases);
  return `<testsuite name="${name}" tests="${tests}" failures="${failures}" errors="0" skipped="${skipped}">\n${cases.map(caseXml).join("")}</testsuite>\n`;
}

function caseXml({ classname, name, outcome, message, details }: TestCase): string {
  const head = `<testcase classname="${escaped(classname)}" name="${escaped(name)}"`;
  if (outcome === "failure") {
    return `${head}><failure message="${escaped(message)}">${escaped(details)}</failure></testcase>\n`;
  }
  if (outcome === "skipped") return `${head}><skipped message="${escaped(message)}"/></testcase>\n`;
  return details === "" ? `${head}/>\n` : `${head}><system-out>${escaped(details)}</system-out></testcase>\n`;
}

function fileCase(report: Report, file: CheckedFile): TestCase {
  const failing = newFindings(report, file).filter(
    ({ severity, rule }) => (severity === "error" || severity === "warning") && rule !== "missed-expectation",
  );
  const lines = failing.map(
    ({ start, severity, rule, message }) => `${start.line}:${start.column} ${severity} ${rule}: ${message}`,
  );
  const outcome = lines.length === 0 ? "passed" : "failure";
  return { classname: "bellcrank.check", name: file.path, outcome, message: lines[0] ?? "", details: lines.join("\n") };
}

const OUTCOMES = { met: "passed", missed: "failure", "not-judged": "skipped" } as const;

function expectationCase(report: Report, file: CheckedFile, expectation: CheckedExpectation): TestCase {
  const { of, text, verdict, message, place } = expectation;
  const finding = expectation.finding === undefined ? undefined : file.findings[expectation.finding];
  const known = finding !== undefined && isKnown(report, finding);
  return {
    classname: `${file.path}.${of}`,
    name: text,
    outcome: known ? "skipped" : OUTCOMES[verdict],
    message: known ? `known before: ${message}` : message,
    details: `${place}: ${message}`,
  };
}
