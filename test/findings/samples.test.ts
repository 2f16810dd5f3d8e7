import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { rules } from "../../server/findings/registry.js";
import { runRules } from "../../server/findings/run.js";
import { contextOf } from "../support/context.js";

const folder = new URL("../../samples/broken/", import.meta.url);
const files = Object.fromEntries(
  readdirSync(folder).map((name) => [name, readFileSync(new URL(name, folder)).toString("utf8")]),
);

/** Files that samples build on: they have no mistake of their own. */
const helpers = ["shared.crank"];
const samples = Object.keys(files).filter((name) => name.endsWith(".crank") && !helpers.includes(name));

describe("samples/broken", () => {
  it("has one sample for each rule, named after it", () => {
    expect(samples.sort()).toEqual(rules.map(({ meta }) => `${meta.id}.crank`).sort());
  });

  it.each(samples)("%s shows its one mistake and no other", (name) => {
    const found = runRules(contextOf(files, name));
    expect([...new Set(found.map(({ rule }) => `${rule}.crank`))]).toEqual([name]);
  });

  it.each(helpers)("%s is without a finding", (name) => {
    expect(runRules(contextOf(files, name))).toEqual([]);
  });
});
