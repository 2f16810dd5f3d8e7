/**
 * Reads a JUnit report and holds it against the common shape: suites in one root, counts that are those of the cases, a
 * class and a name for each case, and inside it only what readers know. From memory of what continuous-integration
 * servers take; there is no standard of it.
 */
import sax from "sax";
import { expect } from "vitest";

export interface JUnitCase {
  readonly classname: string;
  readonly name: string;
  readonly children: readonly string[];
  readonly text: string;
}

type Open = { classname: string; name: string; children: string[]; text: string };

const PARENTS: Readonly<Record<string, string>> = {
  testsuites: "",
  testsuite: "testsuites",
  testcase: "testsuite",
  failure: "testcase",
  skipped: "testcase",
  "system-out": "testcase",
};

/** A report of this shape, and the same cases when read. */
export function junitCases(xml: string): readonly JUnitCase[] {
  const cases: Open[] = [];
  const open: string[] = [];
  const suites: Suite[] = [];
  const parser = Object.assign(sax.parser(true, { trim: true }), {
    onopentag({ name, attributes }: { name: string; attributes: Readonly<Record<string, unknown>> }) {
      expect(PARENTS[name], `${name} stands in its parent`).toBe(open.at(-1) ?? "");
      open.push(name);
      if (name === "testsuite") suites.push({ ...attributes, from: cases.length } as Suite);
      else if (name === "testcase") cases.push({ ...attributes, children: [], text: "" } as unknown as Open);
      else if (name !== "testsuites") cases.at(-1)?.children.push(name);
    },
    ontext(text: string) {
      const last = cases.at(-1);
      if (last !== undefined) last.text += text;
    },
    onclosetag: () => open.pop(),
    onerror(error: Error) {
      throw error;
    },
  });
  parser.write(xml).close();
  for (const [index, suite] of suites.entries()) countsHold(suite, cases.slice(suite.from, suites[index + 1]?.from));
  return cases;
}

interface Suite {
  readonly tests: string;
  readonly failures: string;
  readonly skipped: string;
  readonly from: number;
}

function countsHold({ tests, failures, skipped }: Suite, cases: readonly JUnitCase[]): void {
  const having = (child: string): string => `${cases.filter(({ children }) => children.includes(child)).length}`;
  expect({ tests, failures, skipped }).toEqual({
    tests: `${cases.length}`,
    failures: having("failure"),
    skipped: having("skipped"),
  });
  for (const { classname, name } of cases) expect([typeof classname, typeof name]).toEqual(["string", "string"]);
}
