/** What `bellcrank check` writes is read by the matcher of the manifest, as the editor reads a task's lines: pattern by pattern. */
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import manifest from "../../package.json" with { type: "json" };
import { openWorkshop, TYPO, type Workshop } from "./run-cli.js";

const matcher = manifest.contributes.problemMatchers.find(({ name }) => name === "bellcrank-check");
const patterns = matcher?.pattern ?? [];

interface Problem {
  readonly file: string;
  readonly line: number;
  readonly column: number;
  readonly severity: string;
  readonly code: string;
  readonly message: string;
}

const FIELDS = ["file", "line", "column", "severity", "code", "message"] as const;

/** As the editor does it: each pattern against the next line, from the first one that the first pattern takes. */
function problemsIn(text: string): readonly Problem[] {
  const lines = text.split("\n");
  return lines.flatMap((_, at) => {
    const matches = patterns.map(({ regexp }, index) => new RegExp(regexp).exec(lines[at + index] ?? "\u0000"));
    if (matches.includes(null)) return [];
    const found = Object.fromEntries(
      FIELDS.map((field) => {
        const index = patterns.findIndex((pattern) => field in pattern);
        const group = (patterns[index] as Record<string, unknown>)[field] as number;
        return [field, matches[index]?.[group] ?? ""];
      }),
    );
    return [{ ...found, line: Number(found["line"]), column: Number(found["column"]) } as Problem];
  });
}

describe("the problem matcher of the manifest", () => {
  let shop: Workshop;
  beforeAll(() => {
    shop = openWorkshop();
    shop.write("broken/typo.crank", TYPO);
    shop.write(
      "broken/leak in a folder.crank",
      'use "../quill/quill.crank"\n\nsetup leak from quill {\n\tfront.rocker.roll-low (45, 187, 348) mm\n}\n',
    );
    shop.write("broken/empty line.crank", "car x {\n");
  });
  afterAll(() => shop.remove());

  it("finds every finding, with its place, severity, rule and message", () => {
    const { out } = shop.run("check", "broken", "--fail-on", "never");
    const { findings } = JSON.parse(shop.run("check", "broken", "--format", "json", "--fail-on", "never").out) as {
      findings: { file: string; start: object; severity: string; rule: string; message: string }[];
    };
    expect(findings.length).toBeGreaterThan(2);
    expect(new Set(findings.map(({ severity }) => severity)).size).toBeGreaterThan(1);
    expect(problemsIn(out)).toEqual(
      findings.map(({ file, start, severity, rule, message }) => ({ file, ...start, severity, code: rule, message })),
    );
  });

  it("finds nothing where there is nothing", () => {
    expect(problemsIn(shop.run("check", "quill").out)).toEqual([]);
  });

  it("takes words that the editor has no severity for as information", () => {
    expect(matcher?.severity).toBe("info");
  });
});
