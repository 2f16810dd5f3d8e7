import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { openWorkshop, type Workshop } from "./run-cli.js";
import { problemsAgainst } from "./schema.js";

const DRY = "quill/dry.crank";

describe("bellcrank measured", () => {
  let shop: Workshop;
  beforeAll(() => {
    shop = openWorkshop();
  });
  afterAll(() => shop.remove());

  it("gives JSON that its schema describes, each difference the measured less the predicted", () => {
    const { out, code } = shop.run("measured", DRY, "--format", "json");
    expect(code).toBe(0);
    expect(problemsAgainst("measured", out)).toEqual([]);
    const { when, values } = JSON.parse(out);
    expect(when).toBe("Saturday before the first run");
    expect(values).toHaveLength(8);
    for (const { measured, predicted, off, allowed, beyond } of values) {
      expect(off.value).toBeCloseTo(measured.value - predicted.value, 6);
      expect(beyond).toBe(Math.abs(off.value) > allowed.value);
    }
    // Pads within 2 % (common practice, no published source): 540 kg, 44 % on the front wheels.
    expect(values[0].predicted.value).toBeCloseTo((540 * 0.44) / 2, 6);
    expect(values[0].allowed.value).toBeCloseTo(0.02 * ((540 * 0.44) / 2), 6);
  });

  it("says the same in text, Markdown and CSV, and on the setup sheet", () => {
    for (const format of ["text", "markdown"]) {
      const { out } = shop.run("measured", DRY, "--format", format);
      for (const words of ["front.ride-height", "32.5 mm", "+0.5 mm", "within"]) expect(out).toContain(words);
    }
    expect(shop.run("measured", DRY, "--format", "csv").out).toContain("front.ride-height,32.5,32,0.5,1,mm,no");
    for (const format of ["html", "markdown"])
      expect(shop.run("sheet", DRY, "--format", format).out).toContain("As measured Saturday before the first run");
  });

  it("says where nothing was measured", () => {
    const { out, code } = shop.run("measured", "quill/quill.crank");
    expect(code).toBe(0);
    expect(out).toContain("nothing was measured on this car");
    expect(problemsAgainst("measured", shop.run("measured", "quill/quill.crank", "--format", "json").out)).toEqual([]);
  });
});
