/** What an empty file is offered: a whole car that checks clean, called as the file is. */
import { describe, expect, it } from "vitest";
import { format } from "../../../grammar/index.js";
import { runRules } from "../../../server/findings/run.js";
import { startHere } from "../../../server/views/new-car/start-here.js";
import { contextOf } from "../../support/context.js";

describe("a start in an empty file", () => {
  it("is one text without findings, laid out", () => {
    const { text = "" } = startHere("file:///club/wren-9.crank", "") ?? {};
    expect(text).toMatch(/^catalogue \{\n/);
    expect(text).toContain("\n}\n\n## A starting point");
    expect(text).not.toMatch(/^use /m);
    expect(runRules(contextOf({ "wren-9.crank": text }, "wren-9.crank"))).toEqual([]);
    expect(format(text)).toBe(text);
  });

  it.each([
    ["file:///club/wren-9.crank", "wren-9"],
    ["file:///club/Our%20New%20Car%20(2).crank", "our-new-car-2"],
    ["file:///club/27-b.crank", "b"],
    ["untitled:Untitled-1", "untitled-1"],
    ["file:///club/%E6%B5%B7.crank", "my-car"],
    ["file:///club/50%.crank", "my-car"],
    ["", "my-car"],
  ])("of %s is called %s", (uri, name) => {
    expect(startHere(uri, " \r\n")?.name).toBe(name);
    expect(startHere(uri, "")?.text).toContain(`\ncar ${name} "${name}" {`);
  });

  it("is not offered where anything stands, not even a comment", () => {
    expect(startHere("file:///a.crank", "# mine\n")).toBeUndefined();
  });
});
