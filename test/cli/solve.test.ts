import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { openWorkshop, type Workshop } from "./run-cli.js";
import { problemsAgainst } from "./schema.js";

describe("bellcrank solve", () => {
  let shop: Workshop;
  beforeAll(() => {
    shop = openWorkshop();
  });
  afterAll(() => shop.remove());
  const solve = (...more: string[]) => shop.run("solve", "quill/quill.crank", ...more);

  it("answers with lines that meet the expectation when a set-up says them", () => {
    const meet = "front.heave-rate between 180 and 184 N/mm";
    const { out, code } = solve("--vary", "front.third.rate", "--meet", meet, "--format", "json");
    expect(code).toBe(0);
    expect(problemsAgainst("solve", out)).toEqual([]);
    const [{ path, value }] = JSON.parse(out).answer.settings;
    shop.write(
      "quill/firm.crank",
      `use "quill.crank"\n\nsetup firm from quill {\n  ${path} ${value}\n\n  expect ${meet}\n}\n`,
    );
    expect(shop.run("check", "quill/firm.crank").out).not.toContain("missed");
  });

  it("says in text what stands now, the answer and the nearest part", () => {
    const { out } = solve("--vary", "front.bar.torsion-bar.diameter", "--meet", "roll-stiffness-front above 48 %");
    expect(out).toMatch(/front\.bar\.torsion-bar\.diameter +14 mm/);
    expect(out).toContain("RB-15");
    expect(out).toContain("misses by");
    expect(out).toContain("competent person");
  });

  it("ends with 1 where it cannot be met, with what comes nearest on the adjuster's steps", () => {
    const { out, code } = solve("--vary", "front.push-rod", "--meet", "front.heave-rate above 500 N/mm");
    expect(code).toBe(1);
    expect(out).toContain("cannot be met");
    expect(out).toMatch(/\(-?\+?\d+ steps?\)/);
    const held = solve("--vary", "front.third.rate=40..50N/mm", "--meet", "front.heave-rate above 500 N/mm");
    expect(held.out).toContain("front.third.rate can go no further");
  });

  it.each([
    ["an unknown path", ["--vary", "front.thrid.rate", "--meet", "front.heave-rate above 1 N/mm"], "front.thrid.rate"],
    ["a unit of something else", ["--vary", "front.third.rate", "--meet", "front.heave-rate above 1 mm"], "mm"],
    [
      "a range in another unit",
      ["--vary", "front.third.rate=1..2mm", "--meet", "front.heave-rate above 1 N/mm"],
      "no unit",
    ],
    ["an empty range", ["--vary", "front.third.rate=2..1N/mm", "--meet", "front.heave-rate above 1 N/mm"], "empty"],
    ["no range", ["--vary", "front.third.rate=much", "--meet", "front.heave-rate above 1 N/mm"], "range"],
    ["nothing to meet", ["--vary", "front.third.rate"], "--meet"],
    ["nothing to vary", ["--meet", "front.heave-rate above 1 N/mm"], "--vary"],
  ])("is a usage error with %s", (_, args, said) => {
    const { code, err } = solve(...args);
    expect(code).toBe(2);
    expect(err).toContain(said);
  });
});
