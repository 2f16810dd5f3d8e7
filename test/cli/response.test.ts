import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { openWorkshop, type Workshop } from "./run-cli.js";
import { problemsAgainst } from "./schema.js";

const CAR = "quill/quill.crank";

describe("bellcrank response", () => {
  let shop: Workshop;
  beforeAll(() => {
    shop = openWorkshop();
  });
  afterAll(() => shop.remove());

  it("gives JSON that its schema describes, absent with its reason too", () => {
    const { out, code } = shop.run("response", CAR, "--at", "top-speed", "--road", "passing", "--format", "json");
    expect(code).toBe(0);
    expect(problemsAgainst("response", out)).toEqual([]);
    const { frequency, curves } = JSON.parse(out);
    expect(frequency.values).toHaveLength(61);
    expect(curves).toHaveLength(13);
    const standing = shop.run("response", CAR, "--road", "passing", "--format", "json").out;
    expect(problemsAgainst("response", standing)).toEqual([]);
    expect(JSON.parse(standing).absent).toContain("needs a speed");
  });

  it("says the same in text, Markdown and CSV", () => {
    const asked = ["response", CAR, "--frequency", "1..16Hz:3"];
    const { curves } = JSON.parse(shop.run(...asked, "--format", "json").out);
    const heave: number[] = curves[0].gain.values;
    const shown = heave.map((gain) => String(Number(gain.toPrecision(3))));
    for (const format of ["text", "markdown"]) {
      const { out } = shop.run(...asked, "--format", format);
      for (const gain of shown) expect(out).toContain(gain);
      for (const frequency of ["1 Hz", "4 Hz", "16 Hz", "competent person"]) expect(out).toContain(frequency);
    }
    const rows = shop
      .run(...asked, "--format", "csv")
      .out.trim()
      .split(/\r?\n/);
    expect(rows.map((row) => row.split(",")[1])).toEqual(["body heave mm/mm", ...heave.map(String)]);
  });

  it("tells what may be asked", () => {
    for (const [args, words] of [
      [["--frequency", "0..5Hz:3"], "frequencies rise from above 0"],
      [["--frequency", "3mm"], "is not a unit of frequency"],
      [["--speed", "0km/h"], "one speed above 0"],
      [["--road", "wavy"], "Allowed choices are passing, heave"],
      [["--at", "nowhere"], "no case nowhere"],
    ] as const) {
      const { code, err } = shop.run("response", CAR, ...args);
      expect(code).toBe(2);
      expect(err).toContain(words);
    }
  });
});
