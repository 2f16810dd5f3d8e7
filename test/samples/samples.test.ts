/**
 * Every sample checks clean, is laid out canonically, and its main figures are held in a file beside this test
 * (figures/), to be reviewed when they change: `npx vitest run --project engine test/samples -u` writes them anew.
 */
import { readFileSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { runRules } from "../../server/findings/run.js";
import { isFormatted } from "../support/context.js";
import { sampleContext, sampleNames, samples } from "../support/samples.js";
import { figurePage } from "./figure-page.js";

describe.each(sampleNames)("samples/%s", (name) => {
  const context = sampleContext(name);

  it("has no findings", () => {
    expect(runRules(context).map(({ rule, message }) => `${rule}: ${message}`)).toEqual([]);
  });

  it("is in canonical layout", () => {
    expect(isFormatted(samples[name] ?? "")).toBe(true);
  });

  it.runIf(context.cars.length > 0)("has the figures that were reviewed", async () => {
    const pages = context.cars.map(figurePage).join("\n");
    await expect(`${pages}\n`).toMatchFileSnapshot(`figures/${name.replaceAll("/", "-").replace(/\.crank$/, "")}.txt`);
  });
});

describe("the README", () => {
  const readme = (path: string): string => readFileSync(new URL(`../../samples/${path}`, import.meta.url), "utf8");

  it("of samples/systems says of every file what to look at", () => {
    const own = Object.keys(samples).filter((name) => name.startsWith("systems/"));
    const listed = own
      .map((name) => name.replace("systems/", ""))
      .filter((name) => readme("systems/README.md").includes(name));
    expect(listed.map((name) => `systems/${name}`)).toEqual(own);
  });

  it("of the samples names every car, shelf, set-up and table", () => {
    const own = Object.keys(samples).filter((name) => !name.startsWith("systems/"));
    for (const name of own)
      expect(readme("README.md")).toContain(name.endsWith(".csv") ? (name.split("/")[1] ?? name) : name);
  });
});
