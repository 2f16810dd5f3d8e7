import { describe, expect, it } from "vitest";
import type { Finding, Rule } from "../../server/findings/finding.js";
import { rules } from "../../server/findings/registry.js";
import { fixesOf, runRules, safeEdits } from "../../server/findings/run.js";
import { contextOf, uriOf } from "../support/context.js";

const context = contextOf({ "a.crank": "let a = 1 mm\nlet b = 2 mm\n" }, "a.crank");

function findingAt(rule: string, start: number, end: number): Finding {
  return {
    rule,
    severity: "hint",
    uri: context.uri,
    span: { start, end },
    message: rule,
    related: [],
    tags: [],
    data: undefined,
  };
}

function ruleOf(id: string, cost: Rule["meta"]["cost"], check: Rule["check"], fix?: Rule["fix"]): Rule {
  return { meta: { id, title: id, cost, severity: "hint" }, check, ...(fix && { fix }) };
}

describe("running rules", () => {
  it("runs the cheap ones first and only those that are asked for", () => {
    const ran: string[] = [];
    const noting = (id: string, cost: Rule["meta"]["cost"]) => ruleOf(id, cost, () => (ran.push(id), []));
    const some = [noting("c", "solved"), noting("b", "model"), noting("a", "syntax")];
    runRules(context, undefined, some);
    expect(ran).toEqual(["a", "b", "c"]);
    runRules(context, ["model"], some);
    expect(ran).toEqual(["a", "b", "c", "b"]);
  });

  it("tells findings in the order of the text", () => {
    const rule = ruleOf("r", "syntax", () => [findingAt("r", 5, 6), findingAt("r", 1, 9), findingAt("r", 1, 2)]);
    expect(runRules(context, undefined, [rule]).map(({ span }) => [span.start, span.end])).toEqual([
      [1, 2],
      [1, 9],
      [5, 6],
    ]);
  });

  it("makes a finding of a rule that throws, and lets the others speak", () => {
    const broken = ruleOf("broken", "syntax", () => {
      throw new Error("no such thing");
    });
    const sound = ruleOf("sound", "model", () => [findingAt("sound", 1, 2)]);
    const found = runRules(context, undefined, [broken, sound]);
    expect(found.map(({ rule }) => rule)).toEqual(["internal-error", "sound"]);
    expect(found[0]?.message).toContain('"broken" failed: no such thing');
  });

  it("also catches a rule that throws half-way through its findings", () => {
    const halfway = ruleOf("halfway", "syntax", function* () {
      yield findingAt("halfway", 1, 2);
      throw new Error("lost");
    });
    expect(runRules(context, undefined, [halfway]).map(({ rule }) => rule)).toEqual(["internal-error"]);
  });
});

describe("fixes in bulk", () => {
  const edit = (start: number, end: number) => ({ uri: uriOf("a.crank"), span: { start, end }, newText: "" });
  const rule = ruleOf(
    "r",
    "syntax",
    () => [findingAt("r", 0, 3), findingAt("r", 2, 5), findingAt("r", 8, 9)],
    ({ span }) => [
      { title: "unsafe", edits: [edit(0, 20)], preferred: true, safe: false },
      { title: "safe", edits: [edit(span.start, span.end)], preferred: false, safe: true },
    ],
  );

  it("takes only safe ones, and of those that overlap the first", () => {
    const findings = runRules(context, undefined, [rule]);
    expect(safeEdits(findings, context, [rule])).toEqual([edit(0, 3), edit(8, 9)]);
  });

  it("knows of none for a finding whose rule has none", () => {
    expect(fixesOf(findingAt("internal-error", 0, 1), context)).toEqual([]);
  });
});

describe("the registry", () => {
  it("has unique kebab-case ids", () => {
    const ids = rules.map(({ meta }) => meta.id);
    expect(new Set(ids).size).toBe(ids.length);
    for (const id of ids) expect(id).toMatch(/^[a-z]+(-[a-z]+)*$/);
  });
});
