import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { openWorkshop, type Workshop } from "./run-cli.js";
import { problemsAgainst } from "./schema.js";

const CAR = "quill/quill.crank";

describe("bellcrank logger", () => {
  let shop: Workshop;
  beforeAll(() => {
    shop = openWorkshop();
  });
  afterAll(() => shop.remove());

  it("gives JSON that its schema describes", () => {
    for (const args of [
      ["--from", "side"],
      ["--from", "roll-damper"],
      ["--from", "rocker", "--axle", "rear", "--zero", "drawn"],
      ["--from", "third", "--within", "0.000001mm"],
    ]) {
      const { out, code } = shop.run("logger", CAR, ...args, "--format", "json");
      expect(code).toBe(0);
      expect(problemsAgainst("logger", out)).toEqual([]);
    }
  });

  it("says the same in text, Markdown and CSV", () => {
    const asked = ["logger", CAR, "--from", "side", "--points", "5"];
    const { curves } = JSON.parse(shop.run(...asked, "--format", "json").out);
    const [channel, motion] = curves[0].table[0];
    expect(shop.run(...asked, "--format", "csv").out).toContain(`left,${channel},mm,travel,${motion},mm`);
    for (const format of ["text", "markdown"]) {
      const { out } = shop.run(...asked, "--format", format);
      expect(out).toContain(curves[0].polynomial.coefficients[1].toPrecision(8));
      expect(out).toContain("heave = (left + right) / 2");
      expect(out).toContain("competent person");
    }
  });

  it("holds a measured pair against the linkage", () => {
    const { curves } = JSON.parse(shop.run("logger", CAR, "--from", "side", "--format", "json").out);
    const rows = (curves[0].table as [number, number][]).map(([channel, motion]) => `${motion},${channel + 2}`);
    shop.write("pairs.csv", ["travel [mm], side [mm]", ...rows].join("\r\n"));
    const asked = ["logger", CAR, "--from", "side", "--check", "pairs.csv"];
    expect(shop.run(...asked).out).toContain("an offset of 2 mm");
    const json = shop.run(...asked, "--format", "json").out;
    expect(problemsAgainst("logger", json)).toEqual([]);
    expect(JSON.parse(json).checks[0].offset).toBeCloseTo(2, 3);
    expect(shop.run(...asked, "--format", "csv").out.split("\n").length).toBeGreaterThan(2 * rows.length);
  });

  it("tells what may be asked", () => {
    shop.write("bad.csv", "travel [mm], side [mm]\n1, 2\n2, 3\n");
    for (const [args, words] of [
      [[], "required option '--from <channel>'"],
      [["--from", "sidee"], "has no sidee; it has rocker, corner-bar, side"],
      [["--from", "side", "--points", "1"], "a count from 2"],
      [["--from", "side", "--within", "0mm"], "a length above 0"],
      [["--from", "side", "--check", "none.csv"], "no such file"],
      [["--from", "side", "--check", "bad.csv"], "bad.csv: three rows or more"],
    ] as const) {
      const { code, err } = shop.run("logger", CAR, ...args);
      expect(code).toBe(2);
      expect(err).toContain(words);
    }
  });
});
