import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { openWorkshop, TYPO, type Workshop } from "./run-cli.js";
import { type JUnitCase, junitCases } from "./junit.js";
import { sarifProblems } from "./sarif.js";
import { problemsAgainst } from "./schema.js";

describe("bellcrank check", () => {
  let shop: Workshop;
  beforeAll(() => {
    shop = openWorkshop();
    shop.write("broken/typo.crank", TYPO);
    shop.write(
      "broken/leak.crank",
      'use "../quill/quill.crank"\n\nsetup leak from quill {\n  front.rocker.roll-low (45, 187, 348) mm\n}\n',
    );
  });
  afterAll(() => shop.remove());

  it("finds nothing in the sample and ends with 0", () => {
    expect(shop.run("check", "quill")).toEqual({ code: 0, out: "no findings in 4 files\n", err: "" });
  });

  it("shows place, line and caret, and ends with 1 on an error", () => {
    const { code, out } = shop.run("check", "broken/typo.crank");
    expect(code).toBe(1);
    expect(out).toContain("broken/typo.crank:4:9  error  override-without-target");
    expect(out).toContain("    4 |   front.thrid.rate 45 N/mm\n      |         ^^^^^");
    expect(out).toMatch(/third/);
  });

  it("writes no colour into a pipe, and none where NO_COLOR says so", () => {
    expect(shop.run("check", "broken").out).not.toContain("\u001b[");
    const coloured = openWorkshop({ FORCE_COLOR: "1", NO_COLOR: "" });
    expect(coloured.run("check", "quill").out).toContain("\u001b[");
    coloured.remove();
    const plain = openWorkshop({ NO_COLOR: "1" });
    expect(plain.run("check", "quill").out).not.toContain("\u001b[");
    plain.remove();
  });

  it("fails on what it is told to fail on", () => {
    expect(shop.run("check", "broken/leak.crank", "--fail-on", "never").code).toBe(0);
    expect(shop.run("check", "broken/leak.crank", "--fail-on", "warning").code).toBe(1);
    expect(shop.run("check", "broken/typo.crank", "--fail-on", "never").code).toBe(0);
  });

  it("gives JSON that its schema describes", () => {
    const { out } = shop.run("check", "broken", "--format", "json");
    expect(problemsAgainst("check", out)).toEqual([]);
    const { findings } = JSON.parse(out) as { findings: { rule: string; file: string; start: object }[] };
    expect(findings).toContainEqual(
      expect.objectContaining({
        rule: "override-without-target",
        file: "broken/typo.crank",
        start: { line: 4, column: 9 },
      }),
    );
  });

  it("gives SARIF 2.1.0 with rules and places, as the published schema has it", () => {
    const { out } = shop.run("check", "broken", "--format", "sarif");
    expect(sarifProblems(out)).toEqual([]);
    // What the schema does not allow is noticed.
    expect(sarifProblems(out.replace('"ruleId"', '"rule"'))).not.toEqual([]);
    expect(sarifProblems(out.replace('"uri": "broken/', '"uri": "broken folder/'))).not.toEqual([]);
    const log = JSON.parse(out);
    expect(log.version).toBe("2.1.0");
    const [run] = log.runs;
    expect(run.tool.driver.rules.map(({ id }: { id: string }) => id)).toContain("coupling");
    for (const result of run.results) {
      expect(result.locations[0].physicalLocation.artifactLocation.uri).toMatch(/^broken\//);
      expect(result.locations[0].physicalLocation.region.startLine).toBeGreaterThan(0);
    }
  });

  it("gives workflow commands that cannot be broken out of", () => {
    const { out } = shop.run("check", "broken/typo.crank", "--format", "github");
    expect(out.split("\n")[0]).toMatch(
      /^::error file=broken\/typo\.crank,line=4,endLine=4,col=9,endColumn=14,title=bellcrank%3A override-without-target::/,
    );
    for (const line of out.trimEnd().split("\n")) expect(line).toMatch(/^::(error|warning|notice) /);
  });

  it("gives a JUnit report", () => {
    const { out } = shop.run("check", "broken", "--format", "junit");
    expect(out).toContain('<testsuite name="bellcrank check" tests="2"');
    expect(out).toMatch(
      /<testcase classname="bellcrank\.check" name="broken\/typo\.crank"><failure message="4:9 error override-without-target/,
    );
  });

  it("reports each expectation in JUnit with figure and margin, or why it is not judged", () => {
    const wants = [
      "expect front.heave-rate between 1 and 2 N/mm",
      "expect rear.heave-rate above 1 N/mm",
      "expect load-transfer-front at nowhere below 50 %",
    ];
    shop.write(
      "wanting/wanting.crank",
      `use "../quill/quill.crank"\n\nsetup wanting from quill {\n  ${wants.join("\n  ")}\n}\n`,
    );
    const { out } = shop.run("check", "wanting", "--format", "junit");
    const cases = junitCases(out);
    const named = (name: string): JUnitCase | undefined => cases.find((one) => one.name === name);
    const missed = named("front.heave-rate between 1 N/mm and 2 N/mm");
    expect(missed?.classname).toBe("wanting/wanting.crank.wanting");
    expect(missed?.children).toEqual(["failure"]);
    expect(missed?.text).toMatch(
      /^wanting\/wanting\.crank:4:3: front\.heave-rate is [\d.]+ N\/mm; wanted between .*: missed by [\d.]+ N\/mm\.$/,
    );
    const met = named("rear.heave-rate above 1 N/mm");
    expect(met?.children).toEqual(["system-out"]);
    expect(met?.text).toMatch(/met with a margin of [\d.]+ N\/mm/);
    expect(named("load-transfer-front at nowhere below 50 %")?.children).toEqual(["skipped"]);
    // Inherited ones are judged for the set-up, and tell where they are written.
    expect(named("roll-stiffness-front between 45 % and 49 %")?.text).toMatch(/^quill\/quill\.crank:\d+:3: /);
  });

  it("says what is wrong with the command line in one line and ends with 2", () => {
    const missing = shop.run("check", "nowhere");
    expect(missing.code).toBe(2);
    expect(missing.err).toBe("bellcrank: nowhere: there is no such file or folder\n");
    expect(shop.run("check", "--format", "tables").code).toBe(2);
    expect(shop.run("chekc").code).toBe(2);
    shop.write("empty/readme.txt", "nothing");
    expect(shop.run("check", "empty").err).toContain("no .crank file");
  });

  it("reads what is not text as a clear message", () => {
    shop.write("noise/noise.crank", Buffer.from([0xff, 0xfe, 0x00, 0x80, 0xc3]));
    const { code, err } = shop.run("check", "noise/noise.crank");
    expect({ code, err }).toEqual({ code: 2, err: "bellcrank: noise/noise.crank: is not UTF-8 text\n" });
  });

  it("helps, with an example for every command", () => {
    const help = shop.run("--help");
    expect(help.code).toBe(0);
    expect(help.out).toContain("competent person");
    for (const command of ["check", "rates", "kinematics", "format", "serve"]) {
      const { code, out } = shop.run(command, "--help");
      expect(code).toBe(0);
      expect(out).toMatch(/Example/);
    }
  });
});
