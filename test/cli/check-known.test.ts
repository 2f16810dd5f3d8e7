/** `check --baseline`: what is known does not fail, whatever moves around it. */
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, beforeEach, describe, expect, it } from "vitest";
import { junitCases } from "./junit.js";
import { openWorkshop, type Workshop } from "./run-cli.js";
import { sarifProblems } from "./sarif.js";
import { problemsAgainst } from "./schema.js";

const leak = "front.rocker.roll-low (45, 187, 348) mm";
const leaking = (...more: readonly string[]): string =>
  ['use "../quill/quill.crank"', "", "setup leak from quill {", ...more.map((line) => `  ${line}`), "}", ""].join("\n");

describe("bellcrank check --baseline", () => {
  let shop: Workshop;
  beforeEach(() => {
    shop = openWorkshop();
    shop.write("sets/leak.crank", leaking(leak));
    const { code, out } = shop.run("check", "sets", "--baseline", "known.json", "--write-baseline");
    expect({ code, out }).toEqual({ code: 0, out: "known.json holds 3 findings\n" });
  });
  afterEach(() => shop.remove());

  const check = (...more: readonly string[]) =>
    shop.run("check", "sets", "--baseline", "known.json", "--fail-on", "warning", ...more);
  const list = (): string => readFileSync(join(shop.folder, "known.json"), "utf8");

  it("writes a list that its schema describes, with paths from its own folder", () => {
    expect(problemsAgainst("check-baseline", list())).toEqual([]);
    const place = { file: "sets/leak.crank", place: "setup leak from quill > front.rocker.roll-low", count: 1 };
    expect(JSON.parse(list()).findings).toEqual([
      expect.objectContaining({ ...place, rule: "coupling" }),
      expect.objectContaining({ ...place, rule: "missed-expectation" }),
      expect.objectContaining({ ...place, rule: "missed-expectation" }),
    ]);
  });

  it("fails on nothing that is known, and on the same without the list", () => {
    expect(check()).toMatchObject({ code: 0, out: "no new findings in 1 file; 3 known by known.json\n" });
    expect(shop.run("check", "sets", "--fail-on", "warning").code).toBe(1);
  });

  it.each([
    ["lines above it", leaking("## A note.", "front.third.rate 48 N/mm", "", leak)],
    ["comments and another layout", leaking(`${leak.replace(" (", "   (")}   # moved in spring`)],
    ["a larger leak", leaking(leak.replace("187", "187.2"))],
    ["Windows line ends", leaking("front.third.rate 48 N/mm", leak).replaceAll("\n", "\r\n")],
    ["a byte-order mark", `\ufeff${leaking(leak)}`],
    ["another set-up before it", leaking(leak).replace("setup leak", "setup other from quill {\n}\nsetup leak")],
  ])("knows it again after %s", (_what, text) => {
    shop.write("sets/leak.crank", text);
    expect(check()).toMatchObject({ code: 0, out: expect.stringContaining("3 known by known.json") });
  });

  it("does not know it again once it has become graver", () => {
    shop.write("sets/leak.crank", leaking(leak.replace("187", "193")));
    expect(check().out).toMatch(/warning {2}coupling/);
  });

  it("knows it again in a file of another name, where the old one is gone", () => {
    shop.write("sets/leak.crank", leaking());
    shop.write("sets/renamed.crank", leaking(leak));
    // Both files are there: the finding has come to another file, and that is new.
    expect(check().code).toBe(1);
    shop.removeFile("sets/leak.crank");
    expect(check()).toMatchObject({ code: 0, out: "no new findings in 1 file; 3 known by known.json\n" });
  });

  it("tells what is new, and only that", () => {
    shop.write("sets/leak.crank", leaking(leak, "front.thrid.rate 45 N/mm"));
    const { code, out } = check();
    expect(code).toBe(1);
    expect(out).toContain("sets/leak.crank:5:9  error  override-without-target");
    expect(out).not.toContain("coupling");
    expect(out).toContain("1 error in 1 file; 3 known by known.json\n");
  });

  it("tells a second one of the same kind from the first", () => {
    shop.write("sets/second.crank", leaking(leak).replace("setup leak", "setup second"));
    expect(check("--format", "github").out).toMatch(/^(::(warning|notice) file=sets\/second\.crank,.*\n){3}$/);
  });

  it("counts what is found no more, and takes it off when the list is made anew", () => {
    shop.write("sets/leak.crank", leaking("front.third.rate 48 N/mm"));
    expect(check()).toMatchObject({ code: 0, out: expect.stringContaining("3 on it no more") });
    expect(check("--write-baseline").out).toBe("known.json holds 0 findings\n");
  });

  it("keeps what it knows of files that were not looked at", () => {
    shop.write("sets/other.crank", leaking("front.thrid.rate 45 N/mm").replace("setup leak", "setup other"));
    shop.run("check", "sets/other.crank", "--baseline", "known.json", "--write-baseline");
    expect(JSON.parse(list()).findings.map(({ file }: { file: string }) => file)).toEqual([
      "sets/leak.crank",
      "sets/leak.crank",
      "sets/leak.crank",
      "sets/other.crank",
    ]);
    expect(check()).toMatchObject({ code: 0 });
  });

  it("says in SARIF what is new, unchanged and absent, with fingerprints, as the published schema has it", () => {
    shop.write("sets/leak.crank", leaking(leak, "front.thrid.rate 45 N/mm"));
    const states = (out: string) =>
      JSON.parse(out).runs[0].results.map((one: { ruleId: string; baselineState: string }) => [
        one.ruleId,
        one.baselineState,
      ]);
    const added = check("--format", "sarif").out;
    expect(sarifProblems(added)).toEqual([]);
    expect(states(added)).toEqual([
      ["missed-expectation", "unchanged"],
      ["missed-expectation", "unchanged"],
      ["coupling", "unchanged"],
      ["override-without-target", "new"],
    ]);
    shop.write("sets/leak.crank", leaking());
    const gone = check("--format", "sarif").out;
    expect(sarifProblems(gone)).toEqual([]);
    expect(states(gone)).toEqual([
      ["coupling", "absent"],
      ["missed-expectation", "absent"],
      ["missed-expectation", "absent"],
    ]);
  });

  it("says it in JSON and JUnit", () => {
    shop.write("sets/leak.crank", leaking(leak, "front.thrid.rate 45 N/mm"));
    const { out } = check("--format", "json");
    expect(problemsAgainst("check", out)).toEqual([]);
    const { findings } = JSON.parse(out) as { findings: { rule: string; known: boolean }[] };
    expect(findings.map(({ rule, known }) => [rule, known])).toEqual([
      ["missed-expectation", true],
      ["missed-expectation", true],
      ["coupling", true],
      ["override-without-target", false],
    ]);
    const failed = junitCases(check("--format", "junit").out).filter(({ children }) => children.includes("failure"));
    expect(failed.map(({ text }) => text)).toEqual([expect.not.stringContaining("coupling")]);
  });

  it("bears with a known missed expectation, of each set-up by itself", () => {
    const wish = "expect front.heave-rate between 1 and 2 N/mm";
    shop.write("sets/leak.crank", leaking(wish));
    check("--write-baseline");
    expect(check().code).toBe(0);
    const missed = junitCases(check("--format", "junit").out).find(({ name }) => name.startsWith("front.heave-rate"));
    expect(missed?.children).toEqual(["skipped"]);
    shop.write("sets/leak.crank", leaking(wish, "expect rear.heave-rate between 1 and 2 N/mm"));
    expect(shop.run("check", "sets", "--baseline", "known.json").code).toBe(1);
  });

  it.each([
    ["nowhere.json", undefined, "there is no such file; --write-baseline makes it from what is found now"],
    ["text.json", "known findings", "is not JSON"],
    ["list.json", "[]", "is no list of findings"],
    ["newer.json", '{ "schema": 2, "findings": [] }', "is of another form (schema 2); make it anew"],
    ["torn.json", '{ "schema": 1, "findings": [{ "file": "a" }] }', "its finding 1 cannot be read; make it anew"],
  ])("says what is wrong with %s and ends with 2", (name, content, words) => {
    if (content !== undefined) shop.write(name, content);
    const { code, err } = shop.run("check", "sets", "--baseline", name);
    expect({ code, err }).toEqual({ code: 2, err: `bellcrank: --baseline ${name}: ${words}\n` });
  });

  it("asks where to write, and says where it cannot", () => {
    expect(shop.run("check", "sets", "--write-baseline").err).toContain("--write-baseline needs --baseline FILE");
    const { code, err } = shop.run("check", "sets", "--baseline", "no/such/known.json", "--write-baseline");
    expect({ code, err }).toEqual({
      code: 2,
      err: "bellcrank: --baseline no/such/known.json: there is no folder no/such\n",
    });
  });
});

describe("bellcrank check on all cores", () => {
  it("says the same as one by one, in every format", () => {
    const shop = openWorkshop();
    for (let i = 0; i < 130; i++) {
      const own = i % 3 === 0 ? leak : `front.third.rate ${40 + (i % 20)} N/mm`;
      shop.write(`sets/${i}.crank`, leaking(own).replace("setup leak", `setup s${i}`));
    }
    for (const format of ["text", "json", "sarif", "github", "junit"]) {
      const [one, all] = ["1", "3"].map((jobs) => shop.run("check", "sets", "--format", format, "--jobs", jobs));
      expect(one?.out.length).toBeGreaterThan(1000);
      expect(all).toEqual(one);
    }
    expect(shop.run("check", "sets", "--jobs", "none").err).toContain("a whole number from 1 to 256");
    shop.remove();
  }, 120_000);
});
