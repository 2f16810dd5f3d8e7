/**
 * Findings and expectations as a JUnit report: in one suite a case a file, failed by its errors and warnings; in the other
 * a case for each expectation of each car and set-up, with its figure and margin. A missed expectation fails its own case only.
 */
import type { FileView } from "../../snapshot/workspace.js";
import { escaped } from "../../views/drawings/svg.js";
import { type JudgedExpectation, judgedCars } from "../../views/expectations.js";
import type { CheckedFile } from "../checked-file.js";
import { shown } from "../workspace.js";
import { placeOf } from "./check-json.js";

interface TestCase {
  readonly classname: string;
  readonly name: string;
  readonly outcome: "passed" | "failure" | "skipped";
  readonly message: string;
  /** Longer than the message. */
  readonly details: string;
}

export function junitReport(checked: readonly CheckedFile[]): string {
  const files = checked.map(fileCase);
  const expectations = checked.flatMap(({ file }) => expectationCases(file));
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

function fileCase({ file, findings }: CheckedFile): TestCase {
  const failing = findings.filter(
    ({ severity, rule }) => (severity === "error" || severity === "warning") && rule !== "missed-expectation",
  );
  const lines = failing.map(({ span, severity, rule, message }) => {
    const { line, column } = placeOf(file, span).start;
    return `${line}:${column} ${severity} ${rule}: ${message}`;
  });
  const outcome = lines.length === 0 ? "passed" : "failure";
  const name = shown(file.uri);
  return { classname: "bellcrank.check", name, outcome, message: lines[0] ?? "", details: lines.join("\n") };
}

const OUTCOMES = { met: "passed", missed: "failure", "not-judged": "skipped" } as const;

const expectationCases = (file: FileView): readonly TestCase[] =>
  judgedCars(file).flatMap(({ name, expectations }) =>
    expectations.map((judged) => ({
      classname: `${shown(file.uri)}.${name}`,
      name: judged.text,
      outcome: OUTCOMES[judged.verdict],
      message: judged.message,
      details: `${placeWords(file, judged)}: ${judged.message}`,
    })),
  );

/** "quill.crank:157:3" */
function placeWords(file: FileView, { origin }: JudgedExpectation): string {
  const parsed = origin.uri === file.uri ? file.parsed : file.parsedOf(origin.uri);
  if (parsed === undefined) return shown(origin.uri);
  const { line, column } = placeOf({ parsed }, origin).start;
  return `${shown(origin.uri)}:${line}:${column}`;
}
