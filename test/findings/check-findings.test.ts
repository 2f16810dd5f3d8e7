import { describe, expect, it } from "vitest";
import { checkFindings, split } from "../support/check-findings.js";

const line = "catalogue { torsion-bar TB-115 { diametre 11.5 mm, diameter 11.5 mm, length 360 mm } }\n";
const carets = "#                                ^^^^^^^^";

describe("annotated sources", () => {
  it("pass where every finding is annotated in its place", () => {
    checkFindings(`${line}${carets} error: is not a word of\n`);
    checkFindings(`${line}${carets} error unknown-word: is not a word of\n`);
  });

  it.each([
    ["a finding without its annotation", line],
    ["an annotation without its finding", `${line}${carets} error: is not a word of\n# ^^^ hint: more\n`],
    ["another place", `${line}# ${carets.slice(3)} error: is not a word of\n`],
    ["another severity", `${line}${carets} warning: is not a word of\n`],
    ["another rule", `${line}${carets} error unknown-name: is not a word of\n`],
    ["other words", `${line}${carets} error: is a word of\n`],
  ])("fail for %s", (_, annotated) => {
    expect(() => checkFindings(annotated)).toThrow(/expected/);
  });

  it("take no other comment for an annotation", () => {
    const text = '# ^ the wheel\nuse "a.crank"  # ^^ error: no\n';
    expect(split(text)).toEqual({ text, annotations: [] });
  });
});
